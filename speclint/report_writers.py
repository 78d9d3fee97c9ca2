"""The ways to write an assessment: those of the core, and the shape in which a family adds its own."""

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


def own_writers() -> dict[str, ReportWriter]:
    """The writers of the core by name."""
    return {"json": ReportWriter("json", "one document for machines, schema speclint.result/1", _json)}


def _json(assessment: Assessment) -> str:
    from speclint.reports.jsoned import write

    return write(assessment)
