"""Dimension chains: the gap that results from links that lie anywhere within their limits.

A link widens the gap (direction +1), narrows it (−1), or acts through a lever (any other number but 0). Three
results are given: worst case, all links at once at their worst limits; root-sum-square, their tolerances
added as independent; and a Monte Carlo trial, which gives the yield within required limits and its
confidence interval. The last two hold for many equal parts. For a part made once the worst case
governs, unless its last link is machined to measurement: ``machine_to``.

>>> gap = worst_case([Link("bore", 50.00e-3, 50.02e-3), Link("pin", 49.97e-3, 49.99e-3, direction=-1)])
>>> round(gap.low * 1e6), round(gap.high * 1e6)
(10, 50)
"""

from __future__ import annotations

import math
from array import array
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import islice, repeat
from typing import Literal

from msgspec import Struct

from speclint.equations import COMMON_PRACTICE, FIRST_PRINCIPLES, Metres, Ratio, Source, formula, require
from speclint.handbook.tables import SHIGLEY

MONTE_CARLO = Source(
    "JCGM 101, Evaluation of measurement data: propagation of distributions using a Monte Carlo method",
    "2008",
    "propagation of distributions, as applied in public calculations of uncertainty",
)
WILSON = Source(
    "E. B. Wilson, Probable inference, the law of succession, and statistical inference, J. American "
    "Statistical Association 22",
    "1927",
    "interval of a share observed",
    memory=True,
)
#: What the answers rest on, for a rule to cite.
WORST_CASE_CITES = (SHIGLEY.at("section 1-14, dimensions and tolerances"), FIRST_PRINCIPLES)
STATISTICAL_CITES = (COMMON_PRACTICE, FIRST_PRINCIPLES)
MONTE_CARLO_CITES = (MONTE_CARLO, WILSON)

#: A normal link has its limits this many standard deviations from its middle (common practice).
_SIGMAS = 3.0
#: Fewer trials give no useful estimate of a yield.
_FEWEST_TRIALS = 1000
_MOST_TRIALS = 200_000  # common practice: more tell nothing and take minutes
#: Confidence of the interval in which the true yield lies.
_CONFIDENCE = 0.95


@dataclass(frozen=True, slots=True)
class Link:
    """One dimension of a chain [m]: its limits of size and how it acts on the gap.

    ``spread`` is the distribution of parts between the limits: ``normal``, limits at three standard deviations and
    parts beyond them rejected, or ``uniform``. A measured link has ``low`` equal to ``high``.
    """

    name: str
    low: float
    high: float
    direction: float = 1.0
    spread: Literal["normal", "uniform"] = "normal"

    def __post_init__(self) -> None:
        require(
            math.isfinite(self.low) and math.isfinite(self.high) and self.low <= self.high,
            f"limits {self.low:.6g} and {self.high:.6g} m of {self.name} are not in order",
        )
        require(math.isfinite(self.direction) and self.direction != 0, f"{self.name} must act on the gap")

    @property
    def middle(self) -> float:
        """Half way between the limits [m]."""
        return (self.low + self.high) / 2

    @property
    def reach(self) -> float:
        """How far the gap moves when this link goes from its middle to a limit [m]."""
        return abs(self.direction) * (self.high - self.low) / 2


class Span(Struct, frozen=True):
    """A low, a middle and a high [m]."""

    low: float
    middle: float
    high: float


class Yield(Struct, frozen=True):
    """Result of a Monte Carlo trial: the share of gaps within the required limits, and its confidence interval.

    ``low`` and ``high`` enclose the true share with 95 % confidence, for sampling alone: they do not
    include how well ``spread`` describes the parts. ``mean`` and ``deviation`` are of the gap [m].
    """

    share: float
    low: float
    high: float
    mean: float
    deviation: float
    trials: int
    seed: int


def worst_case(links: Sequence[Link]) -> Span:
    """The gap when every link is at once at its worst limit, and half way. OutOfRange without links."""
    middle, reaches = _middle(links), sum(link.reach for link in links)
    return Span(middle - reaches, middle, middle + reaches)


def root_sum_square(links: Sequence[Link]) -> Span:
    """The gap with the links' tolerances added as independent: middle ± √Σ(reach²).

    Where each tolerance is three standard deviations, so is this: 99.7 % of gaps lie within.
    OutOfRange without links.
    """
    middle, reach = _middle(links), math.hypot(*(link.reach for link in links))
    return Span(middle - reach, middle, middle + reach)


def worst_case_shares(links: Sequence[Link]) -> Mapping[str, float]:
    """Share of each link in the worst-case spread. OutOfRange when no link has any tolerance."""
    return _shares(links, 1)


def statistical_shares(links: Sequence[Link]) -> Mapping[str, float]:
    """Share of each link in the squared spread. OutOfRange when no link has any tolerance."""
    return _shares(links, 2)


def monte_carlo(links: Sequence[Link], low: float, high: float, *, trials: int, seed: int) -> Yield:
    """Share of chains whose gap lies from ``low`` to ``high`` [m], by trial with a seeded generator.

    ``low`` may be minus infinity and ``high`` infinity; ``trials`` 1000 to 200 000. The same seed gives the same
    answer. Its confidence interval is Wilson's score interval. OutOfRange outside.
    """
    require(low <= high, f"asked limits {low * 1e3:.6g} mm and {high * 1e3:.6g} mm are not in order")
    require(trials >= _FEWEST_TRIALS, f"{trials} trials are too few; at least 1000")
    require(trials <= _MOST_TRIALS, f"{trials} trials are too many; at most 200 000")
    _middle(links)
    return _tried(tuple(links), low, high, trials, seed)


@lru_cache(maxsize=32)
def _tried(links: tuple[Link, ...], low: float, high: float, trials: int, seed: int) -> Yield:
    """The trial; a chain is asked for again at each load case, and of what is written down."""
    import statistics

    gaps = [_middle(links)] * trials
    for number, link in enumerate(links):
        reach = link.direction * (link.high - link.low) / 2
        places = _places(link.spread, trials, seed, number)
        gaps = [gap + reach * place for gap, place in zip(gaps, places, strict=True)]
    mean = statistics.fmean(gaps)
    within = sum(low <= gap <= high for gap in gaps)
    return Yield(
        within / trials,
        *wilson_interval(within, trials),
        mean,
        math.sqrt(math.fsum((gap - mean) ** 2 for gap in gaps) / trials),
        trials,
        seed,
    )


def wilson_interval(successes: int, trials: int) -> tuple[float, float]:
    """Interval in which a share lies with 95 % confidence, by Wilson's score method, from 0 to 1.

    Where none or all succeed, that end is exactly 0 or 1: middle and half are then alike but for rounding.

    >>> wilson_interval(0, 20000)[0], wilson_interval(20000, 20000)[1]
    (0.0, 1.0)
    """
    from statistics import NormalDist

    z = NormalDist().inv_cdf((1 + _CONFIDENCE) / 2)
    share, weight = successes / trials, z**2 / trials
    middle = (share + weight / 2) / (1 + weight)
    half = z / (1 + weight) * math.sqrt(share * (1 - share) / trials + weight / (4 * trials))
    return (middle - half if successes else 0.0), (middle + half if successes < trials else 1.0)


@formula("x = (g − s)/k", cites=[FIRST_PRINCIPLES])
def last_link(g: Metres, s: Metres, k: Ratio) -> Metres:
    """Size of the last link that gives a wanted gap.

    x = (g − s)/k

    ``g`` wanted gap [m]; ``s`` gap that the other links would leave with this one at zero [m]; ``k``
    direction of the last link, not 0. Returns [m]. Raises OutOfRange for k.

    >>> round(last_link(g=0.5e-3, s=12.0e-3, k=-1.0) * 1e3, 6)
    11.5
    """
    require(k != 0, "the last link must act on the gap")
    return (g - s) / k


def machine_to(others: Sequence[Link], direction: float, low: float, high: float) -> Span:
    """Limits to which the last link is machined so that the gap lies from ``low`` to ``high`` [m].

    ``others`` are the links as measured on the job (low equal to high), or within the limits still left to
    them. OutOfRange when no size of the last link can bring the gap within the asked limits.
    """
    require(low <= high, f"asked limits {low * 1e3:.6g} mm and {high * 1e3:.6g} mm are not in order")
    require(math.isfinite(low) or math.isfinite(high), "the gap must be asked on one side at least")
    left = worst_case(others)
    sizes = sorted((last_link(low, left.low, direction), last_link(high, left.high, direction)))
    asked, spread = high - low, left.high - left.low
    require(
        spread <= asked,
        f"the other links still vary by {spread * 1e3:.4g} mm, more than the {asked * 1e3:.4g} mm asked of the gap",
    )
    return Span(sizes[0], sum(sizes) / 2, sizes[1])


def _middle(links: Sequence[Link]) -> float:
    require(len(links) > 0, "a dimension chain needs links")
    return sum(link.direction * link.middle for link in links)


def _shares(links: Sequence[Link], power: int) -> dict[str, float]:
    _middle(links)
    whole = sum(link.reach**power for link in links)
    require(whole > 0, "no link of the chain has any tolerance")
    return {link.name: link.reach**power / whole for link in links}


@lru_cache(maxsize=24)
def _places(spread: str, trials: int, seed: int, number: int) -> array[float]:
    """Where parts lie within the limits of the link of some number: -1 at the low one, 1 at the high.

    They are the same for every chain: it is their links that differ. Kept, as they take most of the time of a trial.
    """
    import random

    chance = random.Random(f"{seed}, link {number}")
    if spread == "uniform":
        return array("d", (chance.uniform(-1.0, 1.0) for _ in range(trials)))
    drawn = (chance.gauss(0.0, 1.0 / _SIGMAS) for _ in repeat(None))
    return array("d", islice((place for place in drawn if -1.0 <= place <= 1.0), trials))
