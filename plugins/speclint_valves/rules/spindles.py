"""Spindles: guide, stress, seal."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Grade,
    Judgement,
    Limit,
    Rule,
    Sheet,
    ToFill,
    filled_once,
    rule,
)
from speclint.equations import Newtons, Pascals, Ratio
from speclint.facts import (
    CRACKED,
    ValvesTrain,
    growth_since_drawn,
    motion,
    ratio_of_train,
    speed_of_gear,
    valve_speed,
)
from speclint.handbook.fits import DRAWING_TEMPERATURE, SHRINK_FIT
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import (
    buckling_factor,
    critical_load,
    end_fixity,
    round_area,
    round_second_moment,
)
from speclint.handbook.tables import SHIGLEY
from speclint.specs import HOT_CASES, LoadCase, Rocker, Tappet, ValveSpindle
from speclint_valves.formulae.guides import (
    guide_clearance,
    guide_clearance_hot,
    length_ratio,
    share_of_clearance,
    share_of_diameter,
)
from speclint_valves.formulae.spindle import direct_stress
from speclint_valves.formulae.tables import root_diameter_of_thread
from speclint_valves.inputs.guides import guide_of
from speclint_valves.inputs.leak_offs import leads_away
from speclint_valves.inputs.loads import greatest_valve_load
from speclint_valves.inputs.shutting import supply_at_most
from speclint_valves.inputs.train import SCAN, on_every_track


@rule(
    "spindle.guide-clearance-hot",
    edition=3,
    title="Hot, the spindle keeps at least 0.1 of its clearance in the guide, and at most 0.004 of its diameter",
    on=ValveSpindle,
    cases=(*HOT_CASES, "water"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, *SHRINK_FIT, COMMON_PRACTICE],
    why="a spindle that seizes holds its valve open; one that is loose lets steam past and wears its "
    "seat on one side",
    leaves_out="scale and burnt oil, which reduce the clearance in service",
    against=("leak", "seize"),
    limits=[
        Limit("least", "0.1", "ratio", COMMON_PRACTICE, "least share of the cold clearance left hot"),
        Limit("greatest", "0.004", "ratio", COMMON_PRACTICE, "greatest hot clearance over the diameter"),
    ],
)
def guide_clearance_when_hot(spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> Judgement:
    """D_g (1 + ε_g) − Δ_g − d (1 + ε_s) at least 0.1 of the cold clearance and at most 0.004 d.

    The guide is at the temperature of the block, which holds it: the difference of their expansion changes its bore.
    """
    guide, d = guide_of(spindle, case, sheet), sheet.take("d", spindle.diameter)
    ε_s = growth_since_drawn(spindle, "s", case, sheet)
    cold = sheet.work("c_0", guide_clearance, D_g=guide.bore, Δ_g=guide.closed_cold, d=d)
    hot = sheet.work(
        "c", guide_clearance_hot, D_g=guide.bore, ε_g=guide.growth, Δ_g=guide.closed_hot, d=d, ε_s=ε_s
    )
    least = sheet.work("c_min", share_of_clearance, x=sheet.limit("least", "x_c"), c_0=cold)
    most = sheet.work("c_max", share_of_diameter, x=sheet.limit("greatest", "x"), d=d)
    return sheet.worst(
        sheet.at_least(hot, least).else_says("spindle tight hot: {found} of clearance, {limit} wanted"),
        sheet.at_most(hot, most).else_says("spindle loose hot: {found} of clearance, {limit} allowed"),
    )


@rule(
    "spindle.guide-length",
    title="The guide is at least four spindle diameters long",
    wrong="guide {found} spindle diameters long, {limit} wanted",
    on=ValveSpindle,
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE],
    why="a short guide lets the valve tilt and land on one side",
    leaves_out="a second guide beyond the valve, which does the same with less length",
    against=("wear",),
    limits=[Limit("least", "4", "ratio", COMMON_PRACTICE, "least guide length over spindle diameter")],
)
def guide_length(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    """L/d ≥ 4."""
    L, d = sheet.take("L", spindle.guide_length), sheet.take("d", spindle.diameter)
    return sheet.at_least(sheet.work("x", length_ratio, L=L, d=d), sheet.limit("least"))


@rule(
    "spindle.stress",
    edition=9,
    title="The stress at the weakest section of the spindle and in the thread of its nut is at most 0.2 of its tensile "
    "strength, 0.127 where it is notched, and the factor against buckling at least 4",
    on=ValveSpindle,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, SHIGLEY.at("section 4-12, columns"), COMMON_PRACTICE],
    why="a spindle that breaks may drop its valve into the cylinder; one that bends jams in its guide",
    leaves_out="surface finish and size of the section, for which the shares of the strength are low",
    against=("break under load", "break in fatigue"),
    limits=[
        Limit(
            "share-of-strength",
            "0.2",
            "ratio",
            COMMON_PRACTICE,
            "share of tensile strength at 20 °C, for endurance of a plain section",
        ),
        Limit(
            "share-notched",
            "0.127",
            "ratio",
            COMMON_PRACTICE,
            "share of tensile strength at 20 °C, for endurance of a thread, a hole or a groove",
        ),
        Limit("buckling-factor", "4", "ratio", COMMON_PRACTICE, "least factor against buckling"),
        CRACKED,
    ],
)
def stress(spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> Judgement:
    """Greatest load of the event/least section ≤ its share of R_m; Johnson or Euler over the free length ≥ 4.

    The load is springs, steam, inertia and friction, or the blow with which the clearance is taken up. The root of the
    thread under the valve's nut is judged beside the section that is said to be the weakest.
    """
    F, _ = greatest_valve_load(sheet.follow(spindle.moves), case, sheet)
    T, metal = sheet.take("T", case.temperature_of(spindle)), sheet.material_of(spindle)
    R_m = sheet.look_up("R_m", metal.tensile_strength, of=spindle, at=DRAWING_TEMPERATURE)
    allowed = sheet.work("σ_zul", share_of_strength, k=_share(spindle, sheet), R=R_m)
    worked = sheet.work("σ", direct_stress, F=F, d=sheet.take("d_1", spindle.least_diameter))
    return sheet.worst(
        sheet.at_most(worked, allowed).else_says("spindle stressed to {found}, {limit} allowed"),
        *_under_nut(spindle, F, R_m, sheet),
        _buckling(spindle, T, F, sheet),
    )


def _under_nut(spindle: ValveSpindle, F: Newtons, R_m: Pascals, sheet: Sheet) -> Iterator[Judgement]:
    """The stress in the root of the thread by which a nut holds the valve, where the spindle states one."""
    held = spindle.valve_held
    by_nut = sheet.said("valve held by", held.by) == "nut"
    if not (by_nut and sheet.is_stated("thread of the valve's nut", held.thread)):
        return
    root = sheet.look_up(
        "d_3", root_diameter_of_thread, designation=sheet.read("thread of the valve's nut", held.thread)
    )
    worked = sheet.work("σ_3", direct_stress, F=F, d=root)
    allowed = sheet.work("σ_3z", share_of_strength, k=sheet.limit("share-notched", "k_3"), R=R_m)
    yield sheet.at_most(worked, allowed).else_says(
        "thread of the valve's nut stressed to {found}, {limit} allowed"
    )


def _share(spindle: ValveSpindle, sheet: Sheet) -> Ratio:
    """Share of strength by the form of the weakest section; that of a thread where no form is stated."""
    plain = sheet.said("form of the weakest section", spindle.least_section) == "plain"
    return sheet.limit("share-of-strength" if plain else "share-notched", "k")


def _buckling(spindle: ValveSpindle, T: float, F: Newtons, sheet: Sheet) -> Judgement:
    d, metal = sheet.take("d", spindle.diameter), sheet.material_of(spindle)
    strut = {
        "E": sheet.look_up("E", metal.modulus, of=spindle, at=T),
        "S_y": sheet.look_up("R_p", metal.proof_stress, of=spindle, at=T),
        "A": sheet.work("A", round_area, d=d),
        "I": sheet.work("I", round_second_moment, d=d),
        "K": sheet.look_up("K", end_fixity, ends=sheet.read("ends", spindle.ends)),
        "L": sheet.take("L", spindle.free_length),
    }
    factor = sheet.work("S", buckling_factor, F_c=sheet.work("F_k", critical_load, **strut), F=F)
    return sheet.at_least(factor, sheet.limit("buckling-factor")).else_says(
        "factor of the spindle against buckling {found}, {limit} wanted"
    )


@rule(
    "spindle.seal",
    edition=7,
    title="The seal is named, temperature, boiler pressure and speed at it are within its rating, and its leak-off is "
    "stated and leads to no place where people stand",
    on=ValveSpindle,
    cases=("starting", "running"),
    grade=Grade.QUERY,
    gravest=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="a seal beyond its rating burns or blows out, and water behind it corrodes gear and springs; "
    "steam led to the cab scalds",
    leaves_out="service life of the seal; what a gland's packing or rings bear, for which the rating stands; places "
    "that the leak-off names in other words, for which the local code and a competent person decide",
    against=("leak", "burn"),
    limits=[
        Limit(
            "lip", "260 °C", "temperature", COMMON_PRACTICE, "greatest temperature of a lip of PTFE or rubber"
        )
    ],
)
def seal(spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> Judgement:
    """Temperature, greatest pressure of the boiler and rubbing speed ≤ those of the rating; leak-off led away."""
    valve = sheet.follow(spindle.moves)
    led = leads_away(spindle, sheet)
    return sheet.worst(led, on_every_track(valve, sheet, lambda train: _sealed(spindle, train, case, sheet)))


def _sealed(spindle: ValveSpindle, train: ValvesTrain, case: LoadCase, sheet: Sheet) -> Judgement:
    """The seal at the speed that one track of the cam gives the spindle."""
    i, moved, ω = (
        ratio_of_train(train, sheet),
        motion(train.cam, sheet),
        speed_of_gear(train.valve, case, sheet),
    )

    def rubbing(angle: float) -> float:
        return valve_speed(i=i, s_prime=moved.at(angle).slope, ω=ω)

    angle = sheet.scan(
        "φ", "cam angle of the greatest speed", rubbing, 0.0, moved.duration, unit="rad", steps=SCAN
    )
    speed = sheet.work("v", valve_speed, i=i, s_prime=moved.at(angle).slope, ω=ω)
    kind = sheet.read("seal", spindle.seal)
    T, p = sheet.take("T", case.temperature_of(spindle)), supply_at_most(case, sheet)
    of_kind = (
        [
            sheet.no_hotter(T, sheet.limit("lip", "T_lip")).else_says(
                "lip seal at {found}, a lip bears {limit}"
            )
        ]
        if kind == "lip seal"
        else []
    )
    return sheet.worst(
        *of_kind,
        sheet.no_hotter(T, sheet.take("T_max", spindle.seal_temperature)).else_says(
            "seal at {found}, rated for {limit}"
        ),
        sheet.at_most(p, sheet.take("p_max", spindle.seal_pressure)).else_says(
            "steam of {found} on a seal rated for {limit}"
        ),
        sheet.at_most(speed, sheet.take("v_max", spindle.seal_speed)).else_says(
            "spindle moves at {found} in a seal rated for {limit}"
        ),
    ).graded(Grade.NONCONFORMITY)


def _drivers(spindle: ValveSpindle, sheet: Sheet) -> Iterator[ToFill]:
    """One tappet on the spindle, or one rocker; and one tappet on each rocker."""
    rockers = sheet.fillers(spindle, Rocker, by="works")
    own = sheet.fillers(spindle, Tappet, by="works")
    yield ToFill(spindle.id, "tappet or rocker", (*own, *rockers), where=spindle.where)
    for rocker in rockers:
        yield ToFill(rocker.id, "tappet", sheet.fillers(rocker, Tappet, by="works"), where=rocker.where)


driven: Rule = filled_once(
    "spindle.driven",
    edition=3,
    title="Each spindle is driven by exactly one tappet, directly or through one rocker",
    on=ValveSpindle,
    places=_drivers,
    row=300,
    gravity="hold",
    why="a valve with no tappet never lifts and shuts water in the cylinder; one with two is a drawing error",
    leaves_out="whether the tappet belongs to the right end of the cylinder",
)


RULES = (guide_clearance_when_hot, guide_length, stress, seal, driven)
