"""What the valves open to the steam: that they open at all, and how fast."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import CamAtWork, EndAtWork, GearAtWork, passage_of
from speclint.specs import LoadCase, ValveGear
from speclint_events.formulae.events import lift_left
from speclint_events.formulae.openings import (
    early_opening,
    greatest_lift,
    share_of_last_fifth,
)
from speclint_events.inputs import clearance_corner, mean_cut_off, measured


@rule(
    "events.opens",
    edition=2,
    title="In every notch but mid gear every cam lifts its valve off its seat, with the greatest clearance too",
    wrong="{item} stays shut: {found} of lift is left",
    on=ValveGear,
    cases=("running",),
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES],
    why="an inlet that stays shut loses the end its work; an exhaust that stays shut traps steam and water there",
    leaves_out="bending of the gear; how far the valves open (valve.cam-gives-lift); the local code and a competent "
    "person decide on an engine that may trap water",
    against=(),
)
def opens(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """i (s − δ) > 0 with the greatest lift of the cam and the greatest clearance, cold, hot or worn."""
    at_work = GearAtWork(gear, case, sheet)

    def judge(item: tuple[str, CamAtWork]) -> Judgement:
        cam = item[1]
        s = sheet.look_up(f"s_{cam.mark}", greatest_lift, cam=cam.cam)
        δ = clearance_corner(cam, sheet)
        h = sheet.work(f"h_{cam.mark}", lift_left, i=cam.ratio, s=s, δ=δ)
        return sheet.stays(h, cam.ratio * s, strictly=True)

    return sheet.each(
        [(f"{end.id}, {cam.at.serves}", cam) for end in at_work.ends() for cam in (end.inlet, end.exhaust)],
        judge,
    )


@rule(
    "events.opening-speed",
    title="At cut-offs to 35 % the inlet has opened a quarter of its greatest area 10° after dead centre",
    wrong="inlet opens slowly, {item}: {found} of its greatest area by 10°, {limit} wanted",
    on=ValveGear,
    cases=("running",),
    edition=2,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="an inlet that opens slowly throttles the steam while the piston is already moving away",
    leaves_out="the speed at which the engine runs (events.area-enough)",
    against=(),
    limits=[
        Limit("least", "0.25", "ratio", COMMON_PRACTICE, "least share of the greatest area"),
        Limit("to", "35 %", "ratio", COMMON_PRACTICE, "cut-off to which it is asked"),
    ],
)
def opening_speed(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Effective area of valve and port 10° after dead centre over their greatest.

    The throats of the valve are no wider than seat, block and its rim leave.
    """
    at_work = GearAtWork(gear, case, sheet)
    to = sheet.limit("to")
    early = [end for end in at_work.ends() if mean_cut_off(at_work, end.notch, sheet) <= to]
    if not early:
        raise sheet.not_applicable("every notch cuts off later")

    def judge(end: EndAtWork) -> Judgement:
        passage = passage_of(end.inlet.train.valve, end.inlet.mark, sheet)
        share = measured(f"y_{end.inlet.mark}", early_opening, end.inlet, sheet, passage=passage)
        return sheet.at_least(share, sheet.limit("least"))

    return sheet.each(early, judge)


@rule(
    "events.shutting-speed",
    title="The last fifth of the inlet's opening, by angle, passes at least 0.03 of its area over the angle",
    wrong="inlet shuts slowly, {item}: {found} of its area in the last fifth, {limit} wanted",
    on=ValveGear,
    cases=("running",),
    edition=2,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="an inlet that is nearly shut for long only throttles the steam and blurs the cut-off",
    leaves_out="the speed at which the valve lands (valve.landing-speed)",
    against=(),
    limits=[Limit("least", "0.03", "ratio", COMMON_PRACTICE, "least share of the last fifth")],
)
def shutting_speed(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """∫A_e dφ over the last fifth of the opening over that of all of it."""
    at_work = GearAtWork(gear, case, sheet)

    def judge(end: EndAtWork) -> Judgement:
        cam = end.inlet
        passage = passage_of(cam.train.valve, cam.mark, sheet)
        share = measured(f"y_{cam.mark}", share_of_last_fifth, cam, sheet, passage=passage)
        return sheet.at_least(share, sheet.limit("least"))

    return sheet.each(at_work.ends(), judge)


RULES = (opens, opening_speed, shutting_speed)
