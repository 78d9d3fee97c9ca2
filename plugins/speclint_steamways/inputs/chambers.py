"""The chambers of a block in which water gathers, and how much of it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from speclint import COMMON_PRACTICE, Limit, Sheet
from speclint.equations import Kilograms, KilogramsPerSecond
from speclint.facts import has_drain_cock, is_drained, mass_drawn, steam_in, weldments_unweighed
from speclint.handbook.steam import saturation_temperature
from speclint.specs import CylinderBlock, CylinderEnd, Drain, LoadCase, NotStated, SteamPassage
from speclint_steamways.formulae.heat import midway
from speclint_steamways.formulae.water import condensed, greatest_rate, latent_heat

#: Places where water gathers.
GATHERING_WATER = ("chest", "valve pocket", "belt")
#: The limit that every rule on the water of warming declares.
GATHERED = Limit(
    "gathered", "95 %", "ratio", COMMON_PRACTICE, "share of the water that gathers in the time of warming"
)


class Chamber(NamedTuple):
    """A passage, or an end of a cylinder, in which water gathers; whether exhaust steam alone stands in it."""

    name: str
    part: SteamPassage | CylinderEnd
    exhaust: bool

    @property
    def drains(self) -> dict[str, Drain]:
        """The ways by which water leaves it."""
        return self.part.drains


def gathers_water(passage: SteamPassage, sheet: Sheet) -> bool:
    """Whether water gathers in a passage: by its place, or where it has a low point."""
    place = sheet.read(f"place of {passage.id}", passage.place)
    return place in GATHERING_WATER or sheet.read(f"low point of {passage.id}", passage.low_point)


def chambers_of(block: CylinderBlock, sheet: Sheet) -> list[Chamber]:
    """Every chamber of a block in which water gathers: its passages, and the ends of its cylinders."""
    found = [
        Chamber(
            passage.id,
            passage,
            steam_in(passage, sheet).value == "exhaust steam",
        )
        for passage in sheet.belonging_to(block, SteamPassage)
        if gathers_water(passage, sheet)
    ]
    return [*found, *(Chamber(f"end {name}", end, False) for name, end in block.ends.items())]


def drains_of(chamber: Chamber, sheet: Sheet) -> Iterator[tuple[str, Drain]]:
    """The drains of a chamber; none where it is said to have none.

    :raises NotAssessed: where it is said to be drained, and no drain is stated.
    """
    if chamber.drains:
        yield from chamber.drains.items()
    elif _said_drained(chamber, sheet):
        sheet.read("drains", NotStated(chamber.part.where.at(_key(chamber))))


def passage_drained_into(name: str, drain: Drain, block: CylinderBlock, sheet: Sheet) -> SteamPassage | None:
    """The passage of the block into which a drain leads; None where that is the open air, a pipe or a trap."""
    into = as_one_word(sheet.read(f"{name} leads into", drain.into))
    passages = sheet.belonging_to(block, SteamPassage)
    return next((one for one in passages if as_one_word(one.id) == into), None)


def as_one_word(text: str) -> str:
    """A name as it is compared: capitals, spaces and hyphens make no second pipe.

    >>> as_one_word("Cock-pipe  front"), as_one_word("passage-chest-left")
    ('cock pipe front', 'passage chest left')
    """
    return " ".join(text.replace("-", " ").replace("_", " ").split()).casefold()


def draining_into(
    chamber: Chamber, chambers: list[Chamber], block: CylinderBlock, sheet: Sheet
) -> dict[str, Chamber]:
    """The chambers whose water comes into one, each by some drain of its own or through others, by their names."""
    found: dict[str, Chamber] = {}
    waiting = [chamber]
    while waiting:
        below = waiting.pop()
        above = [one for one in chambers if one.name not in found and _leads(one, below, block, sheet)]
        found |= {one.name: one for one in above}
        waiting += above
    return found


def _leads(above: Chamber, below: Chamber, block: CylinderBlock, sheet: Sheet) -> bool:
    return any(
        passage_drained_into(f"{name} of {above.name}", drain, block, sheet) is below.part
        for name, drain in above.drains.items()
    )


def _said_drained(chamber: Chamber, sheet: Sheet) -> bool:
    if isinstance(chamber.part, SteamPassage):
        return is_drained(chamber.part, sheet)
    return has_drain_cock(chamber.name, chamber.part, sheet)


def _key(chamber: Chamber) -> str:
    key = chamber.part.where.key
    return f"{key}.drains" if key else "drains"


def metal_of_block(block: CylinderBlock, sheet: Sheet) -> Kilograms:
    """The metal of a block that steam warms: all that is drawn of it.

    :raises NotAssessed: where neither a mass nor the sizes for one are stated, and where its weldment has none.
    """
    unweighed = weldments_unweighed(block, sheet)
    if unweighed:
        sheet.take("m", unweighed[0].mass)  # which says that it is not stated
    drawn = mass_drawn(block, sheet, sheet.take)
    if drawn is None:
        raise sheet.not_assessed(f"no mass of {block.id} and of what is on it is drawn", block.where)
    return float(drawn.value)


def metal_of_chamber(chamber: Chamber, whole: Kilograms, sheet: Sheet) -> Kilograms:
    """The metal whose water gathers in a chamber: as stated, else all of the block."""
    stated = chamber.part.water_of
    if sheet.is_stated(f"metal of {chamber.name}", stated):
        return sheet.take(f"M_{chamber.name}", stated)
    return whole


def water_at_first(M: Kilograms, block: CylinderBlock, case: LoadCase, sheet: Sheet) -> KilogramsPerSecond:
    """The greatest rate at which the steam condenses that warms some metal of a block."""
    p = sheet.take_absolute("p", case.live_pressure)
    T_s, T_0 = sheet.work("T_s", saturation_temperature, p=p), sheet.take("T_0", case.ambient_temperature)
    at = sheet.work("T_m", midway, T_1=T_s, T_2=T_0)
    c = sheet.look_up("c", sheet.material_of(block).specific_heat, of=block, at=at)
    m = sheet.work("m", condensed, M=M, c=c, T_s=T_s, T_0=T_0, r=sheet.work("r", latent_heat, p=p))
    duty = sheet.duty_of(block)
    if duty is None:
        raise sheet.not_assessed(f"{block.id} sees no duty", block.where)
    t = sheet.take("t", duty.warming.time)
    return sheet.work("w", greatest_rate, m=m, t=t, x=sheet.limit("gathered", "x"))
