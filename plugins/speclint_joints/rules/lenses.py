"""The seats of a lens joint."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.members import contact
from speclint.handbook.tables import JOHNSON_CONTACT
from speclint.specs import Component, LensJoint
from speclint_joints.formulae.lenses import (
    circle_missed,
    load_square_to_seat,
    permitted_contact,
    round_the_seat,
)
from speclint_joints.formulae.loads import load_of_all
from speclint_joints.inputs.holding import joint_holding
from speclint_joints.inputs.preload import tightened_preload
from speclint_joints.inputs.studs import studs_of


@rule(
    "lens-joint.seat",
    title="The mean contact pressure of ring and seat does not exceed its multiple of proof stress, the "
    "circle of contact is that stated, and the ring's face covers the stated swing",
    on=LensJoint,
    grade=Grade.NONCONFORMITY,
    cites=[JOHNSON_CONTACT.at("section 4.2"), COMMON_PRACTICE],
    why="A ring that crushes its seat, or bears on the edge of its own face, leaks as soon as the pipe "
    "moves.",
    leaves_out="Friction on the seats, and hoop stress of the ring: a thin ring contracts under the bolt "
    "load.",
    limits=[
        Limit(
            "times proof", "2.8", "ratio", COMMON_PRACTICE, "greatest mean contact pressure over proof stress"
        ),
        Limit("circle", "1 mm", "length", COMMON_PRACTICE, "greatest error of the stated circle of contact"),
    ],
)
def seat(lens: LensJoint, sheet: Sheet) -> Judgement:
    """Line load and mean contact pressure at greatest preload; circle of contact; swing."""
    joint = joint_holding(lens, sheet)
    at = sheet.take("T_0", joint.tightening.temperature)
    pipe = sheet.follow(lens.of)
    studs = studs_of(joint, sheet)
    load = sheet.work("W", load_of_all, F=tightened_preload(joint, sheet, studs).high, n=studs.n)
    D, R = sheet.take("D_c", lens.contact_diameter), sheet.take("R", lens.sphere_radius)
    cone = sheet.read("seat", lens.seat) == "cone"
    phi = sheet.take("phi", lens.seat_angle) if cone else sheet.work("phi", contact.seat_angle, D=D, R=R)
    q = sheet.work("q", contact.seat_line_load, W=load, D=D, phi=phi)
    radius = R if cone else _hollow(lens, sheet, R)
    band = {"F": 0.0, "L": sheet.work("L", round_the_seat, D=D), "R": radius}
    band["F"] = sheet.work("N", load_square_to_seat, q=q, L=band["L"])
    band["E_star"] = _modulus(lens, pipe, sheet, at)
    judged = [*_crushing(lens, pipe, sheet, at, band), _swings(lens, sheet, R, band)]
    if cone:
        touches = sheet.work("D", contact.circle_in_cone, R=R, phi=phi)
        judged.append(sheet.at_most(sheet.work("e", circle_missed, D_c=D, D=touches), sheet.limit("circle")))
    return sheet.worst(*judged)


def _hollow(lens: LensJoint, sheet: Sheet, R: float) -> float:
    """Relative radius of the ring in a concave seat, whose radius counts negative."""
    hollow = sheet.take("R_s", lens.seat_radius)
    return sheet.work("R_rel", contact.relative_radius, R_1=R, R_2=-hollow)


def _modulus(lens: LensJoint, pipe: Component, sheet: Sheet, at: float) -> float:
    one, other = sheet.material_of(lens), sheet.material_of(pipe)
    return sheet.work(
        "E_star",
        contact.contact_modulus,
        E_1=sheet.look_up("E_1", one.modulus, of=lens, at=at),
        nu_1=sheet.look_up("nu_1", one.poisson, of=lens),
        E_2=sheet.look_up("E_2", other.modulus, of=pipe, at=at),
        nu_2=sheet.look_up("nu_2", other.poisson, of=pipe),
    )


def _crushing(
    lens: LensJoint, pipe: Component, sheet: Sheet, at: float, band: dict[str, float]
) -> list[Judgement]:
    greatest = sheet.work("p_0", contact.line_pressure, **band)
    mean = sheet.work("p_m", contact.line_mean_pressure, p_0=greatest)
    judged = []
    for mark, part in (("1", lens), ("2", pipe)):
        proof = sheet.look_up(f"R_p{mark}", sheet.material_of(part).proof_stress, of=part, at=at)
        permitted = sheet.work(f"p_perm{mark}", permitted_contact, k=sheet.limit("times proof"), R_p=proof)
        judged.append(sheet.at_most(mean, permitted))
    return judged


def _swings(lens: LensJoint, sheet: Sheet, R: float, band: dict[str, float]) -> Judgement:
    half = sheet.work("b", contact.line_half_width, **band)
    allowed = sheet.work("delta", contact.swing_of_seat, w=sheet.take("w", lens.face_width), b=half, R=R)
    return sheet.at_least(allowed, sheet.take("delta_s", lens.swing))


RULES = (seat,)
