"""Dimension chains, fits and cut-outs: what they state beside the parts that they point at."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement
from speclint.specs import Dimension, DimensionChain, Fit, LocatingFace


def _sizes(part: DimensionChain | Fit, sheet: Sheet) -> Iterator[Pair]:
    """Each size that is stated beside a key of another spec, against what stands there."""
    for name, link in _links(part):
        keys = link.size, link.of, link.dimension
        if all(sheet.is_stated(f"size, part and key of {name}", one) for one in keys):
            yield Pair(link.size, sheet.pointed_at(link), name=name)


def _links(part: DimensionChain | Fit) -> Iterator[tuple[str, Dimension]]:
    if isinstance(part, DimensionChain):
        yield from part.chain.items()
    else:
        yield from (
            ("hole", part.hole),
            ("shaft", part.shaft),
            ("bore", part.bore),
            ("wall", part.wall),
            ("length", part.length),
        )


def _cut_outs(face: LocatingFace, sheet: Sheet) -> Iterator[Pair]:
    """The place of the cut-out along the frame against that of the pad in it."""
    if not (sheet.is_stated("block", face.locks) and sheet.is_stated("pad", face.pad)):
        return
    block = sheet.follow(face.locks)
    pad = sheet.entry(block.pads, face.pad, f"the pads of {block.id}")
    if sheet.is_stated("place of the pad", pad.at):
        yield Pair(face.at, pad.at)


def _asked(chain: DimensionChain, sheet: Sheet) -> Iterator[Pair]:
    """The limits asked of the gap against those of the size that it is; a size without limits must lie within them."""
    if not sheet.is_stated("size that the gap is", chain.closes.dimension):
        return
    drawn = sheet.dimension(chain.closes)
    low, high = (Worked(limit, (drawn.where,)) for limit in sheet.take_limits("g", drawn))
    plain = low.value == high.value
    yield Pair(chain.least, low, "at most" if plain else "equal", name="least")
    yield Pair(chain.greatest, high, "at least" if plain else "equal", name="greatest")


sizes_by_key: Rule = agreement(
    "chain.sizes-by-key",
    title="A size that a chain or a fit states beside the key of a part is the size under that key",
    on=(DimensionChain, Fit),
    pairs=_sizes,
    grade=Grade.NONCONFORMITY,
    why="a size typed a second time stays behind when the part's drawing is revised, and the chain proves the old one",
    leaves_out="limits, which may differ; a size typed without the key under which a part states it",
)

at_its_pad: Rule = agreement(
    "face.at-its-pad",
    title="A cut-out of the frame stands where the block has the pad that goes into it",
    on=LocatingFace,
    pairs=_cut_outs,
    within="0.05 mm",
    grade=Grade.NONCONFORMITY,
    why="block and frame are drawn to two distances, and the block does not go down into its cut-outs",
    leaves_out="limits of both places, and growth of the block (fit.growth-room)",
)

asks_what_is_drawn: Rule = agreement(
    "chain.asks-what-is-drawn",
    title="The limits that a chain asks of its gap are those of the size, in another spec, that the gap is",
    on=DimensionChain,
    pairs=_asked,
    within="0.001 mm",
    grade=Grade.NONCONFORMITY,
    why="a chain that proves other limits than the drawing asks proves nothing about the drawing",
    leaves_out="limits of the hot gap, which only the chain states",
)

RULES = (asks_what_is_drawn, at_its_pad, sizes_by_key)
