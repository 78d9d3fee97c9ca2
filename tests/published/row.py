"""One published check: what is asked of a formula, what the source prints, and how that was obtained."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True)
class Row:
    """A check value in SI, with the relative tolerance that the printed digits allow.

    ``how``: seen in a copy of the document, library (computed with the one named), derived by hand,
    or memory of the work named.
    """

    ask: Callable[..., Any]
    given: Mapping[str, Any]
    expected: float
    tolerance: float
    source: str
    how: str

    def __str__(self) -> str:
        return f"{self.ask.__name__}, {self.source}"
