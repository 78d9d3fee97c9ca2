"""What the engine says for all its blocks, and a crank for its own bore."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import connecting_rod_of, engine_of, stroke_of, turns_of_crank, worn_wheel
from speclint.quantities import Measure
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

ENGINE = 'stroke = "600 mm"\nconnecting_rod_length = "1800 mm"\n'
CRANK = '[cranks.{name}]\nblock = "block"\nbore = "{name}"\n{more}'


def drawn(
    folder: Path, drive: str = "", engine: str = ENGINE, bores: tuple[str, ...] = ("a", "b"), **cranks: str
) -> Bench:
    block = "".join(f"[bores.{name}]\n" for name in bores) + "[drive]\n" + drive
    text = engine + "".join(CRANK.format(name=name, more=more) for name, more in cranks.items())
    return bench(folder, {"cylinder-block block": block, "engine engine": text}, "block")


def text(found: object) -> str:
    return found.text if isinstance(found, Measure) else ""


@pytest.mark.parametrize(
    ("drive", "engine", "stroke"),
    [
        ("", ENGINE, "600 mm"),
        ('stroke = "660 mm"\n', ENGINE, "600 mm"),
        ('stroke = "660 mm"\n', "", "660 mm"),
        ("", "", ""),
    ],
)
def test_the_engine_goes_before_the_block(tmp_path: Path, drive: str, engine: str, stroke: str) -> None:
    on = drawn(tmp_path, drive, engine, a="", b="")
    found = stroke_of(on["block"], on.sheet)
    assert text(found) == stroke
    if not stroke:
        assert found is on["engine"].stroke  # the key that is to be stated


def test_without_an_engine_the_block_says_it(tmp_path: Path) -> None:
    on = bench(tmp_path, {"cylinder-block block": '[drive]\nstroke = "660 mm"\n'}, "block")
    assert engine_of(on["block"], on.sheet) is None
    assert text(stroke_of(on["block"], on.sheet)) == "660 mm"


def test_a_crank_has_a_stroke_of_its_own(tmp_path: Path) -> None:
    on = drawn(tmp_path, a="", b='stroke = "560 mm"\n')
    assert text(stroke_of(on["block"], on.sheet, "b")) == "560 mm"
    assert text(stroke_of(on["block"], on.sheet, "a")) == "600 mm"
    assert text(connecting_rod_of(on["block"], on.sheet, "b")) == "1800 mm"


@pytest.mark.parametrize(
    ("key", "says"), [("stroke", "stroke"), ("connecting_rod_length", "connecting rod length")]
)
def test_bores_that_are_not_alike_have_nothing_in_common(tmp_path: Path, key: str, says: str) -> None:
    on = drawn(tmp_path, a="", b=f'{key} = "1100 mm"\n')
    of_all = stroke_of if key == "stroke" else connecting_rod_of
    with pytest.raises(
        NotAssessed, match=f"a crank of block has a {says} of its own: its bores are not alike"
    ):
        of_all(on["block"], on.sheet)


def test_the_only_crank_is_that_of_all_bores(tmp_path: Path) -> None:
    on = drawn(tmp_path, bores=("a",), a='stroke = "560 mm"\n')
    assert text(stroke_of(on["block"], on.sheet)) == "560 mm"


def test_a_crank_names_its_bore_where_the_block_has_several(tmp_path: Path) -> None:
    engine = ENGINE + '[cranks.a]\nblock = "block"\nstroke = "560 mm"\n'
    alone = drawn(tmp_path, engine=engine, bores=("main",))
    assert text(stroke_of(alone["block"], alone.sheet, "main")) == "560 mm"
    (tmp_path / "two").mkdir()
    two = drawn(tmp_path / "two", engine=engine)
    with pytest.raises(NotAssessed, match=r"cranks\.a\.bore is not stated"):
        stroke_of(two["block"], two.sheet, "a")


def test_two_engines_cannot_have_one_block(tmp_path: Path) -> None:
    engine = ENGINE + CRANK.format(name="a", more="")
    files = {"cylinder-block block": "[bores.a]\n", "engine one": engine, "engine two": engine}
    on = bench(tmp_path, files, "block")
    with pytest.raises(NotAssessed, match="the cranks of one and two all name block"):
        engine_of(on["block"], on.sheet)


@pytest.mark.parametrize(("engine", "turns"), [(ENGINE, 1.0), ('gear_ratio = "2.5"\n', 2.5)])
def test_a_crank_turns_with_the_wheel_unless_it_is_geared(tmp_path: Path, engine: str, turns: float) -> None:
    on = drawn(tmp_path, engine=engine, a="", b="")
    assert turns_of_crank(on["block"], on.sheet, on.sheet.take) == turns


def test_worn_wheels_are_those_of_the_engine(tmp_path: Path) -> None:
    wheels = 'driving_wheel_diameter = "1750 mm"\nleast_wheel_diameter = "1675 mm"\n'
    on = drawn(tmp_path, engine=wheels, a="", b="")
    assert text(worn_wheel(on["block"], on.sheet)) == "1675 mm"
