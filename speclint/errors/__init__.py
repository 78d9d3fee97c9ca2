"""What goes wrong and where: the tree of exceptions, a complaint about a file, the place that it points at.

May import nothing of speclint.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
