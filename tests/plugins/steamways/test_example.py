"""What the example repository shows of pipes: a sound one, and one ordered without the mill's tolerance."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

EXAMPLE = DesignFolder(Path(__file__).parents[3] / "example_specs")


@pytest.mark.parametrize("rule", ["pipe.wall", "pipe.test", "pipe.flexibility"])
@pytest.mark.parametrize("pipe", ["pipe-live-left", "pipe-exhaust-left"])
def test_the_sound_pipes_conform(rule: str, pipe: str) -> None:
    assert EXAMPLE.only(rule, pipe).outcome == "conforms"


def test_the_pipe_ordered_without_the_mills_tolerance_is_held() -> None:
    check = EXAMPLE.only("pipe.wall", "pipe-live-right")
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


def test_the_drawing_without_its_revision_is_found() -> None:
    assert EXAMPLE.only("release.identity", "pipe-exhaust-left").says == "not stated: revision"
    assert EXAMPLE.only("release.identity", "pipe-live-left").outcome == "conforms"
