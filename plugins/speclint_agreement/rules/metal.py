"""The metal of a part that stands in steam is about as hot as that steam."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.facts import steam_carried
from speclint.handbook.heat import tied_temperature
from speclint.specs import (
    BoltedJoint,
    ChamberCover,
    Component,
    CylinderBlock,
    CylinderCover,
    LensJoint,
    LoadCase,
    PipeFlange,
    Piston,
    PistonRing,
    PoppetValve,
    SteamPipe,
)


def _followed(part: Component, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The hottest that the metal is stated to be against the hottest that its steam is, within the limits.

    Of pipes, lens rings, inlet valves and the bolts round a lens ring or flange of a live steam pipe to both sides; of
    block, covers and other joints only that they are no hotter than live steam.
    """
    metal = case.temperature_of(part)
    live = _in_live_steam(part, sheet)
    steam = case.exhaust_temperature if live is False else case.live_temperature
    if not (sheet.is_stated("metal", metal) and sheet.is_stated("steam", steam)):
        return
    _, hot = sheet.take_limits("T", metal)
    _, hottest = sheet.take_limits("T_s", steam)
    above = sheet.limit("hotter", "ΔT_h") if live is not None else 0.0
    most = sheet.work("T_h", tied_temperature, T_b=hottest, ΔT=above)
    yield Pair(worked(hot, metal), worked(most, steam), "at most", name="hotter than its steam")
    bolts = isinstance(part, BoltedJoint) and _round_live_steam(part, sheet)
    if live is not None or bolts:
        inside = "cooler" if part.is_one_of(("steam-pipe",)) else "cooler_inside"
        name = "cooler_bolts" if bolts else inside
        below = sheet.limit(name, "ΔT_c")
        least = sheet.work("T_c", tied_temperature, T_b=hottest, ΔT=-below)
        yield Pair(worked(hot, metal), worked(least, steam), "at least", name="cooler than its steam")


def _beside_liner(part: Piston | PistonRing, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The coolest and the hottest that a piston or a ring is stated to be, each against that of its liner."""
    if not sheet.is_stated("liner", part.runs_in):
        return
    liner = sheet.follow(part.runs_in)
    here, there = case.temperature_of(part), case.temperature_of(liner)
    if not (sheet.is_stated("metal", here) and sheet.is_stated(f"metal of {liner.id}", there)):
        return
    below = sheet.limit("cooler", "ΔT_c")
    ends = zip(
        ("coolest", "hottest"), sheet.take_limits("T", here), sheet.take_limits("T_l", there), strict=True
    )
    for name, own, other in ends:
        least = sheet.work("T_c", tied_temperature, T_b=other, ΔT=-below)
        yield Pair(worked(own, here), worked(least, there), "at least", name=name)


def _in_live_steam(part: Component, sheet: Sheet) -> bool | None:
    """Whether a part stands in live steam, or in exhaust; None for a wall, which is only no hotter than live steam."""
    if isinstance(part, LensJoint):
        part = sheet.follow(part.of)
    if isinstance(part, SteamPipe):
        return bool(steam_carried(part, sheet).value == "live steam")
    if isinstance(part, PoppetValve):
        return sheet.read("serves", part.serves) == "inlet" or None
    return None


def _round_live_steam(joint: BoltedJoint, sheet: Sheet) -> bool:
    """Whether a joint holds a lens ring or a flange of a pipe that carries live steam."""
    if not sheet.is_stated("what the joint holds", joint.holds):
        return False
    held = sheet.follow(joint.holds)
    if not isinstance(held, LensJoint | PipeFlange) or not sheet.is_stated(f"pipe of {held.id}", held.of):
        return False
    pipe = sheet.follow(held.of)
    return isinstance(pipe, SteamPipe) and steam_carried(pipe, sheet).value == "live steam"


follows_steam: Rule = agreement(
    "duty.metal-follows-steam",
    title="Running, a pipe, a lens ring, an inlet valve or the bolts of a live steam pipe are about as hot as its "
    "steam, and no block, cover or joint is hotter than live steam",
    on=(SteamPipe, LensJoint, PoppetValve, CylinderBlock, CylinderCover, ChamberCover, BoltedJoint),
    pairs=_followed,
    within="",
    cases=("running",),
    grade=Grade.HOLD,
    why="superheat is raised by one line of the duty, and every fit and wall goes on being judged at the old heat",
    leaves_out="parts whose temperature or steam the duty does not state, and cases in which the steam cools faster "
    "than the metal",
    limits=[
        Limit(
            "hotter",
            "5 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what metal may be hotter than its steam",
        ),
        Limit(
            "cooler",
            "30 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what a pipe may be cooler than its steam",
        ),
        Limit(
            "cooler_inside",
            "60 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what a lens ring or an inlet valve may be cooler than its steam",
        ),
        Limit(
            "cooler_bolts",
            "80 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what the bolts round a lens ring or flange may be cooler than the live steam in it",
        ),
    ],
    edition=3,
)

beside_its_liner: Rule = agreement(
    "duty.piston-follows-liner",
    title="Starting, running and drifting, a piston and its rings are no cooler than the liner in which they run",
    on=(Piston, PistonRing),
    pairs=_beside_liner,
    within="",
    cases=("starting", "running", "drifting"),
    grade=Grade.HOLD,
    why="a piston has steam on both sides and loses heat through its rod alone; stated cooler than its liner it has "
    "room on paper, and seizes",
    leaves_out="warming and cooling, in which the thinner part goes first, parts whose temperature the duty does not "
    "state, and a piston without a liner",
    limits=[
        Limit(
            "cooler",
            "10 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what a piston or a ring may be cooler than its liner",
        ),
    ],
    against=("seize",),
)

RULES = (beside_its_liner, follows_steam)
