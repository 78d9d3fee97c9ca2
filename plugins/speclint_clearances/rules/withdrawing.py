"""Parts that come out with the block in its frames, and the tools of its nuts."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres, NewtonMetres
from speclint.facts import is_safety_part, nuts_of, own_length, parts_drawn_out, side_closed
from speclint.specs import (
    AccessPlan,
    BoltedJoint,
    Component,
    CylinderCover,
    FrameFastening,
    Gland,
    Piston,
    PistonRod,
    PoppetValve,
    SpannerRoom,
    ValveSeat,
    Withdrawal,
    bare_words,
    denies,
)
from speclint_clearances.formulae.cranes import bar_wanted, reach_along, reach_beside, room_to_draw_out

#: Methods of tightening in which no spanner turns the nut against its load.
_STRETCHED = ("elongation by ultrasound", "elongation by length", "hydraulic tensioner")
#: Words in a direction along the engine, by the side of a cylinder to which it leads.
_SIDES = {"front": ("forward", "front", "ahead"), "back": ("back", "rear")}
#: Words in directions that are opposed to each other.
_OPPOSED = (
    ("up", "down"),
    ("forward", "backward"),
    ("front", "back"),
    ("left", "right"),
    ("inward", "outward"),
)


@rule(
    "room.withdrawn-in-frames",
    edition=5,
    title="With the block in its frames each valve, spindle, spring, seat, piston and rod can be drawn out, these two "
    "past a cover that comes off, straight or swung: room for length, engagement and 25 mm of tool",
    on=AccessPlan,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="what can only be drawn out with the block off the engine is not inspected between heavy overhauls",
    leaves_out="liners and studs (access.inspection) and the cam box (cambox.withdrawal); a cylinder that stands "
    "upright; what a part meets on the way as it swings; what else than a cover of the cylinder has to come off, and "
    "whether it can; the local code and a competent person decide",
    against=(),
    limits=[Limit("tool", "25 mm", "length", COMMON_PRACTICE, "room for the tool")],
)
def withdrawn_in_frames(plan: AccessPlan, sheet: Sheet) -> Judgement:
    """Each part with a life shorter than the block's has an entry, what stays in place, and room enough."""
    parts = [*parts_drawn_out(sheet.follow(plan.serves), sheet)]
    if not parts:
        raise sheet.not_applicable("no part of the block is drawn that is drawn out of it")
    return sheet.each([(part.id, part) for part in parts], lambda item: _drawn_out(item[1], plan, sheet))


def _drawn_out(part: Component, plan: AccessPlan, sheet: Sheet) -> Judgement:
    drawn = plan.withdrawals.get(part.id)
    if drawn is None:
        return _graver(
            sheet.states(False, f"{part.id} has no room for withdrawal stated", where=plan.where), part, sheet
        )
    way = sheet.read(f"direction of {part.id}", drawn.direction)
    if isinstance(part, Piston | PistonRod) and not _is_along(way):
        said = f"{part.id} is said to be drawn out {way}, its cylinder lies along the engine: forwards or backwards"
        return _graver(sheet.states(False, said, where=plan.where), part, sheet)
    if not drawn.in_place:
        raise sheet.not_assessed(f"in_place of {part.id} is not stated in {plan.where.file}", plan.where)
    stays = [sheet.read(f"in place as {part.id} is drawn out", what) for what in drawn.in_place]
    off = [sheet.read(f"off before {part.id} is drawn out", what) for what in drawn.comes_off]
    if "frames" not in stays or not set(stays).isdisjoint(off):
        said = f"{part.id} is drawn out with {' and '.join(stays)} in place and {' and '.join(off) or 'nothing'} off"
        return _graver(sheet.states(False, said, where=plan.where), part, sheet)
    if isinstance(part, Piston | PistonRod) and (shut := _shut_by(way, off, plan, sheet)):
        said = (
            f"{part.id} is drawn out {way}, and {' and '.join(off) or 'nothing'} comes off before: not {shut}"
        )
        return _graver(sheet.states(False, said, where=plan.where), part, sheet)
    if isinstance(part, ValveSeat) and (other := _valve_drawn_against(part, way, plan, sheet)):
        said = f"{part.id} is drawn out {way}, and {other}, which goes out before it, the other way"
        return _graver(sheet.states(False, said, where=plan.where), part, sheet)
    along, judged = _length(part, drawn, sheet), []
    if sheet.is_stated(f"swing of {part.id}", drawn.swing):
        turned = {"l": along, "d": _across(part, drawn, sheet), "θ": sheet.take(f"θ {part.id}", drawn.swing)}
        along = sheet.work(f"l_a {part.id}", reach_along, **turned)
        to_the_side = sheet.work(f"l_s {part.id}", reach_beside, **turned)
        judged.append(
            sheet.at_least(sheet.take(f"s_0 {part.id}", drawn.beside), to_the_side).else_says(
                "{item} has {found} beside its axis to be swung out, {limit} wanted"
            )
        )
    e, c = sheet.take(f"e {part.id}", drawn.engagement), sheet.limit("tool", "c")
    wanted = sheet.work(f"r {part.id}", room_to_draw_out, l=along, e=e, c=c)
    straight = sheet.at_least(sheet.take(f"r_0 {part.id}", drawn.room), wanted).else_says(
        "{item} has {found} to be drawn out in the frames, {limit} wanted"
    )
    return _graver(sheet.worst(straight, *judged), part, sheet)


def _is_along(way: str) -> bool:
    """Whether a direction is one along the engine.

    >>> _is_along("forwards"), _is_along("towards the back"), _is_along("upwards"), _is_along("not forwards")
    (True, True, False, False)
    """
    said = bare_words(way)
    return not denies(way) and ("along" in said or bool(_sides(said)))


def _sides(said: str) -> list[str]:
    """The sides of a cylinder to which a direction leads."""
    return [side for side, words in _SIDES.items() if any(word in said for word in words)]


def _shut_by(way: str, off: list[str], plan: AccessPlan, sheet: Sheet) -> str:
    """The cover that closes the way out of a cylinder, where it is drawn and no cover of that side comes off.

    A direction that says no side, or both, is open where either cover comes off.
    """
    block = sheet.follow(plan.serves)
    covers = {cover.id: side_closed(cover, sheet) for cover in sheet.belonging_to(block, CylinderCover)}
    sides = _sides(bare_words(way))
    in_the_way = {one: side for one, side in covers.items() if side in sides or len(sides) != 1}
    if any(_is_named(cover, side or "", text) for cover, side in in_the_way.items() for text in off):
        return ""
    return " nor ".join(in_the_way)


def _is_named(cover: str, side: str, text: str) -> bool:
    """Whether a text names a cover, by its id or by its side.

    >>> _is_named("cover-front-left", "front", "front cover"), _is_named("cover-front-left", "front", "back cover")
    (True, False)
    >>> _is_named("cover-front-left", "front", "cover-front-left"), _is_named("cover-1", "front", "both covers")
    (True, True)
    """
    said = bare_words(text).split()
    by_side = ("cover" in said and side in said) or ("covers" in said and not {side, "both"}.isdisjoint(said))
    return (text.strip() == cover or by_side) and not denies(text)


def _valve_drawn_against(seat: ValveSeat, way: str, plan: AccessPlan, sheet: Sheet) -> str:
    """The valve on a seat that is said to be drawn out the other way: both go through the opening of one chamber."""
    for valve in sheet.belonging_to(seat, PoppetValve):
        drawn = plan.withdrawals.get(valve.id)
        if drawn is not None and are_opposed(way, sheet.read(f"direction of {valve.id}", drawn.direction)):
            return valve.id
    return ""


def are_opposed(one: str, other: str) -> bool:
    """Whether two directions are opposed to each other.

    >>> are_opposed("upwards", "down, to the bore"), are_opposed("upwards", "Up"), are_opposed("up", "left")
    (True, False, False)
    """
    here, there = (
        {
            word
            for pair in _OPPOSED
            for word in pair
            if any(said.startswith(word) for said in bare_words(way).split())
        }
        for way in (one, other)
    )
    return any(len(pair & here) == 1 and pair & there == pair - here for pair in map(set, _OPPOSED))


def _graver(judged: Judgement, part: Component, sheet: Sheet) -> Judgement:
    """A safety part that cannot be drawn out cannot be inspected: a hold."""
    return judged if judged.holds or not is_safety_part(part, sheet) else judged.graded(Grade.HOLD)


def _length(part: Component, drawn: Withdrawal, sheet: Sheet) -> Metres:
    """The length of a part: the greater of its own size and that of the plan."""
    own = own_length(part)
    lengths = [sheet.take(f"l {part.id}", own)] if own is not None else []
    if not lengths or sheet.is_stated(f"size of {part.id}", drawn.size):
        lengths.append(sheet.take(f"l_p {part.id}", drawn.size))
    return max(lengths)


def _across(part: Component, drawn: Withdrawal, sheet: Sheet) -> Metres:
    """The width of a part across its axis: the greater of its own size and that of the plan."""
    own = None
    if isinstance(part, PoppetValve | ValveSeat):
        own = part.outside_diameter
    elif isinstance(part, Piston):
        own = part.diameter
    widths = [sheet.take(f"d {part.id}", own)] if own is not None else []
    if not widths or sheet.is_stated(f"width of {part.id}", drawn.across):
        widths.append(sheet.take(f"d_p {part.id}", drawn.across))
    return max(widths)


@rule(
    "room.spanner-each-joint",
    edition=3,
    title="Each nut of a block has a tool that can turn it: a bar of at most 1.5 m by hand, else a multiplier or a "
    "hydraulic spanner with a place for its reaction",
    on=AccessPlan,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a nut that no tool of the shed can tighten is tightened with a tube and a guess",
    leaves_out="room beside the nut and swing of the spanner (access.inspection); nuts that are tightened by "
    "elongation or by a tensioner, and those of a gland, that state no torque; height over the nut "
    "(room.over-each-nut)",
    against=(),
    limits=[
        Limit("hand", "400 N", "force", COMMON_PRACTICE, "force of a hand on a bar"),
        Limit("bar", "1.5 m", "length", COMMON_PRACTICE, "longest bar that a hand turns in a shed"),
    ],
)
def spanner_each_joint(plan: AccessPlan, sheet: Sheet) -> Judgement:
    """T over the force of a hand for each joint, against the bar; a query where no tool is said."""
    nuts = nuts_of(sheet.follow(plan.serves), sheet)
    turned = [(name, one) for name, one in nuts.items() if not _is_stretched(name, one, sheet)]
    if not turned:
        raise sheet.not_applicable("no joint of the block is tightened by a torque")
    return sheet.each(turned, lambda item: _turned(*item, plan, sheet))


def _is_stretched(name: str, joint: BoltedJoint | FrameFastening, sheet: Sheet) -> bool:
    """Whether nuts want no torque and state none: run down on stretched bolts, or drawn up as a packing needs it."""
    if sheet.is_stated(f"torque of {name}", joint.tightening.torque):
        return False
    if (
        isinstance(joint, BoltedJoint)
        and sheet.is_stated(f"part held by {name}", joint.holds)
        and isinstance(sheet.follow(joint.holds), Gland)
    ):
        return True
    method = joint.tightening.method
    return (sheet.said(f"method of {name}", method) or "") in _STRETCHED


def _turned(name: str, joint: BoltedJoint | FrameFastening, plan: AccessPlan, sheet: Sheet) -> Judgement:
    room = plan.spanners.get(name)
    T = sheet.take(f"T {name}", joint.tightening.torque)
    if room is None or not sheet.is_stated(f"tool of {name}", room.by):
        said = sheet.states(False, f"no tool is said that turns the nuts of {name}", where=plan.where)
        return said.graded(Grade.QUERY)
    if sheet.read(f"tool of {name}", room.by) != "hand":
        place = sheet.is_stated(f"reaction of {name}", room.reaction_at)
        says = (
            f"{name}: the reaction is taken"
            if place
            else f"{name}: nothing is said to take the reaction of its tool"
        )
        return sheet.states(place, says, where=plan.where)
    return sheet.worst(*_by_hand(name, T, room, sheet))


def _by_hand(name: str, T: NewtonMetres, room: SpannerRoom, sheet: Sheet) -> list[Judgement]:
    wanted = sheet.work(f"l {name}", bar_wanted, T=T, F=sheet.limit("hand", "F"))
    bar, most = sheet.take(f"l_b {name}", room.bar), sheet.limit("bar")
    return [
        sheet.at_most(wanted, most).else_says(
            "nuts of {item} want a bar of {found}, {limit} is the most by hand"
        ),
        sheet.at_least(bar, wanted).else_says("bar for {item} {found} long, {limit} wanted"),
        sheet.at_most(bar, most).else_says("bar for {item} {found} long, {limit} is the most by hand"),
    ]


RULES: tuple[Rule, ...] = (withdrawn_in_frames, spanner_each_joint)
