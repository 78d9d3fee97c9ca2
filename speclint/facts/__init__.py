"""Facts that one place of a design lets another work out: each once, for every family that rests on it.

A fact that geometry or a neighbour gives is not to be typed again. Where a spec states it all the same, the family of
agreements holds the two against each other; rules of strength and clearance take what is worked.
"""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
