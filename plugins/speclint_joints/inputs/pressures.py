"""The greatest pressure that a joint holds in a load case: of the duty, of the hydraulic test, of the relief valves."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from speclint import Sheet
from speclint.facts import (
    end_closed_by,
    fitted_to,
    greatest_exhaust_pressure,
    greatest_live_pressure,
    pressure_held,
    vessel_of,
    with_water,
)
from speclint.specs import (
    BoltedJoint,
    ChamberCover,
    Component,
    CylinderBlock,
    CylinderCover,
    CylinderEnd,
    CylinderLiner,
    Gland,
    LensJoint,
    LoadCase,
    PipeFlange,
    StuffingBox,
)


def acting_pressure(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> float:
    """Greatest gauge pressure that the joint holds in a load case.

    In the cylinder: as :func:`pressure_in_cylinder`. Of live steam: that at which the safety valves blow; with the
    regulator shut, and on test, the live pressure where they are not stated. On test: never less than any test
    pressure that the joint states, the part it holds, the vessel of that part, or what else closes its cylinder.
    """
    holds = pressure_held(joint, sheet)
    if holds == "exhaust":
        p = greatest_exhaust_pressure(joint, case, sheet, "p")
    elif holds == "cylinder":
        p = pressure_in_cylinder(case, sheet, _ends_beside(joint, case, sheet))
    else:
        p = sheet.take("p", greatest_live_pressure(case, sheet))
    if case.name != "test":
        return p
    tested = [
        sheet.take("p_t", part.test_pressure)
        for part in _tested_together(joint, sheet)
        if sheet.is_stated(f"test pressure of {part.id}", part.test_pressure)
    ]
    return max(p, *tested) if tested else p


def pressure_in_cylinder(case: LoadCase, sheet: Sheet, ends: Iterable[CylinderEnd]) -> float:
    """Greatest gauge pressure in the cylinder: that stated for it, else that of the live steam.

    With water in the cylinder never less than the pressure at which the relief valves of its ``ends`` blow off all of
    it.
    """
    stated = sheet.is_stated("cylinder pressure", case.cylinder_pressure)
    p = sheet.take("p", case.cylinder_pressure if stated else greatest_live_pressure(case, sheet))
    return with_water(p, ends, case, sheet)


def _cover_of(part: Component, sheet: Sheet) -> CylinderCover | None:
    """The cover that a part is, or is fitted to."""
    if isinstance(part, Gland):
        part = sheet.follow(part.of)
    if isinstance(part, StuffingBox):
        part = sheet.follow(part.in_cover)
    return part if isinstance(part, CylinderCover) else None


def _ends_beside(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> tuple[CylinderEnd, ...]:
    """The end of the cylinder whose water the joint holds: that which its cover closes; without a cover any of them."""
    if case.name != "water":
        return ()
    held = sheet.follow(joint.holds)
    cover = _cover_of(held, sheet)
    if cover is not None:
        return (end_closed_by(cover, sheet)[1],)
    vessel = vessel_of(held, sheet)
    return tuple(vessel.ends.values()) if isinstance(vessel, CylinderBlock) else ()


def _tested_together(joint: BoltedJoint, sheet: Sheet) -> Iterator[Component]:
    """The joint, what it holds, and the pipe, or the cylinder with all that closes it, that is tested with it."""
    held = sheet.follow(joint.holds)
    yield joint
    yield held
    if isinstance(held, LensJoint | PipeFlange):
        yield sheet.follow(held.of)
    if isinstance(held, ChamberCover):
        yield sheet.follow(held.closes)
    cover = _cover_of(held, sheet)
    if cover is not None:
        block = sheet.follow(cover.closes)
        yield block
        yield from sheet.belonging_to(block, CylinderLiner)
        for other in sheet.belonging_to(block, CylinderCover):
            parts = (other, *fitted_to(other, sheet))
            yield from (part for part in parts if part not in (joint, held))
