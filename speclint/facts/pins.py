"""The bearing of a pin between the bosses that hold it, and the bosses that its seat is in."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.taking import Take
from speclint.rules import Sheet, Worked, worked
from speclint.specs import DrivingAxle, Pin

if TYPE_CHECKING:
    from speclint.handbook.materials import Material
    from speclint.quantities import Measure
    from speclint.specs import NotStated, Turning


@formula("g = L − b", cites=[FIRST_PRINCIPLES])
def between_bosses(L: Metres, b: Metres) -> Metres:
    """Gap between two equal bosses that hold a pin.

    g = L − b

    ``L`` between the middles of the bosses, ``b`` width of one boss along the pin [m]. Returns [m].

    >>> round(between_bosses(L=0.175, b=0.060), 6)
    0.115
    """
    return L - b


def gap_for_bearing(pin: Pin, sheet: Sheet, take: Take) -> Worked | None:
    """The room for the bearing of a crosshead pin, m: between the bosses, or between the middles of its supports.

    None for another pin, and where the supports are not drawn.
    """
    on_crosshead = sheet.read("place", pin.place) == "crosshead pin"
    if not (on_crosshead and sheet.is_stated("span", pin.span)):
        return None
    crosshead = sheet.follow(pin.moved_by) if sheet.is_stated("crosshead", pin.moved_by) else None
    L = take("L", pin.span)
    if crosshead is None or not sheet.is_stated("width of a boss", crosshead.boss_width):
        return worked(L, pin.span)
    gap = sheet.work("g", between_bosses, L=L, b=take("b_b", crosshead.boss_width))
    return worked(gap, pin.span, crosshead.boss_width)


def length_of_bearing(pin: Pin, sheet: Sheet) -> Metres:
    """Length of the bearing of a pin, m: as stated, and no more than there is room for."""
    stated, gap = sheet.take("b", pin.length), gap_for_bearing(pin, sheet, sheet.take)
    return stated if gap is None else min(stated, gap.value)


@formula("a_l = b/2 + r_f", cites=[FIRST_PRINCIPLES])
def beside_fillet(b: Metres, r_f: Metres) -> Metres:
    """Distance of the middle of a bearing from the face beside it, where the bearing begins at the end of the fillet.

    a_l = b/2 + r_f

    ``b`` length of the bearing, ``r_f`` fillet radius at that face, 0 where there is none [m]. Returns [m].

    Hand working: 190/2 + 12 = 107 mm.

    >>> round(beside_fillet(b=0.190, r_f=0.012), 6)
    0.107
    """
    return b / 2 + r_f


@formula("L_b = 2 b", cites=[FIRST_PRINCIPLES])
def length_in_bosses(b: Metres) -> Metres:
    """Length of a pin within two equal bosses.

    L_b = 2 b

    ``b`` width of one boss along the pin [m]. Returns [m].

    >>> length_in_bosses(b=0.060)
    0.12
    """
    return 2 * b


def turning_with(pin: Pin, sheet: Sheet) -> Iterator[tuple[DrivingAxle, str, Turning]]:
    """What driving axles say of a crank pin that turns with them, each with its axle and its name there."""
    for axle in sheet.belonging_to(pin, DrivingAxle):
        for name, piece in axle.turning.items():
            if sheet.is_stated(f"part of {name}", piece.of) and sheet.follow(piece.of).id == pin.id:
                yield axle, name, piece


def boss_of_pin(pin: Pin, sheet: Sheet) -> Metres:
    """Outside diameter of the boss round a pin's seat, m: the least that pin and crosshead or axle state of it."""
    sizes = [sheet.take(f"D_b {name}", one) for name, one in _drawn("boss", pin, sheet)]
    if not sizes or sheet.is_stated("boss of the seat", pin.seat.boss):
        sizes.append(sheet.take("D_b", pin.seat.boss))
    return min(sizes)


def length_of_seat(pin: Pin, sheet: Sheet) -> Metres:
    """Length of the seat of a pin, m: as stated, and no more than its crosshead or its axle has of bosses."""
    lengths = []
    for name, one in _drawn("boss_width", pin, sheet):
        b = sheet.take(f"b {name}", one)
        lengths.append(b if _on_crank(pin, sheet) else sheet.work("L_b", length_in_bosses, b=b))
    if not lengths or sheet.is_stated("length of the seat", pin.seat.length):
        lengths.append(sheet.take("L", pin.seat.length))
    return min(lengths)


def metal_of_boss(pin: Pin, sheet: Sheet) -> Material:
    """The metal of the boss round a pin's seat: as the pin states it, else that of its crosshead or of its axle."""
    if not sheet.is_stated("metal of the boss", pin.seat.boss_material):
        if not _on_crank(pin, sheet) and sheet.is_stated("crosshead", pin.moved_by):
            return sheet.material_of(sheet.follow(pin.moved_by))
        for _, name, piece in turning_with(pin, sheet):
            if sheet.is_stated(f"metal of {name}", piece.boss_material):
                return sheet.material_named(f"the boss of {name}", piece.boss_material)
    return sheet.material_named("the boss", pin.seat.boss_material)


def _on_crank(pin: Pin, sheet: Sheet) -> bool:
    return sheet.read("place", pin.place) == "crank pin"


def _drawn(size: str, pin: Pin, sheet: Sheet) -> Iterator[tuple[str, Measure | NotStated]]:
    """A size of the bosses that hold a pin, of each part that states it, with the name of that part."""
    if _on_crank(pin, sheet):
        for _, name, piece in turning_with(pin, sheet):
            own = piece.boss if size == "boss" else piece.boss_width
            if sheet.is_stated(f"{size} of {name}", own):
                yield name, own
        return
    if sheet.is_stated("crosshead", pin.moved_by):
        crosshead = sheet.follow(pin.moved_by)
        own = crosshead.boss_diameter if size == "boss" else crosshead.boss_width
        if sheet.is_stated(f"{size} of {crosshead.id}", own):
            yield crosshead.id, own
