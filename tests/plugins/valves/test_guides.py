"""spindle.guide-stays: what the fit of a guide keeps hot, and what keeps a guide whose fit is lost."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, found
from tests.plugins.valves.gear import duty, train_files

RULE = "spindle.guide-stays"
FIT = 'guide_interference = "0 mm"'


def fitted(interference: str, kept: str = "", case: str = "") -> dict[str, str]:
    """A guide of 36 mm with an interference, 160 °C in one case, or in all."""
    word = f'\nguide_kept_by = "{kept}"' if kept else ""
    text = duty(**{case: "160 °C"}) if case else duty("160 °C")
    return train_files(spindle=((FIT, f'guide_interference = "{interference}"{word}'),), duty_text=text)


@pytest.mark.parametrize("case", ["warming", "starting", "running", "drifting", "standing_hot", "water"])
@pytest.mark.parametrize(("interference", "outcome"), [("0.0046 mm", "conforms"), ("0.0045 mm", "finding")])
def test_the_grip_from_both_sides(workshop: DesignFolder, case: str, interference: str, outcome: str) -> None:
    """Iron at the least 11.9 − 0.3, steel at the most 12.2 + 0.3: 36 × 140 × 0.9e-6 = 0.004536 mm are lost."""
    check = workshop.write(fitted(interference, case=case)).only(RULE)
    assert check.outcome == outcome
    if outcome == "finding":
        assert (check.grade, check.case) == (Grade.NONCONFORMITY, case.replace("_", "-"))


def test_what_is_left_is_reckoned_from_the_least_interference(workshop: DesignFolder) -> None:
    check = workshop.write(fitted("0.002..0.020 mm")).only(RULE)
    assert found(check) == pytest.approx(-0.002536e-3, rel=1e-3)


@pytest.mark.parametrize(
    ("kept", "outcome"),
    [
        ("collar", "conforms"),
        ("locking screw", "conforms"),
        ("cover over it", "conforms"),
        ("nothing", "finding"),
        ("", "finding"),
    ],
)
def test_a_loose_guide_is_kept_otherwise(workshop: DesignFolder, kept: str, outcome: str) -> None:
    assert workshop.write(fitted("0.003 mm", kept)).only(RULE).outcome == outcome


def test_what_keeps_a_guide_counts_the_same_whether_its_fit_grips(workshop: DesignFolder) -> None:
    """A grip that some of the cases leave would say more of the part than one that all of them leave."""
    loose, gripping = (
        workshop.write(fitted(fit, "collar")).only(RULE) for fit in ("0.003 mm", "0.003..0.042 mm")
    )
    assert loose.says == gripping.says == "whether or not its fit grips hot, the guide is kept by: collar"
    assert loose.utilisation is None is gripping.utilisation


def test_a_guide_that_the_block_is_bored_for_has_no_fit(workshop: DesignFolder) -> None:
    bored = (('guide_held = "pressed in"', 'guide_held = "part of the block"'),)
    assert workshop.write(train_files(spindle=bored)).only(RULE).outcome == "not applicable"


STRESS = "spindle.guide-fit-stress"


@pytest.mark.parametrize(
    ("metal", "interference", "outcome"),
    [
        ("known-iron", "0.0946 mm", "conforms"),
        ("known-iron", "0.0948 mm", "finding"),
        ("known-iron", "0.001..0.0948 mm", "finding"),
        ("known-steel", "0.0278 mm", "conforms"),
        ("known-steel", "0.0281 mm", "finding"),
        ("known-iron", "-0.010 mm", "conforms"),
    ],
)
def test_what_the_fit_does_to_the_guide(
    workshop: DesignFolder, metal: str, interference: str, outcome: str
) -> None:
    """22.08/36 mm: 2 × 1296/808.47 = 3.206 of the pressure.

    Iron, 120 GPa and 0.28, in steel of 206 GPa and 0.29: (2.2060 − 0.28)/120000 + 1.29/206000 = 2.2312e-5 per MPa;
    0.5 × 756 MPa at 117.90 MPa, 36 × 117.90 × 2.2312e-5 = 0.0947 mm. Steel: (2.2060 − 0.31)/206000 + 1.29/206000 =
    1.5466e-5 per MPa; 0.67 × 240 MPa at 50.155 MPa, 0.0279 mm.
    """
    said = (
        (FIT, f'guide_interference = "{interference}"'),
        ('guide_material = "known-iron"', f'guide_material = "{metal}"'),
    )
    check = workshop.write(train_files(spindle=said)).only(STRESS)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_guide_that_is_bored_in_its_block_is_not_pressed(workshop: DesignFolder) -> None:
    bored = (('guide_held = "pressed in"', 'guide_held = "part of the block"'),)
    assert workshop.write(train_files(spindle=bored)).only(STRESS).outcome == "not applicable"


@pytest.mark.parametrize("line", [FIT, 'guide_outside = "36 mm"', 'guide_held = "pressed in"'])
def test_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    assert workshop.write(train_files(spindle=((line, ""),))).only(RULE).outcome == "not assessed"


@pytest.mark.parametrize(
    ("held", "metal", "outcome"),
    [
        ("part of the block", "known-steel", "conforms"),
        ("part of the block", "known-iron", "finding"),
        ("pressed in", "known-iron", "not applicable"),
    ],
)
def test_a_guide_bored_in_its_block_is_of_its_metal(
    workshop: DesignFolder, held: str, metal: str, outcome: str
) -> None:
    said = (
        ('guide_held = "pressed in"', f'guide_held = "{held}"'),
        ('guide_material = "known-iron"', f'guide_material = "{metal}"'),
    )
    check = workshop.write(train_files(spindle=said)).only("spindle.guide-of-its-holder")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize("line", ['guide_held = "pressed in"', 'guide_material = "known-iron"'])
def test_a_guide_of_which_little_is_said_is_held_against_nothing(workshop: DesignFolder, line: str) -> None:
    bored = ('guide_held = "pressed in"', "" if "held" in line else 'guide_held = "part of the block"')
    rest = () if "held" in line else ((line, ""),)
    check = workshop.write(train_files(spindle=(bored, *rest))).only("spindle.guide-of-its-holder")
    assert check.outcome == "not applicable"
