"""Facts that one place of a design lets another work out: each once, for every family that rests on it.

A fact that geometry or a neighbour gives is not to be typed again. Where a spec states it all the same, the family of
agreements holds the two against each other; rules of strength and clearance take what is worked.
"""

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
