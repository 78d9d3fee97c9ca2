"""Ports, rings and sealing lands along a liner, and the piston before them, agree on what lies where."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import (
    cold_clearance,
    crossed_by_rings,
    edge_of_port,
    ends_in_order,
    is_drawn,
    length_of_lands,
    pistons_in,
    place_in_bore,
)
from speclint.specs import CylinderEnd, CylinderLiner, Length, LinerPort, SealingLand
from speclint_agreement.formulae.liners import open_between, share_of_port

#: A place along the bore.
_Place = Length | Worked


def _open_ports(liner: CylinderLiner, sheet: Sheet) -> Iterator[Pair]:
    """What lies of each port between the cover and the piston's crown at its dead centre, against a share of the port.

    A port belongs to the end to which it is nearer; the chamfer of the crown lets the steam pass.
    """
    ends = ends_in_order(liner, sheet)
    if not ends or not pistons_in(liner, sheet):
        return
    if not all(sheet.is_stated("face of a cover", end.face_from_seat) for end, _ in ends):
        return
    faces = [sheet.take_nominal("x_f", end.face_from_seat) for end, _ in ends]
    for name, port in liner.ports.items():
        if all(sheet.is_stated(f"place or height of {name}", one) for one in (port.from_collar, port.height)):
            x = sheet.take_nominal("x_m", port.from_collar)
            end, way = ends[0] if abs(x - faces[0]) <= abs(x - faces[1]) else ends[1]
            yield from _open(name, port, (end, way), liner, sheet)


def _open(
    name: str, port: LinerPort, at: tuple[CylinderEnd, float], liner: CylinderLiner, sheet: Sheet
) -> Iterator[Pair]:
    end, way = at
    block = sheet.follow(liner.housed_in)
    chamfers = [one.crown_chamfer for one in pistons_in(liner, sheet)]
    cut_back = all(sheet.is_stated("chamfer", one) for one in chamfers)
    y = min(sheet.take("y", one) for one in chamfers) if cut_back else 0.0
    c, x_f = cold_clearance(block, end, sheet), sheet.take("x_f", end.face_from_seat)
    face = sheet.work("x_p", place_in_bore, x_f=x_f, k=way, y=c)
    crown = sheet.work("x_c", place_in_bore, x_f=face, k=way, y=y)
    x, h = sheet.take("x_m", port.from_collar), sheet.take("h", port.height)
    edges = {
        "x_1": sheet.work("x_1", edge_of_port, x_m=x, k=-1.0, h=h),
        "x_2": sheet.work("x_2", edge_of_port, x_m=x, k=1.0, h=h),
    }
    left = sheet.work("o", open_between, **edges, y_1=min(x_f, crown), y_2=max(x_f, crown))
    wanted = sheet.work("h_o", share_of_port, k=sheet.limit("share", "k_o"), h=h)
    places = (port.from_collar, port.height, end.face_from_seat, end.clearance, *chamfers)
    yield Pair(worked(left, *places), worked(wanted, port.height), "at least", name=name)


def _swept(liner: CylinderLiner, sheet: Sheet) -> Iterator[Pair]:
    """Whether rings are said to run over each port against where they run by faces, clearances and their own places."""
    for name, port in liner.ports.items():
        crossed = crossed_by_rings(port, liner, sheet)
        if crossed is not None:
            yield Pair(port.crossed_by_rings, crossed, name=name)


def _lands(liner: CylinderLiner, sheet: Sheet) -> Iterator[Pair]:
    """Each land beside every relieved length of the bore, every port and the next land; the length of fit against all.

    Lands that lie over each other would count twice in the length of fit.
    """
    bore = sheet.entry(sheet.follow(liner.housed_in).bores, liner.in_bore, "bores of the block")
    drawn = {name: land for name, land in liner.lands.items() if is_drawn(land, sheet)}
    for name, land in drawn.items():
        for other, relief in bore.relieved.items():
            if is_drawn(relief, sheet):
                yield _beside(name, land, relief.starts, relief.ends, f"relief {other}", sheet)
        for other, port in liner.ports.items():
            yield from _beside_port(name, land, other, port, sheet)
    order = sorted(drawn.items(), key=lambda item: sheet.take_nominal("x_1", item[1].starts))
    for (before, first), (after, second) in pairwise(order):
        yield Pair(second.starts, first.ends, "at least", name=f"{after} beyond {before}")
    together = length_of_lands(liner, sheet, sheet.take_nominal)
    if together is not None:
        yield Pair(liner.fit_length, together, name="fit_length")


def _beside_port(name: str, land: SealingLand, other: str, port: LinerPort, sheet: Sheet) -> Iterator[Pair]:
    if all(sheet.is_stated(f"place or height of {other}", one) for one in (port.from_collar, port.height)):
        x, h = sheet.take("x_m", port.from_collar), sheet.take("h", port.height)
        near = worked(sheet.work("x_1", edge_of_port, x_m=x, k=-1.0, h=h), port.from_collar, port.height)
        far = worked(sheet.work("x_2", edge_of_port, x_m=x, k=1.0, h=h), port.from_collar, port.height)
        middle = sheet.take_nominal("x_m", port.from_collar)
        yield _apart(name, land, near, far, f"port {other}", middle, sheet)


def _beside(name: str, land: SealingLand, starts: Length, ends: Length, other: str, sheet: Sheet) -> Pair:
    middle = (sheet.take_nominal("x_1", starts) + sheet.take_nominal("x_2", ends)) / 2
    return _apart(name, land, starts, ends, other, middle, sheet)


def _apart(
    name: str, land: SealingLand, starts: _Place, ends: _Place, other: str, middle: float, sheet: Sheet
) -> Pair:
    own = (sheet.take_nominal("x_1", land.starts) + sheet.take_nominal("x_2", land.ends)) / 2
    if own <= middle:
        return Pair(land.ends, starts, "at most", name=f"{name}, {other}")
    return Pair(land.starts, ends, "at least", name=f"{name}, {other}")


open_at_dead_centre: Rule = agreement(
    "liner.port-open-at-dead-centre",
    title="With the piston at its dead centre, half of each port's height lies between the cover and its crown",
    on=CylinderLiner,
    pairs=_open_ports,
    within="",
    optional=False,
    limits=[Limit("share", "0.5", "ratio", COMMON_PRACTICE, "least share of a port's height that is open")],
    grade=Grade.QUERY,
    why="steam admitted at the dead centre is throttled by a port that the piston still covers",
    leaves_out="a piston that is not drawn, recesses of the cover, heat, and how far the valve is open then",
)

rings_over_port: Rule = agreement(
    "liner.rings-over-port",
    title="A port is said to be crossed by rings where one runs over it within the stroke, and only there",
    on=CylinderLiner,
    pairs=_swept,
    within="",
    edition=2,
    grade=Grade.NONCONFORMITY,
    why="a ring snaps into a port that was said to be clear of it, and breaks",
    leaves_out="heat and wear, which move the rings a little further; a ring that does not say where it is",
)

lands_on_metal: Rule = agreement(
    "liner.lands-on-metal",
    title="No sealing land of a liner lies over a relieved length of the bore or over a port; all lands together, "
    "none over another, are its length of fit",
    on=CylinderLiner,
    pairs=_lands,
    within="1 mm",
    edition=2,
    grade=Grade.NONCONFORMITY,
    why="a land with no metal behind it seals nothing, and grips nothing",
    leaves_out="ports on one side of the bore only, which a land passes on the other side",
    against=("leak",),
)

RULES = (lands_on_metal, open_at_dead_centre, rings_over_port)
