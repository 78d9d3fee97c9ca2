"""The engine at standstill: it starts from every position of its cranks, and stays where it is in mid gear."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import NewtonMetres
from speclint.facts import SIDES, GearAtWork, bore_as_drawn
from speclint.handbook.valve_events import BALDWIN
from speclint.specs import LoadCase, ValveGear
from speclint_events.formulae.steam import mean_starting_moment, share_of_moment
from speclint_events.formulae.turning import greatest_moment, least_moment
from speclint_events.inputs import at_all_clearances, engine_of_gear, longest, standing

_ALIKE = "cylinders that are not alike: all are taken as the one of this gear"


@rule(
    "events.starts-anywhere",
    edition=2,
    title="In the longest notch of each direction the engine starts from every position of its cranks: its least "
    "turning moment is at least 0.25 of the mean one",
    wrong="{item}: least moment {found} of the mean, {limit} wanted",
    on=ValveGear,
    cases=("starting",),
    grade=Grade.NONCONFORMITY,
    cites=[BALDWIN, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="an engine that stops where no inlet is open behind a good crank has to be pushed off, train and all",
    leaves_out=f"friction, leakage, steam left behind shut valves; {_ALIKE}",
    against=(),
    limits=[
        Limit("least", "0.25", "ratio", COMMON_PRACTICE, "least share of the mean moment"),
        Limit("acts", "0.85", "ratio", BALDWIN, "share of the live pressure that acts at starting, mean"),
    ],
)
def starts_anywhere(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Chest pressure behind every piston whose inlet is open; the least moment over a revolution against the mean."""
    at_work = GearAtWork(gear, case, sheet)
    mean = _mean(at_work, case, sheet)
    found = [(one, longest(at_work, one, sheet)) for one in ("forward", "backward")]

    def judge(item: tuple[str, str]) -> Judgement:
        direction, notch = item
        inlets = [at_work.end(notch, side).inlet for side in SIDES]
        least = sheet.look_up(
            f"M_{direction[0]}",
            least_moment,
            engine=standing(at_work, case, direction == "backward", sheet),
            fronts=at_all_clearances(inlets[0]),
            backs=at_all_clearances(inlets[1]),
        )
        share = sheet.work(f"x_{direction[0]}", share_of_moment, M=least, M_m=mean)
        return sheet.at_least(share, sheet.limit("least"))

    return sheet.each([(one, notch) for one, notch in found if notch is not None], judge)


@rule(
    "events.mid-gear",
    edition=2,
    title="In mid gear the engine does not set off: its inlets are shut, or no more than 0.02 of its mean turning "
    "moment is left",
    wrong="in mid gear {found} of the mean moment is left, {limit} allowed",
    on=ValveGear,
    cases=("starting",),
    grade=Grade.HOLD,
    cites=[BALDWIN, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="an engine that is left in mid gear with a leaking regulator must not move off by itself",
    leaves_out=f"brakes and drain cocks, which hold a standing engine too; leaking valves; {_ALIKE}; the local code "
    "and a competent person decide how a standing engine is secured",
    against=(),
    limits=[
        Limit("most", "0.02", "ratio", COMMON_PRACTICE, "greatest share of the mean moment"),
        Limit("acts", "0.85", "ratio", BALDWIN, "share of the live pressure that acts at starting, mean"),
    ],
)
def mid_gear(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Greatest turning moment, either way, with live steam behind every piston whose inlet is open in mid gear."""
    at_work = GearAtWork(gear, case, sheet)
    names = [name for name in gear.notches if at_work.direction(name) == "mid"]
    if not names:
        raise sheet.not_assessed(f"{gear.id} states no notch in mid gear", gear.where)

    def judge(notch: str) -> Judgement:
        inlets = [at_work.cam(notch, "inlet", side) for side in SIDES]
        if not any(inlets):
            return sheet.states(True, f"notch {notch}: no cam opens an inlet")
        front, back = (at_all_clearances(one) if one else (None, None, None) for one in inlets)
        engine = standing(at_work, case, False, sheet)
        M = sheet.look_up("M_0", greatest_moment, engine=engine, fronts=front, backs=back)
        share = sheet.work("x_0", share_of_moment, M=M, M_m=_mean(at_work, case, sheet))
        return sheet.at_most(share, sheet.limit("most"))

    return sheet.each(names, judge)


def _mean(at_work: GearAtWork, case: LoadCase, sheet: Sheet) -> NewtonMetres:
    """Mean turning moment by the trade's formula, of as many cylinders as the engine has cranks."""
    d = sheet.take_nominal("d", bore_as_drawn(*at_work.place, sheet))
    return sheet.work(
        "M_m",
        mean_starting_moment,
        k=sheet.limit("acts", "k"),
        p=sheet.take("p_g", case.live_pressure),
        d=d,
        S=at_work.crank.stroke,
        z=float(len(engine_of_gear(at_work, sheet).cranks)),
    )


RULES = (starts_anywhere, mid_gear)
