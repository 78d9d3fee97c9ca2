"""When the inlet opens, and whether inlet and exhaust of one end are ever open together."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Radians
from speclint.facts import SIDES, EndAtWork, GearAtWork, speed_of_crank
from speclint.specs import LoadCase, ValveGear
from speclint_events.formulae.events import angle_between, lead_angle, leads_apart
from speclint_events.formulae.openings import lift_at_dead_centre
from speclint_events.inputs import hot_events, longest, measured, turns_apart
from speclint_events.sources import BOURNE, LOCOMOTIVE_BOILERS_AND_ENGINES


@rule(
    "events.lead",
    edition=3,
    title="The inlet opens 0° to 10° before dead centre, at least 2° in a notch that is run above 120 rev/min, and at "
    "most 6 mm by dead centre; in the longest notch it may open late",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    gravest=Grade.NONCONFORMITY,
    cites=[LOCOMOTIVE_BOILERS_AND_ENGINES, BOURNE, COMMON_PRACTICE],
    why="without lead the piston is off before there is steam behind it; with much it is held back before dead centre",
    leaves_out="bending and twist of the gear but for a rocker's shaft; temperatures off the middle of their bands",
    against=(),
    limits=[
        Limit("least", "0 °", "angle", LOCOMOTIVE_BOILERS_AND_ENGINES, "least lead"),
        Limit("most", "10 °", "angle", COMMON_PRACTICE, "greatest lead"),
        Limit("at_speed", "2 °", "angle", COMMON_PRACTICE, "least lead at speed"),
        Limit("speed", "120 rev/min", "rotational speed", COMMON_PRACTICE, "from which lead is needed"),
        Limit("lift", "6 mm", "length", LOCOMOTIVE_BOILERS_AND_ENGINES, "greatest lift at dead centre"),
    ],
)
def lead(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """λ = −φ of admission, with every clearance, play and setting; the lift at dead centre with every clearance."""
    at_work = GearAtWork(gear, case, sheet)
    fast = _run_fast(at_work, case, sheet)
    last = {longest(at_work, direction, sheet) for direction in ("forward", "backward")}

    def judge(end: EndAtWork) -> Judgement:
        λ = _lead(end, sheet)
        judged = [sheet.at_most(λ, sheet.limit("most")).else_says("{item}: lead {found}, {limit} allowed")]
        if end.notch not in last or end.notch == fast:
            least = sheet.limit("at_speed" if end.notch == fast else "least")
            low = sheet.at_least(λ, least).else_says("{item}: lead {found}, {limit} wanted")
            judged.append(low.graded(Grade.NONCONFORMITY) if λ < 0 else low)
        h = measured(f"h_{end.inlet.mark}", lift_at_dead_centre, end.inlet, sheet)
        lifted = sheet.at_most(h, sheet.limit("lift")).else_says(
            "{item}: inlet {found} open at dead centre, {limit} allowed"
        )
        return sheet.worst(*judged, lifted)

    return sheet.each(at_work.ends(), judge)


def _run_fast(at_work: GearAtWork, case: LoadCase, sheet: Sheet) -> str | None:
    """The notch that the load case runs in, where it runs faster than lead is needed from."""
    if not sheet.is_stated("notch", case.notch):
        return None
    name = sheet.read("notch", case.notch)
    ω = speed_of_crank(at_work.place[0], case, sheet)
    return name if ω > sheet.limit("speed", "ω_l") else None


def _lead(end: EndAtWork, sheet: Sheet) -> Radians:
    return sheet.work(f"λ_{end.side.value[0]}", lead_angle, φ=end.gear.angle(end.inlet, opens=True))


@rule(
    "events.lead-alike",
    edition=2,
    title="The leads of all notches that run one way are within 4° of one another",
    wrong="leads of {item} {found} apart, {limit} allowed",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE],
    why="a lead that changes as the engine is notched up makes it knock in one notch and lose power in another",
    leaves_out="leads that are each outside their limits (events.lead)",
    against=(),
    limits=[Limit("apart", "4 °", "angle", COMMON_PRACTICE, "greatest difference of the leads")],
)
def lead_alike(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """The greatest lead of an end less its least, notches of one direction."""
    at_work = GearAtWork(gear, case, sheet)
    items = []
    for direction in ("forward", "backward"):
        names = [name for name in at_work.running if at_work.direction(name) == direction]
        if len(names) > 1:
            items += [
                (f"{direction}, {side.value}", [at_work.end(name, side) for name in names]) for side in SIDES
            ]
    if not items:
        raise sheet.not_applicable("no direction has more than one notch")

    def judge(item: tuple[str, list[EndAtWork]]) -> Judgement:
        ends = sorted(item[1], key=lambda end: hot_events(end, sheet).admission)
        most, least = _lead(ends[0], sheet), _lead(ends[-1], sheet)
        return sheet.at_most(sheet.work("Δλ", leads_apart, λ_1=most, λ_2=least), sheet.limit("apart"))

    return sheet.each(items, judge)


@rule(
    "events.no-overlap",
    edition=3,
    title="Inlet and exhaust of one end are never open together: at least 5° of the crank lie between the shutting of "
    "the one and the opening of the other",
    wrong="{item}: {found} between inlet and exhaust, {limit} wanted",
    on=ValveGear,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="both open together, live steam blows straight into the exhaust, and an engine may start by itself in mid gear",
    leaves_out="valves that bounce or stick; the local code and a competent person decide on what holds an engine "
    "standing",
    against=(),
    limits=[Limit("least", "5 °", "angle", COMMON_PRACTICE, "least angle between the two valves")],
)
def no_overlap(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """From the exhaust's shutting to the inlet's opening, and from cut-off to release, with play and setting."""
    at_work = GearAtWork(gear, case, sheet)
    last = {longest(at_work, direction, sheet) for direction in ("forward", "backward")}
    mid = [name for name in gear.notches if at_work.direction(name) == "mid"]
    ends = [*at_work.ends(), *(end for name in mid for end in _whole_ends(at_work, name))]

    def judge(end: EndAtWork) -> Judgement:
        gaps = _gaps(end, sheet)
        judged = sheet.worst(*(sheet.at_least(gap, sheet.limit("least")) for gap in gaps))
        grave = end.notch in mid or end.notch in last
        return judged.graded(Grade.HOLD) if grave and min(gaps) < 0 else judged

    return sheet.each(ends, judge)


def _whole_ends(at_work: GearAtWork, notch: str) -> list[EndAtWork]:
    """The ends of a notch in mid gear at which both valves have a cam."""
    both = [
        side for side in SIDES if all(at_work.cam(notch, serves, side) for serves in ("inlet", "exhaust"))
    ]
    return [at_work.end(notch, side) for side in both]


def _gaps(end: EndAtWork, sheet: Sheet) -> tuple[Radians, Radians]:
    """Angles between the valves: before admission, and before release."""
    angle, mark = end.gear.angle, end.side.value[0]
    opened, shut = angle(end.inlet, opens=True), angle(end.inlet, opens=False)
    freed, closed = angle(end.exhaust, opens=True), angle(end.exhaust, opens=False)
    found = hot_events(end, sheet)
    before, after = turns_apart(end, found)
    return (
        sheet.work(f"β_a{mark}", angle_between, φ_1=closed, φ_2=opened, k=before),
        sheet.work(f"β_r{mark}", angle_between, φ_1=shut, φ_2=freed, k=after),
    )


RULES = (lead, lead_alike, no_overlap)
