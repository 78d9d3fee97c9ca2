"""What turns with an axle and what reciprocates, as moments in the planes of its two wheels."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING, NamedTuple

from speclint.equations import KilogramMetres, Kilograms, Metres, Radians
from speclint.facts.connecting_rods import rod_centre, rod_length, rod_mass
from speclint.facts.drives import mass_moved
from speclint.handbook.balance import (
    across_in_plane,
    along_in_plane,
    big_end_share,
    half_of_distance,
    sum_in_plane,
)
from speclint.handbook.cams import crank_radius
from speclint.rules import Sheet
from speclint.specs import CylinderBlock, DrivingAxle, Engine

if TYPE_CHECKING:
    from speclint.specs import Crank, Turning


class Planes(NamedTuple):
    """Moments in the planes of the left and of the right wheel: along the crank from which angles count, and across."""

    X_l: KilogramMetres = 0.0
    Y_l: KilogramMetres = 0.0
    X_r: KilogramMetres = 0.0
    Y_r: KilogramMetres = 0.0


class _Mass(NamedTuple):
    """A mass at a crank or elsewhere on an axle: radius, angle, and distance from the middle, to the left."""

    m: Kilograms
    r: Metres
    α: Radians
    y: Metres


def axles_of(engine: Engine, sheet: Sheet) -> tuple[DrivingAxle, ...]:
    """The axles that an engine drives.

    :raises NotAssessed: where none is drawn.
    """
    found = sheet.belonging_to(engine, DrivingAxle)
    if not found:
        raise sheet.not_assessed(f"no driving axle of {engine.id} is drawn", engine.where)
    return found


def half_of_planes(axle: DrivingAxle, sheet: Sheet) -> Metres:
    """Half the distance of the planes of an axle's balance weights, m."""
    return sheet.work("b", half_of_distance, a=sheet.take("a", axle.plane_distance))


def turning_in_planes(axle: DrivingAxle, b: Metres, sheet: Sheet) -> Planes:
    """What all that turns with an axle leaves out of balance: rods, pins, webs and balance weights together.

    In planes ``b`` from the middle on either side, m: those of its own balance weights, or of another axle's.
    """
    found, own = unbalanced_in_planes(axle, b, sheet), half_of_planes(axle, sheet)
    for name, wheel, side in (("left", axle.left, 1.0), ("right", axle.right, -1.0)):
        m = sheet.take(f"m_b {name}", wheel.balance_mass)
        if m == 0:
            continue
        r, α = sheet.take(f"r_b {name}", wheel.balance_radius), sheet.take(f"α_b {name}", wheel.balance_angle)
        found = _added("", f"balance {name}", found, _Mass(m, r, α, side * own), b, sheet)
    return found


def unbalanced_in_planes(axle: DrivingAxle, b: Metres, sheet: Sheet) -> Planes:
    """What turns with an axle without its balance weights, whose moments these are to take up."""
    found = Planes()
    for name, mass in _turning(axle, sheet.follow(axle.engine), sheet):
        found = _added("", name, found, mass, b, sheet)
    return found


def turning_of(engine: Engine, b: Metres, sheet: Sheet) -> Planes:
    """What turns with all driven axles of an engine together, balance weights included, in planes b from the middle."""
    found, *more = [turning_in_planes(axle, b, sheet) for axle in axles_of(engine, sheet)]
    for planes in more:
        found = together(found, planes, "_t", sheet)
    return found


def to_and_fro_of(engine: Engine, b: Metres, sheet: Sheet) -> Planes:
    """The reciprocating masses of all cylinders, as if each were at its crank, in planes b from the middle."""
    found = Planes()
    for name, crank in engine.cranks.items():
        m = mass_moved(sheet.follow(crank.block), sheet)
        found = _added("_k", name, found, _at_crank(m, name, crank, engine, sheet), b, sheet)
    return found


def together(one: Planes, other: Planes, mark: str, sheet: Sheet) -> Planes:
    """Moments of two axles, or of two kinds of masses, together."""
    sums = (
        sheet.work(f"{axis}{mark}", sum_in_plane, X_1=first, X_2=second)
        for axis, first, second in zip(("X_l", "Y_l", "X_r", "Y_r"), one, other, strict=True)
    )
    return Planes(*sums)


def driven_by(axle: DrivingAxle, engine: Engine, sheet: Sheet) -> Iterator[tuple[str, Crank]]:
    """The cranks whose connecting rods turn an axle, by name."""
    for word in axle.driven_by:
        name = sheet.read("driven by", word)
        yield name, sheet.entry(engine.cranks, word, f"cranks of {engine.id}")


def axle_driven_for(block: CylinderBlock, engine: Engine, sheet: Sheet) -> DrivingAxle | None:
    """The axle that the rods of a block turn; None where no axle says so."""
    for axle in sheet.belonging_to(engine, DrivingAxle):
        if any(sheet.follow(crank.block) is block for _, crank in driven_by(axle, engine, sheet)):
            return axle
    return None


def _turning(axle: DrivingAxle, engine: Engine, sheet: Sheet) -> Iterator[tuple[str, _Mass]]:
    if not axle.turning:
        raise sheet.not_assessed(f"turning is not stated in {axle.where.file}", axle.where)
    for name, piece in axle.turning.items():
        yield name, _piece(name, piece, engine, sheet)
    for name, crank in driven_by(axle, engine, sheet):
        m = sheet.take(f"m_c {name}", rod_mass(crank, engine, sheet))
        l = sheet.take(f"l {name}", rod_length(crank, engine, sheet))  # noqa: E741 - the symbol of the trade
        a = sheet.take(f"a_c {name}", rod_centre(crank, engine, sheet))
        big = sheet.work(f"m_g {name}", big_end_share, m=m, l=l, a=a)
        yield f"rod {name}", _at_crank(big, name, crank, engine, sheet)


def _piece(name: str, piece: Turning, engine: Engine, sheet: Sheet) -> _Mass:
    m, y = sheet.take(f"m {name}", piece.mass), sheet.take(f"y {name}", piece.from_centre)
    crank: Crank | None = None
    if sheet.is_stated(f"crank of {name}", piece.crank):
        crank = sheet.entry(engine.cranks, piece.crank, f"cranks of {engine.id}")
    if crank is None or sheet.is_stated(f"angle of {name}", piece.angle):
        α = sheet.take(f"α {name}", piece.angle)
    else:
        α = sheet.take(f"α {name}", crank.angle)
    if crank is None or sheet.is_stated(f"radius of {name}", piece.radius):
        return _Mass(m, sheet.take(f"r {name}", piece.radius), α, y)
    return _Mass(m, _radius(name, crank, engine, sheet), α, y)


def _radius(name: str, crank: Crank, engine: Engine, sheet: Sheet) -> Metres:
    own = sheet.is_stated(f"own stroke of {name}", crank.stroke)
    S = sheet.take(f"S {name}", crank.stroke if own else engine.stroke)
    return sheet.work(f"r {name}", crank_radius, S=S)


def _at_crank(m: Kilograms, name: str, crank: Crank, engine: Engine, sheet: Sheet) -> _Mass:
    y = sheet.take(f"y {name}", crank.axis_from_centre)
    r = _radius(name, crank, engine, sheet)
    return _Mass(m, r, sheet.take(f"α {name}", crank.angle), y * _side(name, crank, y, sheet))


def _side(name: str, crank: Crank, y: Metres, sheet: Sheet) -> float:
    """1 for a crank on the left, −1 on the right; in the middle it is asked of nobody."""
    if y == 0:
        return 1.0
    if sheet.is_stated(f"side of {name}", crank.side):
        return 1.0 if sheet.read(f"side of {name}", crank.side) == "left" else -1.0
    return 1.0 if sheet.read(f"hand of {name}", sheet.follow(crank.block).hand) == "left" else -1.0


def _added(mark: str, name: str, found: Planes, mass: _Mass, b: Metres, sheet: Sheet) -> Planes:
    """The moments with one mass more, in the planes of the left and of the right wheel."""

    def one(
        axis: str, before: KilogramMetres, part: Callable[..., KilogramMetres], y: Metres
    ) -> KilogramMetres:
        into = {f"{axis[0]}_0": before}
        return sheet.work(f"{axis}{mark} with {name}", part, m=mass.m, r=mass.r, α=mass.α, b=b, y=y, **into)

    return Planes(
        X_l=one("X_l", found.X_l, along_in_plane, mass.y),
        Y_l=one("Y_l", found.Y_l, across_in_plane, mass.y),
        X_r=one("X_r", found.X_r, along_in_plane, -mass.y),
        Y_r=one("Y_r", found.Y_r, across_in_plane, -mass.y),
    )
