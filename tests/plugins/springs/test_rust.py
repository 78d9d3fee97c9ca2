"""coil-spring.kept-from-rust: what is on the wire, the oil that reaches it, and the baking of one that is plated."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.springs.spring import spring

RULE = "coil-spring.kept-from-rust"
GRADE = 'wire_grade = "VDSiCr"\n'
OILED = 'protection = "oil of its cam box"\ncloses = "valve"\n'
GEAR = {
    "valve.toml": 'kind = "poppet-valve"\nid = "valve"\n',
    "spindle.toml": 'kind = "valve-spindle"\nid = "spindle"\nmoves = "valve"\n',
    "tappet.toml": 'kind = "tappet"\nid = "tappet"\nworks = "spindle"\ncarried_in = "box"\n',
}
BOX = 'kind = "cam-box"\nid = "box"\n'
PAIR = '[pairs]\ncaps = {{ between = ["tappet", "{rubs}"], oil = "{oil}", feed = "oil pump" }}\n'


@pytest.mark.parametrize("protection", ["paint", "phosphate and oil", "zinc flakes"])
def test_a_coating_keeps_a_spring_from_rust(workshop: DesignFolder, protection: str) -> None:
    check = workshop.write(spring(add=f'protection = "{protection}"\n')).only(RULE)
    assert check.outcome == "conforms"
    assert protection in check.says


def test_bare_wire_that_rusts_is_found_and_silence_is_not_assessed(workshop: DesignFolder) -> None:
    check = workshop.write(spring(add='protection = "none"\n')).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "wire VDSiCr rusts, and is bare" in check.says
    assert workshop.write(spring()).only(RULE).outcome == "not assessed"


@pytest.mark.parametrize("wire", ["1.4310", "1.4401", "1.4568", "2.4669"])
@pytest.mark.parametrize("stated", ["", 'protection = "none"\n', 'protection = "oil of its cam box"\n'])
def test_wire_that_does_not_rust_may_be_bare(workshop: DesignFolder, wire: str, stated: str) -> None:
    check = workshop.write(spring((GRADE, f'wire_grade = "{wire}"\n'), add=stated)).only(RULE)
    assert check.outcome == "conforms"
    assert f"wire {wire} does not rust" in check.says


@pytest.mark.parametrize(
    ("hours", "heat", "says"),
    [
        ("24.2 h", "205 °C ±10", ""),
        ("23.8 h", "205 °C ±10", "baked for 23.8 h < 24 h"),
        ("24 h", "190..220 °C", ""),
        ("24 h", "188..215 °C", "baked at 188 °C < 190 °C"),
        ("24 h", "195..222 °C", "baked at 222 °C > 220 °C"),
    ],
)
@pytest.mark.parametrize("wire", ["VDSiCr", "1.4310"])
def test_a_plated_spring_is_baked_long_and_hot_enough(
    workshop: DesignFolder, hours: str, heat: str, says: str, wire: str
) -> None:
    """24 h at 190 to 220 °C by the table of ISO 9588 for the strongest steels, from memory; the plating loads any."""
    add = f'protection = "electroplated zinc"\nbaked_for = "{hours}"\nbaked_at = "{heat}"\n'
    check = workshop.write(spring((GRADE, f'wire_grade = "{wire}"\n'), add=add)).only(RULE)
    assert check.outcome == ("finding" if says else "conforms")
    assert says in check.says


def test_a_plated_spring_that_is_not_said_to_be_baked_is_found(workshop: DesignFolder) -> None:
    check = workshop.write(spring(add='protection = "electroplated zinc"\n')).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "plated in a bath, and not said to be baked" in check.says
    hot = spring(add='protection = "electroplated zinc"\nbaked_at = "200 °C"\n')
    assert workshop.write(hot).only(RULE).outcome == "not assessed"
    timed = spring(add='protection = "electroplated zinc"\nbaked_for = "24 h"\n')
    assert workshop.write(timed).only(RULE).outcome == "not assessed"


@pytest.mark.parametrize("rubs", ["spindle", "valve-spindle"])
def test_the_oil_of_a_cam_box_reaches_the_spindle_by_a_feed(workshop: DesignFolder, rubs: str) -> None:
    box = BOX + PAIR.format(rubs=rubs, oil="engine oil")
    check = workshop.write({**spring(add=OILED), **GEAR, "box.toml": box}).only(RULE)
    assert check.outcome == "conforms"
    assert "box feeds oil to spindle" in check.says


@pytest.mark.parametrize(
    "pair",
    [
        "",
        PAIR.format(rubs="cam", oil="engine oil"),
        PAIR.format(rubs="spindle", oil="grease"),
        PAIR.format(rubs="spindle", oil="engine oil").replace(', feed = "oil pump"', ""),
        PAIR.format(rubs="spindle", oil="engine oil").replace("oil pump", "no feed: dry"),
        PAIR.format(rubs="spindle", oil="engine oil").replace("oil pump", "branch 2, blanked off"),
        PAIR.format(rubs="spindle", oil="engine oil") + '[lubrication]\nlubricant = "none"\n',
    ],
    ids=["no pairs", "of the cam", "grease", "no feed", "feed denied", "feed blanked", "a dry box"],
)
def test_a_box_that_feeds_the_spindle_no_oil_keeps_no_rust_away(workshop: DesignFolder, pair: str) -> None:
    check = workshop.write({**spring(add=OILED), **GEAR, "box.toml": BOX + pair}).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "box feeds no oil to the spindle of its valve" in check.says


def test_a_valve_that_no_box_works_has_no_oil_of_a_box(workshop: DesignFolder) -> None:
    gear = {**GEAR, "tappet.toml": GEAR["tappet.toml"].replace('carried_in = "box"\n', "")}
    check = workshop.write({**spring(add=OILED), **gear}).only(RULE)
    assert check.outcome == "finding"
    assert "no cam box carries what works its valve" in check.says
    alone = spring(add='protection = "oil of its cam box"\n')
    assert workshop.write(alone).only(RULE).outcome == "not assessed"


def test_a_spring_within_another_is_oiled_as_that_is(workshop: DesignFolder) -> None:
    inner = spring(add='protection = "oil of its cam box"\nnested_in = "outer"\n')
    outer = 'kind = "compression-spring"\nid = "outer"\ncloses = "valve"\n'
    for oil, outcome in (("engine oil", "conforms"), ("grease", "finding")):
        files = {**inner, **GEAR, "outer.toml": outer, "box.toml": BOX + PAIR.format(rubs="spindle", oil=oil)}
        assert workshop.write(files).only(RULE, "spring").outcome == outcome


def test_springs_nested_in_each_other_end_somewhere(workshop: DesignFolder) -> None:
    inner = spring(add='protection = "oil of its cam box"\nnested_in = "outer"\n')
    outer = 'kind = "compression-spring"\nid = "outer"\nnested_in = "spring"\n'
    check = workshop.write({**inner, "outer.toml": outer}).only(RULE, "spring", readable=False)
    assert check.outcome == "not assessed"
