"""The calculation sheet: a rule reads a spec only through it, works on it, and is judged on it.

At one tolerance corner the sheet hands over plain SI floats. When it records, every step is written down with
symbol, equation, numbers, unit and source (:mod:`speclint.rules.record`). Both do the same arithmetic.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping, Sequence
from typing import TYPE_CHECKING, Any, Literal, TypeVar

from speclint.errors import NOWHERE, Location, NotKnown, OutOfRange, replace
from speclint.handbook.heat import tied_temperature
from speclint.handbook.tables import Reading
from speclint.quantities import Measure, amount
from speclint.rules.aside import worked_aside
from speclint.rules.comparisons import Judging
from speclint.rules.consulted import OF_THE_DRAWING, class_in_full
from speclint.rules.context import Context
from speclint.rules.corners import Corner
from speclint.rules.course import Course, written
from speclint.rules.definition import Rule
from speclint.rules.judgement import NotAssessed, NotCovered, Unlisted, Unstated
from speclint.rules.no_result import divides_by_zero, has_no_root, name_of, unworkable
from speclint.rules.placing import Placing, no_spec_at
from speclint.rules.record import Record, in_words, stated_as
from speclint.rules.reviewing import Reviewing
from speclint.rules.scan import greatest_place, place_on
from speclint.specs import (
    Component,
    Dimension,
    Duty,
    Link,
    NotStated,
    Spec,
    Stated,
    Tie,
)

if TYPE_CHECKING:
    from speclint.handbook.materials import Material
    from speclint.rules.other_check import OtherCheck

T = TypeVar("T")
S = TypeVar("S", bound=Spec)
C = TypeVar("C", bound=Component)


class Sheet(Judging, Placing, Reviewing):
    """The sheet of one rule on one component at one corner.

    A family sees only the methods; ``record`` is for the core.
    """

    def __init__(
        self, rule: Rule, component: Component, context: Context, corner: Corner, *, record: bool
    ) -> None:
        self._rule, self._component, self._context, self._corner = rule, component, context, corner
        self._record = Record(context.design, component.id) if record else None
        self._asked = context.asked
        self._unread = {}
        #: Of what the rule asked whether it is stated, the first that the spec asks to have worked and that cannot be.
        self.unworked: NotAssessed | None = None

    @property
    def record(self) -> Record:
        """What a recording sheet wrote down."""
        if self._record is None:
            raise ValueError("this sheet does not record")
        return self._record

    # What a rule takes

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

    def dimension(self, table: Dimension) -> Measure | NotStated:
        """The length that a table points at in another spec, or states itself; to be taken."""
        return table.size if self.is_stated("size", table.size) else self.pointed_at(table)

    def pointed_at(self, table: Dimension) -> Measure | NotStated:
        """The length that a table points at in another spec, whatever size it states itself; to be taken."""
        part, key = self.follow(table.of), self.read("dimension", table.dimension)
        try:
            found = part.under(key)
        except LookupError:
            raise NotAssessed(f'{part.id} has no dimension "{key}"', table.dimension.where) from None
        if isinstance(found, Measure) and found.dimension != "length":
            raise NotAssessed(
                f'"{key}" of {part.id} is no length but {found.dimension}', table.dimension.where
            )
        return found

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
            self._note_read(name, value)
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
            self._note_read(symbol, value)
            self._record.counted(symbol, name, number, value.value, value.where)
        return number

    @property
    def silent(self) -> list[str]:
        """The places that the rule looked at and that state nothing; none on a sheet that does not record."""
        return list(self._record.silent) if self._record else []

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

    def follow(self, link: Link[S] | NotStated) -> S:
        """The spec that a link leads to. Ends the rule when it is not stated or cannot be read."""
        if isinstance(link, NotStated):
            raise self._missing(link)
        self._asked.followed.add(link.id)
        found = self._context.design.follow(link)
        self._context.consulted.specs.add(link.id)
        self._note_link(link)
        if found is None:
            raise no_spec_at(link, self._context.design)
        return found  # type: ignore[return-value]  # the design has checked the target

    def duty_of(self, component: Component) -> Duty | None:
        """The duty that a component states, or else that of the nearest component it is linked to; None without one.

        :raises NotAssessed: where its duty, or a part on the way to it, could not be read.
        """
        found, passed = self._context.design.duty_of(component)
        self._context.consulted.specs |= passed
        if found is None:
            self.require_read(self._context.design.unread_among(passed))
        self._asked.everything |= component is not self._component
        if self._record:
            called = found.id if found else ""
            self._record.note(f"duty of {component.id}", called, shown=called or "none")
        return found

    def entry(self, table: Mapping[str, T], name: Stated[str] | NotStated, of: str) -> T:
        """An entry of a named table of another spec, such as one bore of a block; ``of`` says of what."""
        key = self.read(f"name in {of}", name)
        if key not in table:
            where = name.where if isinstance(name, Stated) else NOWHERE
            raise NotAssessed(f"{of} has no entry {key!r}", where)
        return table[key]

    def belonging_to(self, target: Spec, kind: type[C]) -> tuple[C, ...]:
        """The components of a kind that state a link to a spec: the rings of a liner, the studs of a cover.

        :raises NotAssessed: where a file that could not be read may hold one more.
        """
        self._asked.queried.add((target.id, kind))
        found = self._context.design.linking_of(target, kind)
        self.require_read(self._context.design.unread_linking(target, kind))
        ids = [part.id for part in found]
        consulted = self._context.consulted
        consulted.specs.update(ids)
        consulted.linked.add((target.id, class_in_full(kind)))
        if self._record:
            alike = " ".join(self._record.renaming.part(one) for one in (target.id, *ids))
            name, shown = f"{kind.kind} on {target.id}", ", ".join(ids) or "none"
            self._record.note(name, repr(ids), shown=shown, alike=alike)
        return found

    def material_of(self, component: Component) -> Material:
        """The material of a component, from the handbook or the repository's own."""
        return self.material_named(component.id, component.material)

    def material_named(self, of: str, name: Stated[str] | NotStated) -> Material:
        """The material that a table of a spec names for a part of it; ``of`` says of what."""
        called = self.read(f"material of {of}", name)
        try:
            return self._context.material(called)
        except NotKnown as problem:
            raise Unlisted(str(problem), name.where) from problem

    def other_check(self, part: Component, rule: Stated[str] | NotStated) -> OtherCheck:
        """How the check of another part by a rule of some name comes out; only for a rule that reviews.

        :raises NotAssessed: where no rule on that part has the name.
        """
        if not self._rule.reviews:
            raise ValueError(f"{self._rule.name} does not say that it reviews other checks")
        name = self.read("rule", rule)
        found = self._context.other_check(part.id, name)
        self._asked.everything = True  # after that, as another check was made
        if isinstance(found, str):
            raise NotAssessed(found, rule.where)
        if self._record:
            self._record.note(f"{name} on {part.id}", repr(found), shown=found.briefly)
            self._record.word(f"{name} on {part.id}", found.briefly)
        return found

    def knows_material(self, name: Stated[str] | NotStated) -> bool:
        """Whether the handbook, a family or the repository holds a material. Ends the rule when none is stated."""
        called = self.read("material", name)
        try:
            self._context.material(called)
        except NotKnown:
            return False
        return True

    def look_up(
        self, symbol: str, table: Callable[..., Reading], /, *, of: Component | None = None, **at: Any
    ) -> float:
        """A figure from a handbook table; ``of`` names the component whose material it is.

        Where the table has no such figure the rule is not assessed; outside the table's range it is a query.
        """
        try:
            reading = self._context.look_up(table, at)
        except NotKnown as problem:
            raise Unlisted(str(problem)) from problem
        except OutOfRange as problem:
            raise NotCovered(str(problem)) from problem
        except ZeroDivisionError as problem:
            raise divides_by_zero(name_of(table), at) from problem
        if reading.low == reading.high and self._record is None:
            return reading.low
        key = key_of_reading(table, symbol, of)
        value = self._corner.pick(key, reading.low, reading.high)
        if self._record:
            words = name_of(table).replace("_", " ")
            owner = f" of {of.id}" if of is not None and of is not self._component else ""
            self._record.looked_up(key, symbol, f"{words}{owner}", reading, value)
        return value

    def limit(self, name: str, symbol: str = "") -> float:
        """A limit that the rule declares, as the repository's settings have it."""
        declared, measure, own = self._context.limit(self._rule, name)
        if self._record:
            self._record.limit(symbol, declared, measure, own=own)
        return measure.nominal

    # What a rule works

    def work(self, symbol: str, formula: Callable[..., float], /, **arguments: float) -> float:
        """The result of a formula; where it has none, or lies out of its range, the check becomes a query."""
        try:
            value = formula(**arguments)
        except OutOfRange as problem:
            raise NotCovered(str(problem)) from problem
        except ZeroDivisionError as problem:
            raise divides_by_zero(name_of(formula), arguments) from problem
        if isinstance(value, complex):  # the root of a number below 0
            raise has_no_root(name_of(formula))
        if value != value:  # not a number
            raise ValueError(f"{symbol} is not a number")
        if self._record:
            self._record.worked(symbol, formula, arguments, value)
        return value

    def once(self, key: Hashable, work: Callable[[], T]) -> T:
        """What ``work`` gives, worked once for all corners of a check: it must take nothing but nominals.

        A sheet that records works it again, so that it is written down.
        """
        context = self._context
        if self._record is not None or context.moved or context.worded:
            return work()
        if key not in context.steady:
            context.steady[key] = work()
        found: T = context.steady[key]
        return found

    def aside(self, name: str, work: Callable[..., T], /, *about: Any) -> T:
        """The result of a long calculation on a sheet of its own: see :func:`~speclint.rules.aside.worked_aside`."""
        return worked_aside(self._context, self._record, self._of_its_own, name, work, about)

    def _of_its_own(self) -> Sheet:
        return Sheet(self._rule, self._component, self._context, Corner(), record=True)

    def list_item(self, name: str, says: str) -> None:
        """Write a line of a result in words, such as a step of an order; nothing rests on it."""
        if self._record:
            self._record.word(name, says)

    def scan(
        self,
        symbol: str,
        name: str,
        function: Callable[[float], float],
        start: float,
        stop: float,
        *,
        unit: str,
        find: Literal["greatest", "least"] = "greatest",
        steps: int = 180,
        beside: Sequence[Course] = (),
    ) -> float:
        """Where between two ends a function is greatest or least, for a worst case that lies inside.

        Evaluates a grid of ``steps`` intervals and closes in on the best by golden section. ``function`` must
        not use the sheet; work the formula again at the place returned, so that the sheet shows it. ``beside`` are
        quantities to be written down at every place of the grid, for a report to draw.
        """
        sign = 1.0 if find == "greatest" else -1.0
        share = self._corner.next_place()
        try:
            if share is None:
                place = greatest_place(lambda at: sign * function(at), start, stop, steps)
            else:
                place = place_on(start, stop, share)
        except OutOfRange as problem:
            raise NotCovered(str(problem)) from problem
        except ZeroDivisionError as problem:
            raise divides_by_zero(name) from problem
        self._corner.note_place(start, stop, place)
        if self._record:
            grid = [start + (stop - start) * index / steps for index in range(steps + 1)]
            span = f"{self._record.said(start, unit)} to {self._record.said(stop, unit)}"
            along = Course(symbol, name, unit, lambda at: at)
            series = written((along, *beside), grid) if beside else ()
            self._record.scanned(symbol, name, place, unit, f"{find} over {span}", series)
        return place

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

    def _note_read(self, name: str, value: Stated[Any]) -> None:
        place = self.record.place(value.where, name)
        plain = str(value.value).lower() if isinstance(value.value, bool) else str(value.value)
        named = isinstance(value.value, str) and self.record.is_own_place(value.where)
        alike = self.record.renaming.place(str(value.value)) if named else None
        self.record.note(f"read {name} {place}", repr(value.value), place, plain, at=value.where, alike=alike)

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


def key_of_reading(table: Callable[..., Reading], symbol: str, of: Component | None) -> Hashable:
    """What a corner knows a figure of a table by: one input for all its look-ups for the same component."""
    return "looked up", name_of(table), of.id if of is not None else symbol
