"""Values of a load case that are worked from other parts of the design: the steam by the valve events, or an estimate.

A duty writes ``steam_flow = { from = "events" }``, or ``cylinder-block = "estimate"`` among its temperatures. Until a
check has worked the value it counts as one that is not stated.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any

from pydantic import GetJsonSchemaHandler
from pydantic_core import CoreSchema

from speclint.errors import NOWHERE, Location
from speclint.quantities import Measure
from speclint.specs.fields import NotStated, Quantity
from speclint.specs.spans import Span
from speclint.specs.toml_values import Table, opened


class FromEvents(NotStated, frozen=True):
    """A value to be worked from the valve events and the cycle of the cylinder; ``why`` it could not be, if it was
    tried."""

    where: Location = NOWHERE
    why: str = ""


class Estimate(NotStated, frozen=True):
    """A temperature to be estimated from the steam and the parts beside; ``why`` it could not be, if it was tried."""

    where: Location = NOWHERE
    why: str = ""

    @property
    def name(self) -> str:
        """The name under which the load case asks for it: the id of a part, or a kind."""
        return self.where.key.rpartition(".temperatures.")[2]


class _OrFromEvents(Quantity, frozen=True):
    """Reads a quantity, or a table that says that it comes from the valve events."""

    def read(self, raw: object) -> Measure | NotStated:
        if isinstance(raw, Mapping) and set(raw) == {"from"} and opened(raw["from"])[0] == "events":
            return FromEvents(raw.where if isinstance(raw, Table) else NOWHERE)
        return super().read(raw)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        taken = {
            "type": "object",
            "properties": {"from": {"const": "events"}},
            "required": ["from"],
            "additionalProperties": False,
        }
        return {"anyOf": [super().__get_pydantic_json_schema__(schema, handler), taken]}


#: A pressure, a flow, a temperature or a dryness of a load case: stated, or worked from the valve events.
PressureOrEvents = Annotated[
    Measure | NotStated, _OrFromEvents("fluid pressure", "any"), Span("0.01 mbar gauge", "1000 bar gauge")
]
MassFlowOrEvents = Annotated[
    Measure | NotStated, _OrFromEvents("mass flow", "not negative"), Span("1 kg/h", "200 t/h")
]
TemperatureOrEvents = Annotated[Measure | NotStated, _OrFromEvents("temperature"), Span("50 K", "2000 K")]
DrynessOrEvents = Annotated[Measure | NotStated, _OrFromEvents("ratio", "not negative"), Span("0.01", "1")]
