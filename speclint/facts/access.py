"""What an access plan has to reach: the joints of a block, the parts drawn out of it, and its chambers."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.joint_grips import flange_held
from speclint.facts.taking import Take
from speclint.rules import Sheet, Worked, worked
from speclint.specs import (
    BoltedJoint,
    ChamberCover,
    Component,
    CompressionSpring,
    CylinderBlock,
    CylinderCover,
    CylinderLiner,
    FrameFastening,
    Piston,
    PistonRod,
    PoppetValve,
    SteamPassage,
    ValveSeat,
    ValveSpindle,
)

#: Places of a passage that are chambers of their own, with walls and welds to be seen from within.
_CHAMBERS = ("chest", "belt", "valve pocket")


@formula("l = e + a + g + s + n", cites=[FIRST_PRINCIPLES])
def length_to_end_of_nut(e: Metres, a: Metres, g: Metres, s: Metres, n: Metres) -> Metres:
    """Length of a stud from its screwed end to the end of its nut.

    l = e + a + g + s + n

    ``e`` engaged in the tapped hole, ``a`` from there to the face, ``g`` thickness of the part held, ``s`` of the
    gasket, ``n`` height of the nut [m]. Returns [m].

    >>> round(length_to_end_of_nut(e=0.036, a=0.005, g=0.045, s=0.0012, n=0.024), 9)
    0.1112
    """
    return e + a + g + s + n


@formula("l = l_0 + t", cites=[FIRST_PRINCIPLES])
def length_with_collar(l_0: Metres, t: Metres) -> Metres:
    """Length of a liner over its collar.

    l = l_0 + t

    ``l_0`` from the collar's seat to the free end, ``t`` thickness of the collar [m]. Returns [m].

    >>> round(length_with_collar(l_0=0.9, t=0.0251), 9)
    0.9251
    """
    return l_0 + t


def joints_of(block: CylinderBlock, sheet: Sheet) -> dict[str, BoltedJoint]:
    """The joints of a block and of its covers, by their ids."""
    joints = {joint.id: joint for joint in sheet.belonging_to(block, BoltedJoint)}
    for cover in (
        *sheet.belonging_to(block, CylinderCover),
        *sheet.belonging_to(block, ChamberCover),
    ):
        joints |= {joint.id: joint for joint in sheet.belonging_to(cover, BoltedJoint)}
    return joints


def nuts_of(block: CylinderBlock, sheet: Sheet) -> dict[str, BoltedJoint | FrameFastening]:
    """All that is turned by a spanner on a block: its joints, and its fastenings to the frames."""
    fastenings = {one.id: one for one in sheet.belonging_to(block, FrameFastening)}
    return {**joints_of(block, sheet), **fastenings}


def length_of_stud(joint: BoltedJoint, sheet: Sheet, take: Take) -> Worked | None:
    """Length of a stud to the end of its nut, m; None of a bolt, and where a size of it is not stated."""
    if not sheet.is_stated("fastener", joint.fastener) or sheet.read("fastener", joint.fastener) != "stud":
        return None
    flange = flange_held(joint, sheet) if sheet.is_stated("part held", joint.holds) else None
    grip = joint.grip if flange is None or not sheet.is_stated("flange", flange) else flange
    sizes = {"e": joint.tapped.engagement, "a": joint.set_in, "g": grip, "n": joint.nut.engagement}
    if not all(sheet.is_stated(name, size) for name, size in sizes.items()):
        return None
    if sheet.is_stated("gasket", joint.gasket.thickness):
        sizes["s"] = joint.gasket.thickness
    given = {name: take(name, size) for name, size in sizes.items()}
    length = sheet.work("l_s", length_to_end_of_nut, **{"s": 0.0, **given})
    return worked(length, *sizes.values())


def length_drawn_out(name: str, block: CylinderBlock, sheet: Sheet, take: Take) -> Worked | None:
    """Length, m, of the studs or the liner of a block that go by an id; None of what has no such sizes."""
    joint = joints_of(block, sheet).get(name)
    if joint is not None:
        return length_of_stud(joint, sheet, take)
    liner = next((one for one in sheet.belonging_to(block, CylinderLiner) if one.id == name), None)
    if liner is None or not sheet.is_stated("length", liner.length):
        return None
    if not sheet.is_stated("collar", liner.collar.thickness):
        return worked(take("l_0", liner.length), liner.length)
    return length_over_collar(liner, sheet, take)


def length_over_collar(liner: CylinderLiner, sheet: Sheet, take: Take) -> Worked:
    """Length, m, of a liner from its free end to the face of its collar."""
    both = {"l_0": take("l_0", liner.length), "t": take("t", liner.collar.thickness)}
    return worked(sheet.work("l_c", length_with_collar, **both), liner.length, liner.collar.thickness)


def chambers_of(block: CylinderBlock, sheet: Sheet) -> tuple[SteamPassage, ...]:
    """The chests, belts and valve pockets of a block that are drawn."""
    return tuple(
        passage
        for passage in sheet.belonging_to(block, SteamPassage)
        if (sheet.said(f"place of {passage.id}", passage.place) or "") in _CHAMBERS
    )


def parts_drawn_out(block: CylinderBlock, sheet: Sheet) -> Iterator[Component]:
    """What is drawn out of a block in its frames: seats, valves, spindles and springs, pistons and rods."""
    valves: dict[str, PoppetValve] = {}
    for seat in sheet.belonging_to(block, ValveSeat):
        yield seat
        valves |= {valve.id: valve for valve in sheet.belonging_to(seat, PoppetValve)}
    for valve in valves.values():
        yield valve
        yield from sheet.belonging_to(valve, ValveSpindle)
        yield from sheet.belonging_to(valve, CompressionSpring)
    for liner in sheet.belonging_to(block, CylinderLiner):
        for piston in sheet.belonging_to(liner, Piston):
            yield piston
            yield from sheet.belonging_to(piston, PistonRod)
