"""What a rule is, and the sheet on which it is worked: judgement, record, limits, tolerance corner.

May import ``repository`` and what stands below it.
"""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
