"""Results of costly functions for enclosures, worked once for the same bounds and handed out again.

What is remembered is the bounds of a result and of its slopes against each enclosure that it was worked from; handed
out again, it hangs on the enclosures that are given then.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping, MutableMapping, MutableSequence
from typing import Any

from speclint.errors import field_names, is_record, made_of_its_fields, replace
from speclint.rules.enclosure import Enclosure, Input, Undecided
from speclint.rules.slopes import slopes

Known = MutableMapping[Hashable, Any]
_CONTAINERS = (Mapping, MutableSequence, Iterator)  # enclosures in them are not looked for


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
        except Undecided:
            return function(**arguments)
        except _OfNoParts:
            found = known[place] = _OfNoParts
    return function(**arguments) if found is _OfNoParts else _put_together(found, given)


def _taken_apart(result: Any) -> Any:
    if isinstance(result, Enclosure):
        return _Linear(result)
    if isinstance(result, _CONTAINERS) or (hasattr(result, "__dict__") and not _has_parts(result)):
        raise _OfNoParts
    return _part_by_part(result, _taken_apart)


def _put_together(found: Any, given: Mapping[Any, Enclosure]) -> Any:
    if isinstance(found, _Linear):
        return found.on(given)
    return _part_by_part(found, lambda one: _put_together(one, given))


def _has_parts(result: Any) -> bool:
    """Whether a result can be made anew from its fields; what is called holds what it was made from out of sight."""
    return made_of_its_fields(type(result))


def _part_by_part(result: Any, made: Callable[[Any], Any]) -> Any:
    """A result with something made of each of its parts, and itself where it has none."""
    if isinstance(result, tuple):
        parts = [made(one) for one in result]
        return type(result)(*parts) if hasattr(result, "_fields") else tuple(parts)
    if is_record(type(result)):
        names = field_names(type(result))
        return replace(result, **{name: made(getattr(result, name)) for name in names})
    return result
