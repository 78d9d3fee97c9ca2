"""What the metadata of a family's distribution asks of speclint, and what of it is met."""

from __future__ import annotations

from importlib.metadata import Distribution, PathDistribution
from pathlib import Path
from types import SimpleNamespace

import pytest

from speclint.families.interface import fault_of_interface
from speclint.families.requirements import fault_of_requirement


def distribution(folder: Path, *asked: str) -> Distribution:
    """A distribution that asks for some others."""
    lines = "".join(f"Requires-Dist: {one}\n" for one in asked)
    text = f"Metadata-Version: 2.1\nName: made\nVersion: 1\n{lines}\nRequires-Dist: speclint>=99 in the description\n"
    (folder / "made.dist-info").mkdir()
    (folder / "made.dist-info" / "METADATA").write_text(text, encoding="utf-8")
    return PathDistribution(folder / "made.dist-info")


@pytest.mark.parametrize(
    "asked",
    [
        "speclint>=0.1",
        "speclint",
        "speclint[pack] (>=0.1)",
        "Speclint==0.1.0",
        "speclint-extras>=99",
        "speclint_more>=99",
        "speclint.more>=99",
        "pluggy>=99",
        'speclint>=99; extra == "test"',
        'speclint>=99; python_version < "3"',
    ],
)
def test_a_requirement_that_is_met(tmp_path: Path, asked: str) -> None:
    assert fault_of_requirement("made", distribution(tmp_path, asked)) == ""


@pytest.mark.parametrize(
    "asked", ["speclint>=9", "speclint (<0.1)", "speclint[pack]==9", "speclint>>1", "SPECLINT>=9"]
)
def test_a_requirement_that_is_not_met(tmp_path: Path, asked: str) -> None:
    said = fault_of_requirement("made", distribution(tmp_path, "pluggy", asked))
    assert said == f'family made (made) asks for "{asked}"; this is speclint 0.1.0'


def test_no_distribution_asks_for_nothing() -> None:
    assert fault_of_requirement("made", None) == ""


def test_older_metadata_is_read_too(tmp_path: Path) -> None:
    folder = tmp_path / "made.egg-info"
    folder.mkdir()
    (folder / "PKG-INFO").write_text("Metadata-Version: 1.0\nName: made\nVersion: 1\n", encoding="utf-8")
    (folder / "requires.txt").write_text("pluggy\nspeclint>=9\n", encoding="utf-8")
    assert "speclint>=9" in fault_of_requirement("made", PathDistribution(folder))


def test_older_metadata_may_ask_for_others(tmp_path: Path) -> None:
    folder = tmp_path / "made.egg-info"
    folder.mkdir()
    (folder / "PKG-INFO").write_text("Metadata-Version: 1.0\nName: made\nVersion: 1\n", encoding="utf-8")
    (folder / "requires.txt").write_text("pluggy>=99\nspeclint-extras>=99\nspeclint\n", encoding="utf-8")
    assert fault_of_requirement("made", PathDistribution(folder)) == ""


@pytest.mark.parametrize(("have", "met"), [("2.0rc1", True), ("0.9", False)])
def test_a_version_before_its_release_meets_what_an_earlier_one_is_asked_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, have: str, met: bool
) -> None:
    """PEP 440: 2.0rc1 comes after 1.0."""
    monkeypatch.setattr("speclint.families.requirements.version", lambda _: have)
    assert (fault_of_requirement("made", distribution(tmp_path, "speclint>=1.0")) == "") is met


def test_only_the_lines_about_speclint_are_read_as_requirements(tmp_path: Path) -> None:
    """Reading them all would make each start slower."""

    class Unread(PathDistribution):
        @property
        def requires(self) -> list[str] | None:
            raise AssertionError("all requirements were read")

    distribution(tmp_path, "speclint>=9")
    assert fault_of_requirement("made", Unread(tmp_path / "made.dist-info"))


def test_a_family_of_this_interface_has_no_fault_of_it() -> None:
    assert fault_of_interface("made", SimpleNamespace(speclint_api="1"), "made") == ""
