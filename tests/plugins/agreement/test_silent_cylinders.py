"""Covers, liners and glands of a cylinder where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, changed
from tests.plugins.agreement import test_covers as covers, test_cylinders as cylinders
from tests.plugins.agreement.silent import ASKED, FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.liners.bench import bench as cylinder

_CYLINDER = {**cylinder(), **cylinders.DRAWN}
_SPIGOT = {
    **covers.FILES,
    "cover.toml": f'{covers.COVER}spigot_diameter = "499.5 mm"\nspigot_enters = "bore of the liner"\n',
}
_ENDS = ("block.toml", covers.BLOCK[covers.BLOCK.index("[ends.front]") :])
_BORE = ("block.toml", '[bores.main]\ndiameter = "560 mm"\n')
#: A bore that takes no liner, and a cover bored as it is.
_UNLINED = {
    **{name: text for name, text in covers.FILES.items() if name != "liner.toml"},
    "block.toml": changed(covers.BLOCK, ('diameter = "560 mm"\n', 'diameter = "560 mm"\nlined = false\n')),
    "cover.toml": changed(covers.COVER, ('bore = "500 mm"', 'bore = "560 mm"')),
}

ROWS: list[Row] = [
    *rows(
        "cover.hole-for-box",
        "cover",
        covers.FILES,
        (SILENT, ("cover.toml", 'central_hole = "150 mm"\n')),
        (SILENT, ("box.toml", 'in_cover = "cover"\n')),
        (FINE, ("box.toml", 'seals = "rod"\n')),
        (FINE, ("box.toml", 'outside_diameter = "149 mm"\n')),
        (SILENT, ("box.toml", 'outside_diameter = "149 mm"\n'), ("box.toml", 'seals = "rod"\n')),
        (ASKED, ("box.toml", 'outside_diameter = "149 mm"\n'), ("rod.toml", 'diameter = "90 mm"\n')),
    ),
    *rows(
        "cover.of-its-end",
        "cover",
        covers.FILES,
        (FINE, ("cover.toml", '\nend = "back"')),
        (FINE, ("cover.toml", 'bore = "500 mm"\n')),
        (FINE, _BORE),
        (SILENT, _ENDS),
        (ASKED, ("liner.toml", 'bore = "500 mm"\n')),
        (ASKED, ("liner.toml", 'in_bore = "main"\n')),
        (ASKED, ("cover.toml", 'closes = "block"\n')),
    ),
    *rows(
        "cover.spigot-of-its-opening",
        "cover",
        _SPIGOT,
        (SILENT, ("cover.toml", 'spigot_diameter = "499.5 mm"\n')),
        (SILENT, ("cover.toml", 'spigot_enters = "bore of the liner"\n')),
        (SILENT, _ENDS),
        (ASKED, ("cover.toml", 'closes = "block"\n')),
    ),
    *rows(
        "gland.of-the-rod",
        "gland",
        covers.FILES,
        (FINE, ("gland.toml", 'rod = "90 mm"\n')),
        (FINE, ("gland.toml", 'box = "130 mm"\n')),
        (FINE, ("gland.toml", 'packing = "soft"\n')),
        (FINE, ("box.toml", 'seals = "rod"\n')),
        (FINE, ("box.toml", '\nbore = "130 mm"')),
        (FINE, ("box.toml", 'packing = "braided graphite"\n')),
        (SILENT, ("box.toml", 'in_cover = "cover"\n')),
        (ASKED, ("rod.toml", 'diameter = "90 mm"\n')),
    ),
    *rows(
        "cylinder.tested-together",
        "block",
        covers.FILES,
        (SILENT, ("block.toml", 'test_pressure = "29 bar gauge"\n')),
        (FINE, ("block.toml", 'duty = "duty"\n')),
        (FINE, ("duty.toml", '[cases.test]\ncylinder_pressure = "29 bar gauge"\n')),
        (FINE, ("duty.toml", 'cylinder_pressure = "29 bar gauge"\n')),
        (FINE, ("cover.toml", 'test_pressure = "29 bar gauge"\n')),
    ),
    *rows(
        "cylinder.stroke-fits",
        "block",
        _CYLINDER,
        (SILENT, ("liner.toml", 'housed_in = "block"\n')),
        (SILENT, ("piston.toml", 'runs_in = "liner"\n')),
        (SILENT, ("piston.toml", 'length = "149 mm"\n')),
        (ASKED, ("liner.toml", 'in_bore = "main"\n')),
        (SILENT, ("block.toml", 'side = "front"\n')),
        (SILENT, ("block.toml", 'side = "back"\n')),
    ),
    *rows(
        "cover.of-its-end",
        "cover",
        _UNLINED,
        (FINE, ("cover.toml", 'bore = "560 mm"\n')),
        (ASKED, ("block.toml", 'diameter = "560 mm"\n')),
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
