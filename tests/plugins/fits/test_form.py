"""What form takes of long sliding fits and of press fits, by hand: 170 H7 0/+40 and s6 +108/+133 µm."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_assessed, found
from tests.plugins.fits.bench import write

RULE = "geometry.room-for-form"
LENGTH = 'length = { of = "seat", dimension = "length" }'
SLIDING = (
    ("fit.toml", LENGTH, 'length = { size = "300 mm" }'),
    ("fit.toml", 'intent = "interference"', 'intent = "clearance"'),
)


def zone(form: str, of: str, size: str, more: str = "") -> str:
    return f'[tolerances.it]\nform = "{form}"\nof = "{of}"\nzone = "{size}"\n{more}'


def written(folder: DesignFolder, bore: str, ring: str, *changes: tuple[str, str, str]) -> DesignFolder:
    """The bench with a zone of the bore and of the ring."""
    write(folder, *changes)
    for name, text in (("block.toml", bore), ("seat.toml", ring)):
        path = folder.root / name
        path.write_text(path.read_text(encoding="utf-8") + text, encoding="utf-8")
    return folder


BORE = "seat_bores.inlet.diameter"


@pytest.mark.parametrize(("lobes", "outcome"), [("42 µm", "conforms"), ("44 µm", "finding")])
def test_roundness_of_a_press_fit_from_both_sides(workshop: DesignFolder, lobes: str, outcome: str) -> None:
    """108 − 40 − 0.8 × 6.4 = 62.88 µm are left of the least; 20 of the bore's roundness leave 42.88 for the ring."""
    written(workshop, zone("round", BORE, "20 µm"), zone("cylindrical", "outside_diameter", lobes))
    check = workshop.only(RULE)
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)
    assert found(check) * 1e6 == pytest.approx(42.88 - float(lobes.split()[0]), abs=0.01)


def test_a_press_fit_that_states_no_roundness_is_not_assessed(workshop: DesignFolder) -> None:
    expect_not_assessed(written(workshop, zone("round", BORE, "20 µm"), "").only(RULE), "states no roundness")


def sizes(hole: str, shaft: str) -> tuple[tuple[str, str, str], ...]:
    return (
        *SLIDING,
        ("block.toml", '"170 mm H7"', f'"{hole}"'),
        ("seat.toml", '"170 mm s6"', f'"{shaft}"'),
    )


@pytest.mark.parametrize(("bent", "outcome"), [("39 µm", "conforms"), ("41 µm", "finding")])
@pytest.mark.parametrize("more", ["", 'modifier = "M"\n'])
def test_a_long_slide_keeps_room_for_its_form(
    workshop: DesignFolder, bent: str, outcome: str, more: str
) -> None:
    """170.10 ± 0.02 on 170.00 ± 0.01: 70 less 30 of the bore leave 40 µm; at maximum material it is the same there."""
    changes = sizes("170.10 mm ±0.02", "170.00 mm ±0.01")
    made = written(
        workshop,
        zone("straight", BORE, "30 µm"),
        zone("straight", "outside_diameter", bent, more),
        *changes,
    )
    assert made.only(RULE).outcome == outcome


def test_form_lies_within_a_class_of_a_sliding_fit(workshop: DesignFolder) -> None:
    """170 H7/g6: nothing is asked of either; of limits in figures it is."""
    assert written(workshop, "", "", *sizes("170 mm H7", "170 mm g6")).only(RULE).outcome == "conforms"
    plain = written(workshop, "", "", *sizes("170.04 mm ±0.01", "170 mm g6"))
    expect_not_assessed(plain.only(RULE), "states no straightness")


def test_a_short_slide_is_not_asked(workshop: DesignFolder) -> None:
    """254 mm are within 1.5 × 170 = 255, 256 are not."""
    for length, outcome in (("254 mm", "not applicable"), ("256 mm", "not assessed")):
        changes = [
            *sizes("170.10 mm ±0.02", "170.00 mm ±0.01")[1:],
            ("fit.toml", LENGTH, f'length = {{ size = "{length}" }}'),
        ]
        assert written(workshop, "", "", *changes).only(RULE).outcome == outcome


@pytest.mark.parametrize(("over", "outcome"), [("300 mm", "conforms"), ("299 mm", "not assessed")])
def test_a_zone_of_its_own_length_holds_over_the_whole_fit(
    workshop: DesignFolder, over: str, outcome: str
) -> None:
    """A slide 300 mm long."""
    changes = sizes("170.10 mm ±0.02", "170.00 mm ±0.01")
    made = written(
        workshop,
        zone("straight", BORE, "30 µm"),
        zone("straight", "outside_diameter", "20 µm", f'over = "{over}"\n'),
        *changes,
    )
    assert made.only(RULE).outcome == outcome


def test_a_slide_just_as_long_as_the_limit_is_short(workshop: DesignFolder) -> None:
    """1.5 × 160 = 240 mm."""
    changes = [
        *sizes("160.10 mm", "160 mm")[1:],
        ("fit.toml", LENGTH, 'length = { size = "240 mm" }'),
    ]
    assert written(workshop, "", "", *changes).only(RULE).outcome == "not applicable"
