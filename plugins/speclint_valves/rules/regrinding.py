"""Valves, seats and cams after the last of their regrinds."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Newtons, Radians
from speclint.facts import sink_of_valve, springs_of
from speclint.specs import Beat, Cam, LoadCase, PoppetValve, ValveSeat
from speclint_valves.formulae.regrinding import (
    adjustment_left,
    cap_ground,
    face_widened,
    ground_off,
    load_when_sunk,
    ring_below_face,
    ring_outside_face,
    share_of_skin,
    skin_used,
)
from speclint_valves.inputs.shutting import spindle_of
from speclint_valves.inputs.springs import springs_worn
from speclint_valves.rules.seats import DEFERS
from speclint_valves.rules.shutting import MARGIN, SPRINGS, held_shut, may_lift, shut_against_friction

#: Treatments that harden the steel itself to a depth.
_HARDENED = ("case hardened", "induction hardened", "nitrided")


class _Ground(NamedTuple):
    """A beat with its seat: what is ground off both in all, and the angle of its cone."""

    name: str
    beat: Beat
    seat: ValveSeat
    t_s: Metres
    t_v: Metres
    β: Radians


@rule(
    "wear.seats-reground",
    edition=4,
    title="After its last regrind a valve is shut with load enough by springs worn to their limit and packed by no "
    "more than it sinks, gear and seat rings allow for it, and cam and cap keep half of their skin",
    on=(PoppetValve, Cam),
    cases=("starting", "running", "drifting", "water"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[*SPRINGS, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="each regrind lets the valve sink, and what it sinks is missing from springs, clearance and seat ring",
    leaves_out="clearance to cage and stop, which grows as the valve sinks; what a cap without a hardened skin bears; "
    f"wear between regrinds (wear.works-at-limit); {DEFERS}",
    against=("wear",),
    against_on={"valve-seat": ("wear",)},
    limits=[
        MARGIN,
        Limit("contact", "5 mm", "length", COMMON_PRACTICE, "greatest width of contact, reground"),
        Limit(
            "ring", "3 mm", "length", COMMON_PRACTICE, "least metal of a seat ring beside and below its face"
        ),
        Limit(
            "skin",
            "0.5",
            "ratio",
            COMMON_PRACTICE,
            "share of a hardened skin that may be ground and worn off",
        ),
    ],
)
def seats_reground(part: PoppetValve | Cam, case: LoadCase, sheet: Sheet) -> Judgement:
    """Sink of the valve by all regrinds of both faces of the beat that sinks most, and what it takes away."""
    if isinstance(part, Cam):
        return _skin(part, sheet)
    ground = [*_ground(part, sheet)]
    sunk = [
        sheet.work(f"h_{one.name[0]}", sink_of_valve, t_s=one.t_s, t_v=one.t_v, β=one.β) for one in ground
    ]
    h = max(sunk)
    faces = sheet.each([(one.name, one) for one in ground], lambda item: sheet.worst(*_faces(item[1], sheet)))
    gear = _adjusted(part, h, sheet), *_washers(part, h, sheet), *_cap(part, h, sheet)
    return sheet.worst(faces, *gear, *_loads(part, case, h, sheet))


def _ground(valve: PoppetValve, sheet: Sheet) -> Iterator[_Ground]:
    """Both beats, with what is ground off valve and seat."""
    n_v = sheet.count("n_v", valve.regrind.times)
    t_v = sheet.work("t_v", ground_off, n=float(n_v), g=sheet.take("g_v", valve.regrind.depth))
    for name, beat in (("upper beat", valve.upper_beat), ("lower beat", valve.lower_beat)):
        seat, mark = sheet.follow(beat.seat), name[0]
        n_s = sheet.count(f"n_s{mark}", seat.regrind.times)
        t_s = sheet.work(
            f"t_s{mark}", ground_off, n=float(n_s), g=sheet.take(f"g_s{mark}", seat.regrind.depth)
        )
        yield _Ground(name, beat, seat, t_s, t_v, sheet.take(f"β_{mark}", seat.seat_angle))


def _faces(one: _Ground, sheet: Sheet) -> Iterator[Judgement]:
    """Width of contact, and metal of the ring beside and below its face."""
    mark, β = one.name[0], one.β
    w_s, w_v = sheet.take(f"w_s{mark}", one.seat.seat_width), sheet.take(f"w_v{mark}", one.beat.contact_width)
    widened = w_s
    if β > 0:
        widened = sheet.work(f"w_sn{mark}", face_widened, w=w_s, t=one.t_s, β=β)
        w_v = sheet.work(f"w_vn{mark}", face_widened, w=w_v, t=one.t_v, β=β)
    yield sheet.at_most(min(widened, w_v), sheet.limit("contact")).else_says(
        "{item}: contact {found} wide after the last regrind, {limit} allowed"
    )
    D, d = sheet.take(f"D_{mark}", one.seat.outside_diameter), sheet.take(f"d_{mark}", one.seat.seat_diameter)
    beside = sheet.work(f"b_{mark}", ring_outside_face, D=D, d=d, w=widened, β=β)
    yield sheet.at_least(beside, sheet.limit("ring")).else_says(
        "{item}: {found} of the seat ring left outside its face, {limit} wanted"
    )
    L = sheet.take(f"L_s{mark}", one.seat.length)
    below = sheet.work(f"l_{mark}", ring_below_face, L=L, w=w_s, t=one.t_s, β=β)
    yield sheet.at_least(below, sheet.limit("ring")).else_says(
        "{item}: {found} of the seat ring left below its face, {limit} wanted"
    )


def _adjusted(valve: PoppetValve, h: Metres, sheet: Sheet) -> Judgement:
    """What cap or screw can still take up, against the sink."""
    spindle = spindle_of(valve, sheet)
    left = sheet.take("a_0", spindle.shortens)
    if sheet.is_stated("ground off its cap", spindle.cap_ground_off):
        used = sheet.take("a_g", spindle.cap_ground_off)
        left = sheet.work("a", adjustment_left, a_0=left, a_g=used)
    return sheet.at_least(left, h).else_says("{found} left to adjust the gear by, the valve sinks {limit}")


def _cap(valve: PoppetValve, h: Metres, sheet: Sheet) -> Iterator[Judgement]:
    """What setting the gear and following the sink grind off the hardened skin of a cap; a query where none is said."""
    spindle = spindle_of(valve, sheet)
    ground = sheet.is_stated("ground off its cap", spindle.cap_ground_off)
    if not sheet.is_stated("hardening of its cap", spindle.cap.hardening):
        if ground:
            says = f"the cap of {spindle.id} is ground, and nothing says how it is hardened"
            yield sheet.states(False, says, where=spindle.where).graded(Grade.QUERY)
        return
    if sheet.read("hardening of its cap", spindle.cap.hardening) not in _HARDENED:
        return
    t_c = sheet.work("t_c", cap_ground, a_g=sheet.take("a_g", spindle.cap_ground_off) if ground else 0.0, h=h)
    depth = sheet.take("t_hc", spindle.cap.hardened_depth)
    kept = sheet.work("t_nc", share_of_skin, x=sheet.limit("skin", "x"), t=depth)
    yield sheet.at_most(t_c, kept).else_says(
        "{found} of the hardened skin of its cap ground off, {limit} allowed"
    )


def _loads(valve: PoppetValve, case: LoadCase, h: Metres, sheet: Sheet) -> Iterator[Judgement]:
    """The load of the worn springs over the sunk valve, as valve.spring-holds-shut and valve.closes ask it.

    One that is meant to lift in a case lifts the more easily for it.
    """
    springs = springs_worn(valve, case, sheet)
    F: Newtons = sheet.work(
        "F_su", load_when_sunk, F_U=springs.shut, R=springs.rate, h=h, z=_packed(valve, sheet)
    )
    if not (case.name == "starting" or may_lift(valve, case, sheet)):
        yield held_shut(valve, case, F, sheet).graded(Grade.HOLD)
    if case.name != "water":
        yield shut_against_friction(valve, case, F, sheet).graded(Grade.HOLD)


def _packed(valve: PoppetValve, sheet: Sheet) -> Metres:
    """The washers under the springs, of several under that which has least."""
    return min(
        sheet.take(f"z_{number}", spring.packed_by)
        if sheet.is_stated(f"washers under {spring.id}", spring.packed_by)
        else 0.0
        for number, spring in enumerate(springs_of(valve, sheet), 1)
    )


def _washers(valve: PoppetValve, h: Metres, sheet: Sheet) -> Iterator[Judgement]:
    """Washers thicker than the sink press a spring shorter than its rules judge it."""
    for number, spring in enumerate(springs_of(valve, sheet), 1):
        if sheet.is_stated(f"washers under {spring.id}", spring.packed_by):
            yield sheet.at_most(sheet.take(f"z_{number}", spring.packed_by), h).else_says(
                f"{spring.id} packed by {{found}}, the valve sinks {{limit}}"
            )


def _skin(cam: Cam, sheet: Sheet) -> Judgement:
    """What grinding and wear take of the hardened skin of a track."""
    if not sheet.is_stated("surface", cam.surface) or sheet.read("surface", cam.surface) not in _HARDENED:
        raise sheet.not_applicable("the cam has no hardened skin")
    n = sheet.count("n", cam.regrind.times)
    t_g = sheet.work("t_g", ground_off, n=float(n), g=sheet.take("g", cam.regrind.depth))
    used = sheet.work("t", skin_used, t_g=t_g, t_w=sheet.take("t_w", cam.wear.limit))
    allowed = sheet.work(
        "t_n", share_of_skin, x=sheet.limit("skin", "x"), t=sheet.take("t_h", cam.hardened_depth)
    )
    return sheet.at_most(used, allowed).else_says(
        "{found} of its hardened skin ground and worn off, {limit} allowed"
    )


RULES = (seats_reground,)
