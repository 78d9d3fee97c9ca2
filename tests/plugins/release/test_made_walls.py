"""The measured wall of a pipe that is ordered as 8 mm with a mill tolerance of 12.5 %: 7 mm at the least."""

from __future__ import annotations

import pytest

from speclint import Check, Grade
from speclint.testing import DesignFolder, changed, expect_not_applicable, expect_not_assessed, found, limit

RULE = "made.within-limits"
PIPE = 'kind = "steam-pipe"\nid = "pipe"\nwall = "8 mm"\nmill_tolerance = "12.5 %"\noutside_diameter = "168.3 mm"\n'
MADE = """kind = "made-part"
id = "pipe-1"
of = "pipe"
[measured.wall]
values = ["7.9 mm", "7.5 mm"]
uncertainty = "50 µm"
date = "2026-06-15"
"""


def measured(workshop: DesignFolder, *changes: tuple[str, str, str]) -> Check:
    """The check of the pipe as made, with passages of a file written otherwise."""
    files = {"pipe.toml": PIPE, "made.toml": MADE}
    for name, old, new in changes:
        files[name] = changed(files[name], (old, new))
    return workshop.write(files).only(RULE, "pipe-1")


@pytest.mark.parametrize(
    ("least", "grade"),
    [
        ("7.0501 mm", None),
        ("7.0499 mm", Grade.QUERY),
        ("6.9501 mm", Grade.QUERY),
        ("6.9499 mm", Grade.NONCONFORMITY),
        ("4.55 mm", Grade.NONCONFORMITY),
        ("20 mm", None),
    ],
)
def test_the_least_place_decides_with_its_uncertainty(
    workshop: DesignFolder, least: str, grade: Grade | None
) -> None:
    """7 mm and 0.05 on either side; nothing is asked of a thicker wall."""
    assert measured(workshop, ("made.toml", "7.5 mm", least)).grade is grade


@pytest.mark.parametrize(
    ("tolerance", "grade"), [("6.9 %", None), ("6.8 %", Grade.QUERY), ("5 %", Grade.NONCONFORMITY)]
)
def test_the_mill_tolerance_leaves_the_wall(
    workshop: DesignFolder, tolerance: str, grade: Grade | None
) -> None:
    """7.45 mm and more is sure: 8 mm less 6.9 % is 7.448, less 6.8 % 7.456, less 5 % 7.6, and 7.55 is the most."""
    assert measured(workshop, ("pipe.toml", "12.5 %", tolerance)).grade is grade


def test_what_is_found_of_a_wall(workshop: DesignFolder) -> None:
    check = measured(workshop, ("made.toml", "7.5 mm", "6 mm"))
    assert (found(check), limit(check)) == (pytest.approx(5.95e-3), pytest.approx(7e-3))
    assert "wall is out" in check.actual


def test_limits_of_the_drawing_go_before_the_mill(workshop: DesignFolder) -> None:
    """8 +0.4/−0.3 mm: 7.7 at the least, which 7.9 and 7.75 are above, and 7.5 is not."""
    limits = ("pipe.toml", '"8 mm"', '"8 mm +0.4/-0.3"')
    assert measured(workshop, limits, ("made.toml", "7.5 mm", "7.751 mm")).outcome == "conforms"
    assert measured(workshop, limits).grade is Grade.NONCONFORMITY
    assert limit(measured(workshop, limits)) == pytest.approx(7.7e-3)


def test_what_is_left_open(workshop: DesignFolder) -> None:
    """Without a mill tolerance, or where the wall was not measured, nothing has limits; U must be on record."""
    bare = measured(workshop, ("pipe.toml", 'mill_tolerance = "12.5 %"\n', ""))
    expect_not_applicable(bare, "nothing was measured that the drawing gives limits")
    of_outside = ("made.toml", 'values = ["7.9 mm", "7.5 mm"]', 'values = ["168.2 mm"]')
    other = measured(workshop, of_outside, ("made.toml", "[measured.wall]", "[measured.outside_diameter]"))
    expect_not_applicable(other, "nothing was measured that the drawing gives limits")
    workshop.write({"pipe.toml": PIPE, "made.toml": changed(MADE, ('uncertainty = "50 µm"\n', ""))})
    unsure = workshop.only(RULE, "pipe-1", readable=False)
    expect_not_assessed(unsure, "no uncertainty is recorded for wall")


def test_a_wall_too_thin_is_not_hidden_by_a_size_within_its_limits(workshop: DesignFolder) -> None:
    size = (
        '[measured.outside]\ndimension = "outside_diameter"\nvalues = ["168.2 mm"]\nuncertainty = "50 µm"\n'
    )
    check = measured(
        workshop,
        ("pipe.toml", '"168.3 mm"', '"168.3 mm ±1"'),
        ("made.toml", "[measured.wall]", f"{size}[measured.wall]"),
        ("made.toml", "7.5 mm", "6 mm"),
    )
    assert check.grade is Grade.NONCONFORMITY
