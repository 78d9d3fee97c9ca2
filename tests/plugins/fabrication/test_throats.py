"""weld.throat-of-its-plates: fillets and welds that penetrate, each limit from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, expect_not_applicable, expect_not_assessed
from tests.plugins.fabrication.bench import BLOCK, bare, write

THROAT = "weld.throat-of-its-plates"


@pytest.mark.parametrize(
    ("weld", "throat", "outcome"),
    [
        ("fillet", "14.2 mm", "conforms"),
        ("fillet", "14.21 mm", "finding"),
        ("single-run fillet", "14.2 mm", "conforms"),
        ("single-run fillet", "14.21 mm", "finding"),
        ("partial penetration", "20 mm", "conforms"),
        ("partial penetration", "20.1 mm", "finding"),
        ("full penetration", "20 mm", "conforms"),
        ("full penetration", "20.1 mm", "finding"),
    ],
)
def test_a_throat_fits_the_thinner_plate(
    workshop: DesignFolder, weld: str, throat: str, outcome: str
) -> None:
    """The wall of 20 mm on the flange of 40: 0.71 × 20 = 14.2 mm of a fillet, 20 mm of a weld that penetrates."""
    changes = (
        ('weld = "full penetration"\nthroat', f'weld = "{weld}"\nthroat'),
        ('throat = "20 mm"', f'throat = "{throat}"'),
    )
    check = write(workshop, *changes).only(THROAT)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("joins", "throat", "outcome"),
    [
        ('plate = "chest"', "14.2 mm", "conforms"),
        ('plate = "chest"', "14.3 mm", "finding"),
        ('plate = "flange"', "28.4 mm", "conforms"),
        ('plate = "flange"', "28.5 mm", "finding"),
        ('plates_joined = ["flange", "chest"]', "14.2 mm", "conforms"),
        ('plates_joined = ["flange", "chest"]', "14.3 mm", "finding"),
    ],
)
def test_the_plates_are_those_that_the_weld_names(
    workshop: DesignFolder, joins: str, throat: str, outcome: str
) -> None:
    """Without its wall: 0.71 × 20 = 14.2 mm on the chest's plate, 0.71 × 40 = 28.4 mm on the flange's alone."""
    changes = (
        (
            'plate = "flange"\nshape = "tee"\nweld = "full penetration"',
            f'{joins}\nshape = "tee"\nweld = "fillet"',
        ),
        ('throat = "20 mm"', f'throat = "{throat}"'),
        ('restraint = "medium"\nwall = "chest"', 'restraint = "medium"'),
    )
    assert write(workshop, *changes).only(THROAT).outcome == outcome


@pytest.mark.parametrize("cut", ['plate = "chest"', 'flat_wall = "chest"'])
@pytest.mark.parametrize("of", ["block", "weldment"])
@pytest.mark.parametrize(("throat", "outcome"), [("14.2 mm", "conforms"), ("14.3 mm", "finding")])
def test_a_weld_at_a_branch_joins_the_plate_of_its_opening(
    workshop: DesignFolder, cut: str, of: str, throat: str, outcome: str
) -> None:
    """The weld names the flange of 40 mm, and an opening that is cut in 20 mm: 0.71 × 20 = 14.2 mm."""
    opening = f"[openings.inlet]\n{cut}\n"
    ends = ("[ends.back]", f"{opening}[ends.back]")
    plates = ("[plates.chest]", f"{opening}[plates.chest]")
    changes = (
        ('weld = "full penetration"\nthroat', 'weld = "fillet"\nthroat'),
        ('throat = "20 mm"', f'throat = "{throat}"'),
        ('restraint = "medium"\nwall = "chest"', 'restraint = "medium"\nopening = "inlet"'),
    )
    if of == "block":
        folder = write(workshop, *changes, beside={"block.toml": changed(BLOCK, ends)})
    else:
        folder = write(workshop, *changes, plates)
    assert folder.only(THROAT).outcome == outcome


@pytest.mark.parametrize(
    ("sides", "throat", "outcome"),
    [
        ("", "19 mm", "conforms"),
        ("", "18.9 mm", "finding"),
        ("from_both_sides = false\n", "19 mm", "conforms"),
        ("from_both_sides = false\n", "18.9 mm", "finding"),
        ("from_both_sides = true\n", "9.5 mm", "conforms"),
        ("from_both_sides = true\n", "9.4 mm", "finding"),
    ],
)
def test_a_tee_that_goes_through_has_the_plate_that_stands(
    workshop: DesignFolder, sides: str, throat: str, outcome: str
) -> None:
    """The wall of 20 mm stands on the flange of 40: 0.95 × 20 = 19 mm from one side, 0.95 × 10 = 9.5 mm from both."""
    changes = (('throat = "20 mm"', f'throat = "{throat}"'), ("restraint =", f"{sides}restraint ="))
    assert write(workshop, *changes).only(THROAT).outcome == outcome


@pytest.mark.parametrize(
    ("joins", "throat", "outcome"),
    [
        ('plate = "chest"\nplates_joined = ["chest", "flange"]', "19 mm", "conforms"),
        ('plate = "chest"\nplates_joined = ["chest", "flange"]', "18.9 mm", "finding"),
        ('plate = "flange"', "38 mm", "conforms"),
        ('plate = "flange"', "37.9 mm", "finding"),
    ],
)
def test_a_butt_joint_that_goes_through_has_its_thinner_plate(
    workshop: DesignFolder, joins: str, throat: str, outcome: str
) -> None:
    """Of 20 mm: 0.95 × 20 = 19 mm; a flange of 40 mm to another, which names no wall: 0.95 × 40 = 38 mm."""
    changes = (
        (
            'plate = "flange"\nshape = "tee"\nweld = "full penetration"\nthroat = "20 mm"',
            f'{joins}\nshape = "butt"\nweld = "full penetration"\nthroat = "{throat}"',
        ),
        ('restraint = "medium"\nwall = "chest"', 'restraint = "medium"'),
    )
    assert write(workshop, *changes).only(THROAT).outcome == outcome


def test_two_walls_of_one_plate_stand_on_each_other(workshop: DesignFolder) -> None:
    """Both sides of the tee are of the plate of 20 mm: 0.95 × 20 = 19 mm."""
    for throat, outcome in (("19 mm", "conforms"), ("18.9 mm", "finding")):
        changes = (
            ('plate = "flange"\nshape', 'plate = "chest"\nplates_joined = ["chest", "chest"]\nshape'),
            ('throat = "20 mm"', f'throat = "{throat}"'),
        )
        assert write(workshop, *changes).only(THROAT).outcome == outcome


@pytest.mark.parametrize(
    ("weld", "outcome"),
    [("full penetration", "finding"), ("partial penetration", "conforms"), ("fillet", "conforms")],
)
def test_only_what_goes_through_has_a_least_throat(workshop: DesignFolder, weld: str, outcome: str) -> None:
    changes = (('"full penetration"\nthroat', f'"{weld}"\nthroat'), ('throat = "20 mm"', 'throat = "5 mm"'))
    assert write(workshop, *changes).only(THROAT).outcome == outcome


def test_what_a_tee_goes_through_has_to_be_named(workshop: DesignFolder) -> None:
    """The flange alone is named, on whose face another plate stands: 5 mm are not below what nobody named."""
    changes = (
        ('throat = "20 mm"', 'throat = "5 mm"'),
        ('restraint = "medium"\nwall = "chest"', 'restraint = "medium"'),
    )
    assert write(workshop, *changes).only(THROAT).outcome == "conforms"
    unnamed = (
        ('plate = "flange"\nshape', "shape"),
        ('throat = "20 mm"', 'throat = "5 mm"'),
    )
    assert write(workshop, *unnamed).only(THROAT).outcome == "conforms"


@pytest.mark.parametrize(
    ("wall", "throat", "outcome"),
    [
        ('wall = "8 mm"\n', "7.6 mm", "conforms"),
        ('wall = "8 mm"\n', "7.5 mm", "finding"),
        ('wall = "30 mm"\n', "19 mm", "conforms"),
        ('wall = "30 mm"\n', "18.9 mm", "finding"),
        ("", "5 mm", "conforms"),
    ],
)
def test_a_weld_at_a_branch_goes_through_the_thinner_of_branch_and_plate(
    workshop: DesignFolder, wall: str, throat: str, outcome: str
) -> None:
    """A branch of 8 mm on the plate of 20: 0.95 × 8 = 7.6 mm; of 30 mm: 0.95 × 20 = 19 mm."""
    changes = (
        ("[plates.chest]", f'[openings.inlet]\nplate = "chest"\n{wall}[plates.chest]'),
        ('throat = "20 mm"', f'throat = "{throat}"'),
        ('restraint = "medium"\nwall = "chest"', 'restraint = "medium"\nopening = "inlet"'),
    )
    assert write(workshop, *changes).only(THROAT).outcome == outcome


def test_sizes_are_compared_as_they_are_drawn(workshop: DesignFolder) -> None:
    """A plate of 20 mm that may come at 19.5 takes the throat of 14.2 mm that is drawn for it, give or take 1 mm."""
    changes = (
        ('weld = "full penetration"\nthroat = "20 mm"', 'weld = "fillet"\nthroat = "14.2 mm ±1"'),
        ('[plates.chest]\nmaterial = "known-plate"\nthickness = "20 mm"', PLATE_WITH_LIMITS),
    )
    assert write(workshop, *changes).only(THROAT).outcome == "conforms"


PLATE_WITH_LIMITS = '[plates.chest]\nmaterial = "known-plate"\nthickness = "20 mm +0/-0.5"'


def test_a_weld_of_no_plate_or_throat_is_not_judged(workshop: DesignFolder) -> None:
    says = "no weld states a throat and a plate that it joins"
    expect_not_applicable(write(workshop, ('throat = "20 mm"\n', "")).only(THROAT), says)
    unnamed = (
        ('plate = "flange"\nshape = "tee"', 'shape = "tee"'),
        ('plate = "chest"\nshort = "190 mm"', 'short = "190 mm"'),
    )
    expect_not_applicable(write(workshop, *unnamed).only(THROAT), says)
    expect_not_applicable(bare(workshop, "joints").only(THROAT), says)
    untold = ('weld = "full penetration"\nthroat', "throat")
    expect_not_assessed(write(workshop, untold).only(THROAT), "joints.chest-edge.weld")
