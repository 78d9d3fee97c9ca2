"""A lifting plan weighs and lifts the parts of its own block."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "lifting.parts-of-its-block"
OTHER, FINE = ("finding", Grade.NONCONFORMITY), ("conforms", None)
FILES = {
    "one.toml": 'kind = "cylinder-block"',
    "two.toml": 'kind = "cylinder-block"',
    "weldment.toml": 'kind = "weldment"\nmakes = "one"',
    "liner.toml": 'kind = "cylinder-liner"\nhoused_in = "one"',
    "cover.toml": 'kind = "cylinder-cover"\ncloses = "one"',
    "box.toml": 'kind = "cam-box"\nmounted_on = "one"',
    "plan.toml": 'kind = "lifting-plan"\nlifts = "one"\nweights.a.of = "weldment"\nweights.b.of = "liner"\n'
    'weights.c.of = "cover"\nweights.d.mass = "10 kg"\njibs.j.lifts = ["box"]',
}


@pytest.mark.parametrize("other", ["", "weldment.toml", "liner.toml", "cover.toml", "box.toml", "plan.toml"])
def test_each_part_is_of_the_block_that_is_lifted(workshop: DesignFolder, other: str) -> None:
    files = {name: text.replace('"one"', '"two"') if name == other else text for name, text in FILES.items()}
    found = workshop.write(files).only(RULE)
    assert (found.outcome, found.grade) == (OTHER if other else FINE)


def test_a_plan_that_names_no_parts(workshop: DesignFolder) -> None:
    plan = 'kind = "lifting-plan"\nlifts = "one"\nweights.d.mass = "10 kg"\n'
    assert workshop.write({**FILES, "plan.toml": plan}).only(RULE).outcome == "not applicable"


def test_a_plan_that_lifts_a_liner_weighs_it(workshop: DesignFolder) -> None:
    plan = 'kind = "lifting-plan"\nlifts = "liner"\nweights.b.of = "liner"\n'
    assert workshop.write({**FILES, "plan.toml": plan}).only(RULE).outcome == "not applicable"
