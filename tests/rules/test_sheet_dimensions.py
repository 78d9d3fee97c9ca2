"""The sheet follows a key into another spec, hands over both limits of a quantity, and reads its tolerance class."""

from __future__ import annotations

import pytest

from speclint import Sheet
from speclint.rules import Corner, NotAssessed
from speclint.specs import NOT_STATED, Component, Dimension, DimensionChain
from speclint.testing import DesignFolder

FILES = {
    "block.toml": """
kind = "cylinder-block"
id = "block"
[pads.front]
at = "620 mm ±0.1"
width = "180 mm h7"
area = "5000 mm²"
[bores.main]
diameter = "578 mm H7"
""",
    "liner.toml": """
kind = "cylinder-liner"
id = "liner"
pistons_for = ["503 mm", "506 mm"]
""",
    "chain.toml": """
kind = "dimension-chain"
id = "chain"
[chain.there]
of = "block"
dimension = "pads.front.at"
[chain.listed]
of = "liner"
dimension = "pistons_for.1"
[chain.here]
size = "25 mm +0.05/-0.02"
[chain.area]
of = "block"
dimension = "pads.front.area"
[chain.nowhere]
of = "block"
dimension = "pads.rear.at"
[chain.beyond]
of = "liner"
dimension = "pistons_for.2"
[chain.word]
of = "block"
dimension = "fixed_point.0"
[chain.not-stated]
of = "block"
dimension = "pads.front.height"
[chain.no-key]
of = "block"
[chain.class]
of = "block"
dimension = "bores.main.diameter"
""",
}


@pytest.fixture
def chain(workshop: DesignFolder) -> DimensionChain:
    assessment = workshop.write(FILES).assess()
    assert assessment.design is not None
    found = assessment.design.specs["chain"]
    assert isinstance(found, DimensionChain)
    return found


@pytest.fixture
def sheet(workshop: DesignFolder, chain: Component) -> Sheet:
    context = workshop.assess().context
    assert context is not None
    return Sheet(workshop.loaded.rules[0], chain, context, Corner(), record=True)


def table(chain: DimensionChain, name: str) -> Dimension:
    return chain.chain[name]


@pytest.mark.parametrize(("name", "low"), [("there", 0.6199), ("listed", 0.506), ("here", 0.02498)])
def test_a_dimension_is_taken_where_it_is_stated(
    sheet: Sheet, chain: DimensionChain, name: str, low: float
) -> None:
    assert sheet.take("L", sheet.dimension(table(chain, name))) == pytest.approx(low)


def test_what_is_read_in_another_spec_says_whose_it_is(sheet: Sheet, chain: DimensionChain) -> None:
    sheet.take("L", sheet.dimension(table(chain, "there")))
    assert sheet.record.steps[-1].name == "at, pads front of block"
    assert "taken block pads.front.at" in sheet.record.basis


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("nowhere", 'block has no dimension "pads.rear.at"'),
        ("beyond", 'liner has no dimension "pistons_for.2"'),
        ("word", 'block has no dimension "fixed_point.0"'),
        ("area", '"pads.front.area" of block is no length but area'),
        ("no-key", "chain.no-key.dimension is not stated"),
    ],
)
def test_a_key_that_leads_to_no_length_ends_the_rule(
    sheet: Sheet, chain: DimensionChain, name: str, says: str
) -> None:
    with pytest.raises(NotAssessed, match=says):
        sheet.dimension(table(chain, name))


def test_a_dimension_that_the_other_spec_leaves_out_is_missing_there(
    sheet: Sheet, chain: DimensionChain
) -> None:
    with pytest.raises(NotAssessed, match=r"pads\.front\.height is not stated in block\.toml"):
        sheet.take("L", sheet.dimension(table(chain, "not-stated")))


def test_both_limits_are_handed_over_and_make_no_corner(sheet: Sheet, chain: DimensionChain) -> None:
    """25 mm +0.05/-0.02 lies from 24.98 to 25.05."""
    low, high = sheet.take_limits("L", table(chain, "here").size)
    assert (low, high) == pytest.approx((0.02498, 0.02505))
    assert [step.symbol for step in sheet.record.steps[-2:]] == ["L_min", "L_max"]
    assert sheet._corner.met == {}
    with pytest.raises(NotAssessed):
        sheet.take_limits("L", NOT_STATED)


def test_the_class_of_a_size_is_read_as_written(sheet: Sheet, chain: DimensionChain) -> None:
    assert sheet.tolerance_class(sheet.dimension(table(chain, "class"))) == "H7"
    assert sheet.tolerance_class(table(chain, "here").size) == ""
    assert [step.value for step in sheet.record.steps if "class" in step.name] == ["H7", "none"]
