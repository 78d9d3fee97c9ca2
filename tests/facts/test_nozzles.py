"""What exhausts through a blast nozzle."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import bores_on, cylinders_by_engine, cylinders_by_paths, opening_of
from speclint.facts.nozzles import cylinders_of, cylinders_on, flow_to
from speclint.facts.steam_states import SteamPath
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

NOZZLE = 'follows = "last"\nnozzles = 4\ndiameter = "60 mm"\ncylinders = 3\ncylinder_bore = "480 mm"\n'
LAST = 'follows = "first"\n{}'
FIRST = 'place = "passage"\n{}'
ENGINE = 'nozzle = "nozzle"\n'
CRANKS = '[cranks.left]\nblock = "block"\nbore = "a"\n[cranks.right]\nblock = "block"\nbore = "b"\n'
BLOCK = (
    '[bores.a]\ndiameter = "500 mm"\n[bores.b]\ndiameter = "520 mm"\n'
    '[ends.e]\nof_bore = "b"\n[seat_bores.s]\nend = "e"\n'
)


def drawn(
    folder: Path,
    engine: str = "",
    last: str = "",
    first: str = "",
    nozzle: str = NOZZLE,
    block: str = BLOCK,
    liner: str = "",
) -> Bench:
    files = {
        "blast-nozzle nozzle": nozzle,
        "steam-pipe last": LAST.format(last),
        "steam-passage first": FIRST.format(first),
        "cylinder-block block": block,
        "valve-seat seat": 'pressed_into = "block"\nin_bore = "s"\n',
        "poppet-valve valve": 'upper_beat.seat = "seat"\n',
        "poppet-valve loose": "",
    }
    files |= {"engine engine": engine} if engine else {}
    files |= {"cylinder-liner liner": liner} if liner else {}
    return bench(folder, files, "nozzle")


def value(found: object) -> float | None:
    return getattr(found, "value", None)


@pytest.mark.parametrize(
    ("engine", "last", "by_engine", "by_paths", "all_of_them"),
    [
        ("", "", None, None, 3),
        ("", "cylinders = 2\n", None, 2, 3),
        ("", "cylinders = 4\n", None, 4, 4),
        (ENGINE + CRANKS, "", 2, None, 2),
        (ENGINE + CRANKS, "cylinders = 4\n", 2, 4, 4),
        (ENGINE + CRANKS + '[cranks.middle]\nangle = "0 °"\n', "", 2, None, 2),  # no cylinder turns it
    ],
)
def test_the_cylinders_of_a_nozzle(
    tmp_path: Path,
    engine: str,
    last: str,
    by_engine: float | None,
    by_paths: float | None,
    all_of_them: float,
) -> None:
    on = drawn(tmp_path, engine, last)
    assert value(cylinders_by_engine(on["nozzle"], on.sheet)) == by_engine
    assert value(cylinders_by_paths(on["nozzle"], on.sheet)) == by_paths
    assert cylinders_on(on["nozzle"], on.sheet) == all_of_them


def test_a_nozzle_without_paths_has_none_by_them(tmp_path: Path) -> None:
    on = drawn(tmp_path, nozzle=NOZZLE.replace('follows = "last"\n', ""))
    assert cylinders_by_paths(on["nozzle"], on.sheet) is None
    assert cylinders_on(on["nozzle"], on.sheet) == 3


def test_without_a_word_of_its_own_the_paths_tell(tmp_path: Path) -> None:
    on = drawn(tmp_path, last="cylinders = 2\n", nozzle=NOZZLE.replace("cylinders = 3\n", ""))
    assert cylinders_on(on["nozzle"], on.sheet) == 2
    (tmp_path / "a").mkdir()
    bare = drawn(tmp_path / "a", nozzle=NOZZLE.replace("cylinders = 3\n", ""))
    with pytest.raises(NotAssessed, match="cylinders is not stated"):
        cylinders_on(bare["nozzle"], bare.sheet)


@pytest.mark.parametrize("last", ["", "cylinders = 2\n"])
def test_the_one_path_that_is_drawn_stands_for_all_cylinders(tmp_path: Path, last: str) -> None:
    """Three cylinders of 1.7 kg/s: 5.1 kg/s, whether or not the pipe says how many it serves."""
    on = drawn(tmp_path, last=last)
    assert flow_to(on["nozzle"], [((on["last"],), SteamPath((), 0.0, 1e5, 1.7))], on.sheet) == pytest.approx(
        5.1
    )


def test_cylinders_whose_path_is_not_drawn_have_the_greatest_flow(tmp_path: Path) -> None:
    """Of three cylinders one at 1.5 and one at 1.7 kg/s are drawn: 1.5 + 1.7 + 1.7 = 4.9 kg/s."""
    on = drawn(tmp_path, last="cylinders = 1\n")
    paths = [((on["last"],), SteamPath((), 0.0, 1e5, m)) for m in (1.7, 1.5)]
    assert flow_to(on["nozzle"], paths, on.sheet) == pytest.approx(4.9)


LINER = 'housed_in = "block"\nin_bore = "a"\nbore = "450 mm"\n'


@pytest.mark.parametrize(
    ("engine", "first", "liner", "bores"),
    [
        (ENGINE + CRANKS, "", "", ["500 mm", "520 mm"]),
        (ENGINE + CRANKS, "", LINER, ["450 mm", "520 mm"]),
        ("", 'valve = "valve"\n', "", ["520 mm"]),
        ("", 'valve = "loose"\n', "", ["480 mm"]),
        ("", "", "", ["480 mm"]),
    ],
)
def test_the_bores_of_a_nozzle(tmp_path: Path, engine: str, first: str, liner: str, bores: list[str]) -> None:
    on = drawn(tmp_path, engine, first=first, liner=liner)
    found = bores_on(on["nozzle"], on.sheet)
    assert [getattr(one, "text", "") for one in found] == bores


def test_a_bore_that_the_block_does_not_have_is_not_assessed(tmp_path: Path) -> None:
    files = {
        "blast-nozzle nozzle": NOZZLE.replace('follows = "last"\n', ""),
        "cylinder-block block": BLOCK,
        "engine engine": ENGINE + CRANKS.replace('bore = "b"', 'bore = "c"'),
    }
    on = bench(tmp_path, files, "nozzle", readable=False)
    with pytest.raises(NotAssessed, match=r"bore c is not stated in block\.toml"):
        bores_on(on["nozzle"], on.sheet)


def test_a_crank_of_the_only_bore_need_not_name_it(tmp_path: Path) -> None:
    crank = '[cranks.one]\nblock = "block"\n'
    block = '[bores.main]\ndiameter = "500 mm"\n[seat_bores.s]\n'
    on = drawn(tmp_path, ENGINE + crank, block=block)
    assert [bore for _, _, bore in cylinders_of(on["nozzle"], on.sheet)] == ["main"]


def test_the_opening_of_four_nozzles_of_60_mm(tmp_path: Path) -> None:
    """4 × π 60²/4 = 11 309.73 mm²."""
    on = drawn(tmp_path)
    assert opening_of(on["nozzle"], on.sheet) * 1e6 == pytest.approx(11309.73, abs=0.01)
