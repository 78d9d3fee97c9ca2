"""The links of a dimension chain are parts of one cylinder block."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import block_of
from speclint.specs import DimensionChain
from speclint_agreement.inputs.blocks import in_block


def _blocks(chain: DimensionChain, sheet: Sheet) -> Iterator[Pair]:
    """The block of each link, and of what it grows with and the gap that it is, against that of the first link."""
    first: Worked | None = None
    for name, link in (*chain.chain.items(), ("gap", chain.closes)):
        if not sheet.is_stated(f"part of {name}", link.of):
            continue
        block = block_of(sheet.follow(link.of), sheet)
        if block is None:
            continue
        if first is None:
            first = in_block(link.of, block)
        else:
            yield Pair(in_block(link.of, block), first, name=name)


parts_of_one_block: Rule = agreement(
    "chain.parts-of-one-block",
    title="The links of a dimension chain are parts of one cylinder block, and of what goes onto it",
    on=DimensionChain,
    pairs=_blocks,
    within="",
    grade=Grade.QUERY,
    edition=2,
    why="a chain that was copied from another cylinder goes on adding up the sizes of that one",
    leaves_out="links without a part, parts that name no block, and whether a chain is meant to go from block to block",
)

RULES = (parts_of_one_block,)
