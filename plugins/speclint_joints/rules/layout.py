"""Number and pitch of studs, and their room on the flange."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import bore_closed
from speclint.handbook.bolted_joints import gasket_materials, layout
from speclint.handbook.threads import nominal_diameter
from speclint.specs import BoltedJoint, ChamberCover, Component, CylinderCover, Gland, LensJoint, PipeFlange
from speclint_joints.formulae.holes import inside_of_holes, outside_of_nuts
from speclint_joints.inputs.purposes import keeps_steam
from speclint_joints.sources import KHURMI


@rule(
    "joint.stud-count",
    title="The number of studs is even, a multiple of four on a pipe flange, and not below its limit",
    on=BoltedJoint,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE, KHURMI.at("cylinder head example")],
    why="Nuts are tightened in opposite pairs; an odd number, or two on a pipe, loads the joint unevenly "
    "and it leaks.",
    leaves_out="Studs left out on purpose beside a passage; the period number of studs is reported, not "
    "required.",
    against=(),
    limits=[
        Limit("least", "4", "ratio", COMMON_PRACTICE, "least number of studs on a cover, pipe or lens joint"),
        Limit("least on a gland", "2", "ratio", COMMON_PRACTICE, "least number of studs on a gland"),
    ],
    edition=2,
)
def stud_count(joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """Even, a multiple of four on pipe flanges, not fewer than the least."""
    keeps_steam(joint, sheet)
    held = sheet.follow(joint.holds)
    n = sheet.count("n", joint.count)
    least = sheet.limit("least on a gland" if isinstance(held, Gland) else "least", "n_least")
    step = 4 if isinstance(held, PipeFlange) else 2  # in fours, or in pairs (common practice)
    if isinstance(held, CylinderCover):
        _period_number(held, sheet)
    in_groups = sheet.states(n % step == 0, _divides(n, step), where=joint.count.where)
    return sheet.worst(
        sheet.at_least(n, least).else_says("{found} studs, at least {limit} wanted"), in_groups
    )


def _divides(n: int, step: int) -> str:
    in_groups = "in fours" if step == 4 else "in pairs"
    return (
        f"{n} studs can be tightened {in_groups}"
        if n % step == 0
        else f"{n} studs cannot be tightened {in_groups}"
    )


def _period_number(cover: CylinderCover, sheet: Sheet) -> None:
    """Work the period number for comparison: a sound modern cover has more."""
    bore = sheet.take("D", bore_closed(cover, sheet))
    sheet.work("n_few", layout.fewest_studs, D=bore)
    sheet.work("n_most", layout.most_studs, D=bore)


@rule(
    "joint.stud-pitch",
    title="The pitch of the studs lies between the least for a spanner and the greatest at which the joint "
    "stays tight",
    on=BoltedJoint,
    grade=Grade.NONCONFORMITY,
    cites=[layout.TEMA, KHURMI.at("cylinder head example"), COMMON_PRACTICE],
    why="Between studs too far apart the flange bows and the joint leaks; between studs too close no "
    "spanner fits.",
    leaves_out="Gaps left for passages and ribs. A lens ring is stiff and round: only the spanner limits "
    "its studs.",
    against=("leak",),
    edition=3,
)
def stud_pitch(joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """Room for a spanner along the chord; along the arc, the greatest pitch at which the joint is tight."""
    keeps_steam(joint, sheet)
    held = sheet.follow(joint.holds)
    if isinstance(held, Gland):
        raise sheet.not_applicable("a gland presses packing, not a joint between its studs")
    designation = sheet.read("thread", joint.thread)
    d = sheet.look_up("d", nominal_diameter, designation=designation)
    circle, n = sheet.take("D_b", joint.circle), sheet.count("n", joint.count)
    pitch = sheet.work("s", layout.chordal_pitch, D=circle, n=n)
    least = sheet.work("s_low", layout.spanner_pitch, d=d)
    if sheet.read("seal", joint.seal) == "lens ring":
        return sheet.at_least(pitch, least).else_says("studs {found} apart, a spanner needs {limit}")
    along = sheet.work("s_arc", layout.arc_pitch, D=circle, n=n)
    greatest = _greatest(joint, held, sheet, d)
    return sheet.worst(
        sheet.at_least(pitch, least).else_says("studs {found} apart, a spanner needs {limit}"),
        sheet.at_most(along, greatest).else_says("studs {found} apart, tight only up to {limit}"),
    )


def _greatest(joint: BoltedJoint, held: Component, sheet: Sheet, d: float) -> float:
    if sheet.read("seal", joint.seal) != "gasket":
        return sheet.work("s_high", layout.greatest_pitch_for_tightness, d=d)
    gasket = sheet.read("gasket", joint.gasket.name)
    factor = sheet.look_up("m", gasket_materials.gasket_factor, gasket=gasket)
    thickness = flange_thickness(held, sheet)
    return sheet.work("s_high", layout.greatest_pitch, d=d, t=thickness, m=factor)


def flange_thickness(held: Component, sheet: Sheet) -> float:
    """Thickness of the part under the nuts, m."""
    if isinstance(held, CylinderCover | ChamberCover | LensJoint | Gland):
        return sheet.take("t", held.flange_thickness)
    if isinstance(held, PipeFlange):
        return sheet.take("t", held.thickness)
    raise sheet.not_assessed(f"a {held.called} states no flange thickness", held.where)


@rule(
    "joint.room",
    title="The stud holes lie outside the gasket, ground face, or lens ring and the mouth of its seat, and the nuts "
    "bear wholly on the flange",
    edition=2,
    on=BoltedJoint,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A gasket cut away for a stud leaks there; a nut that overhangs the edge bends its stud.",
    leaves_out="Fillets behind the flange, and room for the spanner beside neighbouring parts.",
    against=("leak",),
)
def room(joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """Inside of the holes against the outside of the seal; outside of the nuts against that of the flange."""
    keeps_steam(joint, sheet)
    held = sheet.follow(joint.holds)
    if isinstance(held, Gland):
        raise sheet.not_applicable("a gland has its packing far inside its studs")
    circle, hole = sheet.take("D_b", joint.circle), sheet.take("d_h", joint.hole)
    inside = sheet.work("D_in", inside_of_holes, D_b=circle, d_h=hole)
    outside = sheet.work("D_out", outside_of_nuts, D_b=circle, D_w=sheet.take("D_w", joint.nut.face))
    seal, flange = _outside_of_seal(joint, held, sheet), _outside_of_flange(joint, held, sheet)
    return sheet.worst(
        sheet.at_least(inside, seal).else_says(
            "stud holes cut the seal or its seat: holes from {found}, seal to {limit} diameter"
        ),
        sheet.at_most(outside, flange).else_says(
            "nuts overhang: {found} over the nuts, flange {limit} in diameter"
        ),
    )


def _outside_of_seal(joint: BoltedJoint, held: Component, sheet: Sheet) -> float:
    if isinstance(held, LensJoint):
        return max(sheet.take("D_s", held.outside_diameter), sheet.take("D_m", held.seat_mouth))
    gasket = sheet.read("seal", joint.seal) == "gasket"
    return sheet.take("D_s", joint.gasket.outside if gasket else joint.ground_face.outside)


def _outside_of_flange(joint: BoltedJoint, held: Component, sheet: Sheet) -> float:
    if isinstance(held, LensJoint):
        held = sheet.follow(joint.bolted_to)
    if isinstance(held, CylinderCover | ChamberCover | PipeFlange):
        return sheet.take("D_f", held.outside_diameter)
    raise sheet.not_assessed(f"a {held.called} states no outside diameter of a flange", held.where)


RULES = (stud_count, stud_pitch, room)
