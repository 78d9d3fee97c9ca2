"""What the room and the cut-outs of one block state, and those of a block alike do not."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.specs import DimensionChain, Envelope, LocatingFace

#: A room, and the names of its gaps to what moves in one way.
_Room = tuple[Envelope, Sequence[str]]


@rule(
    "room.alike-on-both-sides",
    title="Of blocks alike on the same side of their frames each room has a gap to what moves beside any, with the "
    "side play that its axle has there, and each cut-out a chain of dimensions where another has one",
    on=(Envelope, LocatingFace),
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="A rod that is drawn clear of the left-hand block alone strikes the right-hand one, which nobody looked at.",
    leaves_out="what neither side states; blocks that are drawn each by itself, neither like another nor its mirror; "
    "sizes of gaps and chains; which of two side plays is right, and whether blocks alike stand beside axles of their "
    "own, of which each may have another; the local railway code and a competent person decide",
    against=(),
    edition=3,
    limits=[
        Limit(
            "side play",
            "1 mm",
            "length",
            COMMON_PRACTICE,
            "by how much the side play of what goes with one axle may differ from side to side, as stated",
        )
    ],
)
def alike_on_both_sides(part: Envelope | LocatingFace, sheet: Sheet) -> Judgement:
    """Gaps counted by what moves, and chains by the cut-out whose room they close.

    A wheel and a coupling rod go with an axle, and that has one side play: held against that of the gap of one name on
    the other side, or of the only one there.
    A chain that says of no size that it closes it is counted where dimensions of cut-out and block are among its own.
    """
    found = list(_gaps(part, sheet) if isinstance(part, Envelope) else _chains(part, sheet))
    if not found:
        raise sheet.not_applicable("no block alike states more on the same side of its frames")
    return sheet.worst(*found)


def _gaps(envelope: Envelope, sheet: Sheet) -> Iterator[Judgement]:
    """For each room of a part alike, on the same side of the frame, what moves there and not here."""
    if not sheet.is_stated("side", envelope.cylinders):
        return
    side, here = sheet.read("side", envelope.cylinders), _moving(envelope, sheet)
    for part in sheet.parts_alike(sheet.follow(envelope.around)):
        for other in sheet.belonging_to(part, Envelope):
            if sheet.said(f"side of {other.id}", other.cylinders) != side:
                continue
            for moves, gaps in _moving(other, sheet).items():
                own = here.get(moves, [])
                names = f"{', '.join(gaps)} in {other.id}, {', '.join(own) or 'none'} in {envelope.id}"
                yield sheet.states(
                    len(own) >= len(gaps), f"gaps to a {moves}: {names}", where=envelope.where
                ).of_item(moves)
                if moves in ("wheel", "coupling rod"):
                    yield from _plays((envelope, own), (other, gaps), sheet)


def _plays(here: _Room, there: _Room, sheet: Sheet) -> Iterator[Judgement]:
    """The side play of gaps of one name in two rooms, or of the only one in either."""
    (room, own), (other, gaps) = here, there
    alike = [(name, name) for name in own if name in gaps]
    if not alike and len(own) == len(gaps) == 1:
        alike = [(own[0], gaps[0])]
    for mine, theirs in alike:
        play, of_theirs = room.gaps[mine].side_play, other.gaps[theirs].side_play
        stated = sheet.is_stated(f"side play at {mine} of {room.id}", play)
        if sheet.is_stated(f"side play at {theirs} of {other.id}", of_theirs) and stated:
            s, s_o = sheet.take_nominal(f"s {mine}", play), sheet.take_nominal(f"s_o {theirs}", of_theirs)
            yield (
                sheet.equals(s, s_o, sheet.limit("side play", "Δ"))
                .else_says(
                    f"gap {{item}} counts {{found}} of side play, and that of {other.id} {{limit}}: one axle"
                )
                .of_item(mine)
            )


def _moving(envelope: Envelope, sheet: Sheet) -> dict[str, list[str]]:
    """The names of the gaps of a room, by what moves there."""
    found: dict[str, list[str]] = {}
    for name, gap in envelope.gaps.items():
        moves: str | None = sheet.said(f"what moves at {name} of {envelope.id}", gap.moving)
        if moves is None and sheet.is_stated(f"part at {name} of {envelope.id}", gap.to):
            moves = sheet.follow(gap.to).called
        if moves is not None:
            found.setdefault(moves, []).append(name)
    return found


def _chains(face: LocatingFace, sheet: Sheet) -> Iterator[Judgement]:
    """For the same pad of each block alike, whether a chain closes there, and here."""
    pad, own = sheet.read("pad", face.pad), _closing(face, sheet)
    for part in sheet.parts_alike(sheet.follow(face.locks)):
        for other in sheet.belonging_to(part, LocatingFace):
            closing = _closing(other, sheet) if sheet.said(f"pad in {other.id}", other.pad) == pad else []
            if closing:
                names = f"{', '.join(closing)} at {other.id}, {', '.join(own) or 'none'} at {face.id}"
                yield sheet.states(bool(own), f"chains that close: {names}", where=face.where)


def _closing(face: LocatingFace, sheet: Sheet) -> list[str]:
    """The chains of dimensions whose gap is a size of a cut-out, or lies between it and the block that it locks."""
    return [chain.id for chain in sheet.belonging_to(face, DimensionChain) if _closes_at(chain, face, sheet)]


def _closes_at(chain: DimensionChain, face: LocatingFace, sheet: Sheet) -> bool:
    """By the size that the gap is said to be; where it is none, by dimensions of the cut-out and of the block."""
    if sheet.is_stated(f"gap of {chain.id}", chain.closes.of):
        return sheet.follow(chain.closes.of) is face
    parts = {
        sheet.follow(link.of).id
        for name, link in chain.chain.items()
        if sheet.is_stated(f"part of {name} of {chain.id}", link.of)
    }
    return {face.id, sheet.follow(face.locks).id} <= parts


RULES: tuple[Rule, ...] = (alike_on_both_sides,)
