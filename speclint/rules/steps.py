"""The steps of a sheet: one line of its working each, found by their places and by the values that they give."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

from speclint.equations import Source
from speclint.errors import NOWHERE, Location
from speclint.quantities import amount, comparable
from speclint.rules.course import Series
from speclint.rules.judgement import Amount

StepKind = Literal["taken", "counted", "read", "looked up", "limit", "worked", "scanned"]


class Step(Struct, frozen=True):
    """One line of a sheet. ``expression`` is the equation, ``numbers`` the same with numbers put in.

    ``value`` is that of the governing corner, ``stated`` the nominal as the spec has it. ``filled`` are the
    numbers put into an equation: argument, SI value, SI unit. ``series`` was recorded along a scan, its places first.
    ``long`` is true of the result of a long calculation, which no search repeats.
    """

    kind: StepKind
    symbol: str
    name: str
    value: float | str | bool | int
    unit: str = ""
    expression: str = ""
    numbers: str = ""
    source: Source | None = None
    where: Location = NOWHERE
    note: str = ""
    written_in: str = ""
    stated: float = 0.0
    filled: tuple[tuple[str, float, str], ...] = ()
    series: tuple[Series, ...] = ()
    long: bool = False


class Steps:
    """The steps of one sheet, in their order."""

    def __init__(self) -> None:
        self.all: list[Step] = []
        # The same by their places and by their numbers, as each place of an agreement is asked for by name.
        self._at: dict[Location, list[Step]] = {}
        self._of: dict[float, list[Step]] = {}

    def add(self, step: Step) -> None:
        """Write down one more."""
        self.all.append(step)
        self._at.setdefault(step.where, []).append(step)
        if isinstance(step.value, float):
            self._of.setdefault(step.value, []).append(step)

    def at(self, where: Location) -> list[Step]:
        """The steps that took a value at a place, or read a word there."""
        return self._at.get(where, [])

    def meant(self, where: Location, value: float | None) -> Step | None:
        """Of the values taken at a place the one meant, else that from which it was worked, else the last."""
        steps = self.at(where)[::-1]
        if not steps or value is None or all(one.value == steps[0].value for one in steps):
            return steps[0] if steps else None
        own = next((one for one in steps if one.value == value), None)
        behind = set() if own else self._behind(value)
        return own or next((one for one in steps if one.value in behind), steps[0])

    def _behind(self, value: float) -> set[float]:
        """The numbers that were put into whatever gave a value, and into what gave those."""
        found: set[float] = set()
        left = [value]
        while left:
            for step in self._of.get(left.pop(), ()):
                given = {number for _, number, _ in step.filled if isinstance(number, float)} - found
                found |= given
                left += given
        return found

    def amount(self, value: float) -> Amount:
        """The amount behind a value to be judged: the latest step that gives it.

        :raises LookupError: when no step does: a rule judges only what its sheet shows.
        """
        return _amount_of(self._giving(value)[0])

    def amounts(self, value: float, limit: float) -> tuple[Amount, Amount]:
        """The amounts behind a value and its limit: the latest two steps that give them and are of one unit.

        The number alone does not tell them: 50 mm and a share of 5 % are both 0.05 in SI units.

        :raises LookupError: when no step gives the one or the other.
        :raises TypeError: when they are of two dimensions: a length is less than no pressure.
        """
        found, against = self._giving(value), self._giving(limit)
        alike = ((f, a) for a in against for f in found if f is not a and f.unit == a.unit)
        one, other = next(alike, (found[0], against[0]))
        if not comparable(one.unit, other.unit):
            raise TypeError(
                f"{one.name} in {one.unit or 'no unit'} is held against {other.name} in {other.unit or 'no unit'}"
            )
        return _amount_of(one), _amount_of(other)

    def _giving(self, value: float) -> list[Step]:
        """The steps that give a value: those of this very number, then those of one as great, the latest first.

        Two parts may be of one size: a plate and the shank of a stud, both of 24 mm.
        """
        steps = self._of.get(value, [])[::-1]
        steps.sort(key=lambda step: step.value is not value)
        if not steps:
            raise LookupError(f"{value!r} is judged, but no step of the sheet gives it")
        return steps


def value_in_words(step: Step) -> str:
    """The value of a step as a sentence has it."""
    if isinstance(step.value, bool):
        return "true" if step.value else "false"
    if isinstance(step.value, str):
        return f'"{step.value}"'
    return amount(step.value, step.unit, step.written_in) if step.unit else f"{step.value:g}"


def _amount_of(step: Step) -> Amount:
    assert isinstance(step.value, float)
    return Amount(step.value, step.unit, step.name, step.written_in)
