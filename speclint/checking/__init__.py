"""The loop over design and rules: one check, the worst corner, remedies, helper processes, a whole assessment.

May import ``families`` and what stands below it.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
