"""The state of the steam along a path: flow, pressure, temperature and speed, stage by stage."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from speclint.equations import (
    JoulesPerKilogram,
    Kelvins,
    KilogramsPerCubicMetre,
    KilogramsPerSecond,
    Metres,
    MetresPerSecond,
    Pascals,
    Ratio,
    SquareMetres,
)
from speclint.facts.stages import (
    bore_of_pipe,
    flow_left,
    flow_of_cylinders,
    least_perimeter,
    loss_of_stage,
    losses_together,
    pressure_after,
    radius_over_bore,
    relative_roughness,
    shares_together,
)
from speclint.facts.steam_paths import Stage, branches_off, carries_live
from speclint.facts.taking import Take
from speclint.handbook.members import round_area
from speclint.handbook.steam import (
    bend_loss,
    contraction_loss,
    density_at_enthalpy,
    enlargement_loss,
    fitting_pressure_loss,
    friction_factor,
    friction_pressure_loss,
    hydraulic_diameter,
    mach_number,
    mean_speed,
    mitre_loss,
    reynolds_number,
    rough_friction_factor,
    steam_enthalpy,
    steam_speed_of_sound,
    steam_viscosity,
    temperature_at_enthalpy,
    wet_steam_enthalpy,
)
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import NotStated, SteamPassage, SteamPipe

if TYPE_CHECKING:
    from speclint.specs import LoadCase

_QUARTER = math.pi / 2


class Section(NamedTuple):
    """The section of a stage: its area and hydraulic diameter."""

    A: SquareMetres
    d: Metres


class Flow(NamedTuple):
    """The steam in one stage: ``m`` of all cylinders that it feeds, ``m_1`` of one of them."""

    i: str
    stage: Stage
    A: SquareMetres
    m: KilogramsPerSecond
    m_1: KilogramsPerSecond
    p: Pascals
    T: Kelvins
    ρ: KilogramsPerCubicMetre
    v: MetresPerSecond
    Ma: Ratio


class SteamPath(NamedTuple):
    """The steam along a whole path: its enthalpy ``h``; pressure ``p`` and one cylinder's flow ``m`` at the end."""

    flows: tuple[Flow, ...]
    h: JoulesPerKilogram
    p: Pascals
    m: KilogramsPerSecond


def section_of(stage: Stage, i: str, sheet: Sheet, take: Take | None = None) -> Section:
    """Area and hydraulic diameter: of a pipe from its outside and wall, of a passage from area and wetted perimeter.

    A perimeter below that of a round passage of the same area is none, and the round one counts.
    """
    taken = take or sheet.take
    if isinstance(stage, SteamPipe):
        D, t = taken(f"D_{i}", stage.outside_diameter), taken(f"t_{i}", stage.wall)
        d = sheet.work(f"d_{i}", bore_of_pipe, D=D, t=t)
        return Section(sheet.work(f"A_{i}", round_area, d=d), d)
    A = taken(f"A_{i}", stage.area)
    P = max(taken(f"P_{i}", stage.perimeter), sheet.work(f"P_0{i}", least_perimeter, A=A))
    return Section(A, sheet.work(f"d_{i}", hydraulic_diameter, A=A, P=P))


def steam_along(stages: Sequence[Stage], case: LoadCase, sheet: Sheet, take: Take | None = None) -> SteamPath:
    """Area, speed, Mach number, pressure and temperature, stage by stage, at the mean flow of its cylinders.

    The enthalpy is that at the start: no heat is lost and no kinetic energy recovered. Live steam starts at the
    duty's chest pressure, where it is a little less dense than at the header. ``take`` is how sizes and steam are
    taken, with their limits where none is given.
    """
    taken = take or sheet.take
    live = carries_live(stages, sheet)
    start = case.live_pressure if live else case.exhaust_pressure
    p = sheet.take_absolute("p_1", start) if take is None else _aimed_at(start, sheet)
    h = _enthalpy_of_live(p, case, sheet, taken) if live else _enthalpy_of_exhaust(p, case, sheet, taken)
    m = taken("m", case.steam_flow)
    flows: list[Flow] = []
    for number, stage in enumerate(stages, 1):
        i = str(number)
        section = section_of(stage, i, sheet, taken)
        flow = _steam(i, stage, section, (p, h, m), sheet)
        loss = _loss(flow, section.d, flows[-1] if flows else None, sheet, taken)
        flows.append(flow)
        p = sheet.work(f"p_{number + 1}", pressure_after, p=p, Δp=loss)
        m = _flow_after_branches(stage, m, i, sheet, taken)
    return SteamPath(tuple(flows), h, p, m)


def _enthalpy_of_live(p: Pascals, case: LoadCase, sheet: Sheet, take: Take) -> JoulesPerKilogram:
    return sheet.work("h", steam_enthalpy, p=p, T=take("T", case.live_temperature))


def _enthalpy_of_exhaust(p: Pascals, case: LoadCase, sheet: Sheet, take: Take) -> JoulesPerKilogram:
    """By its temperature, or by its dryness where that is stated and the steam is wet."""
    if sheet.is_stated("dryness of the exhaust", case.exhaust_dryness):
        x = take("x", case.exhaust_dryness)
        if x < 1.0:
            return sheet.work("h", wet_steam_enthalpy, p=p, x=x)
    return sheet.work("h", steam_enthalpy, p=p, T=take("T", case.exhaust_temperature))


def _aimed_at(start: Measure | NotStated, sheet: Sheet) -> Pascals:
    """The absolute pressure that a load case aims at, without its limits."""
    p = sheet.take_nominal("p_1g", start)
    above = isinstance(start, Measure) and start.datum == "gauge"
    return p + (float(sheet.setting("site pressure")) if above else 0.0)


def _steam(i: str, stage: Stage, section: Section, given: tuple[float, float, float], sheet: Sheet) -> Flow:
    p, h, m_1 = given
    m = flow_in(stage, i, m_1, sheet)
    T = sheet.work(f"T_{i}", temperature_at_enthalpy, p=p, h=h)
    ρ = sheet.work(f"ρ_{i}", density_at_enthalpy, p=p, h=h)
    v = sheet.work(f"v_{i}", mean_speed, m=m, ρ=ρ, A=section.A)
    sound = sheet.work(f"w_{i}", steam_speed_of_sound, p=p, T=T)
    Ma = sheet.work(f"Ma_{i}", mach_number, v=v, w=sound)
    return Flow(i, stage, section.A, m, m_1, p, T, ρ, v, Ma)


def flow_in(stage: Stage, i: str, m_1: KilogramsPerSecond, sheet: Sheet) -> KilogramsPerSecond:
    """The flow of all cylinders whose steam a stage carries, from that of one."""
    return sheet.work(f"M_{i}", flow_of_cylinders, z=float(sheet.count(f"z_{i}", stage.cylinders)), m_1=m_1)


def _flow_after_branches(
    stage: Stage, m: KilogramsPerSecond, i: str, sheet: Sheet, take: Take
) -> KilogramsPerSecond:
    """What the branches of a stage leave of its flow: each takes its share of that of the stage."""
    shares = [take(f"x_{branch.id}", branch.share) for branch in branches_off(stage, sheet)]
    if not shares:
        return m
    x = shares[0]
    for share in shares[1:]:
        x = sheet.work(f"x_{i}", shares_together, x_0=x, x_1=share)
    return sheet.work(f"m_{int(i) + 1}", flow_left, m=m, x=x)


def _loss(flow: Flow, d: Metres, before: Flow | None, sheet: Sheet, take: Take) -> Pascals:
    """Loss by friction, bends, and the step from the stage before."""
    i, stage = flow.i, flow.stage
    μ = sheet.work(f"μ_{i}", steam_viscosity, p=flow.p, T=flow.T)
    Re = sheet.work(f"Re_{i}", reynolds_number, ρ=flow.ρ, v=flow.v, d=d, μ=μ)
    ε_r = sheet.work(f"ε_{i}", relative_roughness, ε=take(f"ε_0{i}", stage.roughness), d=d)
    f = sheet.work(f"f_{i}", friction_factor, Re=Re, ε_r=ε_r)
    L = take(f"L_{i}", stage.length)
    friction = sheet.work(f"Δp_f{i}", friction_pressure_loss, f=f, L=L, d=d, ρ=flow.ρ, v=flow.v)
    ζ = _fittings(stage, i, d, ε_r, sheet, take)
    fittings = sheet.work(f"Δp_ζ{i}", fitting_pressure_loss, ζ=ζ, ρ=flow.ρ, v=flow.v)
    step = _step(flow, before, sheet) if before else 0.0
    return sheet.work(f"Δp_{i}", loss_of_stage, Δp_f=friction, Δp_ζ=fittings, Δp_s=step)


def _fittings(stage: Stage, i: str, d: Metres, ε_r: Ratio, sheet: Sheet, take: Take) -> Ratio:
    """Loss coefficient of bends of a quarter turn, sharp corners and anything else stated; a pipe has bends only."""
    bends = sheet.count(f"n_b{i}", stage.bends)
    mitres = sheet.count(f"n_m{i}", stage.mitres) if isinstance(stage, SteamPassage) else 0
    other = take(f"ζ_0{i}", stage.loss_coefficient) if isinstance(stage, SteamPassage) else 0.0
    if bends + mitres == 0:
        return sheet.work(f"ζ_{i}", losses_together, n_b=0.0, ζ_b=0.0, n_m=0.0, ζ_m=0.0, ζ_0=other)
    f_T = sheet.work(f"f_T{i}", rough_friction_factor, ε_r=ε_r)
    round_bend = corner = 0.0
    if bends:
        over = sheet.work(f"r/d_{i}", radius_over_bore, r=take(f"r_{i}", stage.bend_radius), d=d)
        round_bend = sheet.work(f"ζ_b{i}", bend_loss, r_d=over, θ=_QUARTER, f_T=f_T)
    if mitres:
        corner = sheet.work(f"ζ_m{i}", mitre_loss, θ=_QUARTER, f_T=f_T)
    return sheet.work(
        f"ζ_{i}",
        losses_together,
        n_b=float(bends),
        ζ_b=round_bend,
        n_m=float(mitres),
        ζ_m=corner,
        ζ_0=other,
    )


def _step(flow: Flow, before: Flow, sheet: Sheet) -> Pascals:
    """Loss of a sudden step: of an enlargement by the speed before it, of a contraction by the speed after it."""
    i = flow.i
    if flow.A >= before.A:
        ζ = sheet.work(f"ζ_s{i}", enlargement_loss, A_1=before.A, A_2=flow.A)
        return sheet.work(f"Δp_s{i}", fitting_pressure_loss, ζ=ζ, ρ=before.ρ, v=before.v)
    ζ = sheet.work(f"ζ_s{i}", contraction_loss, A_1=before.A, A_2=flow.A)
    return sheet.work(f"Δp_s{i}", fitting_pressure_loss, ζ=ζ, ρ=flow.ρ, v=flow.v)
