"""The geometry that must hold within one table of a spec, whatever its sizes: a wall is less than half the diameter.

A condition says what cannot be, never what would be bad practice: that is for rules. It is broken only where no
combination of the limits of both values fulfils it. A table declares its own beside its fields::

    geometry: ClassVar[Conditions] = (Below("wall", "outside_diameter", times=1 / 2),)
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any, ClassVar, NamedTuple, TypeAlias

from msgspec import Struct
from pydantic_core import InitErrorDetails

from speclint.quantities import Measure, amount, si_unit
from speclint.specs.spans import refusal

_EPSILON = 1e-9  # relative: values that are equal as written are equal
_TIMES = {1.0: "", 0.5: "half of "}


class Found(NamedTuple):
    """A value that is stated, and its keys."""

    path: tuple[str | int, ...]
    measure: Measure


class Below(Struct, frozen=True):
    """One key is less than another, or than a multiple of it.

    Keys are dotted where they stand in tables within; a star stands for every name: "lands.*.ends".
    """

    key: str
    other: str
    times: float = 1.0

    relation: ClassVar[str] = "less than"

    def __str__(self) -> str:
        return f"{self.key} is {self.relation} {self._multiple()}{self.other}"

    def faults(self, table: Mapping[str, Any]) -> Iterator[tuple[Found, Found]]:
        """The pairs that break the condition, of the values that are stated, each with its keys."""
        for small in _stated(table, self.key):
            for great in _stated(table, self.other):
                if self._broken(small.measure.low, great.measure.high * self.times):
                    yield small, great

    def details(self, table: Mapping[str, Any]) -> Iterator[InitErrorDetails]:
        """Each fault as an error at the place of the key."""
        for (path, small), (_, great) in self.faults(table):
            limit = amount(great.high * self.times, si_unit(great.dimension), great.unit)
            key, other = self.key.rpartition(".")[2], self.other.rpartition(".")[2]
            said = f"{key} must be {self.relation} {self._multiple()}{other}, which is {great.text}"
            instead = f"a value {self.relation} {limit}, or another {other}"
            yield InitErrorDetails(type=refusal(said, instead), loc=path, input=small.text)

    def _broken(self, small: float, limit: float) -> bool:
        return small >= limit * (1 - _EPSILON)

    def _multiple(self) -> str:
        return _TIMES.get(self.times, f"{self.times:g} × ")


class AtMost(Below, frozen=True):
    """One key is no more than another, or than a multiple of it; they may be equal."""

    relation: ClassVar[str] = "no more than"

    def _broken(self, small: float, limit: float) -> bool:
        return small > limit * (1 + _EPSILON)


class FitsIn(Struct, frozen=True):
    """One key is no more than a dimension of the part that the spec is linked to, or than a multiple of it.

    ``link`` is the key of the link, ``of`` the dimension there; a word in braces stands for what the spec states under
    that key: ``FitsIn("outside_diameter", "housed_in", "bores.{in_bore}.diameter", times=1.02)``. It is asked for when
    the links of a design are followed; ``times`` leaves room for an interference.
    """

    key: str
    link: str
    of: str
    times: float = 1.0

    def __str__(self) -> str:
        multiple = "" if self.times == 1 else f"{self.times:g} × "
        return f"{self.key} is no more than {multiple}{self.of} of {self.link}"


#: What a table declares under ``geometry``.
Conditions: TypeAlias = tuple[Below, ...]


@cache
def conditions_of(table: type) -> Conditions:
    """The conditions of a table and of those that it is built on, each once."""
    found = (one for base in table.__mro__ for one in base.__dict__.get("geometry", ()))
    return tuple(dict.fromkeys(found))


def _stated(value: Any, key: str, path: tuple[str | int, ...] = ()) -> Iterator[Found]:
    """The values under a dotted key: one, those of a list or of every name for a star, none where it is not stated."""
    part, _, rest = key.partition(".")
    if part == "*" or (not part and isinstance(value, tuple)):
        pairs = value.items() if isinstance(value, Mapping) else enumerate(value or ())
        for name, inner in pairs:
            yield from _stated(inner, rest, (*path, name))
    elif part:
        inner = value.get(part) if isinstance(value, Mapping) else getattr(value, part, None)
        yield from _stated(inner, rest, (*path, part))
    elif isinstance(value, Measure):
        yield Found(path, value)
