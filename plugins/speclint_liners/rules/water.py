"""Relief of water from the cylinder, and its capacity."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import MetresPerSecond, RadiansPerSecond
from speclint.facts import (
    connecting_rod_of,
    crank_speed,
    has_drain_cock,
    speed_of_crank,
    stroke_of,
    turns_of_crank,
    wheel_speed,
    worn_wheel,
)
from speclint.handbook.cams import crank_radius, piston_speed
from speclint.handbook.cylinders import pressure_blown_off
from speclint.handbook.tables import Reading
from speclint.specs import CylinderBlock
from speclint_liners.formulae.water import (
    highest_setting,
    pressure_times,
    relief_area,
    relief_area_wanted,
    water_displaced,
)
from speclint_liners.inputs.cylinders import bores_in_work, every_end
from speclint_liners.inputs.tested import least_test_pressure
from speclint_liners.sources import IAPWS_95

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd, LoadCase

_WATER = Reading.exact("density of water at 20 °C", 998.2, "kg/m³", IAPWS_95.at("0.1 MPa, 293.15 K"))


@rule(
    "cylinder.water-relief",
    title="Each end has a drain cock and a relief valve, set within its limits over the safety valves and below the "
    "least test pressure of block, covers and what is fitted to them by its factor",
    on=CylinderBlock,
    cases=("starting",),
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="Water does not compress: without relief it breaks the cover.",
    leaves_out="condition of the valves in service; covers that have no spec; the local code and a competent person "
    "decide",
    against=("burst",),
    against_on={"cylinder-cover": ("burst",)},
    edition=3,
    limits=[
        Limit("least_factor", "1.1", "ratio", COMMON_PRACTICE, "least setting over the safety valves'"),
        Limit("most_factor", "1.2", "ratio", COMMON_PRACTICE, "greatest setting over the safety valves'"),
        Limit("test_factor", "1.1", "ratio", COMMON_PRACTICE, "least test pressure over the setting"),
    ],
)
def water_relief(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """Settings against the safety valves' and the test pressures; a drain cock and a relief valve at each end."""
    duty = sheet.take("p", case.safety_valve_pressure)
    least = sheet.work("p_1", pressure_times, k=sheet.limit("least_factor"), p=duty)
    most = sheet.work("p_2", pressure_times, k=sheet.limit("most_factor"), p=duty)

    def set_right(end: CylinderEnd) -> Judgement:
        test = least_test_pressure(block, end, sheet)
        highest = sheet.work("p_3", highest_setting, p_t=test, k=sheet.limit("test_factor"))
        setting = sheet.take("p_s", end.relief_set)
        return sheet.worst(
            sheet.within(setting, least, most).else_says(
                "relief valve of {item} set to {found}, where the nearer limit is {limit}"
            ),
            sheet.at_most(setting, highest).else_says(
                "relief valve of {item} set to {found}, the tests cover {limit}"
            ),
        )

    ends = every_end(block, sheet)
    return sheet.worst(
        sheet.each(ends, lambda end: _relieved(end, sheet)),
        sheet.each(ends, lambda end: _drained(end, sheet)),
        sheet.each(ends, set_right),
    )


def _relieved(end: CylinderEnd, sheet: Sheet) -> Judgement:
    """A relief valve, as stated."""
    fitted = sheet.count("n", end.relief_count) >= 1
    says = "each end has a relief valve" if fitted else "an end of the cylinder has no relief valve"
    return sheet.states(fitted, says, where=end.where)


def _drained(end: CylinderEnd, sheet: Sheet) -> Judgement:
    """A drain cock, as stated."""
    fitted = has_drain_cock("the end", end, sheet)
    says = "each end has a drain cock" if fitted else "an end of the cylinder has no drain cock"
    return sheet.states(fitted, says, where=end.where)


@rule(
    "cylinder.relief-capacity",
    title="The relief valves open at least the area that the water displaced by the piston of the last bore requires, "
    "on worn tyres at slow speed, and at the speed of the duty's water case",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A valve that opens but cannot pass the water does not save the cover.",
    leaves_out="higher speeds than these, at which no relief valve saves a cylinder full of water; flow through the "
    "drain cocks; pipes between cylinder and valve",
    against=("burst",),
    against_on={"cylinder-cover": ("burst",)},
    limits=[
        Limit(
            "creep",
            "5 km/h",
            "speed",
            COMMON_PRACTICE,
            "slow speed at which the displaced water must be relieved",
        ),
        Limit("discharge", "0.6", "ratio", COMMON_PRACTICE, "coefficient of discharge of the valves"),
        Limit(
            "accumulation",
            "10 %",
            "ratio",
            COMMON_PRACTICE,
            "rise above the setting at which the lift is reached",
        ),
    ],
    edition=7,
)
def relief_capacity(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Greatest piston speed at slow speed, and at that of the water case: area required against area opened.

    The crank angle is scanned. The area is that of the lift which the valves reach at no more than the accumulation
    above their setting. A water case that states no speed is asked for it.
    """
    speeds = (("slow speed", _slow_speed), ("speed with water", _speed_with_water))

    def let_out(turning: RadiansPerSecond) -> Judgement:
        fastest = _greatest_piston_speed(block, turning, sheet)
        return sheet.each(every_end(block, sheet), lambda end: _water_let_out(block, end, fastest, sheet))

    return sheet.each(speeds, lambda one: let_out(one[1](block, sheet)))


def _greatest_piston_speed(block: CylinderBlock, turning: RadiansPerSecond, sheet: Sheet) -> MetresPerSecond:
    """Of a crank that turns so fast, at the angle at which its piston goes fastest."""
    crank = sheet.work("r", crank_radius, S=sheet.take("s", stroke_of(block, sheet)))
    rod = sheet.take("l", connecting_rod_of(block, sheet))

    def moving(angle: float) -> float:
        return piston_speed(r=crank, l=rod, ω=turning, θ=angle)

    angle = sheet.scan("θ", "crank angle of the greatest piston speed", moving, 0.0, math.pi, unit="rad")
    return sheet.work("v_p", piston_speed, r=crank, l=rod, ω=turning, θ=angle)


def _slow_speed(block: CylinderBlock, sheet: Sheet) -> RadiansPerSecond:
    """On tyres worn to their limit, which turn the wheels fastest."""
    tread = sheet.take("D", worn_wheel(block, sheet))
    wheel = sheet.work("ω_w", wheel_speed, v=sheet.limit("creep", "v"), D=tread)
    return sheet.work("ω", crank_speed, i=turns_of_crank(block, sheet, sheet.take), ω_w=wheel)


def _speed_with_water(block: CylinderBlock, sheet: Sheet) -> RadiansPerSecond:
    """The speed at which the duty of the block has water in the cylinder."""
    duty = sheet.duty_of(block)
    case = duty.cases.get("water") if duty is not None else None
    if case is None:
        raise sheet.not_applicable("the duty has no load case of water: duty.cases-there asks for it")
    return speed_of_crank(block, case, sheet)


def _water_let_out(
    block: CylinderBlock, end: CylinderEnd, fastest: MetresPerSecond, sheet: Sheet
) -> Judgement:
    """Whether the valves of an end pass the water of its last bore, and lift in time, but not before they open."""
    _, last = bores_in_work(block, sheet.read("bore of end", end.of_bore), sheet)
    d = sheet.take("d", last)
    flow = sheet.work("Q", water_displaced, d=d, v=fastest)
    setting, lifted = sheet.take("p_s", end.relief_set), sheet.take("p_h", end.relief_lift_at)
    rise = sheet.limit("accumulation", "a")
    in_time = sheet.at_most(lifted, sheet.work("p_a", pressure_blown_off, p_r=setting, a=rise)).else_says(
        "relief valve of {item} lifts fully at {found}, {limit} allowed"
    )
    after = sheet.at_least(lifted, setting).else_says(
        "relief valve of {item} is said to lift fully at {found}, and is set to {limit}"
    )
    density = sheet.look_up("ρ", lambda: _WATER)
    wanted = sheet.work("A", relief_area_wanted, Q=flow, C=sheet.limit("discharge"), p=lifted, rho=density)
    opened = sheet.work(
        "A_r",
        relief_area,
        n=sheet.count("n", end.relief_count),
        d=sheet.take("d_s", end.relief_seat_diameter),
        h=sheet.take("h", end.relief_lift),
        beta=sheet.take("β", end.relief_seat_angle),
    )
    return sheet.worst(
        sheet.at_least(opened, wanted).else_says(
            "relief valves of {item} open {found}, the water requires {limit}"
        ),
        in_time,
        after,
    )


RULES = (water_relief, relief_capacity)
