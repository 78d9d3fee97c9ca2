"""Pistons, rods, crossheads and their bars, and what they weigh, where a place is silent."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, changed
from tests.plugins.agreement import (
    test_cylinders as cylinders,
    test_drives as drives,
    test_lengths as lengths,
    test_masses as masses,
    test_nuts as nuts,
    test_piston_heat as piston_heat,
)
from tests.plugins.agreement.silent import ASKED, FINE, SILENT, Row, expect_said, named, rows
from tests.plugins.assembly import bench as assembly
from tests.plugins.known_metals import METALS, WITH_METALS
from tests.plugins.liners.bench import bench as cylinder
from tests.plugins.motion import locomotive, train

_CYLINDER = {**cylinder(), **cylinders.DRAWN}
_TRAIN = train.files()
_BARS = train.files("crosshead", ('slipper_width = "240 mm"', 'slipper_width = "190 mm"'))
#: The rod held in its crosshead by a cotter of 22 mm.
_COTTERED = {
    **train.files("crosshead", add=nuts.COTTERED.format("22 mm")),
    "rod.toml": changed(train.ROD, (nuts.FOOT, nuts.SLOTTED)),
}
#: A pin pressed into two bosses of 58 mm, without its span, so that the gap for its bearing is not worked.
_PRESSED = {
    **train.files("crosshead", add='boss_width = "58 mm"\nboss_diameter = "210 mm"\n'),
    "pin.toml": changed(train.PIN, ('span = "170 mm"\n', ""))
    + '[seat]\nlength = "110.0 mm"\nboss = "210 mm"\nboss_material = "known-steel"\n',
}
#: Grooves at 20 and 60 mm; all grooves and lands together are 16 + 20 + 16 + 24 + 20 = 96 mm.
_GROOVED = {
    **_TRAIN,
    "piston.toml": 'kind = "piston"\nid = "piston"\nruns_in = "liner"\nlength = "140 mm"\n'
    '[grooves.front]\nat = "20 mm"\nwidth = "16 mm"\nland = "20 mm"\n'
    '[grooves.second]\nat = "60 mm"\nwidth = "16.0 mm"\nland = "24 mm"\n',
}
#: All that the drive states may wear, at the crosshead pin.
_WORN = {**_CYLINDER, "pin.toml": cylinders.PIN + 'wear.along = "1 mm"\n'}
#: A ring whose free gap of 50 mm presses it on its bore by 0.041 to 0.055 MPa.
_SPRUNG = {
    **{f"{name}.toml": assembly.FILES[f"{name}.toml"] for name in assembly.with_links("ring", "piston")},
    "ring.toml": changed(assembly.RING, ('"0.04 MPa"', '"0.046 MPa"')),
    "metals.toml": METALS,
    "speclint.toml": WITH_METALS,
}
_FORGED = {"metals.toml": METALS + train.FORGING, "speclint.toml": WITH_METALS}
#: 90 mm by 1450 mm of 7850 kg/m³ are 72.4 kg.
_CROSSHEAD = {**_FORGED, "crosshead.toml": masses.CROSSHEAD.format("50 kg")}
_ROD = {**_FORGED, "rod.toml": masses.ROD.format("75 kg")}
#: 180 mm by 200 mm are 40 kg.
_TURNING = {
    **_FORGED,
    **locomotive.files(
        "axle", ('[turning.pin-left]\nmass = "70 kg"', '[turning.pin-left]\nof = "pin"\nmass = "40 kg"')
    ),
    "pin.toml": masses.PIN,
}

ROWS: list[Row] = [
    *rows(
        "drive.of-the-rod",
        "block",
        _CYLINDER,
        (FINE, ("block.toml", 'rod_diameter = "90 mm"\n')),
        (FINE, ("block.toml", 'rod_length = "1500 mm"\nrod_material = "plate-P355GH"\n')),
        (
            SILENT,
            ("block.toml", 'rod_diameter = "90 mm"\n'),
            ("block.toml", 'rod_length = "1500 mm"\nrod_material = "plate-P355GH"\n'),
        ),
        (ASKED, ("rod.toml", 'diameter = "90 mm"\n')),
        (ASKED, ("rod.toml", 'material = "plate-P355GH"\n')),
        (SILENT, ("rod.toml", 'carries = "piston"\n')),
        (SILENT, ("piston.toml", 'runs_in = "liner"\n')),
    ),
    *rows(
        "duty.piston-follows-liner",
        "piston",
        piston_heat.FILES,
        (SILENT, ("piston.toml", 'runs_in = "liner"\n')),
        (FINE, ("duty.toml", 'piston = "280..330 °C"\n')),
        (FINE, ("duty.toml", 'cylinder-liner = "255..285 °C"\n')),
    ),
    *rows(
        "drive.section-by-mass",
        "block",
        drives.FILES,
        (FINE,),
        (SILENT, ("block.toml", 'connecting_rod_area = "6000 mm²"\n')),
        (SILENT, ("block.toml", 'connecting_rod_material = "known-forging"\n')),
        (SILENT, ("engine.toml", 'connecting_rod_mass = "94.2 kg"\n')),
        (SILENT, ("engine.toml", 'connecting_rod_length = "2000 mm"\n')),
        (SILENT, ("engine.toml", 'block = "block"\n')),
    ),
    *rows(
        "drive.axle-by-rods",
        "block",
        drives.FILES,
        (FINE,),
        (SILENT, ("block.toml", 'axle_from_fixed_point = "3200 mm"\n')),
        (SILENT, ("block.toml", 'rod_length = "1500 mm"\n')),
        (SILENT, ("engine.toml", 'connecting_rod_length = "2000 mm"\n')),
        (SILENT, ("block.toml", 'side = "back"\n')),
        (SILENT, ("block.toml", 'face_at = "-100 mm"\n')),
    ),
    *rows(
        "drive.mass-adds-up",
        "block",
        _CYLINDER,
        (SILENT, ("block.toml", 'reciprocating_mass = "300 kg"\n')),
        (FINE, ("piston.toml", 'mass = "112 kg"\n')),
        (FINE, ("rod.toml", 'mass = "84 kg"\n')),
        (FINE, ("crosshead.toml", '\nmass = "70 kg"')),
        (FINE, ("crosshead.toml", 'small_end_mass = "34 kg"\n')),
        (FINE, ("crosshead.toml", 'on_rod = "rod"\n')),
        (SILENT, ("rod.toml", 'carries = "piston"\n')),
    ),
    *rows(
        "drive.wear-adds-up",
        "block",
        _WORN,
        (SILENT, ("block.toml", 'wear = "1 mm"\n')),
        (SILENT, ("pin.toml", 'wear.along = "1 mm"\n')),
        (SILENT, ("pin.toml", 'moved_by = "crosshead"\n')),
        (SILENT, ("crosshead.toml", 'on_rod = "rod"\n')),
    ),
    *rows(
        "rod.length-agrees",
        "rod",
        _CYLINDER,
        (SILENT, ("rod.toml", 'free_length = "1450 mm"\n')),
        (ASKED, ("block.toml", 'rod_length = "1500 mm"\n')),
        (ASKED, ("piston.toml", 'length = "149 mm"\n')),
        (ASKED, ("rod.toml", 'carries = "piston"\n')),
        (ASKED, ("piston.toml", 'runs_in = "liner"\n')),
        (ASKED, ("liner.toml", 'housed_in = "block"\n')),
    ),
    *rows(
        "rod.ends-as-drawn",
        "rod",
        _CYLINDER,
        (ASKED, ("rod.toml", 'ends = "one fixed and one pinned"\n')),
        (SILENT, ("pin.toml", 'place = "crosshead pin"\n')),
        (SILENT, ("pin.toml", 'moved_by = "crosshead"\n')),
        (SILENT, ("crosshead.toml", 'on_rod = "rod"\n')),
    ),
    *rows(
        "rod.thread-of-its-nuts",
        "rod",
        _TRAIN,
        (SILENT, ("piston.toml", 'by = "nut"\n')),
        (SILENT, ("piston.toml", 'thread = "M85x4"\n')),
        (SILENT, ("rod.toml", 'thread = "M85x4"\n')),
        (SILENT, ("rod.toml", 'at = "piston end"\n')),
        (SILENT, ("rod.toml", 'form = "thread"\n')),
        (ASKED, ("rod.toml", 'carries = "piston"\n')),
    ),
    *rows(
        "rod.end-of-its-crosshead",
        "rod",
        _COTTERED,
        (SILENT, ("crosshead.toml", 'by = "cotter"\n')),
        (FINE, ("crosshead.toml", 'cotter_thickness = "22 mm"\n')),
        (FINE, ("rod.toml", 'slot_width = "22 mm"\n')),
        (SILENT, ("rod.toml", 'at = "crosshead end"\n')),
        (SILENT, ("rod.toml", 'form = "cotter slot"\n')),
        (SILENT, ("crosshead.toml", 'on_rod = "rod"\n')),
    ),
    *rows(
        "slidebar.takes-the-stroke",
        "bar",
        _BARS,
        (SILENT, ("bar.toml", 'guides = "crosshead"\n')),
        (FINE, ("bar.toml", 'width = "200 mm"\n')),
        (FINE, ("crosshead.toml", 'slipper_width = "190 mm"\n')),
        (FINE, ("crosshead.toml", 'slipper_length = "400 mm"\n')),
        (SILENT, ("crosshead.toml", 'slipper_length = "400 mm"\n'), ("bar.toml", 'width = "200 mm"\n')),
        (FINE, ("bar.toml", 'crosshead_from_end = "320 mm"\n')),
        (FINE, ("bar.toml", 'span = "1300 mm"\n')),
        (FINE, ("block.toml", 'stroke = "660 mm"\n')),
        (ASKED, ("crosshead.toml", 'on_rod = "rod"\n')),
    ),
    *rows(
        "pin.in-its-crosshead",
        "pin",
        _TRAIN,
        (SILENT, ("pin.toml", 'length = "110 mm"\n')),
        (SILENT, ("pin.toml", 'span = "170 mm"\n')),
        (ASKED, ("pin.toml", 'place = "crosshead pin"\n')),
        (FINE, ("pin.toml", 'moved_by = "crosshead"\n')),
    ),
    *rows(
        "pin.in-its-crosshead",
        "pin",
        _PRESSED,
        (SILENT, ("pin.toml", 'moved_by = "crosshead"\n')),
        (FINE, ("pin.toml", 'length = "110.0 mm"\n')),
        (FINE, ("pin.toml", 'boss = "210 mm"\n')),
        (FINE, ("pin.toml", 'boss_material = "known-steel"\n')),
        (ASKED, ("crosshead.toml", 'boss_width = "58 mm"\n')),
        (ASKED, ("crosshead.toml", 'boss_diameter = "210 mm"\n')),
        (ASKED, ("crosshead.toml", 'material = "known-steel"\n')),
    ),
    *rows(
        "pin.fillet-of-its-shoulder",
        "crank-pin",
        _TRAIN,
        (SILENT, ("crank-pin.toml", 'fillet = "10 mm"\n')),
        (FINE, ("crank-pin.toml", 'larger_diameter = "200 mm"\n')),
        (FINE, ("crank-pin.toml", 'overhang = "120 mm"\n')),
        (
            SILENT,
            ("crank-pin.toml", 'larger_diameter = "200 mm"\n'),
            ("crank-pin.toml", 'overhang = "120 mm"\n'),
        ),
        (
            SILENT,
            ("crank-pin.toml", 'larger_diameter = "200 mm"\n'),
            ("crank-pin.toml", 'length = "185 mm"\n'),
        ),
        (ASKED, ("crank-pin.toml", 'diameter = "165 mm"\n')),
    ),
    *rows(
        "piston.grooves-fit",
        "piston",
        _GROOVED,
        (FINE, ("piston.toml", 'length = "140 mm"\n')),
        (FINE, ("piston.toml", 'at = "20 mm"\n')),
        (FINE, ("piston.toml", 'at = "20 mm"\n'), ("piston.toml", 'length = "140 mm"\n')),
        (ASKED, ("piston.toml", 'land = "20 mm"\n')),
        (ASKED, ("piston.toml", 'width = "16 mm"\n')),
        (ASKED, ("piston.toml", 'at = "20 mm"\n'), ("piston.toml", 'land = "24 mm"\n')),
        (ASKED, ("piston.toml", 'at = "20 mm"\n'), ("piston.toml", 'width = "16.0 mm"\n')),
    ),
    *rows(
        "ring.of-its-groove",
        "ring",
        _TRAIN,
        (SILENT, ("ring.toml", 'runs_in = "liner"\n')),
        (SILENT, ("piston.toml", 'runs_in = "liner"\n')),
        (SILENT, ("piston.toml", 'takes = "ring"\n')),
    ),
    *rows(
        "ring.pressure-by-its-free-gap",
        "ring",
        _SPRUNG,
        (SILENT, ("ring.toml", 'wall_pressure = "0.046 MPa"\n')),
        (SILENT, ("ring.toml", 'free_gap = "50 mm"\n')),
        (ASKED, ("ring.toml", '\ngap = "3 mm"')),
        (ASKED, ("ring.toml", 'thickness = "16 mm"\n')),
        (ASKED, ("ring.toml", 'material = "ring-iron"\n')),
    ),
    *rows(
        "mass.by-sizes",
        "rod",
        _ROD,
        (SILENT, ("rod.toml", 'mass = "75 kg"\n')),
        (SILENT, ("rod.toml", 'material = "known-forging"\n')),
        (SILENT, ("rod.toml", 'diameter = "90 mm"\n')),
        (SILENT, ("rod.toml", 'free_length = "1450 mm"\n')),
    ),
    *rows(
        "mass.by-sizes",
        "crosshead",
        _CROSSHEAD,
        (SILENT, ("crosshead.toml", 'mass = "50 kg"\n')),
        (SILENT, ("crosshead.toml", 'material = "known-forging"\n')),
        (SILENT, ("crosshead.toml", 'boss_diameter = "200 mm"\n')),
        (SILENT, ("crosshead.toml", 'boss_width = "60 mm"\n')),
    ),
    *rows(
        "mass.of-turning-parts",
        "axle",
        _TURNING,
        (SILENT, ("axle.toml", 'of = "pin"\n')),
        (SILENT, ("axle.toml", 'mass = "40 kg"\n')),
        (SILENT, ("pin.toml", 'material = "known-forging"\n')),
        (SILENT, ("pin.toml", 'diameter = "180 mm"\n')),
        (SILENT, ("pin.toml", 'length = "200 mm"\n')),
    ),
    *rows(
        "gland.stands-out",
        "gland",
        lengths.GLAND,
        (SILENT, ("gland.toml", 'stands_out = "60 mm"\n')),
        (SILENT, ("gland.toml", 'flange_thickness = "30 mm"\n')),
        (SILENT, ("studs.toml", 'engagement = "20 mm"\n')),
        (SILENT, ("studs.toml", 'holds = "gland"\n')),
    ),
]


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_what_is_said_where_a_place_is_silent(workshop: DesignFolder, row: Row) -> None:
    expect_said(workshop, row)
