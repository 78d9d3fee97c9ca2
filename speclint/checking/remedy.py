"""A remedy: the change of one stated value that would clear a finding."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from speclint.errors import Location
from speclint.quantities import amount


@dataclass(frozen=True, slots=True)
class Remedy:
    """One stated value, and what it would have to be for the rule to hold: in SI units, or a word.

    ``spoils`` are the rules that hold now and would not hold then.
    """

    where: Location
    name: str
    now: float | str | bool
    then: float | str | bool
    unit: str
    written_in: str
    utilisation: float | None
    spoils: tuple[str, ...] = ()

    @property
    def change(self) -> float:
        """The change as a share of the present value; nothing for a word."""
        if isinstance(self.now, str | bool) or isinstance(self.then, str | bool):
            return 0.0
        return abs(self.then - self.now) / abs(self.now) if self.now else math.inf

    def __str__(self) -> str:
        return self.said(amount)

    def said(self, amount: Callable[[float, str, str], str]) -> str:
        """The change in words, its amounts written by a function of SI value, SI unit and the unit of the spec."""
        now, then = (self._shown(one, amount) for one in (self.now, self.then))
        change = f"{self.name} from {now} to {then}"
        return (
            f"{change}, but then {', '.join(self.spoils)} would not hold"
            if self.spoils
            else f"{change}, all else equal"
        )

    def _shown(self, value: float | str | bool, amount: Callable[[float, str, str], str]) -> str:
        if isinstance(value, bool):
            return "true" if value else "false"
        return f'"{value}"' if isinstance(value, str) else amount(value, self.unit, self.written_in)
