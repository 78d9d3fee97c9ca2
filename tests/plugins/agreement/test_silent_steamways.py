"""Pipes, passages and the blast pipe where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.agreement.silent import ASKED, FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.agreement.test_nozzle import with_engine
from tests.plugins.agreement.test_path_blocks import FILES as PATHS
from tests.plugins.agreement.test_pipes import FILES as PIPED

#: A pipe that follows a pipe which ends at another block: the pipes may meet between the two.
_PIPE_AFTER_PIPE = {
    **PATHS,
    "exhaust.toml": 'kind = "steam-pipe"\nfollows = "supply"\nstarts_at.part = "two"',
}

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
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
