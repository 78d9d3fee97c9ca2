"""What sizes let a part weigh, by hand: solids and walls of 7850 kg/m³."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.facts import mass_by_sizes
from tests.facts.bench import bench

STEEL, RHO = 'material = "known-steel"\n', 7850.0
WIRE = 'material = "known-wire"\n'


def bar(d: float, length: float) -> float:
    return math.pi / 4 * d**2 * length * RHO


def tube(D: float, t: float, length: float) -> float:
    return bar(D, length) - bar(D - 2 * t, length)


def weighed(folder: Path, files: dict[str, str], on: str) -> tuple[float | None, float | None] | None:
    made = bench(folder, files, on, metals=True)
    found = mass_by_sizes(made[on], made.sheet, made.sheet.take)
    return None if found is None else (found.least, found.most)


def expect(found: tuple[float | None, float | None] | None, by_hand: object) -> None:
    assert found == (by_hand if by_hand is None else pytest.approx(by_hand))


SPRING = WIRE + 'wire = "8 mm"\nmean_diameter = "48 mm"\ntotal_coils = "8"\n'
#: A wire of 8 mm in eight coils of 48 mm, by the length of its middle.
_WIRE = bar(0.008, math.pi * 0.048 * 8)


@pytest.mark.parametrize(
    ("spring", "mass"),
    [
        (SPRING, (_WIRE, _WIRE)),
        (SPRING.replace("mean_diameter", "outside_diameter").replace("48", "56"), (_WIRE, _WIRE)),
        (SPRING.replace("mean_diameter", "inside_diameter").replace("48", "40"), (_WIRE, _WIRE)),
        (SPRING.replace('mean_diameter = "48 mm"\n', ""), None),
        (SPRING.replace('wire = "8 mm"\n', ""), None),
        (SPRING.replace('total_coils = "8"\n', ""), None),
        (SPRING.replace(WIRE, ""), None),
    ],
)
def test_a_spring_is_its_wire(tmp_path: Path, spring: str, mass: object) -> None:
    expect(weighed(tmp_path, {"compression-spring spring": spring}, "spring"), mass)


PISTON = STEEL + 'diameter = "500 mm"\nlength = "150 mm"\n'
RIM = 'stock_thickness = "40 mm"\n'
GROOVE = '[grooves.front]\ndepth = "16 mm"\nwidth = "10 mm"\n'


@pytest.mark.parametrize(
    ("piston", "mass"),
    [
        (PISTON, (None, bar(0.5, 0.15))),
        (PISTON + RIM, (tube(0.5, 0.04, 0.15), bar(0.5, 0.15))),
        (PISTON + RIM + GROOVE, (tube(0.5, 0.04, 0.15) - tube(0.5, 0.016, 0.01), bar(0.5, 0.15))),
        (
            PISTON + RIM + GROOVE + GROOVE.replace("front", "back"),
            (tube(0.5, 0.04, 0.15) - 2 * tube(0.5, 0.016, 0.01), bar(0.5, 0.15)),
        ),
        (PISTON + RIM + GROOVE.replace('width = "10 mm"\n', ""), (tube(0.5, 0.04, 0.15), bar(0.5, 0.15))),
        (PISTON.replace('length = "150 mm"\n', ""), None),
        (PISTON.replace(STEEL, ""), None),
    ],
)
def test_a_piston_is_between_its_rim_and_a_solid(tmp_path: Path, piston: str, mass: object) -> None:
    expect(weighed(tmp_path, {"piston piston": piston}, "piston"), mass)


#: Rim of 50 mm; walls of 30 mm from a hub of 200 mm to 400 mm, 15 mm each where they are thinned; a rod of 90 mm.
HOLLOW = '[crown]\nform = "two walls"\nthickness = "30 mm"\nhub = "200 mm"\nrim = "400 mm"\n'
ROD = 'carries = "piston"\ndiameter = "90 mm"\n'
_RIM = tube(0.5, 0.05, 0.15)
_HUB = bar(0.2, 0.15) - bar(0.09, 0.15)
_WALL = bar(0.4, 0.015) - bar(0.2, 0.015)
#: The same two walls in a rim of 40 mm, out to 420 mm.
_WIDER = 2 * (bar(0.42, 0.015) - bar(0.2, 0.015))
#: One wall: the hub is no longer than that is thick.
_SHORT = bar(0.2, 0.03) - bar(0.09, 0.03)


@pytest.mark.parametrize(
    ("sizes", "least"),
    [
        (HOLLOW, _RIM + _HUB + 2 * _WALL),
        (HOLLOW.replace("two walls", "one wall"), _RIM + _SHORT + _WALL),
        (HOLLOW.replace("two walls", "dished"), _RIM + _SHORT + _WALL),
        (HOLLOW.replace('thickness = "30 mm"\n', ""), _RIM + _HUB),
        (HOLLOW.replace('form = "two walls"\n', ""), _RIM + _SHORT + _WALL),
        (HOLLOW.replace('form = "two walls"\n', "").replace('thickness = "30 mm"\n', ""), _RIM),
        (HOLLOW.replace('hub = "200 mm"\n', ""), _RIM + 2 * (bar(0.4, 0.015) - bar(0.09, 0.015))),
        (HOLLOW.replace('hub = "200 mm"', 'hub = "90 mm"'), _RIM + 2 * (bar(0.4, 0.015) - bar(0.09, 0.015))),
        (HOLLOW.replace('hub = "200 mm"', 'hub = "400 mm"'), _RIM + bar(0.4, 0.15) - bar(0.09, 0.15)),
        (RIM + HOLLOW.replace('rim = "400 mm"\n', ""), tube(0.5, 0.04, 0.15) + _HUB + _WIDER),
        (RIM + HOLLOW, tube(0.5, 0.04, 0.15) + _HUB + _WIDER),
        ('crown_chamfer = "20 mm"\n' + HOLLOW, _RIM + _HUB + 2 * _WALL),
        (
            'crown_chamfer = "20 mm"\n' + HOLLOW + GROOVE,
            _RIM + _HUB + 2 * _WALL - tube(0.5, 0.016, 0.01) - tube(0.5, 0.016, 0.04),
        ),
    ],
)
def test_a_piston_is_no_lighter_than_its_rim_hub_and_walls(tmp_path: Path, sizes: str, least: float) -> None:
    """Walls half as thick at the rim as at the hub; faces cut back no deeper than the grooves are."""
    files = {"piston piston": PISTON + sizes, "piston-rod rod": ROD}
    expect(weighed(tmp_path, files, "piston"), (least, bar(0.5, 0.15)))


def test_a_piston_without_hub_and_rod_is_no_lighter_than_its_rim(tmp_path: Path) -> None:
    files = {"piston piston": PISTON + HOLLOW.replace('hub = "200 mm"\n', "")}
    expect(weighed(tmp_path, files, "piston"), (_RIM, bar(0.5, 0.15)))


_BOSSES = STEEL + 'boss_diameter = "200 mm"\nboss_width = "60 mm"\n'
_OWN_PIN = STEEL + 'moved_by = "crosshead"\nplace = "crosshead pin"\ndiameter = "100 mm"\nlength = "110 mm"\n'


@pytest.mark.parametrize(
    ("sizes", "pin", "least"),
    [
        (_BOSSES, "", bar(0.2, 0.12)),
        (_BOSSES, _OWN_PIN, bar(0.2, 0.12) + bar(0.1, 0.11)),
        (_BOSSES, _OWN_PIN.replace("crosshead pin", "crank pin"), bar(0.2, 0.12)),
        (_BOSSES, _OWN_PIN.replace('length = "110 mm"\n', ""), bar(0.2, 0.12)),
        (_BOSSES, _OWN_PIN.replace('diameter = "100 mm"\n', ""), bar(0.2, 0.12)),
        (_BOSSES, _OWN_PIN.replace('place = "crosshead pin"\n', ""), bar(0.2, 0.12)),
        (_BOSSES, _OWN_PIN.replace(STEEL, ""), bar(0.2, 0.12)),
        (_BOSSES.replace(STEEL, ""), _OWN_PIN, None),
        (_BOSSES.replace('boss_width = "60 mm"\n', ""), _OWN_PIN, None),
        (_BOSSES.replace('boss_diameter = "200 mm"\n', ""), _OWN_PIN, None),
    ],
)
def test_a_crosshead_is_no_lighter_than_its_bosses_with_the_pin(
    tmp_path: Path, sizes: str, pin: str, least: float | None
) -> None:
    """Two bosses of 60 mm, filled by the pin, and between them the bearing of the crosshead pin alone."""
    files = {"crosshead crosshead": sizes} | ({"pin pin": pin} if pin else {})
    found = weighed(tmp_path, files, "crosshead")
    if least is None:
        assert found is None
    else:
        expect(found, (least, None))


@pytest.mark.parametrize(
    ("kind", "sizes", "mass"),
    [
        ("piston-rod", 'diameter = "90 mm"\nfree_length = "1450 mm"\n', (bar(0.09, 1.45), None)),
        ("pin", 'diameter = "90 mm"\nlength = "200 mm"\n', (bar(0.09, 0.2), None)),
        ("pin", 'diameter = "90 mm"\n', None),
        ("piston-rod", 'free_length = "1450 mm"\n', None),
    ],
)
def test_a_rod_and_a_pin_are_no_lighter_than_at_their_thinnest(
    tmp_path: Path, kind: str, sizes: str, mass: object
) -> None:
    expect(weighed(tmp_path, {f"{kind} part": STEEL + sizes}, "part"), mass)


THIN = 'least_diameter = "16 mm"\nfree_length = "300 mm"\n'


@pytest.mark.parametrize(
    ("sizes", "mass"),
    [
        (THIN, (bar(0.016, 0.3), None)),
        (THIN + 'diameter = "22 mm"\n', (bar(0.016, 0.3), None)),
        (THIN + 'heated_length = "500 mm"\n', (bar(0.016, 0.3), None)),
        (THIN + 'diameter = "22 mm"\nheated_length = "500 mm"\n', (bar(0.016, 0.3), bar(0.022, 0.5))),
        (THIN + 'diameter = "22 mm"\nguide_length = "100 mm"\n', (bar(0.016, 0.3), bar(0.022, 0.4))),
        ('diameter = "22 mm"\nheated_length = "500 mm"\n', (None, bar(0.022, 0.5))),
        ('diameter = "22 mm"\nguide_length = "100 mm"\n', None),
    ],
)
def test_a_spindle_is_between_its_thinnest_and_a_bar(tmp_path: Path, sizes: str, mass: object) -> None:
    expect(weighed(tmp_path, {"valve-spindle spindle": STEEL + sizes}, "spindle"), mass)


VALVE = STEEL + 'outside_diameter = "160 mm"\nheight = "80 mm"\n'
SHELL = 'beat_distance = "70 mm"\nwall = "6 mm"\nlower_beat.seat_diameter = "146 mm"\n'


@pytest.mark.parametrize(
    ("valve", "mass"),
    [
        (VALVE + SHELL, (tube(0.146, 0.006, 0.07), bar(0.16, 0.08))),
        (VALVE, (None, bar(0.16, 0.08))),
        (VALVE + SHELL.replace('wall = "6 mm"\n', ""), (None, bar(0.16, 0.08))),
        (VALVE + SHELL.replace('beat_distance = "70 mm"\n', ""), (None, bar(0.16, 0.08))),
        (VALVE.replace('height = "80 mm"\n', "") + SHELL, None),
    ],
)
def test_a_valve_is_between_its_shell_and_a_solid(tmp_path: Path, valve: str, mass: object) -> None:
    expect(weighed(tmp_path, {"poppet-valve valve": valve}, "valve"), mass)


WELDMENT = """[plates.side]
material = "known-steel"
thickness = "20 mm"
[plates.iron]
material = "known-iron"
thickness = "10 mm"
[walls.one]
plate = "side"
short = "0.5 m"
long = "1 m"
"""
_WALL = 0.5 * 1 * 0.02 * RHO
_IRON = 0.5 * 1 * 0.01 * 7200
BLOCK = 'entering_width = "1 m"\nentering_height = "1.2 m"\n[bores.a]\nlength = "0.9 m"\n[bores.b]\nlength = "0.8 m"\n'
MAKES = 'makes = "block"\n'


@pytest.mark.parametrize(
    ("weldment", "block", "mass"),
    [
        (WELDMENT, "", (_WALL, None)),
        (
            WELDMENT + '[walls.two]\nplate = "iron"\nshort = "0.5 m"\nlong = "1 m"\n',
            "",
            (_WALL + _IRON, None),
        ),
        (WELDMENT + '[walls.two]\nshort = "0.5 m"\nlong = "1 m"\n', "", (_WALL, None)),
        (WELDMENT + '[walls.two]\nplate = "iron"\nlong = "1 m"\n', "", (_WALL, None)),
        (
            WELDMENT.replace('thickness = "10 mm"\n', "")
            + '[walls.two]\nplate = "iron"\nshort = "0.5 m"\nlong = "1 m"\n',
            "",
            (_WALL, None),
        ),
        (WELDMENT.partition("[walls")[0], "", None),
        (MAKES + WELDMENT, BLOCK, (_WALL, 1 * 1.2 * 1.7 * RHO)),
        (MAKES + WELDMENT, BLOCK.replace('entering_width = "1 m"\n', ""), (_WALL, None)),
        (MAKES + WELDMENT, BLOCK.replace('length = "0.8 m"\n', ""), (_WALL, None)),
        (MAKES + WELDMENT, BLOCK.partition("[bores")[0], (_WALL, None)),
        (
            MAKES + WELDMENT.replace('plate = "side"', 'plate = "iron"'),
            BLOCK,
            (_IRON, 1 * 1.2 * 1.7 * 7200),
        ),
    ],
)
def test_a_weldment_is_between_its_walls_and_a_solid_block(
    tmp_path: Path, weldment: str, block: str, mass: object
) -> None:
    files = {"weldment weldment": weldment}
    if block:
        files["cylinder-block block"] = block
    expect(weighed(tmp_path, files, "weldment"), mass)


def test_a_part_that_sizes_do_not_describe_has_no_mass_by_them(tmp_path: Path) -> None:
    expect(weighed(tmp_path, {"cam cam": STEEL + 'lift = "20 mm"\n'}, "cam"), None)
