"""The side load that a rocker, and its own weight, put on a spindle's guide."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import FIRST_PRINCIPLES, Grade, Pair, Rule, Sheet, agreement, worked
from speclint.handbook.springs import spring_load_at_lift
from speclint.specs import Length, LoadCase, PoppetValve, Rocker, ValveSpindle
from speclint_valves.formulae.guides import load_aslant, side_loads_together
from speclint_valves.formulae.shutting import weight_shutting
from speclint_valves.inputs.springs import springs_new


def _side_loads(spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The side load stated against that of the arm's swing at full lift, and of the weight of a spindle that lies."""
    if not (sheet.is_stated("valve", spindle.moves) and sheet.is_stated("side load", spindle.side_load)):
        return
    valve = sheet.follow(spindle.moves)
    arms = [
        one.valve_arm for one in sheet.belonging_to(spindle, Rocker) if sheet.is_stated("arm", one.valve_arm)
    ]
    lies = sheet.is_stated("opens", valve.opens) and sheet.read("opens", valve.opens) == "sideways"
    if not (arms or lies):
        return
    F, places = 0.0, []
    for arm in arms:
        F = max(F, _aslant(valve, arm, case, sheet))
        places += [arm, valve.lift]
    W = 0.0
    if lies:
        masses = {"m_v": sheet.take("m_v", valve.mass), "m_s": sheet.take("m_s", spindle.mass)}
        W = sheet.work("W", weight_shutting, g=1.0, **masses)
        places += [valve.mass, spindle.mass]
    least = sheet.work("F_q", side_loads_together, F=F, W=W)
    yield Pair(spindle.side_load, worked(least, *places), "at least")


def _aslant(valve: PoppetValve, arm: Length, case: LoadCase, sheet: Sheet) -> float:
    """What the springs, at full lift, press across the spindle through an arm that swings by that lift."""
    springs, h = springs_new(valve, case, sheet), sheet.take("h", valve.lift)
    opened = sheet.work("F_O", spring_load_at_lift, F_U=springs.shut, R=springs.rate, h=h)
    return sheet.work("F_a", load_aslant, F=opened, h=h, b=sheet.take("b_v", arm))


by_rocker: Rule = agreement(
    "spindle.side-by-rocker",
    title="The side load stated for a spindle is at least that of its rocker's swing under the open springs, with its "
    "weight where it lies on its side",
    on=ValveSpindle,
    pairs=_side_loads,
    within="",
    cases=("running",),
    cites=[FIRST_PRINCIPLES],
    grade=Grade.OBSERVATION,
    why="a guide judged for a load that nobody worked wears oval, and the valve lands on one side",
    leaves_out="friction of the arm on the spindle's end, inertia, steam, and an arm that is not square to the spindle "
    "at half lift",
)

RULES = (by_rocker,)
