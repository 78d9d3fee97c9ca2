"""The inspection sheet: a row for each dimension, with empty columns, that ``speclint record`` reads back.

Its columns and the mapping by which they are read stand here side by side, so that nothing is guessed.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import cache

import msgspec
from msgspec import Struct

from speclint.made.inspection import Inspected, InspectionList, is_condition
from speclint.made.recording import placed
from speclint.quantities import Measure, displayed, si_unit
from speclint.repository import TableMapping

#: What an inspector fills in, by what the mapping of a table calls it.
_EMPTY = {
    "value": "measured",
    "uncertainty": "U",
    "unit_of_uncertainty": "unit of U",
    "along": "along, mm",
    "round": "round, °",
    "instrument": "instrument",
    "date": "date",
    "inspector": "inspector",
}
_FIGURES = 10  # of a number in its unit: what floats leave lies beyond them


class SheetRow(Struct, frozen=True):
    """A dimension as the sheet shows it, every cell as text; numbers are in the unit of the row.

    ``carries`` is how much of a limit its tolerance carries, ``rule`` of which check, ``where`` where it is drawn.
    """

    rank: str
    dimension: str
    drawn: str
    low: str
    high: str
    unit: str
    carries: str
    rule: str
    where: str
    uncertainty: str
    accepted_from: str
    accepted_to: str
    unit_of_uncertainty: str


#: The heads of the columns that are filled in before, in the order of :class:`SheetRow`.
_BEFORE = (
    "rank",
    "dimension",
    "drawn",
    "low",
    "high",
    "unit",
    "carries",
    "of rule",
    "drawn at",
    "greatest U",
    "accepted from",
    "accepted to",
)
COLUMNS = (*_BEFORE, *_EMPTY.values())


def cells(row: SheetRow) -> tuple[str, ...]:
    """A row under :data:`COLUMNS`: the unit of U is filled in, the rest is left to the inspector."""
    before = msgspec.structs.astuple(row)[: len(_BEFORE)]
    return (*before, *(row.unit_of_uncertainty if what == "unit_of_uncertainty" else "" for what in _EMPTY))


@cache
def sheet_mapping() -> TableMapping:
    """How the sheet is read back."""
    columns = {"dimension": "dimension", "unit": "unit", **_EMPTY}
    units = {"along": "mm", "round": "°"}
    return TableMapping.model_validate(placed({"columns": columns, "units": units}))


def ranked_rows(found: InspectionList) -> tuple[SheetRow, ...]:
    """The dimensions that rules rest on, ranked; then those for which the drawing states no limits."""
    name = found.part.id
    ranked = (_row(one, str(rank), name) for rank, one in enumerate(found.ranked, start=1))
    return (*ranked, *(_row(one, "", name) for one in found.without_limits))


def other_rows(found: InspectionList) -> tuple[SheetRow, ...]:
    """The quantities that are measured on the part, and that no rule rests on."""
    return tuple(_row(one, "", found.part.id) for one in found.no_rule if not is_condition(one.at))


def _row(one: Inspected, rank: str, part: str) -> SheetRow:
    drawn = one.drawn
    numbers = dict(_numbers(one))
    unit = _shown(drawn.low, drawn)[1] or "1"
    return SheetRow(
        rank,
        one.at.key,
        drawn.text,
        numbers.get("low", ""),
        numbers.get("high", ""),
        unit,
        carries(one),
        _rule(one, part),
        f"{drawn.where.file}:{drawn.where.line}",
        numbers.get("uncertainty", ""),
        numbers.get("from", ""),
        numbers.get("to", ""),
        unit,
    )


def _numbers(one: Inspected) -> Iterator[tuple[str, str]]:
    drawn = one.drawn
    if drawn.exact:
        return
    yield "low", _number(drawn.low, drawn)
    yield "high", _number(drawn.high, drawn)
    assert one.uncertainty is not None  # as of conditions alone, which stand in no row
    assert one.accepted is not None
    yield "uncertainty", _number(one.uncertainty, drawn)
    yield "from", _number(one.accepted[0], drawn)
    yield "to", _number(one.accepted[1], drawn)


def carries(one: Inspected) -> str:
    """How much of a limit a dimension carries, in three figures; why there is no number, where there is none."""
    if not one.rests:
        return ""
    first = one.rests[0]
    if not first.compared:
        return "no limits" if one.drawn.exact else "no number"
    return "all" if math.isinf(one.carried) else f"{one.carried:.3g}"


def _rule(one: Inspected, part: str) -> str:
    """The rule that it carries most of, with the component where that is a mate, and how many others rest on it."""
    if not one.rests:
        return "no rule rests on it"
    first = one.rests[0].check
    of = "" if first.component == part else f" of {first.component}"
    more = f" and {len(one.rests) - 1} more" if len(one.rests) > 1 else ""
    return f"{first.rule.name}{of}{more}"


def _shown(value: float, drawn: Measure) -> tuple[float, str]:
    return displayed(value, si_unit(drawn.dimension), drawn.unit)


def _number(value: float, drawn: Measure) -> str:
    return f"{_shown(value, drawn)[0]:.{_FIGURES}g}"
