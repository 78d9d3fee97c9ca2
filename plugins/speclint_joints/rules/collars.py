"""The collar of a liner, and the studs of the cover that clamps it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Pair, Rule, Sheet, agreement
from speclint.facts import covers_on_collar, joints_of_cover, left_by_joint
from speclint.specs import CylinderLiner
from speclint_joints.sources import VDI_PRELOAD


def _clamps(liner: CylinderLiner, sheet: Sheet) -> Iterator[Pair]:
    """The clamping force within what the studs of the cover leave beside the gasket; its ring on the collar."""
    collar = liner.collar
    if sheet.is_stated("diameter of the barrel", liner.outside_diameter):
        yield Pair(collar.clamp_diameter, liner.outside_diameter, "at least", name="barrel")
    if sheet.is_stated("diameter of the collar", collar.diameter):
        yield Pair(collar.clamp_diameter, collar.diameter, "at most", name="collar")
    if not sheet.is_stated("clamping force", collar.clamp_force):
        return
    for cover in covers_on_collar(liner, sheet):
        for joint in joints_of_cover(cover, sheet):
            left = left_by_joint(joint, sheet)
            if left is not None:
                yield Pair(collar.clamp_force, left, "at most", name=joint.id)


clamp_of_cover: Rule = agreement(
    "liner.clamp-of-cover",
    title="The force that clamps a liner's collar is no more than the cover's studs give at the least beside the "
    "gasket, and it presses on the collar outside the barrel",
    on=CylinderLiner,
    pairs=_clamps,
    within="",
    cites=[VDI_PRELOAD, COMMON_PRACTICE],
    grade=Grade.NONCONFORMITY,
    why="a nip that the studs do not give lets the liner move; a ring pressed inside the barrel clamps nothing",
    edition=2,
    leaves_out="studs that are turned by an angle; how collar and gasket share the load of the studs, embedding of the "
    "faces, and heat",
    against=("loosen",),
)

RULES = (clamp_of_cover,)
