"""Relief of water from the cylinder, and its capacity."""

from __future__ import annotations

import math
from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.cams import crank_radius, piston_speed
from speclint.handbook.tables import Reading
from speclint.specs import CylinderBlock, CylinderEnd, LoadCase
from speclint_liners.formulae.water import (
    highest_setting,
    pressure_times,
    relief_area,
    relief_area_wanted,
    water_displaced,
    wheel_speed,
)
from speclint_liners.inputs.cylinders import ends_of, liner_in
from speclint_liners.sources import IAPWS_95

_WATER = Reading.exact("density of water at 20 °C", 998.2, "kg/m³", IAPWS_95.at("0.1 MPa, 293.15 K"))


@rule(
    "cylinder.water-relief",
    title="Each end has a drain cock and a relief valve, set within its limits over the duty and below the "
    "test pressure by its factor",
    on=CylinderBlock,
    cases=("starting",),
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="Water does not compress: without relief it breaks the cover.",
    leaves_out="condition of the valves in service; the local code and a competent person decide",
    limits=[
        Limit("least_factor", "1.1", "ratio", COMMON_PRACTICE, "least setting over the live pressure"),
        Limit("most_factor", "1.2", "ratio", COMMON_PRACTICE, "greatest setting over the live pressure"),
        Limit("test_factor", "1.1", "ratio", COMMON_PRACTICE, "least test pressure over the setting"),
    ],
)
def water_relief(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """Settings against the live pressure and the test pressure; a drain cock and a relief valve at each end."""
    duty = sheet.take("p", case.live_pressure)
    least = sheet.work("p_1", pressure_times, k=sheet.limit("least_factor"), p=duty)
    most = sheet.work("p_2", pressure_times, k=sheet.limit("most_factor"), p=duty)
    test = sheet.take("p_t", block.test_pressure)
    highest = sheet.work("p_3", highest_setting, p_t=test, k=sheet.limit("test_factor"))
    judgements: list[Judgement] = []
    for end in ends_of(block, sheet):
        judgements += _fitted(end, sheet)
        setting = sheet.take("p_s", end.relief_set)
        judgements.append(sheet.within(setting, least, most))
        judgements.append(sheet.at_most(setting, highest))
    return sheet.worst(*judgements)


def _fitted(end: CylinderEnd, sheet: Sheet) -> Iterator[Judgement]:
    """A relief valve and a drain cock, as stated."""
    valves = sheet.count("n", end.relief_count)
    if valves < 1:
        yield sheet.states(False, "an end of the cylinder has no relief valve", where=end.where)
    if not sheet.read("drain cock", end.drain_cock):
        yield sheet.states(False, "an end of the cylinder has no drain cock", where=end.where)


@rule(
    "cylinder.relief-capacity",
    title="The relief valves open at least the area that the water displaced at slow speed requires",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A valve that opens but cannot pass the water does not save the cover.",
    leaves_out="higher speeds, at which no relief valve saves a cylinder full of water; flow through the "
    "drain cocks",
    limits=[
        Limit(
            "creep",
            "5 km/h",
            "speed",
            COMMON_PRACTICE,
            "slow speed at which the displaced water must be relieved",
        ),
        Limit("discharge", "0.6", "ratio", COMMON_PRACTICE, "coefficient of discharge of the valves"),
    ],
)
def relief_capacity(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Greatest piston speed at slow speed, by a scan of the crank angle; area required against area opened."""
    drive = block.drive
    speed = sheet.limit("creep", "v")
    turning = sheet.work("ω", wheel_speed, v=speed, D=sheet.take("D", drive.driving_wheel_diameter))
    crank = sheet.work("r", crank_radius, S=sheet.take("s", drive.stroke))
    rod = sheet.take("l", drive.connecting_rod_length)

    def moving(angle: float) -> float:
        return piston_speed(r=crank, l=rod, ω=turning, θ=angle)

    angle = sheet.scan("θ", "crank angle of the greatest piston speed", moving, 0.0, math.pi, unit="rad")
    fastest = sheet.work("v_p", piston_speed, r=crank, l=rod, ω=turning, θ=angle)
    density = sheet.look_up("ρ", lambda: _WATER)
    judgements = []
    for end in ends_of(block, sheet):
        d = sheet.take("d", liner_in(block, end, sheet).bore)
        flow = sheet.work("Q", water_displaced, d=d, v=fastest)
        setting = sheet.take("p_s", end.relief_set)
        wanted = sheet.work(
            "A", relief_area_wanted, Q=flow, C=sheet.limit("discharge"), p=setting, rho=density
        )
        opened = sheet.work(
            "A_r",
            relief_area,
            n=sheet.count("n", end.relief_count),
            d=sheet.take("d_s", end.relief_seat_diameter),
            h=sheet.take("h", end.relief_lift),
        )
        judgements.append(sheet.at_least(opened, wanted))
    return sheet.worst(*judgements)


RULES = (water_relief, relief_capacity)
