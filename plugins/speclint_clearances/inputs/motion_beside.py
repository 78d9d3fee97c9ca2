"""The greatest gaps that the drawn parts leave between a cylinder and the rods and wheels beside it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Limit, Sheet
from speclint.facts import new_wheel, pins_of, rods_drawn
from speclint.handbook.cams import crank_radius
from speclint.specs import CylinderBlock, DrivingAxle, Envelope, Pin
from speclint_clearances.formulae.motion_beside import (
    axle_of_pair,
    beside_axis,
    gap_before_eye,
    gap_to_pin,
    gap_to_wheel,
    half_chord,
)
from speclint_clearances.inputs.cylinder_places import CylinderPlace, cylinder_place

if TYPE_CHECKING:
    from speclint.equations import Metres
    from speclint.specs import CarryingAxle, Turning

FLANGE = Limit(
    "flange", "28 mm", "length", COMMON_PRACTICE, "height of a wheel's flange above its tread, from memory"
)
BETWEEN_WHEELS = Limit(
    "between wheels",
    "1360 mm",
    "length",
    COMMON_PRACTICE,
    "distance between the inner sides of both wheels of an axle, on rails 1435 mm apart, from memory",
)


def left_by_parts(envelope: Envelope, block: CylinderBlock, sheet: Sheet) -> dict[str, Metres]:
    """By the name of a gap the greatest that the parts leave; of several to one kind of part, by that of the least.

    Why one cannot be worked is a line of the result.
    """
    found = {}
    for word, names in _by_word(envelope, sheet).items():
        most = _greatest_gap(word, envelope, block, sheet)
        if isinstance(most, str):
            sheet.list_item(f"gap to the {word}, as stated", most)
        else:
            found[min(names, key=lambda name: names[name])] = most
    return found


def _by_word(envelope: Envelope, sheet: Sheet) -> dict[str, dict[str, Metres]]:
    """The gaps to each kind of part that has no spec, by name, as the drawings aim at them."""
    found: dict[str, dict[str, Metres]] = {}
    for name, gap in envelope.gaps.items():
        stated = sheet.is_stated(f"size of {name}", gap.size) or sheet.is_stated(f"{name} is of", gap.of)
        if stated and sheet.is_stated(f"moving at {name}", gap.moving):
            word = sheet.read(f"moving at {name}", gap.moving)
            found.setdefault(word, {})[name] = sheet.take_nominal(f"a_0 {name}", sheet.dimension(gap))
    return found


def _greatest_gap(word: str, envelope: Envelope, block: CylinderBlock, sheet: Sheet) -> Metres | str:
    place = cylinder_place(envelope, block, sheet)
    if isinstance(place, str):
        return place
    if word == "connecting rod":
        return _to_eye(place, block, sheet)
    if word == "wheel":
        return min(_to_wheels(place, block, sheet), default="no wheel stands in the plane of a cover")
    if word == "coupling rod":
        return min(
            _to_coupling_rods(place, block, sheet), default="no coupling rod runs in line with a cover"
        )
    return f"no spec gives the sizes of a {word}"


def _to_eye(place: CylinderPlace, block: CylinderBlock, sheet: Sheet) -> Metres:
    """From the eye of the connecting rod round the crosshead pin and its bush, at the front dead centre."""
    pins = [pin for rod in rods_drawn(block, sheet) for pin in pins_of(rod, sheet)]
    sizes = [_pin_and_bush(pin, sheet) for pin in pins] or [(0.0, 0.0)]
    return min(
        sheet.work("a_e", gap_before_eye, L=place.L, S=place.S, X_f=place.X_f, t=place.back.t, d=d, b=b)
        for d, b in sizes
    )


def _pin_and_bush(pin: Pin, sheet: Sheet) -> tuple[Metres, Metres]:
    """The diameter of a crosshead pin, and the wall of its bush: 0 where none is stated."""
    d = sheet.take("d", pin.diameter)
    return d, sheet.take("b", pin.wear.bush_wall) if sheet.is_stated("bush", pin.wear.bush_wall) else 0.0


def _to_wheels(place: CylinderPlace, block: CylinderBlock, sheet: Sheet) -> Iterator[Metres]:
    """From each wheel to each cover that its flange could meet."""
    y = sheet.limit(BETWEEN_WHEELS.name, "B")
    e = sheet.work("e", beside_axis, y_a=place.y, y=y / 2)
    for name, x_w, D_w in _wheels(place, block, sheet):
        for side, cover in (("back", place.back), ("front", place.front)):
            if 2 * abs(e) < cover.D:
                yield sheet.work(
                    f"a_w {name} {side}",
                    gap_to_wheel,
                    x_c=cover.x,
                    x_w=x_w,
                    h=place.h,
                    D_w=D_w,
                    c=sheet.work(f"c {side}", half_chord, D=cover.D, e=e),
                    f=sheet.limit(FLANGE.name, "f"),
                )


def _wheels(place: CylinderPlace, block: CylinderBlock, sheet: Sheet) -> Iterator[tuple[str, Metres, Metres]]:
    """Each axle whose place and wheels are stated: its name, its place and the diameter of its new wheels."""
    new = new_wheel(block, sheet)
    for axle in sheet.belonging_to(place.engine, DrivingAxle):
        if sheet.is_stated(f"place of {axle.id}", axle.at) and sheet.is_stated("wheel", new):
            yield axle.id, sheet.take(f"x {axle.id}", axle.at), sheet.take("D_w", new)
    for name, carrying in place.engine.carrying.items():
        sizes = {"place": carrying.at, "wheels": carrying.wheel_diameter}
        if all(sheet.is_stated(f"{what} of {name}", one) for what, one in sizes.items()):
            D = sheet.take(f"D_w {name}", carrying.wheel_diameter)
            for x in _places(name, carrying, sheet):
                yield name, x, D


def _places(name: str, carrying: CarryingAxle, sheet: Sheet) -> Iterator[Metres]:
    """The place of a single axle, or of the first and the last of a bogie."""
    x = sheet.take(f"x {name}", carrying.at)
    if not sheet.is_stated(f"wheelbase of {name}", carrying.wheelbase):
        yield x
        return
    a = sheet.take(f"a {name}", carrying.wheelbase)
    for k in (1.0, -1.0):
        yield sheet.work(f"x_w {name} {k:g}", axle_of_pair, x=x, k=k, a=a)


def _to_coupling_rods(place: CylinderPlace, block: CylinderBlock, sheet: Sheet) -> Iterator[Metres]:
    """From each pin of a coupled axle that turns in line with a cover, at the crank of this cylinder."""
    wheel = new_wheel(block, sheet)
    for axle in sheet.belonging_to(place.engine, DrivingAxle):
        if axle is place.axle or not sheet.is_stated(f"place of {axle.id}", axle.at):
            continue
        for name, piece in axle.turning.items():
            if not _at_crank_of(name, piece, place, block, sheet):
                continue
            y = sheet.take(f"y {name}", piece.from_centre)
            e = sheet.work(f"e {name}", beside_axis, y_a=place.y, y=abs(y))
            D = min(place.back.D, place.front.D)
            if 2 * abs(e) < D and 2 * abs(place.h - sheet.take("D_w", wheel) / 2) < D - 2 * abs(e):
                own = sheet.is_stated(f"radius of {name}", piece.radius)
                r = sheet.take(f"r {name}", piece.radius) if own else sheet.work("r", crank_radius, S=place.S)
                x_p = sheet.take(f"x {axle.id}", axle.at)
                ends = {"x_1": place.back.x, "x_2": place.front.x}
                yield sheet.work(f"a_p {axle.id}", gap_to_pin, **ends, x_p=x_p, r=r)


def _at_crank_of(name: str, piece: Turning, place: CylinderPlace, block: CylinderBlock, sheet: Sheet) -> bool:
    """Whether a piece turns at the crank of a block, and says in which plane."""
    stated = {"crank": piece.crank, "plane": piece.from_centre}
    if not all(sheet.is_stated(f"{what} of {name}", one) for what, one in stated.items()):
        return False
    crank = sheet.entry(place.engine.cranks, piece.crank, f"cranks of {place.engine.id}")
    return sheet.is_stated("block of the crank", crank.block) and sheet.follow(crank.block) is block
