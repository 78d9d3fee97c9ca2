"""Reports: each reads an assessment and decides nothing."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from speclint.assessment import Assessment


@dataclass(frozen=True, slots=True)
class ReportWriter:
    """A way to write an assessment: the word for ``--as``, what it is, and the function that makes the text."""

    name: str
    says: str
    write: Callable[[Assessment], str]
