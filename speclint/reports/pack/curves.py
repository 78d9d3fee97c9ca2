"""Loads that sheets recorded along a scan, as the judgement has them, prepared for a chart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from speclint.checking import Check
from speclint.reports.pack.printed import Quantity, along, judged, on_sheet, worked
from speclint.rules import Series

_ALIKE = 0.01  # share of the greatest value within which two flanks are drawn as one

Curve = list[tuple[float, float | None]]


def shifted(load: float, judged: float, recorded: float) -> float:
    """A load that was recorded beside another way of counting: moved by what parts the two where the sheet judges."""
    return load + judged - recorded


class Courses(Struct, frozen=True):
    """The check that was scanned, how far the valve moves along it, and the loads there and needed beside it.

    A sheet may record the load of the springs and judge the load that is there to hold the valve: weight, friction and
    steam, the same along the scan, lie between. The curves are moved by them, so that they show what is judged.
    """

    check: Check
    travel: Series
    there: Series
    needed: Series

    @property
    def judged(self) -> tuple[Quantity, Quantity] | None:
        """What the sheet judges, and its limit."""
        return judged(self.check)

    @property
    def names(self) -> tuple[str, str]:
        """What the two curves are, in the words of the judgement."""
        judgement = self.check.judgement
        found = (judgement.found, judgement.limit) if judgement else (None, None)
        names = [one.name if one is not None else "" for one in found]
        return (names[0] or self.there.name).lower(), (names[1] or self.needed.name).lower()

    @property
    def at(self) -> Quantity | None:
        """The travel at which the sheet judges."""
        return on_sheet(self.check, self.travel.symbol)

    @property
    def curves(self) -> tuple[Curve, Curve]:
        """Travel [mm] and the load there, and the same with the load needed, in the order of the scan."""
        return self._curve(0), self._curve(1)

    def _curve(self, which: int) -> Curve:
        load = (self.there, self.needed)[which]
        by = self._shift(which)
        pairs = zip(self.travel.values, load.values, strict=True)
        return [((at or 0.0) * 1e3, None if up is None else up + by) for at, up in pairs]

    def _shift(self, which: int) -> float:
        held, load = self.judged, (self.there, self.needed)[which]
        recorded = on_sheet(self.check, load.symbol)
        return 0.0 if held is None or recorded is None else held[which].value - recorded.value

    def held(self, place: int) -> Iterator[Quantity]:
        """The loads of both curves at a place of the scan, as quantities of the sheet."""
        for which, load in enumerate((self.there, self.needed)):
            found, held = along(self.check, load.symbol, place), self.judged
            recorded = on_sheet(self.check, load.symbol)
            if found is not None and held is not None and recorded is not None:
                yield worked(shifted, load=found, judged=held[which], recorded=recorded)

    def opening(self, curve: Curve) -> Curve:
        """A curve up to the greatest travel."""
        return curve[: self.top + 1]

    def closing(self, curve: Curve) -> Curve:
        """A curve from the greatest travel on."""
        return curve[self.top :]

    @property
    def is_alike(self) -> bool:
        """Whether as much is needed as the valve shuts as while it opens."""
        needed = self.curves[1]
        return alike(self.opening(needed), self.closing(needed))

    @property
    def top(self) -> int:
        """The middle of where the travel is greatest: a cam may dwell there."""
        values = [value or 0.0 for value in self.travel.values]
        most = max(values)
        at_top = [place for place, value in enumerate(values) if value >= most * (1 - 1e-9)]
        return (at_top[0] + at_top[-1]) // 2


def courses_of(checks: Sequence[Check]) -> Iterator[Courses]:
    """The last scan of each check beside which a travel and loads, there and needed, were written down."""
    for check in checks:
        for step in reversed(check.steps):
            travels = [one for one in step.series[1:] if one.unit == "m"]
            loads = tuple(one for one in step.series[1:] if one.unit == "N")
            if travels and len(loads) > 1:
                yield Courses(check, travels[0], loads[0], loads[-1])
                break


def alike(opening: Curve, closing: Curve) -> bool:
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
