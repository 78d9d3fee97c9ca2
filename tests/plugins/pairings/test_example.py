"""What the example repository shows of pairs: iron rings in iron liners, and one straight on steel."""

from __future__ import annotations

import pytest

from speclint import Grade
from tests.example import assessed, made_of


@pytest.mark.parametrize("ring", ["ring-left-front", "ring-right-middle"])
def test_iron_rings_in_iron_liners_conform(ring: str) -> None:
    assert made_of("pairing.sliding", ring).outcome == "conforms"


def test_a_rocker_cast_of_an_iron_that_stretches_too_little_is_found_by_nothing_else() -> None:
    """EN 1563 promises 5 % of GJS-500-7 in a thick wall; its strength and stiffness would do."""
    check = made_of("material.brittle-in-bending", "rocker-exhaust-left-back")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert check.utilisation == pytest.approx(7 / 5)
    for rule in ("rocker.stress", "rocker.stiffness", "material.known"):
        assert made_of(rule, "rocker-exhaust-left-back").outcome == "conforms"


@pytest.mark.parametrize("rule", ["pairing.pressure-velocity", "pairing.expansion", "pairing.lubricant"])
def test_nothing_falls_out_of_the_other_rules_of_pairs(rule: str) -> None:
    checks = [one for one in assessed().checks if one.rule.name == rule]
    assert len(checks) > 2
    assert not [check.component for check in checks if check.outcome == "finding"]
