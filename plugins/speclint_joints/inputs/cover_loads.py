"""Loads with which studs and steam bend a cover: those of the code, and the greatest that the studs really pull."""

from __future__ import annotations

from msgspec import Struct

from speclint import Sheet
from speclint.facts import gasket_ring, load_of_all, mean_diameter
from speclint.handbook.bolted_joints import gasket_materials, gaskets, loads
from speclint.specs import BoltedJoint, LoadCase
from speclint_joints.formulae.loads import area_of_all
from speclint_joints.inputs.preload import working_preload
from speclint_joints.inputs.seals import lift_per_stud, pressure_diameter
from speclint_joints.inputs.studs import core_area, studs_of


class Bolting(Struct, frozen=True):
    """Bolt loads of a cover, N, and the circle G on which the joint pushes back, m."""

    G: float
    operating: float
    seating: float


def design_bolting(joint: BoltedJoint, case: LoadCase, sheet: Sheet, pressure: float) -> Bolting:
    """Bolt loads of the code: operating, and for seating the mean of required and actual area, fully used."""
    studs, steel = studs_of(joint, sheet), sheet.material_of(joint)
    cold = sheet.take("T_0", joint.tightening.temperature)
    hot = sheet.take("T_b", case.temperature_of(joint))
    S_a = sheet.look_up("S_a", steel.allowable_tension, of=joint, at=cold, wall=studs.d)
    S_b = sheet.look_up("S_b", steel.allowable_tension, of=joint, at=hot, wall=studs.d)
    G, operating, seating = _joint_loads(joint, sheet, pressure)
    required = sheet.work("A_m", gaskets.required_bolt_area, W_m1=operating, S_b=S_b, W_m2=seating, S_a=S_a)
    core = sheet.look_up("A_3", core_area, designation=studs.thread)
    actual = sheet.work("A_b", area_of_all, A=core, n=studs.n)
    pulled = sheet.work("W_a", gaskets.flange_design_bolt_load, A_m=required, A_b=actual, S_a=S_a)
    return Bolting(G, operating, pulled)


def _joint_loads(joint: BoltedJoint, sheet: Sheet, pressure: float) -> tuple[float, float, float]:
    if sheet.read("seal", joint.seal) != "gasket":
        G = reaction_circle(joint, sheet)
        reach = pressure_diameter(joint, sheet)
        return G, sheet.work("W_m1", loads.pressure_load, D=reach, p=pressure), 0.0
    name = sheet.read("gasket", joint.gasket.name)
    m = sheet.look_up("m", gasket_materials.gasket_factor, gasket=name)
    y = sheet.look_up("y", gasket_materials.seating_stress, gasket=name)
    ring = gasket_ring(joint, sheet)
    reach = pressure_diameter(joint, sheet)
    operating = sheet.work("W_m1", gaskets.operating_bolt_load, G=reach, b=ring.b, m=m, p=pressure)
    return ring.G, operating, sheet.work("W_m2", gaskets.seating_bolt_load, G=ring.G, b=ring.b, y=y)


class Pulls(Struct, frozen=True):
    """Greatest pull of all studs, N: as tightened, and in a load case with the steam on."""

    tightened: float
    in_work: float


def greatest_pulls(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Pulls:
    """What the studs really pull where every one was tightened to the high end of its scatter."""
    working = working_preload(joint, case, sheet)
    studs = working.stack.studs
    lift = lift_per_stud(joint, case, sheet, studs)
    load = sheet.work("F_b", loads.stud_load, F_i=working.high, Phi=working.Phi, P=lift)
    return Pulls(
        tightened=sheet.work("W_0", load_of_all, F=working.tightened.high, n=studs.n),
        in_work=sheet.work("W", load_of_all, F=load, n=studs.n),
    )


def reaction_circle(joint: BoltedJoint, sheet: Sheet) -> float:
    """Diameter of the circle on which gasket or ground face pushes back."""
    if sheet.read("seal", joint.seal) == "gasket":
        return gasket_ring(joint, sheet).G
    outside, inside = (
        sheet.take("D_o", joint.ground_face.outside),
        sheet.take("D_i", joint.ground_face.inside),
    )
    return sheet.work("G", mean_diameter, D_o=outside, D_i=inside)
