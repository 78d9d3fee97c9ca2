"""Space round a spring: buckling, growth of its diameter, and the other springs of its set."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule, specs
from speclint.equations import Metres, Newtons
from speclint.facts import weight_of_valve
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import load_with_factor, sum_of_loads
from speclint.handbook.springs import (
    buckling_deflection,
    coil_pitch,
    deflection,
    en_13906_1_clause,
    outside_growth_at_solid,
    seating_coefficient,
)
from speclint.specs import CompressionSpring
from speclint_springs.formulae.helical import (
    clearance_inside,
    clearance_outside,
    closing_need,
    radial_room,
    share_of_coil,
)
from speclint_springs.formulae.tables import end_coils_in_pitch
from speclint_springs.inputs import (
    aimed_mean_diameter,
    greatest_solid_length,
    mean_diameter,
    modulus_of_rigidity,
    shortest_length,
    shut_load,
    working_coils,
)


@rule(
    "coil-spring.buckling",
    edition=4,
    title="The deflection at full lift is no more than that at which the spring buckles",
    wrong="spring buckles: pressed by {found}, it buckles at {limit}",
    on=CompressionSpring,
    grade=Grade.NONCONFORMITY,
    cites=[en_13906_1_clause("9.14, buckling"), COMMON_PRACTICE],
    why="a spring that buckles wears through its guide, and pushes the spindle sideways",
    leaves_out="ends that are not square, and a spring that a guide keeps straight",
    against=("break under load",),
    limits=[
        Limit(
            "guide",
            "0.1",
            "ratio",
            COMMON_PRACTICE,
            "greatest play of a guide that keeps a spring straight, over the mean diameter of its coils",
        )
    ],
)
def buckling(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """Deflection at full lift ≤ that at which the spring buckles, by its seating; a guide near it keeps it straight."""
    d = sheet.take("d", spring.wire)
    D = mean_diameter(spring, sheet, d)
    if _is_guided(spring, sheet, d, D):
        raise sheet.not_applicable(
            "a pin or a sleeve guides the spring; coil-spring.house judges its clearance"
        )
    free = sheet.take("L_0", spring.free_length)
    nu = sheet.look_up("ν", seating_coefficient, seating=sheet.read("seating", spring.seating))
    E = sheet.look_up("E", sheet.material_of(spring).modulus, of=spring, at=DRAWING_TEMPERATURE)
    G = modulus_of_rigidity(spring, sheet)
    pressed = sheet.work("s", deflection, L_0=free, L=shortest_length(spring, sheet))
    return sheet.at_most(pressed, sheet.work("s_k", buckling_deflection, L_0=free, D=D, nu=nu, G=G, E=E))


def _is_guided(spring: CompressionSpring, sheet: Sheet, d: Metres, D: Metres) -> bool:
    """Whether a spring is kept straight: as it says, by a pin or a housing that is stated and near enough to it."""
    if not sheet.said("guided", spring.guided):
        return False
    plays = []
    if sheet.is_stated("guide pin", spring.guide_pin):
        pin = sheet.take("d_p", spring.guide_pin)
        plays.append(sheet.work("c_i", clearance_inside, D=D, d=d, d_p=pin))
    if sheet.is_stated("housing", spring.housing):
        housing = sheet.take("D_h", spring.housing)
        plays.append(sheet.work("c_o", clearance_outside, D_h=housing, D=D, d=d, ΔD=0.0))
    return bool(plays) and min(plays) <= sheet.work("c_g", share_of_coil, x=sheet.limit("guide", "x"), D=D)


@rule(
    "coil-spring.house",
    edition=2,
    title="The coils clear the housing round them when solid and the guide pin inside them when free",
    on=CompressionSpring,
    grade=Grade.NONCONFORMITY,
    cites=[en_13906_1_clause("9.11, increase of coil diameter"), FIRST_PRINCIPLES],
    why="coils that rub wear through, and a spring that jams in its housing holds nothing",
    leaves_out="a housing or a pin out of line with the spring",
    against=("foul",),
)
def house(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """Clearance outside with the growth at solid, and inside where the coil is narrowest, both above zero."""
    d = sheet.take("d", spring.wire)
    D = mean_diameter(spring, sheet, d)
    judges = []
    if sheet.is_stated("housing", spring.housing):
        judges.append(_outside)
    if sheet.is_stated("guide pin", spring.guide_pin):
        judges.append(_inside)
    if not judges:
        raise sheet.not_assessed("neither housing nor guide_pin is stated", spring.where)
    return sheet.each(judges, lambda judge: judge(spring, sheet, d, D))


def _inside(spring: CompressionSpring, sheet: Sheet, d: Metres, D: Metres) -> Judgement:
    """Of the clearance that the drawing aims at, some must be left at the worst of wire, coil and pin."""
    inside = sheet.work("c_i", clearance_inside, D=D, d=d, d_p=sheet.take("d_p", spring.guide_pin))
    d_n, d_pn = sheet.take_nominal("d_n", spring.wire), sheet.take_nominal("d_pn", spring.guide_pin)
    aimed = sheet.work("c_n", clearance_inside, D=aimed_mean_diameter(spring, sheet, d_n), d=d_n, d_p=d_pn)
    return sheet.stays(inside, aimed, strictly=True).else_says("coils bind on the guide pin: {left} left")


def _outside(spring: CompressionSpring, sheet: Sheet, d: Metres, D: Metres) -> Judgement:
    housing = sheet.take("D_h", spring.housing)
    free = sheet.take("L_0", spring.free_length)
    solid = sheet.work("s_c", deflection, L_0=free, L=greatest_solid_length(spring, sheet, d))
    b = sheet.look_up("b", end_coils_in_pitch, ends=sheet.read("ends", spring.ends))
    pitch = sheet.work("m", coil_pitch, s_c=solid, n=working_coils(spring, sheet), b=b, d=d)
    growth = sheet.work("ΔD", outside_growth_at_solid, m=pitch, d=d, D=D)
    cold = sheet.work("c_0", clearance_outside, D_h=housing, D=D, d=d, ΔD=0.0)
    return sheet.stays(
        sheet.work("c", clearance_outside, D_h=housing, D=D, d=d, ΔD=growth), cold, strictly=True
    ).else_says("coils bind in the housing when solid: {left} left")


@rule(
    "coil-spring.one-broken",
    edition=3,
    title="With this spring of a set broken the others still shut the valve; nested springs are of "
    "opposite hand and at least 1 mm apart",
    on=CompressionSpring,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="springs are nested so that the engine can return on one; wound the same way, broken coils "
    "screw into the other spring",
    leaves_out="running at full speed on the springs that are left: the engine must be slowed",
    against=(),
    limits=[
        Limit(
            "factor",
            "1",
            "ratio",
            COMMON_PRACTICE,
            "least load of the springs left over weight and friction",
        ),
        Limit(
            "radial-room",
            "1 mm",
            "length",
            COMMON_PRACTICE,
            "least radial clearance between springs of a set",
        ),
    ],
)
def one_broken(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """Loads of the others, shut, ≥ factor × (friction + weight that opens); opposite hands; radial clearance."""
    valve = sheet.follow(spring.closes)
    others = tuple(one for one in sheet.belonging_to(valve, CompressionSpring) if one.id != spring.id)
    if not others:
        raise sheet.not_applicable(
            "it is the only spring: coil-spring.fatigue and the valve's rules judge it"
        )
    found = [_remaining(spring, others, sheet)]
    if sheet.is_stated("nested in", spring.nested_in):
        outer = sheet.follow(spring.nested_in)
        found += [_opposite_hands(spring, outer, sheet), _radial_clearance(spring, outer, sheet)]
    return sheet.worst(*found)


def _remaining(spring: CompressionSpring, others: tuple[CompressionSpring, ...], sheet: Sheet) -> Judgement:
    left: Newtons = 0.0
    for number, other in enumerate(others, start=1):
        d = sheet.take(f"d_{number}", other.wire)
        F = shut_load(other, sheet, d, mean_diameter(other, sheet, d), least=True)
        left = sheet.work(f"F_{number}", sum_of_loads, F_1=left, F_2=F)
    needed = sheet.work("F_n", load_with_factor, x=sheet.limit("factor", "x"), F=_needed_load(spring, sheet))
    return sheet.at_least(left, needed).else_says(
        "the other springs give {found}, {limit} wanted to shut the valve"
    )


def _needed_load(spring: CompressionSpring, sheet: Sheet) -> Newtons:
    valve = sheet.follow(spring.closes)
    spindles = sheet.belonging_to(valve, specs.ValveSpindle)
    if not spindles:
        raise sheet.not_assessed(f"no spindle states that it moves {valve.id}")
    spindle = spindles[0]
    W = weight_of_valve(valve, spindle, sheet, sheet.take, helps=True)
    return sheet.work("F_r", closing_need, F_f=sheet.take("F_f", spindle.friction), W=W)


def _opposite_hands(spring: CompressionSpring, outer: CompressionSpring, sheet: Sheet) -> Judgement:
    own, other = sheet.read("hand", spring.hand), sheet.read(f"hand of {outer.id}", outer.hand)
    return sheet.states(own != other, f"wound {own} hand, inside {outer.id}, which is wound {other} hand")


def _radial_clearance(spring: CompressionSpring, outer: CompressionSpring, sheet: Sheet) -> Judgement:
    d, d_o = sheet.take("d", spring.wire), sheet.take("d_o", outer.wire)
    D, D_o = mean_diameter(spring, sheet, d), mean_diameter(outer, sheet, d_o)
    room = sheet.work("c_r", radial_room, D_o=D_o, d_o=d_o, D=D, d=d)
    return sheet.at_least(room, sheet.limit("radial-room")).else_says(
        "nested springs {found} apart, {limit} wanted"
    )


RULES = (buckling, house, one_broken)
