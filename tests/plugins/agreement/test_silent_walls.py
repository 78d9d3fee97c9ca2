"""Walls, plates and blanks of a block where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.agreement import (
    test_blanks as blanks,
    test_dividing_walls as dividing_walls,
    test_walls as walls,
    test_welds as welds,
)
from tests.plugins.agreement.silent import ASKED, FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.agreement.test_ends import of_one_end
from tests.plugins.agreement.test_heating import FILES as HEATED
from tests.plugins.agreement.test_panels import FILES as PANELS
from tests.plugins.agreement.test_partitions import FILES as PARTITIONS

_WALLS = {"block.toml": walls.BLOCK, "weldment.toml": walls.WELDMENT}
#: The plate of the wall beside the chest says that it meets steam.
_STEAMED = {
    **_WALLS,
    "weldment.toml": walls.WELDMENT.replace("[plates.chest]\n", "[plates.chest]\nmeets_steam = true\n"),
}
#: A panel of 200 by 400 mm with ribs as far apart as it is wide, along its longer side.
_RIBBED = {
    "weldment.toml": 'kind = "weldment"\n[walls.side]\nshort = "200 mm"\nlong = "400 mm"\nribbed = true\n'
    'ribs.spacing = "200 mm"\nribs.span = "400 mm"',
}

ROWS: list[Row] = [
    *rows(
        "blank.faces-of-part",
        "casting",
        blanks.FILES,
        (SILENT, ("casting.toml", 'dimension = "578 mm"\n')),
        (ASKED, ("casting.toml", 'of_key = "outside_diameter"\n')),
        (ASKED, ("casting.toml", 'becomes = "liner"\n')),
        (ASKED, ("liner.toml", 'outside_diameter = "578 mm s6"\n')),
    ),
    *rows(
        "blank.faces-of-part",
        "weldment",
        blanks.FILES,
        (SILENT, ("weldment.toml", 'dimension = "350 mm"\n')),
        (SILENT, ("weldment.toml", 'of_key = "bores.main.axis_from_frame"\n')),
        (ASKED, ("weldment.toml", 'makes = "block"\n')),
    ),
    *rows(
        "blank.of-its-part",
        "casting",
        blanks.FILES,
        (SILENT, ("casting.toml", 'material = "grey-iron-300-stress-relieved"\n')),
        (ASKED, ("liner.toml", 'material = "grey-iron-300-stress-relieved"\n')),
        (ASKED, ("casting.toml", 'becomes = "liner"\n')),
    ),
    *rows(
        "block.division-of-plate",
        "block",
        dividing_walls.walled(),
        (SILENT, ("block.toml", 'thickness = "25 mm"\n')),
        (SILENT, ("block.toml", 'thickness = "25 mm"\nplate = "chest"\n')),
        (SILENT, ("weldment.toml", 'makes = "block"\n')),
    ),
    *rows(
        "block.metal-of-plates",
        "weldment",
        dividing_walls.walled(),
        (SILENT, ("block.toml", 'material = "plate-P355GH"\n')),
        (SILENT, ("weldment.toml", 'makes = "block"\n')),
    ),
    *rows(
        "block.wall-of-plate",
        "block",
        _WALLS,
        (SILENT, ("weldment.toml", 'makes = "block"\n')),
        (FINE, ("block.toml", 'wall = "38 mm"\n')),
        (FINE, ("block.toml", 'plate = "barrel"\n')),
        (FINE, ("block.toml", 'wall = "22 mm"\n')),
        (SILENT, ("block.toml", 'wall = "38 mm"\n'), ("block.toml", 'wall = "22 mm"\n')),
        (ASKED, ("weldment.toml", 'thickness = "40 mm +1/-0.5"\n')),
        (ASKED, ("weldment.toml", 'thickness = "22 mm"\n')),
    ),
    *rows(
        "opening.plate-of-wall",
        "weldment",
        _WALLS,
        (FINE, ("block.toml", 'plate = "chest", ')),
        (FINE, ("block.toml", ', flat_wall = "side"')),
        (FINE, ("weldment.toml", 'flat_wall = "apron"\n')),
        (FINE, ("weldment.toml", 'makes = "block"\n')),
        (ASKED, ("weldment.toml", 'plate = "chest"\none_side = "live steam"\n')),
    ),
    *rows(
        "plate.steam-by-wall",
        "weldment",
        _STEAMED,
        (SILENT, ("weldment.toml", "meets_steam = true\n")),
        (SILENT, ("weldment.toml", 'one_side = "live steam"\n')),
        (SILENT, ("weldment.toml", 'plate = "chest"\none_side = "live steam"\n')),
    ),
    *rows(
        "weld.pressure-by-wall",
        "weldment",
        _WALLS,
        (SILENT, ("weldment.toml", "on_pressure = true\n")),
        (SILENT, ("weldment.toml", 'wall = "side"\n')),
        (SILENT, ("weldment.toml", 'one_side = "live steam"\n')),
    ),
    *rows(
        "block.heated-once",
        "block",
        of_one_end(),
        (SILENT, ("seat.toml", 'block_heated_to = "120 °C"\n')),
        (SILENT, ("lower.toml", 'block_heated_to = "120 °C"\n')),
        (SILENT, ("lower.toml", 'pressed_into = "block"\n')),
    ),
    *rows(
        "block.heated-once",
        "block",
        HEATED,
        (FINE, ("liner.toml", 'block_heated_to = "160 °C"\n')),
        (FINE, ("weldment.toml", 'treatment.temperature = "580 °C"\n')),
        (FINE, ("block.toml", 'heated_to = "160 °C"\n'), ("liner.toml", 'block_heated_to = "160 °C"\n')),
    ),
    *rows(
        "partition.within-passage",
        "wall",
        PARTITIONS,
        (SILENT, ("wall.toml", 'area = "0.38 m²"\n')),
        (FINE, ("belt.toml", 'perimeter = "0.8 m"\n')),
        (FINE, ("chest.toml", 'perimeter = "0.95 m"\n')),
        (SILENT, ("belt.toml", 'perimeter = "0.8 m"\n'), ("chest.toml", 'length = "0.4 m"\n')),
        (ASKED, ("wall.toml", 'live_side = "chest"\n')),
    ),
    *rows(
        "wall.drawn-once",
        "block",
        dividing_walls.walled(),
        (FINE, ("block.toml", 'thickness = "25 mm"\n')),
        (FINE, ("block.toml", 'plate = "chest"\n')),
        (FINE, ("block.toml", 'one_side = "exhaust steam"\n')),
        (FINE, ("block.toml", 'one_side = "exhaust steam"\nother_side = "live steam"\n')),
        (FINE, ("block.toml", 'wall = "between"\n')),
        (ASKED, ("weldment.toml", 'makes = "block"\n')),
    ),
    *rows(
        "wall.drawn-once",
        "partition",
        dividing_walls.walled(),
        (FINE, ("partition.toml", 'build = "two walls"\n')),
        (FINE, ("partition.toml", 'thickness = "16 mm"\n')),
        (FINE, ("partition.toml", 'gap = "12 mm"\n')),
        (FINE, ("partition.toml", 'material = "plate-P355GH"\n')),
        (FINE, ("partition.toml", 'short_side = "180 mm"\n')),
        (FINE, ("partition.toml", 'long_side = "420 mm"\n')),
        (FINE, ("partition.toml", 'edges = "clamped"\n')),
        (FINE, ("weldment.toml", 'width = "12 mm"\n')),
        (ASKED, ("weldment.toml", 'thickness = "16 mm"\n')),
        (FINE, ("weldment.toml", 'one_passage = "chest"\n')),
        (FINE, ("weldment.toml", 'other_passage = "belt"\n')),
        (ASKED, ("chest.toml", 'carries = "live steam"\n')),
    ),
    *rows(
        "wall.sides-by-passage",
        "weldment",
        dividing_walls.walled(),
        (FINE, ("weldment.toml", 'one_passage = "chest"\n')),
        (FINE, ("weldment.toml", 'other_passage = "belt"\n')),
        (FINE, ("weldment.toml", 'one_passage = "port"\n')),
        (FINE, ("weldment.toml", 'makes = "block"\n')),
        (
            SILENT,
            ("weldment.toml", 'one_passage = "chest"\n'),
            ("weldment.toml", 'other_passage = "belt"\n'),
            ("weldment.toml", 'one_passage = "port"\n'),
        ),
    ),
    *rows(
        "wall.ribs-of-its-panel",
        "weldment",
        _RIBBED,
        (SILENT, ("weldment.toml", 'short = "200 mm"\n')),
        (SILENT, ("weldment.toml", 'long = "400 mm"\n')),
        (SILENT, ("weldment.toml", 'ribs.spacing = "200 mm"\n')),
        (SILENT, ("weldment.toml", 'ribs.span = "400 mm"')),
    ),
    *rows(
        "weldment.same-as-block",
        "block",
        {"block.toml": welds.BLOCK, "weldment.toml": welds.WELDMENT},
        (FINE, ("block.toml", 'carbon_equivalent = "0.44 %"\n')),
        (FINE, ("block.toml", 'preheat = "110 °C"\n')),
        (FINE, ("block.toml", 'heat_treatment = "stress relieved"\n')),
        (FINE, ("weldment.toml", 'preheat = "110 °C"\n')),
        (FINE, ("weldment.toml", 'heat_treatment = "stress relieved"\n')),
        (FINE, ("weldment.toml", '[plates.shell]\ncarbon_equivalent = "0.44 %"\n')),
        (FINE, ("weldment.toml", 'temperature = "570 °C"\n')),
        (SILENT, ("block.toml", welds.BLOCK.partition("[welding]\n")[2])),
        (SILENT, ("weldment.toml", 'makes = "block"\n')),
    ),
    *rows(
        "wall.panel-of-its-passage",
        "weldment",
        PANELS,
        (SILENT, ("weldment.toml", 'short = "108 mm"\n')),
        (SILENT, ("weldment.toml", 'one_passage = "port"\n')),
        (ASKED, ("weldment.toml", 'one_depth = "50 mm"\n')),
        (ASKED, ("port.toml", 'area = "18000 mm²"\n')),
        (ASKED, ("port.toml", 'length = "400 mm"\n')),
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
