"""The report writers of speclint itself, handed over by the same hook as those of any family."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from importlib import import_module
from typing import TYPE_CHECKING

from speclint.families import ReportWriter, family

if TYPE_CHECKING:
    from speclint.checking import Assessment


@family
def speclint_reports() -> Sequence[ReportWriter]:
    """Each is imported when it writes."""
    return (
        ReportWriter("json", "one document for machines, schema speclint.result/1", _in("json_report")),
        ReportWriter("sarif", "findings in SARIF 2.1.0, for editors and forges", _in("sarif_report")),
        ReportWriter("markdown", "a summary for a change request", _in("markdown_report")),
        ReportWriter("csv", "every check, one row each, for a spreadsheet", _in("csv_report")),
    )


def _in(module: str) -> Callable[[Assessment], str]:
    def write(assessment: Assessment) -> str:
        writer: Callable[[Assessment], str] = import_module(f"speclint.reports.{module}").write
        return writer(assessment)

    return write
