"""Engine, axles, motion and duties where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.agreement import test_one_cylinder as one_cylinder
from tests.plugins.agreement.silent import ASKED, FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.agreement.test_crank_pins import FILES as CRANK_PINS
from tests.plugins.agreement.test_part_duties import FILES as PART_DUTIES

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
        (
            FINE,
            (
                "own.toml",
                'safety_valve_pressure = "16.6 bar gauge"\nlive_pressure = "15.2 bar gauge ±0.3"\n',
            ),
        ),
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
