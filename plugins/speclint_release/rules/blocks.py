"""Procedures that must be written before a block is first steamed."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import CylinderBlock


@rule(
    "release.warming-procedure",
    title="The block names written procedures for first steaming, hot retightening and the order of "
    "opening its drains",
    on=CylinderBlock,
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE],
    why="a cold block that is given full steam at once cracks, its fits loosen and it fills with water",
    leaves_out="the content of the procedures",
    against=(),
)
def warming_procedure(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Lists each of the three procedures that is not named."""
    written = block.procedures
    missing = [
        name.replace("_", " ")
        for name, value in (
            ("first_steaming", written.first_steaming),
            ("hot_retightening", written.hot_retightening),
            ("drain_order", written.drain_order),
        )
        if not sheet.is_stated(name, value) or not sheet.read(name, value).strip()
    ]
    if missing:
        return sheet.states(False, f"no written procedure: {', '.join(missing)}", where=written.where)
    return sheet.states(True, "procedures are named: first steaming, hot retightening, drain order")


RULES = (warming_procedure,)
