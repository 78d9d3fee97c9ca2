"""The metal of a passage against that of its block."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.specs import SteamPassage, Weldment


def _metals(passage: SteamPassage, sheet: Sheet) -> Iterator[Pair]:
    """The metal of a passage against the block, or, where that is of another, the plate of it that is of this metal."""
    if not sheet.is_stated("metal of the passage", passage.material):
        return
    block = sheet.follow(passage.in_block)
    own = sheet.read("metal of the passage", passage.material)
    plates = [
        (f"{weldment.id} {name}", plate.material)
        for weldment in sheet.belonging_to(block, Weldment)
        for name, plate in weldment.plates.items()
        if sheet.is_stated(f"metal of {weldment.id} {name}", plate.material)
    ]
    of_it = [one for one in plates if sheet.read(f"metal of {one[0]}", one[1]) == own]
    if of_it and sheet.said(f"metal of {block.id}", block.material) != own:
        name, metal = of_it[0]
        yield Pair(passage.material, metal, name=name)
    else:
        yield Pair(passage.material, block.material, name=block.id)


metal_of_its_block: Rule = agreement(
    "passage.metal-of-its-block",
    title="A passage that states a metal is of that of its block, or of a plate of the weldment of which that is made",
    on=SteamPassage,
    pairs=_metals,
    grade=Grade.QUERY,
    why="walls of a passage are judged by the metal of block and weldment: a passage of a weaker steel bursts behind "
    "a sheet on which it holds",
    leaves_out="which plate bounds the passage; a passage that states no metal; a tube or a casting let into a block, "
    "of which no plate is drawn",
    against=(),
)

RULES = (metal_of_its_block,)
