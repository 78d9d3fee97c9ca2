"""The loop over design and rules: one check, the worst corner, remedies, helper processes, a whole assessment.

May import ``families`` and what stands below it.
"""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
