"""The area of the port that a valve serves: of its passage, and of the openings of block and liner."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, SquareMetres, formula
from speclint.facts.cylinders import liners_of
from speclint.facts.seats import ends_of_valve
from speclint.facts.taking import Take
from speclint.rules import Sheet, Worked
from speclint.specs import BlockPort, CylinderBlock, PoppetValve, SteamPassage

if TYPE_CHECKING:
    from speclint.specs import LinerPort


@formula("A = A_0 + w h", cites=[FIRST_PRINCIPLES])
def with_opening(A_0: SquareMetres, w: Metres, h: Metres) -> SquareMetres:
    """Area of some openings and one more, right-angled.

    A = A_0 + w h

    ``A_0`` area of the others [m²]; ``w`` width along the arc, ``h`` height of the one more [m]. Returns [m²].

    >>> round(with_opening(A_0=0.0, w=0.400, h=0.040) * 1e6, 3)
    16000.0
    """
    return A_0 + w * h


def passages_of_port(valve: PoppetValve, sheet: Sheet) -> tuple[SteamPassage, ...]:
    """The passages that are the port of a valve and state their area."""
    return tuple(
        passage
        for passage in sheet.belonging_to(valve, SteamPassage)
        if sheet.said(f"place of {passage.id}", passage.place) == "port"
        and sheet.is_stated("area", passage.area)
    )


def openings_of_port(valve: PoppetValve, sheet: Sheet, take: Take) -> Iterator[tuple[str, Worked]]:
    """What block and liners each open to the port of a valve, m², by their ids."""
    ends = ends_of_valve(valve, sheet)
    if not ends:
        return
    block = sheet.follow(sheet.follow(valve.upper_beat.seat).pressed_into)
    ports = {name: port for name, port in block.ports.items() if _is_of(port, valve, ends[0].value, sheet)}
    if (of_block := _open(tuple(ports.values()), sheet, take)) is not None:
        yield block.id, of_block
    for liner_id, openings in _of_liners(block, set(ports), sheet):
        if (of_liner := _open(openings, sheet, take)) is not None:
            yield liner_id, of_liner


def areas_of_port(valve: PoppetValve, sheet: Sheet) -> tuple[SquareMetres, ...]:
    """The port that a valve serves, m²: as its drawing states it, and as passage, block and liner each give it."""
    return (
        sheet.take("A_port", valve.port_area),
        *(sheet.take(f"A of {one.id}", one.area) for one in passages_of_port(valve, sheet)),
        *(found.value for _, found in openings_of_port(valve, sheet, sheet.take)),
    )


def _is_of(port: BlockPort, valve: PoppetValve, end: str, sheet: Sheet) -> bool:
    """Whether a port is of an end of the cylinder, and serves a valve: one that says nothing serves every valve."""
    if (
        not sheet.is_stated("end of the port", port.of_end)
        or sheet.read("end of the port", port.of_end) != end
    ):
        return False
    both = sheet.is_stated("what the port serves", port.serves) and sheet.is_stated("serves", valve.serves)
    return not both or sheet.read("what the port serves", port.serves) == sheet.read("serves", valve.serves)


def _of_liners(
    block: CylinderBlock, names: set[str], sheet: Sheet
) -> Iterator[tuple[str, tuple[LinerPort, ...]]]:
    """The openings of each liner of a block that say they match some of its ports."""
    for bore in block.bores:
        for liner in liners_of(block, bore, sheet):
            yield (
                liner.id,
                tuple(
                    port
                    for port in liner.ports.values()
                    if (sheet.said("port of the block", port.matches) or "") in names
                ),
            )


def _open(ports: Sequence[BlockPort | LinerPort], sheet: Sheet, take: Take) -> Worked | None:
    """The area of some ports together; None where there is none, or one does not state its sizes."""
    sizes = [(port.width, port.height) for port in ports]
    if not sizes or not all(sheet.is_stated("size of a port", one) for pair in sizes for one in pair):
        return None
    A = 0.0
    for number, (width, height) in enumerate(sizes, start=1):
        w, h = take(f"w_{number}", width), take(f"h_{number}", height)
        A = sheet.work(f"A_{number}", with_opening, A_0=A, w=w, h=h)
    return Worked(A, tuple(one.where for pair in sizes for one in pair))
