"""Where the drains of a cylinder's end or of a passage lead that they must not."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Sheet
from speclint.facts import engine_of, steam_carried, steam_in
from speclint.specs import CylinderBlock, Drain, SteamPassage, SteamPipe
from speclint_steamways.inputs.chambers import as_one_word, passage_drained_into

#: Where a drain leads that has no pipe, and that any number of drains share; small words may stand before it.
_OPEN_AIR = frozenset({"open air", "atmosphere", "outside", "freie"})
_SMALL = frozenset({"to", "into", "the", "ins"})
#: Words for what is full of live steam, in the name of what a drain leads into.
_LIVE = ("live steam", "superheater", "frischdampf")


def is_open_air(into: str) -> bool:
    """Whether a drain leads into the open air, as its name is compared.

    >>> is_open_air("to the open air"), is_open_air("atmosphere"), is_open_air("air pipe")
    (True, True, False)
    """
    return " ".join(word for word in into.split() if word not in _SMALL) in _OPEN_AIR


def beyond_its_end(end: str, name: str, drain: Drain, block: CylinderBlock, sheet: Sheet) -> Iterator[str]:
    """What is wrong with a drain of an end within its block: that it leads to another end, or to live steam."""
    into = passage_drained_into(name, drain, block, sheet)
    if into is None:
        yield from _shared_with_live(name, drain, block, sheet)
    elif sheet.is_stated(f"end of {into.id}", into.of_end):
        other = sheet.read(f"end of {into.id}", into.of_end)
        if other != end:
            yield f"{name} leads into {into.id}, of the {other} end"
    elif steam_in(into, sheet).value == "live steam":
        yield f"{name} leads into {into.id}, where live steam stands"


def _shared_with_live(name: str, drain: Drain, block: CylinderBlock, sheet: Sheet) -> Iterator[str]:
    """The chambers of live steam whose drains lead into the same pipe or trap as that of an end or exhaust passage."""
    into = as_one_word(sheet.read(f"{name} leads into", drain.into))
    if is_open_air(into):
        return
    for passage in sheet.belonging_to(block, SteamPassage):
        own = [as_one_word(sheet.read(f"drain of {passage.id}", one.into)) for one in passage.drains.values()]
        if into not in own or sheet.is_stated(f"end of {passage.id}", passage.of_end):
            continue
        if steam_in(passage, sheet).value == "live steam":
            yield f"{name} leads into {into}, which {passage.id} with its live steam drains into too"


def beyond_its_block(
    name: str, drain: Drain, block: CylinderBlock, sheet: Sheet, *, live: bool = False
) -> Iterator[str]:
    """What is wrong with a drain beyond its passages: that it names another block of the engine, what lies in that or a
    pipe on it, or, unless it drains live steam itself, a pipe of live steam on its own block.
    """
    into = as_one_word(sheet.read(f"{name} leads into", drain.into))
    if is_open_air(into):
        return
    if not live and (any(word in into for word in _LIVE) or into in ("boiler", "the boiler")):
        yield f"{name} leads into {into}, where live steam stands"
    pipes = sheet.belonging_to(block, SteamPipe)
    for pipe in () if live else pipes:
        if as_one_word(pipe.id) == into and steam_carried(pipe, sheet).value == "live steam":
            yield f"{name} leads into {pipe.id}, where live steam stands"
    own = {pipe.id for pipe in pipes}
    for other in _others(block, sheet):
        parts = (*sheet.belonging_to(other, SteamPassage), *sheet.belonging_to(other, SteamPipe))
        called = {as_one_word(one.id): one.id for one in (other, *parts) if one.id not in own}
        if into in called:
            yield f"{name} leads into {called[into]}, of {other.id}"
        elif f" {as_one_word(other.id)} " in f" {into} ":
            yield f"{name} leads into {into}, of {other.id}"


def _others(block: CylinderBlock, sheet: Sheet) -> Iterator[CylinderBlock]:
    """The other blocks whose cylinders turn the cranks of the engine of a block, each once."""
    engine = engine_of(block, sheet)
    found: dict[str, CylinderBlock] = {}
    for name, crank in engine.cranks.items() if engine is not None else ():
        if sheet.is_stated(f"block of crank {name}", crank.block):
            other = sheet.follow(crank.block)
            found[other.id] = other
    yield from (one for one in found.values() if one.id != block.id)
