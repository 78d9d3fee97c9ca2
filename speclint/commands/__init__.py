"""Commands and their options, one call each; progress, help. No logic lives here.

May import everything but ``testing``.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
