"""pairing.sliding."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.pairings.bench import RING, files

SLIDING = "pairing.sliding"


def on_the_block(**changes: tuple[tuple[str, str], ...]) -> dict[str, str]:
    """The ring straight on the block's bore: the liner left out."""
    found = files(ring=(('runs_in = "liner"', 'bears_on = "block"'),), **changes)
    del found["liner.toml"]
    return found


def test_iron_ring_on_iron_liner_conforms(workshop: DesignFolder) -> None:
    check = workshop.write(files()).only(SLIDING)
    assert check.outcome == "conforms"
    assert check.says.startswith("ring (grey iron) slides on liner (grey iron)")


@pytest.mark.parametrize(
    "steel", ["structural-S355", "structural-S235", "plate-P355GH", "cast-steel-GP240GH"]
)
def test_iron_ring_on_an_unhardened_steel_bore_is_a_finding(workshop: DesignFolder, steel: str) -> None:
    check = workshop.write(on_the_block(block=(("structural-S355", steel),))).only(SLIDING)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "ring (grey iron) slides on the bore of block itself (unhardened steel)" in check.says
    assert "M. J. Neale" in check.says


def test_the_same_bore_plated_conforms(workshop: DesignFolder) -> None:
    plated = on_the_block(block=(('duty = "duty"', 'duty = "duty"\nsurface = "hard chromium plated"'),))
    assert workshop.write(plated).only(SLIDING).outcome == "conforms"


def test_the_same_bore_cast_in_iron_conforms(workshop: DesignFolder) -> None:
    check = workshop.write(on_the_block(block=(("structural-S355", "grey-iron-250"),))).only(SLIDING)
    assert check.outcome == "conforms"


def test_a_pair_that_is_not_in_the_table_is_a_query_and_no_pass(workshop: DesignFolder) -> None:
    check = workshop.write(files(ring=(("ring-iron", "copper-CW024A"),))).only(SLIDING)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert "no source held here covers this pair" in check.says


def test_iron_on_iron_without_oil_is_a_finding(workshop: DesignFolder) -> None:
    check = workshop.write(files(liner=(('"cylinder oil"', '"none"'),))).only(SLIDING)
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert check.says.endswith("but no lubricant is used")


def test_not_assessed_while_nobody_says_whether_it_is_oiled(workshop: DesignFolder) -> None:
    check = workshop.write(files(liner=(('lubricant = "cylinder oil"', ""),))).only(SLIDING)
    assert check.outcome == "not assessed"
    assert check.says == "lubrication.lubricant is not stated in liner.toml, nor by ring"


def test_a_bad_pair_is_found_whether_or_not_it_is_oiled(workshop: DesignFolder) -> None:
    check = workshop.write(on_the_block(block=(('lubricant = "cylinder oil"', ""),))).only(SLIDING)
    assert check.outcome == "finding"


def test_the_ring_may_state_the_oil(workshop: DesignFolder) -> None:
    found = files(liner=(('lubricant = "cylinder oil"', ""),))
    found["ring.toml"] = RING + '[lubrication]\nlubricant = "cylinder oil"\n'
    assert workshop.write(found).only(SLIDING).outcome == "conforms"


@pytest.mark.parametrize(
    ("file", "line", "says"),
    [
        ("ring", 'runs_in = "liner"', "runs_in is not stated in ring.toml"),
        ("ring", 'material = "ring-iron"', "material is not stated in ring.toml"),
        ("liner", 'material = "phosphoric-cylinder-iron"', "material is not stated in liner.toml"),
    ],
)
def test_not_assessed_without(workshop: DesignFolder, file: str, line: str, says: str) -> None:
    check = workshop.write(files(**{file: ((line, ""),)})).only(SLIDING)
    assert (check.outcome, check.says) == ("not assessed", says)


def test_a_metal_that_is_not_known_is_not_assessed(workshop: DesignFolder) -> None:
    check = workshop.write(files(ring=(("ring-iron", "unobtainium"),))).only(SLIDING)
    assert check.outcome == "not assessed"
    assert "unobtainium" in check.says


SPINDLE = """
kind = "valve-spindle"
id = "spindle"
material = "{spindle}"
guide_material = "{guide}"
[lubrication]
lubricant = "cylinder oil"
"""


@pytest.mark.parametrize(
    ("spindle", "guide", "outcome"),
    [
        ("stainless-1.4021", "grey-iron-250", "conforms"),
        ("stainless-1.4021", "bronze-CC483K", "conforms"),
        ("stainless-1.4021", "stainless-1.4021", "finding"),
        ("forging-42CrMo4", "grey-iron-250", "finding"),
        ("forging-42CrMo4", "bronze-CC483K", "conforms"),
    ],
)
def test_a_spindle_in_its_guide(workshop: DesignFolder, spindle: str, guide: str, outcome: str) -> None:
    text = SPINDLE.format(spindle=spindle, guide=guide)
    assert workshop.write({"spindle.toml": text}).only(SLIDING).outcome == outcome


def valve(material: str, upper: str, lower: str, beats: int = 2) -> dict[str, str]:
    """A valve of two beats on two seats."""
    seat = 'kind = "valve-seat"\nid = "{0}"\nmaterial = "{1}"\n'
    text = (
        f'kind = "poppet-valve"\nid = "valve"\nmaterial = "{material}"\nbeats = {beats}\n'
        '[upper_beat]\nseat = "upper"\n[lower_beat]\nseat = "lower"\n'
    )
    return {
        "valve.toml": text,
        "upper.toml": seat.format("upper", upper),
        "lower.toml": seat.format("lower", lower),
    }


IRON, STAINLESS = "grey-iron-300", "stainless-1.4541"


@pytest.mark.parametrize(
    ("material", "upper", "lower", "beats", "outcome"),
    [
        ("forging-42CrMo4", IRON, IRON, 2, "conforms"),
        (STAINLESS, STAINLESS, STAINLESS, 2, "finding"),
        ("forging-42CrMo4", IRON, "structural-S355", 2, "finding"),
        ("forging-42CrMo4", "structural-S355", IRON, 2, "finding"),
        ("forging-42CrMo4", IRON, "structural-S355", 1, "conforms"),
    ],
)
def test_every_beat_of_a_valve_is_looked_at(
    workshop: DesignFolder, material: str, upper: str, lower: str, beats: int, outcome: str
) -> None:
    assert workshop.write(valve(material, upper, lower, beats)).only(SLIDING).outcome == outcome


def test_a_finding_outweighs_a_query(workshop: DesignFolder) -> None:
    """The upper beat is on a metal that no source covers, the lower on one that is known to be bad."""
    check = workshop.write(valve("forging-42CrMo4", "brass-CW614N", "structural-S355")).only(SLIDING)
    assert check.grade is Grade.NONCONFORMITY
