"""Metal that steam washes is neither cooler than the coolest steam beside it nor hotter than the hottest."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.handbook.heat import tied_temperature
from speclint.specs import CylinderBlock, CylinderLiner, LoadCase, Partition, SteamPassage

#: Passages that hold neither live nor exhaust steam, and those that both wash by turns.
_OF_AIR, _OF_BOTH = "breathing way", "port"


def _washed(
    part: CylinderBlock | CylinderLiner | Partition | SteamPassage, case: LoadCase, sheet: Sheet
) -> Iterator[Pair]:
    """The coolest that the metal is stated to be against the coolest steam beside it, the hottest against live steam.

    A passage of live steam has that alone beside it; a port has both by turns, as cylinder, block and partition have.
    A passage of exhaust steam lies in a block that live steam heats. A block that is hotter than live steam is told by
    duty.metal-follows-steam.
    """
    metal = case.temperature_of(part)
    in_live = _in_live_steam_alone(part, sheet)
    if in_live is None or not sheet.is_stated("metal", metal):
        return
    cool, hot = sheet.take_limits("T", metal)
    beside = case.live_temperature if in_live else case.exhaust_temperature
    if sheet.is_stated("coolest steam", beside):
        coolest, _ = sheet.take_limits("T_s", beside)
        below = sheet.limit("cooler_live" if in_live else "cooler", "ΔT_c")
        least = sheet.work("T_c", tied_temperature, T_b=coolest, ΔT=-below)
        yield Pair(worked(cool, metal), worked(least, beside), "at least", name="cooler than its steam")
    if not isinstance(part, CylinderBlock) and sheet.is_stated("live steam", case.live_temperature):
        _, hottest = sheet.take_limits("T_l", case.live_temperature)
        most = sheet.work("T_h", tied_temperature, T_b=hottest, ΔT=sheet.limit("hotter", "ΔT_h"))
        live = worked(most, case.live_temperature)
        yield Pair(worked(hot, metal), live, "at most", name="hotter than live steam")


def _in_live_steam_alone(
    part: CylinderBlock | CylinderLiner | Partition | SteamPassage, sheet: Sheet
) -> bool | None:
    """Whether a part has live steam alone beside it; None of a passage that is for air."""
    if not isinstance(part, SteamPassage):
        return False
    place = sheet.said("place", part.place)
    if place == _OF_AIR:
        return None
    return place != _OF_BOTH and sheet.read("carries", part.carries) == "live steam"


between_steams: Rule = agreement(
    "duty.metal-between-steams",
    title="Running, a block, a liner, a partition and a passage of steam are not much cooler than the coolest steam "
    "that washes them, and all but the block no hotter than live steam",
    on=(CylinderBlock, CylinderLiner, Partition, SteamPassage),
    pairs=_washed,
    within="",
    cases=("running",),
    grade=Grade.HOLD,
    why="a wall stated at a tenth of its heat has the strength of cold plate and grows by nothing, and stress, fits "
    "and clearances are judged at a heat that it never has",
    leaves_out="starting, warming, drifting, standing and cooling, in which metal lags behind its steam; passages of "
    "air; where between its steams the metal lies, which areas and films decide",
    limits=[
        Limit(
            "cooler",
            "40 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what metal may be cooler than the exhaust steam beside it, by heat lost to frames and air",
            "not negative",
        ),
        Limit(
            "cooler_live",
            "120 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what the walls of a passage of live steam may be cooler than it, by heat given to the block",
            "not negative",
        ),
        Limit(
            "hotter",
            "5 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what metal may be hotter than live steam",
            "not negative",
        ),
    ],
)

RULES = (between_steams,)
