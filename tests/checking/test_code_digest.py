"""The digest of the code is worked again where a file of it is another, and taken from an earlier run where none is."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Callable, Iterator
from importlib import invalidate_caches
from pathlib import Path
from types import ModuleType, SimpleNamespace

import pytest

from speclint.checking import KeptFolder, code_digest
from speclint.families import Family, Loaded

#: One family of two files, in a package of its own.
FAMILY = Loaded(families=(Family("drawn", "speclint_drawn_here", None),))


@pytest.fixture
def package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The package of the family; speclint itself is left out, to be quick."""
    folder = tmp_path / "speclint_drawn_here"
    (folder / "data").mkdir(parents=True)
    (folder / "__init__.py").write_text("a = 1\n", encoding="utf-8")
    (folder / "data" / "table.csv").write_text("1;2\n", encoding="utf-8")
    monkeypatch.syspath_prepend(tmp_path)
    whole = code_digest._files_of
    monkeypatch.setattr(code_digest, "_files_of", lambda name: () if name == "speclint" else whole(name))
    return folder


@pytest.fixture
def run(package: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Callable[[], tuple[str, bool]]]:
    """One run: the digest, and whether the files were read for it."""
    kept = KeptFolder(package.parent / "kept")
    monkeypatch.setattr(code_digest, "STILL", -60.0)  # files count as having stood long enough

    def once() -> tuple[str, bool]:
        forget()
        found = code_digest.code_of(FAMILY, kept)
        return found, code_digest._of_package.cache_info().currsize > 0

    def forget() -> None:
        invalidate_caches()
        code_digest._beside.clear()
        code_digest._standing.cache_clear()
        code_digest._of_package.cache_clear()

    yield once
    forget()


def test_files_that_stand_as_they_did_are_not_read_again(run: Callable[[], tuple[str, bool]]) -> None:
    first, read = run()
    assert read
    assert run() == (first, False)
    code_digest._of_package.cache_clear()
    assert code_digest.code_of(FAMILY) == first


def test_a_change_that_keeps_size_and_time_is_seen(
    package: Path, run: Callable[[], tuple[str, bool]]
) -> None:
    """The time of the change itself cannot be set back, where the system tells it."""
    table = package / "data" / "table.csv"
    first, _ = run()
    stood = table.stat()
    table.write_text("1;3\n", encoding="utf-8")
    if os.name != "nt":
        os.utime(table, ns=(stood.st_atime_ns, stood.st_mtime_ns))
    second, read = run()
    assert read
    assert second != first


@pytest.mark.parametrize("change", ["a file more", "a file less", "another name"])
def test_every_change_of_the_files_is_seen(
    change: str, package: Path, run: Callable[[], tuple[str, bool]]
) -> None:
    first, _ = run()
    table = package / "data" / "table.csv"
    if change == "a file more":
        (package / "rules.py").write_text("", encoding="utf-8")
    elif change == "a file less":
        table.unlink()
    else:
        table.rename(table.with_name("other.csv"))
    second, read = run()
    assert read
    assert second != first


def test_a_change_of_a_module_that_the_family_imports_is_seen(
    package: Path, run: Callable[[], tuple[str, bool]]
) -> None:
    """It stands beside the family, and its import may be new."""
    beside = package.parent / "works_beside_here.py"
    beside.write_text("wall = 1\n", encoding="utf-8")
    first, _ = run()
    (package / "__init__.py").write_text("from works_beside_here import wall\n", encoding="utf-8")
    second, _ = run()
    assert code_digest.packages_of(FAMILY) == ("speclint", "speclint_drawn_here", "works_beside_here")
    beside.write_text("wall = 2\n", encoding="utf-8")
    third, read = run()
    assert read
    assert len({first, second, third}) == 3
    assert run() == (third, False)


def test_what_was_written_just_now_is_not_kept(
    run: Callable[[], tuple[str, bool]], monkeypatch: pytest.MonkeyPatch
) -> None:
    """It may be written again within the same tick of the file system's clock."""
    monkeypatch.setattr(code_digest, "STILL", 60.0)
    assert run()[1]
    assert run()[1]


def test_a_family_in_no_file_is_not_kept(tmp_path: Path) -> None:
    with pytest.raises(LookupError, match="the code of speclint_nowhere lies in no file"):
        code_digest.code_of(
            Loaded(families=(Family("a", "speclint_nowhere", None),)), KeptFolder(tmp_path / "k")
        )


def test_the_files_of_a_package_and_of_a_module(package: Path) -> None:
    """What Python makes of them is none of them."""
    for folder in (package, package / "data"):
        (folder / "__pycache__").mkdir()
        (folder / "__pycache__" / "made.pyc").write_bytes(b"made")
    (package.parent / "speclint_one_file_here.py").write_text("b = 2\n", encoding="utf-8")
    assert sorted(code_digest._files_of("speclint_drawn_here")) == [
        ("__init__.py", str(package / "__init__.py")),
        (os.path.join("data", "table.csv"), str(package / "data" / "table.csv")),
    ]
    assert list(code_digest._files_of("speclint_one_file_here")) == [
        ("speclint_one_file_here.py", str(package.parent / "speclint_one_file_here.py"))
    ]


@pytest.mark.parametrize("name", ["speclint_nowhere", "speclint_folder_here", "__main__"])
def test_what_lies_in_no_file_has_none(package: Path, name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nowhere at all, in a folder that is no package, and made as the program runs."""
    (package.parent / "speclint_folder_here").mkdir()
    monkeypatch.setitem(sys.modules, "__main__", ModuleType("__main__"))
    with pytest.raises(LookupError, match=f"the code of {name} lies in no file"):
        list(code_digest._files_of(name))


@pytest.mark.parametrize(("latest", "kept"), [(100.0, True), (100.1, False), (0.0, True), (200.0, False)])
def test_files_that_have_stood_for_two_seconds_are_kept(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, latest: float, kept: bool
) -> None:
    """At 102 s, when the run began, by the time at which the last of them was changed; however long the run takes."""
    folder = KeptFolder(tmp_path / "k")
    monkeypatch.setattr(code_digest, "_files_of", lambda name: [(name, "a file of code")])
    monkeypatch.setattr(code_digest, "_of_packages", lambda _: "digest")
    stat = os.stat
    stands = SimpleNamespace(
        st_size=1, st_mtime=latest, st_ctime=latest, st_mtime_ns=1, st_ctime_ns=1, st_ino=1
    )
    with monkeypatch.context() as then:
        then.setattr(os, "stat", lambda file: stands if file == "a file of code" else stat(file))
        then.setattr(time, "time", lambda: 102.0)
        code_digest._standing.cache_clear()
        found = code_digest._standing(("a",))
        then.setattr(time, "time", lambda: 902.0)
        assert code_digest._kept_of(("a",), folder) == "digest"
        code_digest._standing.cache_clear()
    assert found is not None
    assert found[1] is kept
    assert folder.read(found[0]) == (b"digest" if kept else None)


@pytest.mark.skipif(os.name == "nt", reason="a link needs a right of its own there")
def test_a_link_that_leads_nowhere_is_no_code_until_it_leads_to_some(
    package: Path, run: Callable[[], tuple[str, bool]]
) -> None:
    """Some editors mark by such a link a file that is being edited."""
    first, _ = run()
    (package / ".#rules.py").symlink_to("somebody@somewhere.1234")
    assert run() == (first, False)
    (package / "somebody@somewhere.1234").write_text("b = 2\n", encoding="utf-8")
    assert run()[0] != first


@pytest.mark.skipif(os.name == "nt", reason="a link needs a right of its own there")
def test_of_code_behind_a_link_to_a_folder_nothing_is_known(package: Path) -> None:
    (package.parent / "more").mkdir()
    (package / "more").symlink_to(package.parent / "more")
    with pytest.raises(LookupError, match="more: a link to a folder"):
        code_digest.code_of(FAMILY)


def test_code_that_cannot_be_read_is_not_kept(package: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    gone = str(package / "gone.py")
    monkeypatch.setattr(code_digest, "_files_of", lambda name: [(name, gone)])
    code_digest._of_package.cache_clear()
    with pytest.raises(LookupError, match=r"gone\.py: No such file or directory"):
        code_digest.code_of(FAMILY)
