"""The ways to write an assessment: those of the core, and the shape in which a family adds its own."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from speclint.checking import Assessment


@dataclass(frozen=True, slots=True)
class ReportWriter:
    """A way to write an assessment: the word for ``--as``, what it is, and the function that makes the text."""

    name: str
    says: str
    write: Callable[[Assessment], str]


def own_writers() -> dict[str, ReportWriter]:
    """The writers of the core by name; each is imported when it writes."""
    writers = (
        ReportWriter("json", "one document for machines, schema speclint.result/1", _in("json_report")),
        ReportWriter("sarif", "findings in SARIF 2.1.0, for editors and forges", _in("sarif_report")),
        ReportWriter("markdown", "a summary for a change request", _in("markdown_report")),
        ReportWriter("csv", "every check, a row each, for a spreadsheet", _in("csv_report")),
    )
    return {writer.name: writer for writer in writers}


def _in(module: str) -> Callable[[Assessment], str]:
    def write(assessment: Assessment) -> str:
        writer: Callable[[Assessment], str] = import_module(f"speclint.reports.{module}").write
        return writer(assessment)

    return write
