"""What stands on a sheet of a figure of a table: its band where it has one, and whose material it is."""

from __future__ import annotations

from pathlib import Path

from speclint import COMMON_PRACTICE
from speclint.handbook.materials import material
from speclint.handbook.tables import Reading
from speclint.repository import Design, Settings
from speclint.rules import Context, Corner, Sheet
from speclint.specs import Component
from tests.rules.test_comparisons import _rule


def size_of_wire() -> Reading:
    """A size without tolerance."""
    return Reading.exact("size of wire", 0.020, "m", COMMON_PRACTICE)


def size_of_bar() -> Reading:
    """A size with a tolerance."""
    return Reading("size of bar", 0.020, 0.019, 0.021, "m", COMMON_PRACTICE)


PART, OTHER = Component(id="part"), Component(id="other")


def page() -> Sheet:
    files = {"part": "part.toml", "other": "other.toml"}
    design = Design(Path(), Settings(), {"part": PART, "other": OTHER}, files, frozenset(files))
    return Sheet(_rule, PART, Context(design, material, {}), Corner(), record=True)


def test_an_exact_figure_is_written_as_one_and_a_band_as_its_two_ends() -> None:
    sheet = page()
    assert sheet.look_up("d", size_of_wire) == 0.020
    sheet.look_up("D", size_of_bar)
    assert sheet.record.rests_on == {"size of wire d": "20 mm", "size of bar D": "19 mm to 21 mm"}
    exact, band = sheet.record.steps
    assert exact.note == ""
    assert "19" in band.note
    assert "21" in band.note


def test_the_figure_of_another_part_says_whose_it_is() -> None:
    sheet = page()
    sheet.look_up("d", size_of_wire, of=PART)
    sheet.look_up("d_1", size_of_wire, of=OTHER)
    assert list(sheet.record.rests_on) == ["size of wire d", "size of wire of other d_1"]
