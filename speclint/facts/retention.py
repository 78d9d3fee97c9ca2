"""What keeps a loose seat, or the pieces of a broken valve, in their place: a part that is drawn, not a word."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.cylinders import ends_of
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked
from speclint.specs import (
    BoltedJoint,
    ChamberCover,
    CylinderBlock,
    CylinderCover,
    CylinderLiner,
    NotStated,
    PoppetValve,
    RetainingRing,
    ValveCage,
    ValveSeat,
)


@formula("c_0 = x − H − h", cites=[FIRST_PRINCIPLES])
def room_at_lift(x: Metres, H: Metres, h: Metres) -> Metres:
    """Room between an open valve and the end of its cage, the cover of its chamber or the bore of a cylinder, cold.

    c_0 = x − H − h

    ``x`` from the plane of the seat to the inside of cage or cover, or to the bore, ``H`` from that plane to the end
    of the valve when shut, ``h`` lift [m]. Returns [m], negative where the valve meets it before it is open.

    >>> round(room_at_lift(x=0.088, H=0.062, h=0.020), 6)
    0.006
    """
    return x - H - h


def cages_round(valve: PoppetValve, sheet: Sheet) -> tuple[ValveCage, ...]:
    """The cages that say they surround a valve."""
    return sheet.belonging_to(valve, ValveCage)


def covers_over(valve: PoppetValve, sheet: Sheet) -> tuple[ChamberCover, ...]:
    """The covers that say they are over the chamber of a valve."""
    return sheet.belonging_to(valve, ChamberCover)


def ends_beyond(valve: PoppetValve, sheet: Sheet) -> list[tuple[str, Measure]]:
    """What a valve could strike at its full lift, by its id, and where its inside is from the plane of the seat."""
    inside: list[tuple[str, Measure | NotStated]] = [
        *((cage.id, cage.end_at) for cage in cages_round(valve, sheet)),
        *((cover.id, cover.inside_at) for cover in covers_over(valve, sheet)),
    ]
    return [
        (name, at)
        for name, at in inside
        if sheet.is_stated(f"inside of {name}", at) and isinstance(at, Measure)
    ]


def clearance_to_cage(valve: PoppetValve, sheet: Sheet) -> float:
    """Cold clearance beyond a valve at full lift, m: what its cage or the cover over its chamber leaves, the less.

    As stated where neither says where its inside is.
    """
    ends = [one for _, one in ends_beyond(valve, sheet)]
    if not ends:
        return sheet.take("c_0", valve.clearance_open)
    H, h = sheet.take("H", valve.height), sheet.take("h", valve.lift)
    return min(sheet.work("c_0", room_at_lift, x=sheet.take("x", end), H=H, h=h) for end in ends)


def rings_on(part: ValveSeat | CylinderLiner, sheet: Sheet) -> tuple[RetainingRing, ...]:
    """The rings, plates or screws that say they retain a seat or a liner."""
    return sheet.belonging_to(part, RetainingRing)


def _stays(ring: RetainingRing, sheet: Sheet) -> bool:
    """Whether a ring is welded in, or locked against coming loose."""
    how, lock = ring.fastened, ring.locked
    welded = sheet.is_stated(f"how {ring.id} is fastened", how) and sheet.read(ring.id, how) == "welded in"
    return welded or sheet.said(f"lock of {ring.id}", lock) is True


def retained_by_part(seat: ValveSeat, sheet: Sheet) -> Worked | None:
    """The part that keeps a seat in its bore if the fit is lost: a retaining ring, or a cage of its valve that is held.

    None where none is drawn: a word holds nothing, nor does a ring that can come loose or a cage that nothing fastens.
    """
    rings = [ring for ring in rings_on(seat, sheet) if _stays(ring, sheet)]
    if rings:
        return Worked("retaining ring", tuple(ring.retains.where for ring in rings))
    cages = [
        cage
        for valve in sheet.belonging_to(seat, PoppetValve)
        for cage in cages_round(valve, sheet)
        if sheet.is_stated(f"what holds {cage.id}", cage.held_by)
        and sheet.said(f"what fastens {cage.id}", cage.fastened_by) != "nothing"
    ]
    if cages and sheet.is_stated("retention", seat.retention):
        said = sheet.read("retention", seat.retention)
        return (
            Worked(said, tuple(cage.surrounds.where for cage in cages))
            if said == "shoulder and cage"
            else None
        )
    return None


def covers_on_collar(liner: CylinderLiner, sheet: Sheet) -> tuple[CylinderCover, ...]:
    """The covers that close the end of a liner's bore at which its collar is."""
    places = liner.housed_in, liner.in_bore, liner.collar.end
    if not all(sheet.is_stated("place of the collar", one) for one in places):
        return ()
    block, bore = sheet.follow(liner.housed_in), sheet.read("bore", liner.in_bore)
    collar = sheet.read("end of the collar", liner.collar.end)
    covers = sheet.belonging_to(block, CylinderCover)
    return tuple(cover for cover in covers if _closes(cover, block, bore, collar, sheet))


def joints_of_cover(cover: CylinderCover, sheet: Sheet) -> tuple[BoltedJoint, ...]:
    """The joints whose nuts hold a cover down; studs that are screwed into it hold another part."""
    return tuple(
        joint
        for joint in sheet.belonging_to(cover, BoltedJoint)
        if sheet.is_stated(f"what {joint.id} holds", joint.holds) and sheet.follow(joint.holds).id == cover.id
    )


def cover_on_collar(liner: CylinderLiner, sheet: Sheet) -> Worked | None:
    """The cover and its joint that clamp the collar of a liner; None where none is drawn at that end of its bore."""
    for cover in covers_on_collar(liner, sheet):
        held = [joint.holds.where for joint in joints_of_cover(cover, sheet)]
        if held:
            return Worked("collar clamped by cover", (cover.closes.where, *held))
    return None


def _closes(cover: CylinderCover, block: CylinderBlock, bore: str, side: str, sheet: Sheet) -> bool:
    """Whether a cover closes one side of a bore: by the end that it names, else by its own side."""
    if not sheet.is_stated(f"end that {cover.id} closes", cover.of_end):
        own = sheet.is_stated(f"side of {cover.id}", cover.end)
        return own and sheet.read(f"side of {cover.id}", cover.end) == side
    name = sheet.read(f"end that {cover.id} closes", cover.of_end)
    end = ends_of(block, bore, sheet).get(name)
    return end is not None and sheet.said(f"side of {name}", end.side) == side
