"""One figure read from a table: with its tolerance, its unit and its source."""

from __future__ import annotations

from dataclasses import dataclass

from speclint.equations import Source


@dataclass(frozen=True, slots=True)
class Reading:
    """A figure from a handbook table, SI units, with the low and high that its source allows.

    ``what`` says in words what was read, as a sheet would write it: "modulus of grey iron 250 at 300 °C".
    An exact figure has ``low == nominal == high``. ``worked`` is true of the result of a long calculation: what it
    rests on is taken on the sheet beside it, so that a concession rests on that and not on its last digits.
    """

    what: str
    nominal: float
    low: float
    high: float
    unit: str
    source: Source
    worked: bool = False

    @classmethod
    def exact(cls, what: str, value: float, unit: str, source: Source) -> Reading:
        """A figure without tolerance."""
        return cls(what, value, value, value, unit, source)
