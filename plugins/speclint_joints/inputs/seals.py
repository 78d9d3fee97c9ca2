"""The seal of a joint, and the load of the pressure inside it on its studs."""

from __future__ import annotations

from speclint import Sheet
from speclint.facts import gasket_ring, openings, pressure_reach
from speclint.handbook.bolted_joints import pressure_load
from speclint.handbook.members import sum_of_loads
from speclint.specs import BoltedJoint, Gland, LensJoint, LoadCase
from speclint_joints.formulae.loads import load_per_stud
from speclint_joints.inputs.borne import load_borne
from speclint_joints.inputs.pressures import acting_pressure
from speclint_joints.inputs.purposes import is_steam_tight, keeps_steam
from speclint_joints.inputs.studs import Studs

#: Which rule asks for the pressure on the faces of a joint that has no gasket.
_JUDGED_BY = {
    "ground face": ": joint.face-pressure judges it",
    "lens ring": ": lens-joint.seat judges it",
}


def not_a_gland(joint: BoltedJoint, sheet: Sheet) -> None:
    """End the rule on the studs of a gland."""
    keeps_steam(joint, sheet)
    if isinstance(sheet.follow(joint.holds), Gland):
        raise sheet.not_applicable("a gland compresses packing and closes no faced joint")


def sealed_by(seal: str, joint: BoltedJoint, sheet: Sheet) -> None:
    """End the rule unless the joint has this seal."""
    not_a_gland(joint, sheet)
    stated = sheet.read("seal", joint.seal)
    held = sheet.follow(joint.holds)
    if stated == "lens ring" and not isinstance(held, LensJoint):
        raise sheet.not_assessed(
            f"the seal is a lens ring, which {held.id} is not: nothing seals", joint.seal.where
        )
    if stated != "gasket" and sheet.is_stated("gasket", joint.gasket.name):
        name = sheet.read("gasket", joint.gasket.name)
        raise sheet.not_assessed(
            f"the seal is a {stated}, and a gasket of {name} is stated: one of the two is wrong",
            joint.seal.where,
        )
    if stated != seal:
        judged = _JUDGED_BY.get(stated, "")
        raise sheet.not_applicable(f"the joint is sealed by a {stated}, not by a {seal}{judged}")


def pressure_diameter(joint: BoltedJoint, sheet: Sheet) -> float:
    """Diameter to which the pressure reaches: the gasket's reaction circle, or the circle of ground face or lens ring.

    It is never less than an opening that the seal surrounds.
    """
    if sheet.read("seal", joint.seal) == "gasket":
        reach = gasket_ring(joint, sheet).G
    else:
        reach = sheet.take("D_p", pressure_reach(joint, sheet))
    return max(reach, *(sheet.take("D_1", opening) for opening in openings(joint, sheet)), 0.0)


def lift_per_stud(joint: BoltedJoint, case: LoadCase, sheet: Sheet, studs: Studs) -> float:
    """Working load on one stud from the pressure inside the joint, if it holds steam, and what stands on its cover."""
    borne = load_borne(joint, case, sheet)
    if not is_steam_tight(joint, sheet):
        return sheet.work("P", load_per_stud, F=borne, n=studs.n) if borne > 0 else 0.0
    pressure = acting_pressure(joint, case, sheet)
    load = sheet.work("F_p", pressure_load, D=pressure_diameter(joint, sheet), p=pressure)
    if borne > 0:
        load = sheet.work("F_w", sum_of_loads, F_1=load, F_2=borne)
    return sheet.work("P", load_per_stud, F=load, n=studs.n)
