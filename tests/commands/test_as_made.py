"""speclint check --made: each part in words, as data and as Markdown; what the exit code says."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from speclint.commands import main
from speclint.testing import DesignFolder
from tests.made.test_judging import DRAWN, FINISHED_IN_PLACE, MADE
from tests.plugins.liners.bench import bench

SIZES = {"liner-a": "560.310 mm", "liner-b": "560.318 mm", "liner-c": "560.325 mm"}


@pytest.fixture(scope="module")
def works(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("works")
    made = {
        f"made/{name}.toml": MADE.replace("560.3 mm", size).replace("liner-7", name)
        for name, size in SIZES.items()
    }
    DesignFolder(root).write({**bench(DRAWN, FINISHED_IN_PLACE), **made})
    return root


def test_each_part_is_told_with_its_dimension_and_what_becomes_of_it(
    works: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", "--made", str(works), "--family", "liners"]) == 1
    said = " ".join(capsys.readouterr().out.split())
    assert "1 ready to concede, 1 undecided, 1 as drawn" in said
    assert said.index("liner-c, serial") < said.index("liner-b, serial") < said.index("liner-a, serial")
    assert "measured 560.325 mm, U = 4 µm, drawn 560.3 mm ±0.02: out" in said
    assert "margin: liner.fit-hot on liner uses" in said
    assert "support a competent person" in said


def test_paths_choose_the_parts_and_those_made_to_their_specs(
    works: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", "--made", str(works / "made" / "liner-a.toml"), "--as", "json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert main(["check", "--made", "--schema"]) == 0
    jsonschema.validate(data, json.loads(capsys.readouterr().out), jsonschema.Draft202012Validator)
    assert [(one["part"], one["outcome"]) for one in data["parts"]] == [("liner-a", "as drawn")]
    assert data["parts"][0]["dimensions"][0]["band"] == "560.306..560.314 mm"
    assert (
        main(["check", "--made", str(works / "liner.toml"), "--rule", "liner.fit-hot", "--as", "json"]) == 1
    )
    assert len(json.loads(capsys.readouterr().out)["parts"]) == 3


def test_as_markdown(works: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", "--made", str(works), "--rule", "liner.fit-hot", "--as", "markdown"]) == 1
    assert "| outside\\_diameter | 560\\.325 mm, U = 4 µm |" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("more", "said"),
    [
        (["--staged"], "leave out --staged"),
        (["--against", "HEAD"], "leave out --against"),
        (["--as", "csv"], "json or markdown, not as csv"),
    ],
)
def test_what_does_not_go_with_it_is_refused(
    works: Path, capsys: pytest.CaptureFixture[str], more: list[str], said: str
) -> None:
    assert main(["check", "--made", str(works), *more]) == 2
    assert said in capsys.readouterr().err


def test_where_no_part_is_made_that_is_no_pass(works: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", "--made", str(works / "ring.toml"), "--rule", "liner.fit-hot"]) == 1
    assert "no part as made" in capsys.readouterr().out


def test_settings_that_cannot_be_read_are_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    DesignFolder(tmp_path).write({"made.toml": MADE}, settings="[works\n")
    for words in (
        ["check", "--made", str(tmp_path)],
        ["pair", "cylinder-liner", "cylinder-block", "--in", str(tmp_path)],
    ):
        assert main(words) == 2
        told = capsys.readouterr()
        assert told.out == ""
        assert told.err.startswith("speclint: speclint.toml:1: ")
        assert "the header of a table is not closed" in told.err


def test_a_part_made_to_no_spec_is_one_of_those_at_its_own_place(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """What it was made to names nothing, so that the place of its record alone says whether it is meant."""
    lost = MADE.replace('of = "liner"', 'of = "linr"').replace("liner-7", "lost")
    DesignFolder(tmp_path).write(
        {**bench(DRAWN, FINISHED_IN_PLACE), "made/liner-7.toml": MADE, "lost/lost.toml": lost}
    )
    for place, parts in (("lost", ["lost"]), ("made", ["liner-7"]), ("liner.toml", ["liner-7"])):
        words = ["check", "--made", str(tmp_path / place), "--rule", "liner.fit-hot", "--as", "json"]
        assert main(words) == 2
        assert [one["part"] for one in json.loads(capsys.readouterr().out)["parts"]] == parts
