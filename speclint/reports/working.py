"""The calculation sheet of a check, line by line, as an engineer would set it out to be signed."""

from __future__ import annotations

from collections.abc import Sequence

from speclint.assessment import Assessment
from speclint.checks import Check
from speclint.record import Step
from speclint.remedies import remedies
from speclint.reports.page import Page
from speclint.reports.saying import CAUTIONS, referred_to
from speclint.rules import Grade
from speclint.sources import Source
from speclint.writing import amount


def write(assessment: Assessment, checks: Sequence[Check], width: int) -> Page:
    """The sheets of some checks, one after the other."""
    page = Page(width)
    for number, check in enumerate(checks, start=1):
        _sheet(page, assessment, check, f"sheet {number} of {len(checks)}")
    page.rule("═")
    for caution in CAUTIONS:
        page.wrapped(caution, emphasis="faint")
    page.wrapped("Prepared by speclint from the specs named above. Checked by: ____________  date: ________")
    return page


def _sheet(page: Page, assessment: Assessment, check: Check, number: str) -> None:
    page.rule("═")
    page.ends(f"CALCULATION SHEET   {check.component}", number, "strong")
    page.ends(f"{check.rule.name}, edition {check.rule.edition}", f"family {check.rule.family}")
    page.wrapped(check.rule.title, emphasis="strong")
    page.entry("why", check.rule.why, indent=0)
    page.entry("worked for", _worked_for(check), indent=0, column=12)
    page.rule()
    sources = _Sources()
    for index, step in enumerate(check.steps, start=1):
        _step(page, index, step, sources)
    page.rule()
    _result(page, assessment, check)
    page.entry("not covered", check.rule.leaves_out, indent=0, column=13)
    page.line(("Sources", "strong"))
    for source in check.rule.cites:
        sources.mark(source)
    for index, source in enumerate(sources.listed, start=1):
        page.entry(f"[{index}]", str(source), indent=2, column=5)


def _worked_for(check: Check) -> str:
    case = f"load case {check.case}" if check.case else "no load case: the part as drawn"
    corner = ", ".join(check.governing) or "no tolerance changes the result"
    return f"{case}; {corner}"


class _Sources:
    """Numbers the sources of a sheet in the order in which they are met."""

    def __init__(self) -> None:
        self.listed: list[Source] = []

    def mark(self, source: Source | None) -> str:
        if source is None:
            return ""
        if source not in self.listed:
            self.listed.append(source)
        return f"[{self.listed.index(source) + 1}]"


def _step(page: Page, index: int, step: Step, sources: _Sources) -> None:
    value = step.value if isinstance(step.value, str) else _written(step)
    mark = sources.mark(step.source)
    if step.kind == "worked":
        page.ends(f"{index:3}  {step.name}", mark, hanging=5)
        left = step.symbol or step.expression.split("=")[0].strip()
        page.wrapped(_equation(step), indent=7, hanging=4)
        page.wrapped(f"= {step.numbers}", indent=9, hanging=4)
        page.wrapped(f"{left} = {value}", indent=7, emphasis="strong")
        return
    symbol = f"{step.symbol} = " if step.symbol else ""
    origin = f"{step.where.file}:{step.where.line}" if step.where.file else mark
    page.ends(f"{index:3}  {step.name}: {symbol}{value}", origin, hanging=5)
    note = f"as written: {step.note}" if step.kind == "taken" and step.note else step.note
    if step.kind == "looked up" and note:
        note = f"between {note}"
    if note:
        page.wrapped(note, indent=7, emphasis="faint")


def _equation(step: Step) -> str:
    """The equation with the symbol of this sheet on its left."""
    left, _, right = step.expression.partition("=")
    return f"{step.symbol or left.strip()} = {right.strip()}" if right else step.expression


def _written(step: Step) -> str:
    if isinstance(step.value, bool):
        return "yes" if step.value else "no"
    return amount(float(step.value), step.unit, step.written_in)


def _result(page: Page, assessment: Assessment, check: Check) -> None:
    used = f"; {check.utilisation:.3f} of the limit is used" if check.utilisation is not None else ""
    grade = f", grade {check.grade.word}" if check.grade else ""
    page.entry(
        f"{check.outcome.upper()}{grade}:",
        check.says + used,
        indent=0,
        column=len(check.outcome) + 2,
        emphasis="strong",
    )
    if check.missing:
        page.entry("needs", "; ".join(check.missing), indent=0)
    if assessment.context is not None:
        for remedy in remedies(check, assessment.checks, assessment.context)[:3]:
            proved = (
                f" (then {remedy.utilisation:.3f} of the limit)" if remedy.utilisation is not None else ""
            )
            page.entry("would clear", f"{remedy}{proved}", indent=0, column=13)
    if check.grade is Grade.HOLD:
        page.entry("refer to", referred_to(assessment), indent=0, column=10)
