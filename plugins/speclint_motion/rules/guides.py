"""The crosshead on its slide bars, and the reciprocating masses."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, MetresToTheFourth, Radians
from speclint.facts import reciprocating_mass, width_on_bars
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import (
    fixed_deflection,
    i_section_second_moment,
    rectangle_second_moment,
    simple_deflection,
    slipper_pressure,
)
from speclint.handbook.tables import ROARK
from speclint.specs import Crosshead, LoadCase, SlideBar
from speclint_motion.formulae.guides import (
    mass_apart,
    place_on_bar,
    share_of_span,
    thrust_on_one_bar,
)
from speclint_motion.formulae.thrust import crosshead_force, slipper_thrust
from speclint_motion.inputs.bar_ends import OnBar, built_in
from speclint_motion.inputs.bar_flanges import flange_bends
from speclint_motion.inputs.thrust import (
    FULL_TURN,
    ON_BAR,
    Cylinder,
    cylinder_of,
    gear_of,
    greatest,
    greatest_on_one,
    piston_of,
)


@rule(
    "crosshead.slide-pressure",
    title="The mean pressure of the slipper on its bar, at the greatest thrust of a revolution, does not "
    "exceed its limit",
    wrong="slipper presses its bar with {found}, {limit} allowed",
    on=Crosshead,
    cases=("starting", "running"),
    edition=6,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A slipper that is too small wipes its white metal; the rod then runs out of line in its packing.",
    leaves_out="weight of crosshead and rods, tilting of the slipper, dirt",
    against=("seize", "wear"),
    limits=[
        Limit("pressure", "0.7 MPa", "pressure", COMMON_PRACTICE, "greatest mean pressure of the slipper")
    ],
)
def slide_pressure(crosshead: Crosshead, case: LoadCase, sheet: Sheet) -> Judgement:
    """The greatest F tan φ of a revolution, of steam on the liner's last bore and inertia, over the smaller face.

    Steam by the diagrams of the valve gear where it is known, when running; else boiler pressure up to the cut-off.
    """
    cylinder = cylinder_of(piston_of(crosshead, sheet), sheet)
    N = greatest("N", "thrust on the bar", ON_BAR, cylinder, case, sheet)
    p = sheet.work(
        "p",
        slipper_pressure,
        N=N,
        L=sheet.take("L_s", crosshead.slipper_length),
        b=width_on_bars(crosshead, sheet),
        x=sheet.take("x_b", crosshead.bearing_share),
    )
    return sheet.at_most(p, sheet.limit("pressure"))


@rule(
    "slidebar.deflection",
    title="The deflection of the slide bar under the thrust does not exceed its share of the span; two rows of bolts "
    "hold fixed ends with 1.2 times its couple; the flange of an I takes 0.33 of proof stress",
    on=SlideBar,
    cases=("starting",),
    edition=7,
    grade=Grade.NONCONFORMITY,
    cites=[ROARK.at("Table 8.1, cases 1d and 1e"), COMMON_PRACTICE, FIRST_PRINCIPLES],
    why="A bar that deflects bends the rod at every stroke, just at its packing.",
    leaves_out="deflection of the motion plate and of the cover that carry the bar; how far a cover, block or bracket "
    "turns under the couple of an end said to be fixed, which a competent person judges: else the ends are both "
    "pinned; shear, wear; bending of the bar as a whole, which its deflection keeps low; buckling of a thin web",
    against=("break under load",),
    limits=[
        Limit("share", "0.001", "ratio", COMMON_PRACTICE, "greatest deflection over the span"),
        Limit(
            "couple",
            "1.2",
            "ratio",
            COMMON_PRACTICE,
            "least couple that the bolts of a fixed end bear over that of the thrust",
        ),
        Limit(
            "flange",
            "0.33",
            "ratio",
            COMMON_PRACTICE,
            "greatest stress of the flange of an I over proof stress",
        ),
    ],
)
def deflection(bar: SlideBar, case: LoadCase, sheet: Sheet) -> Judgement:
    """Deflection as the crosshead runs along the bar, boiler pressure on the last bore: the greatest of a turn.

    Ends said to be both fixed: the couple 4 F L/27 of the greatest thrust, as it passes a third of the span, against
    what takes the grip from the outer row of the bolts of each, clear of the slipper, on a part of the design. The
    flange of an I as a strip fixed at its web, under the pressure of the slipper at the greatest thrust.
    """
    cylinder = cylinder_of(piston_of(sheet.follow(bar.guides), sheet), sheet)
    if sheet.count("z", bar.bars_sharing) < 1:
        said = "no bar is said to share the thrust, and one at least takes it"
        return sheet.states(False, said, where=bar.bars_sharing.where)
    held = sheet.read("ends", bar.ends) == "both fixed"
    judged = [_bends(bar, cylinder, case, sheet, held=held)]
    judged += flange_bends(bar, lambda: greatest_on_one(bar, cylinder, case, sheet), sheet)
    if held:
        judged.append(built_in(bar, _on_bar(bar, cylinder, case, sheet), sheet))
    return sheet.worst(*judged)


def _bends(bar: SlideBar, cylinder: Cylinder, case: LoadCase, sheet: Sheet, *, held: bool) -> Judgement:
    """The greatest deflection of a turn, with ends that rest or are held."""
    gear = gear_of(cylinder, case, sheet)._asdict()
    crank = {"r": gear["r"], "l": gear["l"]}
    x_0, L = sheet.take("x_0", bar.crosshead_from_end), sheet.take("L", bar.span)
    z = float(sheet.count("z", bar.bars_sharing))
    beam = {
        "L": L,
        "E": sheet.look_up("E", sheet.material_of(bar).modulus, of=bar, at=DRAWING_TEMPERATURE),
        "I": _second_moment(bar, sheet),
    }
    bent = fixed_deflection if held else simple_deflection

    def at(θ: Radians) -> Metres:
        N = slipper_thrust(F=crosshead_force(θ=θ, **gear), θ=θ, **crank)
        return bent(F=thrust_on_one_bar(N=N, z=z), a=place_on_bar(x_0=x_0, θ=θ, **crank), **beam)

    θ = sheet.scan("θ_y", "crank angle of the greatest deflection", at, 0.0, FULL_TURN, unit="rad")
    F = sheet.work("F_y", crosshead_force, θ=θ, **gear)
    N = sheet.work("N_y", slipper_thrust, F=F, θ=θ, **crank)
    one = sheet.work("N_y1", thrust_on_one_bar, N=N, z=z)
    a = sheet.work("a_y", place_on_bar, x_0=x_0, θ=θ, **crank)
    y = sheet.work("y", bent, F=one, a=a, **beam)
    allowed = sheet.work("y_n", share_of_span, k=sheet.limit("share", "k"), L=L)
    return sheet.at_most(y, allowed).else_says("slide bar bends by {found}, {limit} allowed")


def _on_bar(bar: SlideBar, cylinder: Cylinder, case: LoadCase, sheet: Sheet) -> OnBar:
    """The greatest thrust on one bar, and the slipper that brings it."""
    return OnBar(
        F=greatest_on_one(bar, cylinder, case, sheet),
        r=gear_of(cylinder, case, sheet).r,
        x_0=sheet.take("x_0", bar.crosshead_from_end),
        L=sheet.take("L", bar.span),
        L_s=sheet.take("L_s", sheet.follow(bar.guides).slipper_length),
    )


def _second_moment(bar: SlideBar, sheet: Sheet) -> MetresToTheFourth:
    b: Metres = sheet.take("b", bar.width)
    h: Metres = sheet.take("h", bar.depth)
    if sheet.read("section", bar.section) == "rectangle":
        return sheet.work("I", rectangle_second_moment, b=b, h=h)
    web, flange = sheet.take("t_w", bar.web), sheet.take("t_f", bar.flange)
    return sheet.work("I", i_section_second_moment, b=b, h=h, t_w=web, t_f=flange)


@rule(
    "motion.balance-record",
    title="The reciprocating mass differs from that of the balance drawing, and from that stated for the "
    "cylinder block, by no more than its limit",
    on=Crosshead,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE, FIRST_PRINCIPLES],
    why="Wheels balanced for another mass overload the rail at every turn, and nothing on the engine shows "
    "it.",
    leaves_out="the balance itself, hammer blow and shuttling: the local code and a competent person decide",
    against=(),
    limits=[Limit("apart", "2 %", "ratio", COMMON_PRACTICE, "greatest relative difference of the masses")],
)
def balance_record(crosshead: Crosshead, sheet: Sheet) -> Judgement:
    """The parts' masses added up, against the balance drawing and against the mass stated for the cylinder block."""
    sheet.read("balance drawing", crosshead.balance_drawing)
    rod = sheet.follow(crosshead.on_rod)
    piston = sheet.follow(rod.carries)
    block = sheet.follow(sheet.follow(piston.runs_in).housed_in)
    m = sheet.work(
        "m",
        reciprocating_mass,
        m_p=sheet.take("m_p", piston.mass),
        m_r=sheet.take("m_r", rod.mass),
        m_c=sheet.take("m_c", crosshead.mass),
        m_s=sheet.take("m_s", crosshead.small_end_mass),
    )
    limit = sheet.limit("apart")
    balanced = sheet.take("m_0", crosshead.balanced_for)
    drawn = sheet.at_most(sheet.work("x_0", mass_apart, m=m, m_0=balanced), limit).else_says(
        "mass {found} off that of the balance drawing, {limit} allowed"
    )
    reckoned = sheet.take("m_b", block.drive.reciprocating_mass)
    return sheet.worst(
        drawn,
        sheet.at_most(sheet.work("x_b", mass_apart, m=m, m_0=reckoned), limit).else_says(
            "mass {found} off that stated for the block, {limit} allowed"
        ),
    )


RULES = (slide_pressure, deflection, balance_record)
