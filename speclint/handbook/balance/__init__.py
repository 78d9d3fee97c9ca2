"""Balance: masses that turn and reciprocate, in two planes of wheels; hammer blow, swaying couple."""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
