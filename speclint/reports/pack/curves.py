"""Series that sheets recorded along a scan, prepared for a chart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from speclint.checking import Check
from speclint.rules import Series

_ALIKE = 0.01  # share of the greatest value within which two flanks are drawn as one


@dataclass(frozen=True, slots=True)
class Courses:
    """The check that was scanned, how far the valve moves along it, and the loads beside it, in N."""

    check: Check
    travel: Series
    loads: tuple[Series, ...]

    def opening(self, load: Series) -> list[tuple[float, float | None]]:
        """Travel [mm] and load up to the greatest travel."""
        return self._pairs(load)[: self._top + 1]

    def closing(self, load: Series) -> list[tuple[float, float | None]]:
        """Travel [mm] and load from the greatest travel on."""
        return self._pairs(load)[self._top :]

    @property
    def _top(self) -> int:
        """The middle of where the travel is greatest: a cam may dwell there."""
        values = [value or 0.0 for value in self.travel.values]
        most = max(values)
        at_top = [place for place, value in enumerate(values) if value >= most * (1 - 1e-9)]
        return (at_top[0] + at_top[-1]) // 2

    def _pairs(self, load: Series) -> list[tuple[float, float | None]]:
        return [((at or 0.0) * 1e3, up) for at, up in zip(self.travel.values, load.values, strict=True)]

    def governing(self, series: Series) -> float | None:
        """The value of a series that the sheet judges."""
        found = [step.value for step in self.check.steps if step.symbol == series.symbol]
        value = found[-1] if found else None
        return value if isinstance(value, float) else None


def courses_of(checks: Sequence[Check], component: str) -> Iterator[Courses]:
    """Each scan of a component's checks beside which a travel and loads were written down."""
    for check in checks:
        for step in check.steps if check.component == component else ():
            travels = [one for one in step.series[1:] if one.unit == "m"]
            loads = tuple(one for one in step.series[1:] if one.unit == "N")
            if travels and loads:
                yield Courses(check, travels[0], loads)


def alike(
    opening: Sequence[tuple[float, float | None]], closing: Sequence[tuple[float, float | None]]
) -> bool:
    """Whether two flanks lie on one another, as they do on a cam that rises as it falls.

    >>> alike([(0.0, 1.0), (10.0, 5.0)], [(10.0, 5.0), (0.0, 1.0)])
    True
    >>> alike([(0.0, 1.0), (10.0, 5.0)], [(10.0, 5.0), (0.0, 2.0)])
    False
    """
    back = list(reversed(closing))
    most = max((abs(up) for _, up in (*opening, *back) if up is not None), default=0.0)
    if len(opening) != len(back):
        return False
    return all(
        (here[1] is None) == (there[1] is None)
        and abs(here[0] - there[0]) <= _ALIKE
        and abs((here[1] or 0.0) - (there[1] or 0.0)) <= _ALIKE * most
        for here, there in zip(opening, back, strict=True)
    )
