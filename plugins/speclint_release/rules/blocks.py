"""What must be written down before a block is first steamed."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import CylinderBlock


@rule(
    "release.warming-procedure",
    title="First steaming, hot retightening and the order of drains are written down",
    on=CylinderBlock,
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE],
    why="a cold block that is given full steam at once cracks, loses its fits and fills with water",
    leaves_out="what the instructions say",
)
def warming_procedure(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Names each of the three instructions that has no number."""
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
        return sheet.states(False, f"not written: {', '.join(missing)}", where=written.where)
    return sheet.states(True, "first steaming, hot retightening and drain order are written")


RULES = (warming_procedure,)
