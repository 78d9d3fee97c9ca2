"""What other keys say of the order of the making, against the list."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Sheet, Worked, agreement
from speclint.facts import Made, finished_after_relief, places_of, steps_of
from speclint.specs import AccessPlan, CylinderBlock, CylinderLiner, ValveSeat, Weldment
from speclint_making.inputs.fitted_parts import goes_in_at
from speclint_making.inputs.steps import RELIEF, WELDS, place_of

_SCOPE = "whether the work is done in that order"


def _relief(part: CylinderBlock | Weldment, sheet: Sheet) -> Iterator[Pair]:
    """Heat treatment against whether the list has a stress relief; before_finishing against the place of that."""
    yield from _treated(part, sheet)
    yield from _last_weld(part, sheet)
    if isinstance(part, Weldment):
        finished = finished_after_relief(part, sheet)
        if finished is not None:
            yield Pair(part.treatment.before_finishing, finished, name="finished after relief")


def _treated(part: Made, sheet: Sheet) -> Iterator[Pair]:
    if not sheet.is_stated("heat treatment", part.welding.heat_treatment):
        return
    said = sheet.read("heat treatment", part.welding.heat_treatment)
    steps = steps_of(part, sheet)
    relief = places_of(RELIEF, steps)
    if steps and (
        relief or said == "none"
    ):  # of a relief that is stated and not listed making.steps-complete tells
        where = (steps[relief[-1]].where,) if relief else (steps[0].where,)
        there = Worked("stress relieved" if relief else "none", where)
        yield Pair(part.welding.heat_treatment, there, name="heat treatment")


def _last_weld(part: CylinderBlock | Weldment, sheet: Sheet) -> Iterator[Pair]:
    steps = steps_of(part, sheet)
    welds, relief = places_of(WELDS, steps), places_of(RELIEF, steps)
    if welds and relief:
        there = "before stress relief" if welds[-1] < relief[-1] else "after stress relief"
        where = (steps[welds[-1]].where, steps[relief[-1]].where)
        yield Pair(part.making.last_weld, Worked(there, where), name="last weld")


relief_as_stated = agreement(
    "making.relief-as-stated",
    on=(CylinderBlock, Weldment),
    pairs=_relief,
    title="What a spec says of heat treatment, of the last weld before it and of finishing after it is what its "
    "list of steps says",
    why="of two statements of one order the shop follows the one that it sees first",
    leaves_out=_SCOPE,
    grade=Grade.NONCONFORMITY,
    within="",
    edition=3,
)


def _bored(liner: CylinderLiner, sheet: Sheet) -> Iterator[Pair]:
    """finish_bored_after against whether "finish bore" follows the step of the liner in the block's list."""
    steps = steps_of(sheet.follow(liner.housed_in), sheet)
    at = place_of(goes_in_at(liner, sheet), steps)
    bored = places_of(("finish bore",), steps)
    if at is not None and bored:
        where = (steps[at].where, steps[bored[-1]].where)
        yield Pair(liner.finish_bored_after, Worked(bored[-1] > at, where), name="bored in its place")


bored_as_stated = agreement(
    "making.bored-as-stated",
    on=CylinderLiner,
    pairs=_bored,
    title="A liner is said to be bored in its place where the list of its block bores after it is in, and not else",
    why="a liner that each thinks the other bores is bored by nobody",
    leaves_out=_SCOPE,
    grade=Grade.NONCONFORMITY,
    within="",
)


def _lapped(plan: AccessPlan, sheet: Sheet) -> Iterator[Pair]:
    """Whether a seat is lapped in its place against a step "lap valves" after the one at which the seat goes in."""
    steps = steps_of(sheet.follow(plan.serves), sheet)
    lapped = place_of("lap valves", steps)
    if lapped is None and places_of(("set tappets",), steps):
        return  # making.lapped-before-set tells of it
    for seat in sheet.belonging_to(sheet.follow(plan.serves), ValveSeat):
        at = place_of(goes_in_at(seat, sheet), steps)
        if at is not None and seat.id in plan.seats:
            places = (at,) if lapped is None else (at, lapped)
            there = Worked(lapped is not None and at < lapped, tuple(steps[place].where for place in places))
            yield Pair(plan.seats[seat.id].lapped_in_place, there, name=seat.id)


lapped_as_stated = agreement(
    "making.lapped-as-stated",
    on=AccessPlan,
    pairs=_lapped,
    title="A seat is said to be lapped in its place where the list of its block laps valves after it is in, "
    "and not else",
    why="a seat that is lapped on the bench is out of line in the block",
    leaves_out=_SCOPE,
    grade=Grade.NONCONFORMITY,
    within="",
    edition=2,
)

RULES = (relief_as_stated, bored_as_stated, lapped_as_stated)
