"""The plate of a cylinder cover and its flange."""

from __future__ import annotations

from dataclasses import dataclass

from speclint import Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.bolted_joints import gasket_materials, gaskets, loads
from speclint.handbook.materials import share_of_strength
from speclint.handbook.plates import circular as plates, flat_covers, rings as ring_plates
from speclint.specs import BoltedJoint, CaseName, CylinderCover, LoadCase
from speclint_joints.formulae.covers import flange_bending_stress, gasket_lever
from speclint_joints.formulae.loads import area_of_all, load_of_all, mean_diameter
from speclint_joints.inputs.holding import joint_holding
from speclint_joints.inputs.preload import working_preload
from speclint_joints.inputs.seals import acting_pressure, gasket_ring, lift_per_stud
from speclint_joints.inputs.studs import core_area, studs_of
from speclint_joints.sources import ASME_APPENDIX_2, ASME_BENDING, EN_13445_3, ROARK

_DEFERS = "the local code and a competent person decide."
_DUTY: tuple[CaseName, ...] = ("starting", "running", "water")


@dataclass(frozen=True, slots=True)
class _Bolting:
    """Bolt loads of a cover, N, and the diameter G of the joint's reaction circle, m."""

    G: float
    operating: float
    seating: float


def _design_bolting(joint: BoltedJoint, case: LoadCase, sheet: Sheet, pressure: float) -> _Bolting:
    """Bolt loads of the code: operating, and for seating by the mean of required and actual bolt area."""
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
    return _Bolting(G, operating, pulled)


def _joint_loads(joint: BoltedJoint, sheet: Sheet, pressure: float) -> tuple[float, float, float]:
    if sheet.read("seal", joint.seal) != "gasket":
        outside, inside = (
            sheet.take("D_o", joint.ground_face.outside),
            sheet.take("D_i", joint.ground_face.inside),
        )
        G = sheet.work("G", mean_diameter, D_o=outside, D_i=inside)
        reach = sheet.take("D_p", joint.pressure_circle)
        return G, sheet.work("W_m1", loads.pressure_load, D=reach, p=pressure), 0.0
    name = sheet.read("gasket", joint.gasket.name)
    m = sheet.look_up("m", gasket_materials.gasket_factor, gasket=name)
    y = sheet.look_up("y", gasket_materials.seating_stress, gasket=name)
    ring = gasket_ring(joint, sheet)
    operating = sheet.work("W_m1", gaskets.operating_bolt_load, G=ring.G, b=ring.b, m=m, p=pressure)
    return ring.G, operating, sheet.work("W_m2", gaskets.seating_bolt_load, G=ring.G, b=ring.b, y=y)


def _flat_plate(cover: CylinderCover, case: LoadCase, sheet: Sheet, stretch: float) -> Judgement:
    """Thickness by the code, operating and seating, and stress of the plate, clamped and supported at its edge."""
    if sheet.read("form", cover.form) != "flat":
        raise sheet.not_covered("the rules of flat plates do not cover a dished cover")
    joint = joint_holding(cover, sheet)
    pressure = acting_pressure(joint, case, sheet)
    bolting = _design_bolting(joint, case, sheet, pressure)
    t = sheet.take("t", cover.thickness)
    hot, cold = _allowables(cover, joint, case, sheet, t, stretch)
    in_work = _code_thickness(
        cover, joint, sheet, bolting, "operating", p=pressure, S=hot, W=bolting.operating
    )
    drawn_up = _code_thickness(cover, joint, sheet, bolting, "seating", p=0.0, S=cold, W=bolting.seating)
    stresses = _plate_stresses(cover, sheet, pressure, bolting.G, t)
    judged = [sheet.at_least(t, in_work), sheet.at_least(t, drawn_up)]
    return sheet.worst(*judged, *(sheet.at_most(stress, hot) for stress in stresses))


def _code_thickness(
    cover: CylinderCover,
    joint: BoltedJoint,
    sheet: Sheet,
    bolting: _Bolting,
    when: str,
    *,
    p: float,
    S: float,
    W: float,
) -> float:
    """The code's thickness, for its opening too where the cover has one."""
    factor = sheet.look_up("C", flat_covers.bolted_cover_factor)
    lever = sheet.work("h_G", gasket_lever, D_b=sheet.take("D_b", joint.circle), G=bolting.G)
    weld = sheet.take("E", cover.weld_efficiency)
    plain = sheet.work(
        f"t_{when}",
        flat_covers.bolted_cover_thickness,
        G=bolting.G,
        C=factor,
        p=p,
        S=S,
        E=weld,
        W=W,
        h_G=lever,
    )
    hole = sheet.take("d_o", cover.central_hole)
    if hole <= 0:
        return plain
    return sheet.work(f"t_{when},h", flat_covers.cover_thickness_with_opening, t=plain, d=hole, G=bolting.G)


def _allowables(
    cover: CylinderCover, joint: BoltedJoint, case: LoadCase, sheet: Sheet, t: float, stretch: float
) -> tuple[float, float]:
    steel = sheet.material_of(cover)
    at, cold = sheet.take("T_m", case.temperature_of(cover)), sheet.take("T_0", joint.tightening.temperature)
    hot = sheet.look_up("f", steel.allowable_tension, at=at, wall=t)
    in_case = sheet.work("S", share_of_strength, k=stretch, R=hot)
    return in_case, sheet.look_up("S_0", steel.allowable_tension, at=cold, wall=t)


def _plate_stresses(cover: CylinderCover, sheet: Sheet, p: float, G: float, t: float) -> tuple[float, float]:
    """Stress of the plate with its edge clamped, and simply supported: the real edge lies between."""
    nu = sheet.look_up("nu", sheet.material_of(cover).poisson)
    hole = sheet.take("d_o", cover.central_hole)
    if hole > 0:
        return _with_hole("clamped", sheet, p, G, t, hole, nu), _with_hole(
            "supported", sheet, p, G, t, hole, nu
        )
    held = sheet.work("sigma_c", plates.clamped_plate_stress, p=p, D=G, t=t)
    return held, sheet.work("sigma_s", plates.supported_plate_stress, p=p, D=G, t=t, nu=nu)


def _with_hole(edge: str, sheet: Sheet, p: float, G: float, t: float, hole: float, nu: float) -> float:
    k = sheet.look_up(
        f"k_{edge}", ring_plates.ring_plate_stress_factor, outer=edge, inner="free", d=hole, D=G, nu=nu
    )
    return sheet.work(f"sigma_{edge}", ring_plates.ring_plate_stress, k=k, p=p, D=G, t=t)


@rule(
    "cover.thickness",
    title="The cover plate is at least as thick as the code requires for the pressure and the bolt load, "
    "and its bending stress does not exceed the allowable stress",
    on=CylinderCover,
    cases=_DUTY,
    grade=Grade.HOLD,
    cites=[
        flat_covers.BOLTED_COVER,
        flat_covers.OPENING,
        ROARK.at("Table 11.2"),
        ASME_APPENDIX_2.at("2-5(e)"),
    ],
    why="A cover that bends opens its own joint, and one that breaks is thrown at whoever stands in front "
    "of it.",
    leaves_out=f"Ribs and bosses are not credited; holes off the centre are not judged; {_DEFERS}",
)
def thickness(cover: CylinderCover, case: LoadCase, sheet: Sheet) -> Judgement:
    """Code form of a bolted flat cover, and plate theory, in work."""
    return _flat_plate(cover, case, sheet, 1.0)


@rule(
    "cover.test",
    title="In the hydraulic test the cover plate is at least as thick as the code requires, and its bending "
    "stress does not exceed the allowable test stress",
    on=CylinderCover,
    cases=("test",),
    grade=Grade.HOLD,
    cites=[
        flat_covers.BOLTED_COVER,
        flat_covers.OPENING,
        EN_13445_3.at("6.1.3 and table 6-1, testing load cases"),
    ],
    why="The test must prove the cover, not damage it.",
    leaves_out=f"Ribs and bosses are not credited; the test is done by the local code; {_DEFERS}",
    limits=[
        Limit(
            "on test",
            "1.43",
            "ratio",
            EN_13445_3.at("table 6-1: proof/1.05 on test, proof/1.5 in work"),
            "allowable stress on test over that in work",
        )
    ],
)
def on_test(cover: CylinderCover, case: LoadCase, sheet: Sheet) -> Judgement:
    """The same, with the allowable stress of a test."""
    return _flat_plate(cover, case, sheet, sheet.limit("on test"))


@rule(
    "cover.flange",
    title="The bending stress of the cover's flange between stud circle and joint, at the greatest load of "
    "its studs, does not exceed the allowable bending stress",
    on=CylinderCover,
    cases=_DUTY,
    grade=Grade.NONCONFORMITY,
    cites=[
        ASME_APPENDIX_2.at("2-6 and UG-34, moment of the bolt load"),
        ASME_BENDING,
    ],
    why="The flange is a short cantilever all round; a thin one bends, and the joint opens at its inner "
    "edge.",
    leaves_out="Hoop stiffness of the flange, which helps, and the stud holes: the flange is taken as solid.",
    limits=[
        Limit("bending", "1.5", "ratio", ASME_BENDING, "allowable bending stress over allowable tension")
    ],
)
def flange(cover: CylinderCover, case: LoadCase, sheet: Sheet) -> Judgement:
    """Bending of a strip round the joint by the greatest load of the studs as tightened."""
    joint = joint_holding(cover, sheet)
    working = working_preload(joint, case, sheet)
    studs = working.stack.studs
    lift = lift_per_stud(joint, case, sheet, studs)
    load = sheet.work("F_b", loads.stud_load, F_i=working.high, Phi=working.Phi, P=lift)
    pull = sheet.work("W", load_of_all, F=load, n=studs.n)
    G = _reaction_circle(joint, sheet)
    lever = sheet.work("h_G", gasket_lever, D_b=sheet.take("D_b", joint.circle), G=G)
    t = sheet.take("t_f", cover.flange_thickness)
    stress = sheet.work("sigma_f", flange_bending_stress, W=pull, h_G=lever, G=G, t=t)
    at = sheet.take("T_m", case.temperature_of(cover))
    tension = sheet.look_up("f", sheet.material_of(cover).allowable_tension, at=at, wall=t)
    return sheet.at_most(stress, sheet.work("f_b", share_of_strength, k=sheet.limit("bending"), R=tension))


def _reaction_circle(joint: BoltedJoint, sheet: Sheet) -> float:
    if sheet.read("seal", joint.seal) == "gasket":
        return gasket_ring(joint, sheet).G
    outside, inside = (
        sheet.take("D_o", joint.ground_face.outside),
        sheet.take("D_i", joint.ground_face.inside),
    )
    return sheet.work("G", mean_diameter, D_o=outside, D_i=inside)


RULES = (thickness, on_test, flange)
