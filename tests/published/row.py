"""One published check: what is asked of a formula, what the source prints, and how that was obtained."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, get_args

from tests.published.proof import How, Proof

_HANDBOOK = "speclint.handbook."


@dataclass(frozen=True)
class Row:
    """A check value in SI, with the relative tolerance that the printed digits allow.

    ``how``: seen in a copy of the document, library (computed with the one named), derived by hand,
    or memory of the work named. ``of`` names the handbook module that the row proves, where ``ask`` is a
    function of the test file and not of the handbook.
    """

    ask: Callable[..., Any]
    given: Mapping[str, Any]
    expected: float
    tolerance: float
    source: str
    how: How
    of: str = ""

    def __post_init__(self) -> None:
        if not self.of and not self.ask.__module__.startswith(_HANDBOOK):
            raise ValueError(f"{self}: say which module it is of")
        if self.how not in get_args(How):
            raise ValueError(f"{self}: {self.how} does not say how the value was obtained")

    def __str__(self) -> str:
        return f"{self.ask.__name__}, {self.source}"

    @property
    def proof(self) -> Proof:
        """What this row proves of which module, by which source."""
        topic = self.of or self.ask.__module__.removeprefix(_HANDBOOK)
        return Proof((topic,), {self.source: self.how})
