"""What a duty and the valves state of the steam, against what cams, cylinder and steam give."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import SIDES, EndAtWork, GearAtWork, clearance_share, is_typed
from speclint.handbook.steam import IF97, share_of_pressure
from speclint.specs import LoadCase, PoppetValve, ValveGear
from speclint_events.formulae.events import mean_of_ends
from speclint_events.formulae.steam import share_of_flow
from speclint_events.inputs import Steam, mean_cut_off, steam_of
from speclint_events.rules.steam import LEFT_OUT


@rule(
    "events.duty-agrees",
    edition=2,
    title="Cut-off, steam flow, pressures and temperatures in the cylinder and of the exhaust that a duty states are "
    "those that the cams and the steam of its notch give",
    on=ValveGear,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[IF97, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="covers, studs and pipes are judged by what the duty states: kinder steam than the real one passes them",
    leaves_out=f"what the duty takes from the events itself; {LEFT_OUT}; the local code and a competent person decide "
    "on the pressure for which a cylinder is made",
    against=(),
    limits=[
        Limit("cut_off", "3 %", "ratio", COMMON_PRACTICE, "how far the cut-off may be off, of the stroke"),
        Limit("steam", "15 %", "ratio", COMMON_PRACTICE, "error of the steam that is worked"),
        Limit("pressure", "5 %", "ratio", COMMON_PRACTICE, "how far a pressure may be off, absolute"),
        Limit("exhaust", "20 K", "temperature difference", COMMON_PRACTICE, "how far steam may be off"),
        Limit("dryness", "0.02", "ratio", COMMON_PRACTICE, "how far the dryness of the exhaust may be off"),
    ],
)
def duty_agrees(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Each stated value against the worked one, at the worse end of the band."""
    steam = steam_of(gear, case, sheet)
    judged = [
        *_cut_off(steam, case, sheet),
        *_flow(steam, case, sheet),
        *_pressures(steam, case, sheet),
        *_temperatures(steam, case, sheet),
    ]
    if not judged:
        raise sheet.not_applicable(
            "the duty states nothing of the steam in the cylinder, or takes it from the events"
        )
    return sheet.worst(*judged)


def _cut_off(steam: Steam, case: LoadCase, sheet: Sheet) -> Iterator[Judgement]:
    if sheet.is_stated("cut-off", case.cut_off):
        x_f, x_b = (steam.gear.share(steam.gear.end(steam.notch, side).inlet, opens=False) for side in SIDES)
        mean = sheet.work("x", mean_of_ends, x_f=x_f, x_b=x_b)
        yield sheet.equals(sheet.take("x_d", case.cut_off), mean, sheet.limit("cut_off")).else_says(
            "duty cuts off at {found}, its cams at {limit}"
        )


def _flow(steam: Steam, case: LoadCase, sheet: Sheet) -> Iterator[Judgement]:
    """Steam that is stated less than worked is the kinder: ports and pipes are made for it."""
    if is_typed("steam flow", case.steam_flow, sheet):
        stated, worked = sheet.take("m_d", case.steam_flow), steam.of_both("m_1", "steam")
        within = sheet.limit("steam", "x_m")
        least = sheet.work("m_l", share_of_flow, x=1 - within, m=worked)
        yield sheet.at_least(stated, least).else_says(
            "duty has {found} of steam, its cams take {limit} or more"
        )
        most = sheet.work("m_g", share_of_flow, x=1 + within, m=worked)
        yield sheet.at_most(stated, most).else_says(
            "duty has {found} of steam, its cams take {limit} at most"
        )


def _pressures(steam: Steam, case: LoadCase, sheet: Sheet) -> Iterator[Judgement]:
    """A greatest pressure that is stated lower than worked is the kinder, and a hold."""
    within = sheet.limit("pressure", "x_p")
    if is_typed("cylinder pressure", case.cylinder_pressure, sheet):
        stated = sheet.take_absolute("p_d", case.cylinder_pressure)
        worked = steam.of_both("p_m", "greatest")
        least = sheet.work("p_l", share_of_pressure, x=1 - within, p=worked)
        lower = sheet.at_least(stated, least).else_says(
            "greatest pressure {found} in the duty, {limit} or more by its cams"
        )
        yield lower.graded(Grade.HOLD)
        most = sheet.work("p_g", share_of_pressure, x=1 + within, p=worked)
        yield sheet.at_most(stated, most).else_says(
            "greatest pressure {found} in the duty, {limit} at most by its cams"
        )
    if is_typed("least cylinder pressure", case.least_cylinder_pressure, sheet):
        stated = sheet.take_absolute("p_d0", case.least_cylinder_pressure)
        worked = steam.of_both("p_0", "least")
        most = sheet.work("p_g0", share_of_pressure, x=1 + within, p=worked)
        yield sheet.at_most(stated, most).else_says(
            "least pressure {found} in the duty, {limit} at most by its cams"
        )


def _temperatures(steam: Steam, case: LoadCase, sheet: Sheet) -> Iterator[Judgement]:
    stated = (
        ("exhaust", case.exhaust_temperature, "exhaust temperature", "T_d", "T_w"),
        ("steam in the cylinder", case.cylinder_temperature, "mean temperature", "T_dm", "T_m"),
        ("steam at admission", case.admission_temperature, "admission temperature", "T_da", "T_a"),
        ("steam at release", case.release_temperature, "release temperature", "T_dr", "T_r"),
    )
    for says, value, name, symbol, worked in stated:
        if is_typed(f"temperature of the {says}", value, sheet):
            found = steam.of_both(worked, name)
            yield sheet.equals(sheet.take(symbol, value), found, sheet.limit("exhaust")).else_says(
                f"{says} at {{found}} in the duty, at {{limit}} by its cams"
            )
    if is_typed("dryness of the exhaust", case.exhaust_dryness, sheet):
        x = steam.of_both("x_w", "exhaust dryness")
        yield sheet.equals(sheet.take("x_e", case.exhaust_dryness), x, sheet.limit("dryness")).else_says(
            "exhaust {found} dry in the duty, {limit} by its cams"
        )


@rule(
    "events.clearance-volume",
    title="The clearance volume and the compression that a valve states are those of its end of the cylinder and of "
    "its cam, within 0.01 of the stroke",
    on=ValveGear,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="how high the steam is pressed before admission rests on both, and so does whether a valve lifts against it",
    leaves_out="the size of the clearance volume (cylinder.clearance-volume); valves that leave both to be worked",
    against=(),
    limits=[Limit("within", "0.01", "ratio", COMMON_PRACTICE, "how far a share of the stroke may be off")],
)
def clearance_volume(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """c = V_c/(A S) of each end against the valves of the end; the share left at compression in the shortest notch."""
    at_work = GearAtWork(gear, case, sheet)
    shortest = min(at_work.running, key=lambda name: mean_cut_off(at_work, name, sheet))
    ends = [at_work.end(shortest, side) for side in SIDES]
    judged = [
        one
        for end in ends
        for cam in (end.inlet, end.exhaust)
        for one in _of_valve(end, cam.train.valve, sheet)
    ]
    if not judged:
        raise sheet.not_applicable("no valve states the clearance volume or the compression of its end")
    return sheet.worst(*judged)


def _of_valve(end: EndAtWork, valve: PoppetValve, sheet: Sheet) -> Iterator[Judgement]:
    within = sheet.limit("within")
    if sheet.is_stated(f"clearance share of {valve.id}", valve.clearance_share):
        worked = clearance_share(*end.gear.place, end.side, sheet)
        stated = sheet.take("c_v", valve.clearance_share)
        judged = sheet.equals(stated, worked, within).else_says(
            "{item} states a clearance volume of {found}, its end has {limit}"
        )
        yield judged.of_item(valve.id)
    if sheet.is_stated(f"compression of {valve.id}", valve.compression_share):
        left = end.gear.share(end.exhaust, opens=False)
        stated = sheet.take("x_v", valve.compression_share)
        judged = sheet.equals(stated, left, within).else_says(
            "{item} states compression with {found} left, its cam gives {limit}"
        )
        yield judged.of_item(valve.id)


RULES = (duty_agrees, clearance_volume)
