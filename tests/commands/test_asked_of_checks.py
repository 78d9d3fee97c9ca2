"""What is asked of check, read, review and dossier by their options: by a user's words, on a design of one tube."""

from __future__ import annotations

import datetime as dt
import json
from pathlib import Path

import pytest

from speclint.commands import main
from speclint.families import loading
from speclint.reports import hooks
from speclint.testing import DesignFolder
from tests import tubes
from tests.register.office import git
from tests.tubes import FILES


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    """A design of one tube, committed, in the current folder, and the family of tubes alone."""
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    monkeypatch.chdir(tmp_path)
    shop = DesignFolder(tmp_path, loading.load_families(built_in=hooks)).write(FILES)
    git(tmp_path, "init", "--quiet", "--initial-branch=main")
    git(tmp_path, "add", ".")
    git(tmp_path, "commit", "--quiet", "-m", "as it was")
    return shop


def said(capsys: pytest.CaptureFixture[str]) -> str:
    return " ".join(capsys.readouterr().out.split())


def test_a_rule_is_solved_for_a_value_alone(shop: DesignFolder, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(shop.root), "--solve", "tube.stress"]) == 2
    assert "say which one value is to be found" in capsys.readouterr().err


@pytest.mark.parametrize(("places", "full"), [(["tube.toml"], True), (["."], False), ([], False)])
def test_details_are_shown_where_one_spec_is_asked_about(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str], places: list[str], full: bool
) -> None:
    """At 45 bar the tube is a hold: its remedies stand there only where one spec, or --full, is asked for."""
    shop.replace("tube.toml", "30 bar", "45 bar")
    assert main(["check", *places]) == 1
    text = said(capsys)
    assert "tube.stress" in text
    assert ("pressure from 45 bar gauge to 39.8 bar gauge" in text) is full


def test_what_came_since_a_revision_is_told_by_the_rules_that_are_asked_for(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.replace("tube.toml", "30 bar", "45 bar")
    shop.replace("tube.toml", 'ends = "open"', 'ends = "closed"')
    assert main(["check", "--against", "HEAD", "--as", "json"]) == 1
    every = json.loads(capsys.readouterr().out)["changes"]
    assert main(["check", "--against", "HEAD", "--rule", "tube.ends", "--as", "json"]) == 0  # a query
    one = json.loads(capsys.readouterr().out)["changes"]
    assert {each["rule"] for each in every["new"]} == {"tube.stress", "tube.ends"}
    assert {each["rule"] for each in one["new"]} == {"tube.ends"}


def test_what_is_staged_is_checked_with_no_other_state(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    for more, told in (
        (["--against", "HEAD"], "what is staged is a change of the last commit: leave out --against"),
        (["--on", "localhost:1"], "what is staged is checked on this machine: leave out --on"),
    ):
        assert main(["check", "--staged", *more]) == 2
        assert capsys.readouterr().err == f"speclint: {told}\n"
    shop.replace("tube.toml", "30 bar", "45 bar")
    assert main(["check", "--staged"]) == 0  # nothing is staged yet
    capsys.readouterr()
    git(shop.root, "add", ".")
    assert main(["check", "--staged"]) == 1
    assert "tube.stress" in said(capsys)


def test_a_review_is_held_against_one_design(shop: DesignFolder, capsys: pytest.CaptureFixture[str]) -> None:
    words = ["review", str(shop.root), "tube.toml", "--against", "HEAD", "--to", "out"]
    assert main(words) == 2
    line = "speclint: --against holds one design against another: name one folder\n"
    assert capsys.readouterr().err == line
    assert not (shop.root / "out").exists()


@pytest.mark.parametrize(
    ("form", "begins"), [("html", "<!doctype html>"), ("markdown", "# "), ("json", "{"), ("", "# ")]
)
def test_the_record_is_written_in_the_form_that_is_asked_for(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str], form: str, begins: str
) -> None:
    main(["dossier", str(shop.root), *(["--as", form] if form else [])])
    assert capsys.readouterr().out.lower().startswith(begins)


def test_a_reading_that_is_entered_is_shown_as_the_register_has_it(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    shop.write(
        {
            "tube.svg": "<svg/>",
            "tube.toml": FILES["tube.toml"] + 'drawing = "T-1"\nrevision = "A"\ndrawing_file = "tube.svg"\n',
        },
        settings='[works]\nstage = "for-review"\n[reviewers."M. Coyle"]\nrole = "chief draughtsman"\n',
    )
    assert main(["read", "tube", "--by", "M. Coyle", "--in", str(shop.root)]) == 0
    text = said(capsys)
    assert text.startswith("R-001 entered in register.toml: tube ")
    assert "M. Coyle" in text
    assert "chief draughtsman" in text
    assert f"{dt.date.today()}" in text
