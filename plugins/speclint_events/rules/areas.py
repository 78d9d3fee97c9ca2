"""What the valves open to the steam: that they open at all, how fast, and how much."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import CamAtWork, EndAtWork, GearAtWork, passage_of, piston_area, speed_of_crank
from speclint.handbook.cams import mean_piston_speed, revolutions
from speclint.handbook.steam import steam_speed_of_sound
from speclint.handbook.valve_events import JSME, TAYLOR, mach_index
from speclint.specs import LoadCase, ValveGear
from speclint_events.formulae.events import lift_left
from speclint_events.formulae.openings import (
    early_opening,
    greatest_lift,
    mean_effective_area,
    share_of_last_fifth,
)
from speclint_events.inputs import clearance_corner, mean_cut_off, measured, running_notch


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


@rule(
    "events.area-enough",
    title="In its notch and at its speed the engine asks for steam through its inlets at a Mach index of at most 0.5, "
    "and lets it go through its exhausts at one of at most 0.4",
    wrong="{item} too small for the speed: Mach index {found}, {limit} allowed",
    on=ValveGear,
    cases=("running",),
    edition=2,
    grade=Grade.OBSERVATION,
    gravest=Grade.NONCONFORMITY,
    cites=[JSME, TAYLOR, COMMON_PRACTICE],
    why="a valve too small for the speed starves the cylinder, and what it lets go holds the piston back",
    leaves_out="ports and passages beyond those that stand in series with the valve",
    against=(),
    limits=[
        Limit("inlet", "0.5", "ratio", JSME, "greatest Mach index of an inlet"),
        Limit("exhaust", "0.4", "ratio", COMMON_PRACTICE, "greatest Mach index of an exhaust"),
        Limit("grave", "0.6", "ratio", TAYLOR, "from which the filling falls steeply"),
    ],
)
def area_enough(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Z = c_m A/(a A_m): mean speed and area of the piston, speed of sound and mean effective area of the opening."""
    at_work = GearAtWork(gear, case, sheet)
    notch = running_notch(at_work, case, sheet)
    n = sheet.work("n", revolutions, ω=speed_of_crank(at_work.place[0], case, sheet))
    c_m = sheet.work("c_m", mean_piston_speed, S=at_work.crank.stroke, n=n)
    p, T = sheet.take_absolute("p_i", case.live_pressure), sheet.take("T_i", case.live_temperature)
    sound = {"inlet": sheet.work("a_i", steam_speed_of_sound, p=p, T=T)}

    def judge(item: tuple[str, CamAtWork]) -> Judgement:
        cam = item[1]
        if cam.at.serves not in sound:  # taken for an exhaust alone, so that no inlet waits for it
            p_e = sheet.take_absolute("p_e", case.exhaust_pressure)
            T_e = sheet.take("T_e", case.exhaust_temperature)
            sound[cam.at.serves] = sheet.work("a_e", steam_speed_of_sound, p=p_e, T=T_e)
        A = piston_area(*at_work.place, cam.at.side, sheet)
        passage = passage_of(cam.train.valve, cam.mark, sheet)
        A_m = measured(f"A_m{cam.mark}", mean_effective_area, cam, sheet, passage=passage)
        Z = sheet.work(f"Z_{cam.mark}", mach_index, c_m=c_m, A=A, a=sound[cam.at.serves], A_m=A_m)
        judged = sheet.at_most(Z, sheet.limit(cam.at.serves))
        filled = sheet.at_most(Z, sheet.limit("grave")).holds
        return judged if filled else judged.graded(Grade.NONCONFORMITY)

    return sheet.each([(f"{cam.at.serves} {cam.at.side.value}", cam) for cam in at_work.cams(notch)], judge)


RULES = (opens, opening_speed, shutting_speed, area_enough)
