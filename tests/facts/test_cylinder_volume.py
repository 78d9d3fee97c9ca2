"""The volumes of a cylinder's end and the steam that it uses: 500 by 660 mm, a rod of 90 mm, 8 mm of clearance.

The front holds π 500²/4 × 660 = 129.591 dm³ and 9.5 + π 500²/4 × 8 = 11.0708 dm³ of clearance: 0.085429. At the back
the rod takes π 90²/4: π (500² − 90²)/4 = 189 987.9 mm²: 125.392 dm³ and 9.5 + 1.519903 = 11.0199 dm³: 0.087884.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.facts import (
    bore_as_drawn,
    clearance_share,
    greatest_bore,
    greatest_bore_as_drawn,
    piston_area,
    steam_by_cylinder,
)
from speclint.facts.cylinder_volume import rod_as_drawn
from speclint.handbook.steam import steam_density
from speclint.handbook.valve_events import End
from tests.facts.bench import Bench, bench

BLOCK = """[bores.main]
diameter = "480 mm"
last_bore = "500 mm"
[ends.front]
of_bore = "main"
side = "front"
clearance = "8 mm"
passage_volume = "9500 cm³"
[ends.back]
of_bore = "main"
side = "back"
clearance = "8 mm"
passage_volume = "9500 cm³"
[drive]
stroke = "660 mm"
rod_diameter = "80 mm"
"""
LINER = 'housed_in = "block"\nin_bore = "main"\nbore = "500 mm"\nlast_bore = "510 mm"\n'
ROD = 'carries = "piston"\ndiameter = "90 mm"\n'
DUTY = """[cases.running]
cut_off = "0.35"
live_pressure = "15 bar absolute"
live_temperature = "300 °C"
rotational_speed = "360 rev/min"
"""


def drawn(folder: Path, block: str = BLOCK, liner: str = LINER, rod: str = ROD, duty: str = DUTY) -> Bench:
    files = {"cylinder-block block": block, "duty duty": duty}
    if liner:
        files["cylinder-liner liner"] = liner
    if liner and rod:
        files |= {"piston piston": 'runs_in = "liner"\n', "piston-rod rod": rod}
    return bench(folder, files, "block")


@pytest.mark.parametrize(
    ("liner", "rod", "d", "d_r"), [(LINER, ROD, 500, 90), (LINER, "", 500, 80), ("", "", 480, 80)]
)
def test_what_is_drawn_goes_before_what_the_block_states(
    tmp_path: Path, liner: str, rod: str, d: float, d_r: float
) -> None:
    on = drawn(tmp_path, liner=liner, rod=rod)
    sizes = bore_as_drawn(on["block"], "main", on.sheet), rod_as_drawn(on["block"], "main", on.sheet)
    assert [1e3 * on.sheet.take("d", one) for one in sizes] == pytest.approx([d, d_r])
    front = piston_area(on["block"], "main", End.FRONT, on.sheet)
    back = piston_area(on["block"], "main", End.BACK, on.sheet)
    assert 1e6 * front == pytest.approx(math.pi / 4 * d**2)
    assert 1e6 * back == pytest.approx(math.pi / 4 * (d**2 - d_r**2))


@pytest.mark.parametrize(
    ("liner", "greatest"),
    [
        (LINER, 510),
        (LINER.replace('last_bore = "510 mm"\n', ""), 500),
        ("", 500),  # of the block itself, 480 new
    ],
)
def test_the_greatest_bore_of_a_life_is_the_last_that_is_stated(
    tmp_path: Path, liner: str, greatest: float
) -> None:
    on = drawn(tmp_path, liner=liner)
    assert 1e3 * greatest_bore_as_drawn(on["block"], "main", on.sheet) == pytest.approx(greatest)
    if liner:
        assert 1e3 * greatest_bore(on["liner"], on.sheet) == pytest.approx(greatest)


def test_the_share_of_clearance_of_each_end(tmp_path: Path) -> None:
    on = drawn(tmp_path)
    assert clearance_share(on["block"], "main", End.FRONT, on.sheet) == pytest.approx(0.085429, abs=1e-6)
    assert clearance_share(on["block"], "main", End.BACK, on.sheet) == pytest.approx(0.087884, abs=1e-6)


def used(on: Bench) -> float | None:
    return steam_by_cylinder(on["block"], on["duty"].cases["running"], on.sheet)


def by_hand(bore: float, clearance: float = 0.008, volume: float = 9.5e-3) -> float:
    """Both ends of six turns a second, filled up to a cut-off of 35 % with steam of 15 bar and 300 °C."""
    filled = math.pi / 4 * bore**2 * (0.35 * 0.66 + clearance) + volume
    return 2 * 6 * filled * steam_density(p=15e5, T=573.15)


@pytest.mark.parametrize(
    ("block", "liner", "expected"),
    [
        (BLOCK, LINER, by_hand(0.51)),  # at the last boring
        (BLOCK, "", by_hand(0.50)),
        (BLOCK.replace('"9500 cm³"', '"9900 cm³"', 1), LINER, by_hand(0.51, volume=9.9e-3)),
        (BLOCK.replace('clearance = "8 mm"', 'clearance = "10 mm"', 1), LINER, by_hand(0.51, 0.010)),
        (BLOCK.replace('passage_volume = "9500 cm³"\n', "", 1), LINER, None),
        (BLOCK.replace('clearance = "8 mm"\n', "", 1), LINER, None),
        (BLOCK, LINER.replace('last_bore = "510 mm"\n', ""), None),
        (BLOCK.replace('stroke = "660 mm"\n', ""), LINER, None),
        (BLOCK + "[bores.second]\n", LINER, None),  # of the other nothing is known
    ],
)
def test_the_steam_that_a_cylinder_can_use(
    tmp_path: Path, block: str, liner: str, expected: float | None
) -> None:
    found = used(drawn(tmp_path, block, liner))
    assert found == (None if expected is None else pytest.approx(expected, rel=1e-6))


@pytest.mark.parametrize("key", ["cut_off", "live_pressure", "live_temperature", "rotational_speed"])
def test_without_cut_off_steam_or_speed_it_is_not_known(tmp_path: Path, key: str) -> None:
    duty = "".join(line for line in DUTY.splitlines(keepends=True) if not line.startswith(key))
    assert used(drawn(tmp_path, duty=duty)) is None


def test_a_bore_without_ends_uses_nothing_that_is_known(tmp_path: Path) -> None:
    """Its block states the steam, the speed and the stroke."""
    bare = '[bores.main]\nlast_bore = "500 mm"\n[drive]\nstroke = "660 mm"\n'
    assert used(drawn(tmp_path, bare, "")) is None


PORT = 'in_block = "block"\nplace = "port"\nof_end = "front"\narea = "20000 mm²"\nlength = "350 mm"\n'


def test_where_its_ports_are_drawn_no_volume_need_be_stated(tmp_path: Path) -> None:
    """20 000 mm² over 350 mm are 7 dm³, more than the 6 dm³ of the back, whose volume must be stated."""
    block = BLOCK.replace('passage_volume = "9500 cm³"\n', "", 1).replace('"9500 cm³"', '"6000 cm³"')
    block += '[ports.front]\nof_end = "front"\n'
    files = {"cylinder-block block": block, "duty duty": DUTY, "cylinder-liner liner": LINER}
    on = bench(tmp_path, files | {"steam-passage port": PORT}, "block")
    assert used(on) == pytest.approx(by_hand(0.51, volume=7e-3), rel=1e-6)


def test_of_several_cylinders_the_one_that_takes_the_most_counts(tmp_path: Path) -> None:
    """Bored 510 mm in its liner, and 490 mm without one."""
    second = "".join(
        f'[ends.{side}-second]\nof_bore = "second"\nside = "{side}"\nclearance = "8 mm"\npassage_volume = "9500 cm³"\n'
        for side in ("front", "back")
    )
    for last, expected in ((490, 0.51), (530, 0.53)):
        folder = tmp_path / str(last)
        folder.mkdir()
        block = f'{BLOCK}[bores.second]\ndiameter = "480 mm"\nlast_bore = "{last} mm"\n{second}'
        assert used(drawn(folder, block)) == pytest.approx(by_hand(expected), rel=1e-6)
