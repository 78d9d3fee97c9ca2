"""Errors and where they are: the tree of exceptions, complaints about a file, places in a file.

May import nothing of speclint.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
