"""What a spec may say: one typed model per kind, the types of their fields, schema and template.

The class of a kind stands here by its word (:mod:`speclint.specs.by_word`), and is imported for its fields alone.

May import ``equations`` and what stands below it.
"""

from __future__ import annotations

from typing import Any

import lazy_loader

from speclint.specs.by_word import kind_by_word
from speclint.specs.kind_places import CLASSES

_imported, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)


def __getattr__(name: str) -> Any:
    return kind_by_word(name) if name in CLASSES else _imported(name)
