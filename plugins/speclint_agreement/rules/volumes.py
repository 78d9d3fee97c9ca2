"""The volume beside each end of a cylinder is that of the ports and passages that are drawn there."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import all_ports_drawn, volume_drawn
from speclint.specs import CylinderBlock
from speclint_agreement.formulae.ports import times


def _volumes(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The stated volume of each end against the ports that open there, area by length; no more than 1.5 times them.

    The upper bound only where as many ports are drawn as the block has there.
    """
    for name, end in block.ends.items():
        drawn = volume_drawn(block, name, sheet, sheet.take_nominal)
        if drawn is None:
            continue
        yield Pair(end.passage_volume, drawn, "at least", name=name)
        if all_ports_drawn(block, name, sheet):
            most = sheet.work("V_m", times, k=sheet.limit("most", "k_V"), V=drawn.value)
            yield Pair(end.passage_volume, Worked(most, drawn.places), "at most", name=name)


volume_of_passages: Rule = agreement(
    "cylinder.volume-of-passages",
    title="The volume of ports and passages at each end is that of the ports drawn there, and at most 1.5 times it",
    on=CylinderBlock,
    pairs=_volumes,
    within="",
    limits=[
        Limit("most", "1.5", "ratio", COMMON_PRACTICE, "stated volume over that of the ports that are drawn")
    ],
    grade=Grade.OBSERVATION,
    why="compression, and the steam that fills what is swept by no piston, are worked with this volume",
    leaves_out="pockets of valves and relief valves, for which a port may be exceeded; a port that names no end",
)

RULES = (volume_of_passages,)
