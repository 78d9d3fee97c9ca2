"""What a gasket stands: pressure and heat, and the press of its studs."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, NotKnown, Sheet, rule
from speclint.facts import pressure_held
from speclint.handbook.bolted_joints import gasket_materials
from speclint.handbook.members import tube_area
from speclint.specs import BoltedJoint, LoadCase
from speclint_joints.formulae.gaskets import thickest_sheet, thinnest_pressed
from speclint_joints.formulae.loads import pressure_on_face
from speclint_joints.inputs.preload import working_preload
from speclint_joints.inputs.pressures import acting_pressure
from speclint_joints.inputs.seals import sealed_by
from speclint_joints.sources import VDI_2230


@rule(
    "joint.gasket-rating",
    title="Steam pressure, steam temperature and their product do not exceed the rating of the gasket",
    on=BoltedJoint,
    cases=("starting", "running", "drifting"),
    edition=4,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="A gasket sheet above its rated temperature turns brittle and is blown out in pieces.",
    leaves_out="The maker's own rating, which takes precedence over the handbook's, and the loss of strength with age.",
    against=("leak", "burn"),
)
def gasket_rating(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Steam pressure, steam temperature and their product against the gasket's table."""
    sealed_by("gasket", joint, sheet)
    name = sheet.read("gasket", joint.gasket.name)
    pressure = acting_pressure(joint, case, sheet)
    exhaust = pressure_held(joint, sheet) == "exhaust"
    steam = sheet.take("T_s", case.exhaust_temperature if exhaust else case.live_temperature)
    hottest = sheet.look_up("T_max", gasket_materials.hottest, gasket=name)
    greatest = sheet.look_up("p_max", gasket_materials.greatest_pressure, gasket=name)
    judged = [
        sheet.no_hotter(steam, hottest).else_says("steam of {found} on a gasket for {limit}"),
        sheet.at_most(pressure, greatest).else_says("pressure of {found} on a gasket for {limit}"),
    ]
    if _has_product_limit(name):
        product = sheet.work("pT", gasket_materials.pressure_temperature, p=pressure, T=steam)
        judged.append(
            sheet.at_most(
                product, sheet.look_up("pT_max", gasket_materials.greatest_pressure_temperature, gasket=name)
            ).else_says("pressure times temperature {found}, the gasket is for {limit}")
        )
    return sheet.worst(*judged)


def _has_product_limit(gasket: str) -> bool:
    """Sheet gaskets have one, metal ones none; an unknown gasket has been refused before."""
    try:
        gasket_materials.greatest_pressure_temperature(gasket)
    except NotKnown:
        return False
    return True


@rule(
    "joint.gasket-crush",
    title="The mean stress of the gasket at the greatest preload of the studs, as tightened, on test and hot, does not "
    "exceed what it bears",
    on=BoltedJoint,
    cases=("starting", "running", "test", "water"),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE, VDI_2230.at("section 5.5.4")],
    why="A gasket that is crushed squeezes out sideways or splits, and does not follow the flange when it cools.",
    leaves_out="The maker's own figure, which takes precedence over the handbook's, and uneven stress under a flange "
    "that bows.",
    against=("leak",),
    edition=3,
)
def gasket_crush(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Mean stress of the whole ring at the greatest preload, no pressure to relieve it, against the gasket's table."""
    sealed_by("gasket", joint, sheet)
    working = working_preload(joint, case, sheet)
    n = working.stack.studs.n
    outside, inside = sheet.take("D_o", joint.gasket.outside), sheet.take("D_i", joint.gasket.inside)
    area = sheet.work("A_g", tube_area, D=outside, d=inside)
    name = sheet.read("gasket", joint.gasket.name)
    bears = sheet.look_up("q_max", gasket_materials.crushing_stress, gasket=name)
    tightened = sheet.work("q_0", pressure_on_face, F=working.tightened.high, n=n, A=area)
    hot = sheet.work("q_h", pressure_on_face, F=working.high, n=n, A=area)
    return sheet.worst(
        sheet.at_most(tightened, bears).else_says(
            "studs as tightened crush the gasket: {found}, {limit} allowed"
        ),
        sheet.at_most(hot, bears).else_says("studs in this case crush the gasket: {found}, {limit} allowed"),
    )


@rule(
    "joint.gasket-as-named",
    title="A sheet gasket as compressed is no thicker than the sheet that it names, and no thinner than a sheet can be "
    "pressed to",
    on=BoltedJoint,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="The thickness decides how the gasket gives and what it bears: a sheet of twice the thickness is blown out "
    "sooner.",
    leaves_out="Gaskets whose name has no thickness, and how far one is compressed, which the maker's curve gives.",
    against=(),
    limits=[
        Limit(
            "most", "1.1", "ratio", COMMON_PRACTICE, "greatest thickness over that named, as sheets are made"
        ),
        Limit("least", "0.5", "ratio", COMMON_PRACTICE, "least thickness as compressed over that named"),
    ],
)
def gasket_as_named(joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """The stated thickness against that in the name of the gasket."""
    sealed_by("gasket", joint, sheet)
    name = sheet.read("gasket", joint.gasket.name)
    if not name.endswith(" mm"):
        raise sheet.not_applicable(f"{name} is made in several thicknesses")
    named = sheet.look_up("t_n", gasket_materials.thickness, gasket=name)
    t = sheet.take("t", joint.gasket.thickness)
    most = sheet.work("t_max", thickest_sheet, k=sheet.limit("most", "k_1"), t_n=named)
    least = sheet.work("t_min", thinnest_pressed, k=sheet.limit("least", "k_0"), t_n=named)
    return sheet.worst(
        sheet.at_most(t, most).else_says("gasket {found} thick, its sheet is {limit} at most"),
        sheet.at_least(t, least).else_says(
            "gasket {found} thick, its sheet is pressed to {limit} at the least"
        ),
    )


RULES = (gasket_as_named, gasket_crush, gasket_rating)
