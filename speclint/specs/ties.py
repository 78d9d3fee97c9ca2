"""Temperatures that move together: one part's metal stated as another's and a difference.

A duty states ``valve-seat = "cylinder-block + 20..30 K"``. The block's temperature is then one corner for both, and
the difference a corner of its own: the two are never taken at opposite ends, which no engine does.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Annotated, Any

from msgspec import Struct
from pydantic import GetJsonSchemaHandler
from pydantic_core import CoreSchema

from speclint.errors import NOWHERE, Location, QuantityError, replace, shortened
from speclint.quantities import Measure, read
from speclint.specs.fields import NotStated, Quantity
from speclint.specs.spans import refusal
from speclint.specs.toml_values import opened
from speclint.specs.worked_values import Estimate, FromEvents

#: The word by which a duty asks for a temperature to be estimated.
_ESTIMATE = "estimate"
_WRITTEN = re.compile(r"(?P<base>[A-Za-z][\w-]*)(?: (?P<sign>[+−-]) (?P<difference>.+))?")
#: The same for an editor, whose patterns have no named groups and no letters beyond ASCII.
_TIE = r"^\s*[A-Za-z][A-Za-z0-9_-]*(?:\s+[+−-]\s+[0-9].*K\s*(?:difference)?)?\s*$"
_INSTEAD = (
    '"310 °C", "300..320 °C", "estimate", or tied to another temperature of the load case: '
    '"cylinder-block + 20..30 K"'
)


class WrittenTie(Struct, frozen=True):
    """A tie as a duty writes it: the name of the other temperature, and how much hotter this one is."""

    base: str
    difference: Measure
    where: Location = NOWHERE


class Tie(Struct, frozen=True):
    """A temperature tied to another: that one, which may be tied in its turn, and how much hotter this one is."""

    base: Measure | Tie | Estimate | FromEvents
    difference: Measure
    where: Location = NOWHERE


class _TemperatureOrTie(Quantity, frozen=True):
    """Reads a temperature, or the name of another temperature and a difference."""

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        tie = {
            "type": "string",
            "pattern": _TIE,
            "description": f"another temperature of the load case: {_INSTEAD}",
        }
        return {"anyOf": [super().__get_pydantic_json_schema__(schema, handler), tie]}

    def read(self, raw: object) -> Measure | WrittenTie | NotStated:  # type: ignore[override]  # or a tie
        if isinstance(raw, WrittenTie):
            return raw
        value, where = opened(raw)
        if value == _ESTIMATE:
            return Estimate(where)
        found = _WRITTEN.fullmatch(" ".join(value.split())) if isinstance(value, str) else None
        if found is None:
            return super().read(raw)
        written = found["difference"] or "0 K"
        try:
            difference = read(written, "temperature difference", "any", where)
        except QuantityError as problem:
            raise refusal(f"the difference of a tie cannot be read: {problem}", _INSTEAD) from problem
        if found["sign"] in ("-", "−"):
            difference = _negative(difference)
        return WrittenTie(found["base"], replace(difference, text=str(value)), where)


def _negative(difference: Measure) -> Measure:
    low, nominal, high = -difference.high, -difference.nominal, -difference.low
    return replace(difference, low=low, nominal=nominal, high=high)


#: The temperature of a part: stated, or tied to another of the same load case.
TemperatureOrTie = Annotated[Measure | WrittenTie | NotStated, _TemperatureOrTie("temperature")]


def tied(
    name: str, known: Mapping[str, Measure | WrittenTie | NotStated], behind: tuple[str, ...] = ()
) -> Measure | Tie | NotStated:
    """The temperature of a name, with every tie followed to a stated temperature.

    :raises PydanticCustomError: for a tie to nothing that is stated, or ties that run in a loop.
    """
    found = known[name]
    if not isinstance(found, WrittenTie):
        return found
    way = (*behind, name)
    if found.base in way:
        raise refusal(f"ties run in a loop: {' → '.join((*way, found.base))}", "one of them as a temperature")
    base = tied(found.base, known, way) if found.base in known else NotStated(found.where)
    if isinstance(base, NotStated) and not isinstance(base, Estimate | FromEvents):
        names = ", ".join(f'"{one}"' for one, value in known.items() if isinstance(value, Measure))
        said = f'the load case states no temperature of "{shortened(found.base)}"'
        worked = '"estimate", which has it worked'
        raise refusal(said, f"{names}, or {worked}" if names else f"a temperature, or {worked}")
    return Tie(base, found.difference, found.where)
