"""What machining does to a size, since metal comes off and not on; and allowances that end once a part is measured.

A field says which way its size goes when metal comes off, and which allowance stands for a size nobody has measured::

    bore: Annotated[Length, Span("100 mm", "1.2 m"), OPENED] = NOT_STATED
    mill_tolerance: Annotated[Fraction, UntilMeasured("wall")] = NOT_STATED
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct
from pydantic import GetCoreSchemaHandler
from pydantic_core import CoreSchema, core_schema

from speclint.quantities import Measure
from speclint.specs.spans import refusal


class Machined(Struct, frozen=True):
    """Annotation of a size that can be machined: ``way`` is 1 where it grows as metal comes off, else −1.

    The one is that of a hole, whose tolerance class is written in capitals, the other that of an outside.
    """

    way: int

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_after_validator_function(
            self.checked, handler(source), metadata={"type": "machined"}
        )

    def checked(self, value: Any) -> Any:
        """The value, where its tolerance class, if it has one, is of a hole or of an outside as the size is.

        :raises PydanticCustomError: with the class of the other and what to write instead.
        """
        written = value.tolerance_class if isinstance(value, Measure) else ""
        if not written or written[0].isupper() == (self.way > 0):
            return value
        here, other = ("a hole", "a shaft") if self.way > 0 else ("an outside", "a hole")
        meant = written.upper() if self.way > 0 else written.lower()
        raise refusal(
            f"{written} is a tolerance class of {other}, and this is {here}",
            f"{meant}, or the limits themselves",
        )


#: Of a bore, a groove or a hole: machining makes it greater.
OPENED = Machined(1)
#: Of a journal, a spigot, a thickness or a length: machining makes it less.
CUT_DOWN = Machined(-1)


class UntilMeasured(Struct, frozen=True):
    """Annotation of an allowance for how a size may come out: it ends once the size under ``key`` is measured.

    One for what is lost later, such as wear or corrosion, has no such mark: it stays.
    """

    key: str
