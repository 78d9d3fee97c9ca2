"""A bore that an end names wrongly: each rule that goes by it says so, and none breaks off."""

from __future__ import annotations

from functools import cache

import pytest

from speclint.checking import check
from speclint.checking.worst_corner import Effort
from speclint.errors import replace
from speclint.repository import Design
from speclint.rules import Context
from speclint.specs import Component
from tests.unit_slips import Bench, Slip


@cache
def misspelt() -> tuple[Bench, Design, Context]:
    """The example with the front end of the left block of "mane", where the block has a bore "main"."""
    bench = Bench()
    stated = dict(bench.design.specs["block-left"].at_keys())["ends.front.of_bore"]
    spec = bench.read(Slip("block-left", stated.where.line, stated.where.key, "main", "mane"))
    assert spec is not None
    design = replace(bench.design, specs={**bench.design.specs, "block-left": spec})
    return bench, design, bench.context_of(design)


@pytest.mark.parametrize(
    ("component", "rule"),
    [
        ("block-left", "frame.carrying-pads"),
        ("block-left", "water.drain-passes-it"),
        ("block-left", "water.of-warming"),
        ("cover-front-left", "cover.of-its-end"),
    ],
)
def test_a_rule_is_not_assessed_where_an_end_is_of_a_bore_that_is_not_there(
    component: str, rule: str
) -> None:
    bench, design, context = misspelt()
    part = design.specs[component]
    assert isinstance(part, Component)
    (found,) = (one for one in bench.loaded.rules_for({part.kind}) if one.name == rule)
    result = check(found, part, context, effort=Effort(boxes=0, corners=1))
    assert not result.could_not_run
    assert result.outcome == "not assessed"
    assert "bore mane is not stated in blocks/block.toml" in result.missing
