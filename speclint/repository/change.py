"""One change of a design, as tests and examples of rules state it: a key set or left out, or a whole spec."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from typing import Any

from msgspec import Struct

from speclint.errors import DesignError
from speclint.specs import Array, Leaf, Table

_STEP = re.compile(r"[^.\[\]]+|\[\d+\]")


class Change(Struct, frozen=True):
    """One change of a design: a key of a component set to a value as TOML has it, or left out; or a whole spec.

    ``component`` is an id, or ``speclint.toml`` for the settings. Without a ``key`` the whole spec is meant: ``value``
    is then its text, which stands beside the others. ``absent`` says that the key, or the spec, is left out.
    """

    component: str
    key: str = ""
    value: Any = None
    absent: bool = False


def steps_of_key(key: str) -> tuple[str | int, ...]:
    """The steps of a dotted key: names, and places in arrays.

    >>> steps_of_key("corners[2].height")
    ('corners', 2, 'height')
    """
    return tuple(int(step[1:-1]) if step[0] == "[" else step for step in _STEP.findall(key))


def component_and_key(said: str, ids: Collection[str]) -> tuple[str, str]:
    """The component and the key of COMPONENT.KEY: an id may hold points, and the longest that is known is meant.

    Where none is known, the id is taken to end at the first point.

    >>> component_and_key("pipe.live.wall", ["pipe.live", "duty"]), component_and_key("pipe.wall", ["duty"])
    (('pipe.live', 'wall'), ('pipe', 'wall'))
    """
    steps = said.split(".")
    parts = (".".join(steps[:number]) for number in range(len(steps), 1, -1))
    component = next((part for part in parts if part in ids), steps[0])
    return component, said[len(component) + 1 :]


def changed_table(table: Table, one: Change) -> Table:
    """A copy of the table of a spec with what stands under the key of a change set, or left out.

    :raises DesignError: where nothing can stand there.
    """
    changed: Table = _set_at(table, steps_of_key(one.key), one)
    return changed


def changed_tree(tree: Mapping[str, Any], one: Change) -> dict[str, Any]:
    """A copy of the settings with what stands under the key of a change set, or left out.

    The steps of the key are parted by ``/`` where a name in it holds a point.
    """
    steps = [step.strip('"') for step in one.key.split("/")] if "/" in one.key else one.key.split(".")
    return _in_tree(tree, steps, one)


def _set_at(table: Any, path: tuple[str | int, ...], one: Change) -> Any:
    step, rest = path[0], path[1:]
    copied: Any = _copy(table)
    there = _has(table, step)
    made = isinstance(table, Table) and isinstance(step, str) and (rest or not one.absent)
    if not there and not made:
        raise DesignError(f"{one.component} does not state {one.key}")
    where = getattr(table[step], "where", None) if there else None
    if rest:
        inner = table[step] if there else Table({}, _place_of(table, step))
        copied[step] = _set_at(inner, rest, one)
    elif one.absent:
        del copied[step]
    else:
        copied[step] = _placed(one.value, where or _place_of(table, step))
    return copied


def _has(table: Any, step: str | int) -> bool:
    """Whether something stands at a step of a table or a list."""
    if isinstance(table, Array):
        return isinstance(step, int) and step < len(table)
    return isinstance(table, Table) and step in table


def _copy(table: Any) -> Table | Array:
    if isinstance(table, Array):
        return Array(table, table.where)
    if isinstance(table, Table):
        return Table(table, table.where, table.unstated_at)
    raise DesignError("a table or a list is wanted where a value stands")


def _place_of(table: Any, step: str | int) -> Any:
    prefix = f"{table.where.key}." if table.where.key else ""
    return table.where.at(f"{prefix}{step}")


def _placed(value: Any, where: Any) -> Any:
    """A value as TOML has it, each of its parts at its place."""
    if isinstance(value, Mapping):
        return Table(
            {name: _placed(one, where.at(f"{where.key}.{name}")) for name, one in value.items()}, where
        )
    if isinstance(value, list):
        inside = [_placed(one, where.at(f"{where.key}[{number}]")) for number, one in enumerate(value)]
        return Array(inside, where)
    return Leaf(value, where)


def _in_tree(tree: Mapping[str, Any], path: Sequence[str], one: Change) -> dict[str, Any]:
    copied = dict(tree)
    step, rest = path[0], path[1:]
    if rest:
        copied[step] = _in_tree(tree.get(step, {}), rest, one)
    elif one.absent:
        del copied[step]
    else:
        copied[step] = one.value
    return copied
