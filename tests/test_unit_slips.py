"""Slips of a unit in the example: a seeded sample; ``python -m tests.unit_slips`` tries them all."""

from __future__ import annotations

import random

import pytest

from tests.unit_slips import FACTORS, LEAST_CAUGHT, Bench, Slip, scaled

SEED = 15
READ = 200  # slips that are only read
#: Reading alone catches so many: what is left needs the rules, which the long run applies.
LEAST_READ = 0.93


@pytest.fixture(scope="module")
def bench() -> Bench:
    return Bench()


def test_every_length_of_the_example_has_its_slips(bench: Bench) -> None:
    assert len(bench.slips) > 4000
    assert len(bench.slips) % len(FACTORS) == 0
    assert all(slip.right != slip.wrong for slip in bench.slips)


@pytest.mark.long
def test_a_slip_draws_a_complaint_when_it_is_read(bench: Bench) -> None:
    tried = random.Random(SEED).sample(bench.slips, READ)
    passed = [slip for slip in tried if bench.read(slip) is not None]
    assert len(passed) <= round((1 - LEAST_READ) * READ), "\n".join(map(str, passed))


def test_what_the_reader_lets_pass_the_rules_find(bench: Bench) -> None:
    """The whole length of a set of studs, in a span of any length: 118 mm written 2997.2 mm meets no room for it."""
    slip = Slip("access-block-left", 0, "withdrawals.studs-front-left.size", "118 mm", "1180 mm")
    line = next(one for one in bench.slips if (one.spec, one.key) == (slip.spec, slip.key)).where
    assert "access-block-left" in bench.caught_by(Slip(slip.spec, line, slip.key, slip.right, slip.wrong))


@pytest.mark.long
def test_right_as_it_stands_nothing_is_caught(bench: Bench) -> None:
    slip = bench.slips[0]
    assert bench.caught_by(type(slip)(slip.spec, slip.where, slip.key, slip.right, slip.right)) == ""


@pytest.mark.parametrize(
    ("text", "factor", "wrong"),
    [
        ("25 mm +0.05/-0.02", 1000.0, "25000 mm +50/-20"),
        ("480 mm H8", 1 / 1000, "0.48 mm H8"),
        ("20.0..20.2 mm", 25.4, "508..513.08 mm"),
    ],
)
def test_a_slip_is_that_of_every_number(text: str, factor: float, wrong: str) -> None:
    assert scaled(text, factor) == wrong


def test_the_bound_of_the_long_run() -> None:
    assert LEAST_CAUGHT == 0.98
