"""Only regular files inside the repository are read, up to a size; everything else is said and never waited for."""

from __future__ import annotations

import os
import socket
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from speclint.repository import load_settings, not_regular, read_register, read_regular
from speclint.repository.regular_files import LARGEST
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
        == f'speclint.toml materials: this is {said}, which is not read; read "own.toml"; write a file in it'
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
