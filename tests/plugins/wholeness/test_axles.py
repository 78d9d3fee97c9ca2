"""The axle that each crank turns: one; of a geared engine none."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

RULE = "crank.one-axle"
ENGINE = 'kind = "engine"\n[cranks.left]\nangle = "0 °"\n[cranks.right]\nangle = "90 °"'
AXLE = 'kind = "driving-axle"\nengine = "{}"\ndriven_by = [{}]'
OTHER = ENGINE.partition("\n[cranks.right]")[0]


@pytest.mark.parametrize(
    ("axles", "says"),
    [
        ({"second": AXLE.format("engine", '"left", "right"'), "first": AXLE.format("engine", "")}, ""),
        ({"second": AXLE.format("engine", '"left"'), "first": AXLE.format("engine", '"right"')}, ""),
        ({}, "crank left wants a driving axle: none is there"),
        ({"second": AXLE.format("engine", '"left"')}, "crank right wants a driving axle: none is there"),
        ({"second": AXLE.format("engine", "")}, "crank left wants a driving axle: none is there"),
        (
            {"second": AXLE.format("engine", '"left", "right"'), "first": AXLE.format("engine", '"right"')},
            "crank right is filled twice (driving axle): first (first.toml), second (second.toml)",
        ),
        ({"first": AXLE.format("other", '"left"')}, "crank left wants a driving axle: none is there"),
    ],
)
def test_each_crank_turns_one_axle_of_its_engine(
    workshop: DesignFolder, axles: dict[str, str], says: str
) -> None:
    assert told(workshop, {"engine": ENGINE, "other": OTHER, **axles}, RULE, "engine").startswith(says)
    if not says:
        assert told(workshop, {"engine": ENGINE, "other": OTHER, **axles}, RULE, "engine") == ""


def test_cranks_of_a_geared_engine_turn_no_axle(workshop: DesignFolder) -> None:
    engine = ENGINE.replace("[cranks.left]", 'gear_ratio = "2"\n[cranks.left]')
    assert told(workshop, {"engine": engine}, RULE, "engine") == "not applicable: it has no such place"


@pytest.mark.parametrize(("stage", "grade"), [("draft", "not applicable"), ("released", "crank left")])
def test_in_a_draft_it_is_still_to_be_drawn(workshop: DesignFolder, stage: str, grade: str) -> None:
    assert told(workshop, {"engine": ENGINE}, RULE, "engine", stage).startswith(grade)
