"""What is installed beside speclint counts, but for what only its extras need."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from speclint.checking import KeptFolder, code_digest, installed
from speclint.families import Loaded

Install = Callable[..., None]


@pytest.fixture
def install(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Install:
    """A place of its own in which speclint stands, which needs one thing always and two others for extras."""
    place = tmp_path / "installed"

    def add(name: str, version: str, *needs: str, extras: tuple[str, ...] = ()) -> None:
        folder = place / f"{name}-{version}.dist-info"
        folder.mkdir(parents=True)
        lines = [f"Name: {name}", f"Version: {version}", *(f"Provides-Extra: {one}" for one in extras)]
        lines += [f"Requires-Dist: {one}" for one in needs]
        (folder / "METADATA").write_text(
            "Metadata-Version: 2.1\n" + "\n".join(lines) + "\n", encoding="utf-8"
        )

    monkeypatch.setattr(sys, "path", [str(place), str(tmp_path / "not there")])
    needs = ("steam_tables>=2", 'pages; extra == "pack"', 'Try.Outs>=1; extra == "test"')
    add("speclint", "1.0", *needs, extras=("pack", "test"))
    add("steam_tables", "2.1", "numbers")
    add("numbers", "3")
    return add


def beside(kept: KeptFolder | None = None) -> list[str]:
    """What counts, without the ending of the folders."""
    return [folder.removesuffix(".dist-info") for folder in installed.installed_beside(kept)]


NEEDED = ["numbers-3", "speclint-1.0", "steam_tables-2.1"]


def test_what_an_extra_brings_does_not_count(install: Install) -> None:
    """And so with what that needs in its turn; the name of "Try.Outs" is compared as PEP 503 says."""
    assert beside() == NEEDED
    install("pages", "1", "letters")
    install("letters", "1")
    install("try_outs", "4", "clocks")
    install("clocks", "1", "try_outs")
    assert beside() == NEEDED


def test_what_an_extra_brings_counts_where_it_is_needed_besides(install: Install) -> None:
    install("try_outs", "4", "clocks", "numbers")
    install("clocks", "1")
    assert beside() == NEEDED
    install("a_family", "1", "clocks")
    assert beside() == ["a_family-1", "clocks-1", *NEEDED]


def test_what_nothing_names_counts(install: Install) -> None:
    """A family may use it without a word."""
    install("unheard_of", "1")
    assert beside() == [*NEEDED, "unheard_of-1"]


def test_a_requirement_that_cannot_be_read_counts_by_its_name(install: Install) -> None:
    install("old", "1", "clocks (no version at all")
    install("clocks", "1")
    assert beside() == ["clocks-1", *NEEDED[:1], "old-1", *NEEDED[1:]]


def test_a_marker_that_does_not_hold_needs_nothing(install: Install) -> None:
    """Of the extra of another nothing is asked: only what it needs always counts."""
    install("try_outs", "4")
    install("a_family", "1", 'try_outs; python_version < "3"', 'try_outs; extra == "more"')
    assert beside() == ["a_family-1", *NEEDED]


def test_what_each_needs_is_read_once(
    install: Install, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    kept = KeptFolder(tmp_path / "kept")
    read: list[bool] = []
    whole = installed._declared

    def declared() -> tuple[dict[str, list[str]], set[str]]:
        read.append(True)
        return whole()

    monkeypatch.setattr(installed, "_declared", declared)
    assert beside(kept) == beside(kept) == NEEDED
    assert len(read) == 1
    install("unheard_of", "1")
    assert beside(kept) == [*NEEDED, "unheard_of-1"]
    assert len(read) == 2


def test_the_digest_of_the_code_moves_with_what_counts_alone(
    install: Install, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(code_digest, "_files_of", lambda _: ())
    digests = [code_digest.code_of(Loaded())]
    install("pages", "1")
    digests.append(code_digest.code_of(Loaded()))
    install("unheard_of", "1")
    digests.append(code_digest.code_of(Loaded()))
    assert digests[0] == digests[1] != digests[2]


@pytest.mark.usefixtures("install")
@pytest.mark.parametrize("file", ["METADATA", "PKG-INFO", "entry_points.txt", "requires.txt"])
def test_what_a_distribution_declares_counts_where_it_is_written_over(file: str) -> None:
    """As tools do that install a folder of sources: the folder of the distribution stands as it did."""
    folder = Path(sys.path[0]) / "numbers-3.dist-info"
    (folder / file).touch()
    stood = folder.stat().st_mtime_ns
    first = dict(installed.distributions_found())
    os.utime(folder / file, ns=(stood, stood - 1_000_000_000))
    assert folder.stat().st_mtime_ns == stood
    second = dict(installed.distributions_found())
    assert {name for name in first if first[name] != second[name]} == {folder.name}


@pytest.mark.usefixtures("install")
@pytest.mark.skipif(os.name == "nt", reason="a link needs a right of its own there")
def test_a_link_to_no_distribution_hides_none() -> None:
    for name in ("a", "z"):
        (Path(sys.path[0]) / f"{name}-1.dist-info").symlink_to("nowhere")
    found = dict(installed.distributions_found())
    assert set(found) == {f"{name}.dist-info" for name in (*NEEDED, "a-1", "z-1")}
    assert found["a-1.dist-info"] == (0, 0, 0, 0, 0)
