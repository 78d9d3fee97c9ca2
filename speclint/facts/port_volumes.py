"""The volume of ports and passages beside an end of a cylinder: as stated, within what is drawn there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, CubicMetres, Metres, SquareMetres, formula
from speclint.facts.taking import Take
from speclint.rules import Sheet, Worked
from speclint.specs import CylinderBlock, NotStated, Stated, SteamPassage

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd


#: The volume at an end over that of its ports, with the pockets of valves and relief valves, at most (common practice).
_WITH_POCKETS = 1.5


@formula("V = V_0 + A L", cites=[FIRST_PRINCIPLES])
def with_passage(V_0: CubicMetres, A: SquareMetres, L: Metres) -> CubicMetres:
    """Volume of some passages and one more.

    V = V_0 + A L

    ``V_0`` volume of the others [m³]; ``A`` section, ``L`` length of the one more [m², m]. Returns [m³].

    >>> round(with_passage(V_0=0.0, A=0.020, L=0.350) * 1e6, 3)
    7000.0
    """
    return V_0 + A * L


def ports_drawn(block: CylinderBlock, end: str, sheet: Sheet) -> tuple[SteamPassage, ...]:
    """The passages that are ports of an end of a block and state their size."""
    return tuple(one for one in sheet.belonging_to(block, SteamPassage) if _opens_at(one, end, sheet))


def all_ports_drawn(block: CylinderBlock, end: str, sheet: Sheet) -> bool:
    """Whether as many ports of an end are drawn as the block has there, and it has some."""
    stated = sum(_is_of(port.of_end, end, sheet) for port in block.ports.values())
    return len(ports_drawn(block, end, sheet)) >= stated > 0


def volume_drawn(block: CylinderBlock, end: str, sheet: Sheet, take: Take) -> Worked | None:
    """The volume of the ports that are drawn at an end, area by length, m³; None where none is."""
    drawn = ports_drawn(block, end, sheet)
    V = 0.0
    for number, port in enumerate(drawn, start=1):
        A, L = take(f"A_{number}", port.area), take(f"L_{number}", port.length)
        V = sheet.work("V", with_passage, V_0=V, A=A, L=L)
    return (
        Worked(V, tuple(one.where for port in drawn for one in (port.area, port.length))) if drawn else None
    )


def volume_of_passages(
    block: CylinderBlock, end: CylinderEnd, symbol: str, sheet: Sheet, take: Take | None = None
) -> CubicMetres:
    """The volume of ports and passages at an end, m³: as stated, and no less than that of the ports drawn there.

    Where all its ports are drawn, no more than 1.5 times theirs, and that of the ports where none is stated. Ports are
    taken as the drawing aims at them, and ``take`` is how the stated volume is taken: with its limits where none is
    given.
    """
    taken = take or sheet.take
    name = next(name for name, one in block.ends.items() if one is end)
    drawn = volume_drawn(block, name, sheet, sheet.take_nominal)
    if drawn is None:
        return taken(symbol, end.passage_volume)
    V: CubicMetres = drawn.value
    whole = all_ports_drawn(block, name, sheet)
    if whole and not sheet.is_stated("volume of passages", end.passage_volume):
        return V
    stated = max(taken(symbol, end.passage_volume), V)
    return min(stated, _WITH_POCKETS * V) if whole else stated


def _is_of(of_end: Stated[str] | NotStated, name: str, sheet: Sheet) -> bool:
    return sheet.said("end of the port", of_end) == name


def _opens_at(passage: SteamPassage, end: str, sheet: Sheet) -> bool:
    """Whether a passage is a port of an end and states its size."""
    placed = sheet.is_stated(f"place of {passage.id}", passage.place)
    if not placed or sheet.read(f"place of {passage.id}", passage.place) != "port":
        return False
    sized = all(sheet.is_stated(f"size of {passage.id}", one) for one in (passage.area, passage.length))
    return sized and _is_of(passage.of_end, end, sheet)
