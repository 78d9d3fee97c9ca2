"""Each rubbing pair of a cam box and a block by name, with its feed, its oil and the way back."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from speclint import COMMON_PRACTICE, Grade, Judgement, Rule, Sheet, rule
from speclint.specs import (
    Cam,
    CamBox,
    Component,
    Crosshead,
    CylinderBlock,
    CylinderLiner,
    Pin,
    Piston,
    PistonRing,
    PistonRod,
    PoppetValve,
    Rocker,
    RubbingPair,
    SlideBar,
    StuffingBox,
    Tappet,
    ValveSeat,
    ValveSpindle,
    denies,
)

_GUIDE = "guide"


class _Pair(NamedTuple):
    """Two parts that rub: each by the words that name it, those of them that have specs, and whether steam is there."""

    name: str
    one: frozenset[str]
    other: frozenset[str]
    parts: tuple[Component, ...]
    in_steam: bool


@rule(
    "lubrication.pair-by-name",
    edition=3,
    title="Each rubbing pair that the links of a cam box or a block give has a feed, an oil that suits its heat, and a "
    "way back for the oil; one feed to several pairs says so",
    on=(CamBox, CylinderBlock),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="the pair that nobody put on the list is the one that runs dry",
    leaves_out="quantity and film of the oil; check valves and flash points (lubrication.points)",
    against=("seize",),
    against_on={"shaft": ("seize",), "tappet": ("seize",), "rocker": ("seize",)},
)
def pair_by_name(part: CamBox | CylinderBlock, sheet: Sheet) -> Judgement:
    """The pairs that the links give, each against the pairs that box or block lists."""
    pairs = [*(_of_box(part, sheet) if isinstance(part, CamBox) else _of_block(part, sheet))]
    if not pairs:
        raise sheet.not_applicable("no part is drawn that rubs in it")
    if sheet.setting("stage") == "draft" and not part.pairs:
        raise sheet.not_applicable("a draft: rubbing pairs are listed before review")
    listed = {name: _words(name, one, sheet) for name, one in part.pairs.items()}
    served = {pair.name: [name for name, words in listed.items() if _names(words, pair)] for pair in pairs}
    feeds = Counter(
        sheet.read(f"feed of {names[0]}", part.pairs[names[0]].feed) for names in served.values() if names
    )
    return sheet.each(
        [(pair.name, pair) for pair in pairs], lambda item: _oiled(item[1], served, feeds, part, sheet)
    )


def _words(name: str, one: RubbingPair, sheet: Sheet) -> tuple[str, ...]:
    return tuple(sheet.read(f"parts of {name}", word) for word in one.between)


def _names(words: tuple[str, ...], pair: _Pair) -> bool:
    """Whether two words name the two parts of a pair, in either order."""
    if len(words) != 2:
        return False
    first, second = words
    return (first in pair.one and second in pair.other) or (second in pair.one and first in pair.other)


def _oiled(
    pair: _Pair, served: dict[str, list[str]], feeds: Counter[str], part: CamBox | CylinderBlock, sheet: Sheet
) -> Judgement:
    if not served[pair.name]:
        return sheet.states(False, f"{pair.name}: no feed of oil is listed", where=part.where)
    name = served[pair.name][0]
    one = part.pairs[name]
    oil, feed = sheet.read(f"oil of {name}", one.oil), sheet.read(f"feed of {name}", one.feed)
    sheet.read(f"way back of {name}", one.returns)
    if pair.in_steam and oil != "cylinder oil":
        return sheet.states(False, f"{pair.name}: {oil} does not bear the heat of steam", where=one.oil.where)
    if denies(feed):
        return sheet.states(False, f"{pair.name}: its feed is said to be {feed}", where=one.feed.where)
    if feeds[feed] > 1 and not sheet.read(f"{name} shared", one.shared):
        return sheet.states(
            False, f"{pair.name}: its feed, {feed}, serves {feeds[feed]} pairs", where=one.feed.where
        )
    return _oiled_itself(pair, sheet) or sheet.states(True, f"{pair.name}: {oil} from {feed}")


def _oiled_itself(pair: _Pair, sheet: Sheet) -> Judgement | None:
    """What is wrong where a part of a pair in steam says by itself that another oil is on it; None where nothing is."""
    for part in pair.parts if pair.in_steam else ():
        own = part.lubrication.lubricant
        if not sheet.is_stated(f"lubricant of {part.id}", own):
            continue
        oil = sheet.read(f"lubricant of {part.id}", own)
        if oil not in ("cylinder oil", "none"):
            says = f"{pair.name}: {part.id} says {oil}, which does not bear the heat of steam"
            return sheet.states(False, says, where=own.where)
    return None


def _pair(one: Component, other: Component, *, in_steam: bool = False) -> _Pair:
    return _Pair(f"{one.id} on {other.id}", _known_as(one), _known_as(other), (one, other), in_steam)


def _known_as(part: Component) -> frozenset[str]:
    return frozenset({part.id, *part.words()})


def _of_box(box: CamBox, sheet: Sheet) -> Iterator[_Pair]:
    """Cams on tappets, tappets and rockers in the box, and what each works; cam shafts in their bearings."""
    shafts: dict[str, Component] = {}
    for tappet in sheet.belonging_to(box, Tappet):
        yield _pair(tappet, box)
        if sheet.is_stated(f"works of {tappet.id}", tappet.works):
            yield _pair(tappet, sheet.follow(tappet.works))
        for cam in sheet.belonging_to(tappet, Cam):
            yield _pair(cam, tappet)
            if sheet.is_stated(f"shaft of {cam.id}", cam.turns_on):
                shaft = sheet.follow(cam.turns_on)
                shafts[shaft.id] = shaft
    for rocker in sheet.belonging_to(box, Rocker):
        yield _pair(rocker, box)
        if sheet.is_stated(f"works of {rocker.id}", rocker.works):
            yield _pair(rocker, sheet.follow(rocker.works))
    yield from (_pair(shaft, box) for shaft in shafts.values())


def _of_block(block: CylinderBlock, sheet: Sheet) -> Iterator[_Pair]:
    """Spindles in their guides, rings in liners, rods in packings, pins and slippers of the crossheads."""
    valves = {
        valve.id: valve
        for seat in sheet.belonging_to(block, ValveSeat)
        for valve in sheet.belonging_to(seat, PoppetValve)
    }
    for valve in valves.values():
        for spindle in sheet.belonging_to(valve, ValveSpindle):
            words = _known_as(spindle), frozenset({_GUIDE})
            yield _Pair(f"{spindle.id} in its guide", *words, (spindle,), True)
    for liner in sheet.belonging_to(block, CylinderLiner):
        yield from (_pair(ring, liner, in_steam=True) for ring in sheet.belonging_to(liner, PistonRing))
        for piston in sheet.belonging_to(liner, Piston):
            for rod in sheet.belonging_to(piston, PistonRod):
                yield from (_pair(rod, box, in_steam=True) for box in sheet.belonging_to(rod, StuffingBox))
                for head in sheet.belonging_to(rod, Crosshead):
                    yield from (_pair(pin, head) for pin in sheet.belonging_to(head, Pin))
                    yield from (_pair(bar, head) for bar in sheet.belonging_to(head, SlideBar))


RULES: tuple[Rule, ...] = (pair_by_name,)
