"""What a check rests on, value by value: of which spec, under which key there and in general, and whether it is stated.

It is known from what the fingerprint of the check rests on.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple, get_args, get_origin

from pydantic import BaseModel

from speclint.checking import Check
from speclint.repository import Design, steps_of_key
from speclint.specs import Spec, class_of

#: A place as a check rests on it: spec, key, and the load case where it differs between them.
_PLACE = re.compile(r"(\S+) ([\w.\-\[\]]+)′*(?: \([a-z-]+\))?")
#: What fills a place as a check rests on it: the kind, the place, and the keys of the links that lead to it.
_FILLED = re.compile(r"[\w-]+ at .+ by (?P<keys>[\w.*, \-]+?)′*")


class Taken(NamedTuple):
    """One value that a check rests on: the spec, its key there and in general, and whether it is stated."""

    spec: str
    key: str
    general: str
    stated: bool


def taken_by(check: Check, design: Design) -> Iterator[Taken]:
    """What a check rests on, by spec and key."""
    for words, shown in check.rests_on.items():
        place = _PLACE.fullmatch(words)
        spec = design.specs.get(place[1]) if place else None
        if place and spec:
            key = f"{spec.kind}.{general_key(type(spec), place[2])}"
            yield Taken(spec.id, place[2], key, shown != "not stated")
        elif filled := _FILLED.fullmatch(words):
            yield from _links(filled["keys"].split(", "), shown.split(", "), design)


def _links(keys: Sequence[str], ids: Sequence[str], design: Design) -> Iterator[Taken]:
    """The links by which some parts fill a place."""
    for spec in (design.specs[name] for name in ids if name in design.specs):
        for link in spec.links():
            key = general_key(type(spec), link.where.key)
            if key in keys:
                yield Taken(spec.id, link.where.key, f"{spec.kind}.{key}", True)


def general_key(kind: type[Spec], key: str) -> str:
    """A key with ``*`` for each name that a spec chooses, and ``[]`` for each place in an array."""
    declared: Any = class_of(kind)
    found = ""
    for step in steps_of_key(key):
        if isinstance(step, int):
            found += "[]"
        elif isinstance(declared, type) and issubclass(declared, BaseModel) and step in declared.model_fields:
            declared = _inner(declared.model_fields[step].annotation)
            found += f".{step}"
        else:
            found += ".*"
            named = _named(declared)
            declared = _inner(get_args(named)[1]) if named else None
    return found[1:]


def _named(declared: Any) -> Any:
    """The table of named entries that an annotation holds."""
    if get_origin(declared) in (dict, Mapping):
        return declared
    return next((found for one in get_args(declared) if (found := _named(one))), None)


def _inner(declared: Any) -> Any:
    """The model that an annotation holds, where it is no table of named entries."""
    if isinstance(declared, type) or _named(declared):
        return declared
    found = (_inner(one) for one in get_args(declared))
    return next((one for one in found if isinstance(one, type) and issubclass(one, BaseModel)), declared)
