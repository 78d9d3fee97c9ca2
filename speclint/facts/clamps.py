"""What the studs of a cover leave to clamp the collar of a liner."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Newtons, Ratio, formula
from speclint.facts.gasket_rings import gasket_ring
from speclint.facts.retention import covers_on_collar, joints_of_cover
from speclint.handbook.bolted_joints import gasket_materials, gaskets, scatter, tightening
from speclint.handbook.threads import nominal_diameter
from speclint.rules import Sheet, Worked
from speclint.specs import BoltedJoint, CylinderLiner

#: Methods that measure torque; after the others the preload itself is stated, but for one that turns by an angle.
_TORQUE_METHODS = tuple(
    name for name in scatter.tightening_methods() if "wrench" in name or "spanner" in name
)
_BY_ANGLE = "angle controlled"


@formula("W = n F", cites=[FIRST_PRINCIPLES])
def load_of_all(F: Newtons, n: Ratio) -> Newtons:
    """Load of all studs together.

    W = n F

    F: load of one, N. n: number of studs. Returns N.

    >>> load_of_all(F=10e3, n=24)
    240000.0
    """
    return n * F


@formula("F_c = F − W", cites=[FIRST_PRINCIPLES])
def left_for_collar(F: Newtons, W: Newtons) -> Newtons:
    """Load of a cover's studs that can press the collar of a liner.

    F: preload of all studs, N. W: load that seats the gasket beside the collar, N. Returns N.

    >>> left_for_collar(F=1850e3, W=400e3)
    1450000.0
    """
    return F - W


def left_by_joint(joint: BoltedJoint, sheet: Sheet) -> Worked | None:
    """The least preload of all studs of a joint as tightened, less what seats its gasket, N.

    None where the studs are turned by an angle: their preload goes by the springs of the joint.
    """
    how, n = joint.tightening, sheet.count("n", joint.count)
    method = sheet.read("method of tightening", how.method)
    if method == _BY_ANGLE:
        return None
    # first, since nothing else is asked of a method that is misspelt
    spread = sheet.look_up("s_F", scatter.scatter, method=method)
    if method in _TORQUE_METHODS:
        d = sheet.look_up("d", nominal_diameter, designation=sheet.read("thread", joint.thread))
        given = {"T": sheet.take("T", how.torque), "K": sheet.take("K", how.torque_coefficient)}
        mean = sheet.work("F", tightening.preload_from_torque, d=d, **given)
    else:
        mean = sheet.take("F", how.preload)
    least = sheet.work("F_low", scatter.preload_low, F=mean, s=spread)
    F, W = sheet.work("F_all", load_of_all, F=least, n=n), 0.0
    if sheet.read("seal", joint.seal) == "gasket":
        ring, name = gasket_ring(joint, sheet), sheet.read("gasket", joint.gasket.name)
        y = sheet.look_up("y", gasket_materials.seating_stress, gasket=name)
        W = sheet.work("W_m2", gaskets.seating_bolt_load, G=ring.G, b=ring.b, y=y)
    left = sheet.work("F_c", left_for_collar, F=F, W=W)
    return Worked(left, (how.method.where, joint.count.where))


def clamp_on_collar(liner: CylinderLiner, sheet: Sheet) -> Newtons:
    """The force that clamps the collar of a liner, N: as stated, and no more than the studs of its cover leave."""
    joints = [joint for cover in covers_on_collar(liner, sheet) for joint in joints_of_cover(cover, sheet)]
    known: list[Newtons] = [
        found.value for joint in joints if (found := left_by_joint(joint, sheet)) is not None
    ]
    if not known or sheet.is_stated("clamping force", liner.collar.clamp_force):
        known.append(sheet.take("F_c", liner.collar.clamp_force))
    return min(known)
