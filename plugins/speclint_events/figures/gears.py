"""The gears that are drawn: of gears alike the first, with what its checks took and what their sheets show."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from speclint import Assessment, Check, Sheet
from speclint.facts import CylinderGiven, GearAtWork, cylinder_given
from speclint.reports import specs_of, taken_again
from speclint.specs import Component, LoadCase, ValveGear
from speclint_events.inputs import running_notch

#: The rule whose inputs are drawn: it takes everything on which the cycle of a cylinder rests.
_RULE = "cycle.steam-rate"


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

    def on_sheet(self, rule: str, symbol: str) -> float | None:
        """The last number that the sheet of a rule shows under a symbol; None where there is none."""
        check = self.checks.get(rule)
        found = [step.value for step in check.steps if step.symbol == symbol] if check else []
        return found[-1] if found and isinstance(found[-1], float) else None

    def limit(self, rule: str, name: str) -> float | None:
        """A limit that a rule used, by its name in words as the sheet has it."""
        check = self.checks.get(rule)
        found = (
            [step.value for step in check.steps if step.kind == "limit" and step.name == name]
            if check
            else []
        )
        return found[-1] if found and isinstance(found[-1], float) else None


def gears_drawn(assessment: Assessment) -> Iterator[GearDrawn]:
    """The gears of which the cylinder is known, each with those alike."""
    found: list[GearDrawn] = []
    for gear in specs_of(assessment, ValveGear):
        checks = {check.rule.name: check for check in assessment.checks if check.component == gear.id}
        taken = taken_again(assessment, checks[_RULE], _taken) if _RULE in checks else None
        if taken is not None:
            found.append(GearDrawn(gear.id, *taken, checks))
    while found:
        first = found[0]
        alike = [one for one in found if one.notches == first.notches and one.notch == first.notch]
        found = [one for one in found if one not in alike]
        names = tuple(one.name for one in alike[1:])
        yield GearDrawn(first.name, first.notch, first.notches, first.directions, first.checks, names)


def _taken(
    gear: Component, case: LoadCase, sheet: Sheet
) -> tuple[str, dict[str, CylinderGiven], dict[str, str]]:
    assert isinstance(gear, ValveGear)
    at_work = GearAtWork(gear, case, sheet)
    notch = running_notch(at_work, case, sheet)
    given = {name: cylinder_given(at_work, name, case, sheet) for name in at_work.running}
    return notch, given, {name: at_work.direction(name) for name in at_work.running}
