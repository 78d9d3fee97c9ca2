"""Valves, their spindles, cages and seats where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.agreement import (
    test_barred as barred,
    test_ends as ends,
    test_lengths as lengths,
    test_lids as lids,
    test_nuts as nuts,
    test_ports as ports,
    test_seat_bores as seat_bores,
    test_seats as seats,
)
from tests.plugins.agreement.silent import ASKED, FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.agreement.test_ends import of_one_end
from tests.plugins.agreement.test_gear import trained
from tests.plugins.agreement.test_retention import BOXED, caged
from tests.plugins.agreement.test_seats import seated

_PORTED = ports.ported()
_CUT = {
    "block.toml": 'kind = "cylinder-block"\n[seat_bores.upper]\n'
    'plate = "thin"\nflat_wall = "pocket"\ndepth = "30 mm"\n',
    "weldment.toml": seat_bores.WELDMENT,
}

ROWS: list[Row] = [
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
        (FINE, ("valve.toml", 'beat_distance = "110 mm"\n')),
    ),
    *rows(
        "valve.of-one-end",
        "valve",
        of_one_end(),
        (FINE, ("valve.toml", 'serves = "inlet"\n')),
        (FINE, ("valve.toml", 'cylinder_bore = "main"\n')),
        (FINE, ("block.toml", f'beat = "upper"\n{ends.PLACED}')),
        (FINE, ("block.toml", f'beat = "lower"\n{ends.PLACED}')),
        (FINE, ("box.toml", 'of_end = "front"\n')),
        (FINE, ("block.toml", 'of_bore = "main"\nside = "front"\n')),
    ),
    *rows(
        "spindle.steam-by-place",
        "spindle",
        of_one_end(),
        (FINE, ("spindle.toml", 'leaves = "supply"\n')),
        (SILENT, ("spindle.toml", 'leaves = "supply"\n'), ("spindle.toml", 'seal_diameter = "20 mm"\n')),
        (SILENT, ("spindle.toml", 'leaves = "supply"\n'), ("spindle.toml", '\ndiameter = "22 mm"')),
    ),
    *rows(
        "retention.has-a-part",
        "valve",
        caged(),
        (SILENT, ("valve.toml", 'retained = "cage"\n')),
        (SILENT, ("cage.toml", 'surrounds = "valve"\n')),  # a draft
    ),
    *rows(
        "valve.opening-of-cage",
        "valve",
        caged(),
        (SILENT, ("valve.toml", 'cage_opening = "12 mm"\n')),
        (SILENT, ("cage.toml", 'opening = "12 mm"\n')),
        (SILENT, ("cage.toml", 'surrounds = "valve"\n')),
    ),
    *rows(
        "valve.room-by-lift",
        "valve",
        caged(),
        (SILENT, ("valve.toml", 'clearance_open = "5 mm"\n')),
        (SILENT, ("valve.toml", '\nlift = "20 mm"')),
        (SILENT, ("valve.toml", '\nheight = "120 mm"')),
        (SILENT, ("cage.toml", 'end_at = "145 mm"\n')),
        (SILENT, ("cage.toml", 'surrounds = "valve"\n')),
    ),
    *rows(
        "valve.room-to-piston",
        "valve",
        of_one_end(),
        (SILENT, ("valve.toml", "meets_piston = false\n")),
    ),
    *rows(
        "valve.supply-by-place",
        "valve",
        of_one_end(),
        (SILENT, ("valve.toml", 'supply_acts = "beyond the beats"\n')),
    ),
    *rows(
        "valve.throat-of-seat",
        "valve",
        trained(),
        (FINE, ("valve.toml", 'throat = "140 mm"\n')),
        (FINE, ("valve.toml", 'throat = "130 mm"\n')),
        (FINE, ("valve.toml", 'throat = "140 mm"\nblocked_area = "2000 mm²"\n')),
        (FINE, ("spindle.toml", '\ndiameter = "22 mm"')),
        (FINE, ("spindle.toml", 'moves = "valve"\n')),
        (FINE, ("seat.toml", '\nbore = "170 mm"')),
    ),
    *rows(
        "port.one-area",
        "valve",
        _PORTED,
        (SILENT, ("valve.toml", 'port_area = "20000 mm²"\n')),
        (FINE, ("passage.toml", 'area = "20000 mm²"\n')),
        (FINE, ("passage.toml", 'valve = "valve"\n')),
        (
            SILENT,
            ("passage.toml", 'valve = "valve"\n'),
            ("block.toml", 'end = "front"\ndiameter = "200 mm"\n'),
        ),
    ),
    *rows(
        "seat.chamber-by-valve",
        "block",
        seated(),
        (SILENT, ("block.toml", 'chamber = "live steam"\n')),
        (SILENT, ("seat.toml", 'in_bore = "upper"\n')),
        (SILENT, ("seat.toml", 'pressed_into = "block"\n')),
        (SILENT, ("valve.toml", 'serves = "inlet"\n'), ("block.toml", seats.BORES[0].partition("\n")[2])),
    ),
    *rows(
        "seat-bore.within-its-plate",
        "block",
        _CUT,
        (SILENT, ("block.toml", 'depth = "30 mm"\n')),
        (FINE, ("block.toml", 'plate = "thin"\n')),
        (FINE, ("block.toml", 'flat_wall = "pocket"\n')),
        (SILENT, ("block.toml", 'plate = "thin"\n'), ("block.toml", 'flat_wall = "pocket"\n')),
        (SILENT, ("block.toml", 'plate = "thin"\n'), ("weldment.toml", 'makes = "block"\n')),
        (ASKED, ("weldment.toml", 'thickness = "30 mm"\n')),
        (ASKED, ("weldment.toml", 'plate = "thick"\n')),
    ),
    *rows(
        "spindle.free-length",
        "spindle",
        lengths.SPINDLE,
        (SILENT, ("spindle.toml", 'free_length = "200 mm"\n')),
        (SILENT, ("spindle.toml", 'heated_length = "330 mm"\n')),
        (SILENT, ("spindle.toml", 'guide_from_seat = "60 mm"\n')),
        (SILENT, ("spindle.toml", 'guide_length = "100 mm"\n')),
    ),
    *rows(
        "cage.opening-of-its-bars",
        "cage",
        barred.CAGED,
        (FINE, ("cage.toml", 'opening = "25 mm"\n')),
        (FINE, ("cage.toml", 'surrounds = "valve"\n')),
        (FINE, ("cage.toml", 'outside_diameter = "222 mm"\n')),
        (SILENT, ("cage.toml", "bars = 12\n")),
        (ASKED, ("cage.toml", 'bar = "30 mm"\n')),
        (ASKED, ("valve.toml", 'outside_diameter = "200 mm"\n')),
    ),
    *rows(
        "liner.port-divided",
        "liner",
        barred.PORTED,
        (FINE, ("liner.toml", 'opening = "60 mm"\n')),
        (SILENT, ("liner.toml", 'opening = "60 mm"\n'), ("liner.toml", 'opening = "50 mm"\n')),
        (SILENT, ("liner.toml", 'width = "500 mm"\n'), ("liner.toml", 'opening = "50 mm"\n')),
    ),
    *rows(
        "valve.box-of-its-cage",
        "valve",
        BOXED,
        (SILENT, ("valve.toml", 'box_diameter = "210 mm"\n')),
        (SILENT, ("valve.toml", 'retained = "cage"\n')),
        (SILENT, ("cage.toml", 'outside_diameter = "222 mm"\n')),
        (SILENT, ("cage.toml", 'surrounds = "valve"\n')),
    ),
    *rows(
        "spindle.thread-of-its-nut",
        "spindle",
        nuts.SPINDLE,
        (SILENT, ("spindle.toml", 'valve_end_diameter = "17.9 mm"\n')),
        (SILENT, ("spindle.toml", 'by = "nut"\n')),
        (SILENT, ("spindle.toml", 'thread = "M18x1"\n')),
    ),
    *rows(
        "cover.hole-under-what-bears",
        "lid",
        lids.LOADED,
        (ASKED, ("lid.toml", 'central_hole = "30 mm"\n')),
        (FINE, ("lid.toml", 'across = "50 mm"\n')),
        (SILENT, ("lid.toml", 'across = "50 mm"\n'), ("lid.toml", 'across = "90 mm"\n')),
    ),
    *rows(
        "cover.hole-for-spindle",
        "lid",
        {
            **lids.FILES,
            "spindle.toml": lids.FILES["spindle.toml"] + 'diameter = "22 mm"\nguide_bore = "22.03 mm"\n',
        },
        (FINE, ("spindle.toml", 'diameter = "22 mm"\n')),
        (FINE, ("spindle.toml", 'guide_bore = "22.03 mm"\n')),
    ),
    *rows(
        "cover.hole-for-spindle",
        "lid",
        lids.FILES,
        (ASKED, ("lid.toml", 'central_hole = "30 mm"\n')),
        (SILENT, ("lid.toml", 'over = "valve"\n')),
        (SILENT, ("spindle.toml", 'moves = "valve"\n')),
        (FINE, ("spindle.toml", 'seal_diameter = "20 mm"\n')),
        (FINE, ("spindle.toml", 'gear_end_diameter = "19 mm"\n')),
        (
            SILENT,
            ("spindle.toml", 'seal_diameter = "20 mm"\n'),
            ("spindle.toml", 'gear_end_diameter = "19 mm"\n'),
        ),
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
