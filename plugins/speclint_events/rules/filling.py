"""How much the valves open to the steam, at the speed at which the engine runs."""

from __future__ import annotations

import math
from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import MetresPerSecond, RadiansPerSecond, SquareMetres
from speclint.facts import (
    CamAtWork,
    GearAtWork,
    angle_at_clearance,
    passage_of,
    piston_area,
    share_at,
    speed_of_crank,
)
from speclint.handbook.cams import mean_piston_speed, revolutions
from speclint.handbook.steam import steam_speed_of_sound
from speclint.handbook.valve_events import JSME, TAYLOR, Crank, mach_index
from speclint.specs import LoadCase, ValveGear
from speclint_events.formulae.events import angle_between, mean_speed_of_share
from speclint_events.formulae.openings import mean_effective_area
from speclint_events.inputs import mean_cut_off, measured, running_notch


@rule(
    "events.area-enough",
    title="In its notch and in those that cut off earlier the engine at its speed asks for steam through its inlets at "
    "a Mach index of at most 0.5, and lets it go through its exhausts at one of at most 0.4",
    wrong="{item} too small for the speed: Mach index {found}, {limit} allowed",
    on=ValveGear,
    cases=("running",),
    edition=3,
    grade=Grade.OBSERVATION,
    gravest=Grade.NONCONFORMITY,
    cites=[JSME, TAYLOR, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a valve too small for the speed starves the cylinder, and what it lets go holds the piston back",
    leaves_out="ports and passages beyond those that stand in series with the valve; notches that cut off later, or "
    "run the other way, in which the engine does not run so fast",
    against=(),
    limits=[
        Limit("inlet", "0.5", "ratio", JSME, "greatest Mach index of an inlet"),
        Limit("exhaust", "0.4", "ratio", COMMON_PRACTICE, "greatest Mach index of an exhaust"),
        Limit("grave", "0.6", "ratio", TAYLOR, "from which the filling falls steeply"),
    ],
)
def area_enough(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Z = c A/(a A_m): speed and area of the piston, speed of sound and mean effective area of the opening.

    The speed is the mean over the stroke in the notch of the case, and of inlets of notches that cut off earlier the
    mean from dead centre until they shut, as the piston has gone no faster by then.
    """
    at_work = GearAtWork(gear, case, sheet)
    notch = running_notch(at_work, case, sheet)
    ω = speed_of_crank(at_work.place[0], case, sheet)
    n = sheet.work("n", revolutions, ω=ω)
    c_m = sheet.work("c_m", mean_piston_speed, S=at_work.crank.stroke, n=n)

    sounds: dict[str, MetresPerSecond] = {}

    def judge(item: tuple[str, CamAtWork]) -> Judgement:
        cam = item[1]
        own = cam.at.notch == notch
        mark = cam.mark if own else f"{cam.mark},{cam.at.notch}"
        early = not own and cam.at.serves == "inlet"
        Z = sheet.work(
            f"Z_{mark}",
            mach_index,
            c_m=_speed_until_shut(cam, mark, at_work.crank, ω, sheet) if early else c_m,
            A=piston_area(*at_work.place, cam.at.side, sheet),
            a=_sound(cam.at.serves, sounds, case, sheet),
            A_m=_mean_area(cam, mark, sheet),
        )
        judged = sheet.at_most(Z, sheet.limit(cam.at.serves))
        filled = sheet.at_most(Z, sheet.limit("grave")).holds
        return judged if filled else judged.graded(Grade.NONCONFORMITY)

    own = [(f"{cam.at.serves} {cam.at.side.value}", cam) for cam in at_work.cams(notch)]
    earlier = [
        (f"{cam.at.serves} {cam.at.side.value} in notch {cam.at.notch}", cam)
        for cam in _cams_of_earlier(at_work, notch, sheet)
    ]
    return sheet.each([*own, *earlier], judge)


def _mean_area(cam: CamAtWork, mark: str, sheet: Sheet) -> SquareMetres:
    passage = passage_of(cam.train.valve, mark, sheet)
    return measured(f"A_m{mark}", mean_effective_area, cam, sheet, passage=passage)


def _cams_of_earlier(at_work: GearAtWork, notch: str, sheet: Sheet) -> Iterator[CamAtWork]:
    """The cams of the notches of the same direction that cut off earlier, but those that work in this one too."""
    cuts_off, way = mean_cut_off(at_work, notch, sheet), at_work.direction(notch)
    seen = {(cam.mark, cam.at.cam.id) for cam in at_work.cams(notch)}
    for name in at_work.running:
        if name == notch or at_work.direction(name) != way or mean_cut_off(at_work, name, sheet) > cuts_off:
            continue
        for cam in at_work.cams(name):
            if (cam.mark, cam.at.cam.id) not in seen:
                seen.add((cam.mark, cam.at.cam.id))
                yield cam


def _speed_until_shut(
    cam: CamAtWork, mark: str, crank: Crank, ω: RadiansPerSecond, sheet: Sheet
) -> MetresPerSecond:
    """Mean speed of the piston from dead centre until its inlet shuts, the clearance hot, m/s."""
    at = angle_at_clearance(cam, cam.clearances.hot, f"φ_s{mark}", opens=False, sheet=sheet)
    turns = float(math.floor(at / math.tau))
    φ = sheet.work(f"φ_{mark}", angle_between, φ_1=0.0, φ_2=at, k=-turns)
    x = share_at(φ, crank, cam.at.side, f"s{mark}", sheet)
    return sheet.work(f"c_{mark}", mean_speed_of_share, x=x, S=crank.stroke, ω=ω, φ=φ)


def _sound(serves: str, known: dict[str, MetresPerSecond], case: LoadCase, sheet: Sheet) -> MetresPerSecond:
    """Speed of sound before a valve, m/s: taken once of each steam, of the exhaust only where one is judged."""
    if serves not in known:
        known[serves] = _in_live_steam(case, sheet) if serves == "inlet" else _in_exhaust(case, sheet)
    return known[serves]


def _in_live_steam(case: LoadCase, sheet: Sheet) -> MetresPerSecond:
    p, T = sheet.take_absolute("p_i", case.live_pressure), sheet.take("T_i", case.live_temperature)
    return sheet.work("a_i", steam_speed_of_sound, p=p, T=T)


def _in_exhaust(case: LoadCase, sheet: Sheet) -> MetresPerSecond:
    p, T = sheet.take_absolute("p_e", case.exhaust_pressure), sheet.take("T_e", case.exhaust_temperature)
    return sheet.work("a_e", steam_speed_of_sound, p=p, T=T)


RULES = (area_enough,)
