"""The shape of a cam under its follower: how aslant it pushes, and whether it is undercut."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.facts import WholeLift, motion
from speclint.handbook.cams import NORTON
from speclint.specs import Cam, Tappet
from speclint_valves.formulae.cam_shape import (
    base_reground,
    foot_wanted,
    path_over_roller,
    radius_under_flat,
    reach_on_crown,
    reach_on_flat,
)
from speclint_valves.formulae.regrinding import ground_off, skin_used
from speclint_valves.inputs.rollers import rocks, roller_of
from speclint_valves.inputs.train import SCAN


@rule(
    "cam.pressure-angle",
    title="The cam pushes a roller that slides no more than 30° aslant and one on a rocking arm no more than 45°, and "
    "touches a foot nowhere nearer to its edge than 2 mm",
    on=Cam,
    edition=3,
    grade=Grade.NONCONFORMITY,
    cites=[NORTON, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a tappet pushed aslant rubs its guide, jams and wears it oval, and a cam that touches the edge of a foot "
    "scores itself",
    leaves_out="a foot that rocks on an arm of its own; what tilts a flat foot in its guide (tappet.guide-edge-load)",
    against=("wear",),
    against_on={"tappet": ("seize", "wear")},
    limits=[
        Limit(
            "greatest", "30 °", "angle", COMMON_PRACTICE, "greatest pressure angle of a tappet that slides"
        ),
        Limit("rocking", "45 °", "angle", NORTON, "greatest pressure angle of a roller on a rocking arm"),
        Limit("edge", "2 mm", "length", COMMON_PRACTICE, "least foot beyond where the cam touches it"),
    ],
)
def pressure_angle_of_cam(cam: Cam, sheet: Sheet) -> Judgement:
    """α = arctan(|s′ − e|/y) at its greatest over rise and fall; of a foot the place where the cam touches it."""
    tappet = sheet.follow(cam.lifts)
    kind, moved = sheet.read("follower", tappet.follower), motion(cam, sheet)
    rocking = rocks(tappet, sheet)
    if kind == "flat foot" and not rocking:
        return _on_flat(tappet, moved, sheet)
    roller = roller_of(tappet, sheet.take("R_b", cam.base_radius), sheet)
    angle = sheet.scan(
        "θ",
        "cam angle of the greatest pressure angle",
        lambda angle: roller.aslant(moved.at(angle)),
        0.0,
        moved.duration,
        unit="rad",
    )
    α = roller.worked_angle(moved.at(angle), sheet)
    if kind == "crowned foot":
        return _reached(tappet, sheet.work("b", reach_on_crown, r=roller.radius, α=α), sheet)
    return sheet.at_most(α, sheet.limit("rocking" if rocking else "greatest")).else_says(
        "cam pushes its roller {found} aslant, {limit} allowed"
    )


def _on_flat(tappet: Tappet, moved: WholeLift, sheet: Sheet) -> Judgement:
    angle = sheet.scan(
        "θ",
        "cam angle of the greatest reach on the foot",
        lambda angle: reach_on_flat(s_prime=moved.at(angle).slope),
        0.0,
        moved.duration,
        unit="rad",
    )
    return _reached(tappet, sheet.work("b", reach_on_flat, s_prime=moved.at(angle).slope), sheet)


def _reached(tappet: Tappet, b: Metres, sheet: Sheet) -> Judgement:
    wanted = sheet.work("l_n", foot_wanted, b=b, c=sheet.limit("edge", "c"))
    return sheet.at_least(sheet.take("l", tappet.foot_length), wanted).else_says(
        "foot {found} long, {limit} wanted so that the cam does not touch its edge"
    )


@rule(
    "cam.no-undercut",
    edition=3,
    title="Reground and worn, the cam is nowhere curved more sharply than its follower can follow: a radius of 5 mm "
    "under a flat or crowned foot, and a path of the roller of 1.3 times its radius",
    on=Cam,
    grade=Grade.NONCONFORMITY,
    cites=[NORTON, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="an undercut cam has lost the metal that should lift the valve, and a sharp nose wears away",
    leaves_out="how the form of flanks and nose changes as it wears",
    against=("wear",),
    limits=[
        Limit("flat", "5 mm", "length", COMMON_PRACTICE, "least radius under a foot"),
        Limit("path", "1.3", "ratio", COMMON_PRACTICE, "least radius of the path over that of the roller"),
    ],
)
def no_undercut(cam: Cam, sheet: Sheet) -> Judgement:
    """The least radius over rise and fall, on the base circle less what is ground and worn off."""
    tappet, moved = sheet.follow(cam.lifts), motion(cam, sheet)
    R_b = _worn_base(cam, sheet)
    if sheet.read("follower", tappet.follower) != "roller" and not rocks(tappet, sheet):
        return _under_foot(R_b, moved, sheet)
    roller = roller_of(tappet, R_b, sheet)
    angle = sheet.scan(
        "θ",
        "cam angle of the sharpest path",
        lambda angle: roller.bent(moved.at(angle)),
        0.0,
        moved.duration,
        unit="rad",
        steps=SCAN,
    )
    k = roller.worked_bend(moved.at(angle), sheet)
    return sheet.at_least(sheet.work("x", path_over_roller, k=k), sheet.limit("path")).else_says(
        "path of the roller {found} times its radius, {limit} wanted"
    )


def _worn_base(cam: Cam, sheet: Sheet) -> Metres:
    """The base circle less what all regrinds take, none where nothing is said of them, and less wear at its limit."""
    R_b, ground = sheet.take("R_b", cam.base_radius), 0.0
    times, depth = cam.regrind.times, cam.regrind.depth
    if sheet.is_stated("regrinds", times) or sheet.is_stated("depth of a regrind", depth):
        n = sheet.count("n", times)
        ground = sheet.work("t_g", ground_off, n=float(n), g=sheet.take("g", depth))
    ground = sheet.work("t", skin_used, t_g=ground, t_w=sheet.take("t_w", cam.wear.limit))
    return sheet.work("R", base_reground, R_b=R_b, t=ground)


def _under_foot(R_b: Metres, moved: WholeLift, sheet: Sheet) -> Judgement:
    def radius(angle: float) -> float:
        at = moved.at(angle)
        return radius_under_flat(R_b=R_b, s=at.lift, κ=at.curvature)

    angle = sheet.scan(
        "θ",
        "cam angle of the least radius",
        radius,
        0.0,
        moved.duration,
        unit="rad",
        find="least",
        steps=SCAN,
    )
    at = moved.at(angle)
    ρ = sheet.work("ρ", radius_under_flat, R_b=R_b, s=at.lift, κ=at.curvature)
    return sheet.at_least(ρ, sheet.limit("flat")).else_says("radius of the cam {found}, {limit} wanted")


RULES = (pressure_angle_of_cam, no_undercut)
