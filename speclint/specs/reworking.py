"""What machining does to a size, since metal comes off and not on; and allowances that end once a part is measured.

A field says which way its size goes when metal comes off, and which allowance stands for a size nobody has measured::

    bore: Annotated[Length, Span("100 mm", "1.2 m"), OPENED] = NOT_STATED
    mill_tolerance: Annotated[Fraction, UntilMeasured("wall")] = NOT_STATED
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Machined:
    """Annotation of a size that can be machined: ``way`` is 1 where it grows as metal comes off, else −1."""

    way: int


#: Of a bore, a groove or a hole: machining makes it greater.
OPENED = Machined(1)
#: Of a journal, a spigot, a thickness or a length: machining makes it less.
CUT_DOWN = Machined(-1)


@dataclass(frozen=True, slots=True)
class UntilMeasured:
    """Annotation of an allowance for how a size may come out: it ends once the size under ``key`` is measured.

    One for what is lost later, such as wear or corrosion, has no such mark: it stays.
    """

    key: str
