"""Engine, axles, motion and duties where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, changed
from tests.plugins.agreement import (
    test_duties as duties,
    test_engine as engine,
    test_heating as heating,
    test_one_cylinder as one_cylinder,
)
from tests.plugins.agreement.silent import ASKED, FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.agreement.test_crank_pins import FILES as CRANK_PINS
from tests.plugins.agreement.test_part_duties import FILES as PART_DUTIES, with_heat
from tests.plugins.motion import locomotive

_BLOCKS = {"block.toml": engine.BLOCK, "other.toml": engine.OTHER, "engine.toml": engine.ENGINE}
_WHEELS = 'driving_wheel_diameter = "1750 mm"\nleast_wheel_diameter = "1675 mm"\n'
#: Both cranks that name the block.
_UNNAMED = (
    ("engine.toml", 'block = "block"\nbore = "left"\n'),
    ("engine.toml", 'block = "block"\nbore = "right"\n'),
)
#: 90 kg × 600/1800 = 30 kg of a connecting rod, on the crosshead of the left cylinder.
_SMALL_END = {
    **locomotive.files(),
    "liner.toml": 'kind = "cylinder-liner"\nhoused_in = "block-left"\nin_bore = "main"',
    "piston.toml": 'kind = "piston"\nruns_in = "liner"',
    "rod.toml": 'kind = "piston-rod"\ncarries = "piston"',
    "head.toml": 'kind = "crosshead"\non_rod = "rod"\nsmall_end_mass = "30 kg"',
}
_SPEEDS = {"block.toml": duties.BLOCK, "duty.toml": duties.DUTY}
#: The same with a slower case beside running.
_DUTIES = {
    **_SPEEDS,
    "duty.toml": changed(
        duties.DUTY,
        (
            "[cases.drifting]\n",
            '[cases.drifting]\nrotational_speed = "300 rev/min"\ntrack_speed = "100 km/h"\n',
        ),
    ),
}
_WARMED = {
    "duty.toml": 'kind = "duty"\nwarming.time = "1 h"',
    "weldment.toml": 'kind = "weldment"\nduty = "duty"\nwarming_time = "1 h"',
}

ROWS: list[Row] = [
    *rows(
        "axle.pins-of-its-cranks",
        "axle",
        CRANK_PINS,
        (SILENT, ("axle.toml", 'engine = "engine"\n')),
    ),
    *rows(
        "block.axis-of-motion",
        "block",
        one_cylinder.FILES,
        (SILENT, ("block.toml", 'axis_from_frame = "350 mm"\n')),
        (SILENT, ("engine.toml", 'block = "block"\n')),
        (SILENT, ("engine.toml", 'axis_from_centre = "950 mm"\n')),
        (SILENT, ("engine.toml", 'frame_from_centre = "600 mm"\n')),
        (ASKED, ("engine.toml", 'bore = "left"\n')),  # of two bores one must be named
    ),
    *rows(
        "motion.one-cylinder",
        "box",
        one_cylinder.FILES,
        (SILENT, ("box.toml", 'seals = "rod"\n')),
        (SILENT, ("box.toml", 'in_cover = "cover"\n')),
        # without its cylinder the rod, which has no tail, still leaves at the back
        (FINE, ("rod.toml", 'carries = "piston"\n')),
        (FINE, ("piston.toml", 'runs_in = "liner"\n')),
        (FINE, ("liner.toml", 'housed_in = "block"\n')),
    ),
    *rows(
        "duty.one-life",
        "weldment",
        one_cylinder.FILES,
        (FINE, ("weldment.toml", 'life_distance = "2000000 km"\n')),
        (FINE, ("weldment.toml", "starts = 12000\n")),
        (FINE, ("base.toml", 'distance = "2000000 km"\n')),
        (FINE, ("base.toml", "starts = 12000\n")),
        (SILENT, ("weldment.toml", 'makes = "block"\n')),
    ),
    *rows(
        "duty.no-milder-for-a-part",
        "liner",
        PART_DUTIES,
        (SILENT, ("liner.toml", 'duty = "own"\n')),
        (SILENT, ("liner.toml", 'housed_in = "block"')),
        (SILENT, ("block.toml", 'duty = "engine"')),
        # its live steam of 15.5 bar counts, against the valves of the engine at 16.6
        ("finding", ("own.toml", 'safety_valve_pressure = "16.6 bar gauge"\n')),
        (FINE, ("engine.toml", 'safety_valve_pressure = "16.6 bar gauge"\n')),
        (FINE, ("own.toml", 'exhaust_pressure = "0.35 bar gauge"\n')),
        (FINE, ("engine.toml", 'exhaust_pressure = "0.35 bar gauge"\n')),
        (FINE, ("own.toml", 'live_pressure = "15.2 bar gauge ±0.3"\n')),
        (FINE, ("own.toml", 'live_temperature = "390 °C ±10"\n')),
        (FINE, ("engine.toml", 'live_temperature = "390 °C ±10"\n')),
        (FINE, ("own.toml", 'exhaust_temperature = "140 °C ±5"\n')),
        (FINE, ("engine.toml", 'exhaust_temperature = "140 °C ±5"\n')),
        (
            FINE,
            (
                "own.toml",
                'safety_valve_pressure = "16.6 bar gauge"\nlive_pressure = "15.2 bar gauge ±0.3"\n',
            ),
        ),
    ),
    *rows(
        "duty.one-temperature-of-block",
        "liner",
        {**PART_DUTIES, **with_heat('"250..270 °C"', '"250..270 °C"')},
        (SILENT, ("liner.toml", 'duty = "own"\n')),
        (SILENT, ("liner.toml", 'housed_in = "block"')),
        (SILENT, ("block.toml", 'duty = "engine"')),
        (SILENT, ("own.toml", '"cylinder-block" = "250..270 °C"\n')),
        (SILENT, ("engine.toml", '"cylinder-block" = "250..270 °C"\n')),
    ),
    *rows(
        "engine.strokes-agree",
        "block",
        _BLOCKS,
        (FINE, ("block.toml", 'stroke = "660 mm"\n')),
        (FINE, ("block.toml", 'connecting_rod_length = "1900 mm"\n')),
        (SILENT, ("block.toml", 'stroke = "660 mm"\nconnecting_rod_length = "1900 mm"\n')),
        (FINE, ("engine.toml", 'stroke = "660 mm"\n')),  # the other block states one
        (FINE, ("engine.toml", 'stroke = "660 mm"\n'), ("other.toml", 'stroke = "660 mm"\n')),
        (ASKED, ("engine.toml", 'bore = "left"\n')),  # of two bores one must be named
        (SILENT, *_UNNAMED),
    ),
    *rows(
        "engine.one-wheel",
        "block",
        _BLOCKS,
        (FINE, ("block.toml", 'driving_wheel_diameter = "1750 mm"\n')),
        (FINE, ("block.toml", 'least_wheel_diameter = "1675 mm"\n')),
        (SILENT, ("block.toml", _WHEELS)),
        (FINE, ("engine.toml", _WHEELS)),
        (SILENT, ("engine.toml", _WHEELS), ("other.toml", _WHEELS)),
        (SILENT, *_UNNAMED),
    ),
    *rows(
        "engine.one-gear",
        "block",
        _BLOCKS,
        (SILENT, ("block.toml", 'gear_ratio = "2.58"\n')),
        (SILENT, ("block.toml", 'gear_ratio = "2.58"\n'), ("engine.toml", 'gear_ratio = "2.58"\n')),
        (SILENT, *_UNNAMED),
    ),
    *rows(
        "engine.adhesive-weight",
        "engine",
        locomotive.files(),
        (SILENT, ("engine.toml", 'adhesive_weight = "16 t"\n')),
        (SILENT, ("axle.toml", 'engine = "engine"\n')),
        (ASKED, ("axle.toml", 'load = "8000 kg"\n')),
        (ASKED, ("axle.toml", 'load = "8000.0 kg"\n')),
    ),
    *rows(
        "engine.shares-add-up",
        "engine",
        locomotive.files(),
        (SILENT, ("engine.toml", 'balanced_share = "0.67"\n')),
        (SILENT, ("axle.toml", 'balanced_share = "0.67"\n')),
        (SILENT, ("axle.toml", 'engine = "engine"\n')),
    ),
    *rows(
        "crosshead.small-end-of-rod",
        "engine",
        _SMALL_END,
        (SILENT, ("head.toml", 'small_end_mass = "30 kg"')),
        (SILENT, ("head.toml", 'on_rod = "rod"\n')),
        (SILENT, ("engine.toml", 'connecting_rod_mass = "90 kg"\n')),
        (SILENT, ("engine.toml", 'connecting_rod_length = "1800 mm"\n')),
        (SILENT, ("engine.toml", 'connecting_rod_centre = "600 mm"\n')),
        (SILENT, ("engine.toml", 'block = "block-left"\n')),
    ),
    *rows(
        "duty.pressures-in-order",
        "block",
        _DUTIES,
        (FINE, ("block.toml", 'design_pressure = "17 bar gauge"\n')),
        (FINE, ("duty.toml", 'live_pressure = "16 bar gauge"\n')),
        (FINE, ("duty.toml", 'live_pressure = "0 bar gauge"\n')),
        (FINE, ("duty.toml", 'exhaust_pressure = "0.5 bar gauge"\n')),
        (ASKED, ("block.toml", 'duty = "duty"\n')),
    ),
    *rows(
        "duty.pressures-in-order",
        "block",
        duties.RELIEVED,
        (FINE, ("block.toml", 'relief_set = "18.5 bar gauge ±0.3"\n')),
        (FINE, ("block.toml", 'relief_set = "20 bar gauge"\n')),
        (FINE, ("duty.toml", 'cylinder_pressure = "19 bar gauge"\n')),
    ),
    *rows(
        "duty.one-boiler",
        "block",
        _DUTIES,
        (SILENT, ("duty.toml", 'live_pressure = "16 bar gauge"\nsafety_valve_pressure = "16.6 bar gauge"\n')),
        (ASKED, ("block.toml", 'duty = "duty"\n')),
    ),
    *rows(
        "duty.running-is-fastest",
        "block",
        _DUTIES,
        (FINE, ("duty.toml", 'rotational_speed = "364 rev/min"\n')),
        (FINE, ("duty.toml", 'track_speed = "120 km/h"\n')),
        (SILENT, ("duty.toml", 'rotational_speed = "364 rev/min"\ntrack_speed = "120 km/h"\n')),
        (FINE, ("duty.toml", 'rotational_speed = "300 rev/min"\n')),
        (FINE, ("duty.toml", 'track_speed = "100 km/h"\n')),
        (SILENT, ("duty.toml", 'rotational_speed = "300 rev/min"\ntrack_speed = "100 km/h"\n')),
        (ASKED, ("block.toml", 'duty = "duty"\n')),
    ),
    *rows(
        "duty.speed-of-wheel",
        "block",
        _SPEEDS,
        (SILENT, ("duty.toml", 'rotational_speed = "364 rev/min"\n')),
        (SILENT, ("duty.toml", 'track_speed = "120 km/h"\n')),
        (ASKED, ("block.toml", 'driving_wheel_diameter = "1750 mm"\n')),
        (ASKED, ("block.toml", 'least_wheel_diameter = "1675 mm"\n')),
    ),
    *rows(
        "duty.one-warming",
        "weldment",
        _WARMED,
        (SILENT, ("weldment.toml", 'warming_time = "1 h"')),
        (SILENT, ("duty.toml", 'warming.time = "1 h"')),
        (SILENT, ("weldment.toml", 'duty = "duty"\n')),
    ),
    *rows(
        "duty.warming-rise",
        "weldment",
        heating.WARMED,
        (SILENT, ("weldment.toml", 'warming_rise = "125 K"\n')),
        (ASKED, ("weldment.toml", 'makes = "block"\n')),
        (ASKED, ("duty.toml", 'ambient_temperature = "5..20 °C"\n')),
        (ASKED, ("duty.toml", 'cylinder-block = "60..90 °C"\n')),
        (FINE, ("duty.toml", 'chest = "100..130 °C"\n')),
        (FINE, ("chest.toml", 'in_block = "block"\n')),
    ),
    *rows(
        "duty.coldest-air",
        "weldment",
        heating.WARMED,
        (SILENT, ("weldment.toml", 'least_temperature = "-15 °C"\n')),
        (ASKED, ("duty.toml", 'coldest_ambient = "-15 °C"\n')),
    ),
    *rows(
        "duty.cold-as-the-air",
        "block",
        heating.COLD,
        (ASKED, ("duty.toml", 'ambient_temperature = "20 °C"\n')),
        (
            SILENT,
            ("duty.toml", 'temperatures.cylinder-liner = "20 °C"\n'),
            ("duty.toml", 'temperatures.pads = "15..25 °C"\n'),
            ("duty.toml", 'temperatures.valve-seat = "cylinder-liner"\n'),
        ),
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
