"""Specs of one cylinder with its valve gear for tests of events: the engine of the worked cases of the handbook.

500 by 660 mm, connecting rods of 1900 mm, three cylinders alike at 120°. Valve, spindle and block are at 62.69 °C, the
cam box at 20 °C. The steel has there a mean expansion of 11.5 + 0.005 × 42.69 = 11.713e-6/K, a strain of 0.50005e-3;
between seat and gear 200 mm more of spindle and valve grow than of the block: 0.1 mm. So a clearance of 0.6 mm cold is
0.5 mm hot, and 0.45 mm with a seat worn by 0.05 mm.

Each cam has ramps of 1.1 mm over 10°: 0.5 mm of clearance are used up 4.545° from the foot.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from speclint.checking import Check
from speclint.testing import DesignFolder, changed_files
from tests.plugins.known_metals import METALS, WITH_METALS

SIDES = ("front", "back")
SERVES = ("inlet", "exhaust")

_BEATS = {
    "inlet": ((153.0, 45.0, 140, 3000), (143.0, 18.5, 130, 1800), 16000),
    "exhaust": ((172.0, 45.0, 160, 3000), (161.0, 22.6, 150, 1800), 20000),
}
#: Lift, rise and dwell of each cam: the dwell of the back is longer, so that both ends cut off alike.
_CAMS = {
    "inlet-front-65": (19.8, 44, 8.5),
    "inlet-back-65": (19.8, 44, 18),
    "inlet-front-35": (14, 30, 3),
    "inlet-back-35": (14, 30, 12.5),
    "inlet-front-20": (9.5, 21, 2.5),
    "inlet-back-20": (9.5, 21, 10.5),
    "exhaust-front": (23.8, 56, 50),
    "exhaust-back": (23.8, 56, 50),
    "inlet-front-b": (19.8, 44, 8.5),
    "inlet-back-b": (19.8, 44, 18),
    "exhaust-front-b": (23.8, 56, 50),
    "exhaust-back-b": (23.8, 56, 50),
}
_FEET = {"65": -9.5, "35": -10.5, "20": -10.5, "b": -9.5}


def files(*changes: tuple[str, str, str]) -> dict[str, str]:
    """Every file of the design, some passages changed: each given as file, old and new."""
    return changed_files(
        {
            "metals.toml": METALS,
            "duty.toml": DUTY,
            "engine.toml": ENGINE,
            "block.toml": _block(),
            "liner.toml": LINER,
            "gear.toml": _gear(),
            **{f"{name}.toml": text for name, text in _parts().items()},
            **{f"cam-{name}.toml": _cam(name) for name in _CAMS},
        },
        *changes,
    )


def checked(folder: DesignFolder, rule: str, *changes: tuple[str, str, str], component: str = "") -> Check:
    """The check of a rule on the design with some passages changed."""
    return folder.write(files(*changes), settings=WITH_METALS).only(rule, component)


def written(folder: Path, changed: Mapping[str, str]) -> DesignFolder:
    """A design folder with these files."""
    return DesignFolder(folder).write(changed, settings=WITH_METALS)


DUTY = """
kind = "duty"
[cases.starting]
live_pressure = "15.2 bar gauge"
exhaust_pressure = "0.35 bar gauge"
live_temperature = "390 °C"
exhaust_temperature = { from = "events" }
rotational_speed = "60 rev/min"
notch = "65"
[cases.starting.temperatures]
cylinder-block = "62.69 °C"
poppet-valve = "cylinder-block"
valve-spindle = "cylinder-block"
cam-box = "20 °C"
[cases.running]
live_pressure = "15.2 bar gauge"
exhaust_pressure = "0.35 bar gauge"
live_temperature = "390 °C"
exhaust_temperature = { from = "events" }
rotational_speed = "180 rev/min"
notch = "35"
cut_off = "35 %"
[cases.running.temperatures]
cylinder-block = "62.69 °C"
poppet-valve = "cylinder-block"
valve-spindle = "cylinder-block"
cam-box = "20 °C"
"""

ENGINE = """
kind = "engine"
stroke = "660 mm"
connecting_rod_length = "1900 mm"
driving_wheel_diameter = "1750 mm"
least_wheel_diameter = "1675 mm"
adhesive_weight = "66 t"
[cranks.left]
block = "block"
angle = "0 °"
[cranks.right]
angle = "120 °"
[cranks.middle]
angle = "240 °"
[boiler]
evaporation = "5 kg/s"
"""

LINER = """
kind = "cylinder-liner"
housed_in = "block"
in_bore = "main"
bore = "500 mm"
"""


def _block() -> str:
    text = """
kind = "cylinder-block"
material = "known-steel"
duty = "duty"
[bores.main]
diameter = "520 mm"
[drive]
rod_diameter = "90 mm"
"""
    for side in SIDES:
        text += f"""
[ends.{side}]
of_bore = "main"
side = "{side}"
clearance = "8 mm"
passage_volume = "9500 cm³"
relief_set = "20 bar gauge"
"""
        for serves in SERVES:
            for beat in ("upper", "lower"):
                text += f'[seat_bores.{serves}-{side}-{beat}]\nend = "{side}"\nserves = "{serves}"\nbeat = "{beat}"\n'
    return text


def _parts() -> dict[str, str]:
    found = {"box": BOX}
    for side in SIDES:
        for serves in SERVES:
            name = f"{serves}-{side}"
            for beat in ("upper", "lower"):
                found[f"seat-{name}-{beat}"] = (
                    f'kind = "valve-seat"\nmaterial = "known-iron"\npressed_into = "block"\nin_bore = "{name}-{beat}"\n'
                )
            found[f"valve-{name}"] = _valve(serves, side)
            found[f"spindle-{name}"] = SPINDLE.format(name=name)
            found[f"tappet-{name}"] = TAPPET.format(name=name)
    return found


BOX = """
kind = "cam-box"
material = "known-steel"
mounted_on = "block"
datum_length = "180 mm"
block_length = "200 mm"
"""

SPINDLE = """
kind = "valve-spindle"
material = "known-steel"
moves = "valve-{name}"
heated_length = "400 mm"
valve_length = "60 mm"
"""

TAPPET = """
kind = "tappet"
material = "known-steel"
works = "spindle-{name}"
carried_in = "box"
clearance = "0.6 mm"
clearance_setting = "0 mm"
seat_wear = "0.05 mm"
"""


def _valve(serves: str, side: str) -> str:
    upper, lower, port = _BEATS[serves]
    text = f"""
kind = "poppet-valve"
material = "known-steel"
serves = "{serves}"
beats = 2
port_area = "{port} mm²"
through_valve = "neither"
discharge_coefficient = "0.75"
port_discharge_coefficient = "0.90"
"""
    for name, (d, angle, throat, blocked) in (("upper", upper), ("lower", lower)):
        text += f"""
[{name}_beat]
seat = "seat-{serves}-{side}-{name}"
seat_diameter = "{d} mm"
seat_angle = "{angle} °"
contact_width = "2.5 mm"
throat = "{throat} mm"
blocked_area = "{blocked} mm²"
"""
    return text


def _cam(name: str) -> str:
    lift, rise, dwell = _CAMS[name]
    serves, side, *track = name.split("-")
    return f"""
kind = "cam"
material = "known-steel"
lifts = "tappet-{serves}-{side}"
track = "{track[0] if track else "both"}"
law = "3-4-5 polynomial"
lift = "{lift} mm"
rise_angle = "{rise} °"
dwell_angle = "{dwell} °"
fall_angle = "{rise} °"
ramp_height = "1.1 mm"
ramp_angle = "10 °"
"""


def _gear() -> str:
    text = """
kind = "valve-gear"
in_block = "block"
cylinders = 3
drive_play = "0.1 °"
setting = "0.1 °"
[notches.mid]
direction = "mid"
"""
    for notch, foot in _FEET.items():
        runs, cut_off = ("backward", "65 %") if notch == "b" else ("forward", f"{notch} %")
        text += f'[notches.{notch}]\ndirection = "{runs}"\ncut_off = "{cut_off}"\n'
        for side in SIDES:
            exhaust = f"cam-exhaust-{side}{'-b' if notch == 'b' else ''}"
            text += f'[notches.{notch}.inlet_{side}]\ncam = "cam-inlet-{side}-{notch}"\nfoot = "{foot} °"\n'
            text += f'[notches.{notch}.exhaust_{side}]\ncam = "{exhaust}"\nfoot = "140 °"\n'
    return text


def foot(notch: str, valve: str, angle: str) -> tuple[str, str, str]:
    """A change of one foot of the gear."""
    text = _gear()
    start = text.index(f"[notches.{notch}.{valve}]")
    stop = text.index("\n", text.index("foot", start))
    old = text[start:stop]
    return "gear.toml", old, old[: old.rindex("foot")] + f'foot = "{angle}"'
