"""Where on the stroke the valves act: cut-off, release and compression of both ends."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import SIDES, EndAtWork, GearAtWork, notch_of
from speclint.handbook.valve_events import positions_of
from speclint.specs import LoadCase, ValveGear
from speclint_events.formulae.events import angle_between, ends_apart, mean_of_ends
from speclint_events.inputs import hot_events, turns_apart

_EVENTS = ("admission", "cut_off", "release", "compression")


@rule(
    "events.cut-off-as-asked",
    edition=2,
    title="In every notch the cams cut off where the notch is asked to, within 2 % of the stroke, mean of both ends",
    wrong="notch {item} cuts off at {found}, asked for {limit}",
    on=ValveGear,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="the cut-off decides power and steam; one that only stands on paper makes every later figure wrong",
    leaves_out="bending and twist of the gear but for a rocker's shaft; what a load case states as its cut-off "
    "(events.duty-agrees); temperatures off the middle of their bands",
    against=(),
    limits=[
        Limit("within", "2 %", "ratio", COMMON_PRACTICE, "how far the cut-off may be from that asked for")
    ],
)
def cut_off_as_asked(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Mean of the shares of the stroke at which the inlets shut, against the notch's; the sheet lists what a fitter
    checks: the piston's distance from its end at each event hot, and the clearance cold."""
    at_work = GearAtWork(gear, case, sheet)

    def judge(notch: str) -> Judgement:
        ends = [at_work.end(notch, side) for side in SIDES]
        x_f, x_b = (at_work.share(end.inlet, opens=False) for end in ends)
        for end in ends:
            _list_for_fitter(end, sheet)
        asked = sheet.take("x_a", notch_of(gear, notch, sheet).cut_off)
        mean = sheet.work("x", mean_of_ends, x_f=x_f, x_b=x_b)
        return sheet.equals(mean, asked, sheet.limit("within"))

    return sheet.each(at_work.running, judge)


def _list_for_fitter(end: EndAtWork, sheet: Sheet) -> None:
    """The five numbers that a fitter checks on the engine."""
    found = positions_of(hot_events(end, sheet), end.gear.crank, end.side)
    for event in _EVENTS:
        words = event.replace("_", "-")
        sheet.list_item(
            f"{end.id}: piston from its end at {words}",
            f"{sheet.millimetres(found.travel(event), '.1f')}, clearance hot",
        )
    for cam in (end.inlet, end.exhaust):
        what = f"{end.id}: clearance at the tappet of the {cam.at.serves} valve"
        sheet.list_item(what, f"{sheet.millimetres(cam.clearances.cold, '.2f')}, cold")


@rule(
    "events.equal-ends",
    edition=2,
    title="Front and back of a cylinder cut off within 3 % of the stroke of each other up to a cut-off of 40 %, within "
    "6 % above",
    wrong="front and back cut off {found} apart in notch {item}, {limit} allowed",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="an end that gets more steam does more work, and the engine pulls unevenly",
    leaves_out="the work of both ends, which the steam decides (events.equal-work); other cylinders, taken as alike",
    against=(),
    limits=[
        Limit("short", "3 %", "ratio", COMMON_PRACTICE, "greatest difference up to the long cut-off"),
        Limit("long", "6 %", "ratio", COMMON_PRACTICE, "greatest difference above the long cut-off"),
        Limit("from", "40 %", "ratio", COMMON_PRACTICE, "cut-off above which more is allowed"),
    ],
)
def equal_ends(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """|x_f − x_b| of the inlets' shutting."""
    at_work = GearAtWork(gear, case, sheet)

    def judge(notch: str) -> Judgement:
        x_f, x_b = (at_work.share(at_work.end(notch, side).inlet, opens=False) for side in SIDES)
        mean = sheet.work("x", mean_of_ends, x_f=x_f, x_b=x_b)
        most = sheet.limit("short" if mean <= sheet.limit("from", "x_l") else "long")
        return sheet.at_most(sheet.work("Δx", ends_apart, x_f=x_f, x_b=x_b), most)

    return sheet.each(at_work.running, judge)


@rule(
    "events.release",
    edition=2,
    title="The exhaust opens at 0.75 to 0.95 of the stroke, and at least 15° of the crank after the inlet has shut",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="steam let go too early has work left in it; too late it is still there when the piston returns",
    leaves_out="the pressure then (events.expansion-used); a release within 5° of the cut-off (events.no-overlap)",
    against=(),
    limits=[
        Limit("least", "0.75", "ratio", COMMON_PRACTICE, "least share of the stroke at release"),
        Limit("most", "0.95", "ratio", COMMON_PRACTICE, "greatest share of the stroke at release"),
        Limit("after", "15 °", "angle", COMMON_PRACTICE, "least crank angle from cut-off to release"),
    ],
)
def release(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Share of the stroke at which the exhaust leaves its seat, and the crank angle since the cut-off."""
    at_work = GearAtWork(gear, case, sheet)

    def judge(end: EndAtWork) -> Judgement:
        share = at_work.share(end.exhaust, opens=True)
        placed = sheet.within(share, sheet.limit("least"), sheet.limit("most")).else_says(
            "{item}: release at {found} of the stroke, where the nearer limit is {limit}"
        )
        _, k = turns_apart(end, hot_events(end, sheet))
        freed, shut = at_work.angle(end.exhaust, opens=True), at_work.angle(end.inlet, opens=False)
        after = sheet.work("β_r", angle_between, φ_1=shut, φ_2=freed, k=k)
        return sheet.worst(
            placed,
            sheet.at_least(after, sheet.limit("after")).else_says(
                "{item}: release {found} after cut-off, {limit} wanted"
            ),
        )

    return sheet.each(at_work.ends(), judge)


@rule(
    "events.compression",
    edition=2,
    title="The exhaust shuts with 0.05 to 0.30 of the return stroke left",
    wrong="{item}: {found} of the stroke left at compression, the nearer limit is {limit}",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="steam that is kept cushions the piston; too much of it is pressed above the live steam",
    leaves_out="the pressure that it reaches (events.compression-peak)",
    against=(),
    limits=[
        Limit("least", "0.05", "ratio", COMMON_PRACTICE, "least share of the stroke left at compression"),
        Limit("most", "0.30", "ratio", COMMON_PRACTICE, "greatest share of the stroke left at compression"),
    ],
)
def compression(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Share of the stroke left when the exhaust is back on its seat."""
    at_work = GearAtWork(gear, case, sheet)

    def judge(end: EndAtWork) -> Judgement:
        share = at_work.share(end.exhaust, opens=False)
        return sheet.within(share, sheet.limit("least"), sheet.limit("most"))

    return sheet.each(at_work.ends(), judge)


RULES = (cut_off_as_asked, equal_ends, release, compression)
