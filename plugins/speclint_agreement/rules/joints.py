"""A joint and what it holds state one pressure, one thickness of flange, one ring and one circle."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement, worked
from speclint.facts import (
    flange_bolted_to,
    flange_held,
    grip_drawn,
    openings,
    pressure_by_part_held,
    pressure_reach,
)
from speclint.specs import BoltedJoint, Gland
from speclint_agreement.formulae.joints import inside_of_holes


def _pressures(joint: BoltedJoint, sheet: Sheet) -> Iterator[Pair]:
    """That which the joint states, and that behind the part held: of a cylinder, or of the steam in a pipe."""
    by_part = pressure_by_part_held(joint, sheet)
    if by_part is not None:
        yield Pair(joint.pressure, by_part)


def _grips(joint: BoltedJoint, sheet: Sheet) -> Iterator[Pair]:
    """The grip on each side against the flange there, with half of the gap at a lens ring, as drawn."""
    held = flange_held(joint, sheet)
    if held is not None and sheet.is_stated("flange held", held) and sheet.is_stated("grip", joint.grip):
        yield Pair(joint.grip, grip_drawn(joint, held, sheet), name="grip")
    if sheet.is_stated("part that bolts go through", joint.bolted_to):
        far = flange_bolted_to(joint, sheet)
        if (
            far is not None
            and sheet.is_stated("far flange", far)
            and sheet.is_stated("far grip", joint.far_grip)
        ):
            yield Pair(joint.far_grip, grip_drawn(joint, far, sheet), name="far grip")


def _rings(joint: BoltedJoint, sheet: Sheet) -> Iterator[Pair]:
    """The inside of the gasket against every opening that it surrounds, and its outside against the holes."""
    if _seal(joint, sheet) != "gasket":
        return
    for opening in openings(joint, sheet):
        yield Pair(joint.gasket.inside, opening, "at least", name=opening.where.key)
    circle, hole = sheet.take("D_h", joint.circle), sheet.take("d_h", joint.hole)
    free = sheet.work("D_f", inside_of_holes, D_h=circle, d_h=hole)
    yield Pair(joint.gasket.outside, worked(free, joint.circle, joint.hole), "at most", name="holes")


def _circles(joint: BoltedJoint, sheet: Sheet) -> Iterator[Pair]:
    """The stated circle against that on which the ring touches, or the outside of the ground face."""
    if _seal(joint, sheet) not in ("gasket", "packing"):
        reach = pressure_reach(joint, sheet)
        if reach is not joint.pressure_circle:
            yield Pair(joint.pressure_circle, reach)


def _seal(joint: BoltedJoint, sheet: Sheet) -> str:
    """What keeps the steam in; the studs of a gland compress packing and need not say."""
    if isinstance(sheet.follow(joint.holds), Gland):
        return "packing"
    return sheet.read("seal", joint.seal)


pressure_of_part: Rule = agreement(
    "joint.pressure-of-part",
    title="The pressure that a joint is said to hold is that behind the part which it holds",
    on=BoltedJoint,
    pairs=_pressures,
    within="",
    grade=Grade.HOLD,
    why="studs reckoned for exhaust steam, on a cover that live steam pushes off, part under the first full regulator",
    leaves_out="a joint of a part that neither closes a cylinder nor belongs to a pipe",
    edition=2,
)

grip_of_flange: Rule = agreement(
    "joint.grip-of-flange",
    title="The grip of a joint's studs is the thickness of the flanges that they clamp, and of the gap at a lens ring",
    on=BoltedJoint,
    pairs=_grips,
    within="0.5 mm",
    grade=Grade.HOLD,
    why="a stud cut for another flange bottoms in its hole, or leaves its nut a thread short",
    leaves_out="washers, and parts whose spec states no flange",
)

ring_outside_bore: Rule = agreement(
    "joint.ring-outside-bore",
    title="The gasket lies outside every opening that it surrounds and inside the holes of the studs",
    on=BoltedJoint,
    pairs=_rings,
    within="",
    optional=False,
    grade=Grade.HOLD,
    why="a ring smaller than the bore leaves half of the steam's pull out of the reckoning, and cannot be fitted",
    leaves_out="openings that are not drawn",
    against=("leak",),
    edition=3,
)

pressure_circle: Rule = agreement(
    "joint.pressure-circle",
    title="The circle to which steam reaches is that of the lens ring's contact, or the outside of the ground face",
    on=BoltedJoint,
    pairs=_circles,
    grade=Grade.HOLD,
    why="steam pushes on all that lies inside the line where the joint touches, whatever circle is written down",
    leaves_out="joints with a gasket, whose circle is worked",
)

RULES = (grip_of_flange, pressure_circle, pressure_of_part, ring_outside_bore)
