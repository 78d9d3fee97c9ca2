"""Families of rules: every hook, typed; find, load, refuse and list families.

May import ``rules`` and what stands below it.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
