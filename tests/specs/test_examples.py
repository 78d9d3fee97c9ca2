"""Examples of what a key may be written as, in blanks and schemas."""

from __future__ import annotations

from collections.abc import Iterator
from typing import get_args

import pytest

from speclint.handbook.materials import names
from speclint.specs import Catalogue, SpecTable
from speclint.specs.examples import example_for
from speclint.specs.listed_in import MATERIALS


@pytest.mark.parametrize("kind", sorted(Catalogue()))
def test_every_metal_of_a_blank_is_one_of_the_library(kind: str) -> None:
    """Also where a table within states it: each is a name that ``speclint names materials`` lists."""
    known = set(names())
    pending: list[type[SpecTable]] = [Catalogue()[kind]]
    seen: set[type[SpecTable]] = set()
    while pending:
        table = pending.pop()
        seen.add(table)
        for name, field in table.model_fields.items():
            if MATERIALS in field.metadata:
                assert example_for(name, field, table) in known, (table, name)
            pending += [one for one in tables_within(field.annotation) if one not in seen]


def tables_within(annotation: object) -> Iterator[type[SpecTable]]:
    """The tables that a field takes, alone, in a list or by name."""
    if isinstance(annotation, type) and issubclass(annotation, SpecTable):
        yield annotation
    for member in get_args(annotation):
        yield from tables_within(member)


@pytest.mark.parametrize(
    ("kind", "key", "example"),
    [
        ("cylinder-liner", "material", "phosphoric-cylinder-iron"),
        ("bolted-joint", "material", "bolting-42CrMo4"),
        ("rocker", "bush_material", "bronze-CC483K"),
        ("poppet-valve", "beats", 2),
        ("bolted-joint", "count", 4),
        ("bolted-joint", "thread", "M24"),
    ],
)
def test_an_example_is_of_the_part_whose_blank_it_stands_in(kind: str, key: str, example: object) -> None:
    table = Catalogue()[kind]
    assert example_for(key, table.model_fields[key], table) == example
