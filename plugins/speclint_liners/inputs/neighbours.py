"""What stands beside what in a block: the divisions that it must have, and how hot they are."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from speclint import Sheet
from speclint.equations import Kelvins
from speclint.facts import chamber_of_bore, sides_of_division, steam_in
from speclint.specs import CylinderBlock, SteamPassage

if TYPE_CHECKING:
    from speclint.specs import Division, LoadCase

#: Places of passages that open into a cylinder and hold what is in it.
_OF_CYLINDER = ("port", "breathing way")


def missing_divisions(block: CylinderBlock, sheet: Sheet) -> list[str]:
    """The divisions that a block must have and does not state, in words.

    One beside each bore, one between each two bores that lie next to each other, and one between live and exhaust
    steam where valve seats open into both.
    """
    named = {name: _bores(division, sheet) for name, division in block.divisions.items()}
    missing = [
        f"one beside bore {bore}" for bore in block.bores if not any(bore in one for one in named.values())
    ]
    missing += [
        f"one between bores {left} and {right}"
        for left, right in pairwise(_in_order(block, sheet))
        if not any({left, right} <= one for one in named.values())
    ]
    found = (chamber_of_bore(name, seat, sheet) for name, seat in block.seat_bores.items())
    chambers = {chamber for chamber in found if chamber is not None}
    if len(chambers) > 1 and not any(
        set(sides_of_division(one, block, sheet)) == chambers for one in block.divisions.values()
    ):
        missing.append("one between live steam and exhaust steam")
    return missing


def _bores(division: Division, sheet: Sheet) -> set[str]:
    named = (division.bore, division.other_bore)
    return {sheet.read("bore", bore) for bore in named if sheet.is_stated("bore", bore)}


def _in_order(block: CylinderBlock, sheet: Sheet) -> list[str]:
    """The bores from the frame outwards."""
    if len(block.bores) < 2:
        return list(block.bores)
    return sorted(block.bores, key=lambda name: sheet.take_nominal("a", block.bores[name].axis_from_frame))


def temperatures_beside(
    sides: Sequence[str], block: CylinderBlock, case: LoadCase, sheet: Sheet
) -> list[Kelvins]:
    """Temperatures that a wall may have: the block's, and those of its passages that carry the steam beside it.

    A passage that does not say what it carries may be beside it, unless it opens into a cylinder:
    beside the bore a wall is as hot as the block.
    """
    temperatures = [sheet.take("T_b", case.temperature_of(block))]
    for passage in sheet.belonging_to(block, SteamPassage):
        if _may_be_beside(passage, sides, sheet):
            temperatures.append(sheet.take(f"T of {passage.id}", case.temperature_of(passage)))
    return temperatures


def _may_be_beside(passage: SteamPassage, sides: Sequence[str], sheet: Sheet) -> bool:
    if sheet.is_stated(f"steam in {passage.id}", passage.carries):
        return steam_in(passage, sheet).value in sides
    placed = sheet.is_stated(f"place of {passage.id}", passage.place)
    return not (placed and sheet.read(f"place of {passage.id}", passage.place) in _OF_CYLINDER)
