"""A fitting that is screwed into a cylinder block is no narrower than what is in it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.specs import CylinderBlock


def _hexagons(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The hexagon of the relief valves at each end against their seat, which lies inside of it."""
    for name, end in block.ends.items():
        if sheet.is_stated(f"seat of the relief valves of {name}", end.relief_seat_diameter):
            yield Pair(end.relief_fitting.across_flats, end.relief_seat_diameter, "at least", name=name)


round_its_seat: Rule = agreement(
    "fitting.round-its-seat",
    title="The hexagon of a relief valve is no narrower across its flats than the seat inside the valve",
    on=CylinderBlock,
    pairs=_hexagons,
    within="",
    grade=Grade.NONCONFORMITY,
    why="room for a tool that was found for a smaller fitting leaves a relief valve that nobody can take out and test",
    leaves_out="the wall and the thread round the seat; a valve whose seat is in the block, or that is screwed in by "
    "something narrower than its seat, for which a concession says so",
    against=(),
)

RULES = (round_its_seat,)
