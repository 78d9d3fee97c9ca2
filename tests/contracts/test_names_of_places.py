"""Every key that names a place says where the name is looked up, and is not taken over by a part alike elsewhere.

A name that is looked up nowhere is told by nobody when it is misspelt; one that a part takes over from another puts
both into one place.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Annotated, Any, get_args, get_origin

import pytest

from speclint.specs import (
    NOT_STATED,
    OWN_PLACE,
    CylinderBlock,
    Link,
    LinkTo,
    NamedIn,
    Spec,
    SpecTable,
    Word,
    meanings,
)
from speclint.specs.key_descriptions import inner_table
from speclint.testing import installed_families

KINDS = installed_families().kinds

#: What an entry of a table is called in the description of a key that names one.
NAME_OF_A_PLACE = re.compile(
    r"\bname of (a|an|its|that|the)( [\w']+){0,3} "
    r"(bore|cavity|chamber|end|groove|link|opening|pad|plate|point|port|wall)\b"
)

#: Kinds that many parts share: they are no place.
SHARED = {"duty", "gauge-outline"}


def tables(
    table: type[SpecTable], path: str, links: frozenset[str]
) -> Iterator[tuple[str, Any, frozenset[str]]]:
    """Every table within one, with its path and the keys of its links and of those of the tables round it."""
    links |= {name for name, field in table.model_fields.items() if linked(field)}
    yield path, table, links
    for name, field in table.model_fields.items():
        inner, several = inner_table(field.annotation)
        if inner is not None:
            yield from tables(inner, f"{path}.{name}{'.*' if several else ''}", links)


def linked(field: Any) -> set[str]:
    """The kinds that a field links to; none where it is no link."""
    waiting, found = [field.annotation], set()
    while waiting:
        one = waiting.pop()
        if get_origin(one) is Link:
            target = get_args(one)[0]
            found |= {kind.kind for kind in get_args(target) or (target,)}
        else:
            waiting += get_args(one)
    return found


def faults(kind: type[SpecTable], called: str) -> Iterator[str]:
    """What the keys of a kind that name places, and its links, lack."""
    for path, table, links in tables(kind, called, frozenset()):
        said = meanings(table)
        for name, field in table.model_fields.items():
            mark = next((one for one in field.metadata if isinstance(one, NamedIn)), None)
            if mark is None and NAME_OF_A_PLACE.search(said.get(name, "")):
                yield f"{path}.{name}: a name that is looked up nowhere: NamedIn"
            elsewhere = mark is not None and (mark.through or mark.table.lstrip(".").split(".")[0] in links)
            shared = linked(field) <= SHARED
            if (elsewhere or not shared) and OWN_PLACE not in field.metadata:
                yield f"{path}.{name}: a place that a part alike takes over: OWN_PLACE"


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_every_name_of_a_place_carries_its_marks(kind: str) -> None:
    assert [*faults(KINDS[kind], kind)] == []


class Hook(Spec):
    """A hook.

    Fields:
        on: the block
        bore: name of the block's bore that it hangs in
        end: name of that end of the cylinder
        colour: name of the colour
    """

    on: LinkTo[CylinderBlock] = NOT_STATED
    bore: Word[str] = NOT_STATED
    end: Annotated[Word[str], NamedIn("on.ends")] = NOT_STATED
    colour: Word[str] = NOT_STATED


def test_keys_without_marks_are_told() -> None:
    assert [*faults(Hook, "hook")] == [
        "hook.on: a place that a part alike takes over: OWN_PLACE",
        "hook.bore: a name that is looked up nowhere: NamedIn",
        "hook.end: a place that a part alike takes over: OWN_PLACE",
    ]
