"""The room of a block states what its parts and a chain of dimensions give."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.equations import Metres
from speclint.facts import (
    axis_height,
    cranks_of,
    engine_of,
    gap_of_chain,
    parts_standing_out,
    reach_of,
    thickest_wall,
    wheelbase_by_axles,
)
from speclint.specs import (
    CamBox,
    Component,
    Crosshead,
    CylinderBlock,
    CylinderCover,
    Envelope,
    MotionGap,
    NotStated,
)
from speclint_agreement.formulae.heights import (
    highest_cock,
    highest_of_cover,
    lowest_of_cover,
    top_of_box,
)
from speclint_agreement.inputs.other_envelopes import on_one_line
from speclint_agreement.inputs.wheelbases import WHEELBASE

_LEVEL = Limit(
    "level",
    "100 mm",
    "length",
    COMMON_PRACTICE,
    "what the axis of a cylinder may lie above or below the axle, level or as inclined, at its covers",
    "not negative",
)


def _gaps(envelope: Envelope, sheet: Sheet) -> Iterator[Pair]:
    """Each gap against that by its chain; one to a crosshead is to name its chain."""
    for name, gap in envelope.gaps.items():
        if sheet.is_stated(f"chain of {name}", gap.chain):
            here = sheet.dimension(gap) if _has_size(name, gap, sheet) else gap.size
            there = gap_of_chain(sheet.follow(gap.chain), sheet, sheet.take_nominal)
            yield Pair(here, there, name=name)
        elif isinstance(gap.chain, NotStated) and _to_crosshead(name, gap, sheet):
            yield Pair(gap.size, gap.chain, name=name)


def _to_crosshead(name: str, gap: MotionGap, sheet: Sheet) -> bool:
    """Whether a gap is to a crosshead, by the part that it names or by its word."""
    if sheet.is_stated(f"what moves at {name}", gap.moving):
        return sheet.read(f"what moves at {name}", gap.moving) == "crosshead"
    return sheet.is_stated(f"part at {name}", gap.to) and isinstance(sheet.follow(gap.to), Crosshead)


def _has_size(name: str, gap: MotionGap, sheet: Sheet) -> bool:
    return sheet.is_stated(f"size of {name}", gap.size) or sheet.is_stated(f"{name} is of", gap.of)


def _points(envelope: Envelope, sheet: Sheet) -> Iterator[Pair]:
    """The outermost point of each cover and cam box against where the axis of its cylinder puts that.

    The heights of covers, cam boxes and drain cocks against the height of that axis.
    """
    block = sheet.follow(envelope.around)
    if not isinstance(block, CylinderBlock):
        return
    yield from _heights(envelope, block, sheet)
    for part in parts_standing_out(block, sheet):
        farthest = _farthest(part, envelope, sheet)
        if farthest is not None and (reach := reach_of(part, envelope, block, sheet, sheet.take)):
            yield Pair(farthest, reach, "at least", name=part.id)


def _heights(envelope: Envelope, block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """A point of a round cover is no farther above or below the axis than its rim; a drain cock is below the barrel."""
    axis = axis_height(block, sheet, sheet.take_nominal)
    if axis is None:
        return
    slack = sheet.limit(_LEVEL.name, "δ_h")
    bore = next(iter(block.bores.values()))
    for box in parts_standing_out(block, sheet):
        if isinstance(box, CamBox):
            yield from _box_heights(box, envelope, axis, slack, sheet)
    for name, point in envelope.points.items():
        if not sheet.is_stated(f"height of {name}", point.height):
            continue
        part = sheet.follow(point.of) if sheet.is_stated(f"part of {name}", point.of) else None
        if isinstance(part, CylinderCover) and sheet.is_stated(f"size of {part.id}", part.outside_diameter):
            D = sheet.take_nominal(f"D {name}", part.outside_diameter)
            places = (*axis.places, part.outside_diameter.where)
            low = sheet.work(f"h_l {name}", lowest_of_cover, h=axis.value, D=D, delta=slack)
            high = sheet.work(f"h_g {name}", highest_of_cover, h=axis.value, D=D, delta=slack)
            yield Pair(point.height, Worked(low, places), "at least", name=f"height of {name}")
            yield Pair(point.height, Worked(high, places), "at most", name=f"height of {name}")
        wall = thickest_wall(bore, block, sheet, sheet.take_nominal)
        if (
            sheet.is_stated(f"end of {name}", point.cock_of)
            and wall
            and sheet.is_stated("bore", bore.diameter)
        ):
            d = sheet.take_nominal("d", bore.diameter)
            most = sheet.work(f"h_c {name}", highest_cock, h=axis.value, d=d, t=wall.value, delta=slack)
            places = (*axis.places, bore.diameter.where, *wall.places)
            yield Pair(point.height, Worked(most, places), "at most", name=f"height of {name}")


def _box_heights(
    box: CamBox, envelope: Envelope, axis: Worked, slack: Metres, sheet: Sheet
) -> Iterator[Pair]:
    """The highest point of a cam box against its top, by the axis of its cylinder."""
    heights = [
        worked(sheet.take_nominal(f"h {name}", point.height), point.height)
        for name, point in envelope.points.items()
        if sheet.is_stated(f"part of {name}", point.of)
        and sheet.follow(point.of).id == box.id
        and sheet.is_stated(f"height of {name}", point.height)
    ]
    if not heights:
        return
    highest = max(heights, key=lambda one: one.value)
    if not sheet.is_stated(f"top of {box.id}", box.stands_up):
        yield Pair(highest, box.stands_up, "at least", name=f"top of {box.id}")
        return
    z, places = sheet.take_nominal(f"z {box.id}", box.stands_up), (*axis.places, box.stands_up.where)
    low, high = (
        Worked(sheet.work(f"h_b {box.id} {k:g}", top_of_box, h=axis.value, z=z, k=k, delta=slack), places)
        for k in (-1.0, 1.0)
    )
    yield Pair(highest, low, "at least", name=f"top of {box.id}")
    yield Pair(highest, high, "at most", name=f"top of {box.id}")


def _farthest(part: Component, envelope: Envelope, sheet: Sheet) -> Worked | None:
    """The greatest distance from the middle of the engine that a point of a part states."""
    points = [
        worked(sheet.take(f"y of {name}", point.from_centre), point.from_centre)
        for name, point in envelope.points.items()
        if sheet.is_stated(f"part of {name}", point.of) and sheet.follow(point.of).id == part.id
    ]
    return max(points, key=lambda one: one.value, default=None)


def _frames(envelope: Envelope, sheet: Sheet) -> Iterator[Pair]:
    """Frame face and side on which the cylinders stand against each crank of the block; wheelbase against the axles.

    Sharpest curve and way of the springs against those of the envelopes of the engine's other blocks.
    """
    block = sheet.follow(envelope.around)
    engine = engine_of(block, sheet) if isinstance(block, CylinderBlock) else None
    if engine is None or not isinstance(block, CylinderBlock):
        return
    if sheet.is_stated("rigid wheelbase", envelope.rigid_wheelbase):
        by_axles = wheelbase_by_axles(envelope, engine, sheet.limit("wheelbase", "δ_a"), sheet)
        if by_axles is not None:
            yield Pair(envelope.rigid_wheelbase, by_axles, name="wheelbase", within="wheelbase")
    for name, crank in cranks_of(engine, block, sheet):
        if not sheet.is_stated(f"frame of {name}", crank.frame_from_centre):
            continue
        yield Pair(envelope.frame_from_centre, crank.frame_from_centre, name=f"frame, {name}")
        if sheet.is_stated(f"axis of {name}", crank.axis_from_centre):
            y_a = sheet.take_nominal("y_a", crank.axis_from_centre)
            beyond = y_a > sheet.take_nominal("y_f", crank.frame_from_centre)
            side = worked("outside" if beyond else "inside", crank.axis_from_centre, crank.frame_from_centre)
            yield Pair(envelope.cylinders, side, name=f"side, {name}")
    yield from on_one_line(envelope, block, engine, sheet)


gap_by_chain: Rule = agreement(
    "envelope.gap-by-chain",
    title="A gap to the motion is that which its chain of dimensions leaves, and one to a crosshead names its chain",
    on=Envelope,
    pairs=_gaps,
    within="0.5 mm",
    edition=2,
    grade=Grade.HOLD,
    why="a gap read off an old drawing stays on paper when cover, box or crosshead is altered",
    leaves_out="gaps to rods, wheels and brake gear that name no chain",
)

points_of_parts: Rule = agreement(
    "envelope.points-of-parts",
    title="The outermost point of a cover or a cam box is no nearer to the middle of the engine than its cylinder and "
    "its size put it; covers and boxes are as high as these put them, drain cocks below the barrel",
    on=Envelope,
    pairs=_points,
    within="",
    limits=[_LEVEL],
    edition=3,
    grade=Grade.HOLD,
    why="the widest cover is judged against the gauge by its point, and strikes a platform by its metal",
    leaves_out="pipes, and drain cocks across the engine, whose place no spec gives; how high pipes stand, since "
    "no spec says how high their openings and their other ends are; heights where no engine states its wheels, of "
    "several bores, and of cylinders that rise by more than 1 in 30 and do not say so (inclined, of their crank); "
    "parts without a point, which envelope.loading-gauge names; nuts and lugs that stand out beyond the rim of a cover",
)

frame_of_engine: Rule = agreement(
    "envelope.frame-of-engine",
    title="An envelope has the frame face where its engine has it, the cylinders on the side on which their rods run, "
    "a wheelbase between two axles, and no wider curve and no less way of springs than its others",
    on=Envelope,
    pairs=_frames,
    limits=[WHEELBASE],
    grade=Grade.HOLD,
    why="what stands out of the loading gauge is worked from this face and this wheelbase, and from the curves and "
    "springs of one line and one engine: if one is wrong, all is",
    leaves_out="a block that no engine names; an engine that does not state where its frames are, or of which fewer "
    "than two driven axles are drawn; which of its axles are guided in the rigid frame, and which are free to move "
    "sideways; bogies and trucks of several axles; whether a curve that all envelopes state alike is the sharpest of "
    "the line",
    edition=3,
)

RULES = (frame_of_engine, gap_by_chain, points_of_parts)
