"""The covers of a cylinder as the points of an envelope place them along the engine."""

from __future__ import annotations

from speclint import Sheet, Worked, worked
from speclint.facts import end_closed_by, faces_apart, other_end, places_apart
from speclint.specs import CylinderBlock, CylinderCover, CylinderEnd, Envelope
from speclint_agreement.formulae.drives import far_cover

#: Each cover of which points have a place along the engine, by its id, and those places.
Points = dict[str, tuple[CylinderCover, list[Worked]]]
#: The hindmost and the foremost place along the engine of the covers of a cylinder.
Covers = tuple[Worked, Worked]


def points_of_covers(envelope: Envelope, sheet: Sheet) -> Points:
    """Each cylinder cover of which points have a place along the engine, by its id, and those places."""
    found: dict[str, tuple[CylinderCover, list[Worked]]] = {}
    for name, point in envelope.points.items():
        part = sheet.follow(point.of) if sheet.is_stated(f"part of {name}", point.of) else None
        if isinstance(part, CylinderCover) and sheet.is_stated(f"place of {name}", point.along):
            place = worked(sheet.take_nominal(f"x {name}", point.along), point.along)
            found.setdefault(part.id, (part, []))[1].append(place)
    return found


def covers_along(points: Points, block: CylinderBlock, sheet: Sheet) -> Covers | None:
    """The hindmost and the foremost place along the engine of a point of a cylinder cover; None where none has one.

    Where all points are of one cover, the other is as far from it as their faces are from each other.
    """
    places = sorted((one for _, found in points.values() for one in found), key=place_of)
    if len(points) > 1:
        return places[0], places[-1]
    return _by_one_cover(places, next(iter(points.values()))[0], block, sheet) if points else None


def place_of(one: Worked) -> float:
    """The place itself, by which they are put in order."""
    return one.value  # type: ignore[no-any-return]  # a number, as all places are


def _by_one_cover(
    points: list[Worked], cover: CylinderCover, block: CylinderBlock, sheet: Sheet
) -> Covers | None:
    """The same from points of one cover alone, from behind; None where its end or the faces have no place."""
    ends = _end_and_other(cover, block, sheet)
    if ends is None:
        return None
    faces = places_apart(ends, sheet)
    if faces is None:
        return None
    at_front = sheet.read(f"side of {cover.id}", ends[0].side) == "front"
    X_f = faces_apart(faces, sheet, sheet.take_nominal)
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
