"""What stands on a sheet of a figure of a table: its band where it has one, and whose material it is."""

from __future__ import annotations

from pathlib import Path

from speclint import COMMON_PRACTICE
from speclint.errors import Location
from speclint.handbook.materials import material
from speclint.handbook.tables import Reading
from speclint.quantities import Measure
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


def size_of_wire_in(metal: str) -> Reading:
    """A size with a tolerance, in one metal or another."""
    return Reading(f"size of wire in {metal}", 0.020, 0.019, 0.021, "m", COMMON_PRACTICE)


def sides(sheet: Sheet) -> list[str]:
    """Every input of a sheet as one that decides at its low side."""
    return [sheet.record.side(key, high=False) for key in sheet.record.labels]


def test_one_figure_of_a_table_is_called_by_its_name() -> None:
    sheet = page()
    sheet.look_up("d", size_of_wire_in, metal="brass")
    assert sides(sheet) == ["size of wire in 19 mm (least)"]


def test_two_figures_of_one_name_say_of_which_metal_they_are() -> None:
    sheet = page()
    sheet.look_up("d", size_of_wire_in, metal="brass")
    sheet.look_up("D", size_of_wire_in, metal="steel")
    assert sides(sheet) == ["size of wire in brass 19 mm (least)", "size of wire in steel 19 mm (least)"]


def test_two_figures_of_one_metal_go_by_their_symbols() -> None:
    sheet = page()
    sheet.look_up("d", size_of_wire_in, metal="brass")
    sheet.look_up("D", size_of_wire_in, metal="brass")
    assert sides(sheet) == ["size of wire in d 19 mm (least)", "size of wire in D 19 mm (least)"]


def test_two_sizes_taken_by_one_name_say_of_which_part_they_are() -> None:
    sheet = page()
    for part in ("one", "other"):
        size = Measure(0.020, 0.019, 0.021, "length", where=Location("a.toml", 1, "size", part))
        sheet.take("d", size, "size")
    assert sides(sheet) == ["size of one 19 mm (least)", "size of other 19 mm (least)"]
