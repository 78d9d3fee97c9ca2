"""The nuts on a piston rod against its threads: the piston's at one end, the crosshead's at the other."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.motion.train import files

RULE = "rod.thread-of-its-nuts"
HELD_BY_NUT = '[rod_held]\nby = "nut"\nthread = "M72x4"\n'
FOOT = 'form = "shoulder"\nat = "crosshead end"\n'


@pytest.mark.parametrize(
    ("nut", "outcome"),
    [("M85x4", "conforms"), ("M85 x 4", "conforms"), ("M85x6", "finding"), ("M90x4", "finding")],
)
def test_the_nut_of_the_piston_is_of_the_thread_on_the_rod(
    workshop: DesignFolder, nut: str, outcome: str
) -> None:
    check = workshop.write(files("piston", ('"M85x4"', f'"{nut}"'))).only(RULE)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize("nut", ["another", "M85x4"])
def test_a_thread_that_no_standard_lists_is_compared_as_written(workshop: DesignFolder, nut: str) -> None:
    workshop.write(files("piston", ('"M85x4"', f'"{nut}"'))).replace("rod.toml", '"M85x4"', '"another"')
    assert workshop.only(RULE).outcome == ("conforms" if nut == "another" else "finding")


@pytest.mark.parametrize(("thread", "outcome"), [("M72x4", "conforms"), ("M76x4", "finding")])
def test_the_nut_of_the_crosshead_is_of_the_thread_at_its_end(
    workshop: DesignFolder, thread: str, outcome: str
) -> None:
    workshop.write(files("crosshead", add=HELD_BY_NUT))
    cut = f'form = "thread"\nthread = "{thread}"\nat = "crosshead end"\n'
    workshop.replace("rod.toml", FOOT, cut)
    check = workshop.only(RULE)
    assert check.outcome == outcome
    assert check.outcome == "conforms" or "rod held of crosshead" in check.says


def test_one_of_several_threads_at_an_end_is_that_of_the_nut(workshop: DesignFolder) -> None:
    drawn_off = '[sections.draw-off]\nform = "thread"\nat = "piston end"\nthread = "M64x4"\n'
    workshop.write(files("rod", add=drawn_off))
    assert workshop.only(RULE).outcome == "conforms"
    workshop.replace("piston.toml", '"M85x4"', '"M80x4"')
    assert workshop.only(RULE).outcome == "finding"


@pytest.mark.parametrize(
    ("part", "old", "new"),
    [
        ("piston", 'by = "nut"', 'by = "forged in one"'),
        ("piston", 'by = "nut"\n', ""),
        ("piston", 'thread = "M85x4"\n', ""),
        ("rod", 'form = "thread"', 'form = "plain"'),
        ("rod", 'at = "piston end"', 'at = "between the ends"'),
        ("rod", 'thread = "M85x4"\n', ""),
    ],
)
def test_where_no_nut_or_no_thread_is_stated_nothing_is_compared(
    workshop: DesignFolder, part: str, old: str, new: str
) -> None:
    assert workshop.write(files(part, (old, new))).only(RULE).outcome == "not applicable"


HOLDS = "rod.end-of-its-crosshead"
COTTERED = '[rod_held]\nby = "cotter"\ncotter_thickness = "{}"\n'
SLOTTED = 'form = "cotter slot"\nslot_width = "22 mm"\nat = "crosshead end"\n'
THREADED = 'form = "thread"\nthread = "M72x4"\nat = "crosshead end"\n'


@pytest.mark.parametrize(
    ("held", "end", "outcome"),
    [
        (COTTERED.format("22 mm"), SLOTTED, "conforms"),
        (COTTERED.format("22.1 mm"), SLOTTED, "finding"),
        (COTTERED.format("22 mm"), FOOT, "finding"),
        (COTTERED.format("22 mm"), THREADED, "finding"),
        (HELD_BY_NUT, THREADED, "conforms"),
        (HELD_BY_NUT, FOOT, "finding"),
        (HELD_BY_NUT, SLOTTED, "finding"),
        ('[rod_held]\nby = "flange bolts"\n', FOOT, "conforms"),
        ('[rod_held]\nby = "flange bolts"\n', SLOTTED, "finding"),
        ('[rod_held]\nby = "flange bolts"\n', 'form = "shoulder"\n', "not applicable"),
        ("", FOOT, "not applicable"),
    ],
)
def test_a_rod_has_what_its_crosshead_holds_it_by(
    workshop: DesignFolder, held: str, end: str, outcome: str
) -> None:
    workshop.write(files("crosshead", add=held)).replace("rod.toml", FOOT, end)
    check = workshop.only(HOLDS)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


def test_a_cotter_is_held_against_its_slot_beside_other_sections(workshop: DesignFolder) -> None:
    """A slot behind the shoulder of the taper: the cotter goes into it, whatever else is at that end."""
    taper = f"{FOOT}[sections.slot]\n{SLOTTED}"
    workshop.write(files("crosshead", add=COTTERED.format("22 mm"))).replace("rod.toml", FOOT, taper)
    assert workshop.only(HOLDS).outcome == "conforms"
    workshop.replace("crosshead.toml", '"22 mm"', '"23 mm"')
    check = workshop.only(HOLDS)
    assert check.outcome == "finding"
    assert "23 mm" in check.says


OF_VALVE = "spindle.thread-of-its-nut"
SPINDLE = {
    "spindle.toml": 'kind = "valve-spindle"\nid = "spindle"\nvalve_end_diameter = "17.9 mm"\n'
    '[valve_held]\nby = "nut"\nthread = "M18x1"\n'
}


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ("17.9 mm", "17.9 mm", "conforms"),
        # ISO 965-1, M18x1 6g: 18 − 0.026 − 0.180 = 17.794 mm at the least
        ("17.9 mm", "17.8 mm", "conforms"),
        ("17.9 mm", "17.79 mm", "finding"),
        ("17.9 mm", "17.9 mm ±0.15", "finding"),
        ("17.9 mm", "18 mm", "conforms"),
        # M20x1: 19.794 mm
        ("M18x1", "M20x1", "finding"),
        ("M18x1", "M24", "finding"),
        # a smaller thread leaves a shoulder
        ("M18x1", "M16x1", "conforms"),
        ('by = "nut"', 'by = "forged in one"', "not applicable"),
        ("M18x1", "M18x0.3", "not assessed"),  # no standard lists it
    ],
)
def test_the_nut_of_a_valve_has_a_thread_that_its_spindle_has_metal_for(
    workshop: DesignFolder, old: str, new: str, outcome: str
) -> None:
    check = workshop.write(SPINDLE).replace("spindle.toml", old, new).only(OF_VALVE)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome in ("finding", "not assessed") else None)
