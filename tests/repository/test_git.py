"""Whatever a repository configures, reading it runs no program of its choice and fetches nothing."""

from __future__ import annotations

import os
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from speclint.errors import RevisionError
from speclint.repository import at_revision, find_program, staged, staged_changes, work_tree
from speclint.repository.git import environment, git as answer_of, run, stream
from speclint.repository.regular_files import BLOCK
from tests.register.office import git

pytestmark = pytest.mark.skipif(
    sys.platform == "win32", reason="the programs of these tests are shell scripts"
)


def program(path: Path, does: str) -> Path:
    path.write_text(f"#!/bin/sh\n{does}\n", encoding="utf-8")
    path.chmod(path.stat().st_mode | stat.S_IXUSR)
    return path


@pytest.fixture
def ran(tmp_path: Path) -> Path:
    """A file that is there once the program of a repository has been run."""
    return tmp_path / "it ran"


@pytest.fixture
def hostile(tmp_path: Path, ran: Path) -> Path:
    """A repository whose configuration, attributes and hooks all name one program."""
    root = tmp_path / "design"
    root.mkdir()
    git(root, "init", "--quiet", "--initial-branch=main")
    (root / "a.toml").write_text("committed", encoding="utf-8")
    (root / ".gitattributes").write_text("*.toml filter=own diff=own merge=own\n", encoding="utf-8")
    git(root, "add", ".")
    git(root, "commit", "--quiet", "-m", "first")
    (root / "a.toml").write_text("staged", encoding="utf-8")
    git(root, "add", ".")
    bad = program(root / "bad", f"touch '{ran}'; cat </dev/null")
    hooks = root / "hooks"
    hooks.mkdir()
    for hook in ("post-index-change", "reference-transaction", "fsmonitor-watchman", "pre-auto-gc"):
        program(hooks / hook, f"touch '{ran}'")
    named = (
        "core.fsmonitor",
        "core.pager",
        "core.sshCommand",
        "core.editor",
        "core.askPass",
        "diff.external",
    )
    drivers = ("filter.own.smudge", "filter.own.clean", "filter.own.process", "diff.own.textconv")
    more = ("diff.own.command", "gpg.program", "gpg.ssh.program", "credential.helper", "pager.ls-files")
    for key in (*named, *drivers, *more, "pager.ls-tree", "pager.cat-file", "pager.diff-index"):
        git(root, "config", key, str(bad))
    for word in ("ls-files", "ls-tree", "cat-file", "diff-index", "rev-parse"):
        git(root, "config", f"alias.{word}", f"!{bad}")
    git(root, "config", "core.hooksPath", str(hooks))
    ran.unlink(missing_ok=True)
    return root


def read_everything(root: Path, to: Path) -> None:
    for snapshot in (staged(root), at_revision(root, "HEAD")):
        snapshot.write_to(to / snapshot.called, lambda _: True)
    assert staged_changes(root) == ("a.toml",)
    assert (to / "as staged" / "a.toml").read_text(encoding="utf-8") == "staged"
    assert (to / "at HEAD" / "a.toml").read_text(encoding="utf-8") == "committed"


def test_no_program_that_a_repository_configures_is_run(hostile: Path, ran: Path, tmp_path: Path) -> None:
    read_everything(hostile, tmp_path / "out")
    assert not ran.exists()
    subprocess.run(["git", "status"], cwd=hostile, stdin=subprocess.DEVNULL, capture_output=True, check=False)
    assert ran.exists(), "git itself runs it, so that this test would see it"


def test_an_object_that_is_not_there_is_not_fetched(hostile: Path, ran: Path) -> None:
    """A partial clone may name any transport to fetch from, among them one that runs a program."""
    blob = git(hostile, "rev-parse", "HEAD:a.toml").strip()
    (hostile / ".git" / "objects" / blob[:2] / blob[2:]).unlink()
    for key, value in (
        ("core.repositoryFormatVersion", "1"),
        ("extensions.partialClone", "origin"),
        ("remote.origin.promisor", "true"),
        ("remote.origin.url", f"ext::{hostile}/bad"),
        ("protocol.ext.allow", "always"),
    ):
        git(hostile, "config", key, value)
    with pytest.raises(RevisionError, match=r"git"):
        at_revision(hostile, "HEAD").read("a.toml")
    assert not ran.exists()
    subprocess.run(
        ["git", "cat-file", "-p", blob],
        cwd=hostile,
        stdin=subprocess.DEVNULL,
        capture_output=True,
        check=False,
    )
    assert ran.exists(), "git itself fetches it, so that this test would see it"


def test_what_the_environment_says_to_run_is_not_run(
    hostile: Path, ran: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("GIT_EXTERNAL_DIFF", "GIT_PAGER", "GIT_SSH_COMMAND", "GIT_ASKPASS", "GIT_PROXY_COMMAND"):
        monkeypatch.setenv(name, str(hostile / "bad"))
        assert name not in environment()
    read_everything(hostile, tmp_path / "out")
    assert not ran.exists()
    monkeypatch.setenv("GIT_CONFIG_GLOBAL", "/somewhere")
    assert environment()["GIT_CONFIG_GLOBAL"] == "/somewhere", "where the user trusts a folder stands there"


def test_a_program_is_not_taken_from_the_current_folder(
    hostile: Path, ran: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """Neither by an entry of the path that is empty or relative, nor because a system looks there first."""
    program(hostile / "git", f"touch '{ran}'")
    program(hostile / "git.exe", f"touch '{ran}'")
    monkeypatch.chdir(hostile)
    monkeypatch.setenv("PATH", os.pathsep.join(["", ".", os.environ["PATH"]]))
    found = find_program("git")
    assert found is not None
    assert Path(found).parent != hostile
    read_everything(hostile, tmp_path / "out")
    assert not ran.exists()
    assert find_program("no-such-program-anywhere") is None


def test_a_replaced_object_is_not_read(hostile: Path, tmp_path: Path) -> None:
    """``git replace`` shows another content under the name of a commit: what is judged is the content itself."""
    other = tmp_path / "other"
    other.write_text("replaced", encoding="utf-8")
    blob = git(hostile, "rev-parse", "HEAD:a.toml").strip()
    written = git(hostile, "hash-object", "-w", "--no-filters", str(other)).strip()
    git(hostile, "replace", blob, written)
    assert git(hostile, "cat-file", "-p", blob) == "replaced"
    assert at_revision(hostile, "HEAD").read("a.toml") == b"committed"


def test_a_work_tree_is_compared_without_running_a_filter(hostile: Path, ran: Path) -> None:
    """Git itself would clean each changed file by the filter that its attributes name."""
    found = work_tree(hostile, ("a.toml",))
    assert found is not None
    assert found.changed == ("a.toml",)
    assert not ran.exists()


def test_what_git_refuses_is_told_in_its_own_last_words(hostile: Path) -> None:
    with pytest.raises(RevisionError) as refused:
        answer_of(hostile, "cat-file", "blob", "0" * 40)
    assert str(refused.value) == f"{hostile}: git cat-file: fatal: git cat-file {'0' * 40}: bad file"
    with pytest.raises(RevisionError, match="git rev-parse: it gave no reason"):
        answer_of(hostile, "rev-parse", "--verify", "--quiet", "nowhere")
    assert run(hostile, "rev-parse", "--verify", "--quiet", "nowhere").returncode != 0


def test_a_content_of_any_size_is_given_block_by_block(hostile: Path) -> None:
    content = b"x" * BLOCK + b"y"
    (hostile / "large.bin").write_bytes(content)
    name = git(hostile, "hash-object", "-w", "--no-filters", "large.bin").strip()
    assert [len(block) for block in stream(hostile, "cat-file", "blob", name)] == [BLOCK, 1]
    assert b"".join(stream(hostile, "cat-file", "blob", name)) == content
    with pytest.raises(RevisionError, match="git cat-file: it could not be read"):
        list(stream(hostile, "cat-file", "blob", "0" * 40))


def test_a_program_that_cannot_be_run_is_told(hostile: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: object, **__: object) -> None:
        raise OSError(12, "Cannot allocate memory")

    monkeypatch.setattr(subprocess, "run", refused)
    monkeypatch.setattr(subprocess, "Popen", refused)
    with pytest.raises(RevisionError, match=r"git could not be run: .*Cannot allocate memory"):
        run(hostile, "rev-parse")
    with pytest.raises(RevisionError, match=r"git could not be run: .*Cannot allocate memory"):
        list(stream(hostile, "rev-parse"))


def test_of_the_environment_only_what_places_the_repository_and_asks_nothing_is_kept(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("GIT_DIR", "GIT_WORK_TREE", "SSH_ASKPASS", "PAGER", "OWN", "GIT_QUARANTINE_PATH"):
        monkeypatch.setenv(name, "x")
    monkeypatch.delenv("GIT_INDEX_FILE", raising=False)
    monkeypatch.setenv("GIT_TERMINAL_PROMPT", "1")
    found = environment()
    assert not {"GIT_DIR", "GIT_WORK_TREE", "SSH_ASKPASS", "PAGER", "GIT_INDEX_FILE"} & found.keys()
    assert (found["OWN"], found["GIT_QUARANTINE_PATH"], found["GIT_TERMINAL_PROMPT"]) == ("x", "x", "0")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("GIT_INDEX_FILE", "own-index")
    assert environment()["GIT_INDEX_FILE"] == str(tmp_path / "own-index")
