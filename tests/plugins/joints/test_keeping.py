"""Locking of nuts, and second retention above the track."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.joints.bench import bench, without


def _nut(workshop: DesignFolder, place: str, how: str) -> DesignFolder:
    return bench(
        workshop,
        ("studs", 'could_fall_into = "nothing"', f'could_fall_into = "{place}"'),
        ("studs", 'locking = "none"', f'locking = "{how}"'),
    )


@pytest.mark.parametrize("place", ["valve", "cylinder", "cam box", "motion", "track"])
@pytest.mark.parametrize(
    ("how", "grade"),
    [
        ("none", Grade.NONCONFORMITY),
        ("lock nut", Grade.OBSERVATION),
        ("prevailing torque nut", Grade.OBSERVATION),
        ("split pin", None),
        ("tab washer", None),
        ("lock plate", None),
        ("wire", None),
        ("peened", None),
    ],
)
def test_a_nut_that_could_fall_in_is_locked(
    workshop: DesignFolder, place: str, how: str, grade: Grade | None
) -> None:
    check = _nut(workshop, place, how).only("joint.locking", "studs")
    assert check.grade is grade
    assert check.outcome == ("conforms" if grade is None else "finding")
    assert place in check.says


def test_a_nut_that_falls_into_nothing_needs_no_lock(workshop: DesignFolder) -> None:
    assert bench(workshop).only("joint.locking", "studs").outcome == "conforms"


@pytest.mark.parametrize("line", ['locking = "none"', 'could_fall_into = "nothing"'])
def test_locking_not_stated_is_not_assessed(workshop: DesignFolder, line: str) -> None:
    assert without(workshop, "studs", line).only("joint.locking", "studs").outcome == "not assessed"


@pytest.mark.parametrize(
    ("kept", "outcome"), [("none", "finding"), ("safety strap", "conforms"), ("keep plate", "conforms")]
)
def test_above_the_track_two_things_hold(workshop: DesignFolder, kept: str, outcome: str) -> None:
    bench(workshop, ("studs", "over_track = false", f'over_track = true\nsecond_retention = "{kept}"'))
    check = workshop.only("fastening.underside", "studs")
    assert check.outcome == outcome
    assert (check.grade is Grade.HOLD) is (outcome == "finding")


def test_away_from_the_track_it_does_not_apply(workshop: DesignFolder) -> None:
    assert bench(workshop).only("fastening.underside", "studs").outcome == "not applicable"


@pytest.mark.parametrize("stated", ["", "over_track = true"])
def test_what_is_not_said_of_the_track_is_a_hold(workshop: DesignFolder, stated: str) -> None:
    bench(workshop, ("studs", "over_track = false", stated))
    check = workshop.only("fastening.underside", "studs")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
