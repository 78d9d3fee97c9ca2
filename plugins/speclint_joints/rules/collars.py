"""The collar of a liner, and the studs of the cover that clamps it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import covers_on_collar, joints_of_cover
from speclint.handbook.bolted_joints import gasket_materials, gaskets
from speclint.specs import BoltedJoint, CylinderLiner
from speclint_joints.formulae.loads import left_for_collar, load_of_all
from speclint_joints.inputs.preload import tightened_preload
from speclint_joints.inputs.seals import gasket_ring
from speclint_joints.inputs.studs import studs_of
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
            yield Pair(collar.clamp_force, _left(joint, sheet), "at most", name=joint.id)


def _left(joint: BoltedJoint, sheet: Sheet) -> Worked:
    """The least preload of all studs as tightened, less what seats the gasket."""
    studs = studs_of(joint, sheet)
    F = sheet.work("F_all", load_of_all, F=tightened_preload(joint, sheet, studs).low, n=studs.n)
    W = 0.0
    if sheet.read("seal", joint.seal) == "gasket":
        ring = gasket_ring(joint, sheet)
        name = sheet.read("gasket", joint.gasket.name)
        y = sheet.look_up("y", gasket_materials.seating_stress, gasket=name)
        W = sheet.work("W_m2", gaskets.seating_bolt_load, G=ring.G, b=ring.b, y=y)
    left = sheet.work("F_c", left_for_collar, F=F, W=W)
    return Worked(left, (joint.tightening.method.where, joint.count.where))


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
    leaves_out="how collar and gasket share the load of the studs, embedding of the faces, and heat",
)

RULES = (clamp_of_cover,)
