"""The plausible span of a field: outside it a slip of a unit is likelier than a part.

Every span is common practice: what a main-line steam locomotive has, from its smallest springs and gaskets to the
whole engine, with room on both sides. A field declares its own beside its type::

    wall: Annotated[Length, Span("1 mm", "60 mm")] = NOT_STATED
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any

from msgspec import Struct
from pydantic import GetCoreSchemaHandler
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from speclint.quantities import Measure, read, units

_EPSILON = 1e-9  # relative: a value written at an end of the span lies within it
#: For which units a unit is written by mistake, the likeliest first.
_MEANT = {
    "mm": ("in", "µm", "m"),
    "m": ("mm", "in"),
    "in": ("mm", "thou"),
    "thou": ("µm", "in"),
    "µm": ("mm", "thou"),
    "cm": ("mm",),
    "ft": ("in",),
    "bar": ("psi", "kPa"),
    "psi": ("bar",),
    "MPa": ("kPa", "bar"),
    "Pa": ("kPa", "MPa"),
    "kN": ("N",),
    "N": ("kN",),
    "kg": ("g", "t"),
    "g": ("kg",),
    "t": ("kg",),
}


def refusal(message: str, instead: str) -> PydanticCustomError:
    """An error that the loader turns into a complaint with the value read and what to write instead."""
    return PydanticCustomError("refused", "{said}", {"said": message, "instead": instead})


class Span(Struct, frozen=True):
    """Annotation of a quantity: the least and the greatest size that it may have, each written as in a spec.

    The size is what counts, whatever its sign, and nothing at all is in every span: whether a quantity may be 0 or
    negative is said by its type. Of several on one field the last counts.
    """

    least: str
    greatest: str

    def __str__(self) -> str:
        return f"{self.least} to {self.greatest}"

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        inner = handler(source)
        if inner.get("metadata", {}).get("type") == "span":
            inner = inner["schema"]  # the span of the type, which this one replaces
        return core_schema.no_info_after_validator_function(self.checked, inner, metadata={"type": "span"})

    def checked(self, value: Any) -> Any:
        """The value, where it lies in the span or is none.

        :raises PydanticCustomError: outside the span, with both readings where another unit would lie within it.
        """
        if isinstance(value, Measure) and not self.holds(value):
            meant = next(self._meant(value), "")
            asked = f": is {meant} meant?" if meant else ""
            instead = f'"{meant}" if so, or a value of {self}' if meant else f"a value of {self}"
            raise refusal(f"{value.text} is outside what parts of this trade have, {self}{asked}", instead)
        return value

    def holds(self, value: Measure) -> bool:
        """Whether a quantity lies in the span."""
        least, greatest = self.ends(value.dimension)
        size = max(abs(value.low), abs(value.high))
        return size == 0 or least * (1 - _EPSILON) <= size <= greatest * (1 + _EPSILON)

    def ends(self, dimension: str) -> tuple[float, float]:
        """The least and the greatest size in SI units."""
        return _ends(self, dimension)

    def _meant(self, value: Measure) -> Iterator[str]:
        """The same number in other units, where it lies in the span."""
        plain = "pressure" if value.dimension == "fluid pressure" else value.dimension
        if value.unit not in _MEANT:
            return
        figure = value.nominal / units.factor(value.unit, plain)
        for unit in _MEANT[value.unit]:
            written = " ".join(f"{figure:.6g} {unit} {value.datum}".split())
            if self.holds(read(written, value.dimension, "any")):
                yield written


@cache
def _ends(span: Span, dimension: str) -> tuple[float, float]:
    """The span in SI units."""
    return read(span.least, dimension, "any").nominal, read(span.greatest, dimension, "any").nominal
