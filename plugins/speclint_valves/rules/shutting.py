"""A shut valve: whether it stays shut, and whether it shuts."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Newtons, Pascals
from speclint.facts import event_pressure
from speclint.handbook.members import load_with_factor, sum_of_loads
from speclint.handbook.springs import EN_13906_1, RELAXATION_DIAGRAMS
from speclint.specs import LoadCase, PoppetValve
from speclint_valves.formulae.shutting import (
    compression_pressure,
    gauge_pressure,
    lifting_load,
    load_in_sense,
    pressure_at_shutting,
    shutting_load,
)
from speclint_valves.formulae.tables import sense_of_steam
from speclint_valves.inputs.cylinder import steam_beside, steam_needed
from speclint_valves.inputs.shutting import (
    greatest_lifting,
    least_friction,
    on_spindle,
    pressures_at_shutting,
    spindle_of,
    unbalanced,
    weight,
)
from speclint_valves.inputs.springs import springs_new, springs_relaxed
from speclint_valves.rules.seats import DEFERS

MARGIN = Limit("factor", "1.2", "ratio", COMMON_PRACTICE, "least closing load over opening load")
SPRINGS = (FIRST_PRINCIPLES, EN_13906_1.at("8, fall of the modulus with temperature"), RELAXATION_DIAGRAMS)


@rule(
    "valve.pressure-closed",
    title="Steam loads the shut valve in the direction that its drawing states, at any angle of the crank and wherever "
    "on its contact each beat seals",
    wrong="steam load in the stated direction {found}, at least {limit} wanted",
    on=PoppetValve,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES],
    why="the beats differ by millimetres: a valve that seals on another edge is lifted where it should "
    "be held shut",
    leaves_out="reversed pressure (valve.spring-holds-shut)",
    against=("leak",),
    limits=[
        Limit("least", "0 N", "force", FIRST_PRINCIPLES, "least steam load in the stated direction", "any")
    ],
    edition=5,
)
def pressure_closed(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """F = Δp π (d_u² − d_l²)/4 with each sealing circle at both edges of its contact, and the load on the spindle.

    With chest against exhaust, and by the cycle, where it is known, at the angle of the crank at which the pressures on
    both sides of the shut valve are nearest: there the load on the spindle may turn it. That alone is an observation,
    for springs hold a small load.
    """
    supply = sheet.take("p_s", case.live_pressure)
    delivery = sheet.take("p_d", case.exhaust_pressure)
    judged = _in_stated_sense(valve, supply, delivery, sheet)
    steam = steam_beside(valve, case, sheet)
    if steam is None or not judged.holds:
        return judged
    if sheet.read("serves", valve.serves) == "inlet":
        delivery = min(event_pressure(steam, "compression", "p_k", case, sheet), supply)
    else:
        supply = max(event_pressure(steam, "least, exhaust shut", "p_l", case, sheet), delivery)
    nearest = _in_stated_sense(valve, supply, delivery, sheet).else_says(
        "steam load in the stated direction {found} where both pressures come nearest, {limit} wanted"
    )
    return sheet.worst(judged, nearest.graded(Grade.OBSERVATION))


def _in_stated_sense(valve: PoppetValve, supply: Pascals, delivery: Pascals, sheet: Sheet) -> Judgement:
    on_valve = unbalanced(valve, sheet, supply, delivery)
    spindle = on_spindle(spindle_of(valve, sheet), sheet, supply, delivery)
    both = sheet.work("F", sum_of_loads, F_1=on_valve, F_2=spindle)
    g = sheet.look_up("g", sense_of_steam, steam_load=sheet.read("steam load", valve.steam_load))
    return sheet.at_least(sheet.work("F_g", load_in_sense, g=g, F=both), sheet.limit("least"))


@rule(
    "valve.spring-holds-shut",
    edition=9,
    title="Springs, weight and friction hold the valve shut with at least 1.2 times the greatest steam "
    "load that lifts it; a valve that is meant to lift then is sure to",
    on=PoppetValve,
    cases=("running", "drifting", "water"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[*SPRINGS, COMMON_PRACTICE],
    why="a valve lifted off its seat at the wrong moment traps water, or lets steam drive an engine "
    "that should stand still",
    leaves_out=f"pulsation of steam in the passages, and a broken spring (coil-spring.one-broken); {DEFERS}",
    against=("leak",),
    limits=[MARGIN],
)
def spring_holds_shut(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """Least load of the springs + weight + friction that is sure to help ≥ factor × lifting load of the case.

    The springs have the set of the hottest case of all, with the valve open, and the low end of their load. Valve and
    spindle weigh no more than their sizes let them where their weight shuts, and no less where it opens. A valve
    that is meant to lift in the case must do so instead, its springs new and its friction at the most: one that stays
    shut lets in no air, and lets out no water, although its drawing says so. One whose lifting hurts is never meant to
    lift while the engine drifts.
    """
    if may_lift(valve, case, sheet):
        return _lifts(valve, case, sheet)
    return held_shut(valve, case, springs_relaxed(valve, case, sheet).shut, sheet)


def _lifts(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """The most that springs, weight and friction hold shut against what lifts a valve that is meant to lift."""
    friction = sheet.take("F_r", spindle_of(valve, sheet).friction)
    springs, W = springs_new(valve, case, sheet).shut, weight(valve, sheet, helps=False)
    held = sheet.work("F_c", shutting_load, F_f=springs, W=W, F_r=friction)
    judged = sheet.at_most(held, greatest_lifting(valve, case, sheet)).else_says(
        "valve meant to lift may not: shut by {found}, lifted by {limit}"
    )
    return _graded(judged, valve, sheet)


def held_shut(valve: PoppetValve, case: LoadCase, springs: Newtons, sheet: Sheet) -> Judgement:
    """What springs of a load hold shut, with weight and sure friction, against what lifts the valve in a case."""
    friction = least_friction(spindle_of(valve, sheet), sheet)
    held = sheet.work("F_c", shutting_load, F_f=springs, W=weight(valve, sheet), F_r=friction)
    lifted = greatest_lifting(valve, case, sheet)
    needed = sheet.work("F_n", load_with_factor, x=sheet.limit("factor", "x"), F=lifted)
    judged = sheet.at_least(held, needed).else_says(
        "steam may lift the valve: shut by {found}, {limit} wanted"
    )
    return _graded(judged, valve, sheet)


def _graded(judged: Judgement, valve: PoppetValve, sheet: Sheet) -> Judgement:
    """A hold where the lifting of the valve hurts."""
    return judged.graded(Grade.HOLD) if sheet.read("reversal hurts", valve.reversal_hurts) else judged


def may_lift(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> bool:
    """Whether a valve is meant to lift in a load case, and harms nothing by it."""
    if not _meant_to_lift(valve, case, sheet):
        return False
    return case.name != "drifting" or not sheet.read("reversal hurts", valve.reversal_hurts)


def _meant_to_lift(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> bool:
    """Whether a valve is meant to lift in a load case: to drift off its seat, or to relieve trapped water."""
    if case.name == "drifting":
        return sheet.read("lifts while drifting", valve.lifts_drifting)
    return case.name == "water" and sheet.read("relieves water", valve.relieves_water)


@rule(
    "valve.closes",
    edition=7,
    title="Springs and weight shut the valve with at least 1.2 times the friction and the steam load on "
    "its spindle",
    on=PoppetValve,
    cases=("starting", "running", "drifting"),
    grade=Grade.NONCONFORMITY,
    cites=[*SPRINGS, COMMON_PRACTICE],
    why="a valve that stays open lets live steam into the exhaust, or is hit by the piston",
    leaves_out="inertia of the train (valve.spring-follows-cam)",
    against=("seize",),
    limits=[MARGIN],
)
def closes(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """Springs hot and relaxed + weight ≥ factor × (friction + spindle's load), the pressures round the valve equal."""
    return shut_against_friction(valve, case, springs_relaxed(valve, case, sheet).shut, sheet)


def shut_against_friction(valve: PoppetValve, case: LoadCase, springs: Newtons, sheet: Sheet) -> Judgement:
    """What springs of a load and the weight shut, against the friction and the steam on the spindle."""
    spindle = spindle_of(valve, sheet)
    supply, delivery = pressures_at_shutting(valve, case, sheet)
    pushed = sheet.work("F_o", lifting_load, F_v=0.0, F_s=on_spindle(spindle, sheet, supply, delivery))
    against = sheet.work("F_a", sum_of_loads, F_1=pushed, F_2=sheet.take("F_r", spindle.friction))
    needed = sheet.work("F_n", load_with_factor, x=sheet.limit("factor", "x"), F=against)
    return sheet.at_least(
        sheet.work("F_c", shutting_load, F_f=springs, W=weight(valve, sheet), F_r=0.0), needed
    ).else_says("springs and weight shut the valve with {found}, {limit} wanted")


@rule(
    "valve.compression-lift",
    edition=8,
    title="The load of compression at the shortest cut-off on the valve is no more than springs and "
    "weight hold",
    wrong="compression lifts the valve with {limit}, shut by {found}",
    on=PoppetValve,
    cases=("running", "drifting"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a valve lifted by compression at every stroke hammers its seat until it fails",
    leaves_out="steam that leaks in during compression, and heat lost to the walls",
    against=("wear",),
    against_on={"valve-seat": ("wear",)},
    limits=[Limit("exponent", "1.3", "ratio", COMMON_PRACTICE, "exponent of compression of dry steam")],
)
def compression_lift(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """The peak of compression against the steam on the other side of the valve, springs and weight.

    By the cycle of its notch where the cylinder has a valve gear; otherwise p = y p_b (1 + x/c)^n, where y is stated:
    the exhaust valve throttles while it shuts, so that compression begins above the exhaust pressure.
    """
    if may_lift(valve, case, sheet):
        raise sheet.not_applicable("the valve is meant to stay off its seat while the engine drifts")
    compressed = _compressed(valve, case, sheet)
    if sheet.read("serves", valve.serves) == "inlet":
        supply, delivery = sheet.take("p_s", case.live_pressure), compressed
    else:
        supply, delivery = compressed, sheet.take("p_d", case.exhaust_pressure)
    on_valve = unbalanced(valve, sheet, supply, delivery)
    spindle = on_spindle(spindle_of(valve, sheet), sheet, supply, delivery)
    lifted = sheet.work("F_l", lifting_load, F_v=on_valve, F_s=spindle)
    springs = springs_relaxed(valve, case, sheet).shut
    return sheet.at_least(
        sheet.work("F_c", shutting_load, F_f=springs, W=weight(valve, sheet), F_r=0.0), lifted
    )


def _compressed(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Pascals:
    steam = steam_needed(valve, case, sheet)
    if steam is not None:
        return event_pressure(steam, "compression", "p", case, sheet)
    begun, gauge = sheet.take_absolute("p_b", case.exhaust_pressure), sheet.take("p_g", case.exhaust_pressure)
    x, c = sheet.take("x", valve.compression_share), sheet.take("c", valve.clearance_share)
    shut = sheet.work("p_y", pressure_at_shutting, y=sheet.take("y", valve.shutting_ratio), p_b=begun)
    p = sheet.work("p", compression_pressure, p_b=shut, x=x, c=c, n=sheet.limit("exponent", "n"))
    return sheet.work("p_k", gauge_pressure, p=p, p_b=begun, p_g=gauge)


RULES = (pressure_closed, spring_holds_shut, closes, compression_lift)
