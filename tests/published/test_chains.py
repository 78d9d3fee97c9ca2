"""Dimension chains against printed examples, exact distributions and scipy."""

from __future__ import annotations

import math

import pytest

from speclint.handbook.fits.chains import (
    Link,
    machine_to,
    monte_carlo,
    root_sum_square,
    statistical_shares,
    wilson_interval,
    worst_case,
    worst_case_shares,
)
from tests.published.proof import proves

INCH = 0.0254


def around(name: str, middle: float, tolerance: float, direction: float = 1.0) -> Link:
    return Link(name, (middle - tolerance) * INCH, (middle + tolerance) * INCH, direction)


# R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, example 1-7 (from memory): a
# shouldered screw with three collars, w = a − b − c − d, inches.
SCREW = [
    around("a", 1.750, 0.003),
    around("b", 0.750, 0.001, -1),
    around("c", 0.120, 0.005, -1),
    around("d", 0.875, 0.001, -1),
]


@proves("fits.chains", memory="Budynas and Nisbett, Shigley's Mechanical Engineering Design")
def test_shigley_gap_of_a_shouldered_screw() -> None:
    """The gap is 0.005 ± 0.010 in."""
    gap = worst_case(SCREW)
    assert gap.middle / INCH == pytest.approx(0.005, abs=1e-12)
    assert gap.low / INCH == pytest.approx(-0.005, abs=1e-12)
    assert gap.high / INCH == pytest.approx(0.015, abs=1e-12)


@proves("fits.chains", memory="Budynas and Nisbett, Shigley's Mechanical Engineering Design")
def test_shigley_collar_for_a_gap_of_at_least_three_thousandths() -> None:
    """With w not below 0.003 in, so 0.013 in the middle, d is 0.867 in."""
    span = machine_to(SCREW[:3], -1.0, 0.003 * INCH, 0.023 * INCH)
    assert span.middle / INCH == pytest.approx(0.867, abs=1e-12)
    assert (span.high - span.low) / INCH == pytest.approx(0.002, abs=1e-12)


@proves("fits.chains", derived="hand working")
def test_a_gap_of_one_size_is_machined_to_one_size() -> None:
    """By hand: beside a link measured at 10 mm a gap of 0.5 mm is left by one of 9.5 mm against it."""
    span = machine_to([Link("bore", 10e-3, 10e-3)], -1.0, 0.5e-3, 0.5e-3)
    assert (span.low, span.middle, span.high) == pytest.approx((9.5e-3,) * 3, abs=1e-12)


@proves("fits.chains", derived="hand working")
def test_root_sum_square_of_the_screw() -> None:
    """By hand: √(3² + 1² + 5² + 1²) = 6 thousandths."""
    gap = root_sum_square(SCREW)
    assert (gap.high - gap.middle) / INCH == pytest.approx(0.006, abs=1e-12)
    assert statistical_shares(SCREW) == pytest.approx({"a": 9 / 36, "b": 1 / 36, "c": 25 / 36, "d": 1 / 36})
    assert worst_case_shares(SCREW) == pytest.approx({"a": 0.3, "b": 0.1, "c": 0.5, "d": 0.1})


@proves("fits.chains", memory="JCGM 101:2008")
@pytest.mark.parametrize("seed", [1, 2, 3])
def test_jcgm_101_four_equal_rectangles(seed: int) -> None:
    """JCGM 101:2008, 9.2.3 (from memory): 95 % of the sum lies within ±2√3 (2 − (3/5)^(1/4)) = ±3.88.

    Four rectangular quantities of mean 0 and standard deviation 1.
    """
    end = 2 * math.sqrt(3) * (2 - (3 / 5) ** 0.25)
    assert end == pytest.approx(3.88, abs=0.005)
    links = [Link(str(n), -math.sqrt(3), math.sqrt(3), spread="uniform") for n in range(4)]
    found = monte_carlo(links, -end, end, trials=20_000, seed=seed)
    assert found.share == pytest.approx(0.95, abs=4 * math.sqrt(0.95 * 0.05 / 20_000))
    assert found.deviation == pytest.approx(2.0, rel=0.03)


@proves("fits.chains", memory="JCGM 101:2008")
def test_jcgm_101_rectangles_of_different_widths() -> None:
    """The same, 9.2.4 (from memory): one of standard deviation 10 and three of 1; 95 % within ±17.0.

    Root-sum-square treats it as normal and would say ±19.9.
    """
    links = [Link(str(n), -math.sqrt(3), math.sqrt(3), spread="uniform") for n in range(3)]
    links.append(Link("wide", -10 * math.sqrt(3), 10 * math.sqrt(3), spread="uniform"))
    found = monte_carlo(links, -17.0, 17.0, trials=20_000, seed=4)
    assert found.share == pytest.approx(0.95, abs=0.008)


@proves("fits.chains", derived="hand working")
def test_two_uniform_links_have_a_triangular_sum() -> None:
    """By hand: of two spans ±1 the sum lies within ±1 with 1 − (1/2)² = 3/4."""
    links = [Link("a", -1, 1, spread="uniform"), Link("b", -1, 1, -1, spread="uniform")]
    found = monte_carlo(links, -1.0, 1.0, trials=20_000, seed=5)
    assert found.share == pytest.approx(0.75, abs=4 * math.sqrt(0.75 * 0.25 / 20_000))


@proves("fits.chains", library="scipy")
def test_normal_links_agree_with_the_exact_truncated_normal() -> None:
    """scipy: a single link within ±1 standard deviation of limits at three."""
    from scipy.stats import truncnorm

    exact = truncnorm.cdf(1, -3, 3) - truncnorm.cdf(-1, -3, 3)
    found = monte_carlo([Link("a", -3.0, 3.0)], -1.0, 1.0, trials=20_000, seed=6)
    assert found.share == pytest.approx(exact, abs=4 * math.sqrt(exact * (1 - exact) / 20_000))
    assert found.deviation == pytest.approx(float(truncnorm.std(-3, 3)), rel=0.03)


@proves("fits.chains", library="scipy")
@pytest.mark.parametrize(("successes", "trials"), [(0, 1000), (950, 1000), (1000, 1000), (4, 20)])
def test_interval_agrees_with_scipy(successes: int, trials: int) -> None:
    from scipy.stats import binomtest

    theirs = binomtest(successes, trials).proportion_ci(confidence_level=0.95, method="wilson")
    assert wilson_interval(successes, trials) == pytest.approx((theirs.low, theirs.high), abs=1e-12)
