"""A rule at the governing corner of each of its load cases, written down in full."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from functools import partial
from typing import NoReturn

from msgspec import Struct

from speclint.checking.corner_runs import CornerRuns, Highs, highs
from speclint.checking.load_case import case_of
from speclint.checking.one_corner import ending_at, run
from speclint.checking.proof import Ranges
from speclint.checking.proved import Proof
from speclint.checking.severity import Ending, severity
from speclint.checking.unstated_case import UnstatedCase
from speclint.checking.worked_once import CaseWorked, Renamed, Worked
from speclint.checking.worst_corner import Effort, find_worst
from speclint.errors import replace
from speclint.rules import (
    Context,
    Corner,
    Judgement,
    KnownRanges,
    NotApplicable,
    NotAssessed,
    NotEnclosed,
    OverBox,
    Record,
    Rule,
    RuleEnded,
    Sheet,
    at_corners,
    over_box,
)
from speclint.specs import Component, LoadCase

#: A check that a part alike shares, and how it is renamed.
Known = tuple[Worked, Renamed] | None
#: Of a load case that is not stated no corner is run.
_NOTHING_RUN = Proof("nothing is toleranced", True, 0)


class CaseResult(Struct, frozen=True):
    """A rule at the governing corner of one load case, written down in full.

    ``failing`` are its comparisons that fail, each at its own worst corner, the gravest first, with its place among
    all that the rule made.
    """

    case: str
    ending: Ending
    sheet: Sheet
    corner: Corner
    governing: tuple[str, ...]
    proof: Proof
    failing: tuple[tuple[object, Judgement], ...] = ()
    also: tuple[Record, ...] = ()
    worked: CaseWorked | None = None
    at_worst: tuple[str, ...] = ()

    @property
    def basis(self) -> dict[str, str]:
        """What it rests on, the inputs of what fails elsewhere among it."""
        found: dict[str, str] = {}
        for record in (*self.also, self.sheet.record):
            found.update(record.basis)
        return found


def results_by_case(
    rule: Rule, component: Component, context: Context, effort: Effort, known: Known
) -> Iterator[CaseResult]:
    """The result of a rule in each of its load cases; once where it has none."""
    for name in rule.cases or ("",):
        case = case_of(rule, component, name, context) if name else None
        if isinstance(case, NotAssessed):
            yield _unstated(rule, component, case, name, context, effort)
        else:
            again = _again(rule, component, case, name, context, known)
            yield again or _governing(rule, component, case, name, context, effort)


def _again(
    rule: Rule, component: Component, case: LoadCase | None, name: str, context: Context, known: Known
) -> CaseResult | None:
    """A load case at the corners that govern a part alike; None where there is none, or it comes out otherwise."""
    worked = known[0].cases.get(name) if known else None
    if known is None or worked is None:
        return None
    renamed = known[1]
    corner = Corner(renamed.sides(worked.sides))
    ending, sheet = run(rule, component, case, context, corner, record=True)
    if severity(ending, rule) != worked.severity:
        return None
    matter = [(renamed.key(key), high) for key, high in worked.matter]
    if any(key not in sheet.record.labels for key, _ in matter):
        return None
    words, values = _sides(sheet.record, matter)
    written = {highs(corner.met): (ending, sheet)}

    def write(other: Corner) -> tuple[Ending, Sheet]:
        key = highs(other.met)
        if key not in written:
            written[key] = run(rule, component, case, context, Corner(other.met), record=True)
        return written[key]

    places = [(place, _met(renamed.sides(sides))) for place, sides in worked.failing]
    failing, also = failing_at(places, write)
    return CaseResult(name, ending, sheet, corner, words, worked.proof, failing, also, worked, values)


def _sides(
    record: Record, matter: Sequence[tuple[Hashable, bool]]
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The inputs whose side decides in words, and the same with the value of each."""
    words = tuple(f"{record.named(key)} {'high' if high else 'low'}" for key, high in matter)
    return words, tuple(record.side(key, high=high) for key, high in matter)


def _met(sides: Mapping[Hashable, bool]) -> Corner:
    """A corner as it is once its inputs were taken."""
    corner = Corner(sides)
    corner.met.update(sides)
    return corner


def _unstated(
    rule: Rule, component: Component, case: NotAssessed, name: str, context: Context, effort: Effort
) -> CaseResult:
    """A load case that is not stated: written down as wanting, unless the rule never asks for it."""
    runs = CornerRuns(partial(ending_at, rule, component, case, context), rule)
    worst = runs.at({})
    if isinstance(worst.ending, NotApplicable):  # at every corner, or the case is wanting
        worst = find_worst(_no_box, runs, replace(effort, boxes=0)).run
    if isinstance(worst.ending, NotApplicable):
        corner = worst.corner
        ending, sheet = run(rule, component, UnstatedCase(case), context, Corner(corner.met), record=True)
        return CaseResult(name, ending, sheet, corner, (), _NOTHING_RUN)
    sheet = Sheet(rule, component, context, Corner(), record=True)
    sheet.record.note(f"load case {name}", "not stated")
    return CaseResult(name, case, sheet, Corner(), (), _NOTHING_RUN)


def _no_box(_: Mapping[Hashable, bool], __: Ranges) -> NoReturn:
    raise NotEnclosed("the load case is not stated")


def _governing(
    rule: Rule, component: Component, case: LoadCase | None, name: str, context: Context, effort: Effort
) -> CaseResult:
    runs = CornerRuns(
        partial(ending_at, rule, component, case, context),
        rule,
        partial(at_corners, rule, component, case, context),
    )
    written: dict[Highs, tuple[Ending, Sheet]] = {}

    def write(corner: Corner) -> tuple[Ending, Sheet]:
        key = highs(corner.met)
        if key not in written:
            written[key] = run(rule, component, case, context, Corner(corner.met), record=True)
        return written[key]

    if rule.name not in context.toleranced:  # then the first run is likely to be the only one
        at_low = Corner()
        first = run(rule, component, case, context, at_low, record=True)
        runs.keep(at_low, first[0])
        written[highs(at_low.met)] = first

    known = KnownRanges()

    def boxed(sides: Mapping[Hashable, bool], ranges: Ranges) -> OverBox | RuleEnded:
        return over_box(rule, component, case, context, sides, ranges, known)

    found = find_worst(boxed, runs, effort)
    corner = found.run.corner
    if corner.met:
        context.toleranced.add(rule.name)
    ending, sheet = write(corner)
    words, values = _sides(sheet.record, found.matter)
    failing, also = failing_at(runs.failing, write)
    places = tuple((place, dict(one.met)) for place, one in runs.failing)
    worked = CaseWorked(dict(corner.met), severity(ending, rule), found.matter, found.proof, places)
    return CaseResult(name, ending, sheet, corner, words, found.proof, failing, also, worked, values)


def failing_at(
    places: Sequence[tuple[tuple[int, int, str], Corner]], write: Callable[[Corner], tuple[Ending, Sheet]]
) -> tuple[tuple[tuple[object, Judgement], ...], tuple[Record, ...]]:
    """Every comparison that fails, written down at its own worst corner; and what else those rest on.

    What one look-up gives at another corner is no other input: only what the governing corner does not take is added.
    """
    parts: list[tuple[object, Judgement]] = []
    also: list[Record] = []
    for (number, index, compared), corner in places:
        there, sheet = write(corner)
        if isinstance(there, Judgement) and index < len(there.every):
            parts.append(((number, index, compared), there.every[index]))
            also.append(sheet.record)
    return tuple(parts), () if len(parts) < 2 else tuple(also)
