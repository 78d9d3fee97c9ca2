"""Commands and their options, one call each; progress, help. No logic lives here.

May import everything but ``testing``.
"""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
