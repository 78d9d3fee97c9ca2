"""Piston, rod, crosshead, bars and pins: each in its place once."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.specs import (
    Crosshead,
    CylinderCover,
    Pin,
    Piston,
    PistonRing,
    PistonRod,
    SlideBar,
    StuffingBox,
)
from speclint_wholeness.inputs import covers_passed, entries, place

_DIRECTIONS = 2  # of the thrust, forwards and backwards: each has its bars


def _rods(piston: Piston, sheet: Sheet) -> Iterator[ToFill]:
    """The rods that carry the piston."""
    yield place(piston.id, piston, PistonRod, sheet, by="carries")


def _rings(piston: Piston, sheet: Sheet) -> Iterator[ToFill]:
    """For each groove the ring that it takes; each ring of the liner is in a groove of its piston."""
    yield from entries(piston, "grooves", sheet)
    taken: set[str] = set()
    for name, groove in piston.grooves.items():
        found: tuple[str, ...] = ()
        if sheet.is_stated(f"ring of groove {name}", groove.takes):
            ring = sheet.follow(groove.takes)
            taken.add(ring.id)
            found = (ring.id,)
        yield ToFill(f"groove {name}", PistonRing.called, found, where=groove.where)
    if piston.grooves and sheet.is_stated("liner", piston.runs_in):
        liner = sheet.follow(piston.runs_in)
        loose = [one for one in sheet.fillers(liner, PistonRing, by="runs_in") if one.id not in taken]
        if loose and len(sheet.fillers(liner, Piston, by="runs_in")) == 1:
            wrong = f"{loose[0].id} ({loose[0].where.file}) runs in {liner.id}, and no groove takes it"
            yield ToFill(f"grooves of {piston.id}", PistonRing.called, loose, most=0, wrong=wrong)


def _crossheads(rod: PistonRod, sheet: Sheet) -> Iterator[ToFill]:
    """The crossheads on the rod."""
    yield place(rod.id, rod, Crosshead, sheet, by="on_rod")


def _seals(rod: PistonRod, sheet: Sheet) -> Iterator[ToFill]:
    """The stuffing boxes that seal the rod, one in each cover of its own cylinder that it passes.

    A box that names no cover is one by itself.
    """
    by_cover: dict[str, StuffingBox] = {}
    wrong: list[str] = []
    for box in sheet.fillers(rod, StuffingBox, by="seals"):
        cover = sheet.follow(box.in_cover) if sheet.is_stated(f"cover of {box.id}", box.in_cover) else None
        by_cover.setdefault(cover.id if cover else box.id, box)
        wrong += _elsewhere(rod, box, cover, sheet)
    passed, elsewhere = covers_passed(rod, sheet), next(iter(wrong), "")
    yield ToFill(rod.id, StuffingBox.called, tuple(by_cover.values()), passed, passed, elsewhere, rod.where)


def _elsewhere(rod: PistonRod, box: StuffingBox, cover: CylinderCover | None, sheet: Sheet) -> Iterator[str]:
    """What is wrong with the cover that a box is in: its cylinder is another."""
    if cover is not None and sheet.is_stated(f"block of {cover.id}", cover.closes):
        block = sheet.follow(cover.closes).id
        for works_in in _blocks(rod, sheet):
            if block != works_in:
                yield f"{box.id} is in {cover.id} of {block}, and the rod works in {works_in}"


def _blocks(rod: PistonRod, sheet: Sheet) -> list[str]:
    """The block in which a rod works, by its piston and liner."""
    if not sheet.is_stated("piston", rod.carries):
        return []
    piston = sheet.follow(rod.carries)
    if not sheet.is_stated("liner", piston.runs_in):
        return []
    liner = sheet.follow(piston.runs_in)
    return (
        [sheet.follow(liner.housed_in).id] if sheet.is_stated("block of the liner", liner.housed_in) else []
    )


def _bars(crosshead: Crosshead, sheet: Sheet) -> Iterator[ToFill]:
    """The bars that guide the crosshead: as many as share the thrust in one direction, no more than in both.

    Where bars say different numbers, those of one number are the bars of one direction.
    """
    found = sheet.fillers(crosshead, SlideBar, by="guides")
    sharing: dict[int, list[SlideBar]] = {}
    for bar in found:
        if sheet.is_stated(f"bars sharing of {bar.id}", bar.bars_sharing):
            share = sheet.count("n", bar.bars_sharing, "bars that share the thrust")
            sharing.setdefault(share, []).append(bar)
    numbers = sorted(sharing) or [1]
    in_both = sum((numbers * _DIRECTIONS)[-_DIRECTIONS:])  # one number stands for both directions
    yield ToFill(crosshead.id, SlideBar.called, found, numbers[0], in_both, where=crosshead.where)
    for share, bars in sharing.items() if len(sharing) > 1 else ():
        name = f"{crosshead.id}, of bars with bars_sharing = {share},"
        yield ToFill(name, SlideBar.called, tuple(bars), share, share, where=crosshead.where)


def _pins(crosshead: Crosshead, sheet: Sheet) -> Iterator[ToFill]:
    """The crosshead pin and the crank pin that the crosshead moves."""
    found = sheet.fillers(crosshead, Pin, by="moved_by")
    for kind in ("crosshead pin", "crank pin"):
        pins = tuple(one for one in found if sheet.said(f"place of {one.id}", one.place) == kind)
        yield ToFill(crosshead.id, kind, pins, where=crosshead.where)


one_rod: Rule = filled_once(
    "piston.one-rod",
    title="One rod carries each piston",
    on=Piston,
    places=_rods,
    row=160,
    gravity="hold",
    why="two rods drawn for one piston leave open which thread holds it",
    leaves_out="a tail rod that is made in one with the piston rod",
)

one_ring: Rule = filled_once(
    "groove.one-ring",
    title="Each groove of a piston takes a ring, and each ring of its liner sits in a groove",
    on=Piston,
    places=_rings,
    row=170,
    gravity="part",
    why="an empty groove passes steam, and a ring that sits nowhere is ordered for nothing",
    leaves_out="the sizes of groove and ring; grooves alike that take rings of one spec",
)

one_crosshead: Rule = filled_once(
    "rod.one-crosshead",
    title="One crosshead is on each piston rod",
    on=PistonRod,
    places=_crossheads,
    row=180,
    gravity="hold",
    why="the thrust of the piston goes through a joint that nobody drew",
    leaves_out="the end of the rod in the crosshead",
)

sealed: Rule = filled_once(
    "rod.sealed-at-its-cover",
    title="A stuffing box seals each piston rod in each cover of its own cylinder that it passes: one, or two with a "
    "tail rod",
    on=PistonRod,
    places=_seals,
    row=190,
    gravity="hold",
    why="steam of the full pressure blows out along a rod that nothing seals",
    leaves_out="two boxes in one cover (cover.box-in-its-hole)",
    edition=4,
)

guided: Rule = filled_once(
    "crosshead.guided",
    title="As many slide bars guide each crosshead as share its thrust in one direction, and no more than in both",
    on=Crosshead,
    places=_bars,
    row=200,
    gravity="hold",
    why="an unguided crosshead bends the rod and throws it out",
    leaves_out="the side of the bars",
    edition=4,
)

pins: Rule = filled_once(
    "crosshead.its-pins",
    title="Each crosshead moves one crosshead pin and one crank pin",
    on=Crosshead,
    places=_pins,
    row=210,
    gravity="hold",
    why="a pin that breaks lets go of the connecting rod at speed",
    leaves_out="pins that do not say which of the two they are",
)

RULES = (guided, one_crosshead, one_ring, one_rod, pins, sealed)
