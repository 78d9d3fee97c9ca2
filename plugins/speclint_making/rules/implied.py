"""What the specs imply of the list: each weld, press, heat treatment, test and inspection point has its step."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, NamedTuple

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import Made, steps_of
from speclint.specs import (
    BoltedJoint,
    CamBox,
    Casting,
    CylinderBlock,
    CylinderCover,
    CylinderLiner,
    FrameFastening,
    Lagging,
    LiftingPlan,
    PoppetValve,
    SteamPipe,
    ValveSeat,
    ValveSpindle,
    Weldment,
)
from speclint_making.inputs.fitted_parts import goes_in_at
from speclint_making.inputs.steps import by_stage, listed


class Implied(NamedTuple):
    """A step that something in the specs asks for."""

    word: str
    why: str


@rule(
    "making.steps-complete",
    title="Each weld, press, heat treatment and test that the specs imply, and each part that goes on or in, "
    "has its step in the list",
    on=(Weldment, CylinderBlock, Casting, CylinderLiner),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a step that nobody wrote down is done when it is too late",
    leaves_out="parts that have no spec; steps of a maker from whom a part is bought",
    edition=2,
)
def steps_complete(part: Weldment | CylinderBlock | Casting | CylinderLiner, sheet: Sheet) -> Judgement:
    """The words that the specs imply against those of the whole list."""
    implied = {one.word: one for one in reversed(list(_implied(part, sheet)))}
    if not implied:
        raise sheet.not_applicable("nothing that is stated implies a step")
    written = {word for step in listed(part, sheet) for word in (step.word, step.written)}
    wrong = [
        f'no "{one.word}", although {one.why}'
        for one in reversed(implied.values())
        if one.word not in written
    ]
    says = "; ".join(wrong) or f"{len(implied)} steps that the specs imply"
    return by_stage(sheet.states(not wrong, says, where=part.making.where), sheet)


def _implied(part: Made, sheet: Sheet) -> Iterator[Implied]:
    if isinstance(part, CylinderBlock):
        yield from _of_block(part, sheet)
        yield from _of_pressed(part, sheet)
        yield from _of_neighbours(part, sheet)
    elif isinstance(part, Weldment):
        yield from _of_weldment(part, sheet)
    elif isinstance(part, CylinderLiner):
        if sheet.is_stated("hardness", part.hardness):
            yield Implied("measure hardness", "a hardness is stated")
        if "stress-relieved" in str(_word("material", part.material, sheet)):
            yield Implied("stress relieve", "its material is stress relieved")
    elif sheet.is_stated("welded", part.welding.welded) and sheet.read("welded", part.welding.welded):
        yield Implied("weld repair", "it is welded")
    if _word("heat treatment", part.welding.heat_treatment, sheet) == "stress relieved":
        yield Implied("stress relieve", "welding.heat_treatment says so")


def _word(name: str, value: Any, sheet: Sheet) -> Any:
    return sheet.read(name, value) if sheet.is_stated(name, value) else None


def _of_weldment(weldment: Weldment, sheet: Sheet) -> Iterator[Implied]:
    if weldment.joints:
        yield Implied("weld", f"{weldment.id} has welded joints")
        yield Implied("test welds", f"{weldment.id} has welded joints")
    for name, wall in weldment.walls.items():
        if _word(f"wall {name} ribbed", wall.ribbed, sheet):
            yield Implied("weld ribs and covers", f"wall {name} has ribs")
    if weldment.cavities:
        yield Implied("open vents", "it has closed cavities")
    if sheet.is_stated("temperature of treatment", weldment.treatment.temperature):
        yield Implied("stress relieve", "treatment states its temperature")


def _of_block(block: CylinderBlock, sheet: Sheet) -> Iterator[Implied]:
    if _word("construction", block.construction, sheet) == "fabricated":
        yield from (Implied(word, "the block is fabricated") for word in ("weld", "stress relieve"))
    if sheet.is_stated("test pressure", block.test_pressure):
        yield Implied("hydraulic test", "a test pressure is stated")
    for plan in sheet.belonging_to(block, LiftingPlan):
        if any(_word(f"form of {name}", point.form, sheet) == "lug" for name, point in plan.points.items()):
            yield Implied("weld lugs and bosses", f"{plan.id} lifts it by lugs")


def _of_pressed(block: CylinderBlock, sheet: Sheet) -> Iterator[Implied]:
    """What liners, seats and guides ask for."""
    for liner in sheet.belonging_to(block, CylinderLiner):
        yield Implied(goes_in_at(liner, sheet), f"{liner.id} goes in")
        if "heated" in str(_word(f"how {liner.id} is put in", liner.entered, sheet)):
            yield Implied("heat block", f"{liner.id} goes into the hot block")
        if _word(f"{liner.id} bored", liner.finish_bored_after, sheet):
            yield Implied("finish bore", f"{liner.id} is bored in its place")
    for seat in sheet.belonging_to(block, ValveSeat):
        yield Implied(goes_in_at(seat, sheet), f"{seat.id} goes in")
        yield Implied("finish seats in line", f"{seat.id} is one of its seats")
        if "heated" in str(_word(f"how {seat.id} is put in", seat.entering, sheet)):
            yield Implied("heat block", f"{seat.id} goes into the hot block")
        for valve in sheet.belonging_to(seat, PoppetValve):
            for spindle in sheet.belonging_to(valve, ValveSpindle):
                if _word(f"guide of {spindle.id}", spindle.guide_held, sheet) == "pressed in":
                    yield Implied("press guides", f"the guide of {spindle.id} is pressed in")


def _of_neighbours(block: CylinderBlock, sheet: Sheet) -> Iterator[Implied]:
    """What covers, studs, gear, pipes and lagging ask for."""
    if joints := sheet.belonging_to(block, BoltedJoint):
        studs = [one for one in joints if _word(f"fastener of {one.id}", one.fastener, sheet) == "stud"]
        for one in studs:
            yield Implied("tap holes", f"{one.id} is screwed into it")
            yield Implied(goes_in_at(one, sheet), f"{one.id} is screwed into it")
    for box in sheet.belonging_to(block, CamBox):
        yield Implied(goes_in_at(box, sheet), f"{box.id} belongs to it")
    neighbours = ((CylinderCover, "fit covers"), (SteamPipe, "fit pipes"), (FrameFastening, "bolt pads"))
    for kind, word in neighbours:
        if parts := sheet.belonging_to(block, kind):
            yield Implied(word, f"{parts[0].id} belongs to it")
    covered = (block, *sheet.belonging_to(block, CylinderCover))
    if laggings := [one for part in covered for one in sheet.belonging_to(part, Lagging)]:
        yield Implied("lag", f"{laggings[0].id} covers it")


#: The steps of which each inspection point needs one.
_POINTS = {
    "welding": ("weld", "weld 2", "weld lugs and bosses", "test welds", "test welds 2"),
    "pressing": ("press liners", "press liners 2", "press seats", "press seats 2"),  # of a block: any of them
    "pressure_test": ("hydraulic test", "hydraulic test 2"),
    "lift_in": ("lift in",),
}


@rule(
    "making.points-in-the-list",
    title="Each inspection point that stops the work or calls the inspector has a step in the list",
    on=(CylinderBlock, Weldment, CylinderLiner, ValveSeat),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="an inspector who is called at a step that nobody wrote down comes too late",
    leaves_out="which points a part needs, which release.inspection-points asks",
    edition=2,
)
def points_in_the_list(part: CylinderBlock | Weldment | CylinderLiner | ValveSeat, sheet: Sheet) -> Judgement:
    """Hold and witness points by name against the words of the list; of liner and seat those of their block."""
    points = part.inspection_points
    called = [name for name in _POINTS if _word(name, getattr(points, name), sheet) in ("hold", "witness")]
    if not called:
        raise sheet.not_applicable("no point of inspection is stated")
    steps = [*steps_of(part, sheet)]
    wanted = dict(_POINTS)
    if isinstance(part, CylinderLiner | ValveSeat):
        wanted["pressing"] = (goes_in_at(part, sheet),)
        steps += listed(_host(part, sheet), sheet)
    elif not steps:
        steps += listed(part, sheet)
    written = {step.written for step in steps}
    wrong = [f"{name.replace('_', ' ')} has no step" for name in called if written.isdisjoint(wanted[name])]
    says = "; ".join(wrong) or f"{len(called)} points, each at a step"
    return by_stage(sheet.states(not wrong, says, where=points.where), sheet)


def _host(part: CylinderLiner | ValveSeat, sheet: Sheet) -> CylinderBlock:
    return sheet.follow(part.housed_in if isinstance(part, CylinderLiner) else part.pressed_into)


RULES = (steps_complete, points_in_the_list)
