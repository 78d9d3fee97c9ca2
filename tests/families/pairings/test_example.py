"""What the example repository shows of pairs: iron rings in iron liners, and one straight on steel."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from tests.workshop import Workshop

EXAMPLE = Workshop(Path(__file__).parents[3] / "example_specs")


@pytest.mark.parametrize("ring", ["ring-left-front", "ring-right-middle"])
def test_iron_rings_in_iron_liners_conform(ring: str) -> None:
    assert EXAMPLE.only("pairing.sliding", ring).outcome == "conforms"


def test_the_boosters_ring_on_the_steel_of_its_block_is_a_finding() -> None:
    check = EXAMPLE.only("pairing.sliding", "ring-booster")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "slides on the bore of block-booster itself (unhardened steel)" in check.says
