"""Facts that are stated in one place and drawn in another: which of both counts, and what is asked for."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import (
    block_when_entering,
    bore_served,
    distance_of_life,
    drag_on_seat,
    frictions_of_seat,
    gap_for_bearing,
    greatest_live_pressure,
    hole_through,
    holes_of_bolts,
    inside_of_lagging,
    length_of_bearing,
    lengths_of_fit,
    locks_block,
    plays_along,
    speed_of_crank,
    starts_of_life,
    states_speed,
    steam_in,
    taken_by,
    wall_round,
    wear_along,
    with_water,
    zone_of,
)
from speclint.facts.pads import says_what_it_takes
from speclint.quantities import Measure
from speclint.rules import NotAssessed
from tests.facts.bench import bench


def text(found: object) -> str:
    return found.text if isinstance(found, Measure) else ""


HEAD = 'boss_width = "60 mm"\n'
PIN = 'moved_by = "head"\nplace = "crosshead pin"\nspan = "175 mm"\nlength = "120 mm"\n'


@pytest.mark.parametrize(
    ("pin", "head", "gap", "length"),
    [
        (PIN, HEAD, 0.115, 0.115),  # 175 − 60
        (PIN.replace('"120 mm"', '"110 mm"'), HEAD, 0.115, 0.110),
        (PIN, "", 0.175, 0.120),
        (PIN.replace('moved_by = "head"\n', ""), HEAD, 0.175, 0.120),
        (PIN.replace('span = "175 mm"\n', ""), HEAD, None, 0.120),
        (PIN.replace("crosshead pin", "crank pin"), HEAD, None, 0.120),
    ],
)
def test_the_bearing_of_a_pin_fits_between_its_bosses(
    tmp_path: Path, pin: str, head: str, gap: float | None, length: float
) -> None:
    on = bench(tmp_path, {"pin pin": pin, "crosshead head": head}, "pin")
    found = gap_for_bearing(on["pin"], on.sheet, on.sheet.take)
    assert (None if found is None else found.value) == pytest.approx(gap)
    assert length_of_bearing(on["pin"], on.sheet) == pytest.approx(length)


@pytest.mark.parametrize(
    ("pin", "axlebox", "plays", "wear"),
    [
        ('wear.along = "0.3 mm"\n', 'axlebox_wear = "0.5 mm"\n', 0.8e-3, 1.0e-3),
        ('wear.along = "0.7 mm"\n', 'axlebox_wear = "0.5 mm"\n', 1.2e-3, 1.2e-3),
        ("", 'axlebox_wear = "0.5 mm"\n', 0.5e-3, 1.0e-3),
        ("", "", None, 1.0e-3),
    ],
)
def test_bearings_wear_together(
    tmp_path: Path, pin: str, axlebox: str, plays: float | None, wear: float
) -> None:
    files = {
        "cylinder-block block": f'[bores.main]\n[drive]\nwear = "1 mm"\n{axlebox}',
        "cylinder-liner liner": 'housed_in = "block"\nin_bore = "main"\n',
        "piston piston": 'runs_in = "liner"\n',
        "piston-rod rod": 'carries = "piston"\n',
        "crosshead head": 'on_rod = "rod"\n',
        "pin pin": 'moved_by = "head"\n' + pin,
    }
    on = bench(tmp_path, files, "block")
    found = plays_along(on["block"], "main", on.sheet)
    assert (None if found is None else found.value) == pytest.approx(plays)
    assert wear_along(on["block"], "main", on.sheet) == pytest.approx(wear)


CASE = 'live_pressure = "10 bar gauge"\n'
VALVES = 'safety_valve_pressure = "12 bar gauge"\n'


@pytest.mark.parametrize(
    ("name", "case", "pressure"),
    [
        ("running", CASE + VALVES, "12 bar gauge"),
        ("running", CASE, ""),  # with the regulator open it must be stated
        ("starting", CASE, ""),
        ("water", CASE, ""),
        ("drifting", CASE, "10 bar gauge"),
        ("drifting", CASE + VALVES, "12 bar gauge"),
        ("test", CASE, "10 bar gauge"),
    ],
)
def test_the_safety_valves_set_the_greatest_pressure(
    tmp_path: Path, name: str, case: str, pressure: str
) -> None:
    on = bench(tmp_path, {"duty duty": f"[cases.{name}]\n{case}", "piston piston": ""}, "piston")
    assert text(greatest_live_pressure(on["duty"].cases[name], on.sheet)) == pressure


def test_water_stands_at_the_pressure_of_the_relief_valves(tmp_path: Path) -> None:
    """They blow off all of it a tenth above 20 and 25 bar: 22 and 27.5 bar."""
    ends = (
        '[ends.front]\nrelief_set = "20 bar gauge"\n[ends.back]\nrelief_set = "25 bar gauge"\n[ends.none]\n'
    )
    files = {"duty duty": "[cases.water]\n[cases.running]\n", "cylinder-block block": ends}
    on = bench(tmp_path, files, "block")
    water, running = on["duty"].cases["water"], on["duty"].cases["running"]
    front, back, none = on["block"].ends.values()
    assert with_water(1e5, [front, back], water, on.sheet) == pytest.approx(27.5e5)
    assert with_water(1e5, [front], water, on.sheet) == pytest.approx(22e5)
    assert with_water(30e5, [front, back], water, on.sheet) == pytest.approx(30e5)
    assert with_water(1e5, [front, back], running, on.sheet) == 1e5
    with pytest.raises(NotAssessed, match="relief_set is not stated"):
        with_water(1e5, [front, none], water, on.sheet)
    with pytest.raises(NotAssessed, match="no end of the cylinder is stated, whose relief valves"):
        with_water(1e5, [], water, on.sheet)


WHEELS = '[bores.main]\n[drive]\ndriving_wheel_diameter = "1750 mm"\nleast_wheel_diameter = "1.6 m"\n{}'


@pytest.mark.parametrize(
    ("case", "drive", "speed"),
    [
        ('rotational_speed = "300 rev/min"\n', "", 31.4159),
        ('track_speed = "28 m/s"\n', "", 35.0),  # 2 × 28/1.6
        ('track_speed = "28 m/s"\n', 'gear_ratio = "2"\n', 70.0),
        ('track_speed = "28 m/s"\nrotational_speed = "300 rev/min"\n', "", 35.0),
        ('track_speed = "20 m/s"\nrotational_speed = "300 rev/min"\n', "", 31.4159),
    ],
)
def test_a_crank_turns_no_slower_than_worn_wheels_need(
    tmp_path: Path, case: str, drive: str, speed: float
) -> None:
    files = {"duty duty": "[cases.running]\n" + case, "cylinder-block block": WHEELS.format(drive)}
    on = bench(tmp_path, files, "block")
    running = on["duty"].cases["running"]
    assert speed_of_crank(on["block"], running, on.sheet) == pytest.approx(speed, rel=1e-5)
    assert states_speed(running, on.sheet)


def test_a_case_without_a_speed_states_none(tmp_path: Path) -> None:
    on = bench(tmp_path, {"duty duty": "[cases.running]\n", "piston piston": ""}, "piston")
    assert not states_speed(on["duty"].cases["running"], on.sheet)


LINER = '[lands.a]\nstarts = "10 mm"\nends = "39 mm"\n[lands.b]\nstarts = "85 mm"\nends = "325 mm"\n'


@pytest.mark.parametrize(
    ("stated", "lands", "lengths"),
    [
        ("", LINER, (0.269,)),  # 29 + 240
        ('fit_length = "300 mm"\n', LINER, (0.3, 0.269)),
        ('fit_length = "300 mm"\n', "", (0.3,)),
        ('fit_length = "300 mm"\n', LINER.replace('ends = "39 mm"\n', ""), (0.3,)),
        ('fit_length = "300 mm"\n', LINER.replace('starts = "85 mm"\n', ""), (0.3,)),
    ],
)
def test_a_liner_touches_over_its_lands(
    tmp_path: Path, stated: str, lands: str, lengths: tuple[float, ...]
) -> None:
    on = bench(tmp_path, {"cylinder-liner liner": stated + lands}, "liner")
    assert lengths_of_fit(on["liner"], on.sheet) == pytest.approx(lengths)


SEAT_FIT = 'shaft.of = "{}"\nhole.of = "block"\n{}'


@pytest.mark.parametrize(
    ("of", "more", "frictions", "drag"),
    [
        ("seat", "", [0.12], 500.0),
        ("seat", 'friction = "0.1"\naxial_load = "800 N"\n', [0.12, 0.1], 800.0),
        ("seat", 'axial_load = "300 N"\n', [0.12], 500.0),
        ("other", 'friction = "0.1"\naxial_load = "800 N"\n', [0.12], 500.0),
    ],
)
def test_fits_say_more_of_a_seat(
    tmp_path: Path, of: str, more: str, frictions: list[float], drag: float
) -> None:
    files = {
        "cylinder-block block": "",
        "valve-seat seat": 'friction = "0.12"\nsticking_drag = "500 N"\n',
        "valve-seat other": "",
        "fit fit": SEAT_FIT.format(of, more),
        "fit loose": 'hole.of = "seat"\nfriction = "0.3"\naxial_load = "9 kN"\n',
    }
    on = bench(tmp_path, files, "seat")
    assert list(frictions_of_seat(on["seat"], on.sheet)) == pytest.approx(frictions)
    assert drag_on_seat(on["seat"], on.sheet) == pytest.approx(drag)


@pytest.mark.parametrize(
    ("fit", "holes"),
    [
        (
            'shaft.of = "bolts"\nshaft.dimension = "fitted_diameter"\nhole.size = "31 mm"\n',
            ["30 mm", "31 mm"],
        ),
        ('shaft.of = "bolts"\nshaft.dimension = "hole"\nhole.size = "31 mm"\n', ["30 mm"]),
        ('shaft.of = "bolts"\nhole.size = "31 mm"\n', ["30 mm"]),
        ('hole.of = "bolts"\nhole.dimension = "hole"\n', ["30 mm"]),
    ],
)
def test_the_holes_of_fitted_bolts(tmp_path: Path, fit: str, holes: list[str]) -> None:
    on = bench(tmp_path, {"frame-fastening bolts": 'hole = "30 mm"\n', "fit fit": fit}, "bolts")
    assert [text(one) for one in holes_of_bolts(on["bolts"], on.sheet)] == holes


@pytest.mark.parametrize(
    ("lagging", "pipe", "inside"),
    [
        ('inside_diameter = "170 mm"\n', 'outside_diameter = "168 mm"\n', 0.170),
        ('inside_diameter = "160 mm"\n', 'outside_diameter = "168 mm"\n', 0.168),
        ("", 'outside_diameter = "168 mm"\n', 0.168),
        ('inside_diameter = "170 mm"\n', "", 0.170),
    ],
)
def test_lagging_is_no_narrower_than_its_pipe(tmp_path: Path, lagging: str, pipe: str, inside: float) -> None:
    files = {"lagging lagging": 'covers = "pipe"\n' + lagging, "steam-pipe pipe": pipe}
    on = bench(tmp_path, files, "lagging")
    assert inside_of_lagging(on["lagging"], on.sheet) == pytest.approx(inside)


LIFE = '[life]\ndistance = "2e6 km"\nstarts = 900\n'


@pytest.mark.parametrize(
    ("duty", "distance", "starts"), [(LIFE, "2e6 km", 900), ("", "1e6 km", 500), (None, "1e6 km", 500)]
)
def test_a_life_is_that_of_the_duty(tmp_path: Path, duty: str | None, distance: str, starts: int) -> None:
    files = {"weldment weldment": 'life_distance = "1e6 km"\nstarts = 500\n'}
    if duty is not None:
        files = {"duty duty": duty, "weldment weldment": 'duty = "duty"\n' + files["weldment weldment"]}
    on = bench(tmp_path, files, "weldment")
    part = on["weldment"]
    assert text(distance_of_life(part, part.life_distance, on.sheet)) == distance
    assert on.sheet.count("n", starts_of_life(part, part.starts, on.sheet)) == starts


@pytest.mark.parametrize(
    ("pad", "takes", "locks", "says"),
    [
        ('takes = ["lengthwise", "weight"]\n', ("lengthwise", "weight"), True, True),
        ('takes = ["weight"]\n', ("weight",), False, True),
        ('takes = ["weight"]\nlocates = true\n', ("weight", "lengthwise"), True, True),
        ('takes = ["weight"]\nlocates = false\n', ("weight",), False, True),
        ("locates = true\n", ("lengthwise",), True, True),
        ("locates = false\n", (), False, True),
    ],
)
def test_what_a_pad_takes(tmp_path: Path, pad: str, takes: tuple[str, ...], locks: bool, says: bool) -> None:
    on = bench(tmp_path, {"cylinder-block block": "[pads.a]\n" + pad + "[pads.b]\n"}, "block")
    one = on["block"].pads["a"]
    assert taken_by("a", one, on.sheet) == takes
    assert locks_block("a", one, on.sheet) is locks
    assert says_what_it_takes("a", one, on.sheet) is says
    silent = on["block"].pads["b"]
    assert not says_what_it_takes("b", silent, on.sheet)
    with pytest.raises(NotAssessed, match=r"pads\.b\.takes is not stated"):
        taken_by("b", silent, on.sheet)


WELDMENT = 'makes = "block"\n[plates.p]\nthickness = "40 mm"\n{}'


@pytest.mark.parametrize(
    ("bore", "weldment", "wall"),
    [
        ('wall = "45 mm"\nplate = "p"\n', WELDMENT.format('corrosion_allowance = "1.5 mm"\n'), 0.0385),
        ('wall = "35 mm"\nplate = "p"\n', WELDMENT.format('corrosion_allowance = "1.5 mm"\n'), 0.035),
        ('plate = "p"\n', WELDMENT.format(""), 0.040),
        ('wall = "45 mm"\n', WELDMENT.format(""), 0.045),
        ('wall = "45 mm"\nplate = "p"\n', "", 0.045),
    ],
)
def test_a_wall_is_no_thicker_than_its_plate(tmp_path: Path, bore: str, weldment: str, wall: float) -> None:
    files = {"cylinder-block block": "[bores.main]\n" + bore}
    files |= {"weldment weldment": weldment} if weldment else {}
    on = bench(tmp_path, files, "block")
    assert wall_round(on["block"].bores["main"], on["block"], on.sheet) == pytest.approx(wall)


@pytest.mark.parametrize(
    ("block", "own", "used"),
    [('heated_to = "150 °C"\n', "120 °C", "150 °C"), ("", "120 °C", "120 °C")],
)
def test_a_block_is_heated_once(tmp_path: Path, block: str, own: str, used: str) -> None:
    files = {"cylinder-block block": block, "valve-seat seat": f'block_heated_to = "{own}"\n'}
    on = bench(tmp_path, files, "block")
    assert text(block_when_entering(on["seat"], on["block"], on.sheet)) == used


PASSAGE = 'carries = "{}"\n'


@pytest.mark.parametrize(
    ("carries", "partition", "steam"),
    [
        ("exhaust steam", 'live_side = "passage"\n', "live steam"),
        ("exhaust steam", 'exhaust_side = "passage"\nlive_side = "other"\n', "exhaust steam"),
        ("exhaust steam", 'exhaust_side = "passage"\n', "exhaust steam"),
        ("live steam", 'exhaust_side = "passage"\n', "live steam"),
    ],
)
def test_a_passage_on_the_live_side_holds_live_steam(
    tmp_path: Path, carries: str, partition: str, steam: str
) -> None:
    files = {
        "steam-passage passage": PASSAGE.format(carries),
        "steam-passage other": PASSAGE.format("live steam"),
        "partition partition": partition,
    }
    on = bench(tmp_path, files, "passage")
    assert steam_in(on["passage"], on.sheet).value == steam


VALVE = 'upper_beat.seat = "seat"\n{}'


@pytest.mark.parametrize(
    ("block", "valve", "bore"),
    [
        (
            '[ends.e]\nof_bore = "b"\n[seat_bores.s]\nend = "e"\n[bores.a]\n[bores.b]\n',
            'cylinder_bore = "a"\n',
            "b",
        ),
        ('[ends.e]\n[seat_bores.s]\nend = "e"\n[bores.a]\n[bores.b]\n', 'cylinder_bore = "a"\n', "a"),
        ("[seat_bores.s]\n[bores.a]\n[bores.b]\n", 'cylinder_bore = "a"\n', "a"),
        ("[seat_bores.s]\n[bores.a]\n", "", "a"),
    ],
)
def test_the_bore_that_a_valve_serves(tmp_path: Path, block: str, valve: str, bore: str) -> None:
    files = {
        "cylinder-block block": block,
        "valve-seat seat": 'pressed_into = "block"\nin_bore = "s"\n',
        "poppet-valve valve": VALVE.format(valve),
    }
    on = bench(tmp_path, files, "valve")
    assert bore_served(on["valve"], on.sheet) == bore


@pytest.mark.parametrize(
    ("zone", "wide"),
    [
        ('zone = "0.05 mm"\n', 0.05),
        ('diameter_zone = "0.08 mm"\nzone = "0.05 mm"\n', 0.08),
        ('zone = "0.05 mm"\nmodifier = "M"\nof = "bore"\n', 0.09),  # 0.04 mm of tolerance more
    ],
)
def test_a_zone_at_maximum_material_grows_by_its_size(tmp_path: Path, zone: str, wide: float) -> None:
    part = 'bore = "500 mm +0.04/0"\n[tolerances.t]\nform = "position"\nto = ["A"]\n' + zone
    on = bench(tmp_path, {"cylinder-liner liner": part}, "liner", readable=False)
    one = on["liner"].tolerances["t"]
    assert zone_of("t", "t", one, on["liner"], on.sheet) * 1e3 == pytest.approx(wide)


def test_a_zone_of_a_size_that_the_part_does_not_have_is_not_assessed(tmp_path: Path) -> None:
    part = '[tolerances.t]\nform = "position"\nto = ["A"]\nzone = "0.05 mm"\nmodifier = "M"\nof = "boore"\n'
    on = bench(tmp_path, {"cylinder-liner liner": part}, "liner", readable=False)
    with pytest.raises(NotAssessed, match="t holds at maximum material, and liner has no size of that name"):
        zone_of("t", "t", on["liner"].tolerances["t"], on["liner"], on.sheet)


def test_a_hole_is_as_stated_where_nothing_goes_through_it(tmp_path: Path) -> None:
    on = bench(tmp_path, {"cylinder-cover cover": 'central_hole = "100 mm"\n'}, "cover")
    assert hole_through(on["cover"], on.sheet) == pytest.approx(0.1)
