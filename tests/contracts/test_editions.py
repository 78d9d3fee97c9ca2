"""A result of a rule moves only with the rule's edition, or with what it rests on."""

from __future__ import annotations

from speclint.testing import expect_golden
from tests.contracts.editions import FILE
from tests.example import assessed


def test_a_result_moves_only_with_the_edition_of_its_rule() -> None:
    """Written anew by ``python -m tests.contracts.editions``; read the change before you commit it."""
    expect_golden(assessed(), FILE)
