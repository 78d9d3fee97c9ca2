"""A straight line through what was measured on several days, and the day on which it meets a limit."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from speclint.equations import Source
from speclint.errors import OutOfRange

GUM = Source(
    "JCGM 100, Evaluation of measurement data: guide to the expression of uncertainty", "2008", memory=True
)


@dataclass(frozen=True, slots=True)
class Trend:
    """A straight line: ``value`` on the day ``day``, the mean day, and ``rate`` by which it changes a day.

    The uncertainties are expanded, with the coverage factor 2; those of ``value`` and ``rate`` are independent.
    """

    day: float
    value: float
    rate: float
    value_uncertainty: float
    rate_uncertainty: float

    def meets(self, limit: float) -> tuple[float, float] | None:
        """The day on which the line meets a limit, with its expanded uncertainty in days.

        None where the rate is not proved: where its uncertainty is as great as the rate is. The uncertainty is that of
        the first order, by the law of propagation (JCGM 100, 5.1.2); the wear itself may not keep to a straight line.
        """
        if abs(self.rate) <= self.rate_uncertainty:
            return None
        after = (limit - self.value) / self.rate
        both = math.hypot(self.value_uncertainty, after * self.rate_uncertainty)
        return self.day + after, both / abs(self.rate)


def straight_line(points: Sequence[tuple[float, float, float]]) -> Trend:
    """The line of least squares through (day, value, expanded uncertainty), each weighted by its uncertainty.

    b = Σ w (t − t̄) y / Σ w (t − t̄)², w = 1/u², u = U/2; u(ȳ)² = 1/Σ w, u(b)² = 1/Σ w (t − t̄)². JCGM 100, H.3.

    Hand working: 0.10 ± 0.02 on day 0 and 0.20 ± 0.02 on day 100: w = 1/0.01² = 1e4, t̄ = 50, ȳ = 0.15,
    b = 0.001; U(ȳ) = 2/√2e4 = 0.01414; U(b) = 2/√(1e4 × 2 × 50²) = 2.828e-4. The line is at 0.40 on day
    50 + 0.25/0.001 = 300, with U = √(0.01414² + (250 × 2.828e-4)²)/0.001 = 72.1 days.

    >>> line = straight_line([(0.0, 0.10, 0.02), (100.0, 0.20, 0.02)])
    >>> [round(one, 1) for one in line.meets(0.40)]
    [300.0, 72.1]

    :raises OutOfRange: for fewer than two days, or an uncertainty that is not above nothing.
    """
    if any(not one[2] > 0 for one in points):
        raise OutOfRange("an uncertainty is above nothing")
    if len({day for day, _, _ in points}) < 2:
        raise OutOfRange("a rate is known from measurements of two days or more")
    weights = [4 / U**2 for _, _, U in points]
    whole = sum(weights)
    day = sum(w * t for w, (t, _, _) in zip(weights, points, strict=True)) / whole
    value = sum(w * y for w, (_, y, _) in zip(weights, points, strict=True)) / whole
    spread = sum(w * (t - day) ** 2 for w, (t, _, _) in zip(weights, points, strict=True))
    rate = sum(w * (t - day) * (y - value) for w, (t, y, _) in zip(weights, points, strict=True)) / spread
    return Trend(day, value, rate, 2 / math.sqrt(whole), 2 / math.sqrt(spread))
