"""The metal of a passage against that of its block."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.specs import FlatWall, NotStated, Stated, SteamPassage, Weldment

_Plates = list[tuple[str, Stated[str] | NotStated]]


def _metals(passage: SteamPassage, sheet: Sheet) -> Iterator[Pair]:
    """The metal of a passage against the plates of the walls that name it; else against the block, or a like plate.

    Two plates of unlike metal beside one passage cannot both agree: which of them is meant is for the designer to say.
    """
    if not sheet.is_stated("metal of the passage", passage.material):
        return
    block = sheet.follow(passage.in_block)
    own = sheet.read("metal of the passage", passage.material)
    weldments = sheet.belonging_to(block, Weldment)
    if beside := [plate for one in weldments for plate in _beside(passage, one, sheet)]:
        yield from (Pair(passage.material, metal, name=name) for name, metal in beside)
        return
    plates = [plate for one in weldments for plate in _plates(one, one.plates, sheet)]
    of_it = [one for one in plates if sheet.read(f"metal of {one[0]}", one[1]) == own]
    if of_it and sheet.said(f"metal of {block.id}", block.material) != own:
        name, metal = of_it[0]
        yield Pair(passage.material, metal, name=name)
    else:
        yield Pair(passage.material, block.material, name=block.id)


def _plates(weldment: Weldment, names: Iterable[str], sheet: Sheet) -> _Plates:
    """The plates of some names of which the metal is stated."""
    found = ((f"{weldment.id} {name}", weldment.plates[name].material) for name in names)
    return [one for one in found if sheet.is_stated(f"metal of {one[0]}", one[1])]


def _beside(passage: SteamPassage, weldment: Weldment, sheet: Sheet) -> _Plates:
    """The plates of the walls that name the passage."""
    walls = [one for name, one in weldment.walls.items() if passage.id in _named(name, one, sheet)]
    stated = [one.plate for one in walls if sheet.is_stated("plate of a wall", one.plate)]
    names = dict.fromkeys(sheet.read("plate of a wall", one) for one in stated)
    return _plates(weldment, (one for one in names if one in weldment.plates), sheet)


def _named(name: str, wall: FlatWall, sheet: Sheet) -> set[str]:
    links = (wall.one_passage, wall.other_passage)
    return {sheet.follow(one).id for one in links if sheet.is_stated(f"passage beside {name}", one)}


metal_of_its_block: Rule = agreement(
    "passage.metal-of-its-block",
    title="A passage that states a metal is of that of the plates of the walls that name it; where none does, of "
    "that of its block, or of any plate",
    edition=2,
    on=SteamPassage,
    pairs=_metals,
    grade=Grade.QUERY,
    why="walls of a passage are judged by the metal of block and weldment: a passage of a weaker steel bursts behind "
    "a sheet on which it holds",
    leaves_out="which plate bounds a passage that no wall names; a passage that states no metal; a tube or a casting "
    "let into a block, of which no plate is drawn, and which the designer answers for",
    against=(),
)

RULES = (metal_of_its_block,)
