"""Reading revisions and the index by the real git: any name, any place, and nothing in the work tree changed."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path

import pytest

from speclint.errors import OutputError, RevisionError
from speclint.repository import at_revision, staged, staged_changes
from speclint.repository.revisions import Blob, Snapshot, commit_of, ignored_files, lay_out
from tests.register.office import git


@pytest.fixture
def repo(tmp_path: Path) -> Path:
    """A repository with a name that has a space and a letter beyond ASCII."""
    root = tmp_path / "entwürfe 1"
    root.mkdir()
    git(root, "init", "--quiet", "--initial-branch=main")
    return root


def write(root: Path, **files: str) -> None:
    for name, text in files.items():
        (root / f"{name}.toml").write_text(text, encoding="utf-8", newline="\n")


def test_what_is_staged_is_read_and_not_what_lies_in_the_work_tree(repo: Path) -> None:
    write(repo, a="staged")
    git(repo, "add", ".")
    write(repo, a="since changed", b="not staged")
    found = staged(repo)
    assert (found.read("a.toml"), found.read("b.toml")) == (b"staged", None)
    assert (repo / "a.toml").read_text(encoding="utf-8") == "since changed"


def test_names_with_spaces_and_letters_beyond_ascii(repo: Path, tmp_path: Path) -> None:
    name = "blöcke links/стакан — ä\u00a0.toml"
    (repo / "blöcke links").mkdir()
    (repo / name).write_text("x", encoding="utf-8")
    git(repo, "add", ".")
    assert staged_changes(repo) == (name,)
    staged(repo).write_to(tmp_path / "out", lambda _: True)
    assert (tmp_path / "out" / name).read_bytes() == b"x"


def test_before_the_first_commit(repo: Path) -> None:
    assert staged_changes(repo) == ()
    write(repo, a="1")
    git(repo, "add", ".")
    assert commit_of(repo, "HEAD") is None
    assert staged_changes(repo) == ("a.toml",)
    with pytest.raises(RevisionError, match="HEAD: git has no such revision"):
        at_revision(repo, "HEAD")


def test_added_changed_deleted_and_moved_files_are_all_changes(repo: Path) -> None:
    write(repo, kept="1", changed="1", deleted="1", moved="long enough to be seen as the same file\n" * 5)
    git(repo, "add", ".")
    git(repo, "commit", "--quiet", "-m", "first")
    write(repo, changed="2", added="1")
    git(repo, "rm", "--quiet", "deleted.toml")
    git(repo, "mv", "moved.toml", "renamed.toml")
    git(repo, "add", ".")
    changes = ("added.toml", "changed.toml", "deleted.toml", "moved.toml", "renamed.toml")
    assert staged_changes(repo) == changes
    assert set(staged(repo).blobs) == {"added.toml", "changed.toml", "kept.toml", "renamed.toml"}
    assert set(at_revision(repo, "HEAD").blobs) == {"kept.toml", "changed.toml", "deleted.toml", "moved.toml"}


def test_a_design_in_a_folder_of_a_larger_repository(repo: Path) -> None:
    inner = repo / "sub folder"
    inner.mkdir()
    write(repo, outer="1")
    write(inner, inner="1")
    git(repo, "add", ".")
    assert set(staged(inner).blobs) == {"inner.toml"} == set(staged_changes(inner))
    git(repo, "commit", "--quiet", "-m", "first")
    assert set(at_revision(inner, "main").blobs) == {"inner.toml"}
    assert at_revision(inner, "main").read("inner.toml") == b"1"


def test_a_worktree_has_an_index_of_its_own(repo: Path, tmp_path: Path) -> None:
    write(repo, a="1")
    git(repo, "add", ".")
    git(repo, "commit", "--quiet", "-m", "first")
    other = tmp_path / "second tree"
    git(repo, "worktree", "add", "--quiet", str(other), "-b", "other")
    write(other, a="2")
    git(other, "add", ".")
    assert staged(other).read("a.toml") == b"2"
    assert staged(repo).read("a.toml") == b"1"
    assert (staged_changes(other), staged_changes(repo)) == (("a.toml",), ())


def test_a_file_only_meant_to_be_added_is_not_staged(repo: Path) -> None:
    write(repo, a="1", b="1")
    git(repo, "add", "a.toml")
    git(repo, "add", "--intent-to-add", "b.toml")
    assert set(staged(repo).blobs) == {"a.toml"} == set(staged_changes(repo))


def test_content_of_any_bytes_and_an_empty_file(repo: Path) -> None:
    (repo / "a.toml").write_bytes(b"\x00\xff\n\n")
    (repo / "b.toml").write_bytes(b"")
    git(repo, "-c", "core.autocrlf=false", "add", ".")
    found = staged(repo)
    assert (found.read("a.toml"), found.read("b.toml")) == (b"\x00\xff\n\n", b"")


@pytest.mark.skipif(os.name == "nt", reason="symbolic links need a privilege there")
def test_a_symbolic_link_is_refused_and_not_followed(repo: Path, tmp_path: Path) -> None:
    (repo / "link.toml").symlink_to("/etc/hostname")
    git(repo, "add", ".")
    with pytest.raises(RevisionError, match=r"link\.toml: a symbolic link as staged"):
        staged(repo).write_to(tmp_path / "out", lambda _: True)


@pytest.mark.parametrize("more", [0, 1])
def test_a_file_that_would_fill_the_memory_is_refused_by_its_size(
    repo: Path, tmp_path: Path, more: int
) -> None:
    (repo / "part.toml").write_bytes(b"#" * (10_000_000 + more))
    git(repo, "add", ".")
    if not more:
        assert len(staged(repo).read("part.toml") or b"") == 10_000_000
        return
    said = "part.toml: it has 10000001 bytes as staged, and at most 10000000 are read"
    with pytest.raises(RevisionError, match=said):
        staged(repo).read("part.toml")
    with pytest.raises(RevisionError, match=said):
        staged(repo).write_to(tmp_path / "copy", lambda _: True)


def test_an_unfinished_merge_is_refused(repo: Path) -> None:
    write(repo, a="1")
    git(repo, "add", ".")
    git(repo, "commit", "--quiet", "-m", "first")
    git(repo, "checkout", "--quiet", "-b", "other")
    write(repo, a="2")
    git(repo, "commit", "--quiet", "-a", "-m", "second")
    git(repo, "checkout", "--quiet", "main")
    write(repo, a="3")
    git(repo, "commit", "--quiet", "-a", "-m", "third")
    with pytest.raises(subprocess.CalledProcessError):
        git(repo, "merge", "--quiet", "other")
    with pytest.raises(RevisionError, match="a merge of this file is not finished"):
        staged(repo)


@pytest.mark.parametrize("revision", ["nowhere", "--all", "", "main:a.toml", "-x"])
def test_what_is_no_revision(repo: Path, revision: str) -> None:
    write(repo, a="1")
    git(repo, "add", ".")
    git(repo, "commit", "--quiet", "-m", "first")
    with pytest.raises(RevisionError, match="git has no such revision"):
        at_revision(repo, revision)


def test_a_folder_without_git(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))
    with pytest.raises(RevisionError, match="this is not a git repository: it has no revisions"):
        staged(tmp_path)
    with pytest.raises(RevisionError, match="this is not a git repository: it has no revisions"):
        at_revision(tmp_path, "HEAD")


def test_without_git_it_says_so(repo: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", "")
    with pytest.raises(RevisionError, match="git is not on the path"):
        staged(repo)


def test_what_a_hook_s_environment_says_of_its_place_does_not_mislead(
    repo: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A commit of some files only has an index of its own, named in the environment relative to the top."""
    inner = repo / "sub"
    inner.mkdir()
    write(inner, a="1")
    git(repo, "add", ".")
    other = tmp_path / "elsewhere"
    other.mkdir()
    git(other, "init", "--quiet")
    monkeypatch.setenv("GIT_DIR", str(other / ".git"))
    monkeypatch.setenv("GIT_WORK_TREE", str(other))
    assert set(staged(inner).blobs) == {"a.toml"}
    (repo / ".git" / "next-index").write_bytes((repo / ".git" / "index").read_bytes())
    write(inner, a="2")
    git(repo, "add", ".")
    monkeypatch.chdir(repo)
    monkeypatch.setenv("GIT_INDEX_FILE", ".git/next-index")
    assert staged(inner).read("a.toml") == b"1"


def test_reading_changes_nothing_of_the_repository(repo: Path, tmp_path: Path) -> None:
    write(repo, a="1", b="1")
    git(repo, "add", ".")
    git(repo, "commit", "--quiet", "-m", "first")
    write(repo, a="2")
    git(repo, "add", ".")
    before = {path: path.stat().st_mtime_ns for path in sorted(repo.rglob("*"))}
    staged(repo).write_to(tmp_path / "out", lambda _: True)
    at_revision(repo, "HEAD").write_to(tmp_path / "out", lambda _: True)
    staged_changes(repo)
    assert {path: path.stat().st_mtime_ns for path in sorted(repo.rglob("*"))} == before


def test_a_name_that_leads_out_is_not_written(repo: Path, tmp_path: Path) -> None:
    """As a tree may have that was not made by git itself."""
    write(repo, a="1")
    git(repo, "add", ".")
    known = staged(repo)
    crafted = Snapshot(repo, "as crafted", {"../out.toml": known.blobs["a.toml"], **known.blobs})
    (tmp_path / "to").mkdir()
    with pytest.raises(RevisionError, match=r"^\.\./out\.toml: this name leads out of the repository$"):
        crafted.write_to(tmp_path / "to", lambda _: True)
    assert not (tmp_path / "out.toml").exists()
    crafted.write_to(tmp_path / "to", lambda file: file == "a.toml")
    assert (tmp_path / "to" / "a.toml").read_bytes() == b"1"


def test_a_folder_without_room_is_one_line(repo: Path, tmp_path: Path) -> None:
    (repo / "sub").mkdir()
    write(repo / "sub", a="1")
    git(repo, "add", ".")
    (tmp_path / "to").mkdir()
    (tmp_path / "to" / "sub").write_text("no folder", encoding="utf-8")
    with pytest.raises(OutputError, match=r"a\.toml: cannot be written: (File exists|Not a directory)$"):
        staged(repo).write_to(tmp_path / "to", lambda _: True)
    (tmp_path / "to" / "sub").unlink()
    for _ in range(2):  # into a folder that is there, too
        staged(repo).write_to(tmp_path / "to", lambda _: True)


def test_several_contents_are_given_in_their_order(repo: Path, tmp_path: Path) -> None:
    """Contents of any length, one behind another in the answer of git."""
    texts = {"a": "", "b": "x\n", "c": "blob 3\nxyz", "d": "y" * 1000}
    write(repo, **texts)
    git(repo, "add", ".")
    found = staged(repo)
    found.write_to(tmp_path / "to", lambda _: True)
    for name, text in texts.items():
        assert (tmp_path / "to" / f"{name}.toml").read_text(encoding="utf-8") == text
        assert found.read(f"{name}.toml") == text.encode()


def test_what_git_has_no_content_of_is_told(repo: Path) -> None:
    write(repo, a="1")
    git(repo, "add", ".")
    known = staged(repo).blobs["a.toml"]
    lost = Snapshot(repo, "as crafted", {"b.toml": Blob(known.mode, "0" * len(known.name))})
    with pytest.raises(RevisionError, match=r"^b\.toml: git does not have its content as crafted$"):
        lost.read("b.toml")
    git(repo, "commit", "--quiet", "-m", "first")
    tree = Snapshot(
        repo, "as crafted", {"b.toml": Blob("100644", git(repo, "rev-parse", "HEAD^{tree}").strip())}
    )
    with pytest.raises(RevisionError, match="git does not have its content"):
        tree.read("b.toml")


@pytest.mark.parametrize(
    ("mode", "what"),
    [("120000", "a symbolic link"), ("160000", "no plain file"), ("040000", "no plain file"), ("100755", "")],
)
def test_only_a_plain_file_has_a_content(repo: Path, mode: str, what: str) -> None:
    write(repo, a="1")
    git(repo, "add", ".")
    found = Snapshot(repo, "at v1", {"a.toml": Blob(mode, staged(repo).blobs["a.toml"].name)})
    assert found.is_link("a.toml") is (mode == "120000")
    if not what:
        assert found.read("a.toml") == b"".join(found.blocks_of("a.toml")) == b"1"
        return
    said = f"^a\\.toml: {what} at v1; put the file itself in its place$"
    with pytest.raises(RevisionError, match=said):
        found.read("a.toml")
    with pytest.raises(RevisionError, match=said):
        found.blocks_of("a.toml")


def test_the_toml_files_that_git_ignores(repo: Path) -> None:
    write(repo, a="1", b="1", kept="1")
    (repo / "c.txt").write_text("", encoding="utf-8")
    (repo / ".gitignore").write_text("a.toml\nkept.toml\nc.txt\n", encoding="utf-8")
    git(repo, "add", "--force", "kept.toml")
    assert ignored_files(repo) == {"a.toml"}


@pytest.mark.skipif(os.name == "nt", reason="symbolic links need a privilege there")
def test_a_design_is_laid_out_with_what_its_settings_name_and_without_hidden_links(
    repo: Path, tmp_path: Path
) -> None:
    settings = 'materials = ["own.txt"]\n[signers]\nfile = "who"\n[concessions]\nfile = "kept/r"\n'
    for name in ("own.txt", "who", "kept/r", "note.txt", ".hidden/a.toml", "sub/b.TOML"):
        (repo / name).parent.mkdir(exist_ok=True)
        (repo / name).write_text(name, encoding="utf-8")
    write(repo, speclint=settings, part="x = 1\n")
    (repo / ".hidden" / "link.toml").symlink_to("a.toml")
    git(repo, "add", ".")
    found = lay_out(staged(repo), tmp_path / "to")
    assert found is not None
    assert found.signers_file == "who"
    laid = {
        path.relative_to(tmp_path / "to").as_posix()
        for path in (tmp_path / "to").rglob("*")
        if path.is_file()
    }
    assert laid == {"speclint.toml", "part.toml", "own.txt", "who", "kept/r", ".hidden/a.toml", "sub/b.TOML"}
    write(repo, speclint="[works\n")
    git(repo, "add", ".")
    assert lay_out(staged(repo), tmp_path / "bare") is None
    assert not (tmp_path / "bare" / "own.txt").exists()
    (repo / "open.toml").symlink_to("part.toml")
    git(repo, "add", ".")
    with pytest.raises(RevisionError, match=r"open\.toml: a symbolic link"):
        lay_out(staged(repo), tmp_path / "third")
