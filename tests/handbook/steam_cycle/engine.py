"""An end to try: the 35 % notch of the worked cases, its dimensions easily changed."""

from __future__ import annotations

import math

from speclint.handbook.cams import CamProfile, Flank, Ramp, cam_law
from speclint.handbook.steam_cycle import CylinderEnd, Running, Supply, Valve
from speclint.handbook.valve_events import Beat, Crank, End, ValvePassage, ValveTrain

DEGREE = math.pi / 180
LAW = cam_law("3-4-5 polynomial")


def train(
    lift: float, rise: float, dwell: float, foot: float, clearance: float = 0.5, k: float = 1.0
) -> ValveTrain:
    """Lift and clearance in mm, angles in degrees; a ramp of 1.1 mm over 10°; lengths times ``k``."""
    flank = Flank(LAW, lift * k / 1e3, rise * DEGREE, Ramp(1.1 * k / 1e3, 10 * DEGREE))
    return ValveTrain(CamProfile(flank, dwell * DEGREE, flank), foot * DEGREE, clearance * k / 1e3)


def passage(diameter: float, throat: float, port: float, k: float = 1.0) -> ValvePassage:
    """Two beats at 45°; diameter in mm, throat and port in mm²; lengths times ``k``."""
    beat = Beat(diameter * k / 1e3, 2.5 * k / 1e3, math.radians(45), throat * k**2 / 1e6)
    return ValvePassage((beat, beat), port * k**2 / 1e6)


def cylinder_end(
    *,
    end: End = End.FRONT,
    dwell: float = 7.5,
    rod_length: float = 1.9,
    share: float = 0.085,
    surface: float | None = None,
    k: float = 1.0,
) -> CylinderEnd:
    """500 × 660 mm; ``dwell`` of the inlet's cam in degrees lengthens its cut-off; lengths times ``k``."""
    bore, crank = 0.5 * k, Crank(0.33 * k, rod_length * k)
    return CylinderEnd(
        end,
        crank,
        bore,
        0.0,
        share * math.pi / 4 * bore**2 * crank.stroke,
        Valve(train(14.0, 30.0, dwell, -10.5, k=k), passage(148, 12_500, 16_000, k).effective_area),
        Valve(train(23.8, 56.0, 50.0, 140.0, k=k), passage(166, 17_000, 20_000, k).effective_area),
        surface,
    )


def running(
    speed: float = 2.0, chest: float = 16.2e5, belt: float = 1.35e5, celsius: float = 390.0
) -> Running:
    return Running(Supply.superheated(chest, celsius + 273.15, belt), speed)
