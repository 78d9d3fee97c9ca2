"""Where the faces of a cylinder's covers and the middle of its liner are, and how long its bore is up to its stop."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, Ratio, formula
from speclint.facts.cylinders import ends_of, liners_of
from speclint.facts.taking import Take
from speclint.facts.wheelbases import apart
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import CylinderBlock, CylinderLiner, NotStated

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd, Length

#: Which way distances from the collar's seat count along the block, forward positive, by the collar's end.
_WAY = {"front": -1.0, "back": 1.0}


@formula("x = x_s + k x_f", cites=[FIRST_PRINCIPLES])
def place_of_face(x_s: Metres, k: Ratio, x_f: Metres) -> Metres:
    """Place of a cover's face, forward of the fixed point of the block.

    x = x_s + k x_f

    ``x_s`` place of the collar's seat, forward of the fixed point [m]; ``x_f`` from the seat to the face, towards the
    liner's free end [m]; ``k`` −1 where the collar is at the front, 1 where it is at the back. Returns [m], negative
    behind the fixed point.

    >>> round(place_of_face(x_s=0.711, k=-1, x_f=0.861) * 1e3, 6)
    -150.0
    """
    return x_s + k * x_f


@formula("x = x_s + k (l − t)/2", cites=[FIRST_PRINCIPLES])
def middle_of_length(x_s: Metres, k: Ratio, l: Metres, t: Metres) -> Metres:  # noqa: E741 - of the equation
    """Place of the middle of a liner, collar included, forward of the block's fixed point.

    x = x_s + k (l − t)/2

    ``x_s`` place of the collar's seat, ``l`` from there to the free end, ``t`` thickness of the collar [m]; ``k`` −1
    where the collar is at the front, 1 where it is at the back [-]. Returns [m].

    >>> round(middle_of_length(x_s=0.711, k=-1, l=0.9, t=0.025) * 1e3, 6)
    273.5
    """
    return x_s + k * (l - t) / 2


def middle_of_liner(liner: CylinderLiner, block: CylinderBlock, sheet: Sheet, take: Take) -> Worked | None:
    """The place of the middle of a liner in a block, forward of the fixed point, m.

    None where the liner does not state its bore, its length and its collar, or the bore not where the collar's seat is.
    """
    sizes = liner.in_bore, liner.length, liner.collar.end, liner.collar.thickness
    if not all(sheet.is_stated("place and length of the liner", one) for one in sizes):
        return None
    bore = sheet.entry(block.bores, liner.in_bore, f"bores of {block.id}")
    if not sheet.is_stated("place of the seat", bore.seat_at):
        return None
    lengths = {"x_s": bore.seat_at, "l": liner.length, "t": liner.collar.thickness}
    given = {symbol: take(symbol, size) for symbol, size in lengths.items()}
    k = _WAY[sheet.read("end of the collar", liner.collar.end)]
    return worked(sheet.work("x_l", middle_of_length, k=k, **given), *lengths.values(), liner.collar.end)


def face_by_seat(block: CylinderBlock, end: CylinderEnd, sheet: Sheet, take: Take) -> Worked | None:
    """The place of the cover's face at an end, by that of the collar's seat in its bore.

    None where the seat has no place, the face no distance from it, or no liner says at which end its collar is.
    """
    if not sheet.is_stated("bore of end", end.of_bore):
        return None
    name = sheet.read("bore of end", end.of_bore)
    bore = sheet.entry(block.bores, end.of_bore, f"bores of {block.id}")
    places = bore.seat_at, end.face_from_seat
    if not all(sheet.is_stated("place of seat or face", one) for one in places):
        return None
    liner = _placed_liner(block, name, sheet)
    if liner is None:
        return None
    way = _WAY[sheet.read("end of the collar", liner.collar.end)]
    x_s, x_f = take("x_s", bore.seat_at), take("x_f", end.face_from_seat)
    return worked(sheet.work("x", place_of_face, x_s=x_s, k=way, x_f=x_f), *places, liner.collar.end)


def _placed_liner(block: CylinderBlock, bore: str, sheet: Sheet) -> CylinderLiner | None:
    """The liner in a bore that states at which end its collar is; None where none does."""
    for liner in liners_of(block, bore, sheet):
        if sheet.is_stated("end of the collar", liner.collar.end):
            return liner
    return None


def block_face(block: CylinderBlock, end: CylinderEnd, sheet: Sheet) -> Metres | None:
    """Place of the block's own face at an end, forward of the fixed point, m, by the bore from seat to face.

    At the collar it lies beyond the seat by the depth of the recess, at the free end by the length of the bore. None
    where the bore does not state that, or no liner says at which end its collar is.
    """
    stated = sheet.is_stated("bore of end", end.of_bore)
    name = sheet.read("bore of end", end.of_bore) if stated else next(iter(block.bores), "")
    bore = block.bores.get(name)
    if bore is None or not sheet.is_stated("place of the seat", bore.seat_at):
        return None
    liner = _placed_liner(block, name, sheet)
    if liner is None:
        return None
    collar = sheet.read("end of the collar", liner.collar.end)
    at_collar = sheet.read("side of the end", end.side) == collar
    size, way = (bore.recess_depth, -_WAY[collar]) if at_collar else (bore.length, _WAY[collar])
    if not sheet.is_stated("from seat to face", size):
        return None
    x_s, x_f = sheet.take("x_s", bore.seat_at), sheet.take("x_f", size)
    return sheet.work("x", place_of_face, x_s=x_s, k=way, x_f=x_f)


def face_forward(block: CylinderBlock, end: CylinderEnd, sheet: Sheet) -> float:
    """Place of the cover's face at an end, forward of the fixed point, m: by the collar's seat, else as stated."""
    by_seat = face_by_seat(block, end, sheet, sheet.take)
    return sheet.take("x", end.face_at) if by_seat is None else by_seat.value


def cover_beyond(liner: CylinderLiner, sheet: Sheet) -> Measure | None:
    """From the collar's seat to the face of the cover that stops the free end of a liner.

    None where the cover is not the stop, or no end of the cylinder states that face.
    """
    if not sheet.is_stated("stop", liner.free_end_stop) or sheet.read("stop", liner.free_end_stop) != "cover":
        return None
    places = liner.housed_in, liner.in_bore, liner.collar.end
    if not all(sheet.is_stated("place of the liner", one) for one in places):
        return None
    block, bore = sheet.follow(liner.housed_in), sheet.read("bore of liner", liner.in_bore)
    collar = sheet.read("end of the collar", liner.collar.end)
    for name, end in ends_of(block, bore, sheet).items():
        beyond = (
            sheet.is_stated(f"side of {name}", end.side) and sheet.read(f"side of {name}", end.side) != collar
        )
        if beyond and sheet.is_stated(f"face of {name}", end.face_from_seat):
            return end.face_from_seat if isinstance(end.face_from_seat, Measure) else None
    return None


def bore_up_to_stop(liner: CylinderLiner, sheet: Sheet) -> Measure | NotStated:
    """The length of a bore from the collar's seat to what stops the liner: the cover's face, else as it is stated."""
    face = cover_beyond(liner, sheet)
    if face is not None:
        return face
    block = sheet.follow(liner.housed_in)
    return sheet.entry(block.bores, liner.in_bore, f"bores of {block.id}").length


def places_apart(ends: tuple[CylinderEnd, CylinderEnd], sheet: Sheet) -> tuple[Length, Length] | None:
    """Both faces, as counted from the collar's seat, else from the fixed point; None where neither counts both."""
    one, other = ends
    for places in ((one.face_from_seat, other.face_from_seat), (one.face_at, other.face_at)):
        if all(sheet.is_stated("place of a face", place) for place in places):
            return places
    return None


def faces_apart(faces: tuple[Length, Length], sheet: Sheet, take: Take) -> Metres:
    """How far the faces of both covers are from each other, m, by their places from one datum."""
    x_1, x_2 = (take(f"x_{number}", one) for number, one in enumerate(faces, start=1))
    return sheet.work("X_f", apart, x_1=x_1, x_2=x_2)


def face_aimed_at(block: CylinderBlock, end: CylinderEnd, sheet: Sheet) -> Worked | None:
    """Place of the cover's face at an end, as the drawing aims at it: by the collar's seat, else as stated.

    None where neither is.
    """
    by_seat = face_by_seat(block, end, sheet, sheet.take_nominal)
    if by_seat is not None or not sheet.is_stated("place of a face", end.face_at):
        return by_seat
    return worked(sheet.take_nominal("x", end.face_at), end.face_at)
