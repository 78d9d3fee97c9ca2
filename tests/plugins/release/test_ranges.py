"""What is left until a limit of wear, at both sides of the end of its range."""

from __future__ import annotations

from speclint_release.formulae.records import time_left
from tests.ranges import End, expect_end


def test_without_wear_there_is_no_time_left_to_tell() -> None:
    at = {"L": 0.509, "m": 0.5005, "w": 1e-15}
    expect_end(End(time_left, at, {"w": 0.0}, "there is no rate of wear"))
    expect_end(End(time_left, at, {"w": -1e-11}, "there is no rate of wear"))
