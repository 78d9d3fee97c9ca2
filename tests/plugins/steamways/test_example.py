"""What the example repository shows of pipes: a sound one, and one ordered without the mill's tolerance."""

from __future__ import annotations

import pytest

from speclint import Grade
from tests.example import made_of


@pytest.mark.parametrize("rule", ["pipe.wall", "pipe.test", "pipe.flexibility"])
@pytest.mark.parametrize("pipe", ["pipe-live-left", "pipe-exhaust-left"])
def test_the_sound_pipes_conform(rule: str, pipe: str) -> None:
    assert made_of(rule, pipe).outcome == "conforms"


def test_the_pipe_ordered_without_the_mills_tolerance_is_held() -> None:
    check = made_of("pipe.wall", "pipe-live-right")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


def test_the_drawing_without_its_revision_is_found() -> None:
    assert made_of("release.identity", "pipe-exhaust-left").says == "not stated: revision"
    assert made_of("release.identity", "pipe-live-left").outcome == "conforms"
