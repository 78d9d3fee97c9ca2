"""The steps that the specs imply: each weld, press, heat treatment and test, and each part that goes on or in."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from speclint import Sheet
from speclint.facts import Made
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

#: Without these the list lets a block burst, crack or lose what is pressed into it.
_GRAVE = ("open vents", "stress relieve", "test welds", "hydraulic test", "heat block", "press ")


class Implied(NamedTuple):
    """A step that something in the specs asks for."""

    word: str
    why: str


def implied_steps(part: Made, sheet: Sheet) -> dict[str, str]:
    """The words of the steps that the specs ask of the list of a part, each with the reason, in their order.

    Less those of which its weldment or casting is asked, whose list is a part of its own.
    """
    found: dict[str, str] = {}
    of_blanks = _of_blanks(part, sheet)
    for one in _own(part, sheet):
        if one.word not in of_blanks:
            found.setdefault(one.word, one.why)
    return found


def told_of(part: Made, sheet: Sheet) -> frozenset[str]:
    """The steps of which making.steps-complete tells where the whole list of a part has them not."""
    return _of_blanks(part, sheet).union(implied_steps(part, sheet))


def is_grave(word: str) -> bool:
    """Whether a release is to wait for a step that the list has not."""
    return word.startswith(_GRAVE)


def _of_blanks(part: Made, sheet: Sheet) -> frozenset[str]:
    """The steps of which the weldment or casting of a part is asked."""
    blanks: tuple[Made, ...] = (*sheet.belonging_to(part, Weldment), *sheet.belonging_to(part, Casting))
    return frozenset(word for blank in blanks for word in implied_steps(blank, sheet))


def _own(part: Made, sheet: Sheet) -> Iterator[Implied]:
    if isinstance(part, CylinderBlock):
        yield from _of_block(part, sheet)
        yield from _of_pressed(part, sheet)
        yield from _of_neighbours(part, sheet)
    elif isinstance(part, Weldment):
        yield from _of_weldment(part, sheet)
    elif isinstance(part, CylinderLiner):
        if sheet.is_stated("hardness", part.hardness):
            yield Implied("measure hardness", "a hardness is stated")
        if "stress-relieved" in (sheet.said("material", part.material) or ""):
            yield Implied("stress relieve", "its material is stress relieved")
    elif sheet.said("welded", part.welding.welded):
        yield Implied("weld repair", "it is welded")
    if sheet.said("heat treatment", part.welding.heat_treatment) == "stress relieved":
        yield Implied("stress relieve", "welding.heat_treatment says so")


def _of_weldment(weldment: Weldment, sheet: Sheet) -> Iterator[Implied]:
    if weldment.joints:
        yield Implied("weld", f"{weldment.id} has welded joints")
        yield Implied("test welds", f"{weldment.id} has welded joints")
    for name, wall in weldment.walls.items():
        if sheet.said(f"wall {name} ribbed", wall.ribbed):
            yield Implied("weld ribs and covers", f"wall {name} has ribs")
    if weldment.cavities:
        yield Implied("open vents", "it has closed cavities")
    if sheet.is_stated("temperature of treatment", weldment.treatment.temperature):
        yield Implied("stress relieve", "treatment states its temperature")


def _of_block(block: CylinderBlock, sheet: Sheet) -> Iterator[Implied]:
    if sheet.said("construction", block.construction) == "fabricated":
        yield from (Implied(word, "the block is fabricated") for word in ("weld", "stress relieve"))
    if sheet.is_stated("test pressure", block.test_pressure):
        yield Implied("hydraulic test", "a test pressure is stated")
    for plan in sheet.belonging_to(block, LiftingPlan):
        if any(sheet.said(f"form of {name}", point.form) == "lug" for name, point in plan.points.items()):
            yield Implied("weld lugs and bosses", f"{plan.id} lifts it by lugs")


def _of_pressed(block: CylinderBlock, sheet: Sheet) -> Iterator[Implied]:
    """What liners, seats and guides ask for."""
    for liner in sheet.belonging_to(block, CylinderLiner):
        yield Implied(goes_in_at(liner, sheet), f"{liner.id} goes in")
        if "heated" in (sheet.said(f"how {liner.id} is put in", liner.entered) or ""):
            yield Implied("heat block", f"{liner.id} goes into the hot block")
        if sheet.said(f"{liner.id} bored", liner.finish_bored_after):
            yield Implied("finish bore", f"{liner.id} is bored in its place")
    for seat in sheet.belonging_to(block, ValveSeat):
        yield Implied(goes_in_at(seat, sheet), f"{seat.id} goes in")
        yield Implied("finish seats in line", f"{seat.id} is one of its seats")
        if "heated" in (sheet.said(f"how {seat.id} is put in", seat.entering) or ""):
            yield Implied("heat block", f"{seat.id} goes into the hot block")
        for valve in sheet.belonging_to(seat, PoppetValve):
            for spindle in sheet.belonging_to(valve, ValveSpindle):
                held = sheet.said(f"guide of {spindle.id}", spindle.guide_held)
                where = sheet.said(f"part with the guide of {spindle.id}", spindle.guide_in)
                if held == "pressed in" and where != "cam box":
                    yield Implied("press guides", f"the guide of {spindle.id} is pressed in")


def _of_neighbours(block: CylinderBlock, sheet: Sheet) -> Iterator[Implied]:
    """What covers, studs, gear, pipes and lagging ask for."""
    for one in sheet.belonging_to(block, BoltedJoint):
        if sheet.said(f"fastener of {one.id}", one.fastener) == "stud":
            yield Implied("tap holes", f"{one.id} is screwed into it")
            yield Implied(goes_in_at(one, sheet), f"{one.id} is screwed into it")
    for box in sheet.belonging_to(block, CamBox):
        yield Implied(goes_in_at(box, sheet), f"{box.id} belongs to it")
    neighbours = (
        (CylinderCover, "fit covers"),
        (SteamPipe, "fit pipes"),
        (FrameFastening, "lift in"),
        (FrameFastening, "bolt pads"),
    )
    for kind, word in neighbours:
        if parts := sheet.belonging_to(block, kind):
            yield Implied(word, f"{parts[0].id} belongs to it")
    covered = (block, *sheet.belonging_to(block, CylinderCover))
    if laggings := [one for part in covered for one in sheet.belonging_to(part, Lagging)]:
        yield Implied("lag", f"{laggings[0].id} covers it")
