"""Sizes as measured: the decision of ISO 14253-1 with the uncertainty of the measurement, ovality and taper."""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
