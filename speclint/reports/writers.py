"""The report writers of the core."""

from __future__ import annotations

from speclint.reports import ReportWriter


def own_writers() -> dict[str, ReportWriter]:
    """The writers of the core by name."""
    return {"json": ReportWriter("json", "one document for machines, schema speclint.result/1", _json)}


def _json(assessment):  # type: ignore[no-untyped-def]
    from speclint.reports.jsoned import write

    return write(assessment)
