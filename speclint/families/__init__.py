"""Families of rules: every hook, typed; find, load, refuse and list families.

May import ``rules`` and what stands below it.
"""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
