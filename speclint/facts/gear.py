"""The gear of a valve: the parts between it and its cam, the lift that they give and the clearance that they leave."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from speclint.facts.taking import Take
from speclint.facts.train import (
    clearance_about,
    clearance_from_lengths,
    lever_ratio,
    lift_with_overtravel,
    top_of_lift,
    valve_lift,
)
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked
from speclint.specs import Cam, CamBox, NotStated, PoppetValve, Rocker, Tappet, ValveSpindle

#: By how much a stated clearance may differ from that of the lengths [m]: common practice, as in tappet.lengths-close.
_LENGTHS_AGREE = 0.01e-3


class Gear(Struct, frozen=True):
    """The parts that move one valve; ``rocker`` is None where the tappet drives the spindle itself."""

    spindle: ValveSpindle
    rocker: Rocker | None
    tappet: Tappet
    cam: Cam


def gear_of(valve: PoppetValve, sheet: Sheet) -> Gear | None:
    """The parts that move a valve, by their links; None where one of them is not drawn, or drawn twice.

    Of a cam with several tracks it is the one with the greatest lift.
    """
    spindles = sheet.belonging_to(valve, ValveSpindle)
    if len(spindles) != 1:
        return None
    rockers = sheet.belonging_to(spindles[0], Rocker)
    if len(rockers) > 1:
        return None
    tappets = sheet.belonging_to(rockers[0] if rockers else spindles[0], Tappet)
    if len(tappets) != 1:
        return None
    cams = tracks_of(tappets[0], sheet)
    if not cams:
        return None
    highest = cams[0] if len(cams) == 1 else max(cams, key=lambda cam: _nominal_lift(cam, sheet))
    return Gear(spindles[0], rockers[0] if rockers else None, tappets[0], highest)


def tracks_of(tappet: Tappet, sheet: Sheet) -> tuple[Cam, ...]:
    """The one cam that lifts a tappet, or the tracks of it that have each a name; none where cams are drawn twice."""
    cams = sheet.belonging_to(tappet, Cam)
    if len(cams) < 2:
        return cams
    named = [cam.track for cam in cams if sheet.is_stated(f"track of {cam.id}", cam.track)]
    names = {sheet.read("track", one) for one in named}
    return cams if len(names) == len(cams) else ()


def _nominal_lift(cam: Cam, sheet: Sheet) -> float:
    """The greatest lift of a track as drawn, without its ramp; nothing where it states none."""
    if cam.table:
        return max(sheet.take_nominal(f"s_{number}", one) for number, one in enumerate(cam.table))
    return sheet.take_nominal("s_1", cam.lift) if sheet.is_stated(f"lift of {cam.id}", cam.lift) else 0.0


def boxes_of(gear: Gear, sheet: Sheet) -> tuple[CamBox, ...]:
    """The boxes that carry tappet and rocker of a gear, as far as they are drawn."""
    parts = (gear.tappet, gear.rocker) if gear.rocker else (gear.tappet,)
    return tuple(
        sheet.follow(part.carried_in)
        for part in parts
        if sheet.is_stated(f"box that carries {part.id}", part.carried_in)
    )


def spindles_into(box: CamBox, sheet: Sheet) -> Iterator[ValveSpindle]:
    """The spindles that enter a box: those that a rocker or a tappet in it drives."""
    for rocker in sheet.belonging_to(box, Rocker):
        yield sheet.follow(rocker.works)
    for tappet in sheet.belonging_to(box, Tappet):
        worked = sheet.follow(tappet.works)
        yield sheet.follow(worked.works) if isinstance(worked, Rocker) else worked


def _places(*values: Measure | NotStated) -> tuple[Measure, ...]:
    return tuple(one for one in values if isinstance(one, Measure))


def _ratio(rocker: Rocker | None, sheet: Sheet, take: Take) -> Worked | None:
    """Travel of the valve over travel of the tappet, from the arms; None where an arm is not stated."""
    if rocker is None:
        return Worked(1.0)
    arms = rocker.valve_arm, rocker.tappet_arm
    if not all(sheet.is_stated("arm of the rocker", one) for one in arms):
        return None
    i = sheet.work("i", lever_ratio, b_v=take("b_v", arms[0]), b_t=take("b_t", arms[1]))
    return Worked(i, tuple(one.where for one in arms))


def _top(cam: Cam, sheet: Sheet, take: Take) -> Worked | None:
    """The greatest lift of the tappet, ramp and all; None where the cam states neither a law's sizes nor a table."""
    if cam.table:
        lifts = [take(f"s_{number}", lift) for number, lift in enumerate(cam.table)]
        return Worked(max(lifts), (cam.table[lifts.index(max(lifts))].where,))
    if not all(sheet.is_stated("lift of the cam", one) for one in (cam.ramp_height, cam.lift)):
        return None
    s = sheet.work("s", top_of_lift, h_r=take("h_r", cam.ramp_height), s_1=take("s_1", cam.lift))
    return Worked(s, (cam.lift.where, cam.ramp_height.where))


def _lift(gear: Gear, sheet: Sheet, take: Take, c: float) -> Worked | None:
    ratio, top = _ratio(gear.rocker, sheet, take), _top(gear.cam, sheet, take)
    if ratio is None or top is None:
        return None
    h = sheet.work("h_o" if c == 0.0 else "h_c", valve_lift, i=ratio.value, s=top.value, c=c)
    return Worked(h, (*top.places, *ratio.places))


def greatest_lift(valve: PoppetValve, sheet: Sheet, take: Take) -> Worked | None:
    """The furthest that the gear can lift a valve, when heat and wear have used up the clearance of the tappet.

    None where the gear is not drawn whole.
    """
    gear = gear_of(valve, sheet)
    return None if gear is None else _lift(gear, sheet, take, 0.0)


def least_lift(valve: PoppetValve, sheet: Sheet, take: Take) -> Worked | None:
    """What the gear lifts a valve with the cold clearance at its tappet; None where the gear is not drawn whole."""
    gear = gear_of(valve, sheet)
    if gear is None or not sheet.is_stated("clearance of the tappet", gear.tappet.clearance):
        return None
    found = _lift(gear, sheet, take, take("c", gear.tappet.clearance))
    return None if found is None else Worked(found.value, (*found.places, gear.tappet.clearance.where))


def furthest_lift(valve: PoppetValve, sheet: Sheet) -> float | None:
    """The furthest lift of a valve, m: that which its gear can give, or as stated where the gear is not drawn.

    None where neither tells.
    """
    worked_lift = greatest_lift(valve, sheet, sheet.take)
    if worked_lift is not None:
        return worked_lift.value  # type: ignore[no-any-return]  # a float, or an enclosure of one
    if not (sheet.is_stated("lift", valve.lift) and sheet.is_stated("overtravel", valve.overtravel)):
        return None
    h, o = sheet.take("h", valve.lift), sheet.take("o", valve.overtravel)
    return sheet.work("h_o", lift_with_overtravel, h=h, o=o)


def is_set_on_the_engine(tappet: Tappet, spindle: ValveSpindle, sheet: Sheet) -> bool:
    """Whether the clearance is set when all else is in its place: by a screw, or by grinding the spindle's end."""
    return sheet.is_stated("accuracy of setting", tappet.clearance_setting) or sheet.is_stated(
        "ground off the cap", spindle.cap_ground_off
    )


def clearance_by_lengths(
    tappet: Tappet, spindle: ValveSpindle, rocker: Rocker | None, sheet: Sheet, take: Take
) -> Worked | None:
    """The cold clearance that block, box and spindle leave at a tappet; None where a length is not stated."""
    if not sheet.is_stated("box of the tappet", tappet.carried_in):
        return None
    box = sheet.follow(tappet.carried_in)
    lengths = box.block_length, box.datum_length, spindle.heated_length
    ratio = _ratio(rocker, sheet, take)
    if ratio is None or not all(sheet.is_stated("length of the train", one) for one in lengths):
        return None
    ground = sheet.is_stated("ground off the cap", spindle.cap_ground_off)
    a = take("a", spindle.cap_ground_off) if ground else 0.0
    L_b, L_d, L = (take(name, one) for name, one in zip(("L_b", "L_d", "L"), lengths, strict=True))
    c = sheet.work("c_l", clearance_from_lengths, L_b=L_b, L_d=L_d, L=L, a=a, i=ratio.value)
    stated = _places(*lengths, spindle.cap_ground_off)
    return Worked(c, (*(one.where for one in stated), *ratio.places))


def tappet_clearances(tappet: Tappet, sheet: Sheet) -> tuple[float, float]:
    """The least and the greatest cold clearance that a tappet may have, m: as it is set, and as the lengths leave it.

    What a screw sets is as stated alone, and what nothing sets is as the lengths leave it, where all of them are drawn.
    Where the cap of the spindle is ground to it, both are known, and one holds until they agree.
    """
    driven = sheet.follow(tappet.works)
    rocker = driven if isinstance(driven, Rocker) else None
    spindle = sheet.follow(driven.works) if isinstance(driven, Rocker) else driven
    if not is_set_on_the_engine(tappet, spindle, sheet):
        left = clearance_by_lengths(tappet, spindle, rocker, sheet, sheet.take)
        if left is not None:
            return left.value, left.value
    c = sheet.take("c", tappet.clearance)
    if not sheet.is_stated("ground off the cap", spindle.cap_ground_off):
        return c, c
    left = clearance_by_lengths(tappet, spindle, rocker, sheet, sheet.take_nominal)
    c_n = sheet.take_nominal("c_n", tappet.clearance)
    if left is None or abs(left.value - c_n) <= _LENGTHS_AGREE:
        return c, c
    other = sheet.work("c_w", clearance_about, c_l=left.value, c=c, c_n=c_n)
    return (other, c) if left.value < c_n else (c, other)
