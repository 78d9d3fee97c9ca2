"""Readers of an assessment, as pages, data and review pack, and of what is loaded, as lists and reference pages.

They decide nothing. May import ``register`` and what stands below it.
"""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
