"""The cylinder block that a part belongs to, by each link that leads there."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from speclint.rules import Sheet
from speclint.specs import Component, CylinderBlock, DimensionChain, Link, Spec

#: The keys by which parts lead to the block that they are on, in or made into, by the words of their kinds; the first
#: that leads to a block counts. Of kinds that are not here a part may belong to several blocks, or to none.
_WAYS = {
    "access-plan": ("serves",),
    "bolted-joint": ("screwed_into", "holds"),
    "bracket": ("on",),
    "cam": ("lifts",),
    "cam-box": ("mounted_on",),
    "casting": ("becomes",),
    "chamber-cover": ("closes", "over"),
    "compression-spring": ("closes", "nested_in"),
    "crosshead": ("on_rod",),
    "cylinder-cover": ("closes",),
    "cylinder-liner": ("housed_in",),
    "envelope": ("around",),
    "frame-fastening": ("holds",),
    "gland": ("of",),
    "lagging": ("covers",),
    "lens-joint": ("of",),
    "locating-face": ("locks",),
    "partition": ("live_side", "exhaust_side"),
    "pin": ("moved_by",),
    "piston": ("runs_in",),
    "piston-ring": ("runs_in", "bears_on"),
    "piston-rod": ("carries",),
    "poppet-valve": ("upper_beat.seat", "lower_beat.seat"),
    "retaining-ring": ("retains",),
    "rocker": ("works", "carried_in"),
    "saddle": ("on",),
    "slide-bar": ("guides",),
    "steam-passage": ("in_block",),
    "stuffing-box": ("in_cover", "seals"),
    "tappet": ("works", "carried_in"),
    "valve-cage": ("held_by", "surrounds"),
    "valve-gear": ("in_block",),
    "valve-seat": ("pressed_into",),
    "valve-spindle": ("moves",),
    "weldment": ("makes",),
}
#: Links that say nothing of the block: to the duty, on along a path of steam, from one block to another it may be, and
#: to what moves beside a block, which may be the motion of another one.
_NO_WAYS = frozenset({"duty", "follows", "joined_to", "to"})


class Way(Struct, frozen=True):
    """A link of a part, the block to which it leads, and whether it names that block itself."""

    link: Link[Any]
    block: CylinderBlock
    itself: bool


def ways_to_blocks(part: Component, sheet: Sheet) -> Iterator[Way]:
    """Each link of a part that leads to a block, itself or by way of other parts, in the order of its keys.

    Those along a path of steam, and to what moves beside a part, are passed over.

    :raises NotAssessed: where a spec on the way cannot be read.
    """
    for link in part.links():
        if link.where.key.rpartition(".")[2] not in _NO_WAYS:
            named = sheet.follow(link)
            block = block_of(named, sheet)
            if block is not None:
                yield Way(link, block, itself=named is block)


def block_of(part: Spec, sheet: Sheet) -> CylinderBlock | None:
    """The block that a part is, or that it is on, in or made into; None where it does not say which.

    :raises NotAssessed: where a spec on the way cannot be read.
    """
    if isinstance(part, CylinderBlock):
        return part
    if isinstance(part, DimensionChain):
        return _block_of_chain(part, sheet)
    there = (block_of(sheet.follow(link), sheet) for link in _onward(part, sheet))
    return next((block for block in there if block is not None), None)  # reading refuses links in a loop


def _block_of_chain(chain: DimensionChain, sheet: Sheet) -> CylinderBlock | None:
    """The block of all parts of a dimension chain; None where they name none, or where it goes from block to block."""
    links = [*chain.chain.items(), ("gap", chain.closes)]
    of = [link.of for name, link in links if sheet.is_stated(f"part of {name} of {chain.id}", link.of)]
    there = (block_of(sheet.follow(link), sheet) for link in of)
    blocks = {block.id: block for block in there if block is not None}
    return next(iter(blocks.values())) if len(blocks) == 1 else None


def _onward(part: Spec, sheet: Sheet) -> Iterator[Link[Any]]:
    """The links by which a part leads on towards its block, of those that it states."""
    for key in next((_WAYS[word] for word in part.words() if word in _WAYS), ()):
        stated: Any = part
        for name in key.split("."):
            stated = getattr(stated, name)
        if sheet.is_stated(f"{key.replace('.', ' ').replace('_', ' ')} of {part.id}", stated):
            yield stated
