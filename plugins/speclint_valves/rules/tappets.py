"""Tappets and the boxes that carry them."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Ratio
from speclint.facts import (
    growth_since_drawn,
    lever_ratio,
    ramp_of,
    spindle_length,
    tappet_clearance_hot,
    tappet_clearances,
)
from speclint.specs import HOT_CASES, Cam, CamBox, LoadCase, Rocker, Tappet, ValveSpindle
from speclint_valves.formulae.motion import setting_error
from speclint_valves.formulae.spindle import length_with_room
from speclint_valves.rules.seats import DEFERS


@rule(
    "tappet.clearance-hot",
    edition=6,
    title="In every case the tappet has at least 0.05 mm of clearance with a worn seat, and with a new "
    "seat no more than the ramp of its cam",
    on=Tappet,
    cases=HOT_CASES,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a valve held off its seat leaks, burns, and lets live steam into an engine that should stand still",
    leaves_out=f"wear of cam and tappet, which adds to the clearance, and bending of the box; {DEFERS}",
    against=(),
    against_on={"poppet-valve": ("leak",)},
    limits=[Limit("least", "0.05 mm", "length", COMMON_PRACTICE, "least clearance in every case")],
)
def clearance_when_hot(tappet: Tappet, case: LoadCase, sheet: Sheet) -> Judgement:
    """c − (L_s ε_s + L_v ε_v − L_b ε_b − L_d ε_d + wear)/i ≥ 0.05 mm, and without wear ≤ the height of the ramp.

    Where the stated clearance and that of the lengths differ, the first takes the less and the second the greater.
    """
    driven = sheet.follow(tappet.works)
    spindle, i = _spindle_and_ratio(driven, sheet)
    box = sheet.follow(tappet.carried_in)
    block = sheet.follow(box.mounted_on)
    (c, greatest), y = tappet_clearances(tappet, sheet), sheet.take("y", tappet.seat_wear)
    e = _badly_set(tappet, sheet)
    grown = {
        **_spindle_and_valve(spindle, case, sheet),
        "L_b": sheet.take("L_b", box.block_length),
        "ε_b": growth_since_drawn(block, "b", case, sheet),
        "L_d": sheet.take("L_d", box.datum_length),
        "ε_d": growth_since_drawn(box, "d", case, sheet),
        "i": i,
    }
    worn = sheet.work("c_w", tappet_clearance_hot, c=c - e, y=y, **grown)
    least = sheet.at_least(worn, sheet.limit("least")).else_says(
        "tappet may hold its valve open: {found} left hot, {limit} wanted"
    )
    if worn <= 0:
        least = least.graded(Grade.HOLD)
    if not least.holds:
        return least
    new = sheet.work("c_n", tappet_clearance_hot, c=greatest + e, y=0.0, **grown)
    return sheet.worst(least, *_within_ramps(tappet, new, sheet))


def _badly_set(tappet: Tappet, sheet: Sheet) -> Metres:
    """How far from the limits of the drawing the clearance may be set, where it is stated how closely it can be."""
    if not sheet.is_stated("accuracy of setting", tappet.clearance_setting):
        return 0.0
    a, drawn = sheet.take("a", tappet.clearance_setting), sheet.tolerance("Δc", tappet.clearance)
    return sheet.work("e", setting_error, a=a, Δc=drawn)


def _spindle_and_ratio(driven: Rocker | ValveSpindle, sheet: Sheet) -> tuple[ValveSpindle, Ratio]:
    if isinstance(driven, ValveSpindle):
        return driven, 1.0
    b_v, b_t = sheet.take("b_v", driven.valve_arm), sheet.take("b_t", driven.tappet_arm)
    return sheet.follow(driven.works), sheet.work("i", lever_ratio, b_v=b_v, b_t=b_t)


def _spindle_and_valve(spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> dict[str, float]:
    """Length and growth of the spindle and of the valve below it, each at its own temperature."""
    valve = sheet.follow(spindle.moves)
    L, L_v = sheet.take("L", spindle.heated_length), sheet.take("L_v", spindle.valve_length)
    return {
        "L_s": sheet.work("L_s", spindle_length, L=L, L_v=L_v),
        "ε_s": growth_since_drawn(spindle, "s", case, sheet),
        "L_v": L_v,
        "ε_v": growth_since_drawn(valve, "v", case, sheet),
    }


def _within_ramps(tappet: Tappet, clearance: Metres, sheet: Sheet) -> list[Judgement]:
    """The clearance of a new seat against the ramp of each cam."""
    cams = sheet.belonging_to(tappet, Cam)
    if not cams:
        raise sheet.not_assessed(f"no cam states that it lifts {tappet.id}: there is no ramp to compare with")
    return [
        sheet.at_most(clearance, ramp_of(cam, sheet)).else_says(
            "tappet clearance {found}, the ramp of its cam is {limit} high"
        )
        for cam in cams
    ]


@rule(
    "tappet.count",
    edition=2,
    title="The cam box carries the stated number of tappets, each with a spindle of its own",
    on=CamBox,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a box drawn for the wrong number of valves is found out only at assembly",
    leaves_out="the order of the tappets along the shaft; a tappet without a cam (tappet.one-cam); in a draft, tappets "
    "still to be drawn",
    against=(),
)
def count(box: CamBox, sheet: Sheet) -> Judgement:
    """Stated number = tappets carried, those that work one spindle counted once."""
    stated = sheet.count("z", box.tappets)
    tappets = sheet.belonging_to(box, Tappet)
    spindles = {_spindle_of(tappet, sheet).id for tappet in tappets}
    if len(tappets) < stated and sheet.setting("stage") == "draft":
        raise sheet.not_applicable(f"a draft: {len(tappets)} of {stated} tappets are drawn")
    says = f"{stated} tappets are stated; {len(tappets)} are carried and work {len(spindles)} spindles"
    return sheet.states(len(spindles) == stated, says)


def _spindle_of(tappet: Tappet, sheet: Sheet) -> ValveSpindle:
    driven = sheet.follow(tappet.works)
    return driven if isinstance(driven, ValveSpindle) else sheet.follow(driven.works)


@rule(
    "cambox.withdrawal",
    title="The cam box can be taken out of the assembled engine: in the stated direction 25 mm more than its length is "
    "free, and every fastening is within reach",
    wrong="{found} clear to take the cam box out, {limit} needed",
    on=CamBox,
    edition=3,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="what cannot be taken out in a shed is not inspected in a shed",
    leaves_out="lifting tackle and its attachment",
    against=(),
    limits=[
        Limit("room", "25 mm", "length", COMMON_PRACTICE, "least clearance beyond the length of the box")
    ],
)
def withdrawal(box: CamBox, sheet: Sheet) -> Judgement:
    """Clear room ≥ length + 25 mm, and every fastening within reach of a spanner (wrench)."""
    reachable = sheet.read("fastenings reachable", box.fastenings_reachable)
    way = sheet.read("withdrawn", box.withdrawn)
    needed = sheet.work("l_n", length_with_room, L=sheet.take("L", box.length), r=sheet.limit("room", "r"))
    clear = sheet.at_least(sheet.take("l", box.withdrawal_room), needed)
    reached = sheet.states(
        reachable, "every fastening can be reached" if reachable else "a fastening is out of reach"
    )
    return sheet.worst(reached, clear.saying(f"{way}: {clear.says}"))


RULES = (clearance_when_hot, count, withdrawal)
