"""Valves, their seats, cams and springs where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.agreement.silent import ASKED, FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.agreement.test_ends import of_one_end
from tests.plugins.agreement.test_seats import seated
from tests.plugins.springs.test_room import nest

ROWS: list[Row] = [
    *rows(
        "cam.bore-of-shaft",
        "cam",
        of_one_end(),
        (SILENT, ("cam.toml", 'turns_on = "shaft"\n')),
        (SILENT, ("cam.toml", 'bore = "60 mm H7"\n')),
        (SILENT, ("shaft.toml", 'diameter = "60 mm"\n')),
    ),
    *rows(
        "cam.under-its-tappet",
        "cam",
        of_one_end(),
        (SILENT, ("cam.toml", 'lifts = "tappet"\n')),
        (SILENT, ("cam.toml", 'width = "25 mm"\n')),
        (SILENT, ("tappet.toml", 'face_width = "30 mm"\n')),
    ),
    *rows(
        "cambox.valves-of-its-end",
        "box",
        of_one_end(),
        (SILENT, ("box.toml", 'mounted_on = "block"\n')),
        (SILENT, ("box.toml", 'of_end = "front"\n')),
        (SILENT, ("box.toml", "tappets = 1\n")),
    ),
    *rows(
        "seat.as-long-as-bore",
        "lower",
        seated(),
        (SILENT, ("lower.toml", '\nlength = "30 mm"')),
        (SILENT, ("block.toml", 'depth = "30 mm"\nserves = "inlet"\nend = "front"\nbeat = "lower"\n')),
    ),
    *rows(
        "valve.meets-seat",
        "valve",
        seated(),
        (FINE, ("seat.toml", 'seat_width = "3 mm"\n')),
        (SILENT, ("seat.toml", 'seat_width = "3 mm"\n'), ("lower.toml", 'seat_width = "3 mm"\n')),
    ),
    *rows(
        "valve.angle-of-seat",
        "valve",
        seated(),
        (FINE, ("seat.toml", 'seat_angle = "0 °"\n')),
        (SILENT, ("seat.toml", 'seat_angle = "0 °"\n'), ("lower.toml", 'seat_angle = "0 °"\n')),
    ),
    *rows(
        "seat.face-in-ring",
        "seat",
        seated(),
        (SILENT, ("seat.toml", 'seat_width = "3 mm"\n')),
        (SILENT, ("seat.toml", 'seat_angle = "0 °"\n')),
        (SILENT, ("seat.toml", 'seat_diameter = "150 mm"\n')),
        (ASKED, ("seat.toml", '\nbore = "130 mm"')),
        (ASKED, ("seat.toml", 'outside_diameter = "200.2 mm"\n')),
    ),
    *rows(
        "valve.seats-apart",
        "valve",
        seated(),
        (SILENT, ("block.toml", 'at = "110 mm"\n')),
        (SILENT, ("block.toml", 'at = "0 mm"\n')),
        (SILENT, ("valve.toml", 'beat_distance = "110 mm"\n')),
    ),
    *rows(
        "spring.nest-agrees",
        "inner",
        nest(),
        (SILENT, ("inner.toml", 'closes = "valve"\n')),
        (SILENT, ("spring.toml", 'closes = "valve"\n')),
        (SILENT, ("inner.toml", 'nested_in = "spring"\n')),
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
