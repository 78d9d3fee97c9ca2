"""The volume beside each end of a cylinder is that of the ports and passages that are drawn there."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement
from speclint.specs import CylinderBlock, NotStated, Stated, SteamPassage
from speclint_agreement.formulae.ports import times, with_passage


def _volumes(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The stated volume of each end against the ports that open there, area by length; no more than 1.5 times them.

    The upper bound only where as many ports are drawn as the block has there.
    """
    ports = sheet.belonging_to(block, SteamPassage)
    for name, end in block.ends.items():
        drawn = [one for one in ports if _opens_at(one, name, sheet)]
        if not drawn:
            continue
        V = 0.0
        for number, port in enumerate(drawn, start=1):
            A, L = (
                sheet.take_nominal(f"A_{number}", port.area),
                sheet.take_nominal(f"L_{number}", port.length),
            )
            V = sheet.work("V", with_passage, V_0=V, A=A, L=L)
        places = tuple(one.where for port in drawn for one in (port.area, port.length))
        yield Pair(end.passage_volume, Worked(V, places), "at least", name=name)
        if len(drawn) >= sum(_is_of(port.of_end, name, sheet) for port in block.ports.values()) > 0:
            most = sheet.work("V_m", times, k=sheet.limit("most", "k_V"), V=V)
            yield Pair(end.passage_volume, Worked(most, places), "at most", name=name)


def _is_of(of_end: Stated[str] | NotStated, name: str, sheet: Sheet) -> bool:
    return sheet.is_stated("end of the port", of_end) and sheet.read("end of the port", of_end) == name


def _opens_at(passage: SteamPassage, end: str, sheet: Sheet) -> bool:
    """Whether a passage is a port of an end and states its size."""
    placed = sheet.is_stated(f"place of {passage.id}", passage.place)
    if not placed or sheet.read(f"place of {passage.id}", passage.place) != "port":
        return False
    sized = all(sheet.is_stated(f"size of {passage.id}", one) for one in (passage.area, passage.length))
    return sized and _is_of(passage.of_end, end, sheet)


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
