"""The gap that a chain of dimensions makes, added up link by link, and the room of a pad that slides."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.equations import FIRST_PRINCIPLES, Metres, Ratio, formula
from speclint.facts.taking import Take
from speclint.handbook.fits import WORST_CASE_CITES
from speclint.rules import Sheet, Worked, worked
from speclint.specs import DimensionChain, LocatingFace, Position

if TYPE_CHECKING:
    from speclint.specs import ChainLink, Pad


@formula("g = g_0 + k x", cites=list(WORST_CASE_CITES))
def with_link(g_0: Metres, k: Ratio, x: Metres) -> Metres:
    """Gap, added up link by link.

    g = g_0 + k x

    ``g_0`` gap of the links before [m]; ``k`` effect of the link, 1 where it widens the gap, −1 where it narrows it,
    another number by a lever [-]; ``x`` its size [m]. Returns [m].

    >>> round(with_link(g_0=0.05000, k=-1.0, x=0.04998) * 1e6, 6)
    20.0
    """
    return g_0 + k * x


class Acting(Struct, frozen=True):
    """A link by name, and its effect: 1 widens the gap, −1 narrows it, another number by a lever."""

    name: str
    link: ChainLink
    k: float


def links_of(chain: DimensionChain, sheet: Sheet) -> Iterator[Acting]:
    """The links of a chain, in the order in which they are stated."""
    if not chain.chain:
        raise sheet.not_assessed("no link of the chain is stated", chain.where)
    for name, link in chain.chain.items():
        sign = 1.0 if sheet.read(f"{name} acts", link.direction) == "widens" else -1.0
        lever = 1.0
        if sheet.is_stated(f"lever of {name}", link.lever):
            lever = sheet.take(f"k of {name}", link.lever)
        yield Acting(name, link, sign * lever)


def size_of_link(one: Acting, sheet: Sheet) -> Position:
    """The size of a link: as measured on the job, where it has been; else as its part is drawn."""
    if sheet.is_stated(f"{one.name} as measured", one.link.measured):
        return one.link.measured
    return sheet.dimension(one.link)


def gap_of_chain(chain: DimensionChain, sheet: Sheet, take: Take) -> Worked:
    """The gap that the links of a chain leave cold, m, and the places of its links."""
    gap, places = 0.0, []
    for one in links_of(chain, sheet):
        size = size_of_link(one, sheet)
        gap = sheet.work("g", with_link, g_0=gap, k=one.k, x=take(one.name, size))
        places.append(size.where)
    return Worked(gap, tuple(places))


@formula("r = (s − w)/2", cites=[FIRST_PRINCIPLES])
def room_when_central(s: Metres, w: Metres) -> Metres:
    """Room at each end of a cut-out whose pad stands in its middle.

    r = (s − w)/2

    ``s`` width of the cut-out, ``w`` of the pad [m]. Returns [m].

    >>> round(room_when_central(s=0.186, w=0.180) * 1e3, 9)
    3.0
    """
    return (s - w) / 2


def room_of_pad(face: LocatingFace, pad: Pad, sheet: Sheet, take: Take) -> Worked | None:
    """Cold room between a sliding pad and the end of its cut-out, m.

    By the chain that gives it; else half of what the cut-out is wider than the pad, which stands in its middle. None
    where there is no chain and either width is not stated.
    """
    for chain in sheet.belonging_to(face, DimensionChain):
        of, key = chain.closes.of, chain.closes.dimension
        if not (sheet.is_stated(f"part of {chain.id}", of) and sheet.is_stated(f"key of {chain.id}", key)):
            continue
        if sheet.follow(of).id == face.id and sheet.read(f"key of {chain.id}", key) == "room":
            return gap_of_chain(chain, sheet, take)
    if not (sheet.is_stated("cut-out", face.slot) and sheet.is_stated("width of the pad", pad.width)):
        return None
    room = sheet.work("r_c", room_when_central, s=take("s", face.slot), w=take("w", pad.width))
    return worked(room, face.slot, pad.width)
