"""Concessions: entering, signing, their state; and the gate, which decides on release.

May import ``checking`` and what stands below it.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
