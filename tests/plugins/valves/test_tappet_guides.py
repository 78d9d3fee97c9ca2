"""tappet.guide-clearance: the stem of a tappet in its bore in the cam box, cold and hot."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_assessed, without_key
from tests.plugins.valves.gear import duty, train_files

CLEARANCE = "tappet.guide-clearance"


def guided(bore: str, stem: str = "36 mm", tappet: str = "20 °C") -> dict[str, str]:
    """A tappet in its guide; box at 20 °C, tappet as hot as is said."""
    text = duty("20 °C").replace('\ntappet = "20 °C"', f'\ntappet = "{tappet}"')
    made = train_files(duty_text=text)
    made["tappet.toml"] += f'stem_diameter = "{stem}"\n'
    made["box.toml"] += f'tappet_bore = "{bore}"\n'
    return made


@pytest.mark.parametrize(
    ("bore", "stem", "outcome"),
    [
        ("36.0037 mm", "36 mm", "conforms"),
        ("36.0035 mm", "36 mm", "finding"),
        ("36.143 mm", "36 mm", "conforms"),
        ("36.145 mm", "36 mm", "finding"),
        ("36 mm H7", "36 mm f7", "conforms"),  # 0.025 to 0.075 mm
        ("36 mm H7", "36 mm h6", "finding"),  # none at the least
        ("38 mm H7", "36 mm f7", "finding"),
        ("36 mm", "38 mm", "finding"),
    ],
)
def test_the_clearance_cold(workshop: DesignFolder, bore: str, stem: str, outcome: str) -> None:
    """0.0001 × 36 = 0.0036 mm; 0.004 × 36 = 0.144 mm."""
    check = workshop.write(guided(bore, stem)).only(CLEARANCE)
    grade = Grade.NONCONFORMITY if outcome == "finding" else None
    assert (check.outcome, check.grade) == (outcome, grade)


@pytest.mark.parametrize(("bore", "outcome"), [("36.0480 mm", "conforms"), ("36.0477 mm", "finding")])
def test_a_hot_tappet_fills_its_guide(workshop: DesignFolder, bore: str, outcome: str) -> None:
    """100 K at no more than (12.0 + 0.3)e-6/K of 36 mm are 0.04428 mm; 0.0036 mm are to be left: 36.04788 mm."""
    check = workshop.write(guided(bore, tappet="120 °C")).only(CLEARANCE)
    assert check.outcome == outcome


def test_a_tappet_that_rocks_has_no_guide(workshop: DesignFolder) -> None:
    made = guided("36 mm H7")
    made["tappet.toml"] += '[rocks]\narm = "100 mm"\n'
    assert workshop.write(made).only(CLEARANCE).outcome == "not applicable"


@pytest.mark.parametrize(("file", "key"), [("tappet.toml", "stem_diameter"), ("box.toml", "tappet_bore")])
def test_a_size_that_is_not_stated_is_not_assessed(workshop: DesignFolder, file: str, key: str) -> None:
    made = guided("36 mm H7", "36 mm f7")
    made[file] = without_key(made[file], key)
    expect_not_assessed(workshop.write(made).only(CLEARANCE), key)
