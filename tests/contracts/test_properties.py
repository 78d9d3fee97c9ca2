"""What must hold of every rule, tried on its example as it holds and once broken: some in each run, all with .ci/long.

Other units, another order, tighter tolerances and values stated that were not; and what families declare in their
``data/properties.toml``: of pressure, temperature, wear, eccentricity and size.
"""

from __future__ import annotations

from collections.abc import Iterator
from zlib import crc32

import pytest

from speclint.families import RuleExample
from speclint.testing import PROPERTIES, declared_properties, expect_properties
from tests.rule_examples.designs import bench, examples

#: Of so many parts of the rules, told by their names, one is tried in each run of the tests.
PARTS = 32


def faults_of(some: list[RuleExample]) -> Iterator[str]:
    for one in some:
        try:
            expect_properties(*bench().trials(one))
        except AssertionError as fault:
            yield str(fault)


@pytest.mark.parametrize(
    "part", [0, *(pytest.param(part, marks=pytest.mark.long) for part in range(1, PARTS))]
)
def test_every_rule_keeps_its_properties(part: int) -> None:
    some = [one for one in examples().values() if crc32(one.rule.encode()) % PARTS == part]
    assert some
    faults = list(faults_of(some))
    assert not faults, "\n".join(faults)


def test_what_is_declared_is_of_rules_that_have_an_example() -> None:
    """And each by the family of the rule: else nothing would hold the declaration."""
    for family in bench().loaded.families:
        for rule in declared_properties([family]):
            assert rule in examples(), f"{family.name} declares properties of {rule}, which has no example"
            assert bench().rules[rule].family == family.name, f"{family.name} declares properties of {rule}"


def test_an_exemption_says_why() -> None:
    for rule, declared in bench().declared.items():
        assert set(declared.exempt) <= set(PROPERTIES)
        assert all(len(why.split()) >= 6 for why in declared.exempt.values()), rule


def test_directions_and_sizes_are_declared_at_all() -> None:
    declared = bench().declared.values()
    assert sum("pressure" in one.never_better_with for one in declared) > 20
    assert sum(one.power is not None for one in declared) > 10
