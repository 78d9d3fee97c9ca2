"""How much of its limit each check uses and by which values: as a page, as a table and as data."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Iterator
from typing import Any

from speclint.checking import Assessment, Margin, Margins, Sensitivity
from speclint.reports.csv_report import as_text
from speclint.reports.finding_lines import called
from speclint.reports.page import Page
from speclint.reports.phrases import CAUTION, NO_MARGIN, count, share_used
from speclint.reports.printable import visible
from speclint.reports.published import published_schema

SCHEMA = "speclint.margins/1"
_FIGURES = 6  # of a share, in tables and data
_SHOWN = 0.005  # a value that carries less is not printed: it would read 0.00
_COLUMN = 10
_COLUMNS = (
    "component",
    "rule",
    "family",
    "outcome",
    "grade",
    "load case",
    "used",
    "alike",
    "value",
    "of",
    "written",
    "file",
    "line",
    "key",
    "used at low",
    "used at high",
    "carried",
    "used more by 10 K",
    "why not",
)


def margins_schema() -> str:
    """The JSON Schema of the data, published with the package."""
    return published_schema(SCHEMA)


def margins_page(assessment: Assessment, found: Margins, width: int) -> Page:
    """Each check, the least to spare first, with the values whose tolerance carries most of it."""
    page = Page(width)
    what = called(assessment, found.component) if found.component else "all components"
    page.ends("MARGINS", what, "strong")
    page.wrapped(
        "Before each check the share of its limit that is used; before each value the share that its tolerance "
        "carries: by so much the use differs between its low and its high limit, all else at the worst."
    )
    if (hottest := found.hottest) is not None:
        page.wrapped(_hottest(*hottest))
    for margin in found.listed:
        _margin(page, margin, of_one=bool(found.component))
    page.gap()
    page.wrapped(_rest(found))
    if unread := len(assessment.complaints):
        page.wrapped(f"{count(unread, 'line')} could not be read: speclint check says which.")
    page.wrapped(CAUTION, emphasis="faint")
    return page


def _hottest(margin: Margin, value: Sensitivity) -> str:
    return (
        f"The temperature that matters most: {value.name}, {value.written} in {margin.check.case or 'every case'} "
        f"({_place(value)}), carries {share_used(value.carried)} of {margin.check.rule.name} on "
        f"{margin.check.component}{_by_ten(value)}."
    )


def _by_ten(value: Sensitivity) -> str:
    if value.hotter is None or not math.isfinite(value.hotter):
        return ""
    way = "more" if value.hotter >= 0 else "less"
    return f"; 10 K hotter it is {abs(value.hotter):.2f} {way}"


def _place(value: Sensitivity) -> str:
    return f"{value.where.file}:{value.where.line}" if value.where.file else "a table"


def _margin(page: Page, margin: Margin, *, of_one: bool) -> None:
    check = margin.check
    part = "" if of_one else f"{check.component} "
    alike = f" and {len(margin.alike)} more alike" if margin.alike else ""
    case = f", {check.case}" if check.case else ""
    outcome = "" if check.outcome == "conforms" else f": {check.grade.word if check.grade else check.outcome}"
    if margin.values:
        page.gap()
    page.entry(
        f"{_used(margin.used):>6}",
        f"{part}{check.rule.name}{alike}{case}{outcome}",
        indent=0,
        column=8,
        emphasis="strong",
    )
    told = [one for one in margin.values or () if one.carried >= _SHOWN]
    for one in told:
        of = f" of {one.owner}" if one.owner and one.owner not in (*one.name.split(), check.component) else ""
        page.entry(
            f"{_used(one.carried):>6}", f"{one.name}{of}: {one.written}{_by_ten(one)}", indent=8, column=8
        )
    if margin.values is not None and not told:
        page.entry("", "no tolerance carries any of it", indent=8, column=8, emphasis="faint")


def _used(share: float) -> str:
    said = share_used(share)
    return "all" if said == NO_MARGIN else said


def _rest(found: Margins) -> str:
    parts = []
    if found.varied < len(found.listed):
        left = len(found.listed) - found.varied
        parts.append(
            f"The values of the first {count(found.varied, 'check')} were varied, not of the other {left}: "
            "--vary N varies more"
        )
    if found.without_numbers:
        word = "check compares" if found.without_numbers == 1 else "checks compare"
        parts.append(f"{found.without_numbers} {word} no numbers")
    return f"{'; '.join(parts) or 'Every check that compares numbers is listed'}."


def margins_csv(found: Margins) -> str:
    """The same as a table: one row for each value of a check, one for a check without; after RFC 4180."""
    text = io.StringIO()
    rows = csv.writer(text, lineterminator="\r\n")
    rows.writerow(_COLUMNS)
    for margin in found.listed:
        head = _head(margin)
        rows.writerows(
            [*head, *cells] for cells in (list(_cells(margin)) or [[""] * (len(_COLUMNS) - len(head))])
        )
    return text.getvalue()


def _head(margin: Margin) -> list[str]:
    check = margin.check
    return [
        as_text(check.component),
        check.rule.name,
        check.rule.family,
        check.outcome,
        check.grade.word if check.grade else "",
        check.case,
        _figure(margin.used),
        as_text("; ".join(margin.alike)),
    ]


def _cells(margin: Margin) -> Iterator[list[str]]:
    for one in margin.values or ():
        yield [
            as_text(one.name),
            as_text(one.owner),
            as_text(visible(one.written)),
            as_text(one.where.file),
            str(one.where.line or ""),
            as_text(one.where.key),
            _figure(one.low),
            _figure(one.high),
            _figure(one.carried),
            _figure(one.hotter),
            one.why_not,
        ]


def _figure(share: float | None) -> str:
    if share is None:
        return ""
    return f"{share:.{_FIGURES}g}" if math.isfinite(share) else NO_MARGIN


def margins_data(assessment: Assessment, found: Margins) -> dict[str, Any]:
    """The same as plain data, schema ``speclint.margins/1``."""
    hottest = found.hottest
    return {
        "schema": SCHEMA,
        "component": found.component or None,
        "margins": [_margin_data(one) for one in found.listed],
        "hottest": None
        if hottest is None
        else {
            "component": hottest[0].check.component,
            "rule": hottest[0].check.rule.name,
            **_value_data(hottest[1]),
        },
        "without_numbers": found.without_numbers,
        "varied": found.varied,
        "not_read": [str(one) for one in assessment.complaints],
    }


def _margin_data(one: Margin) -> dict[str, Any]:
    check = one.check
    return {
        "component": check.component,
        "alike": list(one.alike),
        "rule": check.rule.name,
        "family": check.rule.family,
        "outcome": check.outcome,
        "grade": check.grade.word if check.grade else None,
        "case": check.case or None,
        "used": _number(one.used),
        "values": None if one.values is None else [_value_data(value) for value in one.values],
    }


def _value_data(one: Sensitivity) -> dict[str, Any]:
    return {
        "value": one.name,
        "of": one.owner or None,
        "written": one.written,
        "file": one.where.file or None,
        "line": one.where.line or None,
        "key": one.where.key or None,
        "used_at_low": _number(one.low),
        "used_at_high": _number(one.high),
        "carried": _number(one.carried),
        "temperature": one.temperature,
        "used_more_by_10_K": _number(one.hotter),
        "why_not": one.why_not or None,
    }


def _number(share: float | None) -> float | str | None:
    """A share of a limit; in words where no margin is left, which JSON has no number for."""
    if share is None or math.isfinite(share):
        return share
    return NO_MARGIN
