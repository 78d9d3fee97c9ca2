"""The gears that are drawn: of gears alike the first, with what its checks took and what their sheets show."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from speclint import Assessment, Check, Sheet
from speclint.facts import CylinderGiven, GearAtWork, cylinder_given
from speclint.handbook.steam_cycle import CylinderEnd
from speclint.handbook.valve_events import positions_of
from speclint.reports import DrawnAgain, OnSheet, Quantity, specs_of, taken_again
from speclint.specs import Component, LoadCase, ValveGear
from speclint_events.inputs import running_notch

#: The rule whose inputs are drawn: it takes everything on which the cycle of a cylinder rests.
STEAM_RATE = "cycle.steam-rate"


@dataclass(frozen=True)
class GearDrawn:
    """A gear in the notch of its load case, and what its cylinder is given in every notch in which the engine runs.

    ``directions`` of the notches, forward or backward; ``alike`` are the ids of other gears of which the drawing would
    be the same.
    """

    name: str
    notch: str
    notches: dict[str, CylinderGiven]
    directions: dict[str, str]
    checks: dict[str, Check] = field(repr=False)
    alike: tuple[str, ...] = ()

    @property
    def given(self) -> CylinderGiven:
        """The cylinder in the notch of its load case."""
        return self.notches[self.notch]

    @property
    def of(self) -> str:
        """Of which gears, notch and speed a drawing is, in words."""
        names = ", ".join((self.name, *self.alike))
        return f"{names}: notch {self.notch}, {self.given.speed * 60:.6g} rev/min"

    def again(self, formula: Callable[[GearDrawn], float]) -> Quantity:
        """A number of this gear as drawn, by a formula of all that its check takes."""
        return Quantity(formula(self), DrawnAgain(self.name, STEAM_RATE, gear_of, formula))

    def quantity(self, rule: str, symbol: str) -> Quantity | None:
        """The same as :meth:`on_sheet`, with where it stands."""
        value = self.on_sheet(rule, symbol)
        return None if value is None else Quantity(value, OnSheet(self.name, rule, symbol))

    def end(self, notch: str, side: str) -> CylinderEnd:
        """An end of its cylinder in a notch, hot."""
        given = self.notches[notch]
        return (given.front if side == "front" else given.back).at("hot")

    def on_sheet(self, rule: str, symbol: str) -> float | None:
        """The last number that the sheet of a rule shows under a symbol; None where there is none."""
        check = self.checks.get(rule)
        found = [step.value for step in check.steps if step.symbol == symbol] if check else []
        return found[-1] if found and isinstance(found[-1], float) else None

    def limit(self, rule: str, name: str) -> float | None:
        """A limit that a rule used, by its name in words as the sheet has it."""
        steps = self.checks[rule].steps if rule in self.checks else ()
        found = next((step.value for step in steps if step.kind == "limit" and step.name == name), None)
        return found if isinstance(found, float) else None


def gears_drawn(assessment: Assessment) -> Iterator[GearDrawn]:
    """The gears of which the cylinder is known, each with those alike."""
    found: list[GearDrawn] = []
    for gear in specs_of(assessment, ValveGear):
        checks = {check.rule.name: check for check in assessment.checks if check.component == gear.id}
        taken = taken_again(assessment, checks[STEAM_RATE], _taken) if STEAM_RATE in checks else None
        if taken is not None:
            found.append(GearDrawn(gear.id, *taken, checks))
    while found:
        first = found[0]
        alike = [one for one in found if one.notches == first.notches and one.notch == first.notch]
        found = [one for one in found if one not in alike]
        names = tuple(one.name for one in alike[1:])
        yield GearDrawn(first.name, first.notch, first.notches, first.directions, first.checks, names)


def gear_of(assessment: Assessment, name: str) -> GearDrawn:
    """The gear that is drawn under a name, taken anew."""
    return next(one for one in gears_drawn(assessment) if one.name == name)


def angle_of(notch: str, side: str, event: str, drawn: GearDrawn) -> float:
    """The crank angle of an event."""
    return float(getattr(drawn.end(notch, side).events, event))


def share_at(notch: str, side: str, event: str, drawn: GearDrawn) -> float:
    """The share of the stroke at an event, made or left."""
    end = drawn.end(notch, side)
    return float(getattr(positions_of(end.events, end.crank, end.end), event))


def travel_at(notch: str, side: str, event: str, drawn: GearDrawn) -> float:
    """How far from its end the piston is at an event."""
    end = drawn.end(notch, side)
    return positions_of(end.events, end.crank, end.end).travel(event)


def _taken(
    gear: Component, case: LoadCase, sheet: Sheet
) -> tuple[str, dict[str, CylinderGiven], dict[str, str]]:
    assert isinstance(gear, ValveGear)
    at_work = GearAtWork(gear, case, sheet)
    notch = running_notch(at_work, case, sheet)
    given = {name: cylinder_given(at_work, name, case, sheet) for name in at_work.running}
    return notch, given, {name: at_work.direction(name) for name in at_work.running}
