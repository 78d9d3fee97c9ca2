"""box.wall: room for the packing in a stuffing box, and the wall round it."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_assessed, on_sheet, without_key
from tests.plugins.motion.train import files

WALL = "box.wall"


def box(bore: str, outside: str) -> dict[str, str]:
    """A box of P265GH round a rod of 90 mm, at 250 °C in running and at 180 °C with water in the cylinder."""
    sizes = f'material = "plate-P265GH"\nbore = "{bore}"\noutside_diameter = "{outside}"'
    made = files("box", ('material = "known-iron"', sizes))
    made["duty.toml"] += 'stuffing-box = "180 °C"\n'
    return made


@pytest.mark.parametrize(("bore", "outcome"), [("99.02 mm", "conforms"), ("98.98 mm", "finding")])
def test_room_for_the_packing(workshop: DesignFolder, bore: str, outcome: str) -> None:
    """0.05 × 90 = 4.5 mm on each side: a bore of 99 mm."""
    check = workshop.write(box(bore, "150 mm")).only(WALL)
    assert (check.outcome, check.grade) == (
        outcome,
        Grade.NONCONFORMITY if outcome == "finding" else None,
    )


@pytest.mark.parametrize(
    ("outside", "outcome"),
    [
        ("133.98 mm", "conforms"),
        ("133.95 mm", "finding"),
        ("133.98 mm ±0.1", "finding"),
        ("132 mm", "finding"),
        ("130 mm", "finding"),
        ("128 mm", "finding"),
    ],
)
def test_the_wall_bears_the_relief_valves(workshop: DesignFolder, outside: str, outcome: str) -> None:
    """Running, at the setting of 18.5 bar: f = 188/1.5 = 125.33 MPa, below 410/2.4; 125.33/1.85 = 67.75.

    The bore wastes by 1 mm all round to 132 mm, and 132² × 68.75/66.75 = 133.963². Blowing, at 20.35 bar and 180 °C:
    212.2/1.5 = 141.47 MPa, 69.52 times: a wall not so thick.
    """
    check = workshop.write(box("130 mm", outside)).only(WALL)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)
    assert ("no wider outside" in check.says) == (outside in ("130 mm", "128 mm"))
    assert ("may waste away" in check.says) == (outside == "132 mm")


def test_the_stress_at_the_bore(workshop: DesignFolder) -> None:
    """1.85 MPa × (150² + 132²)/(150² − 132²) = 1.85 × 39 924/5076 = 14.551 MPa."""
    check = workshop.write(box("130 mm", "150 mm")).only(WALL)
    assert check.outcome == "conforms"
    assert on_sheet(check, "σ_p") == pytest.approx(14.551e6, rel=1e-4)


@pytest.mark.parametrize("bore", ["90 mm", "89 mm"])
def test_a_bore_no_wider_than_the_rod_has_no_room(workshop: DesignFolder, bore: str) -> None:
    check = workshop.write(box(bore, "150 mm")).only(WALL)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "no wider than its rod" in check.says


@pytest.mark.parametrize("key", ["bore", "outside_diameter"])
def test_a_box_without_sizes_is_not_assessed(workshop: DesignFolder, key: str) -> None:
    made = box("130 mm", "150 mm")
    made["box.toml"] = without_key(made["box.toml"], key)
    expect_not_assessed(workshop.write(made).only(WALL), key)
