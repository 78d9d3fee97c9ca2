"""A valve, its port in block and liner and the passage there state one area."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.facts import openings_of_port, passages_of_port
from speclint.specs import PoppetValve


def _areas(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """The area that the valve states against the passage of its port, and against the ports of block and liner."""
    for passage in passages_of_port(valve, sheet):
        yield Pair(valve.port_area, passage.area, name=passage.id)
    for part, opened in openings_of_port(valve, sheet, sheet.take_nominal):
        yield Pair(valve.port_area, opened, "at most", name=part)


one_area: Rule = agreement(
    "port.one-area",
    title="The area of the port that a valve states is that of its passage, and no more than block and liner open",
    on=PoppetValve,
    pairs=_areas,
    within="10 mm²",
    dimension="area",
    grade=Grade.NONCONFORMITY,
    why="the speed and the loss of the steam are worked for a port wider than the one that is cut",
    leaves_out="corners of the openings, and how far liner and block stand apart hot (liner.port-register)",
)

RULES = (one_area,)
