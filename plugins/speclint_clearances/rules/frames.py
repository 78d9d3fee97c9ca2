"""Room between the ends of a cylinder and the frame plate beside it."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.facts import diameter_at, ends_of, nearest_axis
from speclint.specs import CylinderBlock
from speclint_clearances.formulae.frames import gap_to_frame


@rule(
    "block.ends-clear-of-frame",
    title="The ends of a cylinder, each with its cover, are smaller than the frame plate beside the cylinder leaves "
    "room for",
    on=CylinderBlock,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a cover that reaches behind the face of the frame meets the frame plate, and neither it nor the block goes on",
    leaves_out="frame plates that are cut away beside a cover or lie lower than the cylinder; nuts and lugs beyond the "
    "rim; the other frame of a cylinder between the two",
    limits=[
        Limit("gap", "5 mm", "length", COMMON_PRACTICE, "least gap between the frame plate and a cover's rim")
    ],
    against=(),
)
def ends_clear_of_frame(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Distance of the axis from the face of the frame, less half of the larger of the block's face and the cover."""
    if not block.ends:
        raise sheet.not_assessed(f"ends is not stated in {block.where.file}", block.where)
    least = sheet.limit("gap")
    axes = {name: nearest_axis(block, name, sheet) for name in block.bores}
    ends = [(end, axes[bore]) for bore in block.bores for end in ends_of(block, bore, sheet)]

    def judge(item: tuple[str, Metres]) -> Judgement:
        end, a = item
        gap = sheet.work(f"g {end}", gap_to_frame, a=a, D=diameter_at(block, end, sheet))
        return sheet.at_least(gap, least).else_says(
            f"end {end}: {{found}} between its rim and the frame, {{limit}} wanted"
        )

    return sheet.each(ends, judge)


RULES = (ends_clear_of_frame,)
