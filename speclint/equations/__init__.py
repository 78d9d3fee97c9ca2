"""What an equation is: a formula with its dimensions, its range of validity and its source.

May import ``quantities`` and what stands below it.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
