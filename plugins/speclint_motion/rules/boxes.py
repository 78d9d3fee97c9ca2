"""The stuffing box itself: room for its packing inside, and its wall."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.cylinders import BORESI, bore_hoop_stress
from speclint.handbook.members import tube_wall
from speclint.specs import LoadCase, StuffingBox
from speclint_motion.formulae.diameters import bore_when_wasted, room_round, times_diameter
from speclint_motion.inputs.thrust import cylinder_of, piston_of, relief_pressure


@rule(
    "box.wall",
    title="A stuffing box leaves its packing at least 0.05 of the rod's diameter on each side, and its wall, less 1 mm "
    "that wastes away, bears the steam of boiler or relief valves within its allowable tension",
    on=StuffingBox,
    cases=("starting", "running", "water"),
    grade=Grade.HOLD,
    cites=[BORESI, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="packing without room seals nothing, and a box turned too thin bursts beside the rod, where no crack is seen",
    leaves_out="bottom and flange of the box, holes for studs and oil in its wall (gland.studs), a box in halves, and "
    "what the maker of the packing asks for; the hydraulic test: the local code and a competent person decide on it",
    against=("leak",),
    edition=3,
    limits=[
        Limit(
            "room", "0.05", "ratio", COMMON_PRACTICE, "least thickness of a packing over the rod's diameter"
        ),
        Limit(
            "wasting",
            "1 mm",
            "length",
            COMMON_PRACTICE,
            "metal that may waste away from the bore of a box",
            "not negative",
        ),
    ],
)
def box_wall(box: StuffingBox, case: LoadCase, sheet: Sheet) -> Judgement:
    """p (D² + d_w²)/(D² − d_w²) at the wasted bore against the allowable tension, hot; (d_b − d)/2 against 0.05 d.

    Too little room is no hold. A bore no wider than the rod has no room for either, and is a hold.
    """
    d, d_b = sheet.take("d", sheet.follow(box.seals).diameter), sheet.take("d_b", box.bore)
    if d_b <= d:
        says = "the bore of the stuffing box is no wider than its rod"
        return sheet.states(False, says, where=box.bore.where)
    least = sheet.work("w_n", times_diameter, k=sheet.limit("room", "k_w"), d=d)
    room = sheet.at_least(sheet.work("w", room_round, d_b=d_b, d=d), least).else_says(
        "room for the packing {found}, {limit} wanted"
    )
    return sheet.worst(room.graded(Grade.NONCONFORMITY), _wall(box, case, sheet))


def _wall(box: StuffingBox, case: LoadCase, sheet: Sheet) -> Judgement:
    """What the steam behind the neck bush does to the wall."""
    D, d_b = sheet.take("D_o", box.outside_diameter), sheet.take("d_b", box.bore)
    if d_b >= D:
        says = "the stuffing box is no wider outside than its bore"
        return sheet.states(False, says, where=box.outside_diameter.where)
    d_w = sheet.work("d_w", bore_when_wasted, d_b=d_b, a=sheet.limit("wasting", "a"))
    if d_w >= D:
        says = "the wall of the stuffing box is no thicker than what may waste away of it"
        return sheet.states(False, says, where=box.outside_diameter.where)
    t = sheet.work("t", tube_wall, D=D, d=d_b)
    p = relief_pressure(cylinder_of(piston_of(sheet.follow(box.seals), sheet), sheet), case, sheet)
    at = sheet.take("T_s", case.temperature_of(box))
    allowed = sheet.look_up("f", sheet.material_of(box).allowable_tension, of=box, at=at, wall=t)
    return sheet.at_most(sheet.work("σ_p", bore_hoop_stress, p=p, d=d_w, D=D), allowed).else_says(
        "steam stresses the wall of the stuffing box to {found}, {limit} allowed"
    )


RULES = (box_wall,)
