"""The calculation sheet of a check as data: what every form of it shows, in the units that the reader asks for."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial

from speclint.checking import Assessment, Check, Remedy
from speclint.equations import Source
from speclint.errors import Location
from speclint.quantities import System, amount_in, sides, substituted
from speclint.reports.phrases import referred_to, units_asked, units_of
from speclint.reports.taken_over import said_of_like
from speclint.rules import Grade, Judgement, Step

_REMEDIES_SHOWN = 3


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a sheet.

    ``equation`` has the symbol of the sheet on its left; ``values`` are the numbers put in, by argument, and
    ``numbers`` the right-hand side with them. ``source`` is the number of the source in the sheet's list, 0
    for none; ``where`` the place in a spec.
    """

    number: int
    name: str
    symbol: str
    value: str
    equation: str = ""
    numbers: str = ""
    values: Mapping[str, str] | None = None
    note: str = ""
    source: int = 0
    where: Location | None = None


@dataclass(frozen=True, slots=True)
class SheetText:
    """A sheet as text: heading, lines, result, what would clear a finding, and the sources in their order.

    ``like`` says which other part the component is like, and what differs.
    """

    check: Check
    worked_for: str
    lines: tuple[Line, ...]
    result: str
    used: str
    would_clear: tuple[str, ...]
    refer_to: str
    sources: tuple[str, ...]
    like: str = ""


def sheet_of(assessment: Assessment, check: Check, system: System = "as written") -> SheetText:
    """The sheet of one check."""
    sources: list[Source] = []
    own = units_of(assessment)
    chosen = units_asked(assessment, system)
    lines = tuple(_line(number, step, sources, chosen) for number, step in enumerate(check.steps, start=1))
    for source in check.rule.cites:
        _mark(source, sources)
    return SheetText(
        check,
        worked_for(check),
        lines,
        _result(check, "as written" if chosen == own else chosen),
        "" if check.utilisation is None else f"{check.utilisation:.3f} of the limit is used",
        tuple(_remedy(remedy, chosen) for remedy in assessment.remedies(check)[:_REMEDIES_SHOWN]),
        referred_to(assessment) if check.grade is Grade.HOLD else "",
        tuple(str(source) for source in sources),
        said_of_like(assessment, check.component),
    )


def worked_for(check: Check) -> str:
    """The load case and the tolerance corner that govern."""
    case = f"load case {check.case}" if check.case else "no load case: the part as drawn"
    corner = ", ".join(check.governing) or "no tolerance changes the result"
    return f"{case}; {corner}"


def _mark(source: Source | None, listed: list[Source]) -> int:
    """The number of a source in the order in which they are met."""
    if source is None:
        return 0
    if source not in listed:
        listed.append(source)
    return listed.index(source) + 1


def _line(number: int, step: Step, sources: list[Source], system: System) -> Line:
    values = {name: amount_in(system, value, unit) for name, value, unit in step.filled}
    return Line(
        number,
        step.name,
        step.symbol or (sides(step.expression)[0] if step.kind == "worked" else ""),
        _value(step, system),
        _equation(step),
        substituted(step.expression, values) if step.kind == "worked" else "",
        values,
        _note(step),
        _mark(step.source, sources),
        step.where if step.where.file else None,
    )


def _value(step: Step, system: System) -> str:
    if isinstance(step.value, bool):
        return "yes" if step.value else "no"
    if isinstance(step.value, str):
        return step.value
    return amount_in(system, float(step.value), step.unit, step.written_in)


def _equation(step: Step) -> str:
    left, right = sides(step.expression)
    return f"{step.symbol or left} = {right}" if right else step.expression


def _note(step: Step) -> str:
    if step.kind == "taken" and step.note:
        return f"as written: {step.note}"
    return f"between {step.note}" if step.kind == "looked up" and step.note else step.note


def _result(check: Check, system: System) -> str:
    judgement = check.judgement
    if system == "as written" or judgement is None or judgement.found is None or judgement.limit is None:
        return check.says
    return f"{check.says}; in these units {_compared(judgement, system)}"


def _compared(judgement: Judgement, system: System) -> str:
    assert judgement.found is not None  # as was asked by the caller
    assert judgement.limit is not None
    found, limit = (amount_in(system, one.value, one.unit) for one in (judgement.found, judgement.limit))
    return f"{found} against {limit}"


def _remedy(remedy: Remedy, system: System) -> str:
    proved = f" (then {remedy.utilisation:.3f} of the limit)" if remedy.utilisation is not None else ""
    return f"{remedy.said(partial(amount_in, system))}{proved}"
