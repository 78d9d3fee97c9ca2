"""What is stated of new bearings and bores, against what can be made, run and reamed clean."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.fits import share_of_size
from speclint.specs import CylinderLiner, Pin, Rocker, SlideBar
from speclint_motion.formulae.wear import reamed_clean


@rule(
    "wear.new-can-run",
    title="A new bearing has at least 0.0003 of its pin's diameter of clearance, slippers at least 0.05 mm on their "
    "bars, and a bore is not said to be rounder and straighter than 0.005 mm",
    on=(CylinderLiner, Pin, Rocker, SlideBar),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a bearing without clearance for its oil seizes, and wear counted from less than a new part has makes it last "
    "longer than it does",
    leaves_out="the fit of a bush in its rod, and what heat takes of the clearance (fit.hot)",
    against=(),
    limits=[
        Limit(
            "bearing", "0.0003", "ratio", COMMON_PRACTICE, "least clearance of a bearing over its diameter"
        ),
        Limit("slipper", "0.05 mm", "length", COMMON_PRACTICE, "least clearance of slippers on their bars"),
        Limit("bore", "0.005 mm", "length", COMMON_PRACTICE, "least that a bore is out of round or tapered"),
    ],
)
def new_can_run(part: CylinderLiner | Pin | Rocker | SlideBar, sheet: Sheet) -> Judgement:
    """What the table of wear says of a new part, against the least that is made; of a bore a query."""
    new = sheet.take("a", part.wear.new)
    if isinstance(part, CylinderLiner):
        judged = sheet.at_least(new, sheet.limit("bore")).else_says(
            "new bore said to be {found} out of true, {limit} is the least that is bored"
        )
        return judged.graded(Grade.QUERY)
    if isinstance(part, SlideBar):
        return sheet.at_least(new, sheet.limit("slipper")).else_says(
            "new slippers have {found} of clearance, {limit} wanted"
        )
    d = sheet.take("d", part.diameter if isinstance(part, Pin) else part.pin)
    least = sheet.work("a_n", share_of_size, k=sheet.limit("bearing", "k"), t=d)
    return sheet.at_least(new, least).else_says("new bearing has {found} of clearance, {limit} wanted")


@rule(
    "wear.reamed-clean",
    title="The bush of a bearing may be reamed by at least as much as it wears from new to its limit",
    wrong="bush may be reamed by {found}, its bearing wears by {limit}",
    on=(Pin, Rocker),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES],
    why="a bush that is reamed by less than it has worn is left oval, and bears on its edges",
    leaves_out="how the wear is shared by pin and bush; the wall that is left (wear.pins-and-bushes)",
    against=(),
)
def reamed_by_its_wear(part: Pin | Rocker, sheet: Sheet) -> Judgement:
    """The allowance for reaming, against the clearance at the limit less that of the new bearing."""
    reamed = sheet.take("r", part.wear.reamed)
    worn = sheet.work(
        "r_n", reamed_clean, m_n=sheet.take("m_n", part.wear.limit), a=sheet.take("a", part.wear.new)
    )
    return sheet.at_least(reamed, worn)


RULES = (new_can_run, reamed_by_its_wear)
