"""Block, liner, piston and cover state one stroke, one place of each face, and bores in their order."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import (
    apart,
    cover_beyond,
    ends_of,
    face_by_seat,
    other_end,
    places_apart,
    room_for_strokes,
    room_left,
)
from speclint.specs import CylinderBlock, CylinderEnd, CylinderLiner, PistonRing
from speclint_agreement.formulae.cylinders import beyond_whole_steps, edge_of_opening, place_beyond


def _clearances(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The clearance of each front end against what faces, stroke and piston leave when the back has its own."""
    for bore, (front, back) in _both_ends(block, sheet):
        room = room_for_strokes(block, bore, sheet, sheet.take_nominal)
        if room is not None and sheet.is_stated("clearance of the back end", back.clearance):
            other = sheet.take_nominal("c_o", back.clearance)
            left = sheet.work("c", room_left, C=room.value, c_o=other)
            places = (back.clearance.where, *room.places)
            yield Pair(front.clearance, Worked(left, places), name=bore)


def _faces(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """Each cover's face, as counted from the fixed point, against the place of the collar's seat and the face from it.

    Where the seat has no place, the distance of both faces as counted from the one and from the other.
    """
    placed = [
        (name, end, face_by_seat(block, end, sheet, sheet.take_nominal)) for name, end in block.ends.items()
    ]
    yield from (Pair(end.face_at, by_seat, name=name) for name, end, by_seat in placed if by_seat is not None)
    if all(by_seat is not None for _, _, by_seat in placed):
        return
    for bore, (front, back) in _both_ends(block, sheet):
        places = (front.face_at, back.face_at, front.face_from_seat, back.face_from_seat)
        if all(sheet.is_stated("place of a face", one) for one in places):
            x = [sheet.take_nominal(f"x_{number}", one) for number, one in enumerate(places, start=1)]
            fixed = sheet.work("X_f", apart, x_1=x[0], x_2=x[1])
            seat = sheet.work("X_s", apart, x_1=x[2], x_2=x[3])
            yield Pair(worked(fixed, *places[:2]), worked(seat, *places[2:]), name=bore)


def _both_ends(block: CylinderBlock, sheet: Sheet) -> Iterator[tuple[str, tuple[CylinderEnd, CylinderEnd]]]:
    for bore in block.bores:
        for name, end in ends_of(block, bore, sheet).items():
            side = sheet.said(f"side of {name}", end.side)
            beyond = other_end(block, end, sheet) if side == "front" else None
            if beyond is not None:
                yield bore, (end, beyond)


def _stops(liner: CylinderLiner, sheet: Sheet) -> Iterator[Pair]:
    """The length of the bore against the place of the cover's face at the free end, where the cover is the stop."""
    face = cover_beyond(liner, sheet)
    if face is None:
        return
    block = sheet.follow(liner.housed_in)
    bore = sheet.entry(block.bores, liner.in_bore, f"bores of {block.id}")
    yield Pair(bore.length, face)


def _bores(liner: CylinderLiner, sheet: Sheet) -> Iterator[Pair]:
    """The last bore beyond the new one by whole steps, and no piston or ring for a bore beyond the last."""
    yield Pair(liner.last_bore, liner.bore, "at least", name="new bore")
    rings = [made for ring in sheet.belonging_to(liner, PistonRing) for made in ring.made_for]
    for number, made in enumerate((*liner.pistons_for, *rings), start=1):
        yield Pair(made, liner.last_bore, "at most", name=f"bore {number}")
    if sheet.is_stated("step of boring", liner.reboring_step):
        last, new = sheet.take_nominal("d_l", liner.last_bore), sheet.take_nominal("d", liner.bore)
        step = sheet.take_nominal("s", liner.reboring_step)
        steps = float(round((last - new) / step))
        left = sheet.work("r", beyond_whole_steps, d_l=last, d=new, k=steps, s=step)
        places = (liner.last_bore, liner.bore, liner.reboring_step)
        yield Pair(worked(left, *places), worked(sheet.work("r_0", apart, x_1=0.0, x_2=0.0)), name="steps")


def _sizes(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """Width and height as the block is put in, against the faces of its covers: how wide they are, or how far apart.

    Of two faces the wider one counts, as far as their widths are stated: it is no less than the one that is known.
    The edges of each opening of a block with one bore against these faces.
    """
    yield from _openings(block, sheet)
    for bore, ends in _both_ends(block, sheet):
        wide = [one.face_diameter for one in ends if sheet.is_stated("width of a face", one.face_diameter)]
        far = places_apart(ends, sheet)
        if not wide or not far:
            continue
        width = max(sheet.take_nominal(f"D_{number}", one) for number, one in enumerate(wide, start=1))
        x_1, x_2 = (sheet.take_nominal(f"x_{number}", one) for number, one in enumerate(far, start=1))
        length = sheet.work("X", apart, x_1=x_1, x_2=x_2)
        least = worked(min(width, length), *(wide if width <= length else far))
        yield Pair(block.entering_width, least, "at least", name=f"width at {bore}")
        yield Pair(block.entering_height, least, "at least", name=f"height at {bore}")


def _openings(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The foremost and the hindmost edge of each opening against the faces of both ends, from the fixed point."""
    if len(block.bores) != 1:
        return
    faces = [one for one in (_face_of(end, block, sheet) for end in block.ends.values()) if one is not None]
    openings = [
        (name, one) for name, one in block.openings.items() if sheet.is_stated(f"place of {name}", one.at)
    ]
    if len(faces) < 2 or not openings:
        return
    back, front = min(faces, key=lambda one: one.value), max(faces, key=lambda one: one.value)
    beyond = sheet.limit(_BEYOND.name, "δ")
    first = sheet.work("x_0", place_beyond, x_f=back.value, k=-1.0, delta=beyond)
    last = sheet.work("x_1", place_beyond, x_f=front.value, k=1.0, delta=beyond)
    for name, opening in openings:
        x = sheet.take_nominal(f"x {name}", opening.at)
        wide = sheet.is_stated(f"bore of {name}", opening.bore)
        d = sheet.take_nominal(f"d {name}", opening.bore) if wide else 0.0
        places = (opening.at, opening.bore)
        hind = sheet.work(f"x_h {name}", edge_of_opening, x=x, k=-1.0, d=d)
        fore = sheet.work(f"x_v {name}", edge_of_opening, x=x, k=1.0, d=d)
        yield Pair(
            worked(hind, *places), Worked(first, back.places), "at least", name=f"back of opening {name}"
        )
        yield Pair(
            worked(fore, *places), Worked(last, front.places), "at most", name=f"front of opening {name}"
        )


def _face_of(end: CylinderEnd, block: CylinderBlock, sheet: Sheet) -> Worked | None:
    """The place of a cover's face forward of the fixed point: as stated, else by the collar's seat."""
    if sheet.is_stated("place of a face", end.face_at):
        return worked(sheet.take_nominal("x_f", end.face_at), end.face_at)
    return face_by_seat(block, end, sheet, sheet.take_nominal)


_BEYOND = Limit(
    "beyond its faces",
    "50 mm",
    "length",
    COMMON_PRACTICE,
    "what the clear way of an opening may stand beyond the faces of the cylinder, in a chest that overhangs them",
    "not negative",
)

stroke_fits: Rule = agreement(
    "cylinder.stroke-fits",
    title="The clearances of both ends of a cylinder are what its faces leave beside stroke and piston",
    on=CylinderBlock,
    pairs=_clearances,
    within="0.1 mm",
    grade=Grade.HOLD,
    why="a piston meets its cover by what is drawn, not by what is written beside it",
    leaves_out="a bore whose piston or faces are not drawn",
    edition=2,
)

faces_agree: Rule = agreement(
    "cylinder.faces-agree",
    title="The faces of both covers lie where the place of the collar's seat puts them, and equally far apart from the "
    "fixed point and from that seat",
    on=CylinderBlock,
    pairs=_faces,
    within="0.1 mm",
    grade=Grade.HOLD,
    why="two datums for one face part company at the first revision, and the piston's clearance is between them",
    leaves_out="where between its covers the collar's seat lies, if the bore does not state its place",
    edition=2,
)

stop_is_the_cover: Rule = agreement(
    "liner.stop-is-the-cover",
    title="Where the cover stops the free end of a liner, the bore is as long as from collar seat to cover",
    on=CylinderLiner,
    pairs=_stops,
    within="0.1 mm",
    grade=Grade.HOLD,
    why="the liner grows until it meets what is there, and then pushes the cover's studs",
    leaves_out="a stop that is a shoulder of the bore",
)

last_bore_in_order: Rule = agreement(
    "liner.last-bore-in-order",
    title="The last bore of a liner is the new one and whole steps of boring, and no piston or ring is for more",
    on=CylinderLiner,
    pairs=_bores,
    within="0.01 mm",
    grade=Grade.HOLD,
    why="a wall judged at a last bore that is never the last is thinner when the last piston goes in",
    leaves_out="oval wear",
)

size_by_its_faces: Rule = agreement(
    "block.size-by-its-faces",
    title="A block is no narrower and no lower, as it is put in, than the wider face of a cylinder's covers, or than "
    "these faces are apart, whichever is less, and its openings lie between them",
    on=CylinderBlock,
    pairs=_sizes,
    within="",
    limits=[_BEYOND],
    edition=2,
    grade=Grade.NONCONFORMITY,
    why="a block that is stated narrower than its own cylinder enters the frames on paper alone",
    leaves_out="chests, pads and flanges, by which it is larger; where between the faces an opening lies, and whether "
    "its pipe comes to it there; openings of a block with several bores, or whose faces have no place from the fixed "
    "point",
    against=("foul",),
)

RULES = (faces_agree, last_bore_in_order, size_by_its_faces, stop_is_the_cover, stroke_fits)
