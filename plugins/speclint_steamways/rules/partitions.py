"""Walls between live and exhaust steam: the heat that passes through them, and their stress."""

from __future__ import annotations

from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import (
    KelvinDifference,
    Kelvins,
    KilogramsPerSecond,
    Metres,
    Pascals,
    SquareMetreKelvinsPerWatt,
    Watts,
    WattsPerSquareMetre,
    WattsPerSquareMetreKelvin,
)
from speclint.facts import (
    Panel,
    block_of_partition,
    build_of,
    flow_in,
    gap_between,
    panels_of_partition,
    section_of,
    steam_by_cylinder,
)
from speclint.handbook.heat import (
    GNIELINSKI,
    INCROPERA,
    film_coefficient,
    gnielinski_nusselt_number,
    heat_flux,
    overall_coefficient,
    petukhov_friction_factor,
    plane_wall_resistance,
    temperature_rise,
)
from speclint.handbook.materials import multiple_of_allowable
from speclint.handbook.plates import PANEL_TABLES, panel_stress, panel_stress_factor
from speclint.handbook.steam import (
    excess_pressure,
    mean_speed,
    reynolds_number,
    steam_conductivity,
    steam_density,
    steam_heat_capacity,
    steam_prandtl_number,
    steam_viscosity,
)
from speclint.specs import LoadCase, Partition, SteamPassage
from speclint_steamways.formulae.heat import (
    at_the_upper_end,
    double_wall_resistance,
    drop_through_wall,
    flux_at_the_upper_end,
    flux_without_films,
    heat_through,
    stresses_together,
    thermal_stress,
    work_lost,
)
from speclint_steamways.inputs.partitions import is_case, pressure_on_exhaust_side, pressure_on_live_side
from speclint_steamways.sources import EN_13445_3, TIMOSHENKO_GOODIER

#: Both rules take the heat at the same end of the correlation's scatter.
_SCATTER = Limit(
    "scatter",
    "25 %",
    "ratio",
    INCROPERA.at("chapter 8, accuracy of the correlations"),
    "scatter of the correlation, of which the upper end is taken",
)
_IRON = ("grey-iron", "ductile-iron", "chilled-iron", "austenitic-iron")


class _Side(NamedTuple):
    """The steam on one side of the wall, and its film coefficient."""

    p: Pascals
    T: Kelvins
    h: WattsPerSquareMetreKelvin


class _Leak(NamedTuple):
    """Heat through the wall, and what it was worked out from; ``m`` is the flow of the exhaust."""

    live: _Side
    exhaust: _Side
    m: KilogramsPerSecond
    q: WattsPerSquareMetre
    R: SquareMetreKelvinsPerWatt
    U: WattsPerSquareMetreKelvin


def _leak(partition: Partition, case: LoadCase, m_1: KilogramsPerSecond, sheet: Sheet) -> _Leak:
    """Convection on both sides by Gnielinski, conduction between; ``m_1`` is the steam of one cylinder."""
    states = {
        "l": (sheet.take_absolute("p_l", case.live_pressure), sheet.take("T_l", case.live_temperature)),
        "e": (sheet.take_absolute("p_e", case.exhaust_pressure), sheet.take("T_e", case.exhaust_temperature)),
    }
    passages = {"l": sheet.follow(partition.live_side), "e": sheet.follow(partition.exhaust_side)}
    flows = {i: flow_in(passage, i, m_1, sheet) for i, passage in passages.items()}
    live, exhaust = (_side(i, passage, states[i], flows[i], sheet) for i, passage in passages.items())
    R = _resistance(partition, live.p, live.T, case, sheet)
    U = sheet.work("U", overall_coefficient, h_1=live.h, R=R, h_2=exhaust.h)
    return _Leak(live, exhaust, flows["e"], sheet.work("q", heat_flux, U=U, T_1=live.T, T_2=exhaust.T), R, U)


def _side(
    i: str, passage: SteamPassage, state: tuple[Pascals, Kelvins], m: KilogramsPerSecond, sheet: Sheet
) -> _Side:
    p, T = state
    section = section_of(passage, i, sheet)
    ρ = sheet.work(f"ρ_{i}", steam_density, p=p, T=T)
    v = sheet.work(f"v_{i}", mean_speed, m=m, ρ=ρ, A=section.A)
    μ = sheet.work(f"μ_{i}", steam_viscosity, p=p, T=T)
    Re = sheet.work(f"Re_{i}", reynolds_number, ρ=ρ, v=v, d=section.d, μ=μ)
    f = sheet.work(f"f_{i}", petukhov_friction_factor, Re=Re)
    Pr = sheet.work(f"Pr_{i}", steam_prandtl_number, p=p, T=T)
    Nu = sheet.work(f"Nu_{i}", gnielinski_nusselt_number, Re=Re, Pr=Pr, f=f)
    λ = sheet.work(f"λ_{i}", steam_conductivity, p=p, T=T)
    return _Side(p, T, sheet.work(f"h_{i}", film_coefficient, Nu=Nu, λ=λ, d=section.d))


def _resistance(
    partition: Partition, p: Pascals, T: Kelvins, case: LoadCase, sheet: Sheet
) -> SquareMetreKelvinsPerWatt:
    """Resistance of the wall, or of two walls, each as thin as the thinner, with still steam between them."""
    at = sheet.take("T_w", case.temperature_of(partition))
    t = min(sheet.take("t", panel.thickness) for panel in panels_of_partition(partition, sheet))
    λ = sheet.look_up("λ", sheet.material_of(partition).conductivity, of=partition, at=at)
    if build_of(partition, sheet) == "single wall":
        return sheet.work("R", plane_wall_resistance, t=t, λ=λ)
    still, s = sheet.work("λ_s", steam_conductivity, p=p, T=T), sheet.take("s", gap_between(partition, sheet))
    return sheet.work("R", double_wall_resistance, t=t, λ=λ, s=s, λ_s=still)


@rule(
    "partition.heat-leak",
    title="Heat from the live steam warms the exhaust by at most 10 K, and no single iron wall stands "
    "between them",
    wrong="exhaust warmed by {found}, {limit} allowed",
    on=Partition,
    cases=("running",),
    edition=4,
    grade=Grade.NONCONFORMITY,
    cites=[GNIELINSKI, INCROPERA.at("scatter of correlations"), FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="Heat that warms the exhaust cost fuel, cools the steam before it works, and goes up the chimney.",
    leaves_out="pulsation: steady convection understates the heat transfer of a pulsating flow, in "
    "hard-worked engines with such a wall up to about 56 K (100 °F) of rise by common practice; "
    "condensation, short passages",
    limits=[
        Limit(
            "rise",
            "10 K",
            "temperature difference",
            COMMON_PRACTICE,
            "greatest temperature rise of the exhaust",
        ),
        _SCATTER,
    ],
)
def heat_leak(partition: Partition, case: LoadCase, sheet: Sheet) -> Judgement:
    """Rise of the exhaust by the heat through the wall at the upper end of the correlation's scatter; and work lost."""
    leak = _leak(partition, case, sheet.take("m", case.steam_flow), sheet)
    A = sheet.take("A", partition.area)
    Q: Watts = sheet.work("Q", heat_through, U=leak.U, A=A, T_1=leak.live.T, T_2=leak.exhaust.T)
    upper = sheet.work("Q_u", at_the_upper_end, Q=Q, u=sheet.limit("scatter", "u"))
    sheet.work("P", work_lost, Q=upper, T_1=leak.live.T, T_2=leak.exhaust.T)
    c_p = sheet.work("c_p", steam_heat_capacity, p=leak.exhaust.p, T=leak.exhaust.T)
    rise: KelvinDifference = sheet.work("ΔT", temperature_rise, Q=upper, m=leak.m, c_p=c_p)
    judged = sheet.at_most(rise, sheet.limit("rise"))
    single = build_of(partition, sheet) == "single wall"
    if single and sheet.material_of(partition).family in _IRON:
        said = "a single wall of iron stands between live and exhaust steam"
        return sheet.worst(sheet.states(False, said, where=partition.where), judged)
    return judged


@rule(
    "partition.stress",
    title="A wall between live and exhaust steam bends to at most 1.5 times the design stress, on test and "
    "with water too, with the high estimate of heat 3 times; iron to the design stress, on test "
    "twice",
    on=Partition,
    cases=("starting", "running", "test", "water"),
    edition=6,
    grade=Grade.HOLD,
    cites=[
        PANEL_TABLES,
        TIMOSHENKO_GOODIER.at("article 149"),
        GNIELINSKI,
        INCROPERA.at("scatter of correlations"),
        EN_13445_3.at("annex C"),
    ],
    why="A wall that cracks lets boiler steam straight into the exhaust, and the engine runs away or "
    "cannot be stopped.",
    leaves_out="ribs, corners and welds of the wall, fatigue by heating and cooling: the local code and "
    "a competent person decide",
    limits=[
        Limit(
            "bending",
            "1.5",
            "ratio",
            EN_13445_3.at("annex C"),
            "bending stress over the design stress, ductile metal",
        ),
        Limit(
            "range",
            "3",
            "ratio",
            EN_13445_3.at("annex C"),
            "stress of pressure and heat together over the design stress, ductile metal",
        ),
        Limit(
            "iron_test",
            "2",
            "ratio",
            COMMON_PRACTICE,
            "design stress of iron on test over that in service",
        ),
        _SCATTER,
    ],
)
def stress(partition: Partition, case: LoadCase, sheet: Sheet) -> Judgement:
    """Each wall as a panel under live less exhaust pressure, edges as drawn; in work with the thermal stress as well.

    Of two walls that on the live side stands against a gap at the pressure of the atmosphere, to which it may be
    vented; and so does that on the exhaust side, where it is drawn by itself. Where a case in work states no flow of
    steam and none can be worked, the faces of the wall are taken to be as hot as the steam on either side, which no
    flow can exceed: a wall that bears this conforms; of one that does not, nothing can be said.
    """
    panels = panels_of_partition(partition, sheet)
    sides = zip(("live side", "exhaust side"), panels, strict=False)
    return sheet.each(sides, lambda item: _judged(item[0], item[1], partition, case, sheet))


def _judged(side: str, panel: Panel, partition: Partition, case: LoadCase, sheet: Sheet) -> Judgement:
    """One wall of a partition, on the live or on the exhaust side."""
    t, at = sheet.take("t", panel.thickness), sheet.take("T_w", case.temperature_of(partition))
    Δp = _across(side, partition, case, sheet)
    pressed = _bending(panel, Δp, t, sheet)
    material = sheet.material_of(partition)
    f = sheet.look_up("f", material.allowable_tension, of=partition, at=at, wall=t)
    iron = material.family in _IRON
    if iron and is_case(case, "test"):
        f = sheet.work("f_t", multiple_of_allowable, k=sheet.limit("iron_test", "k_t"), f=f)
    allowed = f if iron else sheet.work("S_b", multiple_of_allowable, k=sheet.limit("bending", "k_b"), f=f)
    by_pressure = sheet.at_most(pressed, allowed).else_says(
        "pressure bends the {item} to {found}, {limit} allowed"
    )
    if is_case(case, "test") or is_case(case, "water"):
        return by_pressure
    flow = _flow(partition, case, sheet)
    heated = _heat_stress(partition, case, (t, at), flow, sheet)
    together = sheet.work("σ", stresses_together, σ_p=pressed, σ_T=heated)
    if not iron:
        allowed = sheet.work("S_r", multiple_of_allowable, k=sheet.limit("range", "k_r"), f=f)
    by_both = sheet.at_most(together, allowed).else_says(
        "pressure and heat stress the {item} to {found}, {limit} allowed"
    )
    if by_pressure.holds and not by_both.holds and flow is None:
        raise sheet.not_assessed(
            "the load case states no steam flow, and the wall does not bear all of the difference of temperature",
            case.where,
        )
    return sheet.worst(by_pressure, by_both)


def _across(side: str, partition: Partition, case: LoadCase, sheet: Sheet) -> Pascals:
    """Greatest difference of pressure across a wall: of two walls against an empty gap between them."""
    p_2 = pressure_on_exhaust_side(case, sheet)
    if side == "exhaust side":
        return p_2
    p_1 = pressure_on_live_side(partition, case, sheet)
    if build_of(partition, sheet) == "two walls":
        p_2 = 0.0
    return sheet.work("Δp", excess_pressure, p_1=p_1, p_2=p_2)


def _bending(panel: Panel, Δp: Pascals, t: Metres, sheet: Sheet) -> Pascals:
    a, b = sheet.take("a", panel.short), sheet.take("b", panel.long)
    stated = panel.edges is not None and sheet.is_stated("edges", panel.edges)
    edges = sheet.read("edges", panel.edges) if stated and panel.edges is not None else "supported"
    k = sheet.look_up("k", panel_stress_factor, edges=edges, a=a, b=b)
    return sheet.work("σ_p", panel_stress, k=k, p=Δp, a=a, t=t)


def _flow(partition: Partition, case: LoadCase, sheet: Sheet) -> KilogramsPerSecond | None:
    """The steam that one cylinder uses: as stated, else the most that it can by its sizes; None where neither is."""
    if sheet.is_stated("steam flow", case.steam_flow):
        return sheet.take("m", case.steam_flow)
    return steam_by_cylinder(block_of_partition(partition, sheet), case, sheet)


def _heat_stress(
    partition: Partition,
    case: LoadCase,
    wall: tuple[Metres, Kelvins],
    flow: KilogramsPerSecond | None,
    sheet: Sheet,
) -> Pascals:
    """Stress by the drop of temperature through a wall of a thickness at a temperature."""
    (t, at), material = wall, sheet.material_of(partition)
    q = _flux(partition, case, flow, sheet)
    λ = sheet.look_up("λ", material.conductivity, of=partition, at=at)
    R_w = sheet.work("R_w", plane_wall_resistance, t=t, λ=λ)
    return sheet.work(
        "σ_T",
        thermal_stress,
        E=sheet.look_up("E", material.modulus, of=partition, at=at),
        alpha=sheet.look_up("α", material.expansion, of=partition, at=at),
        ΔT=sheet.work("ΔT_w", drop_through_wall, q=q, R=R_w),
        nu=sheet.look_up("ν", material.poisson, of=partition),
    )


def _flux(
    partition: Partition, case: LoadCase, flow: KilogramsPerSecond | None, sheet: Sheet
) -> WattsPerSquareMetre:
    """Heat flux at the upper end of the correlation's scatter; without a flow, the most that can be."""
    if flow is not None:
        q = _leak(partition, case, flow, sheet).q
        return sheet.work("q_u", flux_at_the_upper_end, q=q, u=sheet.limit("scatter", "u"))
    T_1, T_2 = sheet.take("T_l", case.live_temperature), sheet.take("T_e", case.exhaust_temperature)
    R = _resistance(partition, sheet.take_absolute("p_l", case.live_pressure), T_1, case, sheet)
    return sheet.work("q_u", flux_without_films, T_1=T_1, T_2=T_2, R=R)


RULES = (heat_leak, stress)
