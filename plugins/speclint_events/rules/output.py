"""What the cylinders give and take: work of both ends, steam against the boiler, effort against adhesion."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import STANDARD_GRAVITY, CubicMetres, Kilograms, SquareMetres, Watts
from speclint.facts import SIDES, bore_as_drawn, flow_of_cylinders, piston_area, worn_wheel
from speclint.handbook.steam import IF97, density_at_enthalpy, steam_enthalpy
from speclint.handbook.steam_cycle import indicated_power, mean_pressure_of_work, steam_flow
from speclint.handbook.valve_events import BALDWIN, End, tractive_effort, tractive_effort_by_the_trade
from speclint.specs import LoadCase, ValveGear
from speclint_events.formulae.steam import (
    effort_of_engine,
    force_of_adhesion,
    mass_of_steam,
    power_of_ends,
    steam_let_in,
    volume_of_steam,
)
from speclint_events.inputs import Steam, engine_of_gear, steam_of
from speclint_events.rules.steam import LEFT_OUT
from speclint_events.sources import BRUCE


@rule(
    "events.equal-work",
    title="The front of the cylinder does 0.9 to 1.1 of the work of the back",
    wrong="front does {found} of the work of the back, where the nearer limit is {limit}",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    gravest=Grade.NONCONFORMITY,
    cites=[IF97, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="ends that work unequally make the engine pull by jerks and wear one side of the motion",
    leaves_out=f"other cylinders, taken as alike; {LEFT_OUT}",
    against=(),
    limits=[
        Limit("least", "0.9", "ratio", COMMON_PRACTICE, "least work of the front over that of the back"),
        Limit("most", "1.1", "ratio", COMMON_PRACTICE, "greatest work of the front over that of the back"),
        Limit("grave_least", "0.8", "ratio", COMMON_PRACTICE, "below which it is a nonconformity"),
        Limit("grave_most", "1.25", "ratio", COMMON_PRACTICE, "above which it is a nonconformity"),
    ],
)
def equal_work(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Work of a revolution by the cycle of either end."""
    ratio = steam_of(gear, case, sheet).of_both("x_w", "work")
    judged = sheet.within(ratio, sheet.limit("least"), sheet.limit("most"))
    grave = ratio < sheet.limit("grave_least") or ratio > sheet.limit("grave_most")
    return judged.graded(Grade.NONCONFORMITY) if grave else judged


@rule(
    "events.boiler-feeds",
    title="All cylinders together take no more steam, in the notch and at the speed of the duty, than the boiler makes",
    wrong="cylinders take {found} of steam, the boiler makes {limit}",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[IF97, FIRST_PRINCIPLES],
    why="an engine that takes more than its boiler makes runs its pressure down and loses time",
    leaves_out=f"auxiliaries that take live steam; cylinders that are not alike; {LEFT_OUT}",
    against=(),
)
def boiler_feeds(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Steam of both ends of one cylinder, times the cylinders, against the evaporation of the boiler."""
    steam = steam_of(gear, case, sheet)
    engine = engine_of_gear(steam.gear, sheet)
    z = float(sheet.count("z", gear.cylinders))
    m = sheet.work("m", flow_of_cylinders, z=z, m_1=steam.of_both("m_1", "steam"))
    return sheet.at_most(m, sheet.take("m_b", engine.boiler.evaporation))


@rule(
    "events.adhesion",
    title="The tractive effort of the starting notch is at most 0.30 of the weight on the wheels that it drives",
    wrong="starting effort {found}, the wheels hold {limit}",
    on=ValveGear,
    cases=("starting",),
    grade=Grade.OBSERVATION,
    cites=[IF97, BALDWIN, COMMON_PRACTICE],
    why="an engine that pulls harder than its wheels hold slips at every start, and tears rail and tyre",
    leaves_out=f"greasy rails and sand; the peak of the moment in a turn; cylinders that are not alike; {LEFT_OUT}",
    against=(),
    limits=[Limit("most", "0.30", "ratio", COMMON_PRACTICE, "greatest share of the adhesive weight")],
)
def adhesion(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """F = z Σ p_m A S/(π D) with worn tyres, against μ m g; the trade's formula stands beside it."""
    steam = steam_of(gear, case, sheet)
    engine, (block, bore) = engine_of_gear(steam.gear, sheet), steam.gear.place
    D, S = sheet.take_nominal("D", worn_wheel(block, sheet)), steam.gear.crank.stroke
    z = float(sheet.count("z", gear.cylinders))
    ends = {
        f"F_{side.value[0]}": sheet.work(
            f"F_{side.value[0]}",
            tractive_effort,
            p_m=steam.of_end(f"p_m{side.value[0]}", side, "mean pressure"),
            A=piston_area(block, bore, side, sheet),
            S=S,
            D=D,
        )
        for side in SIDES
    }
    F = sheet.work("F", effort_of_engine, z=z, **ends)
    d, p = sheet.take_nominal("d", bore_as_drawn(block, bore, sheet)), sheet.take("p_g", case.live_pressure)
    sheet.work("F_t", tractive_effort_by_the_trade, p=p, d=d, S=S, z=z, D=D)
    m = sheet.take("m", engine.adhesive_weight)
    return sheet.at_most(
        F, sheet.work("F_a", force_of_adhesion, μ=sheet.limit("most", "μ"), m=m, g=STANDARD_GRAVITY)
    )


@rule(
    "cycle.steam-rate",
    edition=2,
    title="Indicated power and steam for each kilowatt-hour are reported, beside 16.7 lb/ihp·h (10.2 kg/kWh) of a "
    "large superheated engine",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[IF97, BRUCE, FIRST_PRINCIPLES],
    why="steam for the work done says at a glance whether valves and cut-off are any good",
    leaves_out=f"friction of the engine, auxiliaries; {LEFT_OUT}",
    against=(),
)
def steam_rate(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Diagram of each end as drawn, from the steam tables to its power; then the band of all results.

    Steam of a revolution is what stands in the end at cut-off less what was shut in it. Nothing is judged.
    """
    steam = steam_of(gear, case, sheet)
    sheet.work("h_1", steam_enthalpy, p=steam.cylinder.chest[0], T=steam.cylinder.temperature)
    P_f, P_b = (_diagram(steam, side, sheet) for side in SIDES)
    sheet.work("P_0", power_of_ends, P_f=P_f, P_b=P_b)
    for side in SIDES:
        steam.of_end(f"p_m{side.value[0]}", side, "mean pressure")
        steam.of_end(f"k_{side.value[0]}", side, "factor")
    steam.of_both("P", "power")
    steam.of_both("m_1", "steam")
    pounds = steam.of_both("w_p", "pounds for horsepower hour")
    kilograms = steam.of_both("w", "kilograms for kilowatt hour")
    sheet.list_item("steam for each indicated horsepower-hour", f"{pounds:.1f} lb/ihp·h")
    return sheet.reported(kilograms, "steam for each indicated kilowatt-hour, kg/kWh")


def _diagram(steam: Steam, side: End, sheet: Sheet) -> Watts:
    """The diagram of an end: pressures at its events, steam by its density, mean pressure and power."""
    i = side.value[0]
    V_c, A = steam.as_drawn(f"V_0{i}", side, "clearance"), steam.as_drawn(f"A_{i}", side, "area")
    steam.as_drawn(f"p_a{i}", side, "admission pressure")
    m_c = _stands(steam, side, "cut-off", f"c{i}", (V_c, A), sheet)
    steam.as_drawn(f"p_r{i}", side, "release pressure")
    m_k = _stands(steam, side, "compression", f"k{i}", (V_c, A), sheet)
    n, S = steam.cylinder.speed, steam.gear.crank.stroke
    m = sheet.work(f"m_{i}", steam_let_in, m_c=m_c, m_k=m_k)
    sheet.work(f"m_s{i}", steam_flow, m=m, n=n)
    W = steam.as_drawn(f"W_{i}", side, "work")
    p_m = sheet.work(f"p_m0{i}", mean_pressure_of_work, W=W, A=A, S=S)
    return sheet.work(f"P_{i}", indicated_power, p_m=p_m, A=A, S=S, n=n)


def _stands(
    steam: Steam,
    side: End,
    event: str,
    i: str,
    volume: tuple[CubicMetres, SquareMetres],
    sheet: Sheet,
) -> Kilograms:
    """The steam that stands in an end at an event: its volume, and its density by the steam tables."""
    V_c, A = volume
    V = sheet.work(
        f"V_{i}", volume_of_steam, V_c=V_c, A=A, x=steam.as_drawn(f"x_{i}", side, f"{event} travel")
    )
    p, h = (
        steam.as_drawn(f"{s}_{i}", side, f"{event} {name}")
        for s, name in (("p", "pressure"), ("h", "enthalpy"))
    )
    ρ = sheet.work(f"ρ_{i}", density_at_enthalpy, p=p, h=h)
    return sheet.work(f"m_{i}", mass_of_steam, ρ=ρ, V=V)


RULES = (equal_work, boiler_feeds, adhesion, steam_rate)
