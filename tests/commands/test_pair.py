"""speclint pair: the pairs, what is left and the finish size in words, as data and as Markdown; the exit codes."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import pytest

from speclint.commands import main
from speclint.testing import DesignFolder
from tests.made.test_judging import BLOCK_MADE, DRAWN, FINISHED_IN_PLACE, MADE
from tests.plugins.liners.bench import bench


@pytest.fixture(scope="module")
def works(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A bore that is made, and two liners for it: one as drawn, one on which metal was left."""
    root = tmp_path_factory.mktemp("works")
    liners = {
        f"made/{name}.toml": MADE.replace("560.3 mm", size).replace("liner-7", name)
        for name, size in (("liner-a", "560.310 mm"), ("liner-b", "560.900 mm"))
    }
    DesignFolder(root).write(
        {
            **bench(DRAWN, FINISHED_IN_PLACE),
            "made/block-1.toml": BLOCK_MADE,
            **liners,
        }
    )
    return root


def test_the_pairs_and_what_is_left_over(works: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["pair", "cylinder-liner", "cylinder-block", "--in", str(works)]) == 1
    said = " ".join(capsys.readouterr().out.split())
    assert "PARTS PAIRED 1 pair" in said
    assert "liner-a with block-1, as liner: " in said
    assert "Parts left over liner-b" in said
    assert "liner-b with block-1, as liner: may not be, liner.entering on liner" in said
    assert "support a competent person" in said


def test_the_pairs_as_data(works: Path, capsys: pytest.CaptureFixture[str]) -> None:
    words = ["pair", "cylinder-liner", "cylinder-block", "--in", str(works), "--rule", "liner.entering"]
    assert main([*words, "--as", "json"]) == 1
    data = json.loads(capsys.readouterr().out)
    assert [(one["part"], one["mates"]) for one in data["pairs"]] == [("liner-a", ["block-1"])]
    assert (data["left_over"], data["finish_sizes"]) == (["liner-b"], [])


@pytest.mark.long
def test_the_finish_size_where_no_liner_is_left_that_fits(
    works: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Turned to 560.3 mm or so, or its bore opened to 560.6 mm or so: metal comes off, and what is told was proved."""
    (works / "made" / "liner-a.toml").rename(works / "liner-a.kept")
    words = ["pair", "cylinder-liner", "cylinder-block", "--in", str(works), "--within", "5 µm"]
    words += ["--family", "liners"]
    assert main([*words, "--as", "json"]) == 1
    data = json.loads(capsys.readouterr().out)
    assert (data["schema"], data["pairs"], data["left_over"]) == ("speclint.pairs/1", [], ["liner-b"])
    assert data["empty"] == [{"as": "liner", "mates": ["block-1"]}]
    assert data["judged_by_alone"] == "liners"
    size, opened = data["finish_sizes"]
    assert (opened["of"], opened["part"], opened["key"]) == ("block-1", "liner-b", "bores.main.diameter")
    assert opened["proved"]
    assert 560.01 < float(opened["to"].split()[0]) < 560.9
    assert (size["of"], size["part"], size["key"], size["from"]) == (
        "liner-b",
        "liner-b",
        "outside_diameter",
        "560.896..560.904 mm",
    )
    assert size["proved"]
    assert size["to"].endswith(" mm ±0.005")
    assert 560.0 < float(size["to"].split()[0]) < 560.891
    (works / "liner-a.kept").rename(works / "made" / "liner-a.toml")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["cylinder-linr", "cylinder-block"], 'no kind is called cylinder-linr; write "cylinder-liner"'),
        (["cylinder-liner", "cylinder-block", "--within", "5"], "--within 5: "),
    ],
)
def test_what_cannot_be_meant_is_refused(
    works: Path, capsys: pytest.CaptureFixture[str], words: list[str], said: str
) -> None:
    assert main(["pair", *words, "--in", str(works)]) == 2
    assert said in capsys.readouterr().err


def test_where_nothing_is_measured_that_is_no_pass(works: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["pair", "piston-ring", "cylinder-liner", "--in", str(works)]) == 1
    assert "PARTS PAIRED" in capsys.readouterr().out


def test_as_markdown_by_one_rule_alone(works: Path, capsys: pytest.CaptureFixture[str]) -> None:
    words = ["pair", "cylinder-liner", "cylinder-block", "--in", str(works), "--rule", "liner.fit-hot"]
    assert main([*words, "--as", "markdown"]) in (0, 1)
    said = capsys.readouterr().out
    assert said.startswith("## ")
    assert "liner.fit-hot" in said.replace("\\", "")
    assert "liner-a" in said.replace("\\", "")


def test_its_schema_is_written_and_nothing_judged(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["pair", "no-kind", "no-kind", "--schema"]) == 0
    assert json.loads(capsys.readouterr().out)["properties"]["schema"] == {"const": "speclint.pairs/1"}


def test_without_what_chooses_the_pairs_nothing_is_judged(
    works: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def checked(*_: object, **__: object) -> None:
        raise AssertionError("the drawings were checked")

    monkeypatch.setattr("speclint.checking.loop.assess", checked)
    monkeypatch.setattr("speclint.checking.assess", checked)
    monkeypatch.setitem(sys.modules, "scipy", None)
    assert main(["pair", "cylinder-liner", "cylinder-block", "--in", str(works)]) == 2
    assert "scipy, which is not installed: pip install speclint[pairing]" in capsys.readouterr().err
