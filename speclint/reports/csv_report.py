"""All checks as comma-separated values after RFC 4180: one row for each check, for a spreadsheet or a data frame."""

from __future__ import annotations

import csv
import io

from speclint.checking import Assessment, Check
from speclint.quantities import displayed
from speclint.reports.accepted import Standings, standings_of
from speclint.reports.printable import visible
from speclint.rules import Amount

COLUMNS = (
    "component",
    "kind",
    "family",
    "rule",
    "edition",
    "outcome",
    "grade",
    "utilisation",
    "found",
    "found unit",
    "limit",
    "limit unit",
    "load case",
    "governing",
    "says",
    "missing",
    "concession",
    "file",
    "line",
    "key",
    "fingerprint",
)
#: Characters that a spreadsheet takes for the beginning of a formula.
_FORMULA = ("=", "+", "-", "@")
_FIGURES = 10  # as in the JSON document


def write(assessment: Assessment) -> str:
    """The table with its heading; lines end as the standard has it."""
    text = io.StringIO()
    rows = csv.writer(text, lineterminator="\r\n")
    rows.writerow(COLUMNS)
    conceded = standings_of(assessment)
    for check in assessment.checks:
        rows.writerow(visible(cell) for cell in _row(check, conceded))
    return text.getvalue()


def _row(check: Check, conceded: Standings) -> list[str]:
    judgement = check.judgement
    found = _amount(judgement.found if judgement else None)
    limit = _amount(judgement.limit if judgement else None)
    standing = conceded.get((check.component, check.rule.name))
    return [
        as_text(check.component),
        as_text(check.kind),
        check.rule.family,
        check.rule.name,
        str(check.rule.edition),
        check.outcome,
        check.grade.word if check.grade else "",
        "" if check.utilisation is None else _number(check.utilisation),
        *found,
        *limit,
        check.case,
        as_text("; ".join(check.governing)),
        as_text(check.could_not_run or check.says),
        as_text("; ".join(check.missing)),
        as_text(f"{standing.concession.number} {standing.state}") if standing else "",
        as_text(check.where.file),
        str(check.where.line or ""),
        as_text(check.where.key),
        check.fingerprint,
    ]


def as_text(text: str) -> str:
    """Text that a spreadsheet shows and never evaluates: an apostrophe marks it as text."""
    shown = visible(text)
    return f"'{shown}" if shown.lstrip().startswith(_FORMULA) else shown


def _amount(amount: Amount | None) -> tuple[str, str]:
    if amount is None:
        return "", ""
    value, unit = displayed(amount.value, amount.unit, amount.written_in)
    return _number(value), unit


def _number(value: float) -> str:
    return f"{value:.{_FIGURES}g}"
