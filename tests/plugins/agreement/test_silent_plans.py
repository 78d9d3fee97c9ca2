"""Plans of access and lifting, lagging, oil and the release where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.agreement.silent import ASKED, FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.agreement.test_access import FILES as ACCESS
from tests.plugins.agreement.test_laggings import FILES as LAGGED
from tests.plugins.agreement.test_lifted_parts import FILES as LIFTED
from tests.plugins.agreement.test_oil import FILES as OILED
from tests.plugins.agreement.test_vessels import FILES as VESSEL

#: Flat lagging on a cover, without the pipe, whose metal is of a table of its own.
_FLAT = {name: LAGGED[name] for name in ("duty.toml", "cover.toml", "flat.toml")}

ROWS: list[Row] = [
    *rows(
        "access.chambers-of-block",
        "plan",
        ACCESS,
        (SILENT, ("plan.toml", "chambers_complete = true\n")),
        (SILENT, ("chest.toml", 'place = "chest"\n')),  # a passage of no place is no chamber
        (SILENT, ("chest.toml", 'in_block = "block"\n')),
        (ASKED, ("plan.toml", 'serves = "block"\n')),
    ),
    *rows(
        "access.of-its-joints",
        "plan",
        ACCESS,
        (FINE, ("plan.toml", 'across_flats = "36 mm"\n')),
        (FINE, ("studs.toml", 'nut.across_flats = "36 mm"\n')),
        (FINE, ("plan.toml", '[withdrawals.studs]\nsize = "118 mm"\n')),
        (FINE, ("plan.toml", 'size = "118 mm"\n')),
        (FINE, ("plan.toml", 'size = "926 mm"\n')),
        (ASKED, ("plan.toml", 'serves = "block"\n')),
    ),
    *rows(
        "lagging.of-its-part",
        "flat",
        _FLAT,
        (FINE, ("flat.toml", 'height = "0.7 m"\n')),
        (FINE, ("flat.toml", 'area = "0.4 m²"\n')),
        (ASKED, ("flat.toml", 'form = "flat"\n')),
        (ASKED, ("flat.toml", 'covers = "cover"\n')),
        (ASKED, ("cover.toml", 'outside_diameter = "750 mm"\n')),
    ),
    *rows(
        "lifting.parts-of-its-block",
        "plan",
        LIFTED,
        (SILENT, ("plan.toml", 'lifts = "one"\n')),
        (FINE, ("weldment.toml", 'makes = "one"')),
        (FINE, ("liner.toml", 'housed_in = "one"')),
        (FINE, ("cover.toml", 'closes = "one"')),
        (FINE, ("box.toml", 'mounted_on = "one"')),
    ),
    *rows(
        "lubrication.one-feed",
        "block",
        OILED,
        (FINE, ("ring.toml", 'lubrication.lubricant = "cylinder oil"\n')),
        (FINE, ("ring.toml", 'lubrication.viscosity_class = "ISO VG 1000"\n')),
        (ASKED, ("liner.toml", 'lubrication.lubricant = "cylinder oil"\n')),
        (ASKED, ("liner.toml", 'lubrication.viscosity_class = "ISO VG 1000"\n')),
        (FINE, ("spindle.toml", 'lubrication.feed = "mechanical lubricator, feed 3"\n')),
        (SILENT, ("ring.toml", 'runs_in = "liner"\n')),
    ),
    *rows(
        "release.one-vessel",
        "cover",
        VESSEL,
        (SILENT, ("cover.toml", 'design_pressure = "17 bar gauge"\n')),
        (SILENT, ("block.toml", 'design_pressure = "17 bar gauge"\n')),
        (SILENT, ("cover.toml", 'closes = "block"\n')),
    ),
    *rows(
        "release.one-vessel",
        "weldment",
        VESSEL,
        (FINE, ("weldment.toml", 'design_pressure = "17 bar gauge"\n')),
        (FINE, ("weldment.toml", 'design_temperature = "400 °C"\n')),
        (FINE, ("block.toml", 'design_temperature = "400 °C"\n')),
        (SILENT, ("weldment.toml", 'makes = "block"\n')),
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
