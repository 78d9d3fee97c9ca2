"""How the handbook stores figures: CSV files named for their source, readings with tolerances, works cited by many."""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
