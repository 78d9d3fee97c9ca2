"""What an equation is: a formula with its dimensions, its range of validity and its source.

May import ``quantities`` and what stands below it.
"""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
