"""How hot a wall is: as the hottest of the block and of what the wall bounds."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import Sheet
from speclint.equations import Kelvins
from speclint.facts import steam_in
from speclint.handbook.heat import hotter
from speclint.specs import CylinderBlock, LoadCase, SteamPassage

#: Places of passages that open into a cylinder and hold what is in it.
_OF_CYLINDER = ("port", "breathing way")


def temperature_of_wall(
    name: str, sides: Sequence[str], case: LoadCase, block: CylinderBlock, sheet: Sheet
) -> Kelvins:
    """Metal temperature of a wall between ``sides``.

    Where the load case states a temperature for the passages of the steam on either side, a wall is as hot as the
    hottest of them and of the block. A port and a breathing way hold what is in the cylinder. Of a block whose passages
    have no specs, the temperature stated for all steam passages counts beside live steam and beside the cylinder.
    """
    found = sheet.take("T", case.temperature_of(block))
    passages = sheet.belonging_to(block, SteamPassage)
    for side in ("live steam", "exhaust steam", "cylinder"):
        if side not in sides:
            continue
        metals = [case.temperature_of(passage) for passage in passages if carries(side, passage, sheet)]
        if not metals and side != "exhaust steam":
            metals = [case.temperature_named(SteamPassage.kind)]
        for index, metal in enumerate(metals):
            if metal not in metals[:index] and sheet.is_stated("temperature of a passage", metal):
                T_2 = sheet.take(f"T_{index + 2}", metal, f"metal temperature of a passage of {side}")
                found = sheet.work(f"T of {name}", hotter, T_1=found, T_2=T_2)
    return found


def carries(side: str, passage: SteamPassage, sheet: Sheet) -> bool:
    """Whether a passage holds the fluid on a side of a wall; where it does not say its place or its steam it may."""
    if not sheet.is_stated(f"place of {passage.id}", passage.place):
        return True
    of_cylinder = sheet.read(f"place of {passage.id}", passage.place) in _OF_CYLINDER
    if side == "cylinder":
        return of_cylinder
    if of_cylinder:
        return False
    if not sheet.is_stated(f"{passage.id} carries", passage.carries):
        return True
    return str(steam_in(passage, sheet).value) == side
