"""What is asked of check, read, review and dossier by their options: by a user's words, on a design of one tube."""

from __future__ import annotations

import datetime as dt
import json
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest

from speclint.checking import Check, Processes
from speclint.commands import main
from speclint.families import loading
from speclint.reports import hooks
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.commands.test_progress import lines
from tests.register.office import git
from tests.reports.test_page import Terminal
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


@pytest.mark.parametrize(
    ("more", "rules"),
    [
        ([], {"tube.stress", "tube.ends"}),
        (["--rule", "tube.ends"], {"tube.ends"}),
        (["--family", "tubes"], {"tube.stress", "tube.ends"}),
    ],
)
def test_what_is_staged_is_checked_by_the_rules_that_are_asked_for_and_written_as_asked(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str], more: list[str], rules: set[str]
) -> None:
    shop.replace("tube.toml", "30 bar", "45 bar").replace("tube.toml", 'ends = "open"', 'ends = "closed"')
    git(shop.root, "add", ".")
    main(["check", "--staged", "--as", "json", *more])
    checks = json.loads(capsys.readouterr().out)["checks"]
    assert {one["rule"] for one in checks if one["outcome"] == "finding"} == rules


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--family", "tubes"], "the family tubes is left out by speclint.toml"),
        (
            ["--rule", "tube.stress"],
            "no rule is called tube.stress while speclint.toml leaves out the family tubes",
        ),
    ],
)
def test_a_rule_of_a_family_that_is_left_out_cannot_be_asked_for(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str], words: list[str], said: str
) -> None:
    shop.write({}, settings=SETTINGS + '[families]\nleave_out = ["tubes"]\n')
    assert main(["check", *words]) == 2
    assert said in capsys.readouterr().err


def test_what_is_staged_is_checked_by_the_families_that_are_left_out_only_here(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str]
) -> None:
    """The settings that are staged leave none out; those of the work tree are not those of the commit."""
    shop.replace("tube.toml", "30 bar", "45 bar")
    git(shop.root, "add", ".")
    shop.write({}, settings=SETTINGS + '[families]\nleave_out = ["tubes"]\n')
    assert main(["check", "--staged"]) == 1
    assert "tube.stress" in said(capsys)


REMEDIES, OTHERS = "looking for remedies", "checking what else rests on the same values"


@pytest.mark.parametrize(
    ("words", "pressure", "stages"),
    [
        ([], "45 bar", []),
        (["--full"], "45 bar", [REMEDIES]),
        (["--full", "--as", "json"], "45 bar", [REMEDIES]),
        (["--full", "--as", "csv"], "45 bar", []),  # a table has no remedies
        (["--rule", "tube.stress"], "45 bar", [OTHERS, REMEDIES]),
        (["--rule", "tube.stress"], "30 bar", [REMEDIES]),  # there is nothing to clear
        (["--against", "HEAD"], "45 bar", ["checking what there was at HEAD"]),
        (["--staged"], "45 bar", []),
        (["--staged", "--full"], "45 bar", [REMEDIES]),
        (["--staged", "--full", "--as", "json"], "45 bar", [REMEDIES]),
        (["--staged", "--full", "--as", "csv"], "45 bar", []),
        (["--staged", "--as", "json"], "45 bar", []),
    ],
    ids=lambda one: " ".join(one) if isinstance(one, list) else one,
)
def test_only_what_is_written_is_worked_out(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch, words: list[str], pressure: str, stages: list[str]
) -> None:
    """By the stages that a terminal is told: at 45 bar the tube is a hold, at 30 bar in order.

    Two specs are changed, since of one alone all is shown in full.
    """
    shop.replace("tube.toml", "30 bar", pressure).replace("rack.toml", "+0.1/0", "+0.2/0")
    git(shop.root, "add", ".")
    stream = Terminal()
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(sys, "stderr", stream)
    main(["check", *words])
    told = lines(stream)
    assert [one for one in told if " of " not in one] == ["checking", *stages]


@pytest.mark.parametrize(
    ("words", "rules"),
    [
        (["--full"], ["tube.ends", "tube.stress"]),
        (["--rule", "tube.stress"], ["tube.stress"]),
        (["--staged", "--full"], ["tube.ends", "tube.stress"]),
    ],
)
def test_remedies_are_sought_once_and_by_the_helpers(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch, words: list[str], rules: list[str]
) -> None:
    """Of the findings that are shown, and before anything is written: a report would seek each by itself."""
    shop.replace("tube.toml", "30 bar", "45 bar").replace("tube.toml", 'ends = "open"', 'ends = "closed"')
    git(shop.root, "add", ".")
    sought: list[list[str]] = []
    remedies = Processes.remedies

    def watched(self: Processes, firsts: Sequence[tuple[Check, Any]], *given: Any) -> Any:
        sought.append([found.rule.name for found, _ in firsts])
        return remedies(self, firsts, *given)

    monkeypatch.setattr(Processes, "remedies", watched)
    assert main(["check", *words]) == 1
    assert sought == [rules]


def test_a_check_is_shared_out_over_the_cluster_that_is_named(
    shop: DesignFolder, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    met: list[str] = []

    @contextmanager
    def cluster(address: str, on_part: Callable[[int, int], None]) -> Iterator[Processes]:
        met.append(address)
        with Processes(helpers=0, on_part=on_part) as processes:
            yield processes

    monkeypatch.setattr("speclint.checking.cluster", cluster)
    shop.replace("tube.toml", "30 bar", "45 bar")
    assert main(["check"]) == 1
    assert met == []
    assert main(["check", "--on", "tcp://one:8786", "--against", "HEAD"]) == 1
    assert met == ["tcp://one:8786"]  # what there was is checked on this machine
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


@pytest.mark.parametrize(("form", "begins"), [("json", "{"), ("csv", "component,rule"), ("", "margins ")])
def test_margins_are_written_in_the_form_that_is_asked_for(
    shop: DesignFolder, capsys: pytest.CaptureFixture[str], form: str, begins: str
) -> None:
    main(["margins", "--vary", "0", "--in", str(shop.root), *(["--as", form] if form else [])])
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
