"""Sizes as measured: the decision of ISO 14253-1 with the uncertainty of the measurement, ovality and taper."""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
