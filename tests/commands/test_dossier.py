"""speclint dossier: of the specs at some paths, with their pieces wherever the records lie."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from speclint.checking import Assessment, assess
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


def test_of_several_paths_the_parts_at_any_are_meant(works: Path, capsys: pytest.CaptureFixture[str]) -> None:
    places = [str(works / "cover.toml"), str(works / "studs.toml")]
    assert main(["dossier", *places, "--as", "json"]) == 1
    assert [one["part"] for one in json.loads(capsys.readouterr().out)["parts"]] == ["cover", "studs"]


def test_only_what_is_asked_about_is_checked_with_its_own_pieces(
    works: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Of all pieces those that were made to it; of a piece that was made to nothing nobody can say of what it is."""
    (works / "made" / "lost.toml").write_text(
        'kind = "made-part"\nid = "lost"\nof = "nothing"\n', encoding="utf-8"
    )
    checked: list[set[str]] = []

    def watched(*given: Any, **more: Any) -> Assessment:
        made = assess(*given, **more)
        checked.append({one.component for one in made.checks})
        return made

    monkeypatch.setattr("speclint.checking.assess", watched)
    try:
        for place, parts in (("cover.toml", {"cover", "cover-7"}), ("studs.toml", {"studs", "studs-1"})):
            main(["dossier", str(works / place), "--as", "json"])
            assert checked.pop() == parts
    finally:
        (works / "made" / "lost.toml").unlink()


def test_its_schema_is_written_and_nothing_checked(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["dossier", "nowhere", "--schema"]) == 0
    assert json.loads(capsys.readouterr().out)["properties"]["schema"] == {"const": "speclint.dossier/1"}
