"""Balance: masses that turn and reciprocate, in two planes of wheels; hammer blow, swaying couple."""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
