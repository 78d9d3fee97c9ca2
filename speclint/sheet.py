"""The calculation sheet: a rule reads a spec only through it, works on it, and is judged on it.

In a run at one tolerance corner the sheet hands over plain SI floats. When it *records*, it also writes down
every step with symbol, equation, numbers, unit and source. Both do the same arithmetic.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Any, Literal, TypeVar

from speclint.corners import Corner
from speclint.errors import NotKnown, OutOfRange
from speclint.formula import described
from speclint.handbook.reading import Reading
from speclint.judgement import ROUNDING, Amount, Judgement, NotApplicable, NotAssessed, NotCovered
from speclint.quantities import Measure, Provenance
from speclint.rules import Rule
from speclint.sources import Source
from speclint.specs.component import Spec
from speclint.specs.part import Component
from speclint.specs.words import Link, NotStated, Stated
from speclint.where import NOWHERE, Where
from speclint.writing import amount, substituted

if TYPE_CHECKING:
    from speclint.design import Design
    from speclint.handbook.materials import Material

T = TypeVar("T")
S = TypeVar("S", bound=Spec)
C = TypeVar("C", bound=Component)
StepKind = Literal["taken", "counted", "read", "looked up", "limit", "worked", "scanned"]
_SI_OF = {"fluid pressure": "Pa", "temperature": "K", "temperature difference": "ΔK"}


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a sheet. ``expression`` is the equation, ``numbers`` the same with numbers put in.

    ``value`` is that of the governing corner, ``stated`` the nominal as the spec has it.
    """

    kind: StepKind
    symbol: str
    name: str
    value: float | str | bool | int
    unit: str = ""
    expression: str = ""
    numbers: str = ""
    source: Source | None = None
    where: Where = NOWHERE
    note: str = ""
    written_in: str = ""
    stated: float = 0.0


@dataclass
class Context:
    """What a sheet may consult: the design, the materials, and values moved to look for a remedy."""

    design: Design
    material: Callable[[str], Material]
    limits: Mapping[tuple[str, str], Measure]
    moved: Mapping[Where, float] = field(default_factory=dict)


class Sheet:
    """The sheet of one rule on one component at one corner.

    A family sees only the methods; ``steps`` and ``basis`` are for the core.
    """

    def __init__(
        self, rule: Rule, component: Component, context: Context, corner: Corner, *, record: bool
    ) -> None:
        self._rule, self._component, self._context, self._corner = rule, component, context, corner
        self._record = record
        self.steps: list[Step] = []
        self.basis: dict[str, str] = {}
        self.labels: dict[object, str] = {}
        self.assumed: list[Where] = []

    # What a rule takes

    def take(self, symbol: str, value: Measure | NotStated, name: str = "") -> float:
        """A stated quantity in SI units; a fluid pressure as gauge. Ends the rule when it is not stated."""
        measure = self._stated(value)
        shift = -self._context.design.settings.site_pressure if measure.datum == "absolute" else 0.0
        return self._taken(symbol, measure, name, shift)

    def take_nominal(self, symbol: str, value: Measure | NotStated, name: str = "") -> float:
        """The size that a drawing aims at, without its limits.

        Only for a rule that holds a drawing against itself, such as a stated load against the spring's sizes;
        whatever must hold in metal is taken with its limits.
        """
        measure = self._stated(value)
        aimed_at = replace(measure, low=measure.nominal, high=measure.nominal)
        return self._taken(symbol, aimed_at, name or f"{self._label(measure.where)}, nominal", 0.0)

    def tolerance(self, symbol: str, value: Measure | NotStated, name: str = "") -> float:
        """The width between the limits that a quantity states: nothing where it states none."""
        measure = self._stated(value)
        width = measure.high - measure.low
        self._note(f"tolerance {measure.where.file} {measure.where.key}", repr(width))
        if self._record:
            words = name or f"tolerance of {self._label(measure.where)}"
            self.steps.append(self._step_of(symbol, words, measure, width))
        return width

    def take_absolute(self, symbol: str, value: Measure | NotStated, name: str = "") -> float:
        """A stated fluid pressure as absolute: gauge pressures are raised by that of the site."""
        measure = self._stated(value)
        shift = self._context.design.settings.site_pressure if measure.datum == "gauge" else 0.0
        return self._taken(symbol, measure, name or f"{_in_words(measure.where.key)}, absolute", shift)

    def read(self, name: str, value: Stated[T] | NotStated) -> T:
        """A stated word, count or yes/no. Ends the rule when it is not stated."""
        if isinstance(value, NotStated):
            raise self._missing(value)
        self._note(f"read {name} {value.where.key}", repr(value.value))
        if self._record and isinstance(value.value, str | bool | int):
            self.steps.append(Step("read", "", name, value.value, where=value.where))
        return value.value

    def count(self, symbol: str, value: Stated[int] | NotStated, name: str = "") -> int:
        """A stated whole number, with a symbol of its own."""
        if isinstance(value, NotStated):
            raise self._missing(value)
        self._note(f"read {symbol} {value.where.key}", repr(value.value))
        number = value.value + round(self._context.moved.get(value.where, 0.0))
        if self._record:
            words = name or self._label(value.where)
            stated = float(value.value)
            self.steps.append(Step("counted", symbol, words, float(number), where=value.where, stated=stated))
        return number

    def is_stated(self, name: str, value: Measure | Stated[Any] | Link[Any] | NotStated) -> bool:
        """Whether something is stated at all; the rule goes on either way."""
        found = not isinstance(value, NotStated)
        self._note(f"stated {name} {value.where.key}", repr(found))
        return found

    def follow(self, link: Link[S] | NotStated) -> S:
        """The spec that a link leads to. Ends the rule when it is not stated or cannot be read."""
        if isinstance(link, NotStated):
            raise self._missing(link)
        found = self._context.design.follow(link)
        self._note(f"link {link.where.key}", link.id)
        if found is None:
            raise NotAssessed(f'{link.where.key} leads to "{link.id}", which could not be read', link.where)
        return found  # type: ignore[return-value]  # the design has checked the target

    def entry(self, table: Mapping[str, T], name: Stated[str] | NotStated, of: str) -> T:
        """An entry of a named table of another spec, such as one bore of a block; ``of`` says of what."""
        key = self.read(f"name in {of}", name)
        if key not in table:
            where = name.where if isinstance(name, Stated) else NOWHERE
            raise NotAssessed(f"{of} has no entry {key!r}", where)
        return table[key]

    def belonging_to(self, target: Spec, kind: type[C]) -> tuple[C, ...]:
        """The components of a kind that state a link to a spec: the rings of a liner, the studs of a cover."""
        found = tuple(part for part in self._context.design.linking_to(target) if isinstance(part, kind))
        self._note(f"{kind.kind} on {target.id}", repr([part.id for part in found]))
        return found

    def stated_from(self, provenance: Provenance, component: Component) -> tuple[Where, ...]:
        """Where a component states quantities of one provenance: those assumed, or measured from an original."""
        found = tuple(one for one in component.measures() if one.provenance == provenance)
        self._note(f"{provenance} in {component.id}", repr([(one.where.key, one.text) for one in found]))
        if self._record:
            for one in found:
                self.steps.append(
                    Step("read", "", f"{provenance}: {self._label(one.where)}", one.text, where=one.where)
                )
        return tuple(one.where for one in found)

    def material_of(self, component: Component) -> Material:
        """The material of a component, from the handbook or the repository's own."""
        return self.material_named(component.id, component.material)

    def material_named(self, of: str, name: Stated[str] | NotStated) -> Material:
        """The material that a table of a spec names for a part of it; ``of`` says of what."""
        called = self.read(f"material of {of}", name)
        try:
            return self._context.material(called)
        except NotKnown as problem:
            raise NotAssessed(str(problem), name.where) from problem

    def setting(self, name: Literal["stage", "pressure codes", "railway codes", "site pressure"]) -> str:
        """A setting of the repository, as text; "" where it is not set."""
        settings = self._context.design.settings
        values = {
            "stage": settings.stage,
            "pressure codes": ", ".join(settings.local_codes.pressure),
            "railway codes": ", ".join(settings.local_codes.railway),
            "site pressure": repr(settings.site_pressure),
        }
        self._note(f"setting {name}", values[name])
        if self._record:
            self.steps.append(Step("read", "", f"setting: {name}", values[name] or "not set"))
        return values[name]

    def look_up(
        self, symbol: str, table: Callable[..., Reading], /, *, of: Component | None = None, **at: Any
    ) -> float:
        """A figure from a handbook table; ``of`` names the component whose material it is.

        Where the table has no such figure the rule is not assessed; outside the table's range it is a query.
        """
        try:
            reading = table(**at)
        except NotKnown as problem:
            raise NotAssessed(str(problem)) from problem
        except OutOfRange as problem:
            raise NotCovered(str(problem)) from problem
        words = _words_of(table)
        owner = f" of {of.id}" if of is not None and of is not self._component else ""
        key = ("looked up", words, of.id if of is not None else symbol)
        value = self._corner.pick(key, reading.low, reading.high)
        if self._record:
            self.labels[key] = f"{words}{owner}"
            band = (
                ""
                if reading.low == reading.high
                else f"{amount(reading.low, reading.unit)} to {amount(reading.high, reading.unit)}"
            )
            self.steps.append(
                Step("looked up", symbol, reading.what, value, reading.unit, source=reading.source, note=band)
            )
            self._note(f"look-up {words}{owner} {symbol}", f"{reading.low!r} {reading.high!r}")
        return value

    def limit(self, name: str, symbol: str = "") -> float:
        """A limit that the rule declares, as the repository's settings have it."""
        declared = self._rule.limit(name)
        own = self._context.limits.get((self._rule.name, name))
        measure = own or declared.read(declared.default)
        self._note(f"limit {name}", repr(measure.nominal))
        if self._record:
            note = (
                f"set to {measure.text} in speclint.toml; the rule's own is {declared.default}" if own else ""
            )
            unit = _SI_OF.get(declared.dimension) or _si_unit(declared.dimension)
            words = declared.says or name.replace("_", " ")
            self.steps.append(
                Step(
                    "limit",
                    symbol,
                    words,
                    measure.nominal,
                    unit,
                    source=declared.source,
                    note=note,
                    written_in=measure.unit,
                )
            )
        return measure.nominal

    # What a rule works

    def work(self, symbol: str, formula: Callable[..., float], /, **arguments: float) -> float:
        """The result of a formula. Outside the formula's range the check becomes a query."""
        try:
            value = formula(**arguments)
        except OutOfRange as problem:
            raise NotCovered(str(problem)) from problem
        if math.isnan(value):
            raise ValueError(f"{symbol} is not a number")
        if self._record:
            self._write_down(symbol, formula, arguments, value)
        return value

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
    ) -> float:
        """Where between two ends a function is greatest or least, for a worst case that lies inside.

        Evaluates a grid of ``steps`` intervals and closes in on the best by golden section. ``function`` must
        not use the sheet; work the formula again at the place returned, so that the sheet shows it.
        """
        sign = 1.0 if find == "greatest" else -1.0
        grid = [start + (stop - start) * index / steps for index in range(steps + 1)]
        try:
            best = max(range(steps + 1), key=lambda index: sign * function(grid[index]))
            place = _golden(
                lambda at: sign * function(at), grid[max(best - 1, 0)], grid[min(best + 1, steps)], grid[best]
            )
        except OutOfRange as problem:
            raise NotCovered(str(problem)) from problem
        if self._record:
            span = f"{amount(start, unit)} to {amount(stop, unit)}"
            self.steps.append(Step("scanned", symbol, name, place, unit, note=f"{find} over {span}"))
        return place

    # How a rule ends

    def at_most(self, value: float, limit: float) -> Judgement:
        """The rule holds while a worked value does not exceed a limit."""
        return self._compare(value, limit, "≤", _ratio(value, limit))

    def at_least(self, value: float, limit: float) -> Judgement:
        """The rule holds while a worked value reaches a limit."""
        return self._compare(value, limit, "≥", _ratio(limit, value))

    def within(self, value: float, low: float, high: float) -> Judgement:
        """The rule holds while a worked value lies between two limits; halfway uses nothing of them."""
        middle, half = (low + high) / 2, (high - low) / 2
        used = abs(value - middle) / half if half > 0 else (0.0 if value == middle else math.inf)
        return self._compare(value, high if value >= middle else low, "≤" if value >= middle else "≥", used)

    def stays(self, left: float, cold: float, *, strictly: bool = False) -> Judgement:
        """The rule holds while something of a cold clearance or interference is left.

        Utilisation is the share of the cold value consumed; ``strictly`` asks for more than nothing.
        """
        used = (cold - left) / cold if cold > 0 else math.inf
        holds = left > 0 if strictly else left >= -ROUNDING * abs(cold)
        if holds and used > 1:
            used = 1.0
        found = self._amount(left)
        says = f"{_name(found)} {amount(left, found.unit, found.written_in)} left"
        if cold > 0:
            says += f" of {amount(cold, found.unit)} cold: {used:.0%} of it is used"
        zero = Amount(0.0, found.unit, "nothing")
        return Judgement(holds, says, used, found, zero, ">" if strictly else "≥", found)

    def states(self, holds: bool, says: str, *, where: Where = NOWHERE) -> Judgement:
        """The rule holds or not as a matter of record, not of number."""
        return Judgement(holds, says, where=where)

    def reported(self, value: float, says: str) -> Judgement:
        """Nothing is judged: a figure is written beside others for the reader."""
        found = self._amount(value)
        return Judgement(True, f"{says}: {amount(value, found.unit)}", found=found, compared="reported")

    def worst(self, *judgements: Judgement) -> Judgement:
        """The gravest of several judgements: what fails before what holds, then the greater utilisation."""
        return max(
            judgements, key=lambda one: (not one.holds, one.grade or self._rule.grade, one.utilisation or 0.0)
        )

    def not_applicable(self, why: str) -> NotApplicable:
        """To be raised where the rule does not concern this component."""
        return NotApplicable(why)

    def not_covered(self, why: str) -> NotCovered:
        """To be raised where the sources do not cover the case: a query."""
        return NotCovered(why)

    def not_assessed(self, why: str, where: Where = NOWHERE) -> NotAssessed:
        """To be raised where something that the rule needs is missing."""
        return NotAssessed(why, where)

    # The core's side

    def _stated(self, value: Measure | NotStated) -> Measure:
        if isinstance(value, NotStated):
            raise self._missing(value)
        return value

    def _missing(self, value: NotStated) -> NotAssessed:
        return NotAssessed(f"{value.where.key} is not stated in {value.where.file}", value.where)

    def _taken(self, symbol: str, measure: Measure, name: str, shift: float) -> float:
        move = shift + self._context.moved.get(measure.where, 0.0)
        low, high = measure.low + move, measure.high + move
        key = ("taken", measure.where if measure.where.key else (symbol, name))
        value = self._corner.pick(key, low, high)
        if self._record:
            self.labels[key] = name or self._label(measure.where)
            self._note(
                f"taken {measure.where.file} {measure.where.key or symbol}",
                f"{measure.low!r} {measure.high!r}",
            )
            if measure.provenance == "assumed":
                self.assumed.append(measure.where)
            self.steps.append(self._step_of(symbol, name, measure, value))
        return value

    def _step_of(self, symbol: str, name: str, measure: Measure, value: float) -> Step:
        unit = _SI_OF.get(measure.dimension) or _si_unit(measure.dimension)
        origin = "" if measure.provenance == "drawing" else measure.provenance
        note = "; ".join(part for part in (measure.text, origin, measure.note) if part)
        words = name or self._label(measure.where)
        return Step(
            "taken",
            symbol,
            words,
            value,
            unit,
            where=measure.where,
            note=note,
            written_in=measure.unit,
            stated=measure.nominal,
        )

    def _label(self, where: Where) -> str:
        words = _in_words(where.key)
        own = self._context.design.files.get(self._component.id)
        if not where.file or where.file == own:
            return words
        owner = next(
            (name for name, file in self._context.design.files.items() if file == where.file), where.file
        )
        return f"{words} of {owner}"

    def _note(self, name: str, value: str) -> None:
        self.basis[name] = value

    def _write_down(
        self, symbol: str, formula: Callable[..., float], arguments: Mapping[str, float], value: float
    ) -> None:
        about = described(formula)
        units = about.units
        numbers = {name: amount(given, units[name]) for name, given in arguments.items() if name in units}
        name = (formula.__doc__ or "").strip().split("\n")[0].rstrip(".")
        source = about.cites[0] if about.cites else None
        self.steps.append(
            Step(
                "worked",
                symbol,
                name,
                value,
                about.unit,
                about.equation,
                substituted(about.equation, numbers),
                source,
            )
        )

    def _compare(self, value: float, limit: float, compared: str, used: float) -> Judgement:
        if math.isnan(value) or math.isnan(limit):
            raise ValueError("a value to be judged is not a number")
        holds = used <= 1 + ROUNDING
        found, against = self._amount(value), self._amount(limit)
        sign = compared if holds else {"≤": ">", "≥": "<"}[compared]
        says = ""
        if self._record:
            says = (
                f"{_name(found)} {amount(value, found.unit, found.written_in)} {sign} "
                f"{amount(limit, against.unit, against.written_in or found.written_in)} {_name(against)}"
            ).strip()
        return Judgement(holds, says, used, found, against, compared)

    def _amount(self, value: float) -> Amount:
        if not self._record:
            return Amount(value, "")
        for step in reversed(self.steps):
            if isinstance(step.value, float) and step.value == value:
                return Amount(value, step.unit, step.name, step.written_in)
        raise LookupError(f"{value!r} is judged, but no step of the sheet gives it")


def _ratio(value: float, limit: float) -> float:
    """Value over limit, for a value that may be nothing or negative."""
    if limit > 0:
        return max(value, 0.0) / limit
    return 0.0 if value <= limit else math.inf


def _golden(function: Callable[[float], float], low: float, high: float, best: float) -> float:
    ratio = (math.sqrt(5) - 1) / 2  # the golden section
    a, b = high - ratio * (high - low), low + ratio * (high - low)
    at_a, at_b = function(a), function(b)
    for _ in range(40):  # narrows the grid's interval by 0.618^40, some 4e-9 of it
        if at_a >= at_b:
            high, b, at_b = b, a, at_a
            a = high - ratio * (high - low)
            at_a = function(a)
        else:
            low, a, at_a = a, b, at_b
            b = low + ratio * (high - low)
            at_b = function(b)
    inside = (low + high) / 2
    return inside if function(inside) > function(best) else best


def _si_unit(dimension: str) -> str:
    from speclint.units import DIMENSIONS

    return DIMENSIONS[dimension].si


def _in_words(key: str) -> str:
    """A key as words, the thing itself first: ``cases.running.live_pressure`` is "live pressure, running"."""
    *tables, last = key.removeprefix("cases.").split(".")
    return ", ".join(part.replace("_", " ") for part in (last, *tables))


def _words_of(table: Callable[..., Reading]) -> str:
    return getattr(table, "__name__", type(table).__name__).replace("_", " ")


def _name(found: Amount) -> str:
    return found.name[:1].lower() + found.name[1:] if found.name[1:2].islower() else found.name
