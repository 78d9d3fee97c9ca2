"""The preload that a joint loses in service: none is not to be had where it is hot."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import BoltedJoint, FrameFastening
from speclint_joints.sources import VDI_2230


@rule(
    "joint.loss-foreseen",
    title="Studs, and the bolts of the frames, are worked for the loss of at least 5 % of their preload in service, "
    "beside the embedding of their faces",
    on=(BoltedJoint, FrameFastening),
    grade=Grade.QUERY,
    cites=[
        VDI_2230.at("section 5.4.2, changes of the preload by embedding and relaxation", memory=True),
        COMMON_PRACTICE,
    ],
    why="studs hot for years creep, gaskets and paint are pressed out, nuts turn back by a trace: a joint that is "
    "worked for no loss is tight on paper alone",
    leaves_out="a loss that was measured on the like of the joint: a competent person may accept less",
    against=(),
    limits=[Limit("loss", "5 %", "ratio", COMMON_PRACTICE, "least loss of preload to be worked for")],
)
def loss_foreseen(joint: BoltedJoint | FrameFastening, sheet: Sheet) -> Judgement:
    """The least loss that is stated, as preloads are worked with the whole span of it."""
    if not sheet.is_stated("relaxation", joint.relaxation):
        raise sheet.not_applicable("no loss is stated: the rules that work with its preload ask for one")
    return sheet.at_least(sheet.take("r", joint.relaxation), sheet.limit("loss")).else_says(
        "a loss of {found} of the preload is stated, {limit} wanted"
    )


RULES = (loss_foreseen,)
