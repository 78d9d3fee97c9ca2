"""Materials: strength, expansion and the other properties with their sources; what they may meet and how they weld."""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
