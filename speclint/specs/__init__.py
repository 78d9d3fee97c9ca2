"""What a spec may say: one typed model per kind, the types of their fields, schema and template.

May import ``equations`` and what stands below it.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
