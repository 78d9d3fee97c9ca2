"""A steam pipe that cools is no hotter than the block at its end, and no colder than the engine at rest."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.facts import blocks_at_ends, temperature_of_block
from speclint.handbook.heat import tied_temperature
from speclint.specs import LoadCase, SteamPipe


def _as_thin(pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """The hottest that the pipe is stated to be against its block's, the coolest against that of the cold engine."""
    metal = case.temperature_of(pipe)
    if not sheet.is_stated("metal", metal):
        return
    cool, hot = sheet.take_limits("T", metal)
    slack = sheet.limit("hotter", "ΔT_h")
    for _, _, block in blocks_at_ends(pipe, sheet):
        there = temperature_of_block(block, case, sheet)
        if sheet.is_stated(f"metal of {block.id}", there):
            _, hottest = sheet.take_limits("T_b", there)
            most = sheet.work("T_h", tied_temperature, T_b=hottest, ΔT=slack)
            yield Pair(worked(hot, metal), worked(most, there), "at most", name=f"hotter than {block.id}")
    duty = sheet.duty_of(pipe)
    if duty is None or "cold" not in duty.cases:
        return
    cold = duty.cases["cold"].temperature_of(pipe)
    if sheet.is_stated("metal of the cold engine", cold):
        coldest, _ = sheet.take_limits("T_0", cold)
        least = sheet.work("T_c", tied_temperature, T_b=coldest, ΔT=-sheet.limit("colder", "ΔT_c"))
        yield Pair(worked(cool, metal), worked(least, cold), "at least", name="colder than the cold engine")


pipe_cools_first: Rule = agreement(
    "duty.pipe-cools-first",
    title="Cooling, a steam pipe is no hotter than the block at its end, and no colder than the cold engine",
    on=SteamPipe,
    pairs=_as_thin,
    within="",
    cases=("cooling",),
    grade=Grade.NONCONFORMITY,
    why="its wall is a quarter of the block's and cools first; a pipe stated hotter hides how far its joint is drawn "
    "apart while the block is still hot",
    leaves_out="how fast each of them cools, which wind, lagging and the water that lies in them decide; a pipe that "
    "meets no block; a temperature that the duty does not state (pipe.flexibility)",
    limits=[
        Limit(
            "hotter",
            "5 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what a pipe that cools may be hotter than its block",
            "not negative",
        ),
        Limit(
            "colder",
            "5 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what a pipe that cools may be colder than the cold engine",
            "not negative",
        ),
    ],
)

RULES = (pipe_cools_first,)
