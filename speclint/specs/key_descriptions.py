"""What each key of a spec takes: in words, by example, and whether it is a table of its own."""

from __future__ import annotations

import re
from typing import Any, Literal, get_args, get_origin

from pydantic.fields import FieldInfo

from speclint.quantities import example
from speclint.specs.component import Component
from speclint.specs.fields import Link, Quantity, Stated
from speclint.specs.spec import Spec, SpecTable

_QUOTED = re.compile(r'"([^"]+)"')

#: A word that a drawing might have where any text is taken, by key.
_WORDS = {
    "id": "liner-left",
    "title": "Cylinder liner, left hand",
    "drawing": "CN-C-1211",
    "revision": "A",
    "prepared_by": "J. Ostler",
    "checked_by": "M. Coyle",
    "material": "phosphoric-cylinder-iron",
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
    """What a key of a spec takes, in words."""
    for mark in field.metadata:
        if isinstance(mark, Quantity):
            return f'{mark.dimension}, such as "{examples_of(mark.dimension)[0]}"'
    for member in get_args(field.annotation):
        if get_origin(member) is Stated:
            return _word(get_args(member)[0])
        if get_origin(member) is Link:
            return "the id of a " + " or ".join(_targets(member))
        if quantity := quantity_in(member):
            several = "each by its name" if get_origin(field.annotation) is dict else "a list"
            return f'{several}, {quantity.dimension}, such as "{examples_of(quantity.dimension)[0]}"'
    return {str: "text"}.get(field.annotation, "data of your own")  # type: ignore[arg-type]


def _targets(link: Any) -> list[str]:
    target = get_args(link)[0]
    return [kind.kind for kind in get_args(target) or (target,)]


def _word(wanted: Any) -> str:
    if get_origin(wanted) is Literal:
        return "one of " + ", ".join(f'"{choice}"' for choice in get_args(wanted))
    return {str: "text", int: "a whole number", bool: "true or false"}[wanted]


def examples_of(dimension: str) -> list[str]:
    """How quantities of a dimension may be written, without the quotes."""
    return _QUOTED.findall(example(dimension))


def quantity_in(annotation: Any) -> Quantity | None:
    """The quantity that a list or a named table of values holds; None for anything else."""
    return next(
        (mark for mark in getattr(annotation, "__metadata__", ()) if isinstance(mark, Quantity)), None
    )


def example_for(name: str, field: FieldInfo) -> str | int | bool | None:
    """A value that the key takes, as TOML has it; None where it takes a table or a list."""
    for mark in field.metadata:
        if isinstance(mark, Quantity):
            return examples_of(mark.dimension)[0]
    for member in get_args(field.annotation):
        if get_origin(member) is Stated:
            return _example_word(name, get_args(member)[0])
        if get_origin(member) is Link:
            return f"{_targets(member)[0]}-left"
    return _WORDS.get(name, "text") if field.annotation is str else None


def _example_word(name: str, wanted: Any) -> str | int | bool:
    if get_origin(wanted) is Literal:
        choice: str | int | bool = get_args(wanted)[0]
        return choice
    if wanted is str:
        return _WORDS.get(name, name.replace("_", " "))
    return True if wanted is bool else 4
