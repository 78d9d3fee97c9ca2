"""One oil on one film, and one feed of the lubricator for one point."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import Any

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import crossheads_of, engine_of, rods_in
from speclint.specs import (
    CamBox,
    Component,
    CylinderBlock,
    CylinderLiner,
    PistonRing,
    PoppetValve,
    StuffingBox,
    ValveSeat,
    ValveSpindle,
    Word,
    denies,
)

#: A lubricator and the numbers of its feeds, as in "mechanical lubricator, feeds 1 and 2", whatever is said after them;
#: after the number of one feed a comma begins something else, such as "feed 3, 2 drops a minute".
_FEEDS = re.compile(
    r"(?P<of>.*?)[,;:]?\s*feed(?P<many>s)?\s+(?:nos?\.?\s*|numbers?\s+)?"
    r"(?P<numbers>[0-9]+(?:(?:[ &+/–-]|(?(many)[,;]|&)|\band\b|\bto\b)+[0-9]+)*)(?![0-9a-z])",
    re.IGNORECASE,
)
#: Most feeds of a lubricator (common practice): no range of a mistyped number runs on without end.
_MOST = 60
#: A feed that a divider shares out in measured parts, for which several points are right.
_SHARED = re.compile(r"divid|distribut|metering block|splitter", re.IGNORECASE)
#: Words that name a single feed of a lubricator; an oil cup or a box is one of many that are called alike.
_FEED = re.compile(r"\bfeed\b", re.IGNORECASE)
#: Several feeds one after the other, such as "6 to 8".
_RANGE = re.compile(r"([0-9]+)\s*(?:to|–|-)\s*([0-9]+)")


def _oils(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The oil of each ring against that of its liner or bore, of each lubricator, and each feed with several points."""
    for runs_in in (block, *sheet.belonging_to(block, CylinderLiner)):
        for ring in sheet.belonging_to(runs_in, PistonRing):
            yield Pair(ring.lubrication.lubricant, runs_in.lubrication.lubricant, name=f"oil of {ring.id}")
            here, there = ring.lubrication.viscosity_class, runs_in.lubrication.viscosity_class
            yield Pair(here, there, name=f"class of {ring.id}")
    oiled = _oiled(block, sheet)
    yield from _of_one_lubricator(block, oiled, sheet)
    own, others = _fed(oiled, sheet), _fed(_elsewhere(block, oiled, sheet), sheet)
    numbered = {one.partition(", feed ")[0] for one in (*own, *others) if ", feed " in one}
    for one, parts in own.items():
        if one in numbered:
            places = tuple(part.lubrication.feed.where for part in parts)
            wanted = Worked("a feed", says=f"a feed of the {one}, by its number")
            yield Pair(Worked("no feed", places), wanted, name=f"{one} alone")
            continue
        if _FEED.search(one):
            parts = [*parts, *others.get(one, ())]
        said = [sheet.read(f"feed of {part.id}", part.lubrication.feed) for part in parts]
        if not go_by_a_divider(said):
            places = tuple(part.lubrication.feed.where for part in parts)
            points = "one point" if len(parts) == 1 else " and ".join(part.id for part in parts)
            yield Pair(Worked(points, places), Worked("one point", says=f"one point for {one}"), name=one)


def _of_one_lubricator(block: CylinderBlock, oiled: Iterable[Component], sheet: Sheet) -> Iterator[Pair]:
    """The oil of all that one lubricator feeds, by its name before a comma: parts, and pairs of block and cam boxes."""
    fed: list[tuple[str, Word[str], dict[str, Any]]] = [
        (
            part.id,
            part.lubrication.feed,
            {"oil": part.lubrication.lubricant, "class": part.lubrication.viscosity_class},
        )
        for part in oiled
    ]
    lists: list[CylinderBlock | CamBox] = [block, *sheet.belonging_to(block, CamBox)]
    for one in lists:
        fed += [(f"{name} of {one.id}", pair.feed, {"oil": pair.oil}) for name, pair in one.pairs.items()]
    first: dict[tuple[str, str], Any] = {}
    for name, feed, oils in fed:
        if not sheet.is_stated(f"feed of {name}", feed):
            continue
        lubricator = lubricator_named(sheet.read(f"feed of {name}", feed))
        for what, stated in oils.items():
            if sheet.is_stated(f"{what} of {name}", stated):
                known = first.setdefault((what, lubricator), stated)
                if known is not stated:
                    yield Pair(stated, known, name=f"{what} of {name}, from {lubricator}")


def _fed(parts: Iterable[Component], sheet: Sheet) -> dict[str, list[Component]]:
    """The points of each feed."""
    fed: dict[str, list[Component]] = {}
    for part in parts:
        if sheet.is_stated(f"feed of {part.id}", part.lubrication.feed):
            for one in feeds_named(sheet.read(f"feed of {part.id}", part.lubrication.feed)):
                fed.setdefault(one, []).append(part)
    return fed


def _elsewhere(block: CylinderBlock, oiled: Iterable[Component], sheet: Sheet) -> Iterator[Component]:
    """All that oil is fed to on the other blocks of the engine, and none that is ``oiled`` on this one."""
    engine = engine_of(block, sheet)
    if engine is None:
        return
    known = {part.id for part in oiled}
    blocks = [
        sheet.follow(one.block) for one in engine.cranks.values() if sheet.is_stated("block", one.block)
    ]
    for other in {one.id: one for one in blocks if one.id != block.id}.values():
        yield from (part for part in _oiled(other, sheet) if part.id not in known)


def _oiled(block: CylinderBlock, sheet: Sheet) -> tuple[Component, ...]:
    """The block and all on it that oil is fed to, each once."""
    valves = [
        valve
        for seat in sheet.belonging_to(block, ValveSeat)
        for valve in sheet.belonging_to(seat, PoppetValve)
    ]
    spindles = [spindle for valve in valves for spindle in sheet.belonging_to(valve, ValveSpindle)]
    found: list[Component] = [block, *sheet.belonging_to(block, CylinderLiner), *spindles]
    rods = [rod for bore in block.bores for rod in rods_in(block, bore, sheet)]
    found += [*rods, *(box for rod in rods for box in sheet.belonging_to(rod, StuffingBox))]
    found += [*crossheads_of(block, sheet), *sheet.belonging_to(block, CamBox)]
    return tuple({part.id: part for part in found}.values())


def feeds_named(text: str) -> list[str]:
    """The feeds that a text names, each by itself; a text without a number names one.

    >>> feeds_named("mechanical lubricator, feeds 1 and 2, front end")
    ['mechanical lubricator, feed 1', 'mechanical lubricator, feed 2']
    >>> feeds_named("Mechanical lubricator, feeds no. 6 to 8")
    ['mechanical lubricator, feed 6', 'mechanical lubricator, feed 7', 'mechanical lubricator, feed 8']
    >>> feeds_named("Oil cup  on the gland")
    ['oil cup on the gland']
    """
    found = _FEEDS.match(text.strip())
    if found is None:
        return [" ".join(text.lower().split())]
    numbers = {int(one) for one in re.findall(r"[0-9]+", found["numbers"])}
    for first, last in _RANGE.findall(found["numbers"]):
        numbers |= set(range(int(first), min(int(last), int(first) + _MOST) + 1))
    return [f"{lubricator_named(text)}, feed {number}" for number in sorted(numbers)]


def lubricator_named(text: str) -> str:
    """The lubricator of which a text names feeds: what stands before them, or before a comma.

    >>> lubricator_named("Mechanical  lubricator feed 3"), lubricator_named("mechanical lubricator, rod feeds")
    ('mechanical lubricator', 'mechanical lubricator')
    """
    found = _FEEDS.match(text.strip())
    return " ".join((found["of"] if found else text.partition(",")[0]).lower().split())


def go_by_a_divider(said: Iterable[str]) -> bool:
    """Whether one of the points of a feed says that it goes by a divider, and none that it does not.

    >>> go_by_a_divider(["feed 3", "feeds no. 3 and 4, by a divider"]), go_by_a_divider(["feed 3", "feed 3"])
    (True, False)
    >>> go_by_a_divider(["feed 3, by a divider", "feed 3, no divider"])
    False
    """
    told = [text for text in said if _SHARED.search(text)]
    return bool(told) and not any(map(denies, told))


one_feed: Rule = agreement(
    "lubrication.one-feed",
    title="A ring has the oil of the liner in which it runs, all points of a lubricator one oil, and each point on "
    "an engine's cylinder blocks a feed of its own, by number where others have one, or a divider",
    on=CylinderBlock,
    pairs=_oils,
    within="",
    edition=6,
    grade=Grade.NONCONFORMITY,
    why="one film has one oil, and of two points on one feed the nearer takes it all",
    leaves_out="axleboxes, axles and the rest of the engine; oil cups and boxes of other blocks, which may be called "
    "alike; two lubricators, or two parts of one, that are called alike count as one; that a feed that no point names "
    "is blanked off",
)

RULES = (one_feed,)
