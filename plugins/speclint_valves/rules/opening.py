"""An open valve: its area, its lift, and the steam that flows through it."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Kelvins, KilogramsPerCubicMetre, MetresPerSecond, Pascals
from speclint.facts import beats_of, block_under, passages_of_port, speed_of_crank
from speclint.handbook.steam import (
    HEYWOOD,
    fitting_pressure_loss,
    lift_for_area,
    mach_number,
    speed_ratio,
    steam_density,
    steam_speed_of_sound,
)
from speclint.specs import LoadCase, PoppetValve
from speclint_valves.formulae.flow import (
    lift_over_factor,
    pressure_ratio,
    share_of_area,
    share_of_lift,
    steam_speed,
)
from speclint_valves.inputs.opening import (
    beats_area,
    common_throat,
    flow_area,
    greatest_speed,
    mean_speed,
    passage,
    piston,
    throat,
)
from speclint_valves.sources import STEAM_SPEED


@rule(
    "valve.lift-area",
    edition=4,
    title="At full lift the flow area of the valve, and of the throat where its two streams have joined, is at least "
    "0.9 of the area of its port",
    wrong="valve opens {found} of flow area, {limit} wanted",
    on=PoppetValve,
    grade=Grade.NONCONFORMITY,
    cites=[HEYWOOD, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a valve smaller than its port throttles the engine at speed, however large the port",
    leaves_out="contraction of the stream, which the loss coefficient of valve.pressure-loss includes",
    against=(),
    limits=[
        Limit(
            "share-of-port",
            "0.9",
            "ratio",
            COMMON_PRACTICE,
            "share of the port area that the valve must open",
        )
    ],
)
def lift_area(valve: PoppetValve, sheet: Sheet) -> Judgement:
    """min(Σ min(area of beat at full lift, its throat), throat after both have met) ≥ share × port area.

    A throat is no wider than seat, block and the rim of the valve leave.
    """
    opened = flow_area(valve, sheet)
    passages = [sheet.take(f"A of {one.id}", one.area) for one in passages_of_port(valve, sheet)]
    port = max(sheet.take("A_port", valve.port_area), *passages, 0.0)
    return sheet.at_least(
        opened, sheet.work("A_n", share_of_area, x=sheet.limit("share-of-port", "x"), A=port)
    )


@rule(
    "valve.lift-worth-having",
    edition=4,
    title="The lift is at most 1.1 times that at which the throats, and not the lift, limit the flow",
    on=PoppetValve,
    grade=Grade.OBSERVATION,
    cites=[HEYWOOD, COMMON_PRACTICE],
    why="lift beyond that costs spring load, contact stress and noise, and passes no more steam",
    leaves_out="lift given on purpose to open early and fast at short cut-off",
    against=(),
    limits=[
        Limit(
            "share-of-lift",
            "1.1",
            "ratio",
            COMMON_PRACTICE,
            "multiple of the lift at which the throats limit the flow",
        )
    ],
)
def lift_worth_having(valve: PoppetValve, sheet: Sheet) -> Judgement:
    """h ≤ 1.1 × the lift at which the last of the beats opens as much as its throat; d/4 for a flat single beat.

    At h/1.1 the beats open no more than the throat after their streams have met.
    """
    useful = []
    for index, beat in beats_of(valve, sheet):
        T = throat(valve, beat, index, sheet)
        d, w = sheet.take(f"d_{index}", beat.seat_diameter), sheet.take(f"w_{index}", beat.contact_width)
        β = sheet.take(f"β_{index}", beat.seat_angle)
        useful.append(sheet.work(f"h_{index}", lift_for_area, T=T, d=d, w=w, β=β))
    h, x = sheet.take("h", valve.lift), sheet.limit("share-of-lift", "x")
    own = sheet.at_most(h, sheet.work("h_max", share_of_lift, x=x, h=max(useful))).else_says(
        "valve lifts {found}, useful only up to {limit}"
    )
    after = common_throat(valve, sheet)
    if math.isinf(after):
        return own
    before = beats_area(valve, sheet.work("h_x", lift_over_factor, h=h, x=x), sheet)
    return sheet.worst(
        own,
        sheet.at_most(before, after).else_says(
            "beats open {found} before full lift, their throat only {limit}"
        ),
    )


@rule(
    "valve.steam-speed",
    edition=6,
    title="Through the valve live steam has a mean speed of at most 100 m/s and exhaust steam of at "
    "most 80 m/s, the cylinder bored to its last",
    wrong="steam at {found} through the valve, {limit} allowed",
    on=PoppetValve,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE, STEAM_SPEED],
    why="fast steam loses pressure in the valve, and that pressure cost fuel",
    leaves_out="the part of the stroke over which the valve is not fully open; the period figure is "
    "only reported",
    against=(),
    limits=[
        Limit("inlet", "100 m/s", "speed", COMMON_PRACTICE, "greatest mean speed of live steam"),
        Limit("exhaust", "80 m/s", "speed", COMMON_PRACTICE, "greatest mean speed of exhaust steam"),
        Limit("period", "100 ft/s", "speed", STEAM_SPEED, "period figure for steam through ports, reported"),
    ],
)
def speed_of_steam(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """v = A_p c_m/A at the narrower of valve and port; the greatest speed and the period figure are reported.

    The throats of the valve are no wider than seat, block and its rim leave.
    """
    mean, greatest = _speeds(valve, case, sheet)
    sheet.work("x_period", speed_ratio, v=mean, v_0=sheet.limit("period", "v_0"))
    sheet.work("x_max", speed_ratio, v=greatest, v_0=mean)
    return sheet.at_most(mean, sheet.limit(sheet.read("serves", valve.serves)))


def _speeds(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> tuple[MetresPerSecond, MetresPerSecond]:
    block = block_under(valve, sheet)
    A_p, A = piston(valve, block, sheet), passage(valve, sheet)
    ω = speed_of_crank(block, case, sheet)
    greatest = sheet.work("v_max", steam_speed, A_p=A_p, c=greatest_speed(valve, ω, sheet), A=A)
    return sheet.work("v", steam_speed, A_p=A_p, c=mean_speed(valve, ω, sheet), A=A), greatest


@rule(
    "valve.pressure-loss",
    edition=6,
    title="At most 10 % of the absolute pressure is lost in the valve, the cylinder bored to its last",
    wrong="valve loses {found} of the pressure, {limit} allowed",
    on=PoppetValve,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="pressure lost in the inlet valve never reaches the piston, and pressure lost in the exhaust "
    "valve acts against it",
    leaves_out="losses of pipe, chest and port, and throttling (wire-drawing) while the valve opens and "
    "shuts",
    against=(),
    limits=[
        Limit("share", "10 %", "ratio", COMMON_PRACTICE, "share of the absolute pressure that may be lost")
    ],
)
def pressure_loss(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """Δp = ζ ρ v²/2 at the mean speed, over the absolute pressure of the chest or of the exhaust."""
    p, T = _steam(valve, case, sheet)
    density: KilogramsPerCubicMetre = sheet.work("ρ", steam_density, p=p, T=T)
    mean, _ = _speeds(valve, case, sheet)
    ζ = sheet.take("ζ", valve.loss_coefficient)
    loss = sheet.work("Δp", fitting_pressure_loss, ζ=ζ, ρ=density, v=mean)
    return sheet.at_most(sheet.work("x", pressure_ratio, Δp=loss, p=p), sheet.limit("share"))


@rule(
    "valve.mach",
    edition=6,
    title="The greatest Mach number of steam in the valve is at most 0.3, the cylinder bored to its last",
    wrong="steam reaches Mach {found} in the valve, {limit} allowed",
    on=PoppetValve,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="flow near the speed of sound chokes: opening further or running faster passes no more steam",
    leaves_out="release, when the cylinder blows down through the exhaust valve and the flow always chokes",
    against=(),
    limits=[Limit("greatest", "0.3", "ratio", COMMON_PRACTICE, "greatest Mach number")],
)
def mach(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """v_max over the speed of sound of the steam in the chest, or in the exhaust after release."""
    p, T = _steam(valve, case, sheet)
    sound = sheet.work("w", steam_speed_of_sound, p=p, T=T)
    _, greatest = _speeds(valve, case, sheet)
    return sheet.at_most(sheet.work("Ma", mach_number, v=greatest, w=sound), sheet.limit("greatest"))


def _steam(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> tuple[Pascals, Kelvins]:
    if sheet.read("serves", valve.serves) == "inlet":
        return sheet.take_absolute("p", case.live_pressure), sheet.take("T", case.live_temperature)
    return sheet.take_absolute("p", case.exhaust_pressure), sheet.take("T", case.exhaust_temperature)


RULES = (lift_area, lift_worth_having, speed_of_steam, pressure_loss, mach)
