"""What an access plan has to reach, and how long what is drawn out is."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import chambers_of, joints_of, length_drawn_out, nuts_of, parts_drawn_out
from speclint.facts.drawn_out import own_length
from tests.facts.bench import Bench, bench

LINER = 'housed_in = "block"\nin_bore = "main"\nlength = "900 mm"\n'
STUDS = """holds = "cover"
fastener = "stud"
grip = "40 mm"
set_in = "5 mm"
tapped.engagement = "36 mm"
nut.engagement = "24 mm"
"""
COVER = 'closes = "block"\n'


def drawn(folder: Path, **changed: str) -> Bench:
    """A block with a liner and a cover on studs; ``changed`` are other texts by the ids of the parts."""
    files = {
        "cylinder-block block": "[bores.main]\n",
        "cylinder-liner liner": LINER,
        "cylinder-cover cover": COVER,
        "bolted-joint studs": STUDS,
    }
    files = {name: changed.get(name.split()[1], text) for name, text in files.items()}
    return bench(folder, files, "block")


def length_of(on: Bench, name: str) -> float | None:
    found = length_drawn_out(name, on["block"], on.sheet, on.sheet.take)
    return None if found is None else found.value


@pytest.mark.parametrize(
    ("kind", "sizes", "long"),
    [
        ("poppet-valve", 'height = "150 mm"\n', 0.15),
        ("compression-spring", 'free_length = "150 mm"\n', 0.15),
        ("piston-rod", 'free_length = "150 mm"\n', 0.15),
        ("valve-seat", 'length = "150 mm"\n', 0.15),
        ("piston", 'length = "150 mm"\n', 0.15),
        ("valve-spindle", 'heated_length = "150 mm"\n', 0.15),
        ("steam-pipe", "", None),
    ],
)
def test_each_kind_has_a_length_of_its_own_along_which_it_is_drawn_out(
    tmp_path: Path, kind: str, sizes: str, long: float | None
) -> None:
    on = bench(tmp_path, {f"{kind} part": sizes}, "part")
    found = own_length(on["part"])
    assert (found if found is None else on.sheet.take("l", found)) == long


@pytest.mark.parametrize(
    ("liner", "length"),
    [
        (LINER, 0.9),
        (LINER + 'collar.thickness = "25 mm"\n', 0.925),
        (LINER.replace('length = "900 mm"\n', 'collar.thickness = "25 mm"\n'), None),
    ],
)
def test_a_liner_is_drawn_out_by_its_length_and_its_collar(
    tmp_path: Path, liner: str, length: float | None
) -> None:
    assert length_of(drawn(tmp_path, liner=liner), "liner") == pytest.approx(length)


@pytest.mark.parametrize(
    ("studs", "cover", "length"),
    [
        (STUDS, COVER, 0.105),  # 36 + 5 + 40 + 24
        (STUDS + 'gasket.thickness = "2 mm"\n', COVER, 0.107),
        (STUDS, COVER + 'flange_thickness = "45 mm"\n', 0.110),
        (STUDS.replace('"stud"', '"bolt"'), COVER, None),
        (STUDS.replace('fastener = "stud"\n', ""), COVER, None),
        (STUDS.replace('set_in = "5 mm"\n', ""), COVER, None),
    ],
)
def test_a_stud_reaches_to_the_end_of_its_nut(
    tmp_path: Path, studs: str, cover: str, length: float | None
) -> None:
    assert length_of(drawn(tmp_path, studs=studs, cover=cover), "studs") == pytest.approx(length)


def test_studs_that_say_nothing_of_the_part_held_have_the_grip_they_state(tmp_path: Path) -> None:
    """36 + 5 + 40 + 24 = 105 mm."""
    loose = STUDS.replace('holds = "cover"', 'screwed_into = "block"')
    assert length_of(drawn(tmp_path, studs=loose), "studs") == pytest.approx(0.105)


def test_what_is_neither_studs_nor_liner_has_no_length(tmp_path: Path) -> None:
    assert length_of(drawn(tmp_path), "cover") is None


def test_nuts_are_those_of_the_block_its_covers_and_its_frames(tmp_path: Path) -> None:
    files = {
        "cylinder-block block": "[bores.main]\n[pads.front]\n",
        "cylinder-cover cover": COVER,
        "chamber-cover lid": 'closes = "block"\n',
        "bolted-joint on-cover": 'holds = "cover"\n',
        "bolted-joint on-lid": 'holds = "lid"\n',
        "bolted-joint on-block": 'screwed_into = "block"\n',
        "frame-fastening bolts": 'holds = "block"\npad = "front"\n',
    }
    on = bench(tmp_path, files, "block")
    assert set(joints_of(on["block"], on.sheet)) == {"on-cover", "on-lid", "on-block"}
    assert set(nuts_of(on["block"], on.sheet)) == {"on-cover", "on-lid", "on-block", "bolts"}


def test_chambers_are_chest_belt_and_valve_pocket(tmp_path: Path) -> None:
    places = ("chest", "belt", "valve pocket", "port", "passage", "branch")
    files = {
        f"steam-passage p{number}": f'in_block = "block"\nplace = "{place}"\n'
        for number, place in enumerate(places)
    }
    files |= {"cylinder-block block": "[bores.main]\n", "steam-passage p9": 'in_block = "block"\n'}
    on = bench(tmp_path, files, "block")
    assert {one.id for one in chambers_of(on["block"], on.sheet)} == {"p0", "p1", "p2"}


def test_valves_pistons_and_rods_are_drawn_out_of_a_block(tmp_path: Path) -> None:
    """A valve on two seats once, and each part behind the one that it follows."""
    files = {
        "cylinder-block block": "[bores.main]\n[seat_bores.upper]\n[seat_bores.lower]\n",
        "valve-seat s1": 'pressed_into = "block"\nin_bore = "upper"\n',
        "valve-seat s2": 'pressed_into = "block"\nin_bore = "lower"\n',
        "poppet-valve valve": 'upper_beat.seat = "s1"\nlower_beat.seat = "s2"\n',
        "valve-spindle spindle": 'moves = "valve"\n',
        "compression-spring spring": 'closes = "valve"\n',
        "cylinder-liner liner": LINER,
        "piston piston": 'runs_in = "liner"\n',
        "piston-rod rod": 'carries = "piston"\n',
    }
    on = bench(tmp_path, files, "block")
    found = [one.id for one in parts_drawn_out(on["block"], on.sheet)]
    assert found == ["s1", "s2", "valve", "spindle", "spring", "piston", "rod"]
