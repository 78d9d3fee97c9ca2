"""Covers, liners and glands of a cylinder where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, changed
from tests.plugins.agreement import (
    test_covers as covers,
    test_cylinders as cylinders,
    test_fittings as fittings,
    test_liner_ports as liner_ports,
    test_volumes_and_plays as volumes,
)
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
#: From the collar's seat 860 − 35 = 825 mm between the faces; from the fixed point 700 mm forward, 125 mm behind it.
_FACED = {
    **_CYLINDER,
    "block.toml": changed(_CYLINDER["block.toml"], ('face_at = "-100 mm"', 'face_at = "-125 mm"')),
}
_SEATED = {
    **_FACED,
    "block.toml": changed(_FACED["block.toml"], ("[bores.main]\n", '[bores.main]\nseat_at = "735 mm"\n')),
}
_MATCHED = {
    **_CYLINDER,
    "block.toml": changed(_CYLINDER["block.toml"], ("[ports.front]\n", '[ports.front]\nof_end = "front"\n')),
}
#: 9000 cm³ of passages: 200 cm² by 450 mm.
_PASSAGE = {**_MATCHED, "port.toml": volumes.PORT.format(name="port", length="450 mm")}
_STOPPED = {
    **_CYLINDER,
    "block.toml": changed(_CYLINDER["block.toml"], ('length = "902 mm"', 'length = "860 mm"')),
    "liner.toml": changed(_CYLINDER["liner.toml"], ('"shoulder"', '"cover"')),
}
#: A port at either end, both half open at the dead centre, and rings 40 mm behind either face of the piston.
_OPEN = {
    **_CYLINDER,
    "block.toml": _CYLINDER["block.toml"] + liner_ports.OF_BLOCK,
    "liner.toml": changed(_CYLINDER["liner.toml"], ("[lands.front]\n", liner_ports.BACK)),
    "piston.toml": cylinders.PISTON + 'crown_chamfer = "17 mm"\n',
    "behind.toml": liner_ports.BEHIND,
}

_FACE = {
    **covers.FILES,
    "block.toml": changed(covers.BLOCK, ("[ends.back]\n", '[ends.back]\nface_diameter = "800 mm"\n')),
    "cover.toml": f'{covers.COVER}outside_diameter = "800 mm"\n',
}

ROWS: list[Row] = [
    *rows(
        "block.size-by-its-faces",
        "block",
        {"block.toml": cylinders.SIZED},
        (SILENT, ("block.toml", 'entering_width = "760 mm"\nentering_height = "830 mm"\n')),
        (FINE, ("block.toml", 'entering_height = "830 mm"\n')),
        (FINE, ("block.toml", 'face_diameter = "740 mm"\n')),
        (SILENT, ("block.toml", 'face_from_seat = "860 mm"\n')),
        (SILENT, ("block.toml", 'side = "front"\n')),
    ),
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
        "cover.of-its-face",
        "cover",
        _FACE,
        (SILENT, ("cover.toml", 'outside_diameter = "800 mm"\n')),
        (SILENT, ("block.toml", 'face_diameter = "800 mm"\n')),
        (SILENT, ("block.toml", _FACE["block.toml"][_FACE["block.toml"].index("[ends.front]") :])),
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
    *rows(
        "cylinder.faces-agree",
        "block",
        _FACED,
        (SILENT, ("block.toml", 'face_at = "700 mm"\n')),
        (SILENT, ("block.toml", 'face_at = "-125 mm"\n')),
        (SILENT, ("block.toml", 'face_from_seat = "35 mm"\n')),
        (SILENT, ("block.toml", 'face_from_seat = "860 mm"\n')),
        (SILENT, ("block.toml", 'side = "front"\n')),
    ),
    *rows(
        "cylinder.faces-agree",
        "block",
        _SEATED,
        (FINE, ("block.toml", 'face_at = "700 mm"\n')),
        (FINE, ("block.toml", 'face_at = "-125 mm"\n')),
        (SILENT, ("block.toml", 'face_at = "700 mm"\n'), ("block.toml", 'face_at = "-125 mm"\n')),
        (FINE, ("block.toml", 'face_from_seat = "35 mm"\n')),
        (FINE, ("block.toml", 'seat_at = "735 mm"\n')),
    ),
    *rows(
        "cylinder.volume-of-passages",
        "block",
        _PASSAGE,
        (
            SILENT,
            ("block.toml", 'face_from_seat = "35 mm"\nclearance = "8 mm"\npassage_volume = "9000 cm³"\n'),
        ),
        (SILENT, ("port.toml", 'area = "20000 mm²"\n')),
        (SILENT, ("port.toml", 'length = "450 mm"\n')),
        (SILENT, ("port.toml", 'of_end = "front"\n')),
        (SILENT, ("port.toml", 'place = "port"\n')),
        (SILENT, ("port.toml", 'in_block = "block"\n')),
        (FINE, ("block.toml", 'of_end = "front"\n')),
    ),
    *rows(
        "liner.stop-is-the-cover",
        "liner",
        _STOPPED,
        (SILENT, ("block.toml", 'length = "860 mm"\n')),
        (SILENT, ("block.toml", 'face_from_seat = "860 mm"\n')),
        (SILENT, ("block.toml", 'side = "back"\n')),
        (SILENT, ("liner.toml", 'free_end_stop = "cover"\n')),
        (SILENT, ("liner.toml", 'in_bore = "main"\n')),
        (SILENT, ("liner.toml", 'housed_in = "block"\n')),
        (SILENT, ("liner.toml", 'end = "front"\n')),
    ),
    *rows(
        "liner.last-bore-in-order",
        "liner",
        _CYLINDER,
        (ASKED, ("liner.toml", 'last_bore = "509 mm"\n')),
        (ASKED, ("liner.toml", '\nbore = "500 mm"')),
        (FINE, ("liner.toml", 'reboring_step = "3 mm"\n')),
        (FINE, ("liner.toml", 'pistons_for = ["503 mm", "506 mm", "509 mm"]\n')),
    ),
    *rows(
        "liner.collar-enters",
        "liner",
        _CYLINDER,
        (SILENT, ("liner.toml", 'diameter = "599 mm"\n')),
        (SILENT, ("block.toml", 'recess_diameter = "600 mm"\n')),
        (SILENT, ("liner.toml", 'in_bore = "main"\n')),
        (SILENT, ("liner.toml", 'housed_in = "block"\n')),
    ),
    *rows(
        "liner.port-of-its-bore",
        "liner",
        _MATCHED,
        (FINE, ("block.toml", 'of_end = "front"\n')),  # the width is still that of the block's port
        (FINE, ("block.toml", 'of_bore = "main"\nside = "front"\n')),
        (SILENT, ("liner.toml", 'matches = "front"\n')),
        (FINE, ("liner.toml", 'in_bore = "main"\n')),
        (SILENT, ("liner.toml", 'housed_in = "block"\n')),
    ),
    *rows(
        "liner.lands-on-metal",
        "liner",
        _CYLINDER,
        (FINE, ("liner.toml", 'height = "40 mm"\n')),
        (FINE, ("liner.toml", 'from_collar = "60 mm"\n')),
        (FINE, ("liner.toml", 'fit_length = "800 mm"\n')),
        (FINE, ("liner.toml", 'ends = "35 mm"\n')),
        (FINE, ("liner.toml", 'starts = "120 mm"\n')),
        (ASKED, ("liner.toml", 'in_bore = "main"\n')),
        (ASKED, ("liner.toml", 'housed_in = "block"\n')),
    ),
    *rows(
        "liner.port-open-at-dead-centre",
        "liner",
        _OPEN,
        (FINE, ("liner.toml", 'from_collar = "60 mm"\n')),
        (FINE, ("liner.toml", 'from_collar = "835 mm"\n')),
        (SILENT, ("liner.toml", 'from_collar = "60 mm"\n'), ("liner.toml", 'from_collar = "835 mm"\n')),
        (SILENT, ("block.toml", 'face_from_seat = "35 mm"\n')),
        (SILENT, ("piston.toml", 'runs_in = "liner"\n')),
    ),
    *rows(
        "liner.rings-over-port",
        "liner",
        _OPEN,
        (FINE, ("liner.toml", 'from_collar = "60 mm"\n')),
        (FINE, ("liner.toml", 'from_collar = "835 mm"\n')),
        (SILENT, ("liner.toml", 'from_collar = "60 mm"\n'), ("liner.toml", 'from_collar = "835 mm"\n')),
        (SILENT, ("block.toml", 'face_from_seat = "35 mm"\n')),
    ),
    *rows(
        "fitting.round-its-seat",
        "block",
        fittings.BLOCK,
        (FINE, ("block.toml", 'across_flats = "65 mm"\n')),
        (FINE, ("block.toml", 'relief_seat_diameter = "50 mm"\n')),
        (
            SILENT,
            ("block.toml", 'across_flats = "65 mm"\n'),
            ("block.toml", 'relief_seat_diameter = "40 mm"\n'),
        ),
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
