"""What a rule of hold grade rests on, left out: a seeded sample; ``python -m tests.omission`` tries it all."""

from __future__ import annotations

import random

import pytest

from tests.contracts.promises import promised
from tests.omission import ELSEWHERE, Bench, Omission

SEED = 16
TRIED = 6


@pytest.fixture(scope="module")
def bench() -> Bench:
    return Bench()


def test_an_omission_is_told_or_listed_as_open(bench: Bench) -> None:
    tried = random.Random(SEED).sample(bench.omissions, TRIED)
    passed = [one for one in tried if not bench.told_by(one) and not promised()[one.rule].listing(one.row)]
    assert not passed, "\n".join(map(str, passed))


def test_every_way_is_tried(bench: Bench) -> None:
    assert {one.way for one in bench.omissions} == {"removed", "shortened", "set"}
    assert len(bench.omissions) > 1000


@pytest.mark.parametrize(
    ("one", "by"),
    [
        (
            Omission(
                "cover.thickness",
                "cover-front-left",
                "cylinder-block.ends.*.relief_set",
                "removed",
                "",
                (("block-left", "ends.front.relief_set"), ("block-left", "ends.back.relief_set")),
            ),
            "not assessed",
        ),
        (
            Omission(
                "block.flat-wall",
                "weldment-block-right",
                "weldment.walls",
                "shortened",
                "port-passage",
                (("weldment-block-right", "walls"),),
            ),
            "not assessed",
        ),
        (
            Omission(
                "rod.buckling", "rod-left", "piston-rod.ends", "set", "both fixed", (("rod-left", "ends"),)
            ),
            ELSEWHERE,
        ),
        (
            Omission(
                "block.closed-cavities",
                "weldment-block-right",
                "weldment.cavities.*.vented_in_service",
                "set",
                "false",
                (("weldment-block-right", "cavities.under-the-saddle.vented_in_service"),),
            ),
            "finding",
        ),
    ],
    ids=lambda value: getattr(value, "row", None),
)
def test_what_tells_an_omission(bench: Bench, one: Omission, by: str) -> None:
    """Water without its relief valves, two walls of three, a rod with a pin said to be fixed, a cavity not vented."""
    assert bench.told_by(one) == by


def test_what_nothing_tells_is_passed(bench: Bench) -> None:
    """Two checks prove a fault mended, of which one is left out: nothing but its record says that there were two."""
    places = (("fault-flat-walls", "by_checks"),)
    one = Omission(
        "fault.proved-by-checks", "fault-flat-walls", "known-fault.by_checks", "shortened", "walls", places
    )
    assert bench.told_by(one) == ""
    assert promised()[one.rule].listing(one.row)
