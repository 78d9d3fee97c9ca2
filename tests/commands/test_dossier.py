"""speclint dossier: of the specs at some paths, with their pieces wherever the records lie."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from speclint.commands import main
from speclint.testing import DesignFolder, changed
from tests.plugins.release.made import recorded
from tests.plugins.release.part import settings


@pytest.fixture(scope="module")
def works(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("works")
    files = recorded()
    made = changed(files.pop("made.toml"), ('made_to = "A"', 'made_to = "0"'))
    DesignFolder(root).write({**files, "made/cover-7.toml": made}, settings=settings())
    return root


def test_one_spec_has_its_pieces_judged_too(works: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["dossier", str(works / "cover.toml"), "--as", "json"]) == 1
    [cover] = json.loads(capsys.readouterr().out)["parts"]
    assert cover["part"] == "cover"
    [piece] = cover["pieces"]
    assert (piece["part"], piece["old_revision"]) == ("cover-7", True)
    assert any(one.startswith("made.revision on cover-7") for one in cover["open"])


def test_where_there_is_no_such_part_that_is_no_pass(works: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["dossier", str(works / "cover.toml")]) == 1
    said = "Of 1 part that holds pressure or is a safety part, 0 are without a part as made on record, and 1 has "
    assert said in capsys.readouterr().out
    assert main(["dossier", str(works / "ring.toml")]) == 1
    assert "Of 0 parts that hold pressure or are safety parts" in capsys.readouterr().out
