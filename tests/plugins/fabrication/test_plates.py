"""block.through-thickness, block.toughness and block.corrosion-allowance."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade, NotKnown
from speclint.testing import DesignFolder, found, limit
from speclint_fabrication.formulae.tables import through_thickness
from tests.plugins.fabrication.bench import BLOCK, bare, write

THROUGH, TOUGH, WASTE = "block.through-thickness", "block.toughness", "block.corrosion-allowance"


def test_a_tee_by_the_table(workshop: DesignFolder) -> None:
    """Throat 20 mm 6, through in sequence 3, 40 mm 8, medium restraint 3, cold 0: 20, all that Z15 covers."""
    check = write(workshop).only(THROUGH)
    assert (check.outcome, found(check), limit(check)) == ("conforms", 20.0, 20.0)


@pytest.mark.parametrize(
    ("old", "new", "points"),
    [
        ("sequence = true", "sequence = false", 22),
        ('"medium"', '"high"', 22),
        ('throat = "20 mm"', 'throat = "20.1 mm"', 23),
        ('thickness = "40 mm"', 'thickness = "40.1 mm"', 22),
        ('shape = "tee"', 'shape = "corner"', 25),
    ],
)
def test_each_feature_asks_for_more(workshop: DesignFolder, old: str, new: str, points: float) -> None:
    changes = [(old, new)]
    if "40.1 mm" in new:  # no plate is rolled thinner than it is drawn
        changes.append(('rolled_thickness = "0.040 m"', 'rolled_thickness = "0.0401 m"'))
    check = write(workshop, *changes).only(THROUGH)
    assert (check.outcome, found(check)) == ("finding", points)
    better = write(workshop, *changes, ('"Z15"', '"Z25"')).only(THROUGH)
    assert better.outcome == "conforms"


@pytest.mark.parametrize(
    ("old", "new", "points"),
    [
        ('preheat = "90 °C"', 'preheat = "100 °C"', 12),
        ('preheat = "90 °C"', 'preheat = "99 °C"', 20),
        ('weld = "full penetration"\nthroat', 'weld = "fillet"\nthroat', 17),
        ('weld = "full penetration"\nthroat', 'weld = "single-run fillet"\nthroat', 12),
    ],
)
def test_what_makes_it_easier(workshop: DesignFolder, old: str, new: str, points: float) -> None:
    assert found(write(workshop, (old, new)).only(THROUGH)) == points


@pytest.mark.parametrize(
    ("weld", "throat", "points"),
    [
        ("full penetration", "7 mm", 17),
        ("full penetration", "10.1 mm", 20),
        ("fillet", "7 mm", 11),
        ("fillet", "7.1 mm", 14),
    ],
)
def test_a_weld_from_both_sides_has_half_of_its_plate(
    workshop: DesignFolder, weld: str, throat: str, points: float
) -> None:
    """The wall of the chest is of 20 mm: 10 mm (3), not 7 mm (0), and 3 + 8 + 3 beside; of a fillet 0 + 0 + 8 + 3."""
    changes = (
        ("restraint =", "from_both_sides = true\nrestraint ="),
        ('"full penetration"\nthroat', f'"{weld}"\nthroat'),
        ('throat = "20 mm"', f'throat = "{throat}"'),
    )
    assert found(write(workshop, *changes).only(THROUGH)) == points


@pytest.mark.parametrize("sides", ["", "from_both_sides = false\n"])
def test_a_weld_from_one_side_has_its_whole_plate(workshop: DesignFolder, sides: str) -> None:
    """7 mm stated of a plate of 20 mm: 20 mm (6), and 3 + 8 + 3 beside."""
    changes = (('throat = "20 mm"', 'throat = "7 mm"'), ("restraint =", f"{sides}restraint ="))
    assert found(write(workshop, *changes).only(THROUGH)) == 20


@pytest.mark.parametrize(
    "missing",
    ['throat = "20 mm"', 'restraint = "medium"', "sequence = true", 'preheat = "90 °C"', 'z_quality = "Z15"'],
)
def test_what_is_needed_must_be_stated(workshop: DesignFolder, missing: str) -> None:
    assert write(workshop, (missing, "")).only(THROUGH).outcome == "not assessed"


def test_butt_joints_pull_no_plate_through(workshop: DesignFolder) -> None:
    assert bare(workshop, "joints.chest").only(THROUGH).outcome == "not applicable"


def test_the_table_knows_what_it_knows() -> None:
    assert through_thickness("throat", size=0.5).nominal == 15
    assert through_thickness("quality", "Z35").nominal >= 15 + 8 + 15 + 5
    with pytest.raises(NotKnown):
        through_thickness("restraint", "terrible")


@given(size=st.floats(1e-3, 0.2), by=st.floats(0, 0.1), criterion=st.sampled_from(["throat", "thickness"]))
def test_more_metal_never_asks_for_less(size: float, by: float, criterion: str) -> None:
    assert (
        through_thickness(criterion, size=size + by).nominal
        >= through_thickness(criterion, size=size).nominal
    )


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ('least_temperature = "0 °C"', 'least_temperature = "0 °C"', "conforms"),
        ('least_temperature = "0 °C"', 'least_temperature = "-1 °C"', "finding"),  # 26.65 J
        ('test_water = "7 °C"', 'test_water = "6.9 °C"', "finding"),
        ('test_water = "7 °C"', "", "not assessed"),
        ('least_temperature = "0 °C"', "", "not assessed"),
    ],
)
def test_plates_are_tough_at_their_coldest(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    check = write(workshop, (old, new)).only(TOUGH)
    assert check.outcome == outcome
    if outcome == "conforms":
        assert check.utilisation == pytest.approx(1.0)


def test_colder_than_the_standard_tests_is_a_query(workshop: DesignFolder) -> None:
    check = write(workshop, ('"0 °C"', '"-21 °C"')).only(TOUGH)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@pytest.mark.parametrize(("allowance", "outcome"), [("1.0", "conforms"), ("0.98", "finding")])
def test_plates_in_steam_may_waste(workshop: DesignFolder, allowance: str, outcome: str) -> None:
    old = 'thickness = "20 mm"\nmeets_steam = true\ncorrosion_allowance = "1 mm"'
    assert write(workshop, (old, old.replace('"1 mm"', f'"{allowance} mm"'))).only(WASTE).outcome == outcome


_DRY = (
    ('thickness = "20 mm"\nmeets_steam = true', 'thickness = "20 mm"\nmeets_steam = false'),
    ('thickness = "40 mm"\nmeets_steam = true', 'thickness = "40 mm"\nmeets_steam = false'),
)


def test_steam_beside_the_wall_of_one_plate_wets_no_other(workshop: DesignFolder) -> None:
    """A dry flange beside a chest in steam, without an allowance."""
    flange = 'thickness = "40 mm"\nmeets_steam = true\ncorrosion_allowance = "1 mm"'
    dry = (flange, 'thickness = "40 mm"\nmeets_steam = false')
    assert write(workshop, dry).only(WASTE).outcome == "conforms"


def test_dry_plates_need_no_allowance(workshop: DesignFolder) -> None:
    """With the open air on both sides of both walls; the one with steam on one side is asked for its allowance."""
    chest = 'one_side = "live steam"\nother_side = "atmosphere"'
    barrel = 'one_side = "exhaust steam"\nother_side = "cylinder"'
    air = 'one_side = "atmosphere"\nother_side = "atmosphere"'
    assert write(workshop, *_DRY, (chest, air), (barrel, air)).only(WASTE).outcome == "not applicable"
    unsaid = write(workshop, (_DRY[0][0], 'thickness = "20 mm"'))
    assert unsaid.only(WASTE).outcome == "not assessed"


@pytest.mark.parametrize(("allowance", "outcome"), [("1.0", "conforms"), ("0.9", "finding")])
def test_a_plate_with_steam_beside_its_wall_meets_it_whatever_it_says(
    workshop: DesignFolder, allowance: str, outcome: str
) -> None:
    old = 'meets_steam = true\ncorrosion_allowance = "1 mm"\nz_quality = "none"'
    new = f'meets_steam = false\ncorrosion_allowance = "{allowance} mm"\nz_quality = "none"'
    assert write(workshop, (old, new)).only(WASTE).outcome == outcome


_SHELL = """
[plates.end]
material = "known-plate"
thickness = "30 mm"
meets_steam = false
corrosion_allowance = "{}"
z_quality = "none"
rolled_thickness = "30 mm"
serves_as = "shell"
inside_diameter = "300 mm"
"""


@pytest.mark.parametrize(
    ("on_block", "on_weldment", "outcome"),
    [
        ('[openings.chest]\nplate = "end"\ncarries = "live steam"\n', "", "finding"),
        ('[openings.oil]\nplate = "end"\nplace = "oil feed"\n', "", "conforms"),
        ('[openings.chest]\nplate = "chest"\ncarries = "live steam"\n', "", "conforms"),
        ('[bores.main]\nplate = "end"\n', "", "finding"),
        ('[bores.main]\nplate = "chest"\n', "", "conforms"),
        ('[seat_bores.inlet]\nplate = "end"\n', "", "finding"),
        ("", '[openings.slot]\nplate = "end"\ncarries = "cylinder"\n', "finding"),
        ("", "", "conforms"),
    ],
)
def test_steam_through_a_round_plate_wets_it_whatever_it_says(
    workshop: DesignFolder, on_block: str, on_weldment: str, outcome: str
) -> None:
    """A shell of which nothing but its openings, and the bores cut from it, tells that steam is in it."""
    beside = {"block.toml": BLOCK + on_block}
    more = ("[joints.barrel-seam]", _SHELL.format("0.9 mm") + on_weldment + "[joints.barrel-seam]")
    assert write(workshop, more, beside=beside).only(WASTE).outcome == outcome
    more = ("[joints.barrel-seam]", _SHELL.format("1 mm") + on_weldment + "[joints.barrel-seam]")
    assert write(workshop, more, beside=beside).only(WASTE).outcome == "conforms"


@pytest.mark.parametrize("rule", [TOUGH, WASTE])
def test_a_weldment_without_plates_is_not_assessed(workshop: DesignFolder, rule: str) -> None:
    assert bare(workshop, "plates").only(rule).outcome == "not assessed"
