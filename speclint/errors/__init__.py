"""Errors and where they are: exceptions, complaints about a file, places in it; what classes of data have in common.

May import nothing of speclint.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
