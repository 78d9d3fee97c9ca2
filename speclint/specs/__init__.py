"""What a spec may say: one typed model per kind, the types of their fields, schema and template.

May import ``equations`` and what stands below it.
"""

from __future__ import annotations

from speclint.errors import face_of

__getattr__, __dir__, __all__ = face_of(__name__, __file__)
