"""What a spec may state: measures, words, counts and links, each knowing where it was written.

A field of a spec is never a bare number. It is a :class:`~speclint.quantities.measure.Measure`, a
:class:`Stated` word, count or yes/no, a :class:`Link` to another component, or :class:`NotStated`.
Only a sheet opens them, so whatever a rule uses has been written down.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Mapping
from typing import Annotated, Any, ClassVar, Generic, Literal, Protocol, TypeVar, get_args, get_origin

from msgspec import Struct
from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, core_schema

from speclint.errors import NOWHERE, Location, QuantityError, one_of, replace, shortened
from speclint.quantities import PROVENANCES, Measure, Sign, example, read
from speclint.specs.nothing_named import names_nothing
from speclint.specs.spans import Span, refusal
from speclint.specs.toml_values import Leaf, Table, opened


class _Kind(Protocol):
    """What a link may lead to: something with the word that a spec writes for its kind."""

    kind: ClassVar[str]


#: Characters of an id: common practice, more than a line of a report holds.
LONGEST_ID = 100
T = TypeVar("T")
C = TypeVar("C", bound=_Kind)


class NotStated(Struct, frozen=True):
    """A value that the spec does not give: which key it would have, and in which file."""

    where: Location = NOWHERE


class Stated(Struct, Generic[T], frozen=True):
    """A word, a count or a yes/no as stated."""

    value: T
    where: Location = NOWHERE


class Link(Struct, Generic[C], frozen=True):
    """The id of another spec, and the kinds that it may lead to, by their words."""

    id: str
    kinds: tuple[str, ...]
    where: Location = NOWHERE


NOT_STATED = NotStated()


class Deciding(Struct, frozen=True):
    """Annotation of a field that decides who answers for a part, or by what it is judged: see ``FOR_REVIEW``."""


#: Marks a field whose change a reviewer is to see: ``Annotated[Word[str], FOR_REVIEW]``. Yes/no and words that are
#: chosen from a list need no mark: they decide which rules apply, and how grave a finding is, by their nature.
FOR_REVIEW = Deciding()


class Quantity(Struct, frozen=True):
    """Annotation of a measure: its dimension, whether it may be zero or negative, and an example."""

    dimension: str
    sign: Sign = "positive"

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return _plain(self.read, {"type": "quantity", "dimension": self.dimension})

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return {"anyOf": [{"type": "string"}, _PROVENANCE_TABLE], "x-dimension": self.dimension}

    def read(self, raw: object) -> Measure | NotStated:
        """Read a string, or a table of value, from and note."""
        if isinstance(raw, Measure | NotStated):
            return raw
        if isinstance(raw, Mapping):
            return self._read_table(raw)
        value, where = opened(raw)
        if self.dimension == "ratio" and type(value) in (int, float):
            raise refusal("a number that may have limits is written as text", f'"{value}"')
        if not isinstance(value, str):
            raise refusal(f"a {self.dimension} is written as text with its unit", example(self.dimension))
        try:
            return read(value, self.dimension, self.sign, where)
        except QuantityError as problem:
            raise refusal(str(problem), problem.instead) from problem

    def _read_table(self, table: Mapping[str, object]) -> Measure | NotStated:
        unknown = sorted(set(table) - {"value", "from", "note"})
        if unknown or "value" not in table:
            wrong = (
                f'"{shortened(unknown[0])}" is no key of a quantity'
                if unknown
                else "a quantity written as a table needs value"
            )
            raise refusal(wrong, '{ value = "480 mm", from = "measured", note = "…" }')
        measure = self.read(table["value"])
        origin, _ = opened(table.get("from", "drawing"))
        note, _ = opened(table.get("note", ""))
        provenance = next((word for word in PROVENANCES if word == origin), None)
        if provenance is None or not isinstance(note, str) or not isinstance(measure, Measure):
            raise refusal(
                f'"{shortened(str(origin))}" is no provenance',
                "from = one of " + ", ".join(f'"{p}"' for p in PROVENANCES),
            )
        where = table.where if isinstance(table, Table) else measure.where
        return replace(measure, provenance=provenance, note=note, where=where)


_PROVENANCE_TABLE = {
    "type": "object",
    "properties": {
        "value": {"type": "string"},
        "from": {"enum": list(PROVENANCES)},
        "note": {"type": "string"},
    },
    "required": ["value"],
    "additionalProperties": False,
}


class _Words:
    """Annotation of a word, count, yes/no or day: checks against the type inside ``Stated[...]``.

    A text is to name something, and "none" or "-" does not, but where ``nothing`` is an answer too.
    """

    def __init__(self, *, nothing: bool = False) -> None:
        self._nothing = nothing

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        wanted = _argument_of(source, Stated)
        return _plain(_stated_reader(wanted, self._nothing), {"type": "word", "wanted": wanted})

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        wanted = schema["metadata"]["wanted"]
        if get_origin(wanted) is Literal:
            return {"enum": list(get_args(wanted))}
        if wanted is dt.date:
            return {"type": "string", "format": "date"}
        return {"type": {str: "string", int: "integer", bool: "boolean"}[wanted]}


class _Links:
    """Annotation of a link: remembers which kinds it may lead to."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        target = _argument_of(source, Link)
        kinds = tuple(one.kind for one in get_args(target) or (target,))
        return _plain(_link_reader(kinds), {"type": "link", "kinds": list(kinds)})

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return {"type": "string", "x-link-to": schema["metadata"]["kinds"]}


class OneOrMore:
    """Annotation of a list of links: one alone may be written without brackets.

    ``follows: Annotated[tuple[LinkTo[Pipe], ...], OneOrMore()] = ()``.
    """

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_before_validator_function(_listed, handler(source))

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        several = handler(schema["schema"])
        return {"anyOf": [several["items"], several]}


def _listed(raw: object) -> object:
    return (raw,) if isinstance(raw, Leaf | Link | str) else raw


def _plain(reader: Callable[[object], object], metadata: dict[str, Any]) -> CoreSchema:
    return core_schema.no_info_plain_validator_function(reader, metadata=metadata)


def _argument_of(source: Any, wrapper: type) -> Any:
    for member in get_args(source):
        if get_origin(member) is wrapper:
            return get_args(member)[0]
    raise TypeError(f"{source!r} does not contain {wrapper.__name__}[...]")


def _stated_reader(wanted: Any, nothing: bool) -> Callable[[object], Stated[Any] | NotStated]:
    choices = get_args(wanted) if get_origin(wanted) is Literal else ()

    def reader(raw: object) -> Stated[Any] | NotStated:
        if isinstance(raw, Stated | NotStated):
            return raw
        value, where = opened(raw)
        if choices:
            if value not in choices:
                raise refusal("this is not one of the words used here", _one_of(value, choices))
        elif type(value) is not wanted:
            raise refusal(f"this is not {_CALLED[wanted]}", _INSTEAD[wanted])
        elif type(value) is int and not 0 <= value <= _MOST:
            raise refusal(f"a count lies between 0 and {_MOST}", _INSTEAD[int])
        elif type(value) is str and not value.strip():
            raise refusal("the text is empty", "the text itself, or leave the key out")
        elif type(value) is str and not nothing and names_nothing(value):
            raise refusal("this names nothing", "what it is, or leave the key out")
        return Stated(value, where)

    return reader


def _one_of(value: object, choices: tuple[Any, ...]) -> str:
    """The words to write instead: the nearest of many, all of few."""
    if len(choices) > _FEW and isinstance(value, str):
        return one_of(value, choices)
    return "one of " + ", ".join(f'"{choice}"' for choice in choices)


_FEW = 12  # words that are all written out; common practice, a line or two of a report
_MOST = 10**9  # of a count; common practice, more than the cycles of any part
_CALLED = {str: "text", int: "a whole number", bool: "yes or no", dt.date: "a date"}
_INSTEAD = {
    str: 'text in quotes: "…"',
    int: "a whole number without quotes: 16",
    bool: "true or false",
    dt.date: "a date without quotes: 2027-05-31",
}


def _link_reader(kinds: tuple[str, ...]) -> Callable[[object], Link[Any] | NotStated]:
    def reader(raw: object) -> Link[Any] | NotStated:
        if isinstance(raw, Link | NotStated):
            return raw
        value, where = opened(raw)
        if not isinstance(value, str) or not value:
            raise refusal("a link is the id of another spec", f"the id of a {' or '.join(kinds)} in quotes")
        if len(value) > LONGEST_ID:
            raise refusal(f"an id has at most {LONGEST_ID} characters", f"the id of a {' or '.join(kinds)}")
        return Link(value, kinds, where)

    return reader


#: A word, a count, a yes/no or a day: ``Word[str]``, ``Word[int]``, ``Word[bool]``, ``Word[Literal["a", "b"]]``,
#: ``Word[date]``.
Word = Annotated[Stated[T] | NotStated, _Words()]
#: A text in which "none" or a stroke is an answer too: how a part is examined, or a revision before the first change.
Remark = Annotated[Stated[str] | NotStated, _Words(nothing=True)]
#: A link: ``LinkTo[CylinderBlock]``.
LinkTo = Annotated[Link[C] | NotStated, _Links()]

# The spans of the types are those of any part of an engine; a field narrows them to its own (see spans).
Length = Annotated[Measure | NotStated, Quantity("length"), Span("0.1 µm", "100 m")]
#: A length that may be zero, such as an allowance.
Allowance = Annotated[Measure | NotStated, Quantity("length", "not negative"), Span("0.1 µm", "100 m")]
#: A length counted from a datum in either direction.
Position = Annotated[Measure | NotStated, Quantity("length", "any"), Span("0.1 µm", "100 m")]
Area = Annotated[Measure | NotStated, Quantity("area"), Span("0.1 mm²", "100 m²")]
#: An area that may be nothing, such as that of the ends of a passage that is open at both.
NoArea = Annotated[Measure | NotStated, Quantity("area", "not negative"), Span("0.1 mm²", "100 m²")]
Volume = Annotated[Measure | NotStated, Quantity("volume"), Span("1 mm³", "100 m³")]
#: Of a section in bending.
SectionModulus = Annotated[Measure | NotStated, Quantity("volume"), Span("100 mm³", "0.1 m³")]
Angle = Annotated[Measure | NotStated, Quantity("angle", "any"), Span("0.001 °", "3600 °")]
Mass = Annotated[Measure | NotStated, Quantity("mass"), Span("0.1 g", "300 t")]
#: A mass that may be nothing, such as that of a balance weight.
NoMass = Annotated[Measure | NotStated, Quantity("mass", "not negative"), Span("0.1 g", "300 t")]
Density = Annotated[Measure | NotStated, Quantity("density"), Span("1 kg/m³", "25000 kg/m³")]
Force = Annotated[Measure | NotStated, Quantity("force", "not negative"), Span("0.01 N", "100 MN")]
#: A force in either direction along an axis.
SignedForce = Annotated[Measure | NotStated, Quantity("force", "any"), Span("0.01 N", "100 MN")]
Moment = Annotated[Measure | NotStated, Quantity("moment"), Span("1 N·mm", "10000 kN·m")]
Pressure = Annotated[
    Measure | NotStated, Quantity("fluid pressure", "any"), Span("0.01 mbar gauge", "1000 bar gauge")
]
Stress = Annotated[Measure | NotStated, Quantity("stress"), Span("1 Pa", "2000 GPa")]
Stiffness = Annotated[Measure | NotStated, Quantity("stiffness"), Span("1 N/m", "1e6 kN/mm")]
Temperature = Annotated[Measure | NotStated, Quantity("temperature"), Span("50 K", "2000 K")]
TemperatureDifference = Annotated[
    Measure | NotStated, Quantity("temperature difference", "any"), Span("0.001 K", "2000 K")
]
Speed = Annotated[Measure | NotStated, Quantity("speed", "not negative"), Span("1e-5 m/s", "1000 m/s")]
#: Thickness that is lost in a year.
WastingRate = Annotated[
    Measure | NotStated, Quantity("wasting rate", "not negative"), Span("0.001 mm/year", "50 mm/year")
]
RotationalSpeed = Annotated[
    Measure | NotStated, Quantity("rotational speed", "not negative"), Span("0.01 rev/min", "20000 rev/min")
]
Fraction = Annotated[Measure | NotStated, Quantity("ratio", "not negative"), Span("1e-6", "1e6")]
#: A ratio that is never nothing, such as a loss of a stream.
Factor = Annotated[Measure | NotStated, Quantity("ratio"), Span("1e-6", "1e6")]
#: Of a steel: less than that of the softest iron in the trade is no analysis of one.
CarbonEquivalent = Annotated[Factor, Span("0.02 %", "5 %")]
Hardness = Annotated[Measure | NotStated, Quantity("Brinell hardness"), Span("10 HB", "1000 HB")]
MassFlow = Annotated[Measure | NotStated, Quantity("mass flow", "not negative"), Span("1 kg/h", "200 t/h")]
Duration = Annotated[Measure | NotStated, Quantity("time"), Span("0.001 s", "1e6 h")]
Inertia = Annotated[Measure | NotStated, Quantity("inertia"), Span("0.001 kg·cm²", "1e5 kg·m²")]
HeatTransfer = Annotated[Measure | NotStated, Quantity("heat transfer"), Span("0.1 W/(m²·K)", "1e5 W/(m²·K)")]
Conductivity = Annotated[
    Measure | NotStated, Quantity("thermal conductivity"), Span("0.001 W/(m·K)", "1000 W/(m·K)")
]
