"""How an axis stands in the engine: upright, level, or so many degrees from upright to one side."""

from __future__ import annotations

import math
import re
from typing import Annotated, Any

from msgspec import Struct
from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, core_schema

from speclint.specs.fields import FOR_REVIEW, NotStated, Stated, Word
from speclint.specs.spans import refusal

#: Where the axes that need no side stand, in degrees from upright.
_SQUARE = {"upwards": 0.0, "sideways": 90.0, "downwards": 180.0}
#: Where a side lies, as seen from above: outwards and forward are positive. Outwards is away from the middle of the
#: engine, so that a part of the other hand says the same.
_SIDES = {"outwards": (1.0, 0.0), "inwards": (-1.0, 0.0), "forward": (0.0, 1.0), "back": (0.0, -1.0)}
_WRITTEN = re.compile(rf"(\d{{1,3}}(?:\.\d{{1,3}})?) ° from upright, ({'|'.join(_SIDES)})")


class Axis(Struct, frozen=True):
    """The direction of an axis: its angle from upright, rad, and the side to which it leans; "" where it has none."""

    angle: float
    side: str

    @property
    def rise(self) -> float:
        """Cosine of the angle, exact for an axis that stands square."""
        return round(math.cos(self.angle), 15)

    @property
    def lean(self) -> float:
        """Sine of the angle, exact for an axis that stands square."""
        return round(math.sin(self.angle), 15)

    def from_axis(self, other: Axis) -> float:
        """The angle to another axis, rad; of one that says "sideways" alone the side does not count."""
        if "" in (self.side, other.side):
            return abs(self.angle - other.angle)
        (x, y), (u, v) = _SIDES[self.side], _SIDES[other.side]
        level = self.lean * other.lean * (x * u + y * v)
        return math.acos(max(-1.0, min(1.0, self.rise * other.rise + level)))


def axis_in_words(text: str) -> Axis | None:
    """The axis that words say; None where they say none.

    >>> round(axis_in_words("35 ° from upright, outwards").angle, 4), axis_in_words("35 degrees outwards")
    (0.6109, None)
    """
    if text in _SQUARE:
        return Axis(math.radians(_SQUARE[text]), "")
    found = _WRITTEN.fullmatch(text)
    if found is None or float(found[1]) > _SQUARE["downwards"]:
        return None
    return Axis(math.radians(float(found[1])), found[2])


class _InWords:
    """Annotation of a word that says how an axis stands."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_after_validator_function(_read, handler(source))

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return {"anyOf": [{"enum": list(_SQUARE)}, {"type": "string", "pattern": f"^{_WRITTEN.pattern}$"}]}


def _read(value: Stated[str] | NotStated) -> Stated[str] | NotStated:
    if isinstance(value, Stated) and axis_in_words(value.value) is None:
        instead = '"upwards", "sideways", "downwards" or, to either side, "35 ° from upright, outwards"'
        raise refusal("this does not say how an axis stands", f"{instead} (or inwards, forward, back)")
    return value


#: How an axis stands, in words: ``"upwards"``, or ``"35 ° from upright, outwards"``.
Inclination = Annotated[Word[str], _InWords(), FOR_REVIEW]
