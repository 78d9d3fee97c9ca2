"""speclint compare: two states of a design of one tube, the rules that judge both, and what is written of it."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import pytest

from speclint.commands import main
from speclint.families import loading
from speclint.reports import hooks
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.commands.test_progress import lines
from tests.register.office import git
from tests.reports.test_page import Terminal
from tests.tubes import FILES

EVERY = {one.name for one in tubes.RULES}
LEFT_OUT = SETTINGS + '[families]\nleave_out = ["tubes"]\n'


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> DesignFolder:
    """A tube at 45 bar in the current folder, that was committed at 30 bar, and the family of tubes alone."""
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    root = tmp_path / "shop"
    shop = DesignFolder(root, loading.load_families(built_in=hooks)).write(FILES)
    monkeypatch.chdir(root)
    git(root, "init", "--quiet", "--initial-branch=main")
    git(root, "add", ".")
    git(root, "commit", "--quiet", "-m", "as it was")
    return shop.replace("tube.toml", "30 bar", "45 bar")


@pytest.mark.usefixtures("shop")
def test_a_revision_is_held_against_the_folder_in_the_form_that_is_asked_for(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """At 45 bar the stress is a hold; the count of hoops stays, which the page has where all is asked for."""
    assert main(["compare", "HEAD"]) == 1
    page = capsys.readouterr().out
    assert page.startswith("From HEAD to the folder .\n")
    assert "tube, tube.stress (was conforms, is hold)" in page
    assert "tube, tube.hoops" not in page
    assert main(["compare", "HEAD", "--full"]) == 1
    assert "tube, tube.hoops" in capsys.readouterr().out
    assert main(["compare", "HEAD", "--as", "markdown"]) == 1
    assert capsys.readouterr().out.startswith("## From HEAD to the folder .\n")
    assert main(["compare", "HEAD", "HEAD"]) == 0
    assert capsys.readouterr().out.startswith("From HEAD to HEAD\n")


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    ("words", "rules"),
    [
        ([], EVERY),
        (["--rule", "tube.hoops"], {"tube.hoops"}),
        (["--family", "tubes"], EVERY),
    ],
)
def test_both_are_judged_by_the_rules_that_are_asked_for(
    words: list[str], rules: set[str], capsys: pytest.CaptureFixture[str]
) -> None:
    main(["compare", "HEAD", "--as", "json", *words])
    assert {one["rule"] for one in json.loads(capsys.readouterr().out)["margins"]} == rules


@pytest.mark.parametrize(
    ("words", "of_here", "of_other", "code"),
    [
        (["HEAD"], SETTINGS, SETTINGS, 1),
        (["HEAD"], LEFT_OUT, SETTINGS, 2),
        (["HEAD", "HEAD"], LEFT_OUT, SETTINGS, 2),  # of two revisions the settings of the repository say it
        (["HEAD", "../other"], LEFT_OUT, SETTINGS, 0),  # of a folder its own
        (["HEAD", "../other"], SETTINGS, LEFT_OUT, 2),
    ],
)
def test_no_rule_of_a_family_that_the_later_state_leaves_out_can_be_asked_for(
    shop: DesignFolder,
    capsys: pytest.CaptureFixture[str],
    words: list[str],
    of_here: str,
    of_other: str,
    code: int,
) -> None:
    shop.write({}, settings=of_here)
    DesignFolder(shop.root.parent / "other").write(FILES, settings=of_other)
    assert main(["compare", *words, "--rule", "tube.stress"]) == code
    told = "while speclint.toml leaves out the family tubes" in capsys.readouterr().err
    assert told is (code == 2)


@pytest.mark.usefixtures("shop")
def test_a_terminal_is_told_which_state_is_checked(monkeypatch: pytest.MonkeyPatch) -> None:
    stream = Terminal()
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(sys, "stderr", stream)
    assert main(["compare", "HEAD"]) == 1
    assert [one for one in lines(stream) if " of " not in one] == ["checking", "checking HEAD", "checking ."]


def test_its_schema_is_written_and_nothing_compared(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", "no such state", "--schema"]) == 0
    schema = json.loads(capsys.readouterr().out)
    assert schema["properties"]["schema"] == {"const": "speclint.comparison/1"}


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("HEAD", "nowhere"), "nowhere: git has no such revision"),
        (("nowhere", "HEAD"), "nowhere: git has no such revision"),
        (("HEAD", "tube.toml"), "tube.toml: neither a folder nor a report that ends in .json"),
    ],
)
def test_a_state_that_is_not_there_is_told_before_anything_is_checked(
    words: tuple[str, str], said: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def checked(*_: object, **__: object) -> None:
        raise AssertionError("a state was checked")

    monkeypatch.setattr("speclint.register.two_states.assess", checked)
    assert main(["compare", *words]) == 2
    assert said in capsys.readouterr().err
