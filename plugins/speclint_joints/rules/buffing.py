"""The shock of buffing for which the block is held on its frames."""

from __future__ import annotations

from speclint import Grade, Judgement, Limit, Sheet, rule
from speclint.facts import shock_on_frame
from speclint.specs import FrameFastening
from speclint_joints.sources import EN_12663_1


@rule(
    "frame.buffing-foreseen",
    title="The bolts of a pad are worked for a shock of buffing of at least 3 times gravity along the frame",
    on=FrameFastening,
    grade=Grade.NONCONFORMITY,
    cites=[EN_12663_1],
    why="what the bolts of a block take is worked for the shock that the drawing states: stated too small, it is found "
    "in the first rough shunt",
    leaves_out="collision, and the shocks across the frame and upright, which carrying bolts are worked for; the local "
    "railway code and a competent person decide",
    against=("loosen",),
    against_on={"cylinder-block": ("loosen",)},
    limits=[Limit("shock", "3", "ratio", EN_12663_1, "least shock along the frame, over gravity")],
)
def buffing_foreseen(fastening: FrameFastening, sheet: Sheet) -> Judgement:
    """The greatest shock that the fastenings of one frame state, as it is used for each of them."""
    block = sheet.follow(fastening.holds)
    shock = shock_on_frame(fastening, block, sheet)
    return sheet.at_least(shock, sheet.limit("shock")).else_says(
        "a shock of {found} g is stated, {limit} g wanted"
    )


RULES = (buffing_foreseen,)
