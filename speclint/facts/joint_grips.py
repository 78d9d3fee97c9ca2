"""How thick what a joint clamps is: the flanges that it holds and is bolted to, and its grip."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.taking import Take
from speclint.handbook.members import contact
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import (
    BoltedJoint,
    ChamberCover,
    Component,
    CylinderCover,
    Gland,
    LensJoint,
    NotStated,
    PipeFlange,
)


def flange_held(joint: BoltedJoint, sheet: Sheet) -> Measure | NotStated | None:
    """The thickness of flange that the nuts of a joint clamp; None where the part held states none of its own."""
    return _flange(sheet.follow(joint.holds))


def flange_bolted_to(joint: BoltedJoint, sheet: Sheet) -> Measure | NotStated | None:
    """The thickness of flange under the far nuts, or the heads, of bolts; None where that part states none."""
    return _flange(sheet.follow(joint.bolted_to))


def _flange(part: Component) -> Measure | NotStated | None:
    if isinstance(part, CylinderCover | ChamberCover | Gland | LensJoint):
        return part.flange_thickness
    return part.thickness if isinstance(part, PipeFlange) else None


def grip_held(joint: BoltedJoint, sheet: Sheet) -> float:
    """Clamped thickness of the part held, m: its flange, and half of the gap at a lens ring; else as stated."""
    return _grip("l_1", flange_held(joint, sheet), joint.grip, joint, sheet)


def grip_bolted_to(joint: BoltedJoint, sheet: Sheet) -> float:
    """Clamped thickness of the part under the far nuts or heads, m: as :func:`grip_held`."""
    return _grip("l_2", flange_bolted_to(joint, sheet), joint.far_grip, joint, sheet)


def _grip(
    symbol: str,
    flange: Measure | NotStated | None,
    stated: Measure | NotStated,
    joint: BoltedJoint,
    sheet: Sheet,
) -> float:
    if flange is None or not sheet.is_stated(f"flange at {symbol}", flange):
        return sheet.take(symbol, stated)
    held = sheet.follow(joint.holds)
    if not isinstance(held, LensJoint):
        return sheet.take(symbol, flange)
    h = sheet.take(f"h_{symbol[-1]}", flange)
    return sheet.work(symbol, grip_at_ring, h=h, g=_half_gap(held, sheet, sheet.take))


def _half_gap(lens: LensJoint, sheet: Sheet, take: Take) -> float:
    circle = {
        "t": take("t", lens.thickness),
        "D_m": take("D_m", lens.seat_mouth),
        "D": take("D", lens.contact_diameter),
    }
    if sheet.read("seat", lens.seat) == "cone":
        return sheet.work("g", contact.half_gap_at_ring, **circle, phi=take("phi", lens.seat_angle))
    return sheet.work("g", contact.half_gap_at_hollow, **circle, R=take("R_s", lens.seat_radius))


def grip_drawn(joint: BoltedJoint, flange: Measure | NotStated, sheet: Sheet) -> Measure | NotStated | Worked:
    """The clamped thickness that a flange gives, as the drawings aim at it: for an agreement."""
    held = sheet.follow(joint.holds)
    if not isinstance(held, LensJoint):
        return flange
    h = sheet.take_nominal("h", flange)
    grip = sheet.work("l", grip_at_ring, h=h, g=_half_gap(held, sheet, sheet.take_nominal))
    return worked(grip, flange, held.thickness, held.seat_mouth, held.contact_diameter)


@formula("l = h + g", cites=[FIRST_PRINCIPLES])
def grip_at_ring(h: Metres, g: Metres) -> Metres:
    """Grip of the studs of a lens joint on one side of the ring.

    h: thickness of the flange, m. g: half of the gap that the ring leaves, m. Returns m.

    >>> grip_at_ring(h=0.045, g=0.020)
    0.065
    """
    return h + g
