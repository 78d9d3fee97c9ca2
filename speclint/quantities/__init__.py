"""From the text of a drawing to SI numbers with limits and back: units, grammar, tolerance classes, writing.

May import ``errors``.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
