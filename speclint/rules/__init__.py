"""What a rule is, and the sheet on which it is worked: judgement, record, limits, tolerance corner.

May import ``repository`` and what stands below it.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
