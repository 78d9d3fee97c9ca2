"""The worked cases of steam-cycles.json as objects of the handbook: crank, trains, passages, ends.

They were worked by an independent model; the file says how. Angles there are in degrees, lengths in millimetres.
"""

from __future__ import annotations

import json
import math
from functools import cache
from pathlib import Path
from typing import Any

from speclint.handbook.cams import CamProfile, Flank, Ramp, cam_law
from speclint.handbook.steam import throat_area
from speclint.handbook.steam_cycle import CylinderEnd, Running, Supply, Valve
from speclint.handbook.valve_events import Beat, Crank, End, ValvePassage, ValveTrain

SOURCE = "independent model of valve events and steam cycles, worked cases"
BEATS = ("upper_beat", "lower_beat")


@cache
def cases() -> list[dict[str, Any]]:
    path = Path(__file__).with_name("steam-cycles.json")
    found: list[dict[str, Any]] = json.loads(path.read_text(encoding="utf-8"))["cases"]
    return found


def case(words: str) -> dict[str, Any]:
    """The one case whose title begins so."""
    [found] = [one for one in cases() if one["title"].startswith(words)]
    return found


def end_of(name: str) -> End:
    return End(name)


def crank_of(given: dict[str, Any]) -> Crank:
    return Crank(given["stroke_mm"] / 2e3, given["connecting_rod_mm"] / 1e3)


def train_of(given: dict[str, Any]) -> ValveTrain:
    cam = given["cam"]
    ramp = Ramp(cam["ramp_height_mm"] / 1e3, math.radians(cam["ramp_angle_deg"]))
    lift, law = cam["lift_above_ramp_mm"] / 1e3, cam_law(cam["law"])
    rise, fall = (Flank(law, lift, math.radians(cam[name]), ramp) for name in ("rise_deg", "fall_deg"))
    return ValveTrain(
        CamProfile(rise, math.radians(cam["dwell_deg"]), fall),
        math.radians(given["foot_deg"]),
        given["clearance_hot_at_tappet_mm"] / 1e3,
        given["valve_travel_per_tappet"],
    )


def passage_of(given: dict[str, Any]) -> ValvePassage:
    beats = tuple(
        Beat(
            beat["seat_diameter_mm"] / 1e3,
            beat["contact_width_mm"] / 1e3,
            math.radians(beat["seat_angle_deg"]),
            throat_area(beat["throat_mm"] / 1e3, 0.0, beat["blocked_mm2"] / 1e6),
        )
        for beat in (given[name] for name in BEATS)
    )
    port = given["port_area_mm2"] / 1e6
    return ValvePassage(
        beats, port, given["discharge_coefficient_valve"], given["discharge_coefficient_port"]
    )


def cylinder_end(given: dict[str, Any]) -> CylinderEnd:
    inlet, exhaust = (
        Valve(train_of(given[f"{name}_train"]), passage_of(given[f"{name}_valve"]).effective_area)
        for name in ("inlet", "exhaust")
    )
    bore, rod = given["bore_mm"] / 1e3, given["piston_rod_mm"] / 1e3
    clearance = given["clearance_volume_cm3"] / 1e6
    return CylinderEnd(end_of(given["end"]), crank_of(given), bore, rod, clearance, inlet, exhaust)


def running_of(given: dict[str, Any]) -> Running:
    supply = Supply.superheated(
        given["chest_pressure_bar_abs"] * 1e5,
        given["chest_temperature_C"] + 273.15,
        given["exhaust_pressure_bar_abs"] * 1e5,
    )
    return Running(supply, given["speed_rev_min"] / 60)
