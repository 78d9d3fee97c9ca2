"""The calculation sheet of a check as data: what every form of it shows, in the units that the reader asks for."""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from functools import partial

from msgspec import Struct

from speclint.checking import Assessment, Check, Remedy, Sought
from speclint.errors import Location
from speclint.quantities import System, amount_in, sides, substituted
from speclint.reports.phrases import referred_to, said_of_none, units_asked, units_of
from speclint.reports.taken_over import said_of_like
from speclint.rules import Grade, Judgement, Step

_REMEDIES_SHOWN = 3


class Line(Struct, frozen=True, eq=False):
    """One line of a sheet, which stands in every sheet that has the same.

    ``equation`` has the symbol of the sheet on its left; ``values`` are the numbers put in, by argument, and
    ``numbers`` the right-hand side with them. ``source`` is "" for none; ``where`` the place in a spec.
    """

    name: str
    symbol: str
    value: str
    equation: str = ""
    numbers: str = ""
    values: Mapping[str, str] | None = None
    note: str = ""
    source: str = ""
    where: Location | None = None


class SheetText(Struct, frozen=True):
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

    def number_of(self, source: str) -> int:
        """The number of a source in the list of the sheet; 0 for none."""
        return self.sources.index(source) + 1 if source else 0


class Lines:
    """The lines of sheets in some units, each worked out once however many sheets have it."""

    def __init__(self, system: System) -> None:
        self._system = system
        self._met: dict[Hashable, Line] = {}

    def of(self, step: Step) -> Line:
        """The line of a step; the very same for steps that a sheet cannot tell apart."""
        told = _told_apart_by(step)
        line = self._met.get(told)
        if line is None:
            line = self._met[told] = _line(step, self._system)
        return line


def sheet_of(
    assessment: Assessment, check: Check, system: System = "as written", lines: Lines | None = None
) -> SheetText:
    """The sheet of one check; ``lines``, in the units that are shown, are those that it shares with other sheets."""
    own = units_of(assessment)
    chosen = units_asked(assessment, system)
    met = lines or Lines(chosen)
    shown = tuple(met.of(step) for step in check.steps)
    sources = [line.source for line in shown if line.source] + [str(one) for one in check.rule.cites]
    return SheetText(
        check,
        worked_for(check),
        shown,
        _result(check, "as written" if chosen == own else chosen),
        "" if check.utilisation is None else f"{check.utilisation:.3f} of the limit is used",
        _would_clear(assessment.search(check), chosen),
        referred_to(assessment) if check.grade is Grade.HOLD else "",
        tuple(dict.fromkeys(sources)),
        said_of_like(assessment, check.component),
    )


def worked_for(check: Check) -> str:
    """The load case and the tolerance corner that govern."""
    case = f"load case {check.case}" if check.case else "no load case: the part as drawn"
    corner = ", ".join(check.governing) or "no tolerance changes the result"
    return f"{case}; {corner}"


def _told_apart_by(step: Step) -> Hashable:
    """All of a step that its line shows; whether it holds is told from a count of one."""
    return (
        step.kind,
        step.symbol,
        step.name,
        step.value,
        isinstance(step.value, bool),
        step.unit,
        step.written_in,
        step.expression,
        step.filled,
        step.note,
        step.source,
        step.where,
    )


def _line(step: Step, system: System) -> Line:
    values = {name: amount_in(system, value, unit) for name, value, unit in step.filled}
    return Line(
        step.name,
        step.symbol or (sides(step.expression)[0] if step.kind == "worked" else ""),
        _value(step, system),
        _equation(step),
        substituted(step.expression, values) if step.kind == "worked" else "",
        values,
        _note(step),
        str(step.source) if step.source is not None else "",
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


def _would_clear(sought: Sought, system: System) -> tuple[str, ...]:
    said = [_remedy(one, system) for one in sought.remedies[:_REMEDIES_SHOWN]]
    return tuple(said or filter(None, [said_of_none(sought)]))


def _remedy(remedy: Remedy, system: System) -> str:
    proved = f" (then {remedy.utilisation:.3f} of the limit)" if remedy.utilisation is not None else ""
    return f"{remedy.said(partial(amount_in, system))}{proved}"
