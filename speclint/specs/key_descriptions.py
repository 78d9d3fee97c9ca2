"""What each key of a spec takes in words, and whether it is a table of its own."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from typing import Annotated, Any, Literal, get_args, get_origin

from pydantic.fields import FieldInfo

from speclint.specs.component import Component
from speclint.specs.examples import quantity_example, quantity_of
from speclint.specs.fields import Link, Stated
from speclint.specs.listed_in import ListedIn
from speclint.specs.spec import Spec, SpecTable
from speclint.specs.taking_over import Mirrors, OwnPlace

_MIRRORED = {
    "keep": "",
    "negate": "of the other hand with the other sign",
    "swap": "of the other hand the other word",
    "round the axis": "of the other hand 360° less it",
}


def own_first(table: type[SpecTable]) -> dict[str, FieldInfo]:
    """The keys of a table: those of its own first, after them those that every component or spec has."""
    common = set(Component.model_fields)
    fields = table.model_fields
    own = {name: field for name, field in fields.items() if name not in common or not issubclass(table, Spec)}
    return own | {name: field for name, field in fields.items() if name not in own}


def inner_table(annotation: Any) -> tuple[type[SpecTable] | None, str]:
    """The table within a field, and what stands for the name or number of each where there are several."""
    if isinstance(annotation, type) and issubclass(annotation, SpecTable):
        return annotation, ""
    for argument in () if get_origin(annotation) is Link else get_args(annotation):
        found, _ = inner_table(argument)
        if found is not None:
            return found, ".NAME" if get_origin(annotation) is dict else "[]"
    return None, ""


def said_of(field: FieldInfo) -> str:
    """What a key of a spec takes, in words, and what becomes of it in a part that is like another."""
    return "; ".join(filter(None, (_taken_by(field), _in_parts_alike(field))))


def _in_parts_alike(field: FieldInfo) -> str:
    if any(isinstance(mark, OwnPlace) for mark in field.metadata):
        return "each part states its own"
    how = next((mark.how for mark in field.metadata if isinstance(mark, Mirrors)), "keep")
    return _MIRRORED[how]


def _taken_by(field: FieldInfo) -> str:
    if found := quantity_of(field):
        several = {dict: "each by its name, ", tuple: "a list, "}.get(get_origin(field.annotation), "")  # type: ignore[arg-type]
        said = f'{several}{found[0].dimension}, such as "{quantity_example(field)}"'
        return f"{said}; {found[1]}" if found[1] else said
    annotation: Any = field.annotation
    listed = "a list, each " if get_origin(annotation) is tuple else ""
    if listed:
        member = get_args(annotation)[0]
        annotation = get_args(member)[0] if get_origin(member) is Annotated else member
    for member in get_args(annotation):
        if get_origin(member) is Stated:
            return listed + _word(get_args(member)[0], looked_up_in(field))
        if get_origin(member) is Link:
            return (
                "the id of a " + " or ".join(_targets(member)) + (", or a list of several" if listed else "")
            )
    if field.annotation == tuple[str, ...]:
        return "a list of texts"
    return {str: "text"}.get(annotation, "data of your own")


def listed_ids(field: FieldInfo) -> list[str]:
    """An example of the ids that a field takes a list of; empty for any other field."""
    link = _link_listed(field)
    return [f"{_targets(link)[0]}-{side}" for side in ("left", "right")] if link else []


def _link_listed(field: FieldInfo) -> Any:
    """The link that a field takes a list of; None for any other field."""
    if get_origin(field.annotation) is not tuple:
        return None
    item = get_args(field.annotation)[0]
    members = (*get_args(item), *(inner for one in get_args(item) for inner in get_args(one)))
    return next((one for one in members if get_origin(one) is Link), None)


def _targets(link: Any) -> list[str]:
    target = get_args(link)[0]
    return [kind.kind for kind in get_args(target) or (target,)]


def looked_up_in(field: FieldInfo) -> ListedIn | None:
    """The list in which the words of a field are looked up; None where there is none."""
    return next((mark for mark in field.metadata if isinstance(mark, ListedIn)), None)


def words_of(field: FieldInfo) -> tuple[str, ...]:
    """The words that a field fixes, of itself, of the members of its list or of the names of its table."""
    return tuple(dict.fromkeys(str(word) for word in _fixed(field.annotation)))


def _fixed(annotation: Any) -> Iterator[object]:
    if get_origin(annotation) is Literal:
        yield from get_args(annotation)
    elif get_origin(annotation) is not Link and not (
        isinstance(annotation, type) and issubclass(annotation, SpecTable)
    ):
        for argument in get_args(annotation):
            yield from _fixed(argument)


def linked_kinds(field: FieldInfo) -> tuple[str, ...]:
    """The kinds to which the links of a field lead."""
    return tuple(_linked(field.annotation))


def _linked(annotation: Any) -> Iterator[str]:
    if get_origin(annotation) is Link:
        yield from _targets(annotation)
    else:
        for argument in get_args(annotation):
            yield from _linked(argument)


def _word(wanted: Any, listed: ListedIn | None) -> str:
    if wanted is str and listed is not None:
        return f'text, such as "speclint names {listed.called}" lists'
    if get_origin(wanted) is Literal:
        return "one of " + ", ".join(f'"{choice}"' for choice in get_args(wanted))
    return {
        str: "text",
        int: "a whole number",
        bool: "true or false",
        dt.date: "a date without quotes, such as 2027-05-31",
    }[wanted]
