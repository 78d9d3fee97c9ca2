"""A piston, its grooves and its rings: places along the piston, and the liner in which all run."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import TYPE_CHECKING

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import (
    edge_by_groove,
    groove_of,
    grooves_with_places,
    place_in_piston,
    pressure_by_free_gap,
)
from speclint.specs import Piston, PistonRing
from speclint_agreement.formulae.pistons import (
    begin_of_land,
    end_of_land,
    thickness_of_rim,
    with_faces_cut_back,
    with_groove,
    with_last_land,
)

if TYPE_CHECKING:
    from speclint.specs import Groove, Length


def _grooves(piston: Piston, sheet: Sheet) -> Iterator[Pair]:
    """As drawn: each groove beyond the land of that before it, the last land within the piston.

    Where a groove does not say where it is, all grooves and lands together within the piston's length too. Both faces
    that are cut back stay clear of the lands. The wall of the grooves is cast no thinner than it is once finished.
    """
    yield from _as_cast(piston, sheet)
    if not piston.grooves:
        return
    order = grooves_with_places(piston, sheet)
    if len(order) < len(piston.grooves):
        yield from _together(piston, sheet)
    if not order:
        return
    (first, groove), (last, hindmost) = order[0], order[-1]
    yield _drawn(f"before {first}", worked(sheet.take_nominal("a", groove.at), groove.at), groove, sheet)
    yield from _cut_back(first, groove, piston, sheet)
    for (_, before), (name, after) in pairwise(order):
        lands = {one.land.where: sheet.take_nominal("b", one.land) for one in (before, after)}
        end = _end(before, max(lands.values()), sheet)
        place = Worked(sheet.take_nominal("a", after.at), (after.at.where,))
        yield Pair(place, Worked(end, (before.at.where, before.width.where, *lands)), "at least", name=name)
    if sheet.is_stated("length", piston.length):
        L = worked(sheet.take_nominal("L", piston.length), piston.length)
        end = _end(hindmost, sheet.take_nominal("b", hindmost.land), sheet)
        sizes = hindmost.at, hindmost.width, hindmost.land
        yield Pair(L, _with_faces(end, 1.0, sizes, piston, sheet), "at least", name=f"behind {last}")


def _as_cast(piston: Piston, sheet: Sheet) -> Iterator[Pair]:
    """The wall as cast or forged against that of the finished rim, else against the deepest groove in it."""
    if not sheet.is_stated("wall as cast", piston.stock_thickness):
        return
    cast, rim = piston.stock_thickness, piston.crown.rim
    if sheet.is_stated("inside of the rim", rim) and sheet.is_stated("diameter", piston.diameter):
        D, D_r = sheet.take_nominal("D", piston.diameter), sheet.take_nominal("D_r", rim)
        finished = worked(sheet.work("t_r", thickness_of_rim, D=D, D_r=D_r), piston.diameter, rim)
        yield Pair(cast, finished, "at least", name="rim")
    for name, groove in piston.grooves.items():
        if sheet.is_stated(f"depth of {name}", groove.depth):
            yield _drawn_in(name, cast, groove, sheet)


def _drawn_in(name: str, cast: Length, groove: Groove, sheet: Sheet) -> Pair:
    h = worked(sheet.take_nominal(f"h_{name}", groove.depth), groove.depth)
    return Pair(cast, h, "at least", name=f"depth of {name}")


def _cut_back(first: str, groove: Groove, piston: Piston, sheet: Sheet) -> Iterator[Pair]:
    """How far the faces are cut back against where the land before the first groove begins."""
    if sheet.is_stated("faces cut back", piston.crown_chamfer):
        a, b = sheet.take_nominal("a", groove.at), sheet.take_nominal("b", groove.land)
        begins = worked(sheet.work("x_l", begin_of_land, a=a, b=b), groove.at, groove.land)
        yield Pair(piston.crown_chamfer, begins, "at most", name=f"face before {first}")


def _drawn(name: str, place: Worked, groove: Groove, sheet: Sheet) -> Pair:
    return Pair(place, worked(sheet.take_nominal("b", groove.land), groove.land), "at least", name=name)


def _end(groove: Groove, land: float, sheet: Sheet) -> float:
    a, w = sheet.take_nominal("a", groove.at), sheet.take_nominal("w", groove.width)
    return sheet.work("x", end_of_land, a=a, w=w, b=land)


def _together(piston: Piston, sheet: Sheet) -> Iterator[Pair]:
    if not sheet.is_stated("length", piston.length):
        return
    x, lands = 0.0, []
    for name, groove in piston.grooves.items():
        w, b = sheet.take_nominal(f"w_{name}", groove.width), sheet.take_nominal(f"b_{name}", groove.land)
        x = sheet.work("x", with_groove, x_0=x, w=w, b=b)
        lands.append(b)
    needed = sheet.work("L_n", with_last_land, x=x, b=min(lands))
    sizes = tuple(one for groove in piston.grooves.values() for one in (groove.width, groove.land))
    L = worked(sheet.take_nominal("L", piston.length), piston.length)
    yield Pair(L, _with_faces(needed, 2.0, sizes, piston, sheet), "at least", name="all grooves")


def _with_faces(x: float, n: float, sizes: tuple[Length, ...], piston: Piston, sheet: Sheet) -> Worked:
    """A length that grooves and lands take up, with the faces beyond it that are cut back."""
    cut = piston.crown_chamfer
    if not sheet.is_stated("faces cut back", cut):
        return worked(x, *sizes)
    needed = sheet.work("L_c", with_faces_cut_back, x=x, n=n, c=sheet.take_nominal("c", cut))
    return worked(needed, *sizes, cut)


def _rings(ring: PistonRing, sheet: Sheet) -> Iterator[Pair]:
    """Liner, place and edge that a ring states against its piston and the groove that takes it."""
    found = groove_of(ring, sheet)
    if found is None:
        return
    piston, _, groove = found
    if sheet.is_stated("liner of the ring", ring.runs_in) and sheet.is_stated("liner", piston.runs_in):
        own, of_piston = sheet.follow(ring.runs_in), sheet.follow(piston.runs_in)
        liners = worked(own.id, ring.runs_in), worked(of_piston.id, piston.runs_in)
        yield Pair(*liners, name="liner")
    place = place_in_piston(ring, sheet)
    if place is not None:
        yield Pair(ring.place, place, name="place")
    if not sheet.is_stated("edge of the ring", ring.edge_from_piston_face):
        return
    at = place.value if place is not None else sheet.read("place", ring.place)
    edge = edge_by_groove(ring, at, sheet, sheet.take_nominal)
    if edge is not None:
        yield Pair(ring.edge_from_piston_face, edge, name="edge")
    elif at != "middle" and sheet.is_stated("land", groove.land):
        stated = ring.edge_from_piston_face
        yield _drawn("edge", worked(sheet.take_nominal("e", stated), stated), groove, sheet)


def _pressures(ring: PistonRing, sheet: Sheet) -> Iterator[Pair]:
    """The wall pressure that a ring states against that of its free gap."""
    if not sheet.is_stated("wall pressure", ring.wall_pressure):
        return
    by_gap = pressure_by_free_gap(ring, sheet.take_nominal, sheet)
    if by_gap is not None:
        yield Pair(ring.wall_pressure, by_gap)


grooves_fit: Rule = agreement(
    "piston.grooves-fit",
    title="The grooves of a piston and the lands between them, as drawn, lie within its length, clear of each other "
    "and of its faces cut back, and their wall is cast no thinner than it is finished",
    on=Piston,
    pairs=_grooves,
    within="",
    edition=3,
    grade=Grade.NONCONFORMITY,
    why="lands for which the piston has no length are thinned at the lathe, and break out under the rings",
    leaves_out="limits of the sizes; a groove for oil that takes no ring; how much is machined off the wall",
)

of_its_groove: Rule = agreement(
    "ring.of-its-groove",
    title="A piston ring states the liner of its piston, and the place and the edge of the groove that takes it",
    on=PistonRing,
    pairs=_rings,
    within="0.2 mm",
    grade=Grade.NONCONFORMITY,
    why="the end of the working bore is judged by the place of the ring, which is that of its groove",
    leaves_out="the play of the ring in its groove, within which its edge may stand off the groove's side",
)

pressure_of_ring: Rule = agreement(
    "ring.pressure-by-its-free-gap",
    title="A piston ring that states its wall pressure and its free gap presses on its bore as that gap lets it",
    on=PistonRing,
    pairs=_pressures,
    within="0.01 MPa",
    dimension="stress",
    grade=Grade.NONCONFORMITY,
    why="wear and friction are judged by a pressure that the ring has not",
    leaves_out="a ring shaped to press harder beside its gap; limits of its sizes",
)

RULES = (grooves_fit, of_its_groove, pressure_of_ring)
