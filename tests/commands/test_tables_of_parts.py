"""speclint import and speclint export: which folder, which mapping, what is said, and what is refused."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from speclint.commands import main
from speclint.families import loading
from speclint.reports import hooks
from speclint.repository import Layout, read_shop_table
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import DUTY, RACK

ROW = "tube-{0},100 ±0.5,105\n"
HEADS = "id,bore (mm),outside (mm)\n"


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    """A design of a rack, in the current folder, and the family of tubes alone."""
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    monkeypatch.chdir(tmp_path)
    loaded = loading.load_families(built_in=hooks)
    return DesignFolder(tmp_path, loaded).write({"duty.toml": DUTY, "rack.toml": RACK})


def table(shop: DesignFolder, *rows: str, heads: str = HEADS) -> None:
    (shop.root / "tubes.csv").write_text(heads + "".join(rows), encoding="utf-8")


def run(*more: str) -> int:
    return main(["import", "tubes.csv", "--kind", "tube", *more])


@pytest.mark.parametrize(("more", "folder"), [((), "tube"), (("--into", "pipes/left"), "pipes/left")])
def test_specs_go_to_the_folder_of_the_kind_or_that_which_is_named(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str], more: tuple[str, ...], folder: str
) -> None:
    table(shop, ROW.format("a"))
    assert run(*more) == 0
    assert capsys.readouterr().out == f"1 spec written: {folder}/tube-a.toml\n"
    stated = tomllib.loads((shop.root / folder / "tube-a.toml").read_text(encoding="utf-8"))
    assert (stated["kind"], stated["bore"], stated["outside"]) == ("tube", "100 mm ±0.5", "105 mm")


def test_five_are_named_and_the_rest_is_counted(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    table(shop, *map(ROW.format, range(5)))
    assert run("--into", "five") == 0
    assert capsys.readouterr().out.endswith("five/tube-3.toml, five/tube-4.toml\n")
    table(shop, *map(ROW.format, range(7)))
    assert run("--into", "five") == 0  # five are there already
    assert capsys.readouterr().out == (
        "2 specs written: five/tube-5.toml, five/tube-6.toml; 5 there already, and the same\n"
    )
    table(shop, *map(ROW.format, range(20, 27)))
    assert run() == 0
    assert capsys.readouterr().out.endswith("tube/tube-24.toml, and 2 more\n")


def test_what_says_otherwise_is_replaced_only_where_that_is_asked(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    table(shop, ROW.format("a"))
    assert run() == 0
    table(shop, ROW.format("a").replace("105", "106"), ROW.format("b"))
    capsys.readouterr()
    assert run() == 1
    said = capsys.readouterr()
    assert said.out == "1 spec written: tube/tube-b.toml; 1 row refused\n"
    assert said.err.startswith("speclint: tubes.csv: row 2")
    assert 'outside = "105 mm"' in (shop.root / "tube" / "tube-a.toml").read_text(encoding="utf-8")
    table(shop, ROW.format("a").replace("105", "107"), ROW.format("b").replace("105", "107"))
    assert run() == 1
    assert capsys.readouterr().out == "no spec written; 2 rows refused\n"
    table(shop, ROW.format("a").replace("105", "106"))
    assert run("--replace") == 0
    assert 'outside = "106 mm"' in (shop.root / "tube" / "tube-a.toml").read_text(encoding="utf-8")


def test_nothing_new_says_so(shop: DesignFolder, capsys: pytest.CaptureFixture[str]) -> None:
    table(shop, ROW.format("a"))
    assert run() == 0
    capsys.readouterr()
    assert run() == 0
    assert capsys.readouterr().out == "no spec written; 1 there already, and the same\n"


def test_a_mapping_is_one_that_the_settings_name(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    table(shop, "a,105 mm\n", heads="Part,OD\n")
    (shop.root / "office.map").write_text(
        'into = "shop"\n[columns]\nPart = "id"\nOD = "outside"\n', encoding="utf-8"
    )
    assert run("--by", "office.map") == 2
    line = "speclint: office.map: speclint.toml names no such file under mappings in [tables]\n"
    assert capsys.readouterr().err == line
    shop.write({}, settings='[works]\nstage = "for-review"\n[tables]\nmappings = ["office.map"]\n')
    assert run("--by", "office.map") == 0
    assert capsys.readouterr().out == "1 spec written: shop/a.toml\n"
    assert 'outside = "105 mm"' in (shop.root / "shop" / "a.toml").read_text(encoding="utf-8")


def test_a_table_that_cannot_be_read_is_named(shop: DesignFolder, capsys: pytest.CaptureFixture[str]) -> None:
    table(shop, ROW.format("a"), heads="id,boer (mm),outside (mm)\n")
    assert run() == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.startswith("speclint: tubes.csv: ")
    assert "boer" in said.err
    assert not (shop.root / "tube").exists()


@pytest.mark.parametrize("word", ["import", "export"])
def test_a_kind_that_is_not_there_is_one_line(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str], word: str
) -> None:
    table(shop, ROW.format("a"))
    words = ["export", "tubee"] if word == "export" else ["import", "tubes.csv", "--kind", "tubee"]
    assert main([*words, "--in", str(shop.root)]) == 2
    said = capsys.readouterr().err
    assert "tubee" in said
    assert '"tube"' in said
    assert said.count("\n") == 1


def test_a_table_is_written_as_text_or_as_a_spreadsheet(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    table(shop, ROW.format("a"), ROW.format("b"))
    assert run() == 0
    capsys.readouterr()
    assert main(["export", "tube"]) == 0
    text = capsys.readouterr().out
    for name in ("out.csv", "out.CSV", "out.xlsx"):
        assert main(["export", "tube", "--to", name]) == 0
    assert (shop.root / "out.csv").read_bytes().decode() == (shop.root / "out.CSV").read_bytes().decode()
    assert (shop.root / "out.csv").read_text(encoding="utf-8").splitlines() == text.splitlines()
    one, other = (read_shop_table(shop.root / name, Layout()) for name in ("out.csv", "out.xlsx"))
    assert list(one.columns) == list(other.columns) == ["id", "bore (mm ±0.5)", "outside (mm)"]
    assert len(one.rows) == len(other.rows) == 2
    (shop.root / "rack.xlsx").mkdir()
    assert main(["export", "tube", "--to", "rack.xlsx"]) == 2  # a folder
    assert capsys.readouterr().err.startswith("speclint: rack.xlsx: ")
    assert main(["export", "tube", "--to", "out.ods"]) == 2
    line = "speclint: out.ods: a table is a file that ends in .csv or .xlsx\n"
    assert capsys.readouterr().err == line


def test_a_kind_of_which_there_is_no_part_is_no_empty_table(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["export", "tube"]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err == f"speclint: {shop.root}: no part is a tube\n"


def test_a_part_that_cannot_stand_in_the_table_is_told(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    table(shop, ROW.format("a"))
    assert run() == 0
    shop.write({"bad.toml": 'kind = "tube"\nbore = \n'})
    capsys.readouterr()
    assert main(["export", "tube"]) == 1
    said = capsys.readouterr()
    assert said.out.splitlines()[1:] == ["tube-a,100,105"]
    assert said.err == "speclint: not in the table: bad.toml: it cannot be read: speclint check\n"


def test_settings_that_cannot_be_read_give_no_table(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    table(shop, ROW.format("a"))
    assert run() == 0
    shop.write({}, settings="[works")
    capsys.readouterr()
    assert main(["export", "tube"]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.startswith("speclint: speclint.toml")
