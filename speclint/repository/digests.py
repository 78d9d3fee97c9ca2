"""Digests of what was read from a repository: the same where nothing that a check could see differs."""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Mapping, Set
from enum import Enum
from functools import cache
from hashlib import blake2b
from operator import attrgetter
from pathlib import PurePath
from typing import Any

from msgspec import Struct
from pydantic import BaseModel

from speclint.errors import compared_names, is_record
from speclint.specs import OF_THE_DRAWING, Spec, SpecTable

_PLAIN = (str, int, float, bool, bytes, type(None))
_BYTES = 20


def digest(*values: object, without: Collection[str] = ()) -> str:
    """A digest of values as read: tables of specs, settings, quantities, words and whatever they hold.

    ``without`` are keys of the outermost tables that are left out.

    :raises TypeError: for a value of which it is not known what it holds.
    """
    plain = repr(tuple(_plain(value, without) for value in values))
    return blake2b(plain.encode("utf-8", "backslashreplace"), digest_size=_BYTES).hexdigest()


def digest_of_spec(spec: Spec, without: Collection[str] = ()) -> str:
    """A digest of all that a spec states, with the places where it does."""
    return digest(spec, without=without)


class State(Struct, frozen=True):
    """Digests of a spec: ``part`` of all but the words of its drawing, and ``words`` of each of these."""

    part: str
    words: Mapping[str, str]


def state_of(spec: Spec) -> State:
    """The digests of a spec as it was read."""
    words = {key: digest(getattr(spec, key, None)) for key in sorted(OF_THE_DRAWING)}
    return State(digest_of_spec(spec, OF_THE_DRAWING), words)


def _plain(value: Any, without: Collection[str] = ()) -> object:
    """A value as nested tuples of text and numbers, which are written alike whenever they are equal."""
    if isinstance(value, _PLAIN) and not isinstance(value, Enum):
        return value
    if isinstance(value, BaseModel):
        inside = tuple((key, _plain(one)) for key, one in value.__dict__.items() if key not in without)
        place = _plain(value.where) if isinstance(value, SpecTable) else None
        return type(value).__qualname__, inside, place
    kind: Any = type(value)
    if is_record(kind):
        return kind.__qualname__, tuple(_plain(one) for one in _opened(kind)(value))
    if isinstance(value, Mapping):
        return "{}", tuple((_plain(key), _plain(one)) for key, one in value.items())
    if isinstance(value, tuple | list):
        return tuple(_plain(one) for one in value)
    if isinstance(value, Set):
        return "set", sorted(repr(_plain(one)) for one in value)
    if isinstance(value, dt.date | dt.time | PurePath | Enum):
        return type(value).__qualname__, str(value)
    raise TypeError(f"no digest is made of {type(value).__name__}")


@cache
def _opened(kind: Any) -> Any:
    """What reads all that a record holds, but for what it only remembers."""
    names = compared_names(kind)
    if len(names) < 2:
        return lambda value: tuple(getattr(value, name) for name in names)
    return attrgetter(*names)
