"""What changed code makes of the example is kept for nobody, and what the user keeps is read."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from speclint.checking import usual_folder
from tests import example
from tests.mutation import running


@pytest.fixture
def seen(monkeypatch: pytest.MonkeyPatch) -> list[tuple[Path, Path]]:
    """The folders that each assessment of the example keeps its results in, and reads those of the user from."""
    folders: list[tuple[Path, Path]] = []
    monkeypatch.setattr(
        example, "assessed", lambda: folders.append((usual_folder(), Path(os.environ[example.LENT])))
    )
    return folders


@pytest.mark.skipif(
    os.name == "nt", reason="the folder is moved by XDG_CACHE_HOME, and mutants are tried by forks"
)
def test_a_process_whose_code_is_changed_keeps_nothing_for_the_user(seen: list[tuple[Path, Path]]) -> None:
    users = usual_folder()
    running.assess_example()
    ((own, lent),) = seen
    assert lent == users
    assert own != users
    assert usual_folder() == users


@pytest.mark.skipif(
    not hasattr(os, "fork"), reason="a process of its own shares what is set here only by a fork"
)
def test_the_code_as_it_stands_keeps_its_results_for_the_user(
    seen: list[tuple[Path, Path]], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    told = tmp_path / "told"
    monkeypatch.setattr(
        example, "assessed", lambda: told.write_text(f"{usual_folder()}\n{os.environ[example.LENT]}")
    )
    running.keep_example.__wrapped__()
    assert told.read_text().splitlines() == [str(usual_folder())] * 2
    assert seen == []
