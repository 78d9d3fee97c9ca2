"""How the handbook stores figures: CSV files named for their source, readings with tolerances, works cited by many."""

from __future__ import annotations

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
