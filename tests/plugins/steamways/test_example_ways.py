"""What the example repository shows of steamways: two sound paths, one wall and one lagging that are not."""

from __future__ import annotations

import pytest

from speclint import Grade
from tests.example import made_of

_PATH = ("steamway.speed", "steamway.pressure-drop", "steamway.area-continuity", "steamway.choked")


@pytest.mark.parametrize("rule", _PATH)
@pytest.mark.parametrize("end", ["passage-pocket-left-front", "passage-pocket-left-back", "nozzle-left"])
def test_the_paths_are_sound(rule: str, end: str) -> None:
    assert made_of(rule, end).outcome == "conforms"


@pytest.mark.parametrize(
    ("rule", "component"),
    [
        ("steamway.port-rule", "passage-port-left-front"),
        ("steamway.drains", "passage-chest-left"),
        ("steamway.drains", "block-left"),
        ("steamway.branch", "nozzle-left"),
        ("steamway.drifting", "passage-breathing-left"),
        ("blast-pipe.area", "nozzle-left"),
        ("blast-pipe.lift", "nozzle-left"),
        ("partition.stress", "partition-left"),
        ("lagging.touch", "lagging-pipe-live-left"),
        ("lagging.loss", "lagging-pipe-live-left"),
    ],
)
def test_the_rest_is_sound(rule: str, component: str) -> None:
    assert made_of(rule, component).outcome == "conforms"


def test_a_wall_taken_over_from_an_old_pattern_is_found() -> None:
    alone = made_of("heat.one-wall-between", "passage-belt-left")
    assert (alone.outcome, alone.grade) == ("finding", Grade.NONCONFORMITY)
    stress = made_of("partition.stress", "partition-drain-left")
    assert (stress.outcome, stress.grade) == ("finding", Grade.HOLD)


def test_the_cover_beside_the_drain_cock_burns_a_hand() -> None:
    check = made_of("lagging.touch", "lagging-cover-back-left")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
