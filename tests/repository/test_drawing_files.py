"""The digest of a drawing: of every byte, wherever the file lies, and of nothing that lies elsewhere."""

from __future__ import annotations

import hashlib
import os
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from speclint.errors import RevisionError
from speclint.repository import DrawingFiles, InFolder, InGit, at_revision, staged
from speclint.repository.drawing_files import _as_git_keeps, sha256_of, with_line_ends_of_git
from speclint.repository.regular_files import BLOCK
from tests.register.office import git

#: FIPS 180-4, worked example for SHA-256 of "abc" (NIST, examples with intermediate values).
ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"


def state_in(folder: Path, file: str) -> tuple[str, str]:
    found = DrawingFiles(InFolder(folder)).state(file)
    return found.sha256, found.fault


def test_the_digest_is_that_of_the_standard(tmp_path: Path) -> None:
    (tmp_path / "a.svg").write_bytes(b"abc")
    assert state_in(tmp_path, "a.svg") == (ABC, "")
    assert sha256_of([]) == hashlib.sha256(b"").hexdigest()


def test_a_file_of_several_blocks_counts_to_its_last_byte(tmp_path: Path) -> None:
    content = b"\0" + b"x" * (2 * BLOCK) + b"y"
    (tmp_path / "a.bin").write_bytes(content)
    assert state_in(tmp_path, "a.bin")[0] == hashlib.sha256(content).hexdigest()
    (tmp_path / "a.bin").write_bytes(content[:-1] + b"z")
    assert state_in(tmp_path, "a.bin")[0] != hashlib.sha256(content).hexdigest()


@pytest.mark.parametrize("cut", range(9))
def test_line_ends_of_a_text_make_no_difference_wherever_a_block_ends(cut: int) -> None:
    text = b"a\r\nb\r\r\nc\r"
    assert sha256_of([text[:cut], text[cut:]]) == hashlib.sha256(b"a\nb\r\nc\r").hexdigest()


def test_of_what_is_no_text_every_byte_counts() -> None:
    assert sha256_of([b"a\0\r\n"]) == hashlib.sha256(b"a\0\r\n").hexdigest()
    assert sha256_of([b"a", b"\0\r\n"]) == hashlib.sha256(b"a\0\r\n").hexdigest()


def test_a_file_is_read_once_and_only_when_it_is_asked_for(tmp_path: Path) -> None:
    (tmp_path / "a.svg").write_bytes(b"abc")
    files = DrawingFiles(InFolder(tmp_path))
    assert files.state("a.svg").sha256 == ABC
    (tmp_path / "a.svg").unlink()
    assert files.state("a.svg").sha256 == ABC


def test_what_is_no_file_of_the_repository_has_no_digest(tmp_path: Path) -> None:
    design = tmp_path / "design"
    (design / "folder").mkdir(parents=True)
    assert state_in(design, "a.svg") == ("", "is not there")
    assert state_in(design, "folder") == ("", "is a folder")


@pytest.mark.skipif(sys.platform == "win32", reason="links need a privilege there, and there are no pipes")
def test_a_link_that_leaves_and_a_pipe_are_not_read(tmp_path: Path) -> None:
    design = tmp_path / "design"
    design.mkdir()
    (tmp_path / "outside.svg").write_bytes(b"abc")
    (design / "inside.svg").write_bytes(b"abc")
    (design / "leaves.svg").symlink_to(tmp_path / "outside.svg")
    (design / "stays.svg").symlink_to("inside.svg")
    (design / "nowhere.svg").symlink_to("gone.svg")
    os.mkfifo(design / "pipe.svg")
    assert state_in(design, "leaves.svg") == ("", "is a link that leads out of the repository")
    assert state_in(design, "stays.svg") == (ABC, "")
    assert state_in(design, "nowhere.svg") == ("", "is a link that leads nowhere")
    assert state_in(design, "pipe.svg") == ("", "is a pipe")


def test_git_gives_what_is_staged_and_what_was_committed(tmp_path: Path) -> None:
    git(tmp_path, "init", "--quiet", "--initial-branch=main")
    (tmp_path / "a.svg").write_bytes(b"abc")
    git(tmp_path, "add", ".")
    git(tmp_path, "commit", "--quiet", "-m", "as it was")
    (tmp_path / "a.svg").write_bytes(b"abcd")
    git(tmp_path, "add", ".")
    (tmp_path / "a.svg").write_bytes(b"abcde")
    committed, index = (DrawingFiles(InGit(one)) for one in (at_revision(tmp_path, "HEAD"), staged(tmp_path)))
    assert committed.state("a.svg").sha256 == ABC
    assert index.state("a.svg").sha256 == hashlib.sha256(b"abcd").hexdigest()
    assert committed.state("b.svg").fault == "is not there at HEAD"
    assert index.state("b.svg").fault == "is not there as staged"


@pytest.mark.skipif(sys.platform == "win32", reason="links need a privilege there")
def test_a_link_that_git_has_is_not_followed(tmp_path: Path) -> None:
    git(tmp_path, "init", "--quiet", "--initial-branch=main")
    (tmp_path / "a.svg").symlink_to("b.svg")
    git(tmp_path, "add", ".")
    found = DrawingFiles(InGit(staged(tmp_path))).state("a.svg")
    assert found.fault == "is not read: a.svg: a symbolic link as staged; put the file itself in its place"


def sha256(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


@pytest.mark.parametrize(
    ("blocks", "plain"),
    [
        ([b"a\r\nb"], b"a\nb"),
        ([b"a\r", b"\nb"], b"a\nb"),
        ([b"a\r", b"b"], b"a\rb"),
        ([b"a\r"], b"a\r"),
        ([b"a\r", b"\r", b"\n"], b"a\r\n"),
        ([], b""),
    ],
)
def test_line_ends_are_those_of_git_wherever_a_block_ends(blocks: list[bytes], plain: bytes) -> None:
    assert b"".join(with_line_ends_of_git(blocks)) == plain
    assert sha256_of(blocks) == sha256(plain)


@pytest.mark.parametrize(("zero_at", "is_text"), [(None, True), (8000, True), (7999, False), (0, False)])
def test_a_zero_among_the_first_8000_bytes_makes_it_no_text(zero_at: int | None, is_text: bool) -> None:
    """gitattributes(5) and git's own buffer of 8000 bytes; in blocks of any size."""
    content = bytearray(b"x\r\n" * 4000)
    if zero_at is not None:
        content[zero_at] = 0
    kept = bytes(content).replace(b"\r\n", b"\n") if is_text else bytes(content)
    for size in (1000, 8000, 12_000):
        blocks = [bytes(content[at : at + size]) for at in range(0, len(content), size)]
        assert sha256_of(blocks) == sha256(kept)


@pytest.mark.parametrize(("size", "read"), [(4000, 2), (8000, 1), (9000, 1), (7999, 2)])
def test_no_more_is_read_at_once_than_is_looked_at(size: int, read: int) -> None:
    """A drawing may be larger than the memory."""
    taken: list[int] = []

    def blocks() -> Iterator[bytes]:
        for number in range(5):
            taken.append(number)
            yield b"x" * size

    next(_as_git_keeps(blocks()))
    assert len(taken) == read


class Failing:
    """A source that fails while it is read."""

    def __init__(self, problem: Exception) -> None:
        self.problem, self.asked = problem, 0

    def blocks(self, file: str) -> Iterator[bytes]:
        assert file == "a.svg"
        self.asked += 1
        yield b"a"
        raise self.problem


@pytest.mark.parametrize(
    ("problem", "fault"),
    [
        (OSError(5, "Input/output error"), "cannot be read: Input/output error"),
        (OSError("it is a pipe"), "cannot be read: it is a pipe"),
        (RevisionError("git has it not"), "cannot be read: git has it not"),
    ],
)
def test_what_fails_while_it_is_read_has_a_fault_and_no_digest(problem: Exception, fault: str) -> None:
    source = Failing(problem)
    files = DrawingFiles(source)
    for _ in range(2):
        assert (files.state("a.svg").sha256, files.state("a.svg").fault) == ("", fault)
    assert source.asked == 1
