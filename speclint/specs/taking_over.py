"""What a spec takes over from another of its kind, under ``like`` or ``mirror_of``, and what its fields say of it.

A field that says where the part sits, or what it touches, is marked ``OWN_PLACE``, and is never taken over. A size
that is set where the part is fitted, or comes of running, is marked ``AS_FITTED``. A word or a number by which the shop
makes another part is marked ``MADE_SO``, or ``DONE_OR_NOT`` where leaving it out makes one too. A field that changes
on the other side of the engine says how, beside its type::

    housed_in: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    clearance_open: Annotated[Length, AS_FITTED] = NOT_STATED
    law: Annotated[Word[Law], MADE_SO] = NOT_STATED
    angle: Annotated[Angle, Mirrors("round the axis")] = NOT_STATED
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from typing import Any, Literal, get_args

from msgspec import Struct

from speclint.errors import NOWHERE, Location

#: How a value mirrors: it stays; it changes its sign; left and right change places; an angle a becomes 360° − a.
Mirroring = Literal["keep", "negate", "swap", "round the axis"]


class OwnPlace(Struct, frozen=True):
    """Annotation of a field that each part states for itself: see ``OWN_PLACE``."""


#: Marks a field that says where a part sits or what it touches: a part that is like another states its own.
OWN_PLACE = OwnPlace()


#: Who prepared and who checked a spec: taken over only where nothing differs from what they signed.
SIGNED = frozenset({"prepared_by", "checked_by"})


class AsFitted(Struct, frozen=True):
    """Annotation of a size that stands on no drawing of the part: see ``AS_FITTED``."""


#: Marks a size that is set where the part is fitted, or that comes of running, such as a clearance or wear.
AS_FITTED = AsFitted()


class MadeSo(Struct, frozen=True):
    """Annotation of a word or a number of which another makes another part: see ``MADE_SO``.

    ``alone`` where it makes another part, too, than one that leaves it out: see ``DONE_OR_NOT``.
    """

    alone: bool = False


#: Marks what a drawing gives the shop beside lengths, angles and the metal, such as the law of a cam, the hand of a
#: spring, shot peening or a hardness; not how a part is held or fitted.
MADE_SO = MadeSo()
#: Marks a finish, a skin or a general class: a part on whose drawing it does not stand is made without it.
DONE_OR_NOT = MadeSo(alone=True)


class TakenWhole(Struct, frozen=True):
    """Annotation of named tables that are each taken over as a whole, or not at all: see ``TAKEN_WHOLE``."""


#: Marks named tables of which one stated here replaces the other's, such as a load case: it is one moment.
TAKEN_WHOLE = TakenWhole()


class Mirrors(Struct, frozen=True):
    """Annotation of a field that is another in a part of the other hand; a field without it is the same."""

    how: Mirroring


class Difference(Struct, frozen=True):
    """A key that is stated here and in the spec taken over from, both as written; ``where`` is the place here."""

    where: Location
    here: str
    there: str


class TakenOver(Struct, frozen=True):
    """What a spec takes over from another.

    ``id`` is that of the other, and ``where`` the place that names it. ``differs`` are the keys that both state with
    other values, ``said_twice`` those with the same value; ``places`` are the keys of the other that each part
    states for itself, and that are not stated here. ``turned`` are the keys whose values are mirrored: those stated are
    not those of the drawing. ``notes`` are the words of the spec's own notes.
    """

    id: str
    mirrored: bool = False
    where: Location = NOWHERE
    differs: tuple[Difference, ...] = ()
    said_twice: tuple[Location, ...] = ()
    places: tuple[Location, ...] = ()
    turned: frozenset[str] = frozenset()
    notes: str = ""


class FieldTaken(Struct, frozen=True):
    """What a model says of one field that may be taken over; ``inner`` is the table of which it holds one or many."""

    own_place: bool
    as_fitted: bool
    made_so: bool
    done_or_not: bool
    whole: bool
    mirroring: Mirroring
    dimension: str
    inner: type | None
    many: bool


@cache
def fields_taken(table: type) -> Mapping[str, FieldTaken]:
    """What the fields of a table say of being taken over, by name."""
    table.model_rebuild()  # type: ignore[attr-defined]  # so that tables named before they are defined are known
    found: dict[str, FieldTaken] = {}
    for name, field in table.model_fields.items():  # type: ignore[attr-defined]  # a table of a spec
        marks = field.metadata
        inner, many = _inner(field.annotation)
        found[name] = FieldTaken(
            own_place=any(isinstance(mark, OwnPlace) for mark in marks),
            as_fitted=any(isinstance(mark, AsFitted) for mark in marks),
            made_so=any(isinstance(mark, MadeSo) for mark in marks),
            done_or_not=DONE_OR_NOT in marks,
            whole=any(isinstance(mark, TakenWhole) for mark in marks),
            mirroring=next((mark.how for mark in marks if isinstance(mark, Mirrors)), "keep"),
            dimension=next((mark.dimension for mark in marks if hasattr(mark, "dimension")), ""),
            inner=inner,
            many=many,
        )
    return found


@cache
def own_places(table: type) -> frozenset[str]:
    """The fields of a table that each part states for itself, or that whoever signs it does."""
    return frozenset(name for name, one in fields_taken(table).items() if one.own_place or name in SIGNED)


@cache
def is_own_place(table: type, key: str) -> bool:
    """Whether a dotted key of a table, or a table that it leads through, is stated by each part for itself."""
    return _leads_through(table, key, lambda about: about.own_place)


@cache
def is_on_no_drawing(table: type, key: str) -> bool:
    """The same of what each part states for itself, or what is set where it is fitted and comes of running."""
    return _leads_through(table, key, lambda about: about.own_place or about.as_fitted)


def _leads_through(table: type, key: str, marked: Callable[[FieldTaken], bool]) -> bool:
    """Whether a dotted key of a table, or a table on its way, is marked."""
    step, _, rest = key.partition(".")
    about = fields_taken(table).get(step)
    if about is None:
        return False
    if marked(about) or not rest or about.inner is None:
        return marked(about)
    return _leads_through(about.inner, rest.partition(".")[2] if about.many else rest, marked)


def _inner(annotation: Any) -> tuple[type | None, bool]:
    """The table within a field, and whether the field holds many of it by name."""
    if isinstance(annotation, type) and hasattr(annotation, "model_fields"):
        return annotation, False
    if getattr(annotation, "__origin__", None) is dict:
        inner, _ = _inner(get_args(annotation)[1])
        return inner, True
    return None, False
