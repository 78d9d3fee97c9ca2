"""The port that a valve serves, and the volume beside an end of a cylinder."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint.facts import (
    all_ports_drawn,
    areas_of_port,
    openings_of_port,
    passages_of_port,
    volume_drawn,
    volume_of_passages,
)
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

BLOCK = """[bores.main]
[ends.front]
of_bore = "main"
side = "front"
[ends.back]
of_bore = "main"
side = "back"
[seat_bores.s]
end = "front"
[ports.f]
of_end = "front"
width = "400 mm"
height = "40 mm"
[ports.b]
of_end = "back"
width = "300 mm"
height = "40 mm"
"""
MORE = '[ports.x]\nof_end = "front"\nserves = "{}"\nwidth = "100 mm"\nheight = "40 mm"\n'
LINER = 'housed_in = "block"\nin_bore = "main"\n[ports.p]\nmatches = "{}"\nwidth = "350 mm"\nheight = "{}"\n'
VALVE = 'serves = "inlet"\nupper_beat.seat = "seat"\nport_area = "15000 mm²"\n'


def drawn(folder: Path, block: str = BLOCK, valve: str = VALVE, **more: str) -> Bench:
    kinds = {"liner": "cylinder-liner", "passage": "steam-passage"}
    files = {
        "cylinder-block block": block,
        "valve-seat seat": 'pressed_into = "block"\nin_bore = "s"\n',
        "poppet-valve valve": valve,
    }
    files |= {f"{kinds[name]} {name}": text for name, text in more.items()}
    return bench(folder, files, "valve")


def opened_by(on: Bench) -> dict[str, Any]:
    found = openings_of_port(on["valve"], on.sheet, on.sheet.take)
    return {name: pytest.approx(one.value) for name, one in found}


@pytest.mark.parametrize(
    ("block", "valve", "liner", "openings"),
    [
        (BLOCK, VALVE, LINER.format("f", "40 mm"), {"block": 0.016, "liner": 0.014}),
        (BLOCK, VALVE, LINER.format("b", "40 mm"), {"block": 0.016}),  # it matches that of the other end
        (BLOCK, VALVE, LINER.format("f", "40 mm").replace('matches = "f"\n', ""), {"block": 0.016}),
        (BLOCK, VALVE, LINER.format("f", "40 mm").replace('height = "40 mm"\n', ""), {"block": 0.016}),
        (BLOCK + MORE.format("inlet"), VALVE, "", {"block": 0.020}),  # 400 × 40 + 100 × 40
        (BLOCK + MORE.format("exhaust"), VALVE, "", {"block": 0.016}),
        (BLOCK + MORE.format("exhaust"), VALVE.replace('serves = "inlet"\n', ""), "", {"block": 0.020}),
        (BLOCK.replace('of_end = "front"\n', ""), VALVE, "", {}),
        (BLOCK.replace('width = "400 mm"\n', ""), VALVE, "", {}),
        (BLOCK.replace('[seat_bores.s]\nend = "front"\n', "[seat_bores.s]\n"), VALVE, "", {}),
    ],
)
def test_what_block_and_liner_open_to_a_port(
    tmp_path: Path, block: str, valve: str, liner: str, openings: dict[str, float]
) -> None:
    on = drawn(tmp_path, block, valve, **({"liner": liner} if liner else {}))
    assert openings == opened_by(on)


PASSAGE = 'valve = "valve"\nplace = "{}"\narea = "13000 mm²"\n'


@pytest.mark.parametrize(
    ("passage", "areas"),
    [
        (PASSAGE.format("port"), [0.015, 0.013, 0.016]),
        (PASSAGE.format("belt"), [0.015, 0.016]),
        (PASSAGE.format("port").replace('place = "port"\n', ""), [0.015, 0.016]),
        (PASSAGE.format("port").replace('area = "13000 mm²"\n', ""), [0.015, 0.016]),
    ],
)
def test_the_areas_of_a_port(tmp_path: Path, passage: str, areas: list[float]) -> None:
    on = drawn(tmp_path, passage=passage)
    assert areas_of_port(on["valve"], on.sheet) == pytest.approx(areas)
    assert len(passages_of_port(on["valve"], on.sheet)) == len(areas) - 2


PORT = 'in_block = "block"\nplace = "{place}"\nof_end = "{end}"\narea = "20000 mm²"\nlength = "350 mm"\n'
WHOLE = PORT.format(place="port", end="front")
ENDS = '[ends.front]\n{stated}[ends.back]\n[ports.f]\nof_end = "front"\n{more}'


def beside(folder: Path, stated: str = "", more: str = "", *passages: str) -> Bench:
    files = {"cylinder-block block": ENDS.format(stated=stated, more=more)}
    files |= {f"steam-passage p{number}": text for number, text in enumerate(passages)}
    return bench(folder, files, "block")


@pytest.mark.parametrize(
    ("passages", "volume"),
    [
        ((WHOLE,), 0.007),
        ((WHOLE, WHOLE), 0.014),
        ((PORT.format(place="port", end="back"),), None),
        ((PORT.format(place="belt", end="front"),), None),
        ((WHOLE.replace('place = "port"\n', ""),), None),
        ((WHOLE.replace('of_end = "front"\n', ""),), None),
        ((WHOLE.replace('area = "20000 mm²"\n', ""),), None),
        ((WHOLE.replace('length = "350 mm"\n', ""),), None),
        ((), None),
    ],
)
def test_the_volume_of_the_ports_that_are_drawn(
    tmp_path: Path, passages: tuple[str, ...], volume: float | None
) -> None:
    on = beside(tmp_path, "", "", *passages)
    found = volume_drawn(on["block"], "front", on.sheet, on.sheet.take)
    assert (None if found is None else found.value) == pytest.approx(volume)
    assert all_ports_drawn(on["block"], "front", on.sheet) == (volume is not None)


SECOND = '[ports.g]\nof_end = "front"\n'


@pytest.mark.parametrize(
    ("stated", "more", "passages", "volume"),
    [
        ("", "", (WHOLE,), 0.007),
        ('passage_volume = "9000 cm³"\n', "", (WHOLE,), 0.009),
        ('passage_volume = "6000 cm³"\n', "", (WHOLE,), 0.007),
        ('passage_volume = "12000 cm³"\n', "", (WHOLE,), 0.0105),  # at the most 1.5 × 7000
        ('passage_volume = "12000 cm³"\n', SECOND, (WHOLE,), 0.012),  # of two ports one is drawn
        ('passage_volume = "6000 cm³"\n', SECOND, (WHOLE,), 0.007),
        ('passage_volume = "12000 cm³"\n', "", (), 0.012),
    ],
)
def test_the_volume_at_an_end_is_within_what_is_drawn(
    tmp_path: Path, stated: str, more: str, passages: tuple[str, ...], volume: float
) -> None:
    on = beside(tmp_path, stated, more, *passages)
    found = volume_of_passages(on["block"], on["block"].ends["front"], "V", on.sheet)
    assert found == pytest.approx(volume)


@pytest.mark.parametrize(("more", "passages"), [("", ()), (SECOND, (WHOLE,))])
def test_unless_all_ports_are_drawn_the_volume_must_be_stated(
    tmp_path: Path, more: str, passages: tuple[str, ...]
) -> None:
    on = beside(tmp_path, "", more, *passages)
    with pytest.raises(NotAssessed, match="passage_volume is not stated"):
        volume_of_passages(on["block"], on["block"].ends["front"], "V", on.sheet)


def test_an_end_without_ports_has_not_all_of_them(tmp_path: Path) -> None:
    on = beside(tmp_path)
    assert not all_ports_drawn(on["block"], "back", on.sheet)
