"""The seats of a lens joint."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import load_of_all, swing_of_lens
from speclint.handbook.members import contact
from speclint.handbook.tables import JOHNSON_CONTACT
from speclint.specs import Component, LensJoint, LoadCase
from speclint_joints.formulae.lenses import (
    arc_between,
    circle_missed,
    face_of_ring,
    load_square_to_seat,
    permitted_contact,
    round_the_seat,
    slant_between,
)
from speclint_joints.inputs.holding import joint_holding
from speclint_joints.inputs.preload import working_preload

#: A state of the joint: its mark in symbols, and the temperatures of ring and pipe, K.
_State = tuple[str, float, float]


@rule(
    "lens-joint.seat",
    title="The mean contact pressure of ring and seat, tightened and hot, is at most its multiple of proof stress, the "
    "circle of contact is that stated, and face and seat hold the band of contact, as it swings",
    on=LensJoint,
    cases=("starting", "running", "test"),
    grade=Grade.NONCONFORMITY,
    cites=[JOHNSON_CONTACT.at("section 4.2"), COMMON_PRACTICE],
    why="A ring that crushes its seat, or bears on the edge of its face or of its seat, leaks as soon as the "
    "pipe moves.",
    leaves_out="Friction on the seats, and hoop stress of the ring: a thin ring contracts under the bolt "
    "load.",
    against=("leak",),
    limits=[
        Limit(
            "times proof", "2.8", "ratio", COMMON_PRACTICE, "greatest mean contact pressure over proof stress"
        ),
        Limit("circle", "1 mm", "length", COMMON_PRACTICE, "greatest error of the stated circle of contact"),
    ],
    edition=8,
)
def seat(lens: LensJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Line load and mean contact pressure at the greatest load, tightened and hot; circle of contact; swing; band."""
    joint = joint_holding(lens, sheet)
    pipe = sheet.follow(lens.of)
    working = working_preload(joint, case, sheet)
    cold = sheet.take("T_0", joint.tightening.temperature)
    ring_hot = sheet.take("T_1", case.temperature_of(lens))
    pipe_hot = sheet.take("T_2", case.temperature_of(pipe))
    D, R = sheet.take("D_c", lens.contact_diameter), sheet.take("R", lens.sphere_radius)
    cone = sheet.read("seat", lens.seat) == "cone"
    phi = sheet.take("phi", lens.seat_angle) if cone else sheet.work("phi", contact.seat_angle, D=D, R=R)
    radius = R if cone else _hollow(lens, sheet, R)
    swing, face = swing_of_lens(lens, case, sheet), _face(lens, R, sheet)
    beyond = _to_mouth(lens, D, phi, sheet)
    judged = []
    for mark, load, at_ring, at_pipe in (
        ("0", working.tightened.high, cold, cold),
        ("h", working.high, ring_hot, pipe_hot),
    ):
        W = sheet.work(f"W_{mark}", load_of_all, F=load, n=working.stack.studs.n)
        q = sheet.work(f"q_{mark}", contact.seat_line_load, W=W, D=D, phi=phi)
        band = {"F": 0.0, "L": sheet.work("L", round_the_seat, D=D), "R": radius}
        band["F"] = sheet.work(f"N_{mark}", load_square_to_seat, q=q, L=band["L"])
        band["E_star"] = _modulus(lens, pipe, sheet, (mark, at_ring, at_pipe))
        judged += [
            *_crushing(lens, pipe, sheet, (mark, at_ring, at_pipe), band),
            *_on_metal(mark, R, (face, swing, beyond), band, sheet),
        ]
    if cone:
        touches = sheet.work("D", contact.circle_in_cone, R=R, phi=phi)
        judged.append(
            sheet.at_most(sheet.work("e", circle_missed, D_c=D, D=touches), sheet.limit("circle")).else_says(
                "the sphere touches a seat of this angle in a circle {found} off the stated one, {limit} allowed"
            )
        )
    return sheet.worst(*judged)


def _hollow(lens: LensJoint, sheet: Sheet, R: float) -> float:
    """Relative radius of the ring in a concave seat, whose radius counts negative."""
    hollow = sheet.take("R_s", lens.seat_radius)
    return sheet.work("R_rel", contact.relative_radius, R_1=R, R_2=-hollow)


def _modulus(lens: LensJoint, pipe: Component, sheet: Sheet, state: _State) -> float:
    one, other = sheet.material_of(lens), sheet.material_of(pipe)
    mark, at_ring, at_pipe = state
    return sheet.work(
        f"E_star{mark}",
        contact.contact_modulus,
        E_1=sheet.look_up(f"E_1{mark}", one.modulus, of=lens, at=at_ring),
        nu_1=sheet.look_up("nu_1", one.poisson, of=lens),
        E_2=sheet.look_up(f"E_2{mark}", other.modulus, of=pipe, at=at_pipe),
        nu_2=sheet.look_up("nu_2", other.poisson, of=pipe),
    )


def _crushing(
    lens: LensJoint, pipe: Component, sheet: Sheet, state: _State, band: dict[str, float]
) -> list[Judgement]:
    mark, at_ring, at_pipe = state
    greatest = sheet.work(f"p_0{mark}", contact.line_pressure, **band)
    mean = sheet.work(f"p_m{mark}", contact.line_mean_pressure, p_0=greatest)
    judged = []
    for number, part, at in (("1", lens, at_ring), ("2", pipe, at_pipe)):
        name = f"{number}{mark}"
        proof = sheet.look_up(f"R_p{name}", sheet.material_of(part).proof_stress, of=part, at=at)
        permitted = sheet.work(f"p_perm{name}", permitted_contact, k=sheet.limit("times proof"), R_p=proof)
        judged.append(
            sheet.at_most(mean, permitted).else_says(
                "ring and seat press each other with {found}, {limit} allowed"
            )
        )
    return judged


def _on_metal(
    mark: str, R: float, widths: tuple[float, float, float], band: dict[str, float], sheet: Sheet
) -> list[Judgement]:
    """The band of contact within the ring's face, as far as it swings, and within the mouth of the seat."""
    face, swing, beyond = widths
    half = sheet.work(f"b_{mark}", contact.line_half_width, **band)
    allowed = sheet.work(f"delta_{mark}", contact.swing_of_seat, w=face, b=half, R=R)
    return [
        sheet.at_least(allowed, swing).else_says("ring can swing by {found}, {limit} wanted"),
        sheet.at_least(beyond, half).else_says(
            "seat ends {found} beyond its circle of contact, {limit} wanted for the band"
        ),
    ]


def _to_mouth(lens: LensJoint, D: float, phi: float, sheet: Sheet) -> float:
    """Along the seat from the circle of contact to its mouth."""
    mouth = sheet.take("D_m", lens.seat_mouth)
    if sheet.read("seat", lens.seat) == "cone":
        return sheet.work("a_m", slant_between, D_1=D, D_2=mouth, phi=phi)
    return sheet.work("a_m", arc_between, R=sheet.take("R_s", lens.seat_radius), D_1=D, D_2=mouth)


def _face(lens: LensJoint, R: float, sheet: Sheet) -> float:
    """Width of the ring's face: as stated, and no more than lies between its bore and its outside."""
    w = sheet.take("w_s", lens.face_width)
    if not (sheet.is_stated("bore", lens.bore) and sheet.is_stated("outside", lens.outside_diameter)):
        return w
    D = sheet.take("D_c", lens.contact_diameter)
    inner = sheet.work("a_i", arc_between, R=R, D_1=sheet.take("d", lens.bore), D_2=D)
    outer = sheet.work("a_o", arc_between, R=R, D_1=D, D_2=sheet.take("D_o", lens.outside_diameter))
    return sheet.work("w", face_of_ring, w_s=w, a_i=inner, a_o=outer)


RULES = (seat,)
