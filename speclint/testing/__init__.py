"""For the tests of families: designs made from text, what a check must say, contracts, dimensions, golden results.

May import everything but ``commands``; nothing else imports it.
"""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
