"""Concessions: entering, signing, their state; and the gate, which decides on release.

May import ``checking`` and what stands below it.
"""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
