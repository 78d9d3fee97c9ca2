"""Results of earlier runs: every command that checks opens their folder, unless all is to be made anew."""

from __future__ import annotations

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
