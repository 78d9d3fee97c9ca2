"""The base of every spec: a table that knows its place, and what any component states."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from functools import cache
from typing import TYPE_CHECKING, Annotated, Any, ClassVar, NamedTuple, Self, TypeVar

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    ModelWrapValidatorHandler,
    PrivateAttr,
    ValidationError,
    model_validator,
)

from speclint.errors import NOWHERE, Location
from speclint.quantities import Measure
from speclint.specs import fields_read
from speclint.specs.fields import FOR_REVIEW, NOT_STATED, Link, NotStated, Remark, Word
from speclint.specs.geometry import Conditions, FitsIn, conditions_of
from speclint.specs.taking_over import TakenOver, own_places
from speclint.specs.toml_values import Table, bare

#: In a file of several parts such a mark stands for the name of each: the word is that of the list of names.
MARK = r"\{([A-Za-z][A-Za-z0-9_-]*)\}"

V = TypeVar("V")
T = TypeVar("T", bound="SpecTable")

#: Words of a spec that say nothing of the part itself: a rule that does not read one does not depend on it.
OF_THE_DRAWING = frozenset({"title", "prepared_by", "checked_by"})


class SpecTable(BaseModel):
    """A table of a spec: frozen, closed to unknown keys, and knowing its place.

    Every field has a default: what a spec does not state makes a check not assessed, it does not make the
    spec unreadable. A field left out becomes a :class:`~speclint.specs.fields.NotStated` that knows the key
    it would have had.

    Modules of tables are written without ``from __future__ import annotations``: pydantic would compile each text, and
    again for every class that is built on the table.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True, arbitrary_types_allowed=True)

    kind: ClassVar[str] = ""
    #: The geometry that must hold between the keys of the table, beside that of the tables it is built on.
    geometry: ClassVar[Conditions] = ()
    #: Keys of the table that are read for one more edition, each with what is written now in its place.
    old_keys: ClassVar[Mapping[str, str]] = {}

    _where: Location = PrivateAttr(default_factory=lambda: NOWHERE)  # a default is copied for each table

    if not TYPE_CHECKING:  # or any name would pass for a field

        @property
        def __dict__(self) -> dict[str, Any]:
            """The fields with their values; each counts as read."""
            return fields_read.every_field(self)

        @__dict__.setter
        def __dict__(self, values: dict[str, Any]) -> None:
            fields_read.place_fields(self, values)

        def __getattr__(self, name: str) -> Any:
            """A field that was not read yet since the noting began, or whatever else is asked for."""
            return fields_read.first_read(self, name, super().__getattr__)

    @classmethod
    def __pydantic_init_subclass__(cls, **kwargs: Any) -> None:
        """Refuse a class to build on that would give tables a dictionary of its own, past what notes each reading.

        :raises TypeError: naming that class.
        """
        super().__pydantic_init_subclass__(**kwargs)
        holder = next(base for base in cls.__mro__ if "__dict__" in vars(base))
        if holder is not SpecTable:
            raise TypeError(
                f"{holder.__name__}, on which {cls.__name__} is built, is to state __slots__ = ()"
            )

    @model_validator(mode="wrap")
    @classmethod
    def _remember_places(cls, data: Any, handler: ModelWrapValidatorHandler[SpecTable]) -> SpecTable:
        table = handler(data)
        if broken := [
            detail for one in conditions_of(cls) for detail in one.details(fields_read.fields_of(table))
        ]:
            raise ValidationError.from_exception_data(cls.__name__, broken)
        if isinstance(data, Table):
            table._place(data.where, data.unstated_at)
        else:
            table._place(NOWHERE)
        return table

    @classmethod
    def unstated(cls) -> Self:
        """The table with nothing stated in it, as the default of a field: no validator is built for it."""
        return cls.model_construct()  # type: ignore[return-value]

    def _place(self, where: Location, unstated_at: Location | None = None) -> None:
        self._where = where
        prefix = f"{where.key}." if where.key else ""
        values = fields_read.fields_of(self)
        for name, value in values.items():
            if value is NOT_STATED:
                at = where if unstated_at is None or name in own_places(type(self)) else unstated_at
                values[name] = NotStated(at.at(prefix + name))
            elif isinstance(value, SpecTable) and name not in self.model_fields_set:
                # a default table may be shared between specs: place a copy
                values[name] = placed = value.model_copy(update=_unplaced(value))
                placed._place((unstated_at or where).at(prefix + name))
        fields_read.place_fields(self, values)

    @property
    def where(self) -> Location:
        """Where the table begins."""
        private = self.__pydantic_private__  # asked for often, and slow by its name
        return private["_where"] if private else NOWHERE


def _unplaced(table: SpecTable) -> dict[str, NotStated]:
    return {
        name: NOT_STATED
        for name, value in fields_read.fields_of(table).items()
        if isinstance(value, NotStated)
    }


class Spec(SpecTable):
    """One TOML file: what every spec states, whatever its kind.

    ``kind`` is the word a spec writes, ``called`` what a report calls it.
    What a spec states with ``like`` or ``mirror_of`` is only what differs from the other (``taken_over``).
    """

    kind: ClassVar[str] = ""
    called: ClassVar[str] = ""
    #: What must fit in a part that the spec is linked to.
    hosts: ClassVar[tuple[FitsIn, ...]] = ()

    id: str
    like: Word[str] = NOT_STATED
    mirror_of: Word[str] = NOT_STATED
    each: Annotated[tuple[str, ...], BeforeValidator(bare)] = ()
    title: Word[str] = NOT_STATED
    drawing: Word[str] = NOT_STATED
    revision: Remark = NOT_STATED
    prepared_by: Annotated[Word[str], FOR_REVIEW] = NOT_STATED
    checked_by: Annotated[Word[str], FOR_REVIEW] = NOT_STATED
    notes: Annotated[dict[str, Any], BeforeValidator(bare)] = {}

    _taken_over: TakenOver | None = PrivateAttr(default=None)

    @property
    def taken_over(self) -> TakenOver | None:
        """What the spec takes over from the one that it is like, or the mirror of; None where it states everything."""
        return self._taken_over

    def takes_over(self, taken: TakenOver) -> None:
        """Remember what was taken over; for the loader."""
        self._taken_over = taken

    @classmethod
    def words(cls) -> tuple[str, ...]:
        """The word of the kind, then those of the kinds that it is built on, the nearest first."""
        return _words(cls)

    @classmethod
    def is_one_of(cls, kinds: Collection[str]) -> bool:
        """Whether the kind, or one that it is built on, is among some, such as those that a link may lead to."""
        return any(word in kinds for word in _words(cls))

    @classmethod
    def by_kind(cls, table: Mapping[str, V]) -> V:
        """What a table by kind says of the kind, or else of the nearest that it is built on.

        :raises LookupError: when it names none of them.
        """
        for word in _words(cls):
            if word in table:
                return table[word]
        raise LookupError(f"the table by kind names no {cls.kind}")

    def under(self, key: str) -> Measure | NotStated:
        """The quantity under a dotted key, such as "pads.front.width" or "pistons_for.1".

        :raises LookupError: when the key leads nowhere, or to something that is no quantity.
        """
        value: object = self
        for part in key.split("."):
            value = _entry(value, part)
        if not isinstance(value, Measure | NotStated):
            raise LookupError(key)
        return value

    def table_of(self, holds: type[T]) -> T:
        """The table that a family adds to the kind, by its class; its values are taken through a sheet.

        :raises LookupError: where no family adds it to the kind.
        """
        for name, value in fields_read.fields_of(self).items():
            if isinstance(value, holds):
                return getattr(self, name)  # type: ignore[no-any-return]
        raise LookupError(f"no family adds a table {holds.__name__} to a {self.kind}")

    def links(self) -> Iterator[Link[Any]]:
        """Every link that the spec and its tables state, in the order of the fields."""
        return (value for value in _values_in(self) if isinstance(value, Link))

    def at_keys(self) -> Iterator[tuple[str, Any]]:
        """Every value that has a place, stated or not, with its dotted key, in the order of the fields."""
        return ((one.key, one.value) for one in leaves(self) if hasattr(one.value, "where"))

    def measures(self) -> Iterator[Measure]:
        """Every quantity that the spec and its tables state, in the order of the fields."""
        return (value for value in _values_in(self) if isinstance(value, Measure))


@cache
def _words(kind: type[Spec]) -> tuple[str, ...]:
    words = (base.kind for base in kind.__mro__ if issubclass(base, Spec) and base.kind)
    return tuple(dict.fromkeys(words))


def _entry(value: object, part: str) -> object:
    """What a table, a named table or a list holds under one part of a key."""
    if isinstance(value, SpecTable) and part in type(value).model_fields:
        return getattr(value, part)
    if isinstance(value, Mapping) and part in value:
        return value[part]
    if isinstance(value, tuple) and part.isdecimal() and int(part) < len(value):
        return value[int(part)]
    raise LookupError(part)


#: What holds values of a spec, rather than being one.
_HOLDERS = (SpecTable, tuple, list, Mapping)


def _values_in(holder: SpecTable | Mapping[str, object] | Iterable[object]) -> Iterator[object]:
    """Whatever is stated in a table, named tables or a list, down to the innermost table."""
    named = holder.__dict__ if isinstance(holder, SpecTable) else holder
    for inner in named.values() if isinstance(named, Mapping) else named:
        if isinstance(inner, NotStated):
            continue
        if isinstance(inner, _HOLDERS):
            yield from _values_in(inner)
        else:
            yield inner


class Leaf(NamedTuple):
    """A value, stated or not, at its dotted key, with the table and the field of it that declare it."""

    key: str
    value: object
    table: type[SpecTable]
    field: str


def leaves(table: SpecTable, prefix: str = "") -> Iterator[Leaf]:
    """Every value of a table, down to the innermost table, in the order of the fields."""
    for field, value in table.__dict__.items():
        yield from _leaves_of(value, f"{prefix}{field}", type(table), field)


def _leaves_of(value: object, key: str, table: type[SpecTable], field: str) -> Iterator[Leaf]:
    if isinstance(value, SpecTable):
        yield from leaves(value, f"{key}.")
    elif isinstance(value, Mapping):
        for name, inner in value.items():
            yield from _leaves_of(inner, f"{key}.{name}", table, field)
    elif isinstance(value, tuple | list):
        for number, inner in enumerate(value):
            yield from _leaves_of(inner, f"{key}[{number}]", table, field)
    else:
        yield Leaf(key, value, table, field)
