"""Results of costly functions for enclosures, worked once for the same bounds and handed out again.

What is remembered is the bounds of a result and of its slopes against each enclosure that it was worked from; handed
out again, it hangs on the enclosures that are given then.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping, MutableMapping
from dataclasses import fields, is_dataclass, replace
from typing import Any

from speclint.rules.enclosure import Enclosure, Input, Undecided
from speclint.rules.slopes import slopes

Known = MutableMapping[Hashable, Any]


class _OfNoParts(Exception):
    """A result may hold enclosures, and cannot be taken apart."""


class _Linear:
    """An enclosure as its bounds and its slopes, by the place of each argument."""

    def __init__(self, result: Enclosure) -> None:
        self._bounds, self._slopes = result.bounds, dict(slopes(result))

    def on(self, given: Mapping[Any, Enclosure]) -> Enclosure:
        more = tuple((given[name], low, high) for name, (low, high) in self._slopes.items())
        return Enclosure(*self._bounds, more=more)


def replayed(function: Callable[..., Any], known: Known, key: Hashable, arguments: Mapping[str, Any]) -> Any:
    """What a function gives for some arguments of which one at least is an enclosure.

    ``key`` stands for the function in ``known``. A branch that is not decided is raised with the slopes against what
    was given.
    """
    given = {name: one for name, one in arguments.items() if isinstance(one, Enclosure)}
    plain = tuple((name, one) for name, one in arguments.items() if name not in given)
    ends = {name: one.end_to_end for name, one in given.items()}
    place = (key, plain, tuple((name, one.bounds, ends[name]) for name, one in given.items()))
    try:
        found = known.get(place)
    except TypeError:  # an argument that cannot be hashed
        return function(**arguments)
    if found is None:
        leaves = {name: Input(name, *one.bounds, whole=ends[name]) for name, one in given.items()}
        try:
            found = known[place] = _taken_apart(function(**{**arguments, **leaves}))
        except (Undecided, _OfNoParts):
            return function(**arguments)
    return _put_together(found, given)


def _taken_apart(result: Any) -> Any:
    if isinstance(result, Enclosure):
        return _Linear(result)
    if isinstance(result, tuple):
        return _like(result, [_taken_apart(one) for one in result])
    if is_dataclass(result) and not isinstance(result, type):
        return replace(
            result, **{each.name: _taken_apart(getattr(result, each.name)) for each in fields(result)}
        )
    if hasattr(result, "__dict__") and not callable(result):
        raise _OfNoParts
    return result


def _put_together(found: Any, given: Mapping[Any, Enclosure]) -> Any:
    if isinstance(found, _Linear):
        return found.on(given)
    if isinstance(found, tuple):
        return _like(found, [_put_together(one, given) for one in found])
    if is_dataclass(found) and not isinstance(found, type):
        parts = {each.name: getattr(found, each.name) for each in fields(found)}
        return replace(
            found, **{name: one.on(given) for name, one in parts.items() if isinstance(one, _Linear)}
        )
    return found


def _like(result: tuple[Any, ...], parts: list[Any]) -> Any:
    return type(result)(*parts) if hasattr(result, "_fields") else tuple(parts)
