"""The words of a spec that are looked up in a list: each with the list, and where it stands."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from speclint.specs.fields import Stated
from speclint.specs.key_descriptions import looked_up_in
from speclint.specs.listed_in import ListedIn
from speclint.specs.spec import SpecTable


def listed_words(table: SpecTable) -> Iterator[tuple[ListedIn, Stated[str]]]:
    """Each stated word of a table, and of those within it, whose field says in which list it is looked up."""
    for name, field in type(table).model_fields.items():
        mark, value = looked_up_in(field), getattr(table, name)
        for one in _each(value):
            if isinstance(one, SpecTable):
                yield from listed_words(one)
            elif mark is not None and isinstance(one, Stated):
                yield mark, one


def _each(value: object) -> Iterator[object]:
    if isinstance(value, Mapping):
        yield from value.values()
    elif isinstance(value, tuple):
        yield from value
    else:
        yield value
