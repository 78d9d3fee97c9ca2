"""What the piston leaves open of a liner's port at its dead centre, and whether rings run over it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, Ratio, formula
from speclint.facts.cylinders import ends_of
from speclint.facts.rings import edge_by_groove, place_in_piston
from speclint.rules import Sheet, Worked, worked
from speclint.specs import CylinderLiner, PistonRing

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd, LinerPort


@formula("x = x_f + k y", cites=[FIRST_PRINCIPLES])
def place_in_bore(x_f: Metres, k: Ratio, y: Metres) -> Metres:
    """Distance from the collar's seat of what lies at some length before the face of a cover.

    x = x_f + k y

    ``x_f`` from the seat to the face [m]; ``y`` from the face into the bore [m]; ``k`` 1 at the end of the collar, −1
    at the free end. Returns [m].

    Hand working: a ring 40 mm behind the face of a piston that stands 8 mm before a cover at 861 mm: 861 − 48 = 813 mm.

    >>> round(place_in_bore(x_f=0.861, k=-1, y=0.048) * 1e3, 6)
    813.0
    """
    return x_f + k * y


@formula("x = x_m + k h/2", cites=[FIRST_PRINCIPLES])
def edge_of_port(x_m: Metres, k: Ratio, h: Metres) -> Metres:
    """Distance from the collar's seat of an edge of a port.

    x = x_m + k h/2

    ``x_m`` of its middle, ``h`` its height along the axis [m]; ``k`` −1 for the nearer edge, 1 for the farther.
    Returns [m].

    >>> round(edge_of_port(x_m=0.058, k=-1, h=0.040) * 1e3, 6)
    38.0
    """
    return x_m + k * h / 2


def ends_in_order(liner: CylinderLiner, sheet: Sheet) -> tuple[tuple[CylinderEnd, float], ...]:
    """The end at the liner's collar and that at its free end, each with the way of the bore; none where not drawn."""
    places = liner.housed_in, liner.in_bore, liner.collar.end
    if not all(sheet.is_stated("place of the liner", one) for one in places):
        return ()
    block = sheet.follow(liner.housed_in)
    collar = sheet.read("end of the collar", liner.collar.end)
    found: list[tuple[CylinderEnd, float]] = []
    for name, end in ends_of(block, sheet.read("bore of liner", liner.in_bore), sheet).items():
        if sheet.is_stated(f"side of {name}", end.side):
            found.append((end, 1.0 if sheet.read(f"side of {name}", end.side) == collar else -1.0))
    return tuple(sorted(found, key=lambda one: -one[1])) if len(found) == 2 else ()


def swept_by_rings(liner: CylinderLiner, sheet: Sheet) -> tuple[Worked, Worked] | None:
    """Between which distances from the collar's seat rings run, as drawn: of the ring nearest to either cover.

    None where a ring, a face or a clearance at either end is not drawn.
    """
    rings = sheet.belonging_to(liner, PistonRing)
    ends = ends_in_order(liner, sheet)
    if not rings or not ends:
        return None
    found = []
    for end, way in ends:
        side = sheet.read("side of end", end.side)
        ring = next((one for one in rings if _is_at(one, side, sheet)), None)
        e = None if ring is None else _edge(ring, side, sheet)
        faces = end.face_from_seat, end.clearance
        if e is None or not all(sheet.is_stated("face or clearance", one) for one in faces):
            return None
        x_f, c = (sheet.take_nominal(symbol, one) for symbol, one in zip(("x_f", "c"), faces, strict=True))
        behind = sheet.work("x_p", place_in_bore, x_f=x_f, k=way, y=c)
        edge = sheet.work("x_r", place_in_bore, x_f=behind, k=way, y=e.value)
        found.append(Worked(edge, (*(one.where for one in faces), *e.places)))
    return found[0], found[1]


def _edge(ring: PistonRing, side: str, sheet: Sheet) -> Worked | None:
    """From the face of the piston to the ring, as drawn: by the groove that takes it, else as the ring states it."""
    by_groove = edge_by_groove(ring, side, sheet, sheet.take_nominal)
    if by_groove is not None:
        return by_groove
    if not sheet.is_stated("edge of the ring", ring.edge_from_piston_face):
        return None
    return worked(sheet.take_nominal("e", ring.edge_from_piston_face), ring.edge_from_piston_face)


def _is_at(ring: PistonRing, side: str, sheet: Sheet) -> bool:
    """Whether a ring is at an end of its piston: by the order of the grooves, else by its own word."""
    by_grooves = place_in_piston(ring, sheet)
    if by_grooves is not None:
        return bool(by_grooves.value == side)
    placed = sheet.is_stated(f"place of {ring.id}", ring.place)
    return placed and sheet.read(f"place of {ring.id}", ring.place) == side


def edges_of(port: LinerPort, sheet: Sheet) -> tuple[float, float] | None:
    """The nearer and the farther edge of a port from the collar's seat, as drawn, m; None where it states no sizes."""
    if not all(
        sheet.is_stated("place or height of the port", one) for one in (port.from_collar, port.height)
    ):
        return None
    x, h = sheet.take_nominal("x_m", port.from_collar), sheet.take_nominal("h", port.height)
    return sheet.work("x_1", edge_of_port, x_m=x, k=-1.0, h=h), sheet.work(
        "x_2", edge_of_port, x_m=x, k=1.0, h=h
    )


def crossed_by_rings(port: LinerPort, liner: CylinderLiner, sheet: Sheet) -> Worked | None:
    """Whether a ring runs over a port within the stroke, as drawn; None where ring, port or end is not drawn."""
    swept, edges = swept_by_rings(liner, sheet), edges_of(port, sheet)
    if swept is None or edges is None:
        return None
    first, last = swept
    crossed = bool(edges[1] > first.value and edges[0] < last.value)
    return Worked(crossed, (port.from_collar.where, port.height.where, *first.places, *last.places))
