"""The revision at which a design was checked, and which of its files are not as committed."""

from __future__ import annotations

import os
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path

import pytest

from speclint.repository import WorkTree, work_tree
from tests.register.office import git

READ = ("speclint.toml", "rod.toml", "allowed_signers")


@pytest.fixture
def design(tmp_path: Path) -> Path:
    git(tmp_path, "init", "--quiet", "--initial-branch=main")
    (tmp_path / "rod.toml").write_bytes(b'kind = "rod"\n')
    (tmp_path / "speclint.toml").write_bytes(b"[works]\n")
    (tmp_path / "notes.txt").write_bytes(b"no part of the design\n")
    git(tmp_path, "add", ".")
    git(tmp_path, "commit", "--quiet", "-m", "first")
    return tmp_path


def commit(root: Path) -> str:
    return git(root, "rev-parse", "HEAD").strip()


def test_a_design_as_committed_is_clean(design: Path) -> None:
    (design / "notes.txt").write_bytes(b"changed, and nothing that was read\n")
    assert work_tree(design, READ) == WorkTree(commit(design), ())


def test_line_ends_of_windows_are_no_change(design: Path) -> None:
    (design / "rod.toml").write_bytes(b'kind = "rod"\r\n')
    assert work_tree(design, READ) == WorkTree(commit(design), ())


def test_what_is_changed_added_or_removed_is_told(design: Path) -> None:
    """Also what is staged or ignored: it is not in the commit that is named."""
    (design / "rod.toml").write_bytes(b'kind = "rod"\nstroke = 1\n')
    git(design, "add", ".")
    (design / ".gitignore").write_bytes(b"allowed_signers\n")
    (design / "allowed_signers").write_bytes(b"m.coyle\n")
    (design / "speclint.toml").unlink()
    assert work_tree(design, READ) == WorkTree(
        commit(design), ("allowed_signers", "rod.toml", "speclint.toml")
    )


def test_a_folder_of_a_larger_repository_is_looked_at_alone(design: Path) -> None:
    inner = design / "engine"
    inner.mkdir()
    (inner / "rod.toml").write_bytes(b'kind = "rod"\n')
    git(design, "add", ".")
    git(design, "commit", "--quiet", "-m", "second")
    (design / "rod.toml").write_bytes(b"other\n")
    assert work_tree(inner, ("rod.toml",)) == WorkTree(commit(design), ())


def test_before_the_first_commit_every_file_is_told(tmp_path: Path) -> None:
    git(tmp_path, "init", "--quiet", "--initial-branch=main")
    (tmp_path / "rod.toml").write_bytes(b"")
    assert work_tree(tmp_path, READ) == WorkTree("", ("rod.toml",))


def test_without_git_no_revision_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))
    assert work_tree(tmp_path, READ) is None


def test_a_repository_that_names_its_objects_by_sha_256_is_read_as_well(tmp_path: Path) -> None:
    git(tmp_path, "init", "--quiet", "--initial-branch=main", "--object-format=sha256")
    (tmp_path / "rod.toml").write_bytes(b'kind = "rod"\n')
    git(tmp_path, "add", ".")
    git(tmp_path, "commit", "--quiet", "-m", "first")
    assert work_tree(tmp_path, READ) == WorkTree(commit(tmp_path), ())
    (tmp_path / "rod.toml").write_bytes(b'kind = "pin"\n')
    assert work_tree(tmp_path, READ) == WorkTree(commit(tmp_path), ("rod.toml",))


def test_every_toml_file_of_the_commit_is_looked_at_and_of_others_what_was_read(design: Path) -> None:
    (design / "more.toml").write_bytes(b"")
    git(design, "add", ".")
    git(design, "commit", "--quiet", "-m", "second")
    (design / "more.toml").unlink()
    (design / "notes.txt").write_bytes(b"changed\n")
    (design / "new.toml").write_bytes(b"")
    assert work_tree(design, ()) == WorkTree(commit(design), ("more.toml",))
    assert work_tree(design, ("notes.txt", "none.txt")) == WorkTree(
        commit(design), ("more.toml", "notes.txt")
    )


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs pipes as files")
def test_what_is_no_regular_file_any_more_is_changed(design: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (design / "rod.toml").unlink()
    os.mkfifo(design / "rod.toml")
    assert work_tree(design, READ) == WorkTree(commit(design), ("rod.toml",))
    os.mkfifo(design / "pipe")
    assert work_tree(design, ("pipe",)) == WorkTree(commit(design), ("rod.toml",))

    def refused(_: Path) -> Iterator[bytes]:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(import_module("speclint.repository.work_tree"), "blocks_of", refused)
    assert work_tree(design, ()) == WorkTree(commit(design), ("rod.toml", "speclint.toml"))
