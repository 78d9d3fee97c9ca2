"""What a rule takes from a spec on its sheet: stated quantities with their limits, words and counts."""

from __future__ import annotations

from collections.abc import Hashable
from typing import Any, TypeVar

from speclint.errors import Location, replace
from speclint.handbook.heat import tied_temperature
from speclint.quantities import Measure, amount
from speclint.rules.consulted import OF_THE_DRAWING
from speclint.rules.judgement import NotAssessed, Unstated
from speclint.rules.no_result import unworkable
from speclint.rules.placing import Placing
from speclint.rules.record import Record, in_words, stated_as
from speclint.rules.working import Working
from speclint.specs import Link, NotStated, Stated, Tie

T = TypeVar("T")


class Taking(Placing, Working):
    """The part of a sheet that takes what a spec states; each value is a corner, or a word, of its own."""

    #: Of what the rule asked whether it is stated, the first that the spec asks to have worked and that cannot be.
    unworked: NotAssessed | None

    def take(self, symbol: str, value: Measure | Tie | NotStated, name: str = "") -> float:
        """A stated quantity in SI units; a fluid pressure as gauge. Ends the rule when it is not stated.

        A temperature that is tied to another is worked: that one, and the difference, each with its own corner.
        """
        if isinstance(value, Tie):
            base = self.take(f"{symbol}_b", value.base)
            apart = self._as_moved(value.difference) if self._context.moved else value.difference
            difference = self._taken(f"Δ{symbol}", apart, name and f"{name}, hotter by", 0.0)
            return self.work(symbol, tied_temperature, T_b=base, ΔT=difference)
        if isinstance(value, NotStated):
            raise self._missing(value)
        if self._context.moved:
            value = self._as_moved(value)
        shift = -self._site_pressure() if value.datum == "absolute" else 0.0
        return self._taken(symbol, value, name, shift)

    def take_nominal(self, symbol: str, value: Measure | NotStated, name: str = "") -> float:
        """The size that a drawing aims at, without its limits.

        Only for a rule that holds a drawing against itself, such as a stated load against the spring's sizes;
        whatever must hold in metal is taken with its limits.
        """
        measure = self._stated(value)
        if self._record is None:
            return measure.nominal
        aimed_at = replace(measure, low=measure.nominal, high=measure.nominal)
        return self._taken(symbol, aimed_at, name or f"{in_words(measure.where.key)}, nominal", 0.0)

    def tolerance(self, symbol: str, value: Measure | NotStated, name: str = "") -> float:
        """The width between the limits that a quantity states: nothing where it states none."""
        measure = self._stated(value)
        width = measure.high - measure.low
        if self._record:
            place = self._record.place(measure.where)
            self._record.note(f"tolerance {place}", repr(width), place, stated_as(measure), at=measure.where)
            words = name or f"tolerance of {self._record.label(measure.where)}"
            self._record.quantity(symbol, words, measure, width)
        return width

    def take_limits(
        self, symbol: str, value: Measure | Tie | NotStated, name: str = ""
    ) -> tuple[float, float]:
        """Both limits of a quantity, for a rule that reckons with the whole band at once, as a statistic does.

        They are no corner: the rule sees the same two at every corner.
        """
        if isinstance(value, Tie):
            bases = self.take_limits(f"{symbol}_b", value.base)
            differences = self.take_limits(f"Δ{symbol}", value.difference)
            low, high = (
                self.work(f"{symbol}_{side}", tied_temperature, T_b=base, ΔT=difference)
                for side, base, difference in zip(("min", "max"), bases, differences, strict=True)
            )
            return low, high
        measure = self._stated(value)
        limits = measure.low, measure.high
        if self._record:
            words = name or self._record.label(measure.where)
            for side, end in zip(("min", "max"), limits, strict=True):
                key = ("limit", measure.where, side)
                self._record.taken(key, f"{symbol}_{side}", f"{words}, {side}", measure, end)
        return limits

    def tolerance_class(self, value: Measure | NotStated) -> str:
        """The tolerance class in which a size is written, such as H7; "" where its limits are numbers."""
        measure = self._stated(value)
        if self._record:
            place = self._record.place(measure.where)
            said = measure.tolerance_class or "none"
            self._record.note(f"class of {place}", said, shown=said, at=measure.where)
            self._record.word(f"tolerance class of {self._record.label(measure.where)}", said, measure.where)
        return measure.tolerance_class

    def take_absolute(self, symbol: str, value: Measure | NotStated, name: str = "") -> float:
        """A stated fluid pressure as absolute: gauge pressures are raised by that of the site."""
        measure = self._stated(value)
        shift = self._site_pressure() if measure.datum == "gauge" else 0.0
        return self._taken(symbol, measure, name or f"{in_words(measure.where.key)}, absolute", shift)

    def read(self, name: str, value: Stated[T] | NotStated) -> T:
        """A stated word, count or yes/no. Ends the rule when it is not stated."""
        where = value.where
        if where.key in OF_THE_DRAWING:
            self._consult(where)
        if isinstance(value, NotStated):
            raise self._missing(value)
        self._asked.values[id(where)] = where
        if self._record:
            _note_read(self._record, name, value)
            self._record.word(name, value.value, where)
        if self._context.worded:
            return self._context.worded.get(where, value.value)  # type: ignore[no-any-return]
        return value.value

    def count(self, symbol: str, value: Stated[int] | NotStated, name: str = "") -> int:
        """A stated whole number, with a symbol of its own."""
        if isinstance(value, NotStated):
            raise self._missing(value)
        self._asked.values[id(value.where)] = value.where
        number = value.value
        if by := self._context.moved.get(value.where):
            assert not isinstance(by, Measure)  # a count is moved by a number
            number += round(by)
        if self._record:
            _note_read(self._record, symbol, value)
            self._record.counted(symbol, name, number, value.value, value.where)
        return number

    def is_stated(self, name: str, value: Measure | Tie | Stated[Any] | Link[Any] | NotStated) -> bool:
        """Whether something is stated at all; the rule goes on either way."""
        found, where = not isinstance(value, NotStated), value.where
        self._asked.values[id(where)] = where
        if where.key in OF_THE_DRAWING:
            self._consult(where)
        self.unworked = self.unworked or unworkable(value)
        self._note_stated(name, where, found)
        return found

    def said(self, name: str, value: Stated[T] | NotStated) -> T | None:
        """A stated word, count or yes/no; None where it is not stated: the rule goes on either way."""
        return self.read(name, value) if self.is_stated(name, value) else None

    def _consult(self, where: Location) -> None:
        """Note that a word of the drawing was read: a rule depends on it only where it reads it."""
        self._context.consulted.words.add((self._context.design.owner(where), where.key))

    def _site_pressure(self) -> float:
        pressure = self._context.design.settings.site_pressure
        if self._record:
            self._record.note("setting site pressure", repr(pressure), shown=amount(pressure, "Pa"))
        return pressure

    def _stated(self, value: Measure | NotStated) -> Measure:
        if isinstance(value, NotStated):
            raise self._missing(value)
        self._asked.values[id(value.where)] = value.where
        return self._as_moved(value) if self._context.moved else value

    def _as_moved(self, measure: Measure) -> Measure:
        """A quantity as the search for a remedy has it: with nominal and limits moved, or another in its place."""
        change = self._context.moved.get(measure.where)
        if change is None:
            return measure
        return change if isinstance(change, Measure) else measure.moved(change)

    def _missing(self, value: NotStated) -> NotAssessed:
        self._asked.values[id(value.where)] = value.where
        self._note_stated("", value.where, False)
        return unworkable(value) or Unstated(
            f"{value.where.key} is not stated in {value.where.file}", value.where
        )

    def _taken(self, symbol: str, measure: Measure, name: str, shift: float) -> float:
        if self._record is None and measure.low == measure.high:  # as nearly every one of a load case is
            where = measure.where
            self._asked.values[id(where)] = where
            return measure.low + shift
        low, high, key = self._limits(symbol, measure, name, shift)
        if low == high and self._record is None:
            return low
        value = self._corner.pick(key, low, high)
        if self._record:
            self._record.taken(key, symbol, name, measure, value)
        return value

    def _limits(
        self, symbol: str, measure: Measure, name: str, shift: float
    ) -> tuple[float, float, Hashable]:
        """Both limits of a quantity, moved by a shift, and what the corner knows it by."""
        where = measure.where
        self._asked.values[id(where)] = where
        key = ("taken", where.file, where.part, where.key) if where.key else ("taken", symbol, name)
        return measure.low + shift, measure.high + shift, key


def _note_read(record: Record, name: str, value: Stated[Any]) -> None:
    place = record.place(value.where, name)
    plain = str(value.value).lower() if isinstance(value.value, bool) else str(value.value)
    named = isinstance(value.value, str) and record.is_own_place(value.where)
    alike = record.renaming.place(str(value.value)) if named else None
    record.note(f"read {name} {place}", repr(value.value), place, plain, at=value.where, alike=alike)
