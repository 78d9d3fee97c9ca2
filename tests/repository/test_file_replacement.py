"""A file is written whole or not at all, and never over a design, through a link or into a device."""

from __future__ import annotations

import errno
import os
import stat
import sys
from pathlib import Path

import pytest

from speclint.errors import OutputError
from speclint.repository import refuse_target, replace_file, write_output
from speclint.testing import SETTINGS, DesignFolder
from tests.tubes import FILES, tubes

posix = pytest.mark.skipif(sys.platform == "win32", reason="needs links, modes and devices as files")


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def full(*_: object, **__: object) -> int:
    raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))


def test_a_file_is_new_or_takes_the_place_of_another_and_nothing_else_is_left(tmp_path: Path) -> None:
    path = tmp_path / "report.json"
    for content in (b"first\n", b"second\r\n", b""):
        replace_file(path, content)
        assert path.read_bytes() == content
    assert names(tmp_path) == ["report.json"]


@pytest.mark.parametrize("fails", ["fsync", "replace", "open"])
def test_a_full_disk_leaves_what_was_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fails: str
) -> None:
    path = tmp_path / "report.json"
    path.write_bytes(b"old")
    with monkeypatch.context() as patch:
        patch.setattr(os, fails, full)
        with pytest.raises(
            OutputError, match=r"report\.json: cannot be written: No space left on device; what was there"
        ):
            replace_file(path, b"new")
        with pytest.raises(OutputError, match=r"other\.json: cannot be written: No space left on device$"):
            replace_file(tmp_path / "other.json", b"new")
    assert path.read_bytes() == b"old"
    assert names(tmp_path) == ["report.json"]


def test_a_disk_that_fills_while_it_is_written_leaves_what_was_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Half of the content is on the disk when the call fails."""

    class Filling:
        def __init__(self, descriptor: int, _mode: str) -> None:
            self.descriptor = descriptor

        def __enter__(self) -> Filling:
            return self

        def __exit__(self, *_: object) -> None:
            os.close(self.descriptor)

        def write(self, content: bytes) -> None:
            os.write(self.descriptor, content[: len(content) // 2])
            full()

    path = tmp_path / "report.json"
    path.write_bytes(b"old")
    monkeypatch.setattr(os, "fdopen", Filling)
    with pytest.raises(OutputError, match="No space left on device"):
        replace_file(path, b"new content")
    assert path.read_bytes() == b"old"
    assert names(tmp_path) == ["report.json"]


def test_an_interrupt_leaves_what_was_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "report.json"
    path.write_bytes(b"old")

    def interrupted(_: int) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", interrupted)
    with pytest.raises(KeyboardInterrupt):
        replace_file(path, b"new")
    assert path.read_bytes() == b"old"
    assert names(tmp_path) == ["report.json"]


def test_a_file_system_that_cannot_write_at_once_is_no_fault(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def not_known(_: int) -> None:
        raise OSError(errno.EINVAL, os.strerror(errno.EINVAL))

    monkeypatch.setattr(os, "fsync", not_known)
    replace_file(tmp_path / "report.json", b"new")
    assert (tmp_path / "report.json").read_bytes() == b"new"


@posix
def test_file_and_folder_are_written_onto_the_disk_before_it_is_said_to_be_done(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    synced: list[str] = []
    monkeypatch.setattr(
        os, "fsync", lambda one: synced.append("folder" if stat.S_ISDIR(os.fstat(one).st_mode) else "file")
    )
    replace_file(tmp_path / "report.json", b"new")
    assert synced == ["file", "folder"]


@posix
def test_who_may_read_it_stays(tmp_path: Path) -> None:
    path = tmp_path / "report.json"
    path.write_bytes(b"old")
    path.chmod(0o640)
    replace_file(path, b"new")
    assert stat.S_IMODE(path.stat().st_mode) == 0o640


def test_a_file_that_is_read_only_stays(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "report.json"
    path.write_bytes(b"old")
    monkeypatch.setattr(os, "access", lambda *_: False)  # as the mode alone does not stop a superuser
    with pytest.raises(OutputError, match=r"the file is read-only; what was there is left as it was"):
        replace_file(path, b"new")
    assert path.read_bytes() == b"old"


@posix
@pytest.mark.parametrize(
    ("made", "said"), [("link", "a link"), ("dangling", "a link"), ("pipe", "a pipe"), ("folder", "a folder")]
)
def test_what_is_no_regular_file_is_not_replaced(tmp_path: Path, made: str, said: str) -> None:
    other, path = tmp_path / "other", tmp_path / "report.json"
    other.write_bytes(b"kept")
    if made == "pipe":
        os.mkfifo(path)
    elif made == "folder":
        path.mkdir()
    else:
        path.symlink_to(other if made == "link" else tmp_path / "none")
    before = path.lstat()
    with pytest.raises(OutputError, match=f"this is {said}"):
        replace_file(path, b"new")
    with pytest.raises(OutputError, match=f"this is {said}"):
        write_output(path, "new")
    assert path.lstat().st_ino == before.st_ino
    assert other.read_bytes() == b"kept"
    assert not (tmp_path / "none").exists()


@posix
def test_a_device_is_not_replaced() -> None:
    with pytest.raises(OutputError, match="this is a device, which a report does not replace"):
        refuse_target(Path("/dev/null"))


@pytest.fixture
def design(tmp_path: Path) -> Path:
    settings = 'materials = ["own.txt"]\n' + SETTINGS + '[concessions]\nfile = "kept/conceded"\n'
    root = tmp_path / "design"
    DesignFolder(root, tubes()).write({**FILES, "own.txt": "", "kept/conceded": ""}, settings=settings)
    return root


@pytest.mark.parametrize(
    "file",
    [
        *("speclint.toml", "tube.toml", "new.toml", "new.TOML", "folder/new.toml", "kept/../tube.toml"),
        *("kept/conceded", "own.txt", "allowed_signers", "kept/../own.txt"),
    ],
)
def test_no_report_takes_a_name_of_the_design(design: Path, file: str) -> None:
    before = {path: path.read_bytes() for path in design.rglob("*") if path.is_file()}
    with pytest.raises(OutputError, match="this name belongs to the design in "):
        write_output(design / file, "report")
    assert {path: path.read_bytes() for path in design.rglob("*") if path.is_file()} == before


@pytest.mark.parametrize("file", [".git/hooks/pre-commit", ".git/config"])
def test_no_report_is_written_among_the_files_of_git(design: Path, file: str) -> None:
    (design / ".git" / "hooks").mkdir(parents=True)
    with pytest.raises(OutputError, match="git keeps its own files there"):
        write_output(design / file, "report")


def test_settings_that_cannot_be_read_protect_the_names_that_are_usual(design: Path) -> None:
    (design / "speclint.toml").write_text("=", encoding="utf-8")
    for file in ("register.toml", "allowed_signers"):
        with pytest.raises(OutputError, match="belongs to the design"):
            write_output(design / file, "report")


@posix
def test_a_folder_of_a_design_that_is_a_link_is_not_followed(design: Path) -> None:
    (design.parent / "elsewhere").mkdir()
    (design / "out").symlink_to(design.parent / "elsewhere")
    for place in ("out/report.json", "out/../report.json", "out"):
        with pytest.raises(OutputError, match="is a link"):
            write_output(design / place, "report")
    assert names(design.parent / "elsewhere") == []


@posix
def test_a_link_into_a_design_from_outside_is_no_way_round(design: Path) -> None:
    (design.parent / "door").symlink_to(design)
    with pytest.raises(OutputError, match="this name belongs to the design"):
        write_output(design.parent / "door" / "tube.toml", "report")


def test_other_names_in_a_design_and_any_outside_are_free(design: Path) -> None:
    for path in (design / "report.json", design / "kept" / "report.md", design.parent / "a.toml"):
        write_output(path, "réport\n")
        assert path.read_bytes() == "réport\n".encode()
    refuse_target(design)
    refuse_target(design / "kept")
    refuse_target(design / "review")


@posix
def test_all_of_a_file_is_handed_over_before_it_is_written_onto_the_disk_and_nothing_stays_open(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    sizes: list[int] = []
    opened: list[int] = []
    closed: list[int] = []
    fsync, open_, close = os.fsync, os.open, os.close

    def synced(descriptor: int) -> None:
        if stat.S_ISREG(os.fstat(descriptor).st_mode):
            sizes.append(os.fstat(descriptor).st_size)
        fsync(descriptor)

    def folder_opened(path: Path, *more: int) -> int:
        descriptor = open_(path, *more)
        if path == tmp_path:
            opened.append(descriptor)
        return descriptor

    def closing(descriptor: int) -> None:
        closed.append(descriptor)
        close(descriptor)

    monkeypatch.setattr(os, "fsync", synced)
    monkeypatch.setattr(os, "open", folder_opened)
    monkeypatch.setattr(os, "close", closing)
    replace_file(tmp_path / "report.json", b"new content")
    assert sizes == [11]
    assert len(opened) == 1
    assert closed == opened


@posix
def test_the_group_of_a_file_stays_and_one_that_may_not_be_given_is_no_fault(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "report.json"
    path.write_bytes(b"old")
    given: list[tuple[int, int]] = []

    def chown(part: Path, user: int, group: int) -> None:
        assert part.parent == tmp_path
        given.append((user, group))
        raise PermissionError(errno.EPERM, os.strerror(errno.EPERM))

    monkeypatch.setattr(os, "chown", chown)
    replace_file(path, b"new")
    assert given == [(-1, path.stat().st_gid)]
    assert path.read_bytes() == b"new"


def test_a_new_file_has_the_access_that_every_new_file_has(tmp_path: Path) -> None:
    replace_file(tmp_path / "report.json", b"new")
    (tmp_path / "other").write_bytes(b"")
    assert (tmp_path / "report.json").stat().st_mode == (tmp_path / "other").stat().st_mode
