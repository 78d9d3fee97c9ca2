"""What several rules share of an open valve: beats, throats, flow area, and the cylinder that it serves."""

from __future__ import annotations

import math

from speclint import Sheet
from speclint.equations import Metres, MetresPerSecond, RadiansPerSecond, SquareMetres
from speclint.facts import (
    areas_of_port,
    beats_of,
    block_under,
    bore_served,
    connecting_rod_of,
    greatest_bore,
    stroke_of,
    throat_of,
)
from speclint.handbook.cams import mean_piston_speed, piston_speed, revolutions
from speclint.handbook.members import round_area
from speclint.handbook.steam import beat_area, double_beat_flow_area, single_beat_flow_area, throat_area
from speclint.specs import Beat, CylinderBlock, CylinderLiner, PoppetValve
from speclint_valves.formulae.flow import area_after_meeting, governing_area


def throat(valve: PoppetValve, beat: Beat, index: str, sheet: Sheet) -> SquareMetres:
    """Area of the passage that a beat feeds."""
    bore, blocked = throat_of(valve, beat, index, sheet), sheet.take(f"A_o{index}", beat.blocked_area)
    return sheet.work(f"T_{index}", throat_area, D=bore, d=0.0, A_o=blocked)


def curtain(beat: Beat, index: str, h: Metres, sheet: Sheet) -> SquareMetres:
    """Area between a beat and its seat at a lift."""
    return sheet.work(
        f"A_{index}",
        beat_area,
        h=h,
        d=sheet.take(f"d_{index}", beat.seat_diameter),
        w=sheet.take(f"w_{index}", beat.contact_width),
        β=sheet.take(f"β_{index}", beat.seat_angle),
    )


def flow_area(valve: PoppetValve, sheet: Sheet) -> SquareMetres:
    """Flow area at full lift, each beat limited by its throat, both by the one after their steam has joined."""
    return _limited(valve, beats_area(valve, sheet.take("h", valve.lift), sheet), sheet)


def beats_area(valve: PoppetValve, h: Metres, sheet: Sheet) -> SquareMetres:
    """Flow area of the beats at a lift, each limited by its throat."""
    sizes = [
        (curtain(beat, index, h, sheet), throat(valve, beat, index, sheet))
        for index, beat in beats_of(valve, sheet)
    ]
    if len(sizes) == 1:
        return sheet.work("A", single_beat_flow_area, A_b=sizes[0][0], T=sizes[0][1])
    (A_u, T_u), (A_l, T_l) = sizes
    return sheet.work("A", double_beat_flow_area, A_u=A_u, T_u=T_u, A_l=A_l, T_l=T_l)


def common_throat(valve: PoppetValve, sheet: Sheet) -> SquareMetres:
    """Area after the streams have met; without bound where they do not meet in the valve and none is stated."""
    if sheet.count("z", valve.beats) == 1:
        return math.inf
    apart = sheet.read("streams through the valve", valve.through_valve) == "neither"
    if apart and not sheet.is_stated("common throat", valve.common_throat):
        return math.inf
    return sheet.take("T_c", valve.common_throat)


def _limited(valve: PoppetValve, A: SquareMetres, sheet: Sheet) -> SquareMetres:
    throat_after = common_throat(valve, sheet)
    if math.isinf(throat_after):
        return A
    return sheet.work("A_c", area_after_meeting, A=A, T_c=throat_after)


def passage(valve: PoppetValve, sheet: Sheet) -> SquareMetres:
    """Flow area of the narrower of valve and port."""
    A = flow_area(valve, sheet)
    return sheet.work("A_g", governing_area, A_v=A, A_port=min(areas_of_port(valve, sheet)))


def piston(valve: PoppetValve, block: CylinderBlock, sheet: Sheet) -> SquareMetres:
    """Area of the piston in the liner of the bore that the valve serves, bored to its last where that is stated."""
    name = bore_served(valve, sheet)
    for liner in sheet.belonging_to(block, CylinderLiner):
        if sheet.read(f"bore that houses {liner.id}", liner.in_bore) == name:
            d = greatest_bore(liner, sheet, symbols=("d_c", "d_last"))
            return sheet.work("A_p", round_area, d=d)
    raise sheet.not_assessed(f"no liner states that it is housed in bore {name} of {block.id}")


def mean_speed(valve: PoppetValve, ω: RadiansPerSecond, sheet: Sheet) -> MetresPerSecond:
    """Mean piston speed."""
    stroke = sheet.take("S", stroke_of(block_under(valve, sheet), sheet, bore_served(valve, sheet)))
    return sheet.work("c_m", mean_piston_speed, S=stroke, n=sheet.work("n", revolutions, ω=ω))


def greatest_speed(valve: PoppetValve, ω: RadiansPerSecond, sheet: Sheet) -> MetresPerSecond:
    """Greatest piston speed over the stroke."""
    block, bore = block_under(valve, sheet), bore_served(valve, sheet)
    r = sheet.take("S", stroke_of(block, sheet, bore)) / 2
    rod = sheet.take("l", connecting_rod_of(block, sheet, bore))

    def speed(θ: float) -> float:
        return piston_speed(r=r, l=rod, ω=ω, θ=θ)

    angle = sheet.scan("θ", "crank angle of the greatest piston speed", speed, 0.0, math.pi, unit="rad")
    return sheet.work("c_max", piston_speed, r=r, l=rod, ω=ω, θ=angle)
