"""What was measured on a part as made: each dimension by the key of its spec, with its uncertainty and its inspector.

A value is written as a drawing writes it, and read in the dimension of the key that it was measured for
(:func:`measured_size`): until the spec of the part is known, nobody can tell a pressure from a stress.
"""

from collections.abc import Iterator, Mapping
from typing import Annotated, Any, get_args

from msgspec import Struct
from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, core_schema

from speclint.errors import Location, QuantityError, replace
from speclint.quantities import Measure, read, units
from speclint.specs.fields import NOT_STATED, Angle, NotStated, Position, Quantity, Stated, Word
from speclint.specs.reworking import Machined, UntilMeasured
from speclint.specs.spans import Span
from speclint.specs.spec import Spec, SpecTable, leaves
from speclint.specs.toml_values import Array, Leaf, Table


class MeasuredValue(SpecTable):
    """One value, and where on the part it was measured.

    Fields:
        value: as read, with its unit
        along: the place along the part, from the end that the drawing counts from
        round: the place round the axis
    """

    value: Word[str] = NOT_STATED
    along: Annotated[Position, Span("0.5 mm", "10 m")] = NOT_STATED
    round: Angle = NOT_STATED


class _TextsOrTables:
    """Annotation of the values: plain texts are tables of a value each; one alone may stand without brackets."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_before_validator_function(_as_tables, handler(source))

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        several = handler(schema["schema"])
        one = {"anyOf": [{"type": "string"}, several["items"]]}
        return {"anyOf": [{"type": "string"}, {**several, "items": one}]}


def _as_tables(raw: Any) -> Any:
    if isinstance(raw, Leaf):
        raw = [raw]
    if not isinstance(raw, list):
        return raw
    some = [Table({"value": one}, one.where) if isinstance(one, Leaf) else one for one in raw]
    return Array(some, raw.where) if isinstance(raw, Array) else some


class MeasuredDimension(SpecTable):
    """One dimension of a part as it was measured on one day.

    Fields:
        dimension: its key in the spec, such as "bores.main.diameter"; the name of the table where it is left out
        values: each as a text, or as a table of value, along and round
        uncertainty: the expanded uncertainty of each value, coverage factor 2, as recorded
        instrument: by its name and number
        date: the day, as 2027-05-31
        inspector: who measured
    """

    dimension: Word[str] = NOT_STATED
    values: Annotated[tuple[MeasuredValue, ...], _TextsOrTables()] = ()
    uncertainty: Word[str] = NOT_STATED
    instrument: Word[str] = NOT_STATED
    date: Word[str] = NOT_STATED
    inspector: Word[str] = NOT_STATED


#: The first and the last word of the keys of which a drawing states the greatest: zones of geometrical tolerances,
#: ISO 1101; and the last word alone, of roughness, whose value is an upper limit, ISO 21920-1, and of eccentricity.
_ZONES = {
    ("", "general_zone"),
    ("tolerances", "zone"),
    ("tolerances", "diameter_zone"),
    ("hole_patterns", "position"),
}
_GREATEST = {"roughness", "eccentricity"}


class QuantityAt(Struct, frozen=True):
    """What the kind of a spec takes under a key: a quantity of a dimension, stated or not.

    ``way`` is 1 for a size that grows as metal comes off, such as a bore, −1 for one that shrinks, 0 for one that is
    not machined. ``until_measured`` is the key of the size for which an allowance stands until that is measured.
    """

    key: str
    dimension: str
    drawn: Measure | NotStated
    span: Span | None
    way: int = 0
    until_measured: str = ""

    @property
    def only_greatest(self) -> bool:
        """Whether what is drawn without limits is the greatest that may be: the zone of a tolerance, a roughness."""
        if not isinstance(self.drawn, Measure) or not self.drawn.exact or self.drawn.low <= 0:
            return False
        table, _, last = self.key.rpartition(".")
        return last in _GREATEST or (table.partition(".")[0], last) in _ZONES

    @property
    def limits(self) -> Measure | None:
        """What is drawn, with the limits between which it is measured; None where it is not stated."""
        if not isinstance(self.drawn, Measure):
            return None
        return replace(self.drawn, low=0.0) if self.only_greatest else self.drawn


class PlacedValue(Struct, frozen=True):
    """One value as read, with its place in SI units; None where it is not stated."""

    value: Measure
    along: float | None
    round: float | None


class MeasuredSize(Struct, frozen=True):
    """What was measured under one key, as read.

    ``uncertainty`` is the expanded one, in SI units, as a half width, and ``written`` its text; None and "" where none
    was recorded: nothing is put in its place.
    """

    name: str
    key: str
    values: tuple[PlacedValue, ...]
    uncertainty: float | None
    written: str
    date: str
    where: Location

    @property
    def least(self) -> float:
        """The least value, SI."""
        return min(one.value.nominal for one in self.values)

    @property
    def greatest(self) -> float:
        """The greatest value, SI."""
        return max(one.value.nominal for one in self.values)

    def band(self, widened_by: float) -> Measure:
        """From the least value less so many SI units to the greatest and as many more, as a spec would write it.

        Narrowed by more than the values differ, both ends stand in the middle.
        """
        low, high = self.least - widened_by, self.greatest + widened_by
        if low > high:
            low = high = (low + high) / 2
        return as_range(low, high, self.values[0].value, self.where)


def as_range(low: float, high: float, like: Measure, where: Location) -> Measure:
    """Two SI values as a spec would write them, in the unit of a quantity of their dimension."""
    for figures in _FIGURES:
        ends = "..".join(dict.fromkeys(_in_unit(end, like, figures) for end in (low, high)))
        if sum(map(str.isdigit, ends)) <= _MOST_DIGITS:
            break
    text = " ".join(f"{ends} {like.unit} {like.datum}".split())
    return read(text, like.dimension, "any", where)


def quantities_of(spec: SpecTable) -> Mapping[str, QuantityAt]:
    """The quantities that the kind of a spec takes, by dotted key, stated or not."""
    return {one.key: one for one in _quantities(spec)}


def _quantities(spec: SpecTable) -> Iterator[QuantityAt]:
    for leaf in leaves(spec):
        if not isinstance(leaf.value, Measure | NotStated):
            continue
        marks = list(_marks(leaf.table, leaf.field))
        quantity = next((one for one in marks if isinstance(one, Quantity)), None)
        if quantity is not None:
            spans = [one for one in marks if isinstance(one, Span)]
            key = leaf.key.replace("[", ".").replace("]", "")
            until = next((one.key for one in marks if isinstance(one, UntilMeasured)), "")
            span = spans[-1] if spans else None
            yield QuantityAt(key, quantity.dimension, leaf.value, span, _way(leaf.value, marks), until)


def _way(drawn: Measure | NotStated, marks: list[Any]) -> int:
    """Which way a size goes when metal comes off: as its kind says, else by its tolerance class, H for a hole."""
    stated = next((one.way for one in marks if isinstance(one, Machined)), 0)
    if stated or not isinstance(drawn, Measure) or not drawn.tolerance_class:
        return stated
    return 1 if drawn.tolerance_class[0].isupper() else -1


def _marks(table: type[SpecTable], name: str) -> Iterator[Any]:
    """The annotations of a field; of one that takes several, those of each."""
    field = table.model_fields[name]
    for member in get_args(field.annotation):
        yield from getattr(member, "__metadata__", ())
    yield from field.metadata


def key_of(name: str, entry: MeasuredDimension) -> Stated[str]:
    """The key that an entry was measured for: that which it states, or else its name."""
    return Stated(name, entry.where) if isinstance(entry.dimension, NotStated) else entry.dimension


def measured_size(name: str, entry: MeasuredDimension, at: QuantityAt) -> MeasuredSize:
    """An entry as read in the dimension of its key.

    :raises MisreadError: for a value or an uncertainty that cannot be so read, or that no part of the kind has.
    """
    values = tuple(_placed(one, at) for one in entry.values)
    if not values:
        raise MisreadError(
            entry.where.at(f"{entry.where.key}.values"), "nothing was measured", "", "the values"
        )
    uncertainty = entry.uncertainty
    half, written = None, ""
    if isinstance(uncertainty, Stated):
        written = uncertainty.value
        half = _read(uncertainty, _of_difference(at.dimension), positive=True).nominal
    day = entry.date.value if isinstance(entry.date, Stated) else ""
    return MeasuredSize(name, at.key, values, half, written, day, entry.where)


def measured_value(value: Stated[str], uncertainty: Stated[str] | None, dimension: str) -> Measure:
    """One value of a dimension with its expanded uncertainty as limits; without limits where none was recorded.

    :raises MisreadError: for a value or an uncertainty that cannot be so read.
    """
    found = _read(value, dimension)
    if uncertainty is None:
        return found
    half = _read(uncertainty, _of_difference(dimension), positive=True).nominal
    return as_range(found.nominal - half, found.nominal + half, found, value.where)


def sizes_of(
    measured: Mapping[str, MeasuredDimension], drawn: Spec
) -> tuple[tuple[MeasuredSize, QuantityAt], ...]:
    """What was measured last under each key of the spec that a part was made to, with what the kind takes there.

    What cannot be read is left out: the loader has told it.
    """
    last: dict[str, tuple[MeasuredSize, QuantityAt]] = {}
    for size, at in all_sizes_of(measured, drawn):
        if at.key not in last or size.date >= last[at.key][0].date:
            last[at.key] = size, at
    return tuple(last.values())


def all_sizes_of(
    measured: Mapping[str, MeasuredDimension], drawn: Spec
) -> Iterator[tuple[MeasuredSize, QuantityAt]]:
    """All that was measured under each key, on every day, in the order of the record; what is misread is left out."""
    known = quantities_of(drawn)
    for name, entry in measured.items():
        at = known.get(key_of(name, entry).value)
        if at is None:
            continue
        try:
            yield measured_size(name, entry, at), at
        except MisreadError:
            continue


class MisreadError(ValueError):
    """A measured value that cannot be read: its place, what is wrong, what was read and what to write instead."""

    def __init__(self, where: Location, said: str, read: str, write: str) -> None:
        super().__init__(said)
        self.where, self.said, self.read, self.write = where, said, read, write


def _placed(one: MeasuredValue, at: QuantityAt) -> PlacedValue:
    if isinstance(one.value, NotStated):
        raise MisreadError(one.value.where, "a value is missing here", "", "the value as read")
    found = _read(one.value, at.dimension)
    if at.span is not None and not at.span.holds(found):
        said = f"{at.key} lies in {at.span}"
        raise MisreadError(one.value.where, said, one.value.value, "the value in its right unit")
    along, turned = (
        place.nominal if isinstance(place, Measure) else None for place in (one.along, one.round)
    )
    return PlacedValue(found, along, turned)


def _read(text: Stated[str], dimension: str, *, positive: bool = False) -> Measure:
    """A text as a quantity without limits."""
    try:
        found = read(text.value, dimension, "positive" if positive else "any", text.where)
    except QuantityError as problem:
        raise MisreadError(text.where, str(problem), text.value, problem.instead) from problem
    if not found.exact or found.tolerance_class:
        said = "what was measured has no limits: its uncertainty stands under uncertainty"
        raise MisreadError(text.where, said, text.value, "the number and its unit alone")
    return found


def _of_difference(dimension: str) -> str:
    """The dimension of a difference between two quantities of one."""
    return {"temperature": "temperature difference", "fluid pressure": "pressure"}.get(dimension, dimension)


_ZERO_CELSIUS = 273.15  # exact: definition of the Celsius temperature
#: Figures of a number in its unit: what floats leave lies beyond the first; fewer where a range would be too long, as
#: it is with the zeros before those of a size below a thousandth of its unit.
_FIGURES = (12, 9, 7, 6)
_MOST_DIGITS = 20  # that a range may have (speclint.quantities.read)


def _in_unit(value: float, like: Measure, figures: int) -> str:
    """The number of a SI value in the unit in which another quantity of its dimension is written."""
    if like.dimension.startswith("temperature"):
        kelvins = value if like.dimension != "temperature" or like.unit == "K" else value - _ZERO_CELSIUS
        shown = kelvins * 1.8 + (32 if like.unit == "°F" else 0) if "°F" in like.unit else kelvins
    else:
        plain = "pressure" if like.dimension == "fluid pressure" else like.dimension
        shown = value / units.factor(like.unit, plain)
    return f"{shown:.{figures}g}"
