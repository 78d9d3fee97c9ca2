"""The state of the TOML files of a repository: by their content, and afterwards by how they stand."""

from __future__ import annotations

import os
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from speclint.checking import toml_state
from speclint.checking.toml_state import TomlState

posix = pytest.mark.skipif(os.name == "nt", reason="links and pipes are made otherwise there")


@pytest.fixture
def root(tmp_path: Path) -> Path:
    (tmp_path / "covers").mkdir()
    (tmp_path / "covers" / "front.toml").write_text("a = 1\n", encoding="utf-8")
    (tmp_path / "duty.toml").write_text("b = 1\n", encoding="utf-8")
    (tmp_path / "front.pdf").write_text("as drawn", encoding="utf-8")
    return tmp_path


@pytest.fixture(params=["a moment ago", "long ago"])
def state(root: Path, request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> TomlState:
    """As it was read a moment after the files were written, or long after: then how they stand is enough."""
    now = time.time()
    monkeypatch.setattr(time, "time", lambda: now + (60.0 if request.param == "long ago" else 0.0))
    return TomlState(root)


def test_nothing_has_changed(state: TomlState, root: Path) -> None:
    assert state.still_stand()
    assert "covers/front.toml" in state
    assert "covers" not in state
    assert state.digest == TomlState(root).digest


def _written(root: Path) -> None:
    (root / "duty.toml").write_text("b = 2\n", encoding="utf-8")


def _replaced(root: Path) -> None:
    (root / "new").write_text("b = 2\n", encoding="utf-8")
    os.replace(root / "new", root / "duty.toml")


def _added(root: Path) -> None:
    (root / "more.TOML").write_text("", encoding="utf-8")


def _removed(root: Path) -> None:
    (root / "duty.toml").unlink()


def _renamed(root: Path) -> None:
    (root / "duty.toml").rename(root / "work.toml")


def _emptied(root: Path) -> None:
    (root / "duty.toml").write_text("", encoding="utf-8")


@pytest.mark.parametrize("change", [_written, _replaced, _added, _removed, _renamed, _emptied])
def test_every_change_is_seen(change: Callable[[Path], None], state: TomlState, root: Path) -> None:
    was = state.digest
    change(root)
    assert not state.still_stand()
    assert TomlState(root).digest != was


def test_other_files_do_not_count(state: TomlState, root: Path) -> None:
    (root / "front.pdf").write_text("drawn again", encoding="utf-8")
    assert state.still_stand()
    assert TomlState(root).digest == state.digest


def _back(root: Path) -> None:
    _written(root)
    (root / "duty.toml").write_text("b = 1\n", encoding="utf-8")


def _there_for_a_moment(root: Path) -> None:
    (root / "covers" / "more.toml").write_text("", encoding="utf-8")
    (root / "covers" / "more.toml").unlink()


@pytest.mark.parametrize("change", [_back, _there_for_a_moment])
def test_what_is_again_as_it_was_was_written_nevertheless(
    change: Callable[[Path], None], state: TomlState, root: Path
) -> None:
    time.sleep(0.02)  # more than a tick of the clock of a file system
    change(root)
    assert not state.still_stand()
    assert state.digest == TomlState(root).digest


def test_a_clock_that_does_not_tell_two_changes_apart(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What was written a moment before it was read is read again; what has stood long need not be."""
    young = TomlState(root)
    now = time.time()
    monkeypatch.setattr(time, "time", lambda: now + 60.0)
    settled = TomlState(root)
    monkeypatch.setattr(TomlState, "_held", lambda *_: ("another content", ()))
    assert not young.still_stand()
    assert settled.still_stand()


def test_a_file_that_is_not_read_in_one_piece(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    was = TomlState(root).digest
    read = os.read
    monkeypatch.setattr(os, "read", lambda handle, most: read(handle, min(most, 3)))
    assert TomlState(root).digest == was


@posix
def test_a_link_within_counts_by_its_content(root: Path) -> None:
    (root / "like.toml").symlink_to(root / "duty.toml")
    state = TomlState(root)
    assert state.still_stand()
    _written(root)
    assert not state.still_stand()


@posix
def test_a_link_that_leads_out_is_not_read(root: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    outside = tmp_path_factory.mktemp("outside") / "more.toml"
    outside.write_text("c = 1\n", encoding="utf-8")
    (root / "more.toml").symlink_to(outside)
    state = TomlState(root)
    outside.write_text("c = 2\n", encoding="utf-8")
    assert state.digest == TomlState(root).digest


@posix
def test_a_link_counts_where_the_system_follows_all(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (root / "like.toml").symlink_to(root / "duty.toml")
    usual = TomlState(root).digest
    monkeypatch.setattr(toml_state, "_READING", os.O_RDONLY)
    monkeypatch.setattr(toml_state, "_NOT_FOLLOWING", 0)
    state = TomlState(root)
    assert state.digest == usual
    _written(root)
    assert not state.still_stand()


@posix
def test_a_pipe_is_not_read(root: Path) -> None:
    was = TomlState(root).digest
    os.mkfifo(root / "pipe.toml")
    assert TomlState(root).digest != was
    assert TomlState(root).still_stand()


@posix
@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="the superuser reads everything")
def test_a_file_that_cannot_be_read_is_another(root: Path) -> None:
    state = TomlState(root)
    (root / "duty.toml").chmod(0)
    assert not state.still_stand()
    assert TomlState(root).digest != state.digest


@posix
def test_a_folder_that_is_a_link_counts(root: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    state = TomlState(root)
    (root / "more").symlink_to(tmp_path_factory.mktemp("more"))
    assert not state.still_stand()
    assert TomlState(root).digest != state.digest
