"""A length as it counts: the worse of what is stated and what the parts give, with what is told where they differ."""

from __future__ import annotations

from msgspec import Struct

from speclint import COMMON_PRACTICE, Judgement, Limit, Sheet
from speclint.equations import Metres
from speclint_clearances.formulae.room import less_rounding

ROUNDING = Limit(
    "rounding",
    "1 mm",
    "length",
    COMMON_PRACTICE,
    "what may be stated less than what the parts give, by rounding",
    "not negative",
)


class Counted(Struct, frozen=True):
    """A length as it counts, the worse of what is stated and what the parts give, and what is told of it."""

    counted: Metres
    told: tuple[Judgement, ...] = ()


def rounded(symbol: str, length: Metres, sheet: Sheet) -> Metres:
    """What the parts give, less what rounding may take off."""
    return sheet.work(symbol, less_rounding, L=length, u=sheet.limit(ROUNDING.name, "u"))
