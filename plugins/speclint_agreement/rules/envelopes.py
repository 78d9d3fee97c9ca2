"""The room of a block states what its parts and a chain of dimensions give."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import (
    apart,
    axle_pairs_at,
    connecting_rod_of,
    cranks_of,
    driven_by,
    end_closed_by,
    engine_of,
    gap_of_chain,
    other_end,
    parts_standing_out,
    reach_of,
    wheelbase_by_axles,
)
from speclint.specs import (
    Component,
    Crosshead,
    CylinderBlock,
    CylinderCover,
    CylinderEnd,
    DrivingAxle,
    Engine,
    Envelope,
    MotionGap,
    NotStated,
)
from speclint_agreement.formulae.drives import far_cover, rods_in_line, room_from_axle
from speclint_agreement.inputs import places_apart

_WHEELBASE = Limit(
    "wheelbase",
    "2 mm",
    "length",
    COMMON_PRACTICE,
    "what the rigid wheelbase may differ by from the distance of two axles",
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
    """The outermost point of each cover and cam box against where the axis of its cylinder puts that."""
    block = sheet.follow(envelope.around)
    if not isinstance(block, CylinderBlock):
        return
    for part in parts_standing_out(block, sheet):
        farthest = _farthest(part, envelope, sheet)
        if farthest is not None and (reach := reach_of(part, envelope, block, sheet, sheet.take)):
            yield Pair(farthest, reach, "at least", name=part.id)


def _farthest(part: Component, envelope: Envelope, sheet: Sheet) -> Worked | None:
    """The greatest distance from the middle of the engine that a point of a part states."""
    points = [
        worked(sheet.take(f"y of {name}", point.from_centre), point.from_centre)
        for name, point in envelope.points.items()
        if sheet.is_stated(f"part of {name}", point.of) and sheet.follow(point.of).id == part.id
    ]
    return max(points, key=lambda one: one.value, default=None)


def _frames(envelope: Envelope, sheet: Sheet) -> Iterator[Pair]:
    """Frame face and side on which the cylinders stand against each crank of the block; wheelbase against the axles."""
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


def _along(envelope: Envelope, sheet: Sheet) -> Iterator[Pair]:
    """The middle between both covers of a cylinder from the axle that it drives, against its rods.

    Of several pairs of axles as far apart as the rigid wheelbase that counts whose middle suits the covers best.
    """
    block = sheet.follow(envelope.around)
    engine = engine_of(block, sheet) if isinstance(block, CylinderBlock) else None
    if engine is None or not isinstance(block, CylinderBlock) or len(block.bores) != 1:
        return
    rods = connecting_rod_of(block, sheet), block.drive.rod_length
    axle, covers = _axle_of(block, engine, sheet), _covers_along(envelope, block, sheet)
    if axle is None or not covers or not all(sheet.is_stated("rod", one) for one in rods):
        return
    X = sheet.work(
        "X_r", rods_in_line, l=sheet.take_nominal("l", rods[0]), L=sheet.take_nominal("L", rods[1])
    )
    x_a, (x_b, x_f) = sheet.take_nominal("x_a", axle.at), (one.value for one in covers)
    places = (*covers[0].places, *covers[1].places)
    found = [
        Worked(
            sheet.work("X", room_from_axle, x_f=x_f, x_b=x_b, x_1=one.value, x_2=other.value, x_a=x_a),
            tuple(dict.fromkeys((*places, *one.places, *other.places, axle.at.where))),
        )
        for one, other in axle_pairs_at(envelope, engine, sheet.limit("wheelbase", "δ_a"), sheet)
    ]
    if found:
        nearest = min(found, key=lambda one: abs(one.value - X))
        yield Pair(nearest, worked(X, *rods), name="covers along")


def _axle_of(block: CylinderBlock, engine: Engine, sheet: Sheet) -> DrivingAxle | None:
    """The axle that the rods of a block turn; None where no axle says so."""
    for axle in sheet.belonging_to(engine, DrivingAxle):
        if any(sheet.follow(crank.block) is block for _, crank in driven_by(axle, engine, sheet)):
            return axle
    return None


def _covers_along(envelope: Envelope, block: CylinderBlock, sheet: Sheet) -> tuple[Worked, Worked] | None:
    """The hindmost and the foremost place along the engine of a point of a cylinder cover; None where none has one.

    Where all points are of one cover, the other is as far from it as their faces are from each other.
    """
    covers: dict[str, CylinderCover] = {}
    points: list[Worked] = []
    for name, point in envelope.points.items():
        part = sheet.follow(point.of) if sheet.is_stated(f"part of {name}", point.of) else None
        if isinstance(part, CylinderCover) and sheet.is_stated(f"place of {name}", point.along):
            covers[part.id] = part
            points.append(worked(sheet.take_nominal(f"x {name}", point.along), point.along))
    points.sort(key=lambda one: one.value)
    if len(covers) > 1:
        return points[0], points[-1]
    return _by_one_cover(points, covers.popitem()[1], block, sheet) if covers else None


def _by_one_cover(
    points: list[Worked], cover: CylinderCover, block: CylinderBlock, sheet: Sheet
) -> tuple[Worked, Worked] | None:
    """The same from points of one cover alone, from behind; None where its end or the faces have no place."""
    ends = _end_and_other(cover, block, sheet)
    if ends is None:
        return None
    faces = places_apart(ends, sheet)
    if faces is None:
        return None
    at_front = sheet.read(f"side of {cover.id}", ends[0].side) == "front"
    X_f = sheet.work(
        "X_f", apart, x_1=sheet.take_nominal("x_1", faces[0]), x_2=sheet.take_nominal("x_2", faces[1])
    )
    known = points[0] if at_front else points[-1]
    x = sheet.work("x_o", far_cover, x=known.value, k=-1.0 if at_front else 1.0, X=X_f)
    other = Worked(x, (*known.places, *worked(x, *faces).places))
    return (other, points[-1]) if at_front else (points[0], other)


def _end_and_other(
    cover: CylinderCover, block: CylinderBlock, sheet: Sheet
) -> tuple[CylinderEnd, CylinderEnd] | None:
    """The end of a cylinder that a cover closes, and the one beyond; None where the cover or its end does not say."""
    says_end = any(sheet.is_stated(f"end of {cover.id}", one) for one in (cover.of_end, cover.end))
    if not says_end or not sheet.is_stated(f"block of {cover.id}", cover.closes):
        return None
    _, end = end_closed_by(cover, sheet)
    beyond = other_end(block, end, sheet, next(iter(block.bores)))
    return (end, beyond) if beyond and sheet.is_stated(f"side of {cover.id}", end.side) else None


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
    title="The outermost point of a cover or a cam box is no nearer to the middle of the engine than the axis of its "
    "cylinder and its size put it",
    on=Envelope,
    pairs=_points,
    within="",
    grade=Grade.HOLD,
    why="the widest cover is judged against the gauge by its point, and strikes a platform by its metal",
    leaves_out="pipes and drain cocks, whose place no spec gives; parts without a point, which envelope.loading-gauge "
    "names; nuts and lugs that stand out beyond the rim of a cover",
)

frame_of_engine: Rule = agreement(
    "envelope.frame-of-engine",
    title="An envelope has the frame face as far from the middle of the engine as its engine has it, the cylinders on "
    "that side of it on which their rods run, and a rigid wheelbase between two axles",
    on=Envelope,
    pairs=_frames,
    limits=[_WHEELBASE],
    grade=Grade.HOLD,
    why="what stands out of the loading gauge is worked from this face and this wheelbase: if one is wrong, all is",
    leaves_out="a block that no engine names; an engine that does not state where its frames are, or of which fewer "
    "than two driven axles are drawn; which of its axles are guided in the rigid frame, and which are free to move "
    "sideways; bogies and trucks of several axles",
    edition=2,
)

along_by_rods: Rule = agreement(
    "envelope.along-by-rods",
    title="Along the engine, the middle between both covers of a cylinder is as far from the axle that it drives as "
    "its connecting rod and its piston rod together are long",
    on=Envelope,
    pairs=_along,
    within="0.3 m",
    limits=[_WHEELBASE],
    grade=Grade.HOLD,
    why="a room that stands at another axle than its cylinder is judged for the throw of another place in a curve",
    leaves_out="covers of which one stands out 0.6 m further than the other, as with a long tail rod; points of other "
    "parts; an axis that lies at more than 1 in 4; blocks with several bores; a block of which no axle, no rods or no "
    "point of a cover is drawn; a wheelbase that is not stated (envelope.loading-gauge), for which that of the "
    "outermost driven axles stands",
    edition=2,
    against=("foul",),
)

RULES = (along_by_rods, frame_of_engine, gap_by_chain, points_of_parts)
