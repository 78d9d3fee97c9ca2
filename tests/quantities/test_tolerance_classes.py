"""What is refused, what the standard's own limits are, and what holds at every size."""

from __future__ import annotations

import math
import re
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import assume, given, strategies as st

from speclint.errors import NotKnown
from speclint.quantities import classes_of_grade, deviations
from speclint.quantities.tolerance_classes import standard_tolerance

ROOT = Path(__file__).parents[2]
CLEARANCE = ["a", "b", "c", "d", "e", "f", "g", "h"]
INTERFERENCE = ["m", "n", "p", "r", "s", "u", "x", "z", "za", "zb", "zc"]
sizes = st.floats(min_value=0.0011, max_value=0.5)
large_sizes = st.floats(min_value=0.5001, max_value=3.15)


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("", "write letter and grade"),
        ("H", "write letter and grade"),
        ("7", "write letter and grade"),
        ("H19", "write letter and grade"),
        ("H07", "write letter and grade"),
        ("H 7", "write letter and grade"),
        ("Js7", "write letter and grade"),
        ("H7/g6", "write letter and grade"),
        ("i7", "no letter 'i'"),
        ("O7", "no letter 'O'"),
        ("zd9", "no letter 'zd'"),
    ],
)
def test_refuses_what_is_no_class(written: str, said: str) -> None:
    with pytest.raises(NotKnown, match=re.escape(said)):
        deviations(0.1, written)


@pytest.mark.parametrize(
    ("known", "unknown"),
    [
        # (class, nominal size in mm) on the near and on the far side of a limit of the standard
        (("H7", 3150), ("H7", 3150.001)),
        (("H7", 0.001), ("H7", 0)),
        (("h13", 1), ("h14", 1)),
        (("h14", 1.001), ("h14", 1)),
        (("h15", 1.001), ("h15", 1)),
        (("H16", 1.001), ("H16", 1)),
        (("js17", 1.001), ("js17", 1)),
        (("h18", 1.001), ("h18", 1)),
        (("a11", 1.001), ("a11", 1)),
        (("B11", 1.001), ("B11", 1)),
        (("N8", 1), ("N9", 1)),
        (("N9", 1.001), ("N9", 1)),
        (("j5", 50), ("j4", 50)),
        (("j7", 50), ("j8", 50)),
        (("j8", 3), ("j8", 3.001)),
        (("J6", 50), ("J5", 50)),
        (("J8", 50), ("J9", 50)),
        (("j6", 500), ("j6", 500.001)),
        (("J6", 500), ("J6", 500.001)),
        (("K8", 50), ("K9", 50)),
        (("K9", 3), ("K9", 3.001)),
        (("K8", 600), ("K9", 600)),
        (("M3", 50), ("M2", 50)),
        (("P3", 50), ("P01", 50)),
        (("cd8", 50), ("cd8", 50.001)),
        (("EF8", 50), ("EF8", 50.001)),
        (("fg8", 50), ("fg8", 50.001)),
        (("t6", 24.001), ("t6", 24)),
        (("v6", 14.001), ("v6", 14)),
        (("y6", 18.001), ("y6", 18)),
        (("c11", 500), ("c11", 500.001)),
        (("x7", 500), ("x7", 500.001)),
        (("zc9", 500), ("zc9", 500.001)),
        (("h01", 500), ("h01", 500.001)),
        (("H0", 500), ("H0", 500.001)),
    ],
)
def test_limits_of_the_standard_from_both_sides(known: tuple[str, float], unknown: tuple[str, float]) -> None:
    name, size = known
    lower, upper = deviations(size / 1000, name)
    assert lower < upper
    name, size = unknown
    with pytest.raises(NotKnown):
        deviations(size / 1000, name)


@pytest.mark.parametrize(
    ("name", "size", "lower", "upper"),
    [
        ("N9", 3, -29, -4),
        ("N9", 3.01, -30, 0),
        ("N9", 500, -155, 0),
        ("N9", 501, -219, -44),
        ("M6", 250, -37, -8),
        ("M6", 250.5, -41, -9),
        ("M6", 315, -41, -9),
        ("M6", 316, -46, -10),
        ("M7", 3, -12, -2),
        ("M7", 3.01, -12, 0),
        ("P7", 500, -108, -45),
        ("P7", 501, -148, -78),
        ("P8", 50, -65, -26),
        ("M9", 50, -71, -9),
    ],
)
def test_holes_either_side_of_where_their_rule_changes(
    name: str, size: float, lower: float, upper: float
) -> None:
    """ISO 286-1:2010, Tables 1 and 3, micrometres, from memory: P7 has Δ, P8 none; M9 none either."""
    assert deviations(size / 1000, name) == pytest.approx((lower * 1e-6, upper * 1e-6), abs=1e-9)


@pytest.mark.parametrize(
    ("name", "lower", "upper"),
    [
        ("k3", 0, 4),
        ("k4", 2, 9),
        ("k5", 2, 13),
        ("k6", 2, 18),
        ("k7", 2, 27),
        ("k8", 0, 39),
        ("K7", -18, 7),
        ("K8", -27, 12),
        ("M7", -25, 0),
        ("M8", -34, 5),
        ("N7", -33, -8),
        ("N8", -42, -3),
        ("N9", -62, 0),
    ],
)
def test_transition_classes_at_50_mm(name: str, lower: float, upper: float) -> None:
    """ISO 286-1:2010, Tables 1, 3 and 5, over 30 to 50 mm, micrometres, from memory.

    IT3 to IT9 are 4, 7, 11, 16, 25, 39 and 62; k is +2 in grades 4 to 7 and else 0, m +9, n +17. Of holes Δ is
    IT7 - IT6 = 9 in grade 7 and IT8 - IT7 = 14 in grade 8: K8 ends at -2 + 14 = +12.
    """
    assert deviations(0.05, name) == pytest.approx((lower * 1e-6, upper * 1e-6), abs=1e-9)


def test_the_classes_of_a_grade_that_is_none_are_refused() -> None:
    with pytest.raises(NotKnown, match="gives no j8"):
        classes_of_grade(0.05, "j8")
    assert "j7" in dict(classes_of_grade(0.05, "j7"))


def test_the_refusal_names_letter_grade_and_size() -> None:
    with pytest.raises(NotKnown, match=r"gives no j8 for a nominal size of 50 mm"):
        deviations(0.05, "j8")
    with pytest.raises(NotKnown, match="over 0 to 3150 mm; 3151 mm is outside"):
        deviations(3.151, "H7")
    with pytest.raises(NotKnown, match=r"gives no EF7 for a nominal size of 60 mm"):
        deviations(0.06, "EF7")
    with pytest.raises(NotKnown, match=r"gives no IT0 for a nominal size of 600 mm"):
        standard_tolerance(0.6, 0)


@pytest.mark.parametrize("size", [math.nan, math.inf, -math.inf, -0.05, 0.0])
def test_a_size_that_is_none_is_refused(size: float) -> None:
    with pytest.raises(NotKnown, match="outside"):
        deviations(size, "H7")
    with pytest.raises(NotKnown, match="outside"):
        standard_tolerance(size, 7)


@pytest.mark.parametrize(
    ("grade", "micrometres"), [(7, 46), ("7", 46), ("IT7", 46), ("IT01", 2), ("01", 2), (0, 3)]
)
def test_a_grade_may_be_written_in_three_ways(grade: int | str, micrometres: float) -> None:
    """IT7, IT01 and IT0 of 180 to 250 mm: ISO 286-1:2010, Table 1, from memory."""
    assert standard_tolerance(0.2, grade) == pytest.approx(micrometres * 1e-6)


@pytest.mark.parametrize("grade", [-1, 19, "1.5", "", "IT", "it7", "002"])
def test_a_grade_that_is_none_is_refused(grade: int | str) -> None:
    with pytest.raises(NotKnown, match="no standard tolerance grade"):
        standard_tolerance(0.1, grade)


def test_rounding_of_units_does_not_move_a_size_into_the_next_band() -> None:
    """0.1 + 0.2 - 0.12 is 0.18000000000000005: the 180 mm of the drawing, IT7 40 µm, is meant; not 46 µm."""
    size = 0.1 + 0.2 - 0.12
    assert size > 0.18
    assert deviations(size, "H7")[1] == pytest.approx(40e-6)


@given(sizes | large_sizes, st.integers(1, 17))
def test_a_larger_grade_is_never_a_smaller_tolerance(size: float, grade: int) -> None:
    assert standard_tolerance(size, grade) < standard_tolerance(size, grade + 1)


@given(sizes, sizes, st.sampled_from(["01", "0", *map(str, range(1, 19))]))
def test_a_larger_size_is_never_a_smaller_tolerance(one: float, other: float, grade: str) -> None:
    small, large = sorted((one, other))
    assert standard_tolerance(small, grade) <= standard_tolerance(large, grade)


@given(
    sizes | large_sizes, st.integers(1, 18), st.sampled_from([*CLEARANCE[3:], *INTERFERENCE[:5], "js", "k"])
)
def test_the_zone_is_as_wide_as_the_standard_tolerance(size: float, grade: int, letter: str) -> None:
    lower, upper = deviations(size, f"{letter}{grade}")
    assert upper - lower == pytest.approx(standard_tolerance(size, grade), rel=1e-9)


@given(sizes | large_sizes, st.integers(1, 18))
def test_h_ends_at_zero_and_js_lies_about_it(size: float, grade: int) -> None:
    assert deviations(size, f"h{grade}")[1] == 0
    assert deviations(size, f"H{grade}")[0] == 0
    for js in ("js", "JS"):
        lower, upper = deviations(size, f"{js}{grade}")
        assert lower == -upper


@given(sizes, st.integers(5, 13), st.sampled_from(CLEARANCE))
def test_holes_a_to_h_mirror_the_shafts(size: float, grade: int, letter: str) -> None:
    lower, upper = deviations(size, f"{letter}{grade}")
    assert deviations(size, f"{letter.upper()}{grade}") == (abs(upper), -lower)


@given(sizes | large_sizes, st.integers(8, 13), st.sampled_from(["p", "r", "s", "u"]))
def test_holes_p_to_zc_mirror_the_shafts_above_grade_7(size: float, grade: int, letter: str) -> None:
    lower, upper = deviations(size, f"{letter}{grade}")
    assert deviations(size, f"{letter.upper()}{grade}") == (-upper, -lower)


@given(sizes, st.sampled_from([6, 7]), st.sampled_from(["p", "r", "s", "u", "x"]))
def test_a_fit_on_the_hole_and_on_the_shaft_are_alike_in_the_finer_grades(
    size: float, grade: int, letter: str
) -> None:
    """What Δ is for: H7/p6 and P7/h6 have the same interference (ISO 286-1, over 3 to 500 mm)."""
    assume(size > 0.0031)
    finer = grade - 1
    hole, shaft = deviations(size, f"H{grade}"), deviations(size, f"{letter}{finer}")
    other_hole, other_shaft = deviations(size, f"{letter.upper()}{grade}"), deviations(size, f"h{finer}")
    assert shaft[0] - hole[1] == pytest.approx(other_shaft[0] - other_hole[1], abs=1e-12)
    assert shaft[1] - hole[0] == pytest.approx(other_shaft[1] - other_hole[0], abs=1e-12)


@given(sizes, sizes, st.sampled_from(INTERFERENCE), st.integers(5, 9))
def test_interference_grows_with_size(one: float, other: float, letter: str, grade: int) -> None:
    small, large = sorted((one, other))
    for end in (0, 1):
        assert deviations(small, f"{letter}{grade}")[end] <= deviations(large, f"{letter}{grade}")[end]


@given(sizes, sizes, st.sampled_from(CLEARANCE), st.integers(5, 9))
def test_clearance_grows_with_size(one: float, other: float, letter: str, grade: int) -> None:
    small, large = sorted((one, other))
    for end in (0, 1):
        assert deviations(small, f"{letter}{grade}")[end] >= deviations(large, f"{letter}{grade}")[end]


@given(sizes)
def test_later_letters_lie_higher(size: float) -> None:
    letters = [
        "a",
        "b",
        "c",
        "d",
        "e",
        "f",
        "g",
        "h",
        "k",
        "m",
        "n",
        "p",
        "r",
        "s",
        "u",
        "x",
        "z",
        "za",
        "zb",
        "zc",
    ]
    uppers = [deviations(size, f"{letter}7")[1] for letter in letters]
    assert uppers == sorted(uppers)


def test_reading_a_class_brings_no_heavy_library() -> None:
    """Limits of size are read on every cold start: nothing slow may come with them that was not there before."""
    code = (
        "import sys, speclint; before = set(sys.modules);"
        "import speclint.quantities.tolerance_classes as t; t.deviations(0.48, 'H8');"
        "came = {name.partition('.')[0] for name in set(sys.modules) - before};"
        "print(sorted(came & {'pint', 'pydantic', 'csv', 'importlib'}))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT)
    assert done.stdout.strip() == "[]"
