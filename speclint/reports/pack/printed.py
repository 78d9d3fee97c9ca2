"""Numbers on drawings, each with the quantity of a sheet or a spec that it is, so that a test can hold it against that.

A line of words that is made here is a plain ``str`` to whoever draws it, and knows what its numbers are.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from msgspec import Struct

from speclint.checking import Assessment, Check
from speclint.errors import Location
from speclint.quantities import Measure, amount_in, beside, number, si_unit
from speclint.reports.pack.drawn_units import drawn, drawn_names, drawn_places, drawn_system, from_si
from speclint.specs import Stated

Side = Literal["nominal", "low", "high"]


class InSpec(Struct, frozen=True):
    """A quantity that a spec states, at its nominal or at a limit."""

    where: Location
    side: Side


class OnSheet(Struct, frozen=True):
    """The last quantity under a symbol on the sheet of a rule, which is the one that the sheet judges.

    ``argument`` is one of the numbers that were put into that step's equation, ``place`` one of a series that the
    step recorded; ``at`` is the place of a step on the sheet where not the last is meant. "found", "limit" and
    "utilisation" in place of a symbol are those of the judgement.
    """

    component: str
    rule: str
    symbol: str
    argument: str = ""
    place: int | None = None
    at: int | None = None


@dataclass(frozen=True, slots=True)
class Worked:
    """A quantity that a drawing works from others by a formula."""

    formula: Callable[..., float]
    of: Mapping[str, Quantity] = field(hash=False)


class DrawnAgain(Struct, frozen=True):
    """A quantity that is worked once more, sizes as drawn, from all that the check of a rule takes.

    ``taken`` gives what the check takes, of an assessment; ``formula`` the value of that. The sheet has the same of its
    governing corner.
    """

    component: str
    rule: str
    taken: Callable[[Assessment, str], object]
    formula: Callable[[Any], float]


Origin = InSpec | OnSheet | Worked | DrawnAgain


class Quantity(Struct, frozen=True):
    """An SI value with where it stands."""

    value: float
    origin: Origin

    def in_unit(self, unit: str) -> float:
        """The number in a unit that drawings print, whichever is chosen."""
        return from_si(self.value, unit)


class Printed(Struct, frozen=True):
    """A number as it is printed, and the quantity that it is; ``as_stated`` where it is the text of the spec.

    ``sign`` is −1 where words beside it say that it counts the other way, as a clearance does of an interference.
    """

    text: str
    quantity: Quantity
    unit: str = ""
    sign: int = 1
    as_stated: bool = False


class Words(str):
    """A line of words whose numbers are known quantities."""

    numbers: tuple[Printed, ...] = ()


Part = Printed | str


def words(template: str, *parts: Part) -> Words:
    """A line of words with each ``{}`` of a template filled; the template itself has no number.

    A unit stands in braces by its metric name, and is written as that which is drawn.

    >>> words("Ø {} new, in {mm}", "578")
    'Ø 578 new, in mm'
    """
    texts = (one.text if isinstance(one, Printed) else one for one in parts)
    made = Words(template.format(*texts, **drawn_names()))
    made.numbers = tuple(number for one in parts for number in _numbers(one))
    return made


def _numbers(part: Part) -> tuple[Printed, ...]:
    if isinstance(part, Printed):
        return (part,)
    return part.numbers if isinstance(part, Words) else ()


def joined(separator: str, parts: list[str] | tuple[str, ...]) -> Words:
    """Several lines of words in one."""
    return words(separator.join("{}" for _ in parts), *parts)


def stated(measure: Measure, side: Side = "nominal") -> Quantity:
    """A quantity of a spec."""
    return Quantity(getattr(measure, side), InSpec(measure.where, side))


def counted(value: object) -> Quantity:
    """A whole number that a spec states."""
    assert isinstance(value, Stated)  # as whoever counts has asked
    return Quantity(float(value.value), InSpec(value.where, "nominal"))


def quoted(measure: Measure) -> Words:
    """A quantity as its drawing has it, limits and all; beside it in the units that were chosen, if it has others."""
    unit = si_unit(measure.dimension)
    own = measure.text or amount_in("as written", measure.nominal, unit, measure.unit)
    text = Printed(own, stated(measure), as_stated=True)
    other = beside(drawn_system(), measure.nominal, unit, measure.unit)
    if not other:
        return words("{}", text)
    size, _, name = other.partition(" ")
    return words("{} ({} {})", text, Printed(size, stated(measure), name), name)


def on_sheet(check: Check, symbol: str) -> Quantity | None:
    """The last number under a symbol of a sheet; None where there is none."""
    for step in reversed(check.steps):
        if step.symbol == symbol and isinstance(step.value, float):
            return Quantity(step.value, OnSheet(check.component, check.rule.name, symbol))
    return None


def argument(check: Check, symbol: str, name: str) -> Quantity | None:
    """A number that was put into the equation of the last step under a symbol; None where there is none."""
    for step in reversed(check.steps):
        if step.symbol == symbol and step.filled:
            found = {one: value for one, value, _ in step.filled}
            origin = OnSheet(check.component, check.rule.name, symbol, name)
            return Quantity(found[name], origin) if name in found else None
    return None


def of_step(check: Check, at: int, name: str = "") -> Quantity:
    """The value of a step by its place on the sheet, or a number that was put into its equation."""
    step = check.steps[at]
    value = {one: number for one, number, _ in step.filled}[name] if name else float(step.value)
    return Quantity(value, OnSheet(check.component, check.rule.name, step.symbol, name, at=at))


def along(check: Check, symbol: str, place: int) -> Quantity | None:
    """A number of the last series that a sheet recorded under a symbol; None where it has none there."""
    for step in reversed(check.steps):
        for series in step.series:
            if series.symbol == symbol:
                value = series.values[place]
                origin = OnSheet(check.component, check.rule.name, symbol, place=place)
                return None if value is None else Quantity(value, origin)
    return None


def judged(check: Check) -> tuple[Quantity, Quantity] | None:
    """What a check judged, and its limit."""
    judgement = check.judgement
    if judgement is None or judgement.found is None or judgement.limit is None:
        return None
    names = (check.component, check.rule.name)
    found, limit = judgement.found.value, judgement.limit.value
    return Quantity(found, OnSheet(*names, "found")), Quantity(limit, OnSheet(*names, "limit"))


def worked(formula: Callable[..., float], **of: Quantity) -> Quantity:
    """A quantity by a formula of others."""
    return Quantity(formula(**{name: one.value for name, one in of.items()}), Worked(formula, of))


def shown(
    quantity: Quantity, unit: str, places: int | None = None, *, sign: int = 1, signed: bool = False
) -> Printed:
    """A number of a metric unit as it is drawn, without the unit: in so many decimals of the metric unit, else in four
    figures; one that is drawn in another unit has as many decimals as make it as fine, else those of a sheet.

    >>> from speclint.errors import NOWHERE
    >>> shown(Quantity(-0.00022, InSpec(NOWHERE, "nominal")), "µm", 0).text
    '−220'
    """
    own = drawn(unit)
    value = quantity.in_unit(own) * sign
    if places is not None:
        text = f"{value:{'+' if signed else ''}.{drawn_places(unit, places)}f}"
    else:
        text = f"{value:.4g}" if own == unit else number(value, own)
    text = text.replace("-", "−")
    if float(text.replace("−", "-")) == 0:
        text = text.lstrip("+−")
    return Printed(text, quantity, own, sign)


def as_on_sheet(quantity: Quantity, unit: str) -> Printed:
    """A number of a metric unit as it is drawn, without the unit, rounded as on a sheet."""
    own = drawn(unit)
    return Printed(number(quantity.in_unit(own), own), quantity, own)


class AxisMark(Struct, frozen=True):
    """A round number of an axis as it is drawn, and its coordinate: across the paper for "x…", else down it."""

    axis: str
    value: float
    at: float


class Placed(Struct, frozen=True):
    """A quantity that is drawn to an axis, at a coordinate; or, of the axis "", to the scale as a length.

    ``unit`` is that of the numbers of the axis.
    """

    quantity: Quantity
    unit: str
    axis: str
    at: float
    sign: int = 1


class Held(Struct, frozen=True):
    """What a test can hold a drawing against: lines of known numbers, marks of its axes, and what is drawn to them.

    ``scale`` is in units to the millimetre, ``counted`` are numbers that only count parts or rows.
    """

    printed: tuple[Words, ...] = ()
    marks: tuple[AxisMark, ...] = ()
    placed: tuple[Placed, ...] = ()
    scale: float | None = None
    counted: tuple[str, ...] = ()
