"""Walls between live and exhaust steam: their stress by pressure and heat."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import (
    Kelvins,
    KilogramsPerSecond,
    Metres,
    Pascals,
    SquareMetreKelvinsPerWatt,
    WattsPerSquareMetre,
)
from speclint.facts import (
    Panel,
    block_of_partition,
    build_of,
    flow_in,
    gap_between,
    greatest_exhaust_pressure,
    panels_of_partition,
    steam_by_cylinder,
)
from speclint.handbook.heat import (
    GNIELINSKI,
    INCROPERA,
    heat_flux,
    overall_coefficient,
    plane_wall_resistance,
)
from speclint.handbook.materials import multiple_of_allowable
from speclint.handbook.plates import PANEL_TABLES, panel_stress, panel_stress_factor
from speclint.handbook.steam import excess_pressure, steam_conductivity
from speclint.specs import LoadCase, Partition
from speclint_steamways.formulae.gaps import gap_resistance, radiation_across_gap
from speclint_steamways.formulae.heat import (
    double_wall_resistance,
    drop_through_wall,
    flux_at_the_upper_end,
    flux_without_films,
    stresses_together,
    thermal_stress,
)
from speclint_steamways.inputs.dividing import IRON
from speclint_steamways.inputs.films import film_in, steam_of
from speclint_steamways.inputs.gaps import convection_in
from speclint_steamways.inputs.partitions import (
    pressure_on_exhaust_side,
    pressure_on_live_side,
    wall_left,
)
from speclint_steamways.sources import EN_13445_3, TIMOSHENKO_GOODIER

_SCATTER = Limit(
    "scatter",
    "25 %",
    "ratio",
    INCROPERA.at("chapter 8, accuracy of the correlations"),
    "scatter of the correlation, of which the upper end is taken",
)


def _flux_with_films(
    partition: Partition, case: LoadCase, m_1: KilogramsPerSecond, sheet: Sheet
) -> WattsPerSquareMetre:
    """Convection on both sides by Gnielinski, conduction between; ``m_1`` is the steam of one cylinder."""
    passages = {"l": sheet.follow(partition.live_side), "e": sheet.follow(partition.exhaust_side)}
    steams = {i: steam_of(side, case, sheet, dry=False) for i, side in (("l", "live"), ("e", "exhaust"))}
    h_1, h_2 = (
        film_in(passage, steams[i], flow_in(passage, i, m_1, sheet), i, sheet)
        for i, passage in passages.items()
    )
    R = _resistance(partition, steams["l"].T, steams["e"].T, case, sheet)
    U = sheet.work("U", overall_coefficient, h_1=h_1, R=R, h_2=h_2)
    return sheet.work("q", heat_flux, U=U, T_1=steams["l"].T, T_2=steams["e"].T)


def _resistance(
    partition: Partition, T_1: Kelvins, T_2: Kelvins, case: LoadCase, sheet: Sheet
) -> SquareMetreKelvinsPerWatt:
    """Resistance of the wall, or of two walls, each as thin as the thinner, with a gap that carries all it can.

    The faces of the gap count as black, and its gas as steam as hot as the live steam; its lagging counts for nothing.
    """
    at = sheet.take("T_w", case.temperature_of(partition))
    panels = panels_of_partition(partition, sheet)
    t = min(sheet.take("t", panel.thickness) for panel in panels)
    λ = sheet.look_up("λ", sheet.material_of(partition).conductivity, of=partition, at=at)
    if build_of(partition, sheet) == "single wall":
        return sheet.work("R", plane_wall_resistance, t=t, λ=λ)
    s = sheet.take("s", gap_between(partition, sheet))
    bridged = sheet.is_stated("bridges", partition.bridges)
    R_g = sheet.work(
        "R_g",
        gap_resistance,
        h_r=sheet.work("h_r", radiation_across_gap, ε=1.0, T_1=T_1, T_2=T_2),
        Nu=convection_in(partition, s, T_1, T_2, sheet),
        λ_g=sheet.work("λ_s", steam_conductivity, p=sheet.take_absolute("p_l", case.live_pressure), T=T_1),
        s=s,
        b=sheet.take("b", partition.bridges) if bridged else 0.0,
        λ_w=λ,
    )
    return sheet.work("R", double_wall_resistance, t=t, λ=λ, R_g=R_g)


@rule(
    "partition.stress",
    title="A wall between live and exhaust steam bends to at most 1.5 times the design stress, on test and "
    "with water too, with the high estimate of heat 3 times; iron to the design stress, on test "
    "twice",
    on=Partition,
    cases=("starting", "running", "test", "water"),
    edition=9,
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
    leaves_out="ribs, corners and welds of the wall, corrosion where it is no plate of a weldment, later tests "
    "of a wasted wall, fatigue by heating and cooling: the local code and a competent person decide",
    against=("burst",),
    against_on={"cylinder-block": ("burst",)},
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

    A wall that is a plate of a weldment bears the pressure less its corrosion allowance, and on the test of the new
    block as drawn; heat, which stresses a thick wall most, acts on it as drawn.
    Of two walls that on the live side stands against a gap at the pressure of the atmosphere, to which it may be
    vented; and so does that on the exhaust side, where it is drawn by itself, under all of the exhaust pressure.
    Where a case in work states no flow of steam and none can be worked, the faces of the wall are taken to be as hot
    as the steam on either side, which no flow can exceed: a wall that bears this conforms; of one that does not,
    nothing can be said.
    """
    panels = panels_of_partition(partition, sheet)
    sides = zip(("live side", "exhaust side"), panels, strict=False)
    return sheet.each(sides, lambda item: _judged(item[0], item[1], partition, case, sheet))


def _judged(side: str, panel: Panel, partition: Partition, case: LoadCase, sheet: Sheet) -> Judgement:
    """One wall of a partition, on the live or on the exhaust side."""
    t, at = sheet.take("t", panel.thickness), sheet.take("T_w", case.temperature_of(partition))
    Δp = _across(side, partition, case, sheet)
    left = t if case.name == "test" else wall_left(t, panel, "", sheet)
    pressed = _bending(panel, Δp, left, sheet)
    material = sheet.material_of(partition)
    f = sheet.look_up("f", material.allowable_tension, of=partition, at=at, wall=t)
    iron = material.family in IRON
    if iron and case.name == "test":
        f = sheet.work("f_t", multiple_of_allowable, k=sheet.limit("iron_test", "k_t"), f=f)
    allowed = f if iron else sheet.work("S_b", multiple_of_allowable, k=sheet.limit("bending", "k_b"), f=f)
    by_pressure = sheet.at_most(pressed, allowed).else_says(
        "pressure bends the {item} to {found}, {limit} allowed"
    )
    if case.name in ("test", "water"):
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
    if side == "exhaust side":
        return greatest_exhaust_pressure(partition, case, sheet)
    p_1 = pressure_on_live_side(partition, case, sheet)
    hollow = build_of(partition, sheet) == "two walls"
    p_2 = 0.0 if hollow else pressure_on_exhaust_side(case, sheet)
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
        q = _flux_with_films(partition, case, flow, sheet)
        return sheet.work("q_u", flux_at_the_upper_end, q=q, u=sheet.limit("scatter", "u"))
    T_1, T_2 = sheet.take("T_l", case.live_temperature), sheet.take("T_e", case.exhaust_temperature)
    R = _resistance(partition, T_1, T_2, case, sheet)
    return sheet.work("q_u", flux_without_films, T_1=T_1, T_2=T_2, R=R)


RULES = (stress,)
