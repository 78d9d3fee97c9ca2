"""What can be seen, reached and withdrawn on the assembled engine."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres
from speclint.facts import (
    chambers_of,
    fluids_beside,
    joints_of,
    length_drawn_out,
    nuts_of,
    parts_drawn_out,
    steam_in,
)
from speclint.specs import (
    AccessPlan,
    Chamber,
    CylinderBlock,
    CylinderLiner,
    SpannerRoom,
    SteamPassage,
    ValveSeat,
    WeldedJoint,
    Weldment,
    Withdrawal,
)
from speclint_clearances.formulae.access import spanner_head, swing_wanted, withdrawal_room
from speclint_clearances.sources import AD_2000_A5, PED

#: Positions of a spanner in a turn of a hexagon nut; an open spanner is turned over after each.
_HOLDS = {"ring of twelve points": 12.0, "ring of six points": 6.0, "open": 12.0}


@rule(
    "access.inspection",
    title="Every chamber has an opening of the required size, every pressure weld is seen from a side of its wall, "
    "every seat lapped in place, and spanners of every joint, studs and liners withdrawn have room",
    on=AccessPlan,
    edition=6,
    grade=Grade.NONCONFORMITY,
    cites=[PED, AD_2000_A5.at("inspection openings"), FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="What cannot be reached is not inspected, and its defects show only when it fails.",
    leaves_out="lighting and working posture; whether the order of dismantling gives access to each item in "
    "turn",
    against=(),
    limits=[
        Limit(
            "opening_length", "100 mm", "length", AD_2000_A5.at("hand holes"), "least length of an opening"
        ),
        Limit("opening_width", "80 mm", "length", AD_2000_A5.at("hand holes"), "least width of an opening"),
        Limit(
            "spanner_head",
            "0.8",
            "ratio",
            COMMON_PRACTICE,
            "half the diameter of a ring spanner's head over the width across flats",
        ),
        Limit("beyond", "10 mm", "length", COMMON_PRACTICE, "clearance beyond the part that is withdrawn"),
    ],
)
def inspection(plan: AccessPlan, sheet: Sheet) -> Judgement:
    """Openings by size, welds and seats by name against weldment and block, spanners and studs by their room."""
    block = sheet.follow(plan.serves)
    chambers = chambers_of(block, sheet)
    said = sheet.is_stated("chambers complete", plan.chambers_complete)
    if (said or not chambers) and not sheet.read("chambers complete", plan.chambers_complete):
        return sheet.states(False, "not every chamber under pressure is listed")
    if not plan.chambers:
        raise sheet.not_assessed("no chamber is stated", plan.where)
    names = [
        *_unlisted(plan, chambers, sheet),
        *_welds_unseen(plan, sheet),
        *_seats_unlapped(plan, sheet),
        *_left_out(plan, sheet),
    ]
    named = sheet.states(
        not names, "; ".join(names) or "every chamber, weld, seat, joint and liner can be reached"
    )
    rooms: list[tuple[str, Chamber | SpannerRoom | Withdrawal]] = []
    elsewhere = {part.id for part in parts_drawn_out(block, sheet)}
    drawn = [item for item in plan.withdrawals.items() if item[0] not in elsewhere]
    rooms += [*plan.chambers.items(), *plan.spanners.items(), *drawn]
    return sheet.worst(named, sheet.each(rooms, lambda item: _room(*item, plan, sheet)))


def _room(name: str, room: Chamber | SpannerRoom | Withdrawal, plan: AccessPlan, sheet: Sheet) -> Judgement:
    if isinstance(room, Chamber):
        return _opening(name, room, sheet)
    if isinstance(room, SpannerRoom):
        return _spanner(name, room, plan, sheet)
    return _withdrawal(name, room, plan, sheet)


def _opening(name: str, chamber: Chamber, sheet: Sheet) -> Judgement:
    length = sheet.take(f"l {name}", chamber.opening_length)
    width = sheet.take(f"w {name}", chamber.opening_width)
    return sheet.worst(
        sheet.at_least(length, sheet.limit("opening_length")).else_says(
            "opening of {item} {found} long, {limit} wanted"
        ),
        sheet.at_least(width, sheet.limit("opening_width")).else_says(
            "opening of {item} {found} wide, {limit} wanted"
        ),
    )


def _unlisted(plan: AccessPlan, chambers: tuple[SteamPassage, ...], sheet: Sheet) -> list[str]:
    """Chests, belts and pockets of the block that no chamber of the plan is."""
    listed = {
        sheet.follow(one.of).id
        for name, one in plan.chambers.items()
        if sheet.is_stated(f"passage of {name}", one.of)
    }
    return [f"no chamber is {passage.id}" for passage in chambers if passage.id not in listed]


def _welds_unseen(plan: AccessPlan, sheet: Sheet) -> list[str]:
    """Welds on pressure of the weldment that no chamber shows."""
    weldment = sheet.follow(plan.weldment)
    unseen = []
    for name, joint in weldment.joints.items():
        if not sheet.read(f"{name} holds pressure", joint.on_pressure):
            continue
        if name not in plan.welds:
            unseen.append(f"{name} cannot be seen from any stated place")
        elif (through := sheet.read(f"{name} seen through", plan.welds[name].seen_through)) not in (
            "outside",
            *plan.chambers,
        ):
            unseen.append(f"{name} is seen through {through}, which is not a chamber of the plan")
        elif through in plan.chambers and not _lies_beside(
            name, joint, weldment, plan.chambers[through], sheet
        ):
            unseen.append(f"{name} is seen through {through}, which lies on neither side of its wall")
        elif through == "outside" and not _shows_outside(
            name, joint, weldment, sheet.follow(plan.serves), sheet
        ):
            unseen.append(f"{name} is to be seen from outside, where neither side of its wall is")
    return unseen


def _shows_outside(
    name: str, joint: WeldedJoint, weldment: Weldment, block: CylinderBlock, sheet: Sheet
) -> bool:
    """Whether a side of the wall of a weld is in open air that is not the hollow between two walls of a division."""
    if not sheet.is_stated(f"wall of {name}", joint.wall):
        return True
    wall = sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}")
    if "atmosphere" not in fluids_beside(f"wall of {name}", wall, sheet):
        return False
    called = sheet.read(f"wall of {name}", joint.wall)
    return not any(
        sheet.is_stated(f"other wall of {one}", division.other_wall)
        and called
        in (sheet.said(f"wall of {one}", division.wall), sheet.read("other wall", division.other_wall))
        for one, division in block.divisions.items()
    )


def _lies_beside(name: str, joint: WeldedJoint, weldment: Weldment, chamber: Chamber, sheet: Sheet) -> bool:
    """Whether the steam of a chamber is on a side of the wall of a weld; of a weld of no wall nothing is known."""
    if not (
        sheet.is_stated(f"wall of {name}", joint.wall)
        and sheet.is_stated("passage of the chamber", chamber.of)
    ):
        return True
    wall = sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}")
    passage = sheet.follow(chamber.of)
    if not sheet.is_stated(f"steam in {passage.id}", passage.carries):
        return True
    return steam_in(passage, sheet).value in fluids_beside(f"wall of {name}", wall, sheet)


def _seats_unlapped(plan: AccessPlan, sheet: Sheet) -> list[str]:
    """Valve seats of the block that the plan leaves out, or that must be removed to be lapped."""
    seats = sheet.belonging_to(sheet.follow(plan.serves), ValveSeat)
    unlapped = []
    for seat in seats:
        if seat.id not in plan.seats:
            unlapped.append(f"{seat.id} is not in the plan")
        elif not sheet.read(f"{seat.id} lapped in its place", plan.seats[seat.id].lapped_in_place):
            unlapped.append(f"{seat.id} cannot be lapped in place")
    return unlapped


def _left_out(plan: AccessPlan, sheet: Sheet) -> list[str]:
    """Joints without room for a spanner, and studs and liners without room to withdraw them, by their ids."""
    block = sheet.follow(plan.serves)
    joints = joints_of(block, sheet)
    studs = [
        name for name, joint in joints.items() if sheet.read(f"fastener of {name}", joint.fastener) == "stud"
    ]
    turned = nuts_of(block, sheet)
    drawn = [*studs, *(liner.id for liner in sheet.belonging_to(block, CylinderLiner))]
    return [
        *(f"{name} has no room for a spanner stated" for name in turned if name not in plan.spanners),
        *(f"{name} has no room for withdrawal stated" for name in drawn if name not in plan.withdrawals),
    ]


def _spanner(name: str, room: SpannerRoom, plan: AccessPlan, sheet: Sheet) -> Judgement:
    flats = _flats(name, room, plan, sheet)
    head = sheet.work(f"r {name}", spanner_head, k=sheet.limit("spanner_head", "k"), s=flats)
    to_wall = sheet.at_least(sheet.take(f"r_0 {name}", room.to_wall), head).else_says(
        "spanner on {item} has {found} to the wall, {limit} wanted"
    )
    spanner = sheet.read(f"spanner of {name}", room.spanner)
    wanted = sheet.work(f"φ {name}", swing_wanted, n=_HOLDS[spanner])
    return sheet.worst(
        to_wall,
        sheet.at_least(sheet.take(f"φ_0 {name}", room.swing), wanted).else_says(
            "spanner on {item} swings by {found}, {limit} wanted"
        ),
    )


def _flats(name: str, room: SpannerRoom, plan: AccessPlan, sheet: Sheet) -> Metres:
    """Width across flats of a nut: the greater of that of its joint and that of the plan."""
    nut = nuts_of(sheet.follow(plan.serves), sheet).get(name)
    widths: list[float] = []
    if nut is not None and sheet.is_stated(f"flats of {name}", nut.nut.across_flats):
        widths.append(sheet.take(f"s {name}", nut.nut.across_flats))
    if not widths or sheet.is_stated(f"flats at {name}", room.across_flats):
        widths.append(sheet.take(f"s {name}", room.across_flats))
    return max(widths)


def _length(name: str, drawn: Withdrawal, plan: AccessPlan, sheet: Sheet) -> Metres:
    """Length of what is drawn out: the greater of that by its own sizes and that of the plan."""
    own = length_drawn_out(name, sheet.follow(plan.serves), sheet, sheet.take)
    lengths: list[float] = [] if own is None else [own.value]
    if (
        not lengths
        or sheet.is_stated(f"size of {name}", drawn.size)
        or sheet.is_stated(f"of {name}", drawn.of)
    ):
        lengths.append(sheet.take(f"l {name}", sheet.dimension(drawn)))
    return max(lengths)


def _withdrawal(name: str, drawn: Withdrawal, plan: AccessPlan, sheet: Sheet) -> Judgement:
    length = _length(name, drawn, plan, sheet)
    wanted = sheet.work(f"r {name}", withdrawal_room, l=length, c=sheet.limit("beyond", "c"))
    return sheet.at_least(sheet.take(f"r_0 {name}", drawn.room), wanted).else_says(
        "{item} has {found} to be drawn out, {limit} wanted"
    )


RULES: tuple[Rule, ...] = (inspection,)
