"""The room of a block along the engine: its covers by the rods of its cylinder, and by each other."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Must, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import (
    axle_driven_for,
    axle_pairs_at,
    connecting_rod_of,
    ends_by_side,
    engine_of,
    face_aimed_at,
    faces_apart,
    openings_of,
    places_apart,
    rods_drawn,
    rods_in_line,
    side_closed,
    stroke_of,
)
from speclint.specs import CamBox, CylinderBlock, Envelope, GaugePoint, SteamPipe
from speclint_agreement.formulae.drives import (
    ahead_of,
    farthest_of_pipe,
    least_apart,
    most_apart,
    opening_along,
    past_middle,
    room_from_axle,
)
from speclint_agreement.inputs.covers_along import Covers, Points, covers_along, place_of, points_of_covers
from speclint_agreement.inputs.wheelbases import WHEELBASE

_INWARD = Limit(
    "inward",
    "50 mm",
    "length",
    COMMON_PRACTICE,
    "what both covers together may be nearer to each other than their faces, as places are rounded",
    "not negative",
)
_STANDS_OUT = Limit(
    "standing out",
    "0.5 m",
    "length",
    COMMON_PRACTICE,
    "what both covers of a cylinder whose rod has no tail may stand out beyond their faces, together",
    "not negative",
)


_BESIDE = Limit(
    "beside",
    "150 mm",
    "length",
    COMMON_PRACTICE,
    "what flanges and lagging of a pipe may reach beyond its centre line along the engine",
    "not negative",
)
_PAST = Limit(
    "past the middle",
    "100 mm",
    "length",
    COMMON_PRACTICE,
    "what a drain cock or a cam box may lie beyond the middle between both covers, of which one may stand out further",
    "not negative",
)
#: Which way what is at an end of a cylinder may lie past its middle, and what it is to be to that.
_FROM_MIDDLE: dict[str | None, tuple[float, Must]] = {"front": (-1.0, "at least"), "back": (1.0, "at most")}
#: Which way a pipe reaches, and what a point is to be of the farthest that it can.
_EITHER_WAY: tuple[tuple[float, Must], ...] = ((1.0, "at most"), (-1.0, "at least"))


def _along(envelope: Envelope, sheet: Sheet) -> Iterator[Pair]:
    """The middle between both covers of a cylinder from the axle that it drives, against its rods; and the covers from
    each other, against their faces; points of pipes, against what these reach from their openings; and drain cocks and
    cam boxes of an end, against the middle of the cylinder.

    Of several pairs of axles as far apart as the rigid wheelbase that counts whose middle suits the covers best. A
    cylinder behind its axle has no front cover by which its order is told.
    """
    block = sheet.follow(envelope.around)
    if not isinstance(block, CylinderBlock) or len(block.bores) != 1:
        return
    points = points_of_covers(envelope, sheet)
    covers = covers_along(points, block, sheet)
    middle = _middle(covers, envelope, block, sheet)
    if middle is not None:
        found, by_rods, ahead = middle
        yield Pair(found, by_rods, name="covers along")
        if not ahead:
            return
        if abs(found.value - by_rods.value) > sheet.limit("difference", "Δ"):
            yield from _covers_apart(points, block, sheet)
            return  # pipes count from these covers
    yield from _covers_apart(points, block, sheet)
    if covers is not None:
        yield from _at_their_ends(envelope, covers, block, sheet)
        yield from _pipes(envelope, covers, block, sheet)


def _at_their_ends(envelope: Envelope, covers: Covers, block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """Each drain cock and cam box of the front end ahead of the middle of the cylinder, of the back end behind it."""
    x_b, x_f = (one.value for one in covers)
    places = tuple(dict.fromkeys(place for one in covers for place in one.places))
    for name, point in envelope.points.items():
        side = _side_of(name, point, block, sheet)
        if side in _FROM_MIDDLE and sheet.is_stated(f"place of {name}", point.along):
            k, must = _FROM_MIDDLE[side]
            x_m = sheet.work(
                f"x_m {name}", past_middle, x_f=x_f, x_b=x_b, k=k, delta=sheet.limit(_PAST.name, "δ_m")
            )
            yield Pair(point.along, Worked(x_m, places), must, name=f"{name} at its end")


def _side_of(name: str, point: GaugePoint, block: CylinderBlock, sheet: Sheet) -> str | None:
    """The side of the end of a cylinder whose drain cock or cam box has a point; None where it is of neither."""
    end = sheet.said(f"end of {name}", point.cock_of)
    if end is None and sheet.is_stated(f"part of {name}", point.of):
        part = sheet.follow(point.of)
        end = sheet.said(f"end of {part.id}", part.of_end) if isinstance(part, CamBox) else None
    return sheet.said(f"side of end {end}", block.ends[end].side) if end in block.ends else None


def _pipes(envelope: Envelope, covers: Covers, block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """Each point of a pipe no farther along from the opening of the block than the pipe reaches."""
    sides = ends_by_side(block, next(iter(block.bores)), sheet)
    faces = [face_aimed_at(block, sides[side], sheet) for side in ("front", "back") if side in sides]
    if len(faces) < 2 or faces[0] is None or faces[1] is None:
        return
    for name, point in envelope.points.items():
        pipe = sheet.follow(point.of) if sheet.is_stated(f"part of {name}", point.of) else None
        if not isinstance(pipe, SteamPipe) or not sheet.is_stated(f"place of {name}", point.along):
            continue
        for _, there, opening in openings_of(pipe, sheet):
            sizes = {
                "place of the opening": opening.at,
                "length": pipe.length,
                "anchors": pipe.anchor_distance,
            }
            if there is not block or not all(sheet.is_stated(what, one) for what, one in sizes.items()):
                continue
            a, l, d = (sheet.take_nominal(f"{what} {pipe.id}", one) for what, one in sizes.items())  # noqa: E741
            x_b, x_f = (one.value for one in covers)
            y = {"y_f": faces[0].value, "y_b": faces[1].value}
            x_o = sheet.work(f"x_o {name}", opening_along, x_f=x_f, x_b=x_b, a=a, **y)
            places = (opening.at.where, pipe.length.where, pipe.anchor_distance.where, *covers[0].places)
            for k, must in _EITHER_WAY:
                delta = sheet.limit(_BESIDE.name, "δ_p")
                x_l = sheet.work(f"x_l {name} {k:g}", farthest_of_pipe, x_o=x_o, k=k, l=l, d=d, delta=delta)
                yield Pair(point.along, Worked(x_l, places), must, name=f"{name} along")


def _middle(
    covers: Covers | None, envelope: Envelope, block: CylinderBlock, sheet: Sheet
) -> tuple[Worked, Worked, bool] | None:
    """The middle between both covers from their axle, the same by the rods, and whether it is ahead of that axle.

    None where axle, rods or covers are not drawn.
    """
    engine = engine_of(block, sheet)
    if engine is None or covers is None:
        return None
    rods = connecting_rod_of(block, sheet), block.drive.rod_length
    axle = axle_driven_for(block, engine, sheet)
    if axle is None or not all(sheet.is_stated("rod", one) for one in rods):
        return None
    X = sheet.work(
        "X_r", rods_in_line, l=sheet.take_nominal("l", rods[0]), L=sheet.take_nominal("L", rods[1])
    )
    x_a, (x_b, x_f) = sheet.take_nominal("x_a", axle.at), (one.value for one in covers)
    places = (*covers[0].places, *covers[1].places)
    found = [
        (
            Worked(
                sheet.work("X", room_from_axle, x_f=x_f, x_b=x_b, x_1=one.value, x_2=other.value, x_a=x_a),
                tuple(dict.fromkeys((*places, *one.places, *other.places, axle.at.where))),
            ),
            x_f + x_b + one.value + other.value > 2 * x_a,
        )
        for one, other in axle_pairs_at(envelope, engine, sheet.limit("wheelbase", "δ_a"), sheet)
    ]
    if not found:
        return None
    nearest, ahead = min(found, key=lambda one: abs(one[0].value - X))
    return nearest, worked(X, *rods), ahead


def _covers_apart(points: Points, block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """How far the front cover is ahead of the back one, by their nearest points, against the faces that they close.

    Without places of the faces the front one is ahead by the stroke at least.
    """
    sides = {side_closed(cover, sheet): list(places) for cover, places in points.values()}
    if len(points) != 2 or set(sides) != {"front", "back"}:
        return
    front, back = min(sides["front"], key=place_of), max(sides["back"], key=place_of)
    apart_by = sheet.work("D", ahead_of, x_f=front.value, x_b=back.value)
    covers = Worked(apart_by, tuple(dict.fromkeys((*front.places, *back.places))))
    bore = next(iter(block.bores))
    ends = ends_by_side(block, bore, sheet)
    faces = places_apart((ends["front"], ends["back"]), sheet) if len(ends) == 2 else None
    if faces is None:
        yield Pair(covers, stroke_of(block, sheet, bore), "at least", name="front cover before back cover")
        return
    X_f = faces_apart(faces, sheet, sheet.take_nominal)
    least = sheet.work("D_least", least_apart, X=X_f, delta=sheet.limit("inward", "δ"))
    yield Pair(covers, worked(least, *faces), "at least", name="front cover before back cover")
    tails = [sheet.said(f"tail rod of {rod.id}", rod.tail_rod) for rod in rods_drawn(block, sheet)]
    if not any(tails):
        most = sheet.work("D_most", most_apart, X=X_f, delta=sheet.limit("standing out", "Δ_o"))
        yield Pair(covers, worked(most, *faces), "at most", name="covers apart")


along_by_rods: Rule = agreement(
    "envelope.along-by-rods",
    title="Along the engine, covers lie as far from the axle of their cylinder as its rods are long and from each "
    "other as their faces, cocks and cam boxes at their ends, and a pipe within its reach",
    on=Envelope,
    pairs=_along,
    within="0.3 m",
    limits=[WHEELBASE, _INWARD, _STANDS_OUT, _BESIDE, _PAST],
    grade=Grade.HOLD,
    why="a room that stands at another axle than its cylinder is judged for the throw of another place in a curve",
    leaves_out="covers of which one stands out 0.6 m further than the other; how far they stand out where the rod has "
    "a tail; which cover is which of a cylinder behind its axle; points of other parts, where within its half of the "
    "cylinder a cock or a cam box is, and within its reach a pipe; an axis that lies at more than 1 in 4; blocks with "
    "several bores; a block of which no axle, no rods or no point of a cover is drawn; a wheelbase that is not stated "
    "(envelope.loading-gauge), for which that of the outermost driven axles stands",
    edition=5,
    against=("foul",),
)

RULES = (along_by_rods,)
