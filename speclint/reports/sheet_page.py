"""The calculation sheet of a check, line by line, as an engineer would set it out to be signed."""

from __future__ import annotations

from collections.abc import Sequence

from speclint.checking import Assessment, Check
from speclint.quantities import System
from speclint.reports.page import Page
from speclint.reports.phrases import CAUTIONS, said_of_item
from speclint.reports.sheet_text import Line, SheetText, sheet_of

#: How every sheet ends, whatever its form.
SIGNED = "Prepared by speclint from the specs named above. Checked by: ____________  date: ________"


def write(assessment: Assessment, checks: Sequence[Check], width: int, system: System = "as written") -> Page:
    """The sheets of some checks, one after the other."""
    page = Page(width)
    for number, check in enumerate(checks, start=1):
        _sheet(page, sheet_of(assessment, check, system), f"sheet {number} of {len(checks)}")
    page.rule("═")
    for caution in CAUTIONS:
        page.wrapped(caution, emphasis="faint")
    page.wrapped(SIGNED)
    return page


def _sheet(page: Page, sheet: SheetText, number: str) -> None:
    check = sheet.check
    page.rule("═")
    page.ends(f"CALCULATION SHEET   {check.component}", number, "strong")
    page.ends(f"{check.rule.name}, edition {check.rule.edition}", f"family {check.rule.family}")
    page.wrapped(check.rule.title, emphasis="strong")
    page.entry("why", check.rule.why, indent=0)
    page.entry("worked for", sheet.worked_for, indent=0, column=12)
    if sheet.like:
        page.entry("part", sheet.like, indent=0, column=12)
    page.rule()
    for at, line in enumerate(sheet.lines, start=1):
        _line(page, at, line, sheet.number_of(line.source))
    page.rule()
    _result(page, sheet)
    page.entry("not covered", check.rule.leaves_out, indent=0, column=13)
    page.line(("Sources", "strong"))
    for index, source in enumerate(sheet.sources, start=1):
        page.entry(f"[{index}]", source, indent=2, column=5)


def _line(page: Page, number: int, line: Line, source: int) -> None:
    mark = f"[{source}]" if source else ""
    if line.equation:
        page.ends(f"{number:3}  {line.name}", mark, hanging=5)
        page.wrapped(line.equation, indent=7, hanging=4)
        page.wrapped(f"= {line.numbers}", indent=9, hanging=4)
        page.wrapped(f"{line.symbol} = {line.value}", indent=7, emphasis="strong")
        return
    symbol = f"{line.symbol} = " if line.symbol else ""
    origin = f"{line.where.file}:{line.where.line}" if line.where else mark
    page.ends(f"{number:3}  {line.name}: {symbol}{line.value}", origin, hanging=5)
    if line.note:
        page.wrapped(line.note, indent=7, emphasis="faint")


def _result(page: Page, sheet: SheetText) -> None:
    check = sheet.check
    grade = f", grade {check.grade.word}" if check.grade else ""
    page.entry(
        f"{check.outcome.upper()}{grade}:",
        "; ".join(part for part in (sheet.result, sheet.used) if part),
        indent=0,
        column=len(check.outcome) + 2,
        emphasis="strong",
    )
    for other in check.also_failing:
        page.entry("and", said_of_item(other), indent=0)
    if check.missing:
        page.entry("needs", "; ".join(check.missing), indent=0)
    for remedy in sheet.would_clear:
        page.entry("would clear", remedy, indent=0, column=13)
    if sheet.refer_to:
        page.entry("refer to", sheet.refer_to, indent=0, column=10)
