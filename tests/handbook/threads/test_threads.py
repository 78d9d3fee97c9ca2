"""Designations read and refused, and what holds of every thread in the lists."""

from __future__ import annotations

import math
import re

import pytest
from hypothesis import given, strategies as st

from speclint.equations import COMMON_PRACTICE
from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.tables.csv_files import rows
from speclint.handbook.threads import (
    external_stripping_area,
    internal_stripping_area,
    least_major_diameter,
    limits,
    root_area,
    stress_area,
    tensile_stress_area,
    thread,
)
from speclint.handbook.threads.limits import _medium, _minor_tolerance_2b, _pitch_tolerance_2a
from tests.each import each

INCH = 0.0254


def listed() -> list[str]:
    """Every thread of the tables, as the standards write it."""
    metric = [
        f"M{row['diameter']}" + ("" if row["series"] == "metric coarse" else f"x{row['pitch']}")
        for row in rows("iso-261-1998-metric-threads.csv")
    ]
    unified = [
        f"{row['size']}-{row['threads per inch']} {row['series']}"
        for row in rows("asme-b1.1-2019-unified-threads.csv")
    ]
    whitworth = [f"{row['size']} {row['series']}" for row in rows("bs-84-1956-whitworth-threads.csv")]
    pipe = [f"G {row['size']}" for row in rows("iso-228-1-2000-pipe-threads.csv")]
    return metric + unified + whitworth + pipe


LISTED = listed()


def has_limits(name: str) -> bool:
    try:
        limits(name)
    except NotKnown:
        return False
    return True


WITH_LIMITS = [name for name in LISTED if has_limits(name)]


@pytest.mark.parametrize(
    ("written", "name", "series", "nominal", "pitch"),
    [
        ("M24", "M24", "metric coarse", 24e-3, 3e-3),
        ("M24x3", "M24", "metric coarse", 24e-3, 3e-3),
        ("M24x2", "M24x2", "metric fine", 24e-3, 2e-3),
        ("M24 × 2.0", "M24x2", "metric fine", 24e-3, 2e-3),
        ("M 3.5", "M3.5", "metric coarse", 3.5e-3, 0.6e-3),
        ("3/4-10 UNC", "3/4-10 UNC", "UNC", 0.75 * INCH, INCH / 10),
        ("3/4 UNC", "3/4-10 UNC", "UNC", 0.75 * INCH, INCH / 10),
        ("1-8 UNC", "1-8 UNC", "UNC", INCH, INCH / 8),
        ("1 UNC", "1-8 UNC", "UNC", INCH, INCH / 8),
        ("1-64 UNC", "No. 1-64 UNC", "UNC", 0.073 * INCH, INCH / 64),
        ("No. 10-24 UNC", "No. 10-24 UNC", "UNC", 0.19 * INCH, INCH / 24),
        ("#10-32 UNF", "No. 10-32 UNF", "UNF", 0.19 * INCH, INCH / 32),
        ("10-24 UNC", "No. 10-24 UNC", "UNC", 0.19 * INCH, INCH / 24),
        ("1 1/8-7 UNC", "1 1/8-7 UNC", "UNC", 1.125 * INCH, INCH / 7),
        ("1-1/8-7 UNC", "1 1/8-7 UNC", "UNC", 1.125 * INCH, INCH / 7),
        ("1-1/8 UNC", "1 1/8-7 UNC", "UNC", 1.125 * INCH, INCH / 7),
        ("2-4 1/2 UNC", "2-4.5 UNC", "UNC", 2 * INCH, INCH / 4.5),
        ("2-4.5 UNC", "2-4.5 UNC", "UNC", 2 * INCH, INCH / 4.5),
        ("1 1/4-8 UN", "1 1/4-8 UN", "UN", 1.25 * INCH, INCH / 8),
        ("7/8 BSW", "7/8 BSW", "BSW", 0.875 * INCH, INCH / 9),
        ("7/8 in BSW", "7/8 BSW", "BSW", 0.875 * INCH, INCH / 9),
        ('7/8" BSW', "7/8 BSW", "BSW", 0.875 * INCH, INCH / 9),
        ("7/8-9 BSW", "7/8 BSW", "BSW", 0.875 * INCH, INCH / 9),
        ("1 1/4 BSW", "1 1/4 BSW", "BSW", 1.25 * INCH, INCH / 7),
        ("1 BSF", "1 BSF", "BSF", INCH, INCH / 10),
        ("G 1/2", "G 1/2", "BSP", 20.955e-3, INCH / 14),
        ("G1/2", "G 1/2", "BSP", 20.955e-3, INCH / 14),
        ("G 1 1/4 A", "G 1 1/4 A", "BSP", 41.910e-3, INCH / 11),
        ("1/2 BSP", "G 1/2", "BSP", 20.955e-3, INCH / 14),
        ("  M24   x 2 ", "M24x2", "metric fine", 24e-3, 2e-3),
    ],
)
def test_designations(written: str, name: str, series: str, nominal: float, pitch: float) -> None:
    found = thread(written)
    assert (found.name, found.series) == (name, series)
    assert found.nominal == pytest.approx(nominal)
    assert found.pitch == pytest.approx(pitch)


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("", "no thread that the handbook knows"),
        ("24", "no thread that the handbook knows"),
        ("m24", "no thread that the handbook knows"),
        ("M24-6g", "no thread that the handbook knows"),
        ("M24x2 left", "no thread that the handbook knows"),
        ("M24,5", "no thread that the handbook knows"),
        ("7/8 bsw", "no thread that the handbook knows"),
        ("3/4 NPT", "no thread that the handbook knows"),
        ("M٣", "no thread that the handbook knows"),
        ("3/4-1 1/0 UNC", "no thread that the handbook knows"),
        ("M" + "9" * 3900, "99… (3901 characters)"),
        ("1/0 BSW", "no thread of size 1/0"),
        ("M23", "lists no metric thread of 23 mm"),
        ("M24x1.75", "lists no pitch of 1.75 mm"),
        ("M25", "lists no coarse pitch for this diameter; it lists 2, 1.5, 1"),
        ("13/16 UNC", "UNC has no thread of size 13/16"),
        ("7/8-10 UNC", "has 9 threads per inch, not 10"),
        ("7/8-11 BSW", "has 9 threads per inch, not 11"),
        ("1 3/8 BSW", "BSW has no thread of size 1 3/8"),
        ("G 9/16", "no pipe thread of size 9/16"),
        ("No. 1-8 UNC", "has 64 threads per inch, not 8"),
    ],
)
def test_refusals_say_what_is_wrong(written: str, said: str) -> None:
    with pytest.raises(NotKnown, match=re.escape(said)):
        thread(written)


@each(LISTED)
def test_every_listed_thread_reads_back_as_itself(name: str) -> None:
    found = thread(name)
    assert found.name == name
    assert found.nominal > found.pitch_diameter > found.minor_diameter >= found.root_diameter > 0
    assert root_area(found.root_diameter) < found.stress_area < root_area(found.nominal)


def test_the_lists_are_as_long_as_the_standards() -> None:
    """Counted by hand: 40 coarse metric sizes, 33 UNC, 24 UNF, 30 BSW, 31 BSF and 24 pipe threads."""
    by_series: dict[str, int] = {}
    for name in LISTED:
        series = thread(name).series
        by_series[series] = by_series.get(series, 0) + 1
    del by_series["metric fine"], by_series["UN"]
    assert by_series == {"metric coarse": 40, "UNC": 33, "UNF": 24, "BSW": 30, "BSF": 31, "BSP": 24}


@each(WITH_LIMITS)
def test_limits_let_every_bolt_enter_every_nut(name: str) -> None:
    t, at = thread(name), limits(name)
    for least, greatest in (at.bolt_major, at.bolt_pitch, at.nut_minor, at.nut_pitch):
        assert least < greatest
    assert at.bolt_major[1] <= t.nominal + 1e-9
    assert at.bolt_pitch[1] <= at.nut_pitch[0] + 1e-9
    # Even at worst they bear on more than a third of the basic depth.
    assert at.bolt_major[0] - at.nut_minor[1] > 0.33 * (t.nominal - t.minor_diameter)


def test_limits_are_known_for_all_but_the_smallest_threads_and_rare_pairs() -> None:
    """6g and 6H do not apply below 1.6 mm; ISO 965-1 leaves out some fine pitches."""
    without = set(LISTED) - set(WITH_LIMITS)
    assert {"M1", "M1.1", "M1.2", "M1.4"} <= without
    assert all(name.startswith("M") for name in without)
    assert not {
        name for name in without if thread(name).series == "metric coarse" and thread(name).nominal > 1.5e-3
    }
    with pytest.raises(NotKnown, match="no 6g and 6H for M1"):
        limits("M1.4")
    assert limits("M1.6").fit == "6g/6H"


def test_tolerance_of_unified_pitch_diameters_by_hand() -> None:
    """d = 1/8 in, p = 0.027 in: 0.0015 · 0.5 + 0.0015 · 0.353553 + 0.015 · 0.09 = 0.00263033 in (ASME B1.1)."""
    assert _pitch_tolerance_2a(0.125, 0.027) == pytest.approx(0.00263033, rel=1e-6)


def test_tolerance_of_unified_minor_diameters_by_hand() -> None:
    """ASME B1.1, 5.8.2 (memory), inches; in turn the first, the second and the third of its terms governs.

    No. 5, d = 0.125, p = 0.027: 0.05 · 0.09 + 0.03 · 0.216 − 0.002 = 0.00898, below 0.394 p = 0.010638.
    No. 1, d = 0.073, p = 1/72: 0.394/72 = 0.00547222. Half an inch, p = 0.1: 0.025 − 0.004 = 0.021.
    """
    assert _minor_tolerance_2b(0.125, 0.027) == pytest.approx(0.00898)
    assert _minor_tolerance_2b(0.073, 1 / 72) == pytest.approx(0.00547222, rel=1e-6)
    assert _minor_tolerance_2b(0.5, 0.1) == pytest.approx(0.021)


@pytest.mark.parametrize(
    ("name", "least", "greatest"),
    [
        ("No. 1-64 UNC", 0.0561, 0.0623),
        ("No. 1-72 UNF", 0.0580, 0.0635),
        ("No. 4-40 UNC", 0.0849, 0.0939),
        ("No. 5-40 UNC", 0.0979, 0.1062),
        ("No. 6-32 UNC", 0.104, 0.114),
        ("No. 8-32 UNC", 0.130, 0.139),
    ],
)
def test_minor_diameters_of_small_nuts_are_as_printed(name: str, least: float, greatest: float) -> None:
    """ASME B1.1, 2B, inches (memory)."""
    assert [end / INCH for end in limits(name).nut_minor] == pytest.approx([least, greatest], abs=1e-9)


def test_limits_of_the_coarsest_unified_thread_by_hand() -> None:
    """4-4 UNC, inches: T = 0.00238110 + 0.003 + 0.00595275 = 0.01133385, allowance 0.3 T = 0.00340016.

    Bolt: major 3.99660, less 0.06 · 0.396850 = 3.97279. Nut: minor 4 − 1.0825318/4 = 3.729367, rounded up by
    0.0625 − 0.025 to 3.7669; pitch 4 − 0.6495191/4 = 3.837620, more by 1.3 T = 0.0147340 to 3.852354.
    """
    found = limits("4-4 UNC")
    assert [end / INCH for end in found.bolt_major] == pytest.approx([3.9728, 3.9966], abs=1e-9)
    assert [end / INCH for end in found.nut_minor] == pytest.approx([3.729, 3.767], abs=1e-9)
    assert [end / INCH for end in found.nut_pitch] == pytest.approx([3.8376, 3.8524], abs=1e-9)


def test_tolerance_of_whitworth_effective_diameters_by_hand() -> None:
    """BS 84 (memory), d = 1/8 in, p = 1/36 in: 0.002/2 + 0.003 · 0.353553 + 0.005/6 = 0.002893994 in."""
    assert _medium(0.125, 1 / 36) == pytest.approx(0.002893994, rel=1e-6)


@pytest.mark.parametrize(
    ("name", "greatest"),
    [
        ("1/4 BSF", 0.2124),  # 26 to the inch: 0.25 − 1.280654/26 = 0.200744, + 0.2/26 + 0.004
        ("5/16 BSF", 0.2684),  # 22: 0.3125 − 1.280654/22 = 0.254288, + 0.2/22 + 0.005
        ("1/4 BSW", 0.2030),  # 20: 0.25 − 1.280654/20 = 0.185967, + 0.2/20 + 0.007
    ],
)
def test_minor_diameters_of_whitworth_nuts_by_hand(name: str, greatest: float) -> None:
    """BS 84 (memory), inches: a fifth of the pitch and 0.004, 0.005 or 0.007 in by the number to the inch."""
    assert limits(name).nut_minor[1] / INCH == pytest.approx(greatest, abs=1e-9)


def test_pipe_threads_without_a_class_take_the_wider() -> None:
    assert limits("G 1").bolt_pitch == limits("G 1 B").bolt_pitch
    assert limits("G 1 A").bolt_pitch[0] > limits("G 1 B").bolt_pitch[0]
    assert limits("G 1 A").nut_pitch == limits("G 1 B").nut_pitch


def test_allowance_of_whitworth_bolts_ends_at_three_quarters() -> None:
    """BS 84 (memory): bolts to 3/4 in have an allowance, larger ones none."""
    assert limits("3/4 BSW").bolt_major[1] < thread("3/4 BSW").nominal
    assert limits("7/8 BSW").bolt_major[1] == pytest.approx(thread("7/8 BSW").nominal)


def test_small_whitworth_bolts_have_the_allowance_of_the_quarter_inch() -> None:
    """BS 84 (memory): below 1/4 in the allowance of the 1/4 in size of the same series applies."""
    for series, small in (("BSW", "1/8"), ("BSF", "3/16")):
        quarter = thread(f"1/4 {series}").nominal - limits(f"1/4 {series}").bolt_major[1]
        allowed = thread(f"{small} {series}").nominal - limits(f"{small} {series}").bolt_major[1]
        assert allowed == pytest.approx(quarter, abs=0.6e-4 * INCH)


@given(st.sampled_from(WITH_LIMITS), st.floats(1e-3, 0.2), st.floats(1.1, 5))
def test_stripping_area_grows_with_engagement_and_worst_is_least(
    name: str, length: float, times: float
) -> None:
    for area in (external_stripping_area, internal_stripping_area):
        short, long = area(name, length), area(name, times * length)
        assert 0 < short.low < short.nominal <= short.high
        assert long.low == pytest.approx(times * short.low)
        assert long.nominal == pytest.approx(times * short.nominal)


@given(st.sampled_from(WITH_LIMITS))
def test_the_nut_has_more_to_shear_than_the_bolt(name: str) -> None:
    assert internal_stripping_area(name, 1.0).nominal > external_stripping_area(name, 1.0).nominal


@pytest.mark.parametrize("length", [0.0, -1e-3])
def test_no_engagement_is_refused(length: float) -> None:
    for area in (external_stripping_area, internal_stripping_area):
        with pytest.raises(OutOfRange, match="length of engagement"):
            area("M24", length)
    assert external_stripping_area("M24", 1e-6).low > 0


@given(st.floats(1e-3, 0.2), st.floats(0.5, 0.99))
def test_stress_area_lies_between_root_and_pitch_circle(d_2: float, ratio: float) -> None:
    d_3 = ratio * d_2
    assert math.pi / 4 * d_3**2 < tensile_stress_area(d_2, d_3) < math.pi / 4 * d_2**2


@pytest.mark.parametrize(("coarse", "fine"), [("M24", "M24x2"), ("1-8 UNC", "1-12 UNF"), ("1 BSW", "1 BSF")])
def test_a_finer_pitch_leaves_more_metal(coarse: str, fine: str) -> None:
    assert stress_area(coarse).nominal < stress_area(fine).nominal


def test_a_stripping_area_says_whose_it_is_and_over_what() -> None:
    assert external_stripping_area("M20", 20e-3).what.startswith("stripping area of M20 bolt over 20 mm, ")
    assert internal_stripping_area("M20", 20e-3).what.startswith("stripping area of M20 nut over 20 mm, ")


def test_a_reading_says_what_it_is_and_who_vouches() -> None:
    found = stress_area("7/8 BSW")
    assert found.what == "stress area of 7/8 BSW"
    assert found.low == found.nominal == found.high
    assert found.unit == "m²"
    assert COMMON_PRACTICE.work in str(found.source)
    assert str(stress_area("M24").source).startswith("ISO 898-1")
    assert str(stress_area("3/4 UNC").source).startswith("ASME B1.1")


def test_whitworth_flanks_do_not_match_metric_ones() -> None:
    assert thread("1 BSW").is_whitworth
    assert math.degrees(thread("1 BSW").flank_angle) == pytest.approx(27.5)
    assert not thread("M24").is_whitworth
    assert math.degrees(thread("M24").flank_angle) == pytest.approx(30)


@pytest.mark.parametrize(
    ("name", "called", "least"),
    [
        ("M18x1", "M18x1 6g", 17.794),  # ISO 965-1 (memory): 18 − 0.026 − 0.180
        ("M24x1.5", "M24x1.5 6g", 23.732),  # 24 − 0.032 − 0.236
        ("1/2-13 UNC", "1/2-13 UNC 2A", 0.4876 * 25.4),  # ASME B1.1 (memory), as printed
    ],
)
def test_least_diameters_over_the_crests(name: str, called: str, least: float) -> None:
    found = least_major_diameter(name)
    assert found.what == f"least major diameter of {called}"
    assert found.low == found.high == pytest.approx(least / 1e3, abs=0.003e-3)
