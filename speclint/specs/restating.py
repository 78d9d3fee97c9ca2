"""Other quantities under the keys of a spec: whether it could state one, and the spec with some in their place."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, TypeVar, get_args

from speclint.quantities import Measure
from speclint.specs.fields import NotStated, Quantity
from speclint.specs.geometry import conditions_of
from speclint.specs.spans import Span
from speclint.specs.spec import Spec, SpecTable

S = TypeVar("S", bound=Spec)


def could_state(spec: Spec, key: str, instead: Measure) -> bool:
    """Whether another quantity under a dotted key would be read: its sign, its span and the geometry of its tables.

    :raises LookupError: when the key leads to no quantity.
    """
    return _put(spec, key.split("."), instead) is not None


def restated(spec: S, instead: Mapping[str, Measure | NotStated]) -> S:
    """A spec with other quantities under some dotted keys, or with none there; nothing about them is checked.

    :raises LookupError: when a key leads to no quantity.
    """
    for key, value in instead.items():
        spec = _replaced(spec, key.split("."), value)
    return spec


def _replaced(value: Any, parts: list[str], instead: Measure | NotStated) -> Any:
    if not parts:
        if not isinstance(value, Measure | NotStated):
            raise LookupError("no quantity")
        return instead
    part, *rest = parts
    if isinstance(value, SpecTable) and part in type(value).model_fields:
        return value.model_copy(update={part: _replaced(value.__dict__[part], rest, instead)})
    if isinstance(value, Mapping) and part in value:
        return {**value, part: _replaced(value[part], rest, instead)}
    if isinstance(value, tuple) and part.isdecimal() and int(part) < len(value):
        return _among(value, int(part), _replaced(value[int(part)], rest, instead))
    raise LookupError(part)


def _put(value: Any, parts: list[str], instead: Measure) -> Any:
    """What a table is with another quantity within it; None where that is refused."""
    if not parts:
        if not isinstance(value, Measure):
            raise LookupError("no quantity")
        return instead
    part, *rest = parts
    if isinstance(value, SpecTable):
        field = type(value).model_fields.get(part)
        if field is None:
            raise LookupError(part)
        inner = _put(value.__dict__[part], rest, instead)
        if inner is None or not _allowed([*_annotations(field.annotation), *field.metadata], instead):
            return None
        changed = {**value.__dict__, part: inner}
        return (
            None if any(True for one in conditions_of(type(value)) for _ in one.faults(changed)) else changed
        )
    return _put_among(value, part, rest, instead)


def _put_among(value: Any, part: str, rest: list[str], instead: Measure) -> Any:
    if isinstance(value, Mapping) and part in value:
        inner = _put(value[part], rest, instead)
        return None if inner is None else {**value, part: inner}
    if isinstance(value, tuple) and part.isdecimal() and int(part) < len(value):
        inner = _put(value[int(part)], rest, instead)
        return None if inner is None else _among(value, int(part), inner)
    raise LookupError(part)


def _among(values: tuple[Any, ...], at: int, instead: Any) -> tuple[Any, ...]:
    return (*values[:at], instead, *values[at + 1 :])


def _allowed(annotations: list[Any], instead: Measure) -> bool:
    """Whether the sign and the span of a field hold; of several spans the last counts."""
    signs = [one.sign for one in annotations if isinstance(one, Quantity)]
    spans = [one for one in annotations if isinstance(one, Span)]
    if signs and signs[-1] != "any":
        least = instead.low
        if least < 0 or (signs[-1] == "positive" and least == 0):
            return False
    return not spans or spans[-1].holds(instead)


def _annotations(annotation: Any) -> Iterator[Any]:
    for inner in get_args(annotation):
        yield from getattr(inner, "__metadata__", ())
