"""The engine of two worked cases of an independent model, as a design: clearances of 0.5 mm cold, hot and worn.

16.2 bar and 390 °C in the chest, 1.35 bar in the belt, absolute; no heat to the walls. That model has, of the front and
the back end, what stands in ``AT_20`` for the notch of 20 % at 180 rev/min and in ``AT_65`` for 65 % at 60 rev/min.
"""

from __future__ import annotations

import re
from pathlib import Path

from speclint.checking import Check
from speclint.testing import DesignFolder
from tests.own_limits import own_limit
from tests.plugins.events.gear import files
from tests.plugins.known_metals import WITH_METALS

#: kPa, J, kg/s, °C: pressures at the events and the greatest, work of a revolution, steam, exhaust mixed.
AT_20 = {
    "cut_off": (1033.071, 1101.314),
    "release": (224.04, 193.383),
    "admission": (950.161, 698.974),
    "greatest": (1607.146, 1613.905),
    "work": (59284.66, 50831.79),
    "mean_pressure": (457.476, 405.383),
    "steam": (1201.79435 / 3600, 1029.56254 / 3600),
    "exhaust": (113.77828, 113.56052),
}
AT_65 = {"mean_pressure": (1239.962, 1169.597)}

#: The clearance is 0.5 mm cold, hot and worn, where every part is at 20 °C; the inlet in front dwells for 6°.
STEADY = [
    *(
        change
        for serves in ("inlet", "exhaust")
        for side in ("front", "back")
        for change in (
            (f"tappet-{serves}-{side}.toml", 'clearance = "0.6 mm"', 'clearance = "0.5 mm"'),
            (f"tappet-{serves}-{side}.toml", 'seat_wear = "0.05 mm"', 'seat_wear = "0 mm"'),
        )
    ),
    ("cam-inlet-front-20.toml", 'dwell_angle = "2.5 °"', 'dwell_angle = "6 °"'),
]
_OF_PARTS = [
    *STEADY,
    ("cam-inlet-back-20.toml", 'dwell_angle = "10.5 °"', 'dwell_angle = "6 °"'),
    ("cam-inlet-front-65.toml", 'dwell_angle = "8.5 °"', 'dwell_angle = "13.5 °"'),
    ("cam-inlet-back-65.toml", 'dwell_angle = "18 °"', 'dwell_angle = "13.5 °"'),
    (
        "block.toml",
        'side = "back"\nclearance = "8 mm"\npassage_volume = "9500 cm³"',
        'side = "back"\nclearance = "8 mm"\npassage_volume = "9400 cm³"',
    ),
    (
        "duty.toml",
        'rotational_speed = "180 rev/min"\nnotch = "35"\ncut_off = "35 %"',
        'rotational_speed = "180 rev/min"\nnotch = "20"',
    ),
]


def worked_engine(*changes: tuple[str, str, str]) -> dict[str, str]:
    """Its files, run in the notch of 20 % at 180 rev/min and started in that of 65 % at 60; some passages changed."""
    found = files(*_OF_PARTS, *changes)
    duty = found["duty.toml"].replace("62.69 °C", "20 °C")
    for stated, worked in (("15.2 bar gauge", "16.2 bar absolute"), ("0.35 bar gauge", "1.35 bar absolute")):
        duty = duty.replace(stated, worked)
    return {**found, "duty.toml": duty}


def judged(
    folder: Path, rule: str, *changes: tuple[str, str, str], limits: str = "", component: str = ""
) -> Check:
    """The check of a rule on that engine, with some limits set and passages changed."""
    values = dict(re.findall(r'(\w+) = "(.*?)"', limits))
    settings = WITH_METALS + (own_limit(rule, "events", **values) if limits else "")
    return DesignFolder(folder).write(worked_engine(*changes), settings=settings).only(rule, component)


def of_running(text: str) -> tuple[str, str, str]:
    """A change of the duty: one more line of the load case running."""
    old = 'notch = "20"'
    return "duty.toml", old, f"{old}\n{text}"
