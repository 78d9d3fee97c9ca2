"""Results of earlier runs: every command that checks opens their folder, unless all is to be made anew."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from speclint.checking import KeptFolder
from speclint.commands import main
from speclint.commands.loading import kept_folder
from speclint.families import loading
from speclint.reports import hooks
from speclint.testing import DesignFolder
from tests import tubes
from tests.register.office import git
from tests.tubes import FILES


@pytest.fixture
def results(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder of results, which is made when it is opened, beside a design of one tube in the current folder."""
    monkeypatch.setattr(loading, "installed", lambda: [tubes.entry_point("tubes")])
    root = tmp_path / "design"
    monkeypatch.chdir(DesignFolder(root, loading.load_families(built_in=hooks)).write(FILES).root)
    git(root, "init", "--quiet", "--initial-branch=main")
    git(root, "add", ".")
    folder = tmp_path / "results"
    monkeypatch.setattr("speclint.checking.usual_folder", lambda: folder)
    return folder


@pytest.mark.parametrize(
    "words",
    [
        ("affects", "tube.bore"),
        ("check",),
        ("check", "--made"),
        ("check", "--set", "tube.bore=101 mm"),
        ("check", "--staged"),
        ("compare", ".", "."),
        ("dossier",),
        ("inspect", "tube"),
        ("margins",),
        ("pair", "tube", "rack"),
        ("review", "--to", "../pack"),
        ("unseen",),
    ],
    ids=" ".join,
)
def test_the_folder_is_opened_unless_all_is_made_anew(words: tuple[str, ...], results: Path) -> None:
    main([*words, "--afresh"])
    assert not results.exists()
    main([*words])
    assert results.is_dir()


def test_the_gate_makes_all_anew_unless_it_may_take_what_was_kept(results: Path) -> None:
    main(["gate"])
    assert not results.exists()
    main(["gate", "--kept"])
    assert results.is_dir()


def test_a_folder_that_cannot_be_used_is_told_once_and_nothing_is_kept(
    results: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    results.write_text("a file, and no folder", encoding="utf-8")
    assert main(["check"]) == 0
    told = capsys.readouterr().err
    assert told.startswith(f"speclint: no results of earlier runs are used, and none are kept: {results}: ")
    assert told.count("\n") == 1
    assert main(["check", "--afresh"]) == 0
    assert capsys.readouterr().err == ""


def test_that_nothing_is_kept_cannot_be_told_and_the_check_is_made(
    results: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    class Full(io.StringIO):
        """An error stream on a disk that is full."""

        def write(self, _: str) -> int:
            raise OSError(28, "No space left on device")

    results.write_text("a file, and no folder", encoding="utf-8")
    monkeypatch.setattr("sys.stderr", Full())
    assert main(["check"]) == 0
    assert "IN ORDER" in capsys.readouterr().out


def test_what_is_opened_is_handed_to_the_checks(results: Path) -> None:
    assert isinstance(kept_folder(afresh=False), KeptFolder)
    assert results.is_dir()
    assert kept_folder(afresh=True) is None
