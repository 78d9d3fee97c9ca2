"""Clearances on their ramps, both directions, and mid gear."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Radians
from speclint.facts import (
    STIFF,
    CamAtWork,
    EndAtWork,
    GearAtWork,
    angle_at_clearance,
    clearance_with_shaft,
    share_at,
)
from speclint.specs import LoadCase, ValveGear
from speclint_events.formulae.events import (
    angle_shifted,
    apart_in_two_notches,
    apart_when_reversed,
    share_of_ramp,
    share_shifted,
)
from speclint_events.inputs import clearance_corner, hot_events


@rule(
    "events.clearance-holds",
    title="From the cold engine to the hot one with worn seats the lead shifts by at most 2°, the cut-off by at most "
    "1.5 % of the stroke",
    on=ValveGear,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="events set on the cold engine are others at work, and others again when the seats have worn",
    leaves_out="wear of cams, rollers and bushes; temperatures off the middle of their bands",
    against=(),
    limits=[
        Limit("lead", "2 °", "angle", COMMON_PRACTICE, "greatest shift of the lead"),
        Limit("cut_off", "1.5 %", "ratio", COMMON_PRACTICE, "greatest shift of the cut-off, of the stroke"),
    ],
)
def clearance_holds(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Admission and cut-off with the least and with the greatest of the clearances cold, hot and worn."""
    at_work = GearAtWork(gear, case, sheet)

    def judge(end: EndAtWork) -> Judgement:
        cam, mark = end.inlet, end.side.value[0]
        known = cam.clearances
        ends = min(known.cold, known.hot, known.worn), max(known.cold, known.hot, known.worn)
        leads = [_angle(cam, δ, True, number, sheet) for number, δ in enumerate(ends, start=1)]
        lead = sheet.work(f"Δφ_{mark}", angle_shifted, φ_1=leads[0], φ_2=leads[1])
        shut = [_angle(cam, δ, False, number, sheet) for number, δ in enumerate(ends, start=1)]
        shares = [
            share_at(φ, at_work.crank, end.side, f"c{number}{mark}", sheet)
            for number, φ in enumerate(shut, start=1)
        ]
        moved = sheet.work(f"Δx_{mark}", share_shifted, x_1=shares[0], x_2=shares[1])
        return sheet.worst(
            sheet.at_most(lead, sheet.limit("lead")).else_says(
                "{item}: lead shifts by {found} from cold to worn, {limit} allowed"
            ),
            sheet.at_most(moved, sheet.limit("cut_off")).else_says(
                "{item}: cut-off shifts by {found} of the stroke from cold to worn, {limit} allowed"
            ),
        )

    return sheet.each(at_work.ends(), judge)


def _angle(cam: CamAtWork, δ: Metres, opens: bool, number: int, sheet: Sheet) -> Radians:
    event = "o" if opens else "s"
    return angle_at_clearance(cam, δ, f"φ_{event}{number}{cam.mark}", opens=opens, sheet=sheet)


@rule(
    "events.ramp-takes-clearance",
    edition=2,
    title="Cold, hot and worn, the clearance is used up on the ramp of every cam, between a tenth and nine tenths of "
    "its height",
    wrong="{item}: clearance {found} of its ramp, where the nearer limit is {limit}",
    on=ValveGear,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="off the ramp the gear meets its valve at speed and drops it on its seat",
    leaves_out="cams known by a table of lifts, which have no ramp of their own (valve.landing-speed judges those)",
    against=(),
    against_on={"poppet-valve": ("wear",), "cam": ("wear",), "tappet": ("wear",)},
    limits=[
        Limit("least", "0.1", "ratio", COMMON_PRACTICE, "least share of the ramp's height"),
        Limit("most", "0.9", "ratio", COMMON_PRACTICE, "greatest share of the ramp's height"),
    ],
)
def ramp_takes_clearance(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """y = δ/h_r of each cam in every notch; the most with what the shaft of its rocker gives way."""
    at_work = GearAtWork(gear, case, sheet)
    cams = {cam.at.cam.id: cam for notch in gear.notches for cam in at_work.cams(notch)}

    def judge(cam: CamAtWork) -> Judgement:
        if cam.ramp is None:
            raise sheet.not_applicable(f"{cam.at.cam.id} is known by a table of lifts")
        y = sheet.work(f"y_{cam.mark}", share_of_ramp, δ=clearance_corner(cam, sheet), h_r=cam.ramp[1])
        used_up = sheet.within(y, sheet.limit("least"), sheet.limit("most"))
        if cam.shaft == STIFF:
            return used_up
        δ_t = sheet.work(f"δ_t{cam.mark}", clearance_with_shaft, δ=cam.clearances.high, δ_s=cam.shaft.held)
        y_t = sheet.work(f"y_t{cam.mark}", share_of_ramp, δ=δ_t, h_r=cam.ramp[1])
        with_shaft = sheet.at_most(y_t, sheet.limit("most"))
        return sheet.worst(
            used_up,
            with_shaft.else_says(
                "{item}: with the twist of its rocker's shaft {found} of its ramp used up, {limit} allowed"
            ),
        )

    if not cams:
        raise sheet.not_assessed(f"no notch of {gear.id} names a cam", gear.where)
    return sheet.each([_Named(one) for one in cams.values()], lambda item: judge(item.cam))


class _Named:
    """A cam as an item of a rule, called by its id."""

    def __init__(self, cam: CamAtWork) -> None:
        self.cam, self.id = cam, cam.at.cam.id


@rule(
    "events.both-directions",
    edition=2,
    title="The gear has a notch for each direction; in each the valves act in their order, and a cam that is fixed to "
    "its shaft has one setting in all of them",
    wrong="settings of {item} {found} apart, {limit} allowed",
    on=ValveGear,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="an engine that cannot run back, or takes its steam late in the stroke then, is found out on the turntable",
    leaves_out="how well it runs either way, which the other rules of events judge in every notch",
    against=(),
    limits=[
        Limit("apart", "1 °", "angle", COMMON_PRACTICE, "greatest difference of two settings of one cam")
    ],
)
def both_directions(gear: ValveGear, case: LoadCase, sheet: Sheet) -> Judgement:
    """Notches forward and backward; admission about dead centre, then cut-off, release, compression; one foot of each
    cam, which running backwards is read from its other end."""
    at_work = GearAtWork(gear, case, sheet)
    found = {at_work.direction(name) for name in at_work.running}
    missing = [one for one in ("forward", "backward") if one not in found]
    says = f"no notch runs {missing[0]}" if missing else "notches run the engine both ways"
    judged = [sheet.states(not missing, says, where=gear.where)]
    judged += [_in_order(end, sheet) for end in at_work.ends()]
    turned = sheet.is_stated("whether the cams are turned", gear.cams_turn) and sheet.read(
        "cams are turned", gear.cams_turn
    )
    if not turned:
        judged += _one_setting(at_work, sheet)
    return sheet.worst(*judged)


def _in_order(end: EndAtWork, sheet: Sheet) -> Judgement:
    events = hot_events(end, sheet)
    degrees = ", ".join(
        f"{name} {math.degrees(angle):.1f}°"
        for name, angle in (
            ("admission", events.admission),
            ("cut-off", events.cut_off),
            ("release", events.release),
            ("compression", events.compression),
        )
    )
    how = "in their order" if events.in_order else "not in an order in which the engine runs"
    return sheet.states(events.in_order, f"{end.id}: the valves act {how}: {degrees}")


def _one_setting(at_work: GearAtWork, sheet: Sheet) -> list[Judgement]:
    """The feet of each cam in the notches of one direction, and the one of backwards against that of forwards."""
    first: dict[tuple[str, bool], CamAtWork] = {}
    judged = []
    for cam in (cam for name in at_work.running for cam in at_work.cams(name)):
        other = first.setdefault((cam.at.cam.id, cam.at.backward), cam)
        if other is not cam:
            k = float(round((cam.foot - other.foot) / math.tau))
            apart = sheet.work(f"Δφ_{cam.mark}", apart_in_two_notches, φ_1=other.foot, φ_2=cam.foot, k=k)
            judged.append(_apart(apart, cam, sheet))
    for (name, backward), cam in first.items():
        fore = first.get((name, False))
        if backward and fore is not None:
            feet = {"φ_b": cam.foot, "φ_f": fore.foot, "β": fore.cam.duration}
            k = float(round(sum(feet.values()) / math.tau))
            judged.append(_apart(sheet.work(f"Δφ_{cam.mark}", apart_when_reversed, **feet, k=k), cam, sheet))
    return judged


def _apart(apart: Radians, cam: CamAtWork, sheet: Sheet) -> Judgement:
    return sheet.at_most(apart, sheet.limit("apart")).of_item(cam.at.cam.id)


RULES = (clearance_holds, ramp_takes_clearance, both_directions)
