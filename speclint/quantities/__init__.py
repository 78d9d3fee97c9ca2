"""From the text of a drawing to SI numbers with limits and back: units, grammar, tolerance classes, writing.

May import ``errors``.
"""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
