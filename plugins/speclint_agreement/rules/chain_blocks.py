"""The links of a dimension chain are parts of one cylinder block, and of one valve and its gear."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import TypeVar

from speclint import Grade, Pair, Rule, Sheet, agreement, worked
from speclint.facts import block_of
from speclint.specs import (
    NOT_STATED,
    Cam,
    CamBox,
    Component,
    DimensionChain,
    LinkTo,
    PoppetValve,
    Rocker,
    Shaft,
    Tappet,
    ValveSeat,
)
from speclint_agreement.inputs.blocks import in_block

P = TypeVar("P")

#: The kinds of a valve and its gear, and the key by which each leads to the next towards the valve.
_TO_VALVE = {
    "cam": "lifts",
    "compression-spring": "closes",
    "rocker": "works",
    "tappet": "works",
    "valve-cage": "surrounds",
    "valve-spindle": "moves",
}


def _pairs(chain: DimensionChain, sheet: Sheet) -> Iterator[Pair]:
    """The block of each link and of what it grows with, then what of them belongs to a valve."""
    yield from _blocks(chain, sheet)
    yield from _valves(chain, sheet)


def _blocks(chain: DimensionChain, sheet: Sheet) -> Iterator[Pair]:
    """The block of each link, and of what it grows with and the gap that it is, against that of the first link."""
    named = (*_parts_named(chain), ("gap", chain.closes.of))
    for name, link, block, first in _against_first(named, block_of, sheet):
        yield Pair(in_block(link, block), in_block(*first), name=name)


def _valves(chain: DimensionChain, sheet: Sheet) -> Iterator[Pair]:
    """The valve of the gap, or of the first link with one, against that of each other; a box against its tappet's."""
    named = (("gap", chain.closes.of), *_parts_named(chain))
    for name, link, valve, (of, that) in _against_first(named, _valve_of, sheet):
        yield Pair(worked(valve.id, link), worked(that.id, of), name=f"valve of {name}")
    yield from _boxes(chain, sheet)


def _parts_named(chain: DimensionChain) -> Iterator[tuple[str, LinkTo[Component]]]:
    """The part of each link of a chain, and that with which the link grows, each by a name of its own."""
    for name, link in chain.chain.items():
        yield name, link.of
        yield f"growth of {name}", link.grows_with


def _against_first(
    named: Iterable[tuple[str, LinkTo[Component]]],
    leads_to: Callable[[Component, Sheet], P | None],
    sheet: Sheet,
) -> Iterator[tuple[str, LinkTo[Component], P, tuple[LinkTo[Component], P]]]:
    """The parts named in a chain that lead to some part, each with that and with the first of them and its own.

    What is not stated, or leads nowhere, is passed over.
    """
    first: tuple[LinkTo[Component], P] | None = None
    for name, link in named:
        if not sheet.is_stated(f"part of {name}", link):
            continue
        part = leads_to(sheet.follow(link), sheet)
        if part is None:
            continue
        if first is None:
            first = link, part
        else:
            yield name, link, part, first


def _boxes(chain: DimensionChain, sheet: Sheet) -> Iterator[Pair]:
    """Each cam box of the chain, and that of each shaft, against the one that carries the tappet of the gap."""
    if not sheet.is_stated("part of gap", chain.closes.of):
        return
    tappet = sheet.follow(chain.closes.of)
    if not isinstance(tappet, Tappet) or not sheet.is_stated("box of the tappet", tappet.carried_in):
        return
    own = worked(sheet.follow(tappet.carried_in).id, tappet.carried_in, chain.closes.of)
    for name, link in _parts_named(chain):
        if sheet.is_stated(f"part of {name}", link):
            part = sheet.follow(link)
            if isinstance(part, CamBox):
                yield Pair(worked(part.id, link), own, name=f"box of {name}")
            elif isinstance(part, Shaft) and (box := next(_boxes_of(part, sheet), None)):
                yield Pair(own, in_block(link, box), name=f"box of {name}")


def _boxes_of(shaft: Shaft, sheet: Sheet) -> Iterator[Component]:
    """The boxes of the tappets that the cams on a shaft lift, and of the rockers on it."""
    for cam in sheet.belonging_to(shaft, Cam):
        if sheet.is_stated(f"tappet of {cam.id}", cam.lifts):
            tappet = sheet.follow(cam.lifts)
            if isinstance(tappet, Tappet) and sheet.is_stated(f"box of {tappet.id}", tappet.carried_in):
                yield sheet.follow(tappet.carried_in)
    for rocker in sheet.belonging_to(shaft, Rocker):
        if sheet.is_stated(f"box of {rocker.id}", rocker.carried_in):
            yield sheet.follow(rocker.carried_in)


def _valve_of(part: Component, sheet: Sheet) -> PoppetValve | None:
    """The valve that a part of its gear leads to, by one link after another, or whose seat it is; None of others."""
    if isinstance(part, ValveSeat):
        return next(_valves_on(part, sheet), None)
    while not isinstance(part, PoppetValve):
        key = _TO_VALVE.get(next((one for one in _TO_VALVE if part.is_one_of((one,))), ""))
        link = getattr(part, key) if key else NOT_STATED
        if not sheet.is_stated(f"valve of {part.id}", link):
            return None
        part = sheet.follow(link)
    return part


def _valves_on(seat: ValveSeat, sheet: Sheet) -> Iterator[PoppetValve]:
    """The valves that close on a seat."""
    for valve in sheet.belonging_to(seat, PoppetValve):
        for beat in (valve.upper_beat, valve.lower_beat):
            if sheet.is_stated(f"seat of {valve.id}", beat.seat) and sheet.follow(beat.seat).id == seat.id:
                yield valve


parts_of_one_block: Rule = agreement(
    "chain.parts-of-one-block",
    title="The links of a dimension chain, and what they grow with, are parts of one cylinder block, of what goes onto "
    "it, and of one valve with its gear, cam box and shafts",
    on=DimensionChain,
    pairs=_pairs,
    within="",
    grade=Grade.QUERY,
    edition=5,
    why="a chain that was copied from another cylinder or another valve goes on adding up the sizes of that one",
    leaves_out="links without a part, parts that name no block, and whether a chain is meant to go from block to block "
    "or from valve to valve",
)

RULES = (parts_of_one_block,)
