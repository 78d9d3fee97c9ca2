"""A liner's collar in its recess, and its ports: each agreement from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.liners.bench import bench, in_block, in_duty, in_liner

WRONG = ("finding", Grade.NONCONFORMITY)
FINE = ("conforms", None)
SILENT = ("not applicable", None)
Ends = tuple[str, Grade | None]


def outcome(design: DesignFolder, rule: str) -> Ends:
    check = design.only(rule, "liner")
    return check.outcome, check.grade


WARMED = (
    in_duty('cylinder-block = "50 °C"', 'cylinder-block = "20 °C"'),
    in_duty('cylinder-liner = "120 °C"', 'cylinder-liner = "200 °C"'),
)


@pytest.mark.parametrize(
    ("diameter", "ends"), [("598.70 mm", FINE), ("598.72 mm", WRONG), ("598.6 mm ±0.2", WRONG)]
)
def test_a_collar_enters_its_recess_hot(workshop: DesignFolder, diameter: str, ends: Ends) -> None:
    """Warming, liner 200 °C in a cold block: iron grows 12.0e-6/K at most, 600/(1 + 12.0e-6 × 180) = 598.707 mm."""
    workshop.write(bench(*WARMED, in_liner('diameter = "599 mm"', f'diameter = "{diameter}"')))
    assert outcome(workshop, "liner.collar-enters") == ends


def test_a_collar_is_no_wider_than_its_recess_as_made(workshop: DesignFolder) -> None:
    """With the block hotter than the liner it would go in hot; it has to go in cold, too."""
    hot = in_duty('cylinder-block = "200 °C"', 'cylinder-block = "300 °C"')
    warm = in_duty('cylinder-block = "50 °C"', 'cylinder-block = "200 °C"')
    workshop.write(bench(hot, warm, in_liner('diameter = "599 mm"', 'diameter = "600.1 mm"')))
    assert outcome(workshop, "liner.collar-enters") == WRONG
    workshop.replace("liner.toml", "600.1 mm", "600 mm")
    assert outcome(workshop, "liner.collar-enters") == FINE


def test_a_liner_without_a_recess_is_none_of_it(workshop: DesignFolder) -> None:
    workshop.write(bench(in_block('recess_diameter = "600 mm"\n', "")))
    assert outcome(workshop, "liner.collar-enters") == SILENT


PORT = ("[ports.front]\nfrom_seat", '[ports.front]\nof_end = "front"\nfrom_seat')


@pytest.mark.parametrize(
    ("changes", "ends"),
    [
        ((), FINE),
        ((in_block(*PORT),), FINE),
        (
            (
                in_block(PORT[0], PORT[1].replace('"front"', '"other"')),
                in_block(
                    "[divisions.chest]", '[bores.second]\n[ends.other]\nof_bore = "second"\n[divisions.chest]'
                ),
            ),
            WRONG,
        ),
    ],
)
def test_a_port_meets_one_of_its_own_bore(
    workshop: DesignFolder, changes: tuple[tuple[str, str, str], ...], ends: Ends
) -> None:
    assert outcome(workshop.write(bench(*changes)), "liner.port-of-its-bore") == ends


LINER_PORT = 'from_collar = "60 mm"\nheight = "40 mm"\nangle = "0 °"\nwidth = "300 mm"'


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ("300 mm", "330 mm ±2", FINE),
        ("300 mm", "331 mm", WRONG),
        ("300 mm", "900 mm", WRONG),
        ("300 mm", "200 mm", FINE),
        ("40 mm", "44 mm", FINE),
        ("40 mm", "44.1 mm", WRONG),
        ("40 mm", "60 mm", WRONG),
    ],
)
def test_a_port_is_no_port_of_another_size(workshop: DesignFolder, old: str, new: str, ends: Ends) -> None:
    """The block's port is 300 mm wide and 40 mm high: 1.1 × 300 = 330 mm and 1.1 × 40 = 44 mm are the most."""
    workshop.write(bench(in_liner(LINER_PORT, LINER_PORT.replace(old, new))))
    assert outcome(workshop, "liner.port-of-its-bore") == ends


def test_a_port_that_states_no_sizes_is_compared_by_its_bore_alone(workshop: DesignFolder) -> None:
    bare = LINER_PORT.replace('height = "40 mm"\n', "").replace('width = "300 mm"', "")
    workshop.write(bench(in_liner(LINER_PORT, bare)))
    assert outcome(workshop, "liner.port-of-its-bore") == SILENT
    workshop.replace("block.toml", PORT[0], PORT[1])
    assert outcome(workshop, "liner.port-of-its-bore") == FINE
