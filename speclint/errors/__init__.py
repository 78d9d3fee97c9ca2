"""Errors and where they are: the tree of exceptions, complaints about a file, places in a file.

May import nothing of speclint.
"""

from __future__ import annotations

from speclint.errors.faces import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
