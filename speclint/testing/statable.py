"""What could be stated under a key of a design: the words of its list, and what the same key says elsewhere."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from typing import Any, Literal, get_args, get_origin

from speclint.errors import DesignError
from speclint.repository import DraftedDesign, steps_of_key
from speclint.specs import NotStated, Stated
from speclint.testing.taken_values import general_key

_ELSEWHERE: dict[int, tuple[object, dict[str, list[Any]]]] = {}


def words_for(drafted: DraftedDesign, spec: str, key: str) -> tuple[str, ...]:
    """The words that a key of a spec may state; of a yes or no ``true`` and ``false``; none where it takes any."""
    declared: Any = None
    value: Any = drafted.design.specs[spec]
    try:
        for step in steps_of_key(key):
            fields = getattr(type(value), "model_fields", {})
            declared = fields[step].annotation if step in fields else declared
            value = getattr(value, str(step)) if step in fields else value[step]
    except (LookupError, TypeError):
        return ()
    return tuple(declared_words(declared)) if isinstance(value, Stated | NotStated) else ()


def declared_words(declared: Any) -> Iterable[str]:
    """The words that the annotation of a field allows; none where it allows any."""
    if get_origin(declared) is not Stated:
        return tuple(word for inner in get_args(declared) for word in declared_words(inner))
    (wanted,) = get_args(declared)
    if wanted is bool:
        return "true", "false"
    return tuple(map(str, get_args(wanted))) if get_origin(wanted) is Literal else ()


def written_elsewhere(drafted: DraftedDesign) -> dict[str, list[Any]]:
    """What the specs of a design write under each general key, each value once."""
    key = id(drafted.drafts)
    if (
        key not in _ELSEWHERE
    ):  # the drafts are kept with it, so that no other ones come to have their identity
        _ELSEWHERE[key] = drafted.drafts, _written(drafted)
    return _ELSEWHERE[key][1]


def _written(drafted: DraftedDesign) -> dict[str, list[Any]]:
    found: dict[str, list[Any]] = defaultdict(list)
    for name, spec in drafted.design.specs.items():
        for at, value in spec.at_keys():
            if isinstance(value, NotStated):
                continue
            try:
                raw, written = drafted.raw_at(name, at)
            except DesignError:
                continue
            values = found[f"{spec.kind}.{general_key(type(spec), written)}"]
            if raw not in values:
                values.append(raw)
    return found
