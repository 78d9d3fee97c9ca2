"""Threads, their classes and their limits at both sides of each end of their range, and the words that refuse."""

from __future__ import annotations

import re

import pytest

from speclint.errors import NotKnown
from speclint.handbook.tables import Reading
from speclint.handbook.threads import (
    external_stripping_area,
    internal_stripping_area,
    limits,
    thread,
)
from speclint.handbook.threads.property_classes import property_class
from tests.ranges import End, expect_end

LITTLE = 1e-9
INCH = 0.0254


def of_bolt(length: float) -> Reading:
    """Of an M24."""
    return external_stripping_area("M24", length)


def of_nut(length: float) -> Reading:
    """Of an M24."""
    return internal_stripping_area("M24", length)


@pytest.mark.parametrize(
    "end",
    [
        End(
            one,
            {"length": LITTLE},
            {"length": beyond},
            f"length of engagement must be above 0; it is {said} mm",
        )
        for one in (of_bolt, of_nut)
        for beyond, said in ((0.0, "0"), (-0.0125, "-12.5"))
    ],
    ids=str,
)
def test_a_stripping_area_wants_a_length(end: End) -> None:
    expect_end(end)


@pytest.mark.parametrize(
    ("name", "within", "beyond", "says"),
    [
        ("8.8", 1.6, 1.59, "ISO 898-1 gives class 8.8 from 1.6 to 39 mm; a thread of 1.59 mm is outside"),
        ("8.8", 39, 39.5, "ISO 898-1 gives class 8.8 from 1.6 to 39 mm; a thread of 39.5 mm is outside"),
        ("9.8", 16, 16.3, "ISO 898-1 gives class 9.8 from 1.6 to 16 mm; a thread of 16.3 mm is outside"),
        (
            "A4-70",
            1.6,
            1.59,
            "ISO 3506-1 gives class A4-70 from 1.6 to 24 mm; a thread of 1.59 mm is outside",
        ),
        ("A4-70", 24, 24.4, "ISO 3506-1 gives class A4-70 from 1.6 to 24 mm; a thread of 24.4 mm is outside"),
    ],
)
def test_a_class_answers_at_its_end_and_refuses_beyond(
    name: str, within: float, beyond: float, says: str
) -> None:
    assert property_class(name, within / 1e3).name == name
    with pytest.raises(NotKnown, match=f"^{re.escape(says)}$"):
        property_class(name, beyond / 1e3)


@pytest.mark.parametrize(
    ("written", "says"),
    [
        (
            "M24-6g",
            '"M24-6g" is no thread that the handbook knows: write "M24", "M24x2", "3/4-10 UNC", "7/8 BSW", '
            '"1 BSF" or "G 1/2"',
        ),
        ("M23", "ISO 261 lists no metric thread of 23 mm"),
        ("M24x1.75", "M24x1.75: ISO 261 lists no pitch of 1.75 mm for this diameter; it lists 3, 2, 1.5, 1"),
        ("M25", "M25: ISO 261 lists no coarse pitch for this diameter; it lists 2, 1.5, 1"),
        ("13/16 UNC", "13/16 UNC: UNC has no thread of size 13/16"),
        ("7/8-10 UNC", "7/8-10 UNC: UNC 7/8 has 9 threads per inch, not 10"),
        ("G 9/16", "G 9/16: ISO 228-1 lists no pipe thread of size 9/16"),
    ],
)
def test_a_thread_that_is_not_listed_is_refused_in_these_words(written: str, says: str) -> None:
    with pytest.raises(NotKnown, match=f"^{re.escape(says)}$"):
        thread(written)


def test_the_smallest_metric_thread_with_limits() -> None:
    """ISO 965-1 begins its classes 6g and 6H at 1.6 mm."""
    assert limits("M1.6").fit == "6g/6H"
    with pytest.raises(NotKnown, match=r"^ISO 965-1 gives no 6g and 6H for M1\.4$"):
        limits("M1.4")
