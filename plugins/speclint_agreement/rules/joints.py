"""A joint and the part that it holds state one pressure and one thickness of flange."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.facts import flange_bolted_to, flange_held, pressure_by_part_held
from speclint.specs import BoltedJoint


def _pressures(joint: BoltedJoint, sheet: Sheet) -> Iterator[Pair]:
    """That which the joint states, and that behind the part held: of a cylinder, or of the steam in a pipe."""
    by_part = pressure_by_part_held(joint, sheet)
    if by_part is not None:
        yield Pair(joint.pressure, by_part)


def _grips(joint: BoltedJoint, sheet: Sheet) -> Iterator[Pair]:
    """The grip on each side against the thickness of the flange there, both as the drawings aim at them."""
    held = flange_held(joint, sheet)
    if held is not None:
        yield Pair(joint.grip, held, name="grip")
    if sheet.is_stated("part that bolts go through", joint.bolted_to):
        far = flange_bolted_to(joint, sheet)
        if far is not None:
            yield Pair(joint.far_grip, far, name="far grip")


pressure_of_part: Rule = agreement(
    "joint.pressure-of-part",
    title="The pressure that a joint is said to hold is that behind the part which it holds",
    on=BoltedJoint,
    pairs=_pressures,
    within="",
    grade=Grade.HOLD,
    why="studs reckoned for exhaust steam, on a cover that live steam pushes off, part under the first full regulator",
    leaves_out="a joint of a part that neither closes a cylinder nor belongs to a pipe",
)

grip_of_flange: Rule = agreement(
    "joint.grip-of-flange",
    title="The grip of a joint's studs is the thickness of the flange that they clamp",
    on=BoltedJoint,
    pairs=_grips,
    grade=Grade.HOLD,
    why="a stud cut for another flange bottoms in its hole, or leaves its nut a thread short",
    leaves_out="washers, and parts whose spec states no flange",
)

RULES = (grip_of_flange, pressure_of_part)
