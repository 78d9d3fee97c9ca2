"""A folder of results: what it keeps and for how long, why it keeps nothing, and what is made from a file."""

from __future__ import annotations

import os
import pickle
from dataclasses import dataclass
from pathlib import Path

import pytest

from speclint.checking import KeptFolder
from speclint.checking.kept_folder import usual_folder
from speclint.checking.packing import packed, unpacked
from speclint.errors import Location
from speclint.rules import Consulted, Grade, NotAssessed, Unstated

#: Bytes that stand before each result: "speclint kept 2", an end of line, and a digest of 20.
BEFORE = 16 + 20


def names(folder: Path) -> set[str]:
    return {one.name for one in folder.iterdir()}


def test_a_folder_is_made_with_those_above_it_and_may_be_there_already(tmp_path: Path) -> None:
    place = tmp_path / "above" / "kept"
    KeptFolder(place).write("one", b"body")
    again = KeptFolder(place)
    assert again.why_not == ""
    assert again.read("one") == b"body"
    assert again.read("two") is None
    assert (place / "one").stat().st_size == BEFORE + 4


def test_a_place_that_is_no_folder_keeps_nothing_and_says_why(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("x", encoding="utf-8")
    kept = KeptFolder(tmp_path / "file" / "kept")
    assert kept.why_not.startswith(f"{tmp_path / 'file' / 'kept'}: ")
    assert "Errno" not in kept.why_not  # in the words of the system alone
    kept.write("one", b"body")
    assert kept.read("one") is None


@pytest.mark.skipif(not hasattr(os, "geteuid"), reason="this system has no such owners of files")
@pytest.mark.parametrize("mode", [0o720, 0o702])
def test_a_folder_that_a_group_or_all_may_write_to_is_not_used(tmp_path: Path, mode: int) -> None:
    place = tmp_path / "kept"
    KeptFolder(place).write("one", b"body")
    place.chmod(mode)
    assert KeptFolder(place).why_not == f"{place}: others may write to this folder"
    place.chmod(0o755)
    assert KeptFolder(place).read("one") == b"body"


@pytest.mark.skipif(not hasattr(os, "geteuid"), reason="this system has no such owners of files")
def test_a_folder_of_another_user_is_not_used(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    owner = os.geteuid()
    monkeypatch.setattr(os, "geteuid", lambda: owner + 1)
    assert KeptFolder(tmp_path / "kept").why_not.endswith("others may write to this folder")


def test_where_a_system_has_no_owners_a_folder_is_the_user_s(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delattr(os, "geteuid", raising=False)
    (tmp_path / "kept").mkdir()
    (tmp_path / "kept").chmod(0o777)
    assert KeptFolder(tmp_path / "kept").why_not == ""


def test_a_result_that_finds_no_room_leaves_nothing_behind(tmp_path: Path) -> None:
    """A folder stands where the file would be."""
    place = tmp_path / "kept"
    kept = KeptFolder(place, most=1)
    (place / "one").mkdir()
    kept.write("one", b"body")
    assert names(place) == {"one"}
    kept.tidy()
    assert kept.read("one") is None


@pytest.mark.parametrize(("most", "left"), [(200, {"old", "new"}), (199, {"new"}), (99, set())])
def test_what_was_used_the_longest_ago_goes_where_there_is_too_much(
    tmp_path: Path, most: int, left: set[str]
) -> None:
    place = tmp_path / "kept"
    kept = KeptFolder(place, most)
    for used, name in enumerate(("old", "new")):
        kept.write(name, bytes(100 - BEFORE))
        os.utime(place / name, (used, used))
    kept.tidy()
    assert names(place) == left


def test_a_run_that_kept_nothing_removes_nothing(tmp_path: Path) -> None:
    KeptFolder(tmp_path / "kept").write("one", b"body")
    KeptFolder(tmp_path / "kept", most=1).tidy()
    assert names(tmp_path / "kept") == {"one"}


def test_a_quarter_of_a_gibibyte_is_kept_and_no_more(tmp_path: Path) -> None:
    assert KeptFolder(tmp_path / "kept")._most == 268_435_456


def test_the_usual_folder_is_that_of_the_program_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[tuple[str, bool]] = []

    def folder_of(name: str, appauthor: bool) -> Path:
        asked.append((name, appauthor))
        return Path("caches") / name

    monkeypatch.setattr("platformdirs.user_cache_path", folder_of)
    assert usual_folder() == Path("caches/speclint/results")
    assert asked == [("speclint", False)]


@dataclass(frozen=True)
class Elsewhere:
    """Data, but none of speclint."""

    size: float


@pytest.mark.parametrize(
    "value",
    [
        Location("a.toml", 3, "bore"),
        Consulted({"a"}),
        Grade.HOLD,
        frozenset({"a", "b"}),
        {"a": [1, 2.5, None], "b": (True, {"x"})},
    ],
)
def test_data_are_read_as_they_were_kept(value: object) -> None:
    assert unpacked(packed(value), {}) == value


def test_why_a_rule_ended_is_read_as_it_was_kept() -> None:
    for ended in (NotAssessed("a"), Unstated("b", Location("a.toml", 3, "bore"))):
        found = unpacked(packed(ended), {})
        assert (type(found), found.args) == (type(ended), ended.args)


@pytest.mark.parametrize("value", [Elsewhere(1.0), KeptFolder, usual_folder, Path("a"), len])
def test_what_is_no_data_of_the_program_is_not_made(value: object) -> None:
    assert unpacked(pickle.dumps(value), {}) is None


def test_what_was_kept_under_another_name_is_not_taken(tmp_path: Path) -> None:
    kept = KeptFolder(tmp_path / "kept")
    kept.write("one", b"body")
    (tmp_path / "kept" / "one").rename(tmp_path / "kept" / "two")
    assert kept.read("two") is None
    kept.write("one", b"body")
    assert kept.read("one") == b"body"
