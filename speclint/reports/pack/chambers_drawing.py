"""What the specs state of a block beside its bores: a scheme of its seats, its passages and the walls between them.

No spec places them in the block: they stand side by side. Where the seats of a valve are placed on its axis, the
drawing of the valve shows them in section.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from speclint.checking import Assessment
from speclint.quantities import Measure
from speclint.reports.pack.figures import Figure, followed, known_of, millimetres, said, specs_of, word
from speclint.reports.pack.paper import Paper, hatched
from speclint.reports.pack.path_drawing import round_of
from speclint.reports.pack.printed import Quantity, stated, words, worked
from speclint.specs import CylinderBlock, Division, Length, SteamPassage, Weldment

_WIDTH, _LEFT, _GAP, _TOP = 900.0, 24.0, 26.0, 52.0
_LARGEST = 120.0  # units for the largest of all
_SAYS = (
    "A scheme, to one scale, side by side, since no spec places them in the block: seat bores with the least metal "
    "round them, passages as round openings of their area, and each wall between what it parts, as thick and as long "
    "as it is. Live steam plain, exhaust steam shaded. Seats stand in section in the drawing of their valve."
)
_SIDE = 46.0  # mm of the space on either side of a wall, as drawn


class _Thing(Struct, frozen=True):
    """Something to be drawn: how wide and high it is, in mm, and whether it is a wall."""

    name: str
    says: str
    wide: float
    high: float
    ink: str
    metal: float = 0.0
    sides: tuple[str, str] = ("", "")
    of: Quantity | None = None


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
            sizes = said(bore.diameter), said(bore.depth), said(bore.wall)
            says = words("Ø {}, {} deep, metal {}, {}", *sizes, chamber)
            assert isinstance(bore.diameter, Measure)
            of = stated(bore.diameter)
            yield _Thing(f"seat bore {name}", says, across, across, _ink(chamber), wall, of=of)


def _passages(assessment: Assessment, block: CylinderBlock) -> Iterator[_Thing]:
    for passage in known_of(assessment, SteamPassage):
        area = passage.area.nominal * 1e6 if isinstance(passage.area, Measure) else None
        if area and followed(assessment, passage.in_block) is block:
            assert isinstance(passage.area, Measure)
            across = worked(round_of, area=stated(passage.area))
            size, carries = across.in_unit("mm"), word(passage.carries) or "air"
            long = words(", {} long", said(passage.length)) if isinstance(passage.length, Measure) else ""
            says = words("{}, {}{}, {}", word(passage.place), said(passage.area), long, carries)
            yield _Thing(passage.id, says, size, size, _ink(carries), of=across)


def _walls(assessment: Assessment, block: CylinderBlock) -> Iterator[_Thing]:
    for name, wall in block.divisions.items():
        span, length = _sides(assessment, block, wall)
        thick, long = millimetres(wall.thickness), millimetres(length) or millimetres(span)
        if thick and long:
            sides = word(wall.one_side) or "not stated", word(wall.other_side) or "not stated"
            sizes = said(wall.thickness), said(span), said(length)
            says = words("{} thick, {} by {}, between {} and {}", *sizes, *sides)
            assert isinstance(wall.thickness, Measure)
            of = stated(wall.thickness)
            yield _Thing(f"wall {name}", says, thick + 2 * _SIDE, long, "wall", thick, sides, of)


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
    paper.scale_bar((_LEFT, paper.height - 24), scale, 100 / scale)
    return Figure.of(
        paper,
        block.id,
        f"{block.id}: seat bores, passages and the walls between them",
        _SAYS,
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
    wide = one.wide * scale
    centre = (x + max(wide, 20.0) / 2, top + room / 2)
    paper.numbered((centre[0], top - 22), number)
    if one.ink == "wall":
        _wall(paper, one, centre, scale)
        return
    if one.metal:
        paper.circle(centre, wide / 2, "metal")
    inner = (one.wide / 2 - one.metal) * scale
    if one.of is not None:
        paper.place(one.of, "mm", "", 2 * inner)
    paper.circle(centre, inner, "bore")
    paper.circle(centre, inner, one.ink)
    for start, end in (((-8 - inner, 0.0), (inner + 8, 0.0)), ((0.0, -8 - inner), (0.0, inner + 8))):
        paper.line(
            (centre[0] + start[0], centre[1] + start[1]), (centre[0] + end[0], centre[1] + end[1]), "axis"
        )


def _wall(paper: Paper, one: _Thing, centre: tuple[float, float], scale: float) -> None:
    """A wall in section between the two spaces that it parts."""
    thick, high = one.metal * scale, one.high * scale
    top = centre[1] - high / 2
    for side, steam in zip((-1, 1), one.sides, strict=True):
        left = centre[0] + (thick / 2 if side > 0 else -thick / 2 - _SIDE * scale)
        paper.box((left, top), _SIDE * scale, high, _ink(steam) if "steam" in steam else "ghost")
    hatched(paper, (centre[0] - thick / 2, top), thick, high, pitch=7, rising=True)
    if one.of is not None:
        paper.place(one.of, "mm", "", thick)
