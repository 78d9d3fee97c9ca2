"""The seal of a joint, and the load of the pressure inside it on its studs."""

from __future__ import annotations

from dataclasses import dataclass

from speclint import Sheet
from speclint.handbook.bolted_joints import gaskets, pressure_load
from speclint.specs import BoltedJoint, LoadCase
from speclint_joints.formulae.loads import load_per_stud, mean_diameter
from speclint_joints.inputs.studs import Studs


@dataclass(frozen=True, slots=True)
class GasketRing:
    """The effective ring of a gasket: its reaction diameter G and its effective width b, m."""

    G: float
    b: float


def gasket_ring(joint: BoltedJoint, sheet: Sheet) -> GasketRing:
    """Work the reaction diameter and the effective width of the gasket."""
    outside = sheet.take("D_o", joint.gasket.outside)
    inside = sheet.take("D_i", joint.gasket.inside)
    width = sheet.work("N", gaskets.contact_width, D_o=outside, D_i=inside)
    if sheet.read("form of the gasket", joint.gasket.form) == "flat":
        basic = sheet.work("b_0", gaskets.basic_seating_width, N=width)
        reaction = sheet.work("G", gaskets.gasket_reaction_diameter, D_o=outside, D_i=inside)
    else:
        basic = sheet.work("b_0", gaskets.basic_seating_width_of_ring_joint, w=width)
        reaction = sheet.work("G", mean_diameter, D_o=outside, D_i=inside)
    return GasketRing(reaction, sheet.work("b", gaskets.effective_seating_width, b_0=basic))


def pressure_diameter(joint: BoltedJoint, sheet: Sheet) -> float:
    """Diameter to which the pressure reaches: the gasket's reaction circle, or that stated for a ground face."""
    if sheet.read("seal", joint.seal) == "gasket":
        return gasket_ring(joint, sheet).G
    return sheet.take("D_p", joint.pressure_circle)


def acting_pressure(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> float:
    """Greatest gauge pressure that the joint holds in a load case.

    In the cylinder: the pressure stated for it (hydraulic test, trapped water), else as live steam. Of live
    steam: that at which the safety valves blow, where it is stated, else the live pressure.
    """
    holds = sheet.read("pressure", joint.pressure)
    if holds == "exhaust":
        return sheet.take("p", case.exhaust_pressure)
    return pressure_in_cylinder(case, sheet) if holds == "cylinder" else _pressure_of_live_steam(case, sheet)


def pressure_in_cylinder(case: LoadCase, sheet: Sheet) -> float:
    """Greatest gauge pressure in the cylinder: that stated for it, else that of the live steam."""
    if sheet.is_stated("cylinder pressure", case.cylinder_pressure):
        return sheet.take("p", case.cylinder_pressure)
    return _pressure_of_live_steam(case, sheet)


def _pressure_of_live_steam(case: LoadCase, sheet: Sheet) -> float:
    if sheet.is_stated("safety valve pressure", case.safety_valve_pressure):
        return sheet.take("p", case.safety_valve_pressure)
    return sheet.take("p", case.live_pressure)


def lift_per_stud(joint: BoltedJoint, case: LoadCase, sheet: Sheet, studs: Studs) -> float:
    """Working load on one stud from the pressure inside the joint."""
    pressure = acting_pressure(joint, case, sheet)
    load = sheet.work("F_p", pressure_load, D=pressure_diameter(joint, sheet), p=pressure)
    return sheet.work("P", load_per_stud, F=load, n=studs.n)
