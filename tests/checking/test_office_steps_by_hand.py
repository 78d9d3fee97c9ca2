"""The steps of the drawing office, each worked by hand: how far they are apart, and what is written after some."""

from __future__ import annotations

import pytest

from speclint.checking.office_steps import Rounding, listed, rounding, sized, threads
from speclint.errors import replace
from speclint.quantities import Measure, read

MM, INCH, BAR = 1e-3, 0.0254, 1e5


def steps_of(text: str, dimension: str, *, limits: bool = False) -> Rounding:
    found = rounding(read(text, dimension), limits=limits)
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("text", "dimension", "steps"),
    [
        # that of the unit, and the finest to which a length is stated: a micrometre, a tenth of a thou
        ("190 mm", "length", [0.1 * MM, 0.001 * MM]),
        ("1.9 mm", "length", [0.1 * MM, 0.001 * MM]),
        ("0.5 mm", "length", [0.01 * MM, 0.0001 * MM]),  # a tenth and a thousandth of its decade are less
        ("1 3/4 in", "length", [INCH / 64, 0.0001 * INCH]),
        ("1.75 in", "length", [0.005 * INCH, 0.0001 * INCH]),
        ("0.04 in", "length", [0.001 * INCH, 0.00001 * INCH]),
        ("2 m", "length", [0.001]),
        ("2 km", "length", [100.0, 1.0]),  # a unit without a step of its own: that of its decade
        ("190 mm s6", "length", [0.1 * MM, 0.001 * MM]),
        # a tenth of the decade of what lies between equal limits, or between the ends of a range
        ("105 mm ±0.5", "length", [0.1 * MM, 0.001 * MM]),
        ("105 mm ±0.4", "length", [0.01 * MM, 0.001 * MM]),
        ("100 mm ±0.004", "length", [0.0001 * MM]),
        ("20.0..20.2 mm", "length", [0.01 * MM, 0.001 * MM]),
        ("1 in ±0.01", "length", [0.001 * INCH, 0.0001 * INCH]),
        # limits that stand by themselves tell nothing of the size
        ("190 mm +0.150/+0.122", "length", [0.1 * MM, 0.001 * MM]),
        # a hundredth of the decade, and a hundred-thousandth
        ("1240 N", "force", [10.0, 0.01]),
        ("999 N", "force", [1.0, 0.001]),
        ("15.5 bar gauge", "fluid pressure", [0.1 * BAR, 0.0001 * BAR]),
        ("1.5", "ratio", [0.01, 0.00001]),
        ("1.01", "ratio", [0.01, 0.00001]),
        ("1", "ratio", [0.01, 0.00001]),
        ("0.85", "ratio", [0.01, 0.000001]),  # a tenth, of a share of one
        ("0.02", "ratio", [0.001, 0.0000001]),
        # of a temperature in degrees of its scale
        ("220 °C", "temperature", [1.0, 0.001]),
        ("420 °F", "temperature", [5 / 9, 0.001 * 5 / 9]),
        ("30 K", "temperature difference", [0.1, 0.0001]),
        ("30 °F difference", "temperature difference", [0.1 * 5 / 9, 0.0001 * 5 / 9]),
    ],
)
def test_the_steps_of_a_quantity(text: str, dimension: str, steps: list[float]) -> None:
    assert steps_of(text, dimension).steps == pytest.approx(steps, rel=1e-9)


@pytest.mark.parametrize(
    ("text", "steps"),
    [
        ("190 mm +0.150/+0.122", [0.001 * MM]),  # 0.028 mm apart
        ("190 mm +0.3/-0.2", [0.01 * MM, 0.001 * MM]),
        ("190 mm 0/-1", [0.1 * MM, 0.001 * MM]),
    ],
)
def test_limits_that_move_alone_have_steps_by_their_width(text: str, steps: list[float]) -> None:
    assert steps_of(text, "length", limits=True).steps == pytest.approx(steps, rel=1e-9)


@pytest.mark.parametrize(
    ("text", "dimension"),
    [("105 mm ±0.5", "length"), ("105 mm", "length"), ("105 mm H7", "length"), ("1240 N +10/-5", "force")],
)
def test_no_other_limits_move_alone(text: str, dimension: str) -> None:
    measure = read(text, dimension)
    assert rounding(measure, limits=True) is None
    assert rounding(measure) is not None


def test_what_is_nothing_or_taken_from_another_part_has_no_steps() -> None:
    assert rounding(read("0 bar gauge", "fluid pressure", "any")) is None
    assert rounding(read("0 °C", "temperature")) is None
    turned = replace(read("30 mm ±1", "length"), low=0.028, high=0.030)
    assert rounding(turned) is None
    assert listed(turned, plate=False) == ([], [])
    assert sized(turned, 0.03) is None


def test_a_value_moves_by_half_of_itself_and_limits_by_a_hundredth_of_the_size() -> None:
    assert steps_of("100 mm", "length").reach == pytest.approx(0.05)
    assert steps_of("100 mm +0.3/-0.2", "length", limits=True).reach == pytest.approx(0.001)
    assert steps_of("1.9..2.1 mm", "length").reach == pytest.approx(0.001)
    assert steps_of("220 °C", "temperature").reach == pytest.approx(110.0)
    assert steps_of("-20 °C", "temperature").reach == pytest.approx(10.0)
    assert steps_of("30 °F difference", "temperature difference").reach == pytest.approx(15 * 5 / 9)
    assert (steps_of("100 mm", "length").share, steps_of("100 mm 0/-1", "length", limits=True).share) == (
        0.5,
        0.01,
    )


def test_a_quantity_is_moved_whole_or_its_limits_alone() -> None:
    whole = steps_of("100 mm +0.3/-0.2", "length").moved(0.001)
    assert (whole.nominal, whole.low, whole.high) == pytest.approx((0.101, 0.1008, 0.1013))
    alone = steps_of("100 mm +0.3/-0.2", "length", limits=True).moved(0.001)
    assert (alone.nominal, alone.low, alone.high) == pytest.approx((0.1, 0.1008, 0.1013))


@pytest.mark.parametrize(
    ("text", "by", "finer", "further", "then"),
    [
        ("190 mm", 0.04 * MM, 0, 0, ("190.1 mm", 0.1 * MM)),  # away from what it is
        ("190 mm", -0.04 * MM, 0, 0, ("189.9 mm", -0.1 * MM)),
        ("190 mm", 0.04 * MM, 0, 2, ("190.3 mm", 0.3 * MM)),
        ("190 mm", -0.04 * MM, 0, 2, ("189.7 mm", -0.3 * MM)),
        ("190 mm", 0.04 * MM, 0, -1, None),  # where it is already
        ("190 mm", 0.04 * MM, 0, -2, None),
        ("190 mm", 0.25 * MM, 0, -1, ("190.2 mm", 0.2 * MM)),
        ("190 mm", 0.0123 * MM, 1, 0, ("190.013 mm", 0.013 * MM)),
        ("1 3/4 in", 0.001 * INCH, 0, 0, ("1 49/64 in", INCH / 64)),
        ("1 3/4 in", -0.001 * INCH, 0, 0, ("1 47/64 in", -INCH / 64)),
        ("1 3/4 in", 0.00035 * INCH, 1, 0, ("1.7504 in", 0.0004 * INCH)),  # no fraction any more
        ("1.75 in", 0.001 * INCH, 0, 0, ("1.755 in", 0.005 * INCH)),
        ("105 mm ±0.5", 0.04 * MM, 0, 0, ("105.1 mm ±0.5", 0.1 * MM)),
        ("20.0..20.2 mm", 0.004 * MM, 0, 0, ("20.01..20.21 mm", 0.01 * MM)),
    ],
)
def test_a_quantity_is_rounded_away_from_what_it_is(
    text: str, by: float, finer: int, further: int, then: tuple[str, float] | None
) -> None:
    found = steps_of(text, "length").rounded(by, finer, further)
    if then is None or found is None:
        assert found is then is None
        return
    assert found.text == then[0]
    assert found.by == pytest.approx(then[1], rel=1e-9)
    assert found.value == read(found.text, "length")
    assert found.of == read(text, "length").nominal
    assert found.exact is bool(finer)
    assert found.share == pytest.approx(abs(then[1]) / found.of)


@pytest.mark.parametrize(
    ("by", "then", "moved"),
    [
        (0.0005 * MM, "190 mm +0.151/+0.123", 0.001 * MM),
        (-0.0005 * MM, "190 mm +0.149/+0.121", -0.001 * MM),
        (0.0125 * MM, "190 mm +0.163/+0.135", 0.013 * MM),
    ],
)
def test_limits_are_rounded_by_the_lower_one(by: float, then: str, moved: float) -> None:
    found = steps_of("190 mm +0.150/+0.122", "length", limits=True).rounded(by, 0, 0)
    assert found is not None
    assert found.text == then
    assert found.by == pytest.approx(moved, rel=1e-9)


def test_a_temperature_is_rounded_in_degrees_of_its_scale() -> None:
    warmer = steps_of("420 °F", "temperature").rounded(0.6, 0, 0)  # 1.08 °F
    assert warmer is not None
    assert (warmer.text, warmer.by) == ("422 °F", pytest.approx(10 / 9))
    assert warmer.value == read("422 °F", "temperature")


def test_what_cannot_be_read_is_no_step() -> None:
    """Two degrees below −272 °C there is no temperature."""
    assert steps_of("-272 °C", "temperature").rounded(-1.5, 0, 0) is None


@pytest.mark.parametrize(
    ("text", "dimension", "size", "then"),
    [
        ("100 mm ±0.5", "length", 101.5 * MM, "101.5 mm ±0.5"),
        ("1 3/4 in", "length", 1.751 * INCH, "1.751 in"),
        ("20.0..20.2 mm", "length", 21.1 * MM, "21..21.2 mm"),
        ("20 °C", "temperature", 300.15, "27 °C"),
        ("15 bar gauge", "fluid pressure", 16.5 * BAR, "16.5 bar gauge"),
    ],
)
def test_a_quantity_of_another_size_keeps_its_limits(
    text: str, dimension: str, size: float, then: str
) -> None:
    measure = read(text, dimension)
    found = sized(measure, size)
    assert found is not None
    assert found.text == then
    assert found.value == read(then, dimension)
    assert found.by == pytest.approx(size - measure.nominal)
    assert found.of == measure.nominal


def test_a_size_that_none_can_have_is_not_written() -> None:
    assert sized(read("20 °C", "temperature"), -1.0) is None


def test_the_thicknesses_rolled_on_either_side_of_a_plate_the_nearest_first() -> None:
    """Of 20 mm from half of it, 10 mm, to half as much again, 30 mm; itself is none of them."""
    above, below = listed(read("20 mm", "length"), plate=True)
    assert [one.text for one in above] == ["25 mm", "30 mm"]
    assert [one.text for one in below] == ["15 mm", "12 mm", "10 mm"]
    assert [one.by for one in above] == pytest.approx([0.005, 0.010])
    assert [one.by for one in below] == pytest.approx([-0.005, -0.008, -0.010])
    assert {one.of for one in (*above, *below)} == {0.02}
    assert listed(read("18..20 mm", "length"), plate=True) == ([], [])
    assert listed(read("20 mm", "length"), plate=False) == ([], [])


def test_the_classes_of_a_grade_on_either_side_the_nearest_first() -> None:
    """ISO 286-1, shafts over 180 to 200 mm: lower deviations of p 50, r 77, s 122, t 166, u 236 µm; its own is none."""
    above, below = listed(read("190 mm s6", "length"), plate=False)
    assert [one.text for one in above[:2]] == ["190 mm t6", "190 mm u6"]
    assert [one.text for one in below[:2]] == ["190 mm r6", "190 mm p6"]
    assert [one.by for one in above[:2]] == pytest.approx([44e-6, 114e-6], abs=1e-9)
    assert [one.by for one in below[:2]] == pytest.approx([-45e-6, -72e-6], abs=1e-9)
    assert above[0].value == read("190 mm t6", "length")
    for size in (19, 47, 55, 190, 250, 311):
        text = f"{size} mm s6"
        assert text not in [one.text for some in listed(read(text, "length"), plate=False) for one in some]
    assert listed(read("1240 N", "force"), plate=False) == ([], [])


def test_four_threads_on_either_side() -> None:
    """The coarse series of ISO 261 with its second choice, by their diameters."""
    larger, smaller = threads("M20")
    assert [one.text for one in larger] == ["M22", "M24", "M27", "M30"]
    assert [one.text for one in smaller] == ["M18", "M16", "M14", "M12"]
    assert [one.by for one in larger] == pytest.approx([0.002, 0.004, 0.007, 0.010])
    assert [one.by for one in smaller] == pytest.approx([-0.002, -0.004, -0.006, -0.008])
    assert {one.of for one in larger} == {0.02}
    assert larger[0].value == "M22"


@pytest.mark.parametrize(
    ("text", "dimension", "by", "written", "low", "high"),
    [
        ("60..110 kN", "force", 17e3, "72..132 kN", 72e3, 132e3),  # 17 of 85 kN are a fifth
        ("60..110 kN", "force", -8.5e3, "54..99 kN", 54e3, 99e3),
        (
            "60..110 kN",
            "force",
            17.05e3,
            "72.1..132.2 kN",
            72.1e3,
            132.2e3,
        ),  # 72.035 and 110 × 72.1/60 = 132.18
        ("300..500 N·m", "moment", 40.0, "330..550 N·m", 330.0, 550.0),
        ("20..30 mm", "length", 0.0049, "25..35 mm", 0.025, 0.035),  # what is turned keeps its limits
    ],
)
def test_a_range_of_a_preload_keeps_its_proportion(
    text: str, dimension: str, by: float, written: str, low: float, high: float
) -> None:
    """A wrench leaves a share of what it is set to, so the greatest over the least stays as it is."""
    steps = steps_of(text, dimension)
    found = steps.rounded(by, 0, 0)
    assert found is not None
    assert found.text == written
    assert isinstance(found.value, Measure)
    assert (found.value.low, found.value.high) == pytest.approx((low, high), rel=1e-9)
    assert found.by == pytest.approx(by, rel=0.03)


def test_a_range_moves_by_any_amount_in_proportion() -> None:
    """From 60..110 kN, 85 in the middle, by 8.5: all a tenth more."""
    moved = steps_of("60..110 kN", "force").moved(8.5e3)
    assert (moved.low, moved.nominal, moved.high) == pytest.approx((66e3, 93.5e3, 121e3), rel=1e-9)
