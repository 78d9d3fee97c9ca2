"""Old keys on the command line: a note in every report, and no finding."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from speclint.commands import main
from speclint.testing import SETTINGS, DesignFolder
from tests.own_limits import own_limit

COVER = 'kind = "cylinder-cover"\nid = "cover"\ntitle = "Front cover"\nend = "front"\n'
SAYS = "write of_end, the end of the block"


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    monkeypatch.chdir(tmp_path)
    return DesignFolder(tmp_path).write({"cover.toml": COVER})


@pytest.mark.parametrize("command", ["check", "gate"])
def test_an_old_key_is_told_once(
    shop: DesignFolder, command: str, capsys: pytest.CaptureFixture[str]
) -> None:
    code = main([command])
    said = " ".join(capsys.readouterr().out.split())
    assert "OLD KEYS (1)" in said
    assert said.count(f"cover.toml:4 end: {SAYS}") == 1
    shop.write({"cover.toml": COVER.replace('end = "front"\n', "")})
    assert main([command]) == code
    assert "OLD KEYS" not in capsys.readouterr().out


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ([], "1 old key read: listed below. 1 limit set in speclint.toml: see --full."),
        (["--full"], "1 old key read, 1 limit set in speclint.toml: listed below."),
    ],
)
def test_page_one_says_where_they_are_listed(
    shop: DesignFolder, more: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """Old keys follow on the page, limits only with all details; other covers make the list longer than one spec's."""
    limit = own_limit("joint.separation", "joints", factor="1.3")
    shop.write(
        {f"{one}.toml": COVER.replace('"cover"', f'"{one}"').replace("end =", "of_end =") for one in "ab"}
    )
    shop.write({}, settings=SETTINGS + limit)
    main(["check", *more])
    page = " ".join(capsys.readouterr().out.split())
    assert said in page
    assert page.index("OLD KEYS (1)") > page.index(said)
    assert ("Limits set in speclint.toml: " in page) is bool(more)


@pytest.mark.parametrize("command", ["check", "gate"])
def test_the_document_has_it_as_data(
    shop: DesignFolder, command: str, capsys: pytest.CaptureFixture[str]
) -> None:
    main([command, str(shop.root), "--as", "json"])
    (note,) = json.loads(capsys.readouterr().out)["old_keys"]
    assert (note["file"], note["line"], note["key"], note["read"]) == ("cover.toml", 4, "end", '"front"')
    assert f"write {note['write']}".startswith(SAYS)


@pytest.mark.parametrize(
    ("form", "says"), [("markdown", "### 1 old key, read for one more edition"), ("sarif", '"level": "note"')]
)
def test_reports_for_forges_and_machines_tell_it(
    shop: DesignFolder, form: str, says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["check", str(shop.root), "--as", form])
    said = capsys.readouterr().out
    assert says in said
    assert "the end of the block" in said


def test_only_what_the_paths_point_at_is_told(shop: DesignFolder, capsys: pytest.CaptureFixture[str]) -> None:
    shop.write({"left/other.toml": COVER.replace('"cover"', '"other"')})
    main(["check", "left"])
    said = capsys.readouterr().out
    assert "left/other.toml:4" in said
    assert "cover.toml:4 end" not in said.replace("left/other.toml:4 end", "")
