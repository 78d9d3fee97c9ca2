"""What the specs state of a block beside its bores: seats, passages and walls between them, to one scale.

No spec places them in the block: they stand side by side.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from speclint.checking import Assessment
from speclint.quantities import Measure
from speclint.reports.pack.figures import Figure, followed, known_of, millimetres, said, specs_of, word
from speclint.reports.pack.paper import Paper, hatched, niced
from speclint.specs import CylinderBlock, Division, Length, SteamPassage, Weldment

_WIDTH, _LEFT, _GAP, _TOP = 900.0, 24.0, 26.0, 52.0
_LARGEST = 120.0  # units for the largest of all
_SAYS = (
    "To one scale, side by side, since no spec places them in the block: seat bores with the least metal round them, "
    "passages as round openings of their area, and walls between neighbours by thickness and length. Live steam "
    "plain, exhaust steam shaded."
)


@dataclass(frozen=True, slots=True)
class _Thing:
    """Something to be drawn: how wide and high it is, in mm, and whether it is a wall."""

    name: str
    says: str
    wide: float
    high: float
    ink: str
    metal: float = 0.0


#: The steam in the chamber of a valve that serves so.
_STEAM = {"inlet": "live steam", "exhaust": "exhaust steam"}


def chamber_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each block that states seat bores, passages or walls between them."""
    for block in specs_of(assessment, CylinderBlock):
        things = [*_seats(block), *_passages(assessment, block), *_walls(assessment, block)]
        if things:
            yield _figure(block, things)


def _seats(block: CylinderBlock) -> Iterator[_Thing]:
    for name, bore in block.seat_bores.items():
        size, wall = millimetres(bore.diameter), millimetres(bore.wall) or 0.0
        if size:
            across = size + 2 * wall
            chamber = _STEAM.get(word(bore.serves)) or word(bore.chamber) or "steam not stated"
            says = f"Ø {said(bore.diameter)}, {said(bore.depth)} deep, metal {said(bore.wall)}, {chamber}"
            yield _Thing(f"seat bore {name}", says, across, across, _ink(chamber), wall)


def _passages(assessment: Assessment, block: CylinderBlock) -> Iterator[_Thing]:
    for passage in known_of(assessment, SteamPassage):
        area = passage.area.nominal * 1e6 if isinstance(passage.area, Measure) else None
        if area and followed(assessment, passage.in_block) is block:
            size = math.sqrt(4 * area / math.pi)
            carries = word(passage.carries) or "air"
            long = f", {said(passage.length)} long" if isinstance(passage.length, Measure) else ""
            says = f"{word(passage.place)}, {said(passage.area)}{long}, {carries}"
            yield _Thing(passage.id, says, size, size, _ink(carries))


def _walls(assessment: Assessment, block: CylinderBlock) -> Iterator[_Thing]:
    for name, wall in block.divisions.items():
        span, length = _sides(assessment, block, wall)
        thick, long = millimetres(wall.thickness), millimetres(length) or millimetres(span)
        if thick and long:
            between = f"{word(wall.one_side) or 'not stated'} and {word(wall.other_side) or 'not stated'}"
            says = f"{said(wall.thickness)} thick, {said(span)} by {said(length)}, between {between}"
            yield _Thing(f"wall {name}", says, thick, long, "wall")


def _sides(assessment: Assessment, block: CylinderBlock, division: Division) -> tuple[Length, Length]:
    """The short and the long side of a division: of the flat wall of the weldment that it names, else its own."""
    for weldment in known_of(assessment, Weldment):
        wall = weldment.walls.get(word(division.wall) or "")
        if wall is not None and followed(assessment, weldment.makes) is block:
            return wall.short, wall.long
    return division.span, division.length


def _ink(steam: str) -> str:
    return "spent" if steam == "exhaust steam" else "live"


def _figure(block: CylinderBlock, things: Sequence[_Thing]) -> Figure:
    scale = min(_LARGEST / max(max(one.wide, one.high) for one in things), 0.5)
    rows = list(_shelves(things, scale))
    tall = [max(one.high for one in row) * scale + _TOP for row in rows]
    paper = Paper(
        f"chambers-{block.id}",
        f"Seat bores, passages and walls of {block.id}",
        "; ".join(f"{one.name}: {one.says}" for one in things),
        _WIDTH,
        sum(tall) + 44,
    )
    number, top = 0, 0.0
    for row, high in zip(rows, tall, strict=True):
        x = _LEFT
        for one in row:
            number += 1
            _draw(paper, one, (x, top + _TOP - 8, high - _TOP), scale, number)
            x += max(one.wide * scale, 20.0) + _GAP
        top += high
    paper.scale_bar((_LEFT, paper.height - 24), scale, niced(100 / scale))
    return Figure(
        paper.name,
        block.id,
        f"{block.id}: seat bores, passages and the walls between them",
        _SAYS,
        paper.markup(),
        tuple((str(place), one.name, one.says) for place, one in enumerate(things, 1)),
        ("", "what", "size"),
    )


def _shelves(things: Sequence[_Thing], scale: float) -> Iterator[list[_Thing]]:
    """As many side by side as the sheet is wide."""
    shelf: list[_Thing] = []
    x = _LEFT
    for one in things:
        room = max(one.wide * scale, 20.0) + _GAP
        if shelf and x + room > _WIDTH:
            yield shelf
            shelf, x = [], _LEFT
        shelf.append(one)
        x += room
    yield shelf


def _draw(paper: Paper, one: _Thing, place: tuple[float, float, float], scale: float, number: int) -> None:
    """One thing with its number above it, in the middle of the height of its shelf."""
    x, top, room = place
    wide, high = one.wide * scale, one.high * scale
    centre = (x + max(wide, 20.0) / 2, top + room / 2)
    paper.circle((centre[0], top - 22), 10, "balloon")
    paper.text((centre[0], top - 17.5), str(number), "figure", "middle")
    if one.ink == "wall":
        hatched(paper, (centre[0] - wide / 2, centre[1] - high / 2), wide, high, pitch=7, rising=True)
        return
    if one.metal:
        paper.circle(centre, wide / 2, "metal")
    inner = (one.wide / 2 - one.metal) * scale
    paper.circle(centre, inner, "bore")
    paper.circle(centre, inner, one.ink)
    for start, end in (((-8 - inner, 0.0), (inner + 8, 0.0)), ((0.0, -8 - inner), (0.0, inner + 8))):
        paper.line(
            (centre[0] + start[0], centre[1] + start[1]), (centre[0] + end[0], centre[1] + end[1]), "axis"
        )
