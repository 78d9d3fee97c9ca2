"""Pipes, passages and the blast pipe where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, changed
from tests.plugins.agreement import test_openings as openings, test_washed as washed
from tests.plugins.agreement.silent import ASKED, FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.agreement.test_cooling import FILES as COOLING
from tests.plugins.agreement.test_nozzle import with_engine
from tests.plugins.agreement.test_passages import FILES as PASSAGES
from tests.plugins.agreement.test_path_blocks import FILES as PATHS
from tests.plugins.agreement.test_pipe_ends import BENT as PIPE_MOMENT, FILES as PIPE_ENDS
from tests.plugins.agreement.test_pipes import ANCHORED, FILES as PIPED, FLANGED, TESTED
from tests.plugins.known_metals import METALS, WITH_METALS

#: A pipe that follows a pipe which ends at another block: the pipes may meet between the two.
_PIPE_AFTER_PIPE = {
    **PATHS,
    "exhaust.toml": 'kind = "steam-pipe"\nfollows = "supply"\nstarts_at.part = "two"',
}
#: A pipe bolted to an opening of a block.
_OPENED = {
    **{
        f"{name}.toml": getattr(openings, name.upper())
        for name in ("duty", "block", "pipe", "flange", "studs", "lens")
    },
    "metals.toml": METALS,
    "speclint.toml": WITH_METALS,
}
_STRAIGHT = {
    **PIPED,
    "pipe.toml": changed(PIPED["pipe.toml"], ("bends = 2", "bends = 0"), ('"2.7 m"', '"2.1 m"')),
}
#: A round section of 20000 mm² has 0.501 m of edge.
_SECTION = {"passage.toml": 'kind = "steam-passage"\narea = "20000 mm²"\nperimeter = "0.6 m"'}

ROWS: list[Row] = [
    *rows(
        "blast-pipe.of-its-cylinders",
        "nozzle",
        with_engine(),
        (ASKED, ("other.toml", 'diameter = "500 mm"\n')),
        (ASKED, ("liner.toml", 'bore = "500 mm"\n')),
    ),
    *rows(
        "path.of-one-block",
        "chest",
        PATHS,
        (SILENT, ("chest.toml", 'in_block = "one"\n')),
        (SILENT, ("supply.toml", 'ends_at.part = "one"')),
        (SILENT, ("chest.toml", 'follows = "supply"')),
    ),
    *rows(
        "path.of-one-block",
        "pocket",
        PATHS,
        (FINE, ("chest.toml", 'in_block = "one"\n')),
        (FINE, ("pocket.toml", 'follows = "chest"\n')),
        (FINE, ("pocket.toml", 'valve = "valve"')),
        (FINE, ("valve.toml", 'upper_beat.seat = "upper"\n')),
        (FINE, ("upper.toml", 'pressed_into = "one"')),
        (SILENT, ("pocket.toml", 'in_block = "one"\n')),
        (SILENT, ("pocket.toml", 'follows = "chest"\nvalve = "valve"')),
    ),
    *rows(
        "path.of-one-block",
        "exhaust",
        PATHS,
        (SILENT, ("exhaust.toml", 'starts_at.part = "one"')),
        (SILENT, ("exhaust.toml", 'follows = "chest"\n')),
    ),
    *rows(
        "pipe.tested-together",
        "pipe",
        TESTED,
        (SILENT, ("pipe.toml", 'test_pressure = "40 bar gauge"\n')),
        (FINE, ("flange.toml", 'of = "pipe"\n')),
        (FINE, ("flange.toml", 'test_pressure = "40 bar gauge"\n')),
        (FINE, ("lens.toml", 'test_pressure = "40 bar gauge"\n')),
        (FINE, ("bolts.toml", 'holds = "lens"\nbolted_to = "flange"\n')),
    ),
    *rows(
        "flange.of-its-pipe",
        "flange",
        PIPED,
        (SILENT, ("flange.toml", 'bore = "157 mm"\n')),
        (ASKED, ("flange.toml", 'of = "pipe"\n')),
        (ASKED, ("pipe.toml", 'wall = "5.6 mm"\n')),
        (ASKED, ("pipe.toml", 'outside_diameter = "168.3 mm"\n')),
    ),
    *rows(
        "lens-joint.of-its-pipe",
        "lens",
        PIPED,
        (SILENT, ("lens.toml", '\nbore = "157 mm"')),
        (ASKED, ("lens.toml", 'of = "pipe"\n')),
        (ASKED, ("pipe.toml", 'wall = "5.6 mm"\n')),
    ),
    *rows(
        "steamway.same-steam",
        "pipe",
        PIPED,
        (SILENT, ("chest.toml", 'carries = "live steam"\n')),
        (SILENT, ("pipe.toml", 'carries = "live steam"\n')),
        (SILENT, ("chest.toml", 'follows = "pipe"\n')),
    ),
    *rows(
        "duty.back-pressure-by-nozzle",
        "block",
        with_engine(),
        (SILENT, ("engine.toml", 'nozzle = "nozzle"\n')),
        (SILENT, ("engine.toml", 'block = "block"\n')),
        (SILENT, ("duty.toml", 'exhaust_pressure = "0.35 bar gauge"\n')),
        (SILENT, ("duty.toml", 'steam_flow = "1.7 kg/s"\n')),
        (ASKED, ("nozzle.toml", 'follows = "out"\n')),
    ),
    *rows("path.of-one-block", "exhaust", _PIPE_AFTER_PIPE, (SILENT,)),
    *rows(
        "pipe.of-its-opening",
        "pipe",
        _OPENED,
        (FINE, ("pipe.toml", 'carries = "live steam"\n')),
        (FINE, ("block.toml", 'carries = "live steam"\n')),
        (FINE, ("block.toml", 'bore = "157 mm"\n')),
        (ASKED, ("pipe.toml", 'outside_diameter = "168.3 mm"\n')),
        (ASKED, ("pipe.toml", 'wall = "5.6 mm"\n')),
        (FINE, ("block.toml", "studs = 8\n")),
        (FINE, ("studs.toml", "count = 8\n")),
        (FINE, ("block.toml", 'circle = "250 mm"\n')),
        (FINE, ("studs.toml", 'circle = "250 mm"\n')),
        (FINE, ("block.toml", 'face = "300 mm"\n')),
        (FINE, ("flange.toml", 'outside_diameter = "300 mm"\n')),
        (FINE, ("studs.toml", 'screwed_into = "block"\n')),
        (SILENT, ("pipe.toml", 'opening = "chest"\n')),
        (SILENT, ("pipe.toml", 'part = "block"\n')),
    ),
    *rows(
        "pipe.anchor-by-block",
        "pipe",
        _OPENED,
        (SILENT, ("pipe.toml", 'anchor_movement = "3 mm"\n')),
        (SILENT, ("block.toml", 'at = "-500 mm"\n')),
        (SILENT, ("pipe.toml", 'opening = "chest"\n')),
    ),
    *rows(
        "lens-joint.swing-by-pipe",
        "lens",
        _OPENED,
        (SILENT, ("lens.toml", 'swing = "0.5 °"\n')),
        (SILENT, ("pipe.toml", 'takes_up_by = "lens joints"\n')),
        (ASKED, ("pipe.toml", 'anchor_distance = "2 m"\n')),
        (ASKED, ("lens.toml", 'of = "pipe"\n')),
    ),
    *rows(
        "pipe.anchors-at-its-ends",
        "pipe",
        {**PIPED, "pipe.toml": changed(ANCHORED["pipe.toml"], ("2.1 m", "1.99 m"))},
        (SILENT, ("pipe.toml", 'anchor_distance = "1.99 m"\n')),
        (FINE, ("pipe.toml", 'faces_gap = "2000 mm"\n')),
        (FINE, ("pipe.toml", 'faces_length = "1900 mm"\n')),
        (SILENT, ("pipe.toml", 'faces_gap = "2000 mm"\n'), ("pipe.toml", 'faces_length = "1900 mm"\n')),
    ),
    *rows(
        "pipe.anchors-at-its-ends",
        "pipe",
        {
            **PIPED,
            "pipe.toml": changed(ANCHORED["pipe.toml"], ("bends = 2", "bends = 0"), ("2.7 m", "2.1 m")),
        },
        (FINE, ("pipe.toml", "bends = 0\n")),
        (FINE, ("pipe.toml", 'length = "2.1 m"\n')),
        (FINE, ("pipe.toml", 'anchor_distance = "2.1 m"\n')),
    ),
    *rows(
        "pipe.length-agrees",
        "pipe",
        _STRAIGHT,
        (SILENT, ("pipe.toml", 'anchor_distance = "2.1 m"\n')),
        (SILENT, ("pipe.toml", 'length = "2.1 m"\n')),
        (ASKED, ("pipe.toml", "bends = 0\n")),
    ),
    *rows(
        "duty.metal-follows-steam",
        "pipe",
        PIPED,
        (SILENT, ("duty.toml", 'steam-pipe = "380..395 °C"\n')),
        (SILENT, ("duty.toml", 'live_temperature = "390 °C ±10"\n')),
        (FINE, ("duty.toml", 'exhaust_temperature = "170 °C"\n')),
    ),
    *rows(
        "duty.metal-follows-steam",
        "block",
        PIPED,
        (SILENT, ("duty.toml", 'cylinder-block = "250..270 °C"\n')),
        (SILENT, ("duty.toml", 'live_temperature = "390 °C ±10"\n')),
    ),
    *rows(
        "duty.metal-follows-steam",
        "valve",
        PIPED,
        (SILENT, ("duty.toml", 'poppet-valve = "350 °C"\n')),
        (ASKED, ("valve.toml", 'serves = "inlet"\n')),
    ),
    *rows(
        "duty.pipe-cools-first",
        "pipe",
        COOLING,
        (SILENT, ("duty.toml", 'steam-pipe = "90..120 °C"\n')),
        (FINE, ("duty.toml", 'steam-pipe = "20 °C"\n')),
        (FINE, ("duty.toml", 'cylinder-block = "140..160 °C"\n')),
        (FINE, ("pipe.toml", 'part = "block"\n')),
        (SILENT, ("duty.toml", 'steam-pipe = "20 °C"\n'), ("pipe.toml", 'part = "block"\n')),
    ),
    *rows(
        "duty.metal-between-steams",
        "partition",
        washed.FILES,
        (SILENT, ("duty.toml", 'partition = "250..280 °C"\n')),
        (FINE, ("duty.toml", 'live_temperature = "390 °C ±10"\n')),
        (FINE, ("duty.toml", 'exhaust_temperature = "140 °C ±5"\n')),
        (
            SILENT,
            ("duty.toml", 'live_temperature = "390 °C ±10"\nexhaust_temperature = "140 °C ±5"\n'),
        ),
    ),
    *rows(
        "duty.metal-between-steams",
        "belt",
        washed.FILES,
        (FINE, ("belt.toml", 'place = "belt"\n')),
        (ASKED, ("belt.toml", 'carries = "exhaust steam"\n')),
    ),
    *rows(
        "passage.section-possible",
        "passage",
        _SECTION,
        (SILENT, ("passage.toml", 'area = "20000 mm²"\n')),
        (SILENT, ("passage.toml", 'perimeter = "0.6 m"')),
    ),
    *rows(
        "passage.metal-of-its-block",
        "passage",
        PASSAGES,
        (SILENT, ("passage.toml", 'material = "plate-P355GH"\n')),
        (ASKED, ("passage.toml", 'in_block = "block"\n')),
        (ASKED, ("block.toml", 'material = "plate-P355GH"\n')),
        (FINE, ("weldment.toml", 'material = "plate-P265GH"\n')),
        (FINE, ("weldment.toml", 'makes = "block"\n')),
    ),
    *rows(
        "lens-joint.flange-of-its-joint",
        "lens",
        FLANGED,
        (SILENT, ("lens.toml", 'flange_thickness = "45 mm"\n')),
        (ASKED, ("flange.toml", 'thickness = "45 mm"\n')),
        (FINE, ("bolts.toml", 'bolted_to = "flange"\n')),
        (SILENT, ("flange.toml", 'of = "pipe"\n'), ("bolts.toml", 'bolted_to = "flange"\n')),
    ),
    *rows(
        "pipe.end-moment-by-weight",
        "pipe",
        {**PIPE_MOMENT, "speclint.toml": WITH_METALS},
        (SILENT, ("pipe.toml", 'ends_at.moment = "90 N·m"\n')),
        (SILENT, ("pipe.toml", 'length = "4 m"\n')),
    ),
    *rows(
        "pipe.end-force-by-weight",
        "pipe",
        {**PIPE_ENDS, "speclint.toml": WITH_METALS},
        (SILENT, ("pipe.toml", 'starts_at.force = "218 N"\nends_at.force = "2 kN"\n')),
        (FINE, ("pipe.toml", 'ends_at.force = "2 kN"\n')),
        (SILENT, ("pipe.toml", 'length = "4 m"\n')),
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
