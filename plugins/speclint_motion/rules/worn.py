"""Parts at their limit of wear: whether what rests on them still works."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Ratio
from speclint.facts import shift_at_seat, sink_of_valve
from speclint.handbook.fits import share_of_size
from speclint.specs import (
    CompressionSpring,
    CylinderLiner,
    Pin,
    PistonRing,
    PoppetValve,
    Rocker,
    Tappet,
    ValveGear,
    ValveSpindle,
)
from speclint_motion.formulae.wear import (
    bore_worn,
    either_way,
    face_across,
    gap_of_worn_ring,
    greatest_worn_gap,
    least_ratio,
    play_with_pin,
    ratio_of_lever,
    share_lost_by_set,
    wall_after_reaming,
    worn_off,
)

if TYPE_CHECKING:
    from speclint.specs import BearingWear, DrivePin


@rule(
    "wear.works-at-limit",
    title="At its limit of wear each part is still within what other rules count on: valve in line with its seat, "
    "clearance of the tappet, next bore of a liner, load of a spring, play of a pin towards the covers",
    on=(
        ValveSpindle,
        PoppetValve,
        CylinderLiner,
        CompressionSpring,
        Pin,
    ),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="an engine is worn for most of its life, and what is judged new alone fails half-way to the overhaul",
    leaves_out="ring gap (wear.rings), cams (cam.no-undercut, wear.seats-reground), play of the valve gear "
    "(wear.pins-and-bushes)",
    against=("wear",),
    limits=[
        Limit(
            "set", "5 %", "ratio", COMMON_PRACTICE, "greatest share of its shut load that a spring may lose"
        )
    ],
)
def works_at_limit(
    part: ValveSpindle | PoppetValve | CylinderLiner | CompressionSpring | Pin, sheet: Sheet
) -> Judgement:
    """The worn size, against the size with which the rules that take it were run."""
    if isinstance(part, ValveSpindle):
        return _in_line(part, sheet)
    if isinstance(part, PoppetValve):
        return _resets(part, sheet)
    if isinstance(part, CylinderLiner):
        return _rebored(part, sheet)
    limit = sheet.take("m_n", part.wear.limit)
    if isinstance(part, Pin):
        worn = sheet.work("w_n", either_way, c=limit)
        return sheet.at_most(worn, sheet.take("w", part.wear.along)).else_says(
            "worn bearing moves {found} either way, {limit} counted towards the covers"
        )
    lost = sheet.work(
        "x",
        share_lost_by_set,
        R=sheet.take("R", part.rate),
        L_0=sheet.take("L_0", part.free_length),
        L=limit,
        F=sheet.take("F_U", part.shut_load),
    )
    return sheet.at_most(lost, sheet.limit("set")).else_says(
        "spring at its limit has lost {found} of its load, {limit} allowed"
    )


def _in_line(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    """The shift of the valve in the worn guide, against the face of each seat that must catch it."""
    e = sheet.work(
        "e",
        shift_at_seat,
        c=sheet.take("m_n", spindle.wear.limit),
        a=sheet.take("a", spindle.guide_from_seat),
        L=sheet.take("L", spindle.guide_length),
    )
    valve = sheet.follow(spindle.moves)

    def judge(item: tuple[str, str]) -> Judgement:
        name, mark = item
        seat = sheet.follow(valve.upper_beat.seat if mark == "u" else valve.lower_beat.seat)
        w, β = sheet.take(f"w_{mark}", seat.seat_width), sheet.take(f"β_{mark}", seat.seat_angle)
        return sheet.at_most(e, sheet.work(f"b_{mark}", face_across, w=w, β=β)).else_says(
            f"valve in its worn guide lands {{found}} off its {name} seat, whose face is {{limit}} wide"
        )

    return sheet.each([("upper", "u"), ("lower", "l")], judge)


def _resets(valve: PoppetValve, sheet: Sheet) -> Judgement:
    """The sink by wear of valve and seat, against that with which the clearance of each tappet is judged."""
    tappets = _tappets(valve, sheet)
    if not tappets:
        raise sheet.not_assessed(f"no tappet works {valve.id}", valve.where)
    t_v = sheet.take("t_v", valve.wear.limit)

    def judge(item: tuple[str, Tappet]) -> Judgement:
        y = sheet.take(f"y of {item[0]}", item[1].seat_wear)
        sunk = []
        for mark, beat in (("u", valve.upper_beat), ("l", valve.lower_beat)):
            seat = sheet.follow(beat.seat)
            t_s, β = sheet.take(f"t_s{mark}", seat.wear.limit), sheet.take(f"β_{mark}", seat.seat_angle)
            sunk.append(sheet.work(f"h_{mark}", sink_of_valve, t_s=t_s, t_v=t_v, β=β))
        return sheet.worst(*(_counted(h, y, sheet) for h in sunk))

    return sheet.each([(one.id, one) for one in tappets], judge)


def _counted(h: Metres, y: Metres, sheet: Sheet) -> Judgement:
    return sheet.at_most(h, y).else_says("valve sinks {found} by wear, its tappet allows for {limit}")


def _tappets(valve: PoppetValve, sheet: Sheet) -> list[Tappet]:
    """The tappets that work a valve, by its spindle or by the rocker on that."""
    found: list[Tappet] = []
    for spindle in sheet.belonging_to(valve, ValveSpindle):
        for driven in (spindle, *sheet.belonging_to(spindle, Rocker)):
            found += sheet.belonging_to(driven, Tappet)
    return found


def _rebored(liner: CylinderLiner, sheet: Sheet) -> Judgement:
    """The next bore cleans up what has worn, and the last bore is not passed."""
    limit = sheet.take("m_n", liner.wear.limit)
    step = sheet.at_most(limit, sheet.take("ΔD", liner.reboring_step)).else_says(
        "bore may wear {found} out of true, each reboring takes off {limit}"
    )
    worn = sheet.work("D_w", bore_worn, D=sheet.take("D", liner.bore), ΔD=limit)
    return sheet.worst(
        step,
        sheet.at_most(worn, sheet.take("D_last", liner.last_bore)).else_says(
            "bore worn to {found}, the last bore is {limit}"
        ),
    )


@rule(
    "wear.rings",
    title="At the limits of wear of ring and bore the end gap is at most 0.01 of the bore and 2 mm, the ring at least "
    "0.85 as thick as new, and at most 0.4 mm free beside it in its groove",
    on=PistonRing,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a worn ring in a worn bore lets the steam past, and a thin or loose one breaks",
    leaves_out="heat, which closes the gap; how bore and ring share the wear between overhauls",
    against=("leak", "wear"),
    limits=[
        Limit("share", "0.01", "ratio", COMMON_PRACTICE, "greatest gap over the bore, beside what is added"),
        Limit("added", "2 mm", "length", COMMON_PRACTICE, "what is added to that"),
        Limit("thickness", "0.85", "ratio", COMMON_PRACTICE, "least thickness over that of a new ring"),
        Limit("beside", "0.4 mm", "length", COMMON_PRACTICE, "greatest clearance beside a worn ring"),
    ],
)
def worn_rings(ring: PistonRing, sheet: Sheet) -> Judgement:
    """g + π ΔD + 2π w, thickness left, and clearance in the groove, at the limits that ring and liner state."""
    liner = sheet.follow(ring.runs_in)
    t, limit = sheet.take("t", ring.thickness), sheet.take("t_w", ring.wear.limit)
    gap = sheet.work(
        "g_w",
        gap_of_worn_ring,
        g=sheet.take("g", ring.gap),
        ΔD=sheet.take("ΔD", liner.wear.limit),
        w=sheet.work("w", worn_off, t=t, t_w=limit),
    )
    most = sheet.work(
        "g_n",
        greatest_worn_gap,
        k=sheet.limit("share", "k"),
        D=sheet.take("D", liner.bore),
        g_0=sheet.limit("added", "g_0"),
    )
    least = sheet.work("t_n", share_of_size, k=sheet.limit("thickness", "k_t"), t=t)
    return sheet.worst(
        sheet.at_most(gap, most).else_says("gap of the worn ring {found}, {limit} allowed"),
        sheet.at_least(limit, least).else_says("ring may wear to {found}, {limit} wanted"),
        sheet.at_most(sheet.take("c", ring.wear.side_limit), sheet.limit("beside")).else_says(
            "worn ring {found} free beside it in its groove, {limit} allowed"
        ),
    )


@rule(
    "wear.pins-and-bushes",
    edition=2,
    title="A worn crosshead pin has at most 0.5 mm of clearance, a crank pin 1.0 mm, a reamed bush 0.6 of its wall, "
    "and worn pins between crank and cams, by their levers, play no more than the events allow",
    on=(Pin, Rocker, ValveGear),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a loose pin knocks itself looser, and play between crank and cams shifts every event",
    leaves_out="bending and twist of the drive (gear.rocker-twist), play of the bearings of the cam shaft, more than "
    "one lever between a pin and the cams, and the slant of rods",
    against=("wear",),
    limits=[
        Limit("crosshead", "0.5 mm", "length", COMMON_PRACTICE, "greatest worn clearance of a crosshead pin"),
        Limit("crank", "1.0 mm", "length", COMMON_PRACTICE, "greatest worn clearance of a crank pin"),
        Limit(
            "of_arms", "0.9", "ratio", COMMON_PRACTICE, "least ratio of a drive pin over that of its lever"
        ),
        Limit("wall", "0.6", "ratio", COMMON_PRACTICE, "least wall of a reamed bush over that of a new one"),
    ],
)
def pins_and_bushes(part: Pin | Rocker | ValveGear, sheet: Sheet) -> Judgement:
    """Clearance at the limit, wall after reaming, and for a gear the sum of its worn pins over their arms.

    Rods alone move alike at both ends: a ratio below that of the lever, or of 1 without one, counts too little play.
    """
    if isinstance(part, ValveGear):
        return _play(part, sheet)
    bush = _reamed(part.wear, sheet)
    if isinstance(part, Rocker):
        return bush
    most = sheet.limit(sheet.read("place", part.place).removesuffix(" pin"))
    loose = sheet.at_most(sheet.take("m_n", part.wear.limit), most).else_says(
        "worn bearing {found} loose, {limit} allowed"
    )
    return sheet.worst(loose, bush)


def _reamed(wear: BearingWear, sheet: Sheet) -> Judgement:
    t = sheet.take("t", wear.bush_wall)
    left = sheet.work("t_l", wall_after_reaming, t=t, r=sheet.take("r", wear.reamed))
    return sheet.at_least(left, sheet.work("t_n", share_of_size, k=sheet.limit("wall", "k"), t=t)).else_says(
        "bush reamed to a wall of {found}, {limit} wanted"
    )


def _play(gear: ValveGear, sheet: Sheet) -> Judgement:
    """The worn play of all pins between crank and cams, against that with which the events are worked."""
    if not gear.drive_pins:
        raise sheet.not_assessed(f"drive_pins is not stated in {gear.where.file}", gear.where)
    θ, ratios = 0.0, []
    for name, pin in gear.drive_pins.items():
        k = sheet.take(f"k of {name}", pin.ratio)
        ratios.append(_by_lever(name, pin, k, sheet))
        θ = sheet.work(
            "θ",
            play_with_pin,
            θ_0=θ,
            k=k,
            c=sheet.take(f"c of {name}", pin.clearance),
            a=sheet.take(f"a of {name}", pin.arm),
        )
    played = sheet.at_most(θ, sheet.take("θ_d", gear.drive_play)).else_says(
        "worn pins play {found} between crank and cams, the events allow for {limit}"
    )
    return sheet.worst(played, *ratios)


def _by_lever(name: str, pin: DrivePin, k: Ratio, sheet: Sheet) -> Judgement:
    """The ratio of a drive pin against that of the lever between it and the cams; without one against 1."""
    of_lever = 1.0
    if sheet.is_stated(f"lever of {name}", pin.lever_in) or sheet.is_stated(
        f"lever of {name}", pin.lever_out
    ):
        r_o, r_i = sheet.take(f"r_o of {name}", pin.lever_out), sheet.take(f"r_i of {name}", pin.lever_in)
        of_lever = sheet.work(f"k_l of {name}", ratio_of_lever, r_o=r_o, r_i=r_i)
    least = sheet.work(f"k_n of {name}", least_ratio, s=sheet.limit("of_arms", "s"), k_l=of_lever)
    return sheet.at_least(k, least).else_says(
        f"{name} is counted with a ratio of {{found}}, its lever, or rods alone, give at least {{limit}}"
    )


RULES = (works_at_limit, worn_rings, pins_and_bushes)
