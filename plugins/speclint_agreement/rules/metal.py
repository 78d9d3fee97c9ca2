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

RULES = (follows_steam,)
