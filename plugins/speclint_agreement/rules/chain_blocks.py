"""The links of a dimension chain are parts of one cylinder block."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement
from speclint.specs import Component, CylinderBlock, DimensionChain, Link, NotStated, by_word

#: The keys by which parts of a cylinder lead to their block, by the words of their kinds: the first that is stated.
_WAYS = {
    "cam": ("lifts",),
    "cam-box": ("mounted_on",),
    "chamber-cover": ("closes",),
    "crosshead": ("on_rod",),
    "cylinder-cover": ("closes",),
    "cylinder-liner": ("housed_in",),
    "frame-fastening": ("holds",),
    "gland": ("of",),
    "locating-face": ("locks",),
    "pin": ("moved_by",),
    "piston": ("runs_in",),
    "piston-ring": ("runs_in",),
    "piston-rod": ("carries",),
    "rocker": ("works",),
    "slide-bar": ("guides",),
    "stuffing-box": ("in_cover", "seals"),
    "tappet": ("works",),
    "valve-cage": ("held_by",),
    "valve-seat": ("pressed_into",),
    "valve-spindle": ("moves",),
    "weldment": ("makes",),
}
#: More links than lead from any part to its block.
_MOST = 10


def _blocks(chain: DimensionChain, sheet: Sheet) -> Iterator[Pair]:
    """The block of each link, and of what it grows with and the gap that it is, against that of the first link."""
    first: Worked | None = None
    for name, link in (*chain.chain.items(), ("gap", chain.closes)):
        if not sheet.is_stated(f"part of {name}", link.of):
            continue
        found = _block_of(sheet.follow(link.of), sheet)
        if found is None:
            continue
        here = Worked(found, (link.of.where,))
        if first is None:
            first = here
        else:
            yield Pair(here, first, name=name)


def _block_of(part: Component, sheet: Sheet) -> str | None:
    """The id of the block to which a part leads; None where it does not say which."""
    for _ in range(_MOST):
        if isinstance(part, CylinderBlock):
            return part.id
        after = _next(part, sheet)
        if after is None:
            return None
        part = after
    return None


def _next(part: Component, sheet: Sheet) -> Component | None:
    if isinstance(part, by_word.PoppetValve):
        seat = part.upper_beat.seat
        return sheet.follow(seat) if sheet.is_stated(f"seat of {part.id}", seat) else None
    for key in _WAYS.get(part.kind, ()):
        link: Link[Component] | NotStated = getattr(part, key)
        if sheet.is_stated(f"{key} of {part.id}", link):
            return sheet.follow(link)
    return None


parts_of_one_block: Rule = agreement(
    "chain.parts-of-one-block",
    title="The links of a dimension chain are parts of one cylinder block, and of what goes onto it",
    on=DimensionChain,
    pairs=_blocks,
    within="",
    grade=Grade.QUERY,
    why="a chain that was copied from another cylinder goes on adding up the sizes of that one",
    leaves_out="links without a part, parts that name no block, and whether a chain is meant to go from block to block",
)

RULES = (parts_of_one_block,)
