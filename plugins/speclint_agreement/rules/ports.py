"""A valve, its port in block and liner and the passage there state one area."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import ends_of_valve, liners_of
from speclint.specs import BlockPort, CylinderBlock, LinerPort, PoppetValve, SteamPassage
from speclint_agreement.formulae.ports import with_opening


def _areas(valve: PoppetValve, sheet: Sheet) -> Iterator[Pair]:
    """The area that the valve states against the passage of its port, and against the ports of block and liner."""
    for passage in sheet.belonging_to(valve, SteamPassage):
        placed = sheet.is_stated(f"place of {passage.id}", passage.place)
        is_port = placed and sheet.read(f"place of {passage.id}", passage.place) == "port"
        if is_port and sheet.is_stated("area", passage.area):
            yield Pair(valve.port_area, passage.area, name=passage.id)
    ends = ends_of_valve(valve, sheet)
    if not ends:
        return
    block = sheet.follow(sheet.follow(valve.upper_beat.seat).pressed_into)
    ports = {name: port for name, port in block.ports.items() if _is_of(port, valve, ends[0].value, sheet)}
    if (of_block := _open(tuple(ports.values()), sheet)) is not None:
        yield Pair(valve.port_area, of_block, "at most", name=block.id)
    for liner_id, openings in _of_liners(block, set(ports), sheet):
        if (of_liner := _open(openings, sheet)) is not None:
            yield Pair(valve.port_area, of_liner, "at most", name=liner_id)


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
                    if sheet.is_stated("port of the block", port.matches)
                    and sheet.read("port of the block", port.matches) in names
                ),
            )


def _open(ports: Sequence[BlockPort | LinerPort], sheet: Sheet) -> Worked | None:
    """The area of some ports together; None where there is none, or one does not state its sizes."""
    sizes = [(port.width, port.height) for port in ports]
    if not sizes or not all(sheet.is_stated("size of a port", one) for pair in sizes for one in pair):
        return None
    A = 0.0
    for number, (width, height) in enumerate(sizes, start=1):
        w, h = sheet.take_nominal(f"w_{number}", width), sheet.take_nominal(f"h_{number}", height)
        A = sheet.work(f"A_{number}", with_opening, A_0=A, w=w, h=h)
    return Worked(A, tuple(one.where for pair in sizes for one in pair))


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
