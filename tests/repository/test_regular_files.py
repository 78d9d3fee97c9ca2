"""Only regular files inside the repository are read, up to a size; everything else is said and never waited for."""

from __future__ import annotations

import errno
import os
import socket
import stat
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from speclint.reports import terminal_page
from speclint.repository import find_root, load_settings, not_regular, read_register, read_regular
from speclint.repository.regular_files import BLOCK, LARGEST, blocks_of, called
from speclint.testing import SETTINGS, DesignFolder
from tests.tubes import FILES, tubes

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="needs pipes, sockets and devices as files")


def link_out(path: Path) -> None:
    outside = path.parents[1] / "outside.toml"
    outside.write_text('kind = "tube"\n', encoding="utf-8")
    path.symlink_to(outside)


def link_to_pipe(path: Path) -> None:
    os.mkfifo(path.with_suffix(".pipe"))
    path.symlink_to(f"{path.stem}.pipe")


def unix_socket(path: Path) -> None:
    with socket.socket(socket.AF_UNIX) as made:
        here = os.getcwd()
        os.chdir(path.parent)  # the name of a socket is short
        try:
            made.bind(path.name)
        finally:
            os.chdir(here)


Make = Callable[[Path], None]
#: How to put something that is no regular file inside the repository in a place, and what it is called.
OTHERS: dict[str, tuple[Make, str]] = {
    "device": (lambda path: path.symlink_to("/dev/zero"), "a link that leads out of the repository"),
    "outside": (link_out, "a link that leads out of the repository"),
    "above": (lambda path: path.symlink_to(".."), "a link that leads out of the repository"),
    "nowhere": (lambda path: path.symlink_to("none.toml"), "a link that leads nowhere"),
    "itself": (lambda path: path.symlink_to(path.name), "a link that leads nowhere"),
    "pipe": (os.mkfifo, "a pipe"),
    "link to a pipe": (link_to_pipe, "a pipe"),
    "socket": (unix_socket, "a socket"),
    "folder": (os.mkdir, "a folder"),
}
others = pytest.mark.parametrize(("make", "said"), OTHERS.values(), ids=OTHERS)


@pytest.fixture
def root(tmp_path: Path) -> Path:
    folder = tmp_path / "design"
    folder.mkdir()
    return folder


@others
def test_what_is_no_regular_file_inside_is_told_and_not_read(root: Path, make: Make, said: str) -> None:
    make(root / "x.toml")
    assert not_regular(root, "x.toml") == said


def test_a_regular_file_a_link_to_one_inside_and_an_absent_one_are_no_fault(root: Path) -> None:
    (root / "a.toml").write_bytes(b"a")
    (root / "b.toml").symlink_to("a.toml")
    assert [not_regular(root, f"{name}.toml") for name in "abc"] == ["", "", ""]
    assert read_regular(root / "b.toml") == b"a"


def test_a_file_behind_a_folder_that_is_a_link_out_lies_outside(root: Path) -> None:
    (root.parent / "elsewhere").mkdir()
    (root / "folder").symlink_to(root.parent / "elsewhere")
    assert not_regular(root, "folder/x.toml") == "a link that leads out of the repository"


def test_a_pipe_that_takes_the_place_of_a_file_is_not_waited_for(
    root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It is looked at again once it is open: the first look here sees the regular file that was there."""
    path = root / "x.toml"
    path.write_bytes(b"")
    regular = os.stat(path)
    path.unlink()
    os.mkfifo(path)
    monkeypatch.setattr(os, "stat", lambda *_, **__: regular)
    began = time.monotonic()
    with pytest.raises(OSError, match="it is a pipe, and only regular files are read"):
        read_regular(path)
    assert time.monotonic() - began < 5


def test_no_block_of_a_pipe_that_takes_the_place_of_a_file_is_waited_for(
    root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = root / "x.toml"
    path.write_bytes(b"")
    regular = os.stat(path)
    path.unlink()
    os.mkfifo(path)
    monkeypatch.setattr(os, "stat", lambda *_, **__: regular)
    with pytest.raises(OSError, match="it is a pipe, and only regular files are read"):
        list(blocks_of(path))


@pytest.mark.parametrize("make", [os.mkdir, os.mkfifo, unix_socket])
def test_what_is_no_regular_file_is_refused_before_it_is_opened(
    root: Path, make: Make, monkeypatch: pytest.MonkeyPatch
) -> None:
    make(root / "x.toml")
    opened: list[object] = []
    monkeypatch.setattr(os, "open", lambda *some: opened.append(some))
    for read in (read_regular, lambda path: list(blocks_of(path))):
        with pytest.raises(OSError, match=r"it is a (folder|pipe|socket), and only regular files are read"):
            read(root / "x.toml")
    assert opened == []


def test_a_file_is_given_in_blocks(root: Path) -> None:
    for content in (b"", b"x", b"x" * BLOCK, b"x" * BLOCK + b"y"):
        (root / "a.bin").write_bytes(content)
        blocks = list(blocks_of(root / "a.bin"))
        assert b"".join(blocks) == content
        assert [len(block) for block in blocks] == [BLOCK] * (len(content) // BLOCK) + [
            len(content) % BLOCK
        ] * (len(content) % BLOCK > 0)


@pytest.mark.parametrize(
    ("mode", "what"),
    [
        (stat.S_IFREG, ""),
        (stat.S_IFDIR, "a folder"),
        (stat.S_IFCHR, "a device"),
        (stat.S_IFBLK, "a device"),
        (stat.S_IFLNK, "a link"),
        (0, "no regular file"),
    ],
)
def test_what_a_mode_is_called(mode: int, what: str) -> None:
    assert called(mode | 0o644) == what


@pytest.mark.parametrize("more", [0, 1])
def test_the_largest_file_that_is_read(root: Path, more: int) -> None:
    path = root / "x.toml"
    path.write_bytes(b"#" * (LARGEST + more))
    if not more:
        assert len(read_regular(path)) == 1_000_000
    else:
        with pytest.raises(OSError, match="it has 1000001 bytes, and at most 1000000 are read"):
            read_regular(path)


def test_a_file_with_holes_of_a_terabyte_is_refused_by_its_size_at_once(root: Path) -> None:
    with (root / "x.toml").open("wb") as file:
        file.truncate(10**12)
    with pytest.raises(OSError, match="it has 1000000000000 bytes"):
        read_regular(root / "x.toml")


@others
def test_settings_register_and_materials_that_are_no_regular_files_are_complaints(
    root: Path, make: Make, said: str
) -> None:
    named = 'materials = ["own.toml"]\n' + SETTINGS
    shop = DesignFolder(root, tubes()).write(FILES, settings=named)
    for name in ("own.toml", "register.toml"):
        make(root / name)
    complaints = [str(one) for one in shop.assess().complaints]
    assert len(complaints) == 2, complaints
    assert (
        complaints[0]
        == f'speclint.toml:1 materials: this is {said}, which is not read; read "own.toml"; write a file in it'
    )
    assert complaints[1].startswith(f"register.toml: this is {said}, which is not read")


@others
def test_settings_that_are_no_regular_file(root: Path, make: Make, said: str) -> None:
    make(root / "speclint.toml")
    settings, complaints = load_settings(root)
    assert settings is None
    assert [str(one) for one in complaints] == [
        f"speclint.toml: this is {said}, which is not read; write the file itself in its place"
    ]


def test_a_register_may_be_larger_than_a_spec(root: Path) -> None:
    shop = DesignFolder(root, tubes()).write(FILES)
    settings, _ = load_settings(shop.root)
    assert settings is not None
    (root / "register.toml").write_bytes(b"#" * (LARGEST + 1))
    assert read_register(root, settings).complaints == ()
    (root / "register.toml").write_bytes(b"#" * 10_000_001)
    (complaint,) = read_register(root, settings).complaints
    assert "it has 10000001 bytes, and at most 10000000 are read" in str(complaint)


@others
def test_a_spec_that_is_no_regular_file_is_passed_over_and_named(root: Path, make: Make, said: str) -> None:
    shop = DesignFolder(root, tubes()).write(FILES)
    make(root / "x.toml")
    assessment = shop.assess()
    assert assessment.complaints == ()
    assert len(assessment.checks) == 5
    expected = [] if said == "a folder" else [("x.toml", f"it is {said}")]
    if (root / "x.toml").is_dir() and expected:
        expected = [("x.toml/", "the folder is a link, and none is followed")]
    assert [(one.file, one.why) for one in assessment.passed_over] == expected


def test_a_spec_behind_a_link_inside_is_read_as_that_file(root: Path) -> None:
    shop = DesignFolder(root, tubes()).write({**FILES, "kept/spec.txt": FILES["tube.toml"]})
    (root / "tube.toml").unlink()
    (root / "tube.toml").symlink_to("kept/spec.txt")
    assert shop.assess().passed_over == ()
    assert len(shop.assess().checks) == 5


def test_a_folder_that_is_a_link_is_not_followed_and_named(root: Path) -> None:
    shop = DesignFolder(root, tubes()).write({**FILES, "parts/note.txt": ""})
    (root / "above").symlink_to("..")
    (root / "parts" / "again").symlink_to(root)
    (root / ".hidden").symlink_to("parts")
    why = "the folder is a link, and none is followed"
    assessment = shop.assess()
    assert [(one.file, one.why) for one in assessment.passed_over] == [("above/", why), ("parts/again/", why)]
    assert assessment.complaints == ()
    assert f"above/, parts/again/: {why}" in terminal_page.write(assessment, 100).text()


def test_a_folder_that_cannot_be_read_is_a_complaint(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It may hold specs: a check that passes it over would be clean without having looked."""
    shop = DesignFolder(root, tubes()).write({**FILES, "closed/x.toml": "="})
    scandir = os.scandir

    def refused(folder: str) -> object:
        if str(folder).endswith("closed"):
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), folder)
        return scandir(folder)

    monkeypatch.setattr(os, "scandir", refused)
    found = shop.assess()
    (one,) = found.complaints
    assert (one.where.file, one.message) == ("closed/", "the folder cannot be read: Permission denied")
    assert (found.exit_code, found.passed_over) == (2, ())
    shop.write({}, settings='leave_out = ["closed/*"]\n' + SETTINGS)
    found = shop.assess()
    (left_out,) = found.passed_over
    assert (left_out.file, left_out.why) == ("closed/", 'speclint.toml leaves out "closed/*"')
    assert (found.exit_code, found.complaints) == (0, ())


def test_a_settings_file_that_is_a_pipe_still_makes_the_root(root: Path) -> None:
    (root / "inner").mkdir()
    (root / "speclint.toml").write_text("", encoding="utf-8")
    os.mkfifo(root / "inner" / "speclint.toml")
    assert find_root([root / "inner"]) == root / "inner"
