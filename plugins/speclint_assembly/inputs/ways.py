"""The way by which seat, valve and cage come to their place: the opening of the chamber, or cylinder and port."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Any

from speclint import Judgement, Sheet
from speclint.specs import ChamberCover, CylinderBlock, PoppetValve
from speclint_assembly.inputs.room import passes

if TYPE_CHECKING:
    from speclint.specs import BlockPort, Bore, SeatBore

#: A size of the block as it is when the part goes in: its symbol and its size at 20 °C to that when heated.
Hot = Callable[[str, float], float]


def as_drawn(_symbol: str, size: float) -> float:
    """A size of a block that is not heated."""
    return size


def other_bores(block: CylinderBlock, own: SeatBore, sheet: Sheet) -> dict[str, SeatBore]:
    """The seat bores of the same valve for its other beat, by name; none of a valve of one beat."""
    found = {}
    for name, bore in block.seat_bores.items():
        same = all(
            sheet.read(f"{word} of {name}", getattr(bore, word))
            == sheet.read(f"{word} of the bore", getattr(own, word))
            for word in ("end", "serves")
        )
        if same and sheet.read(f"beat of {name}", bore.beat) != sheet.read("beat of the bore", own.beat):
            found[name] = bore
    return found


def opening_of(bore: SeatBore, valves: Iterable[PoppetValve], sheet: Sheet) -> Any:
    """The opening of a chamber: as stated with the bore of the seat, else what the cover over a valve closes."""
    if sheet.is_stated("opening of the chamber", bore.opening):
        return bore.opening
    for valve in valves:
        for cover in sheet.belonging_to(valve, ChamberCover):
            if sheet.is_stated(f"bore closed by {cover.id}", cover.bore):
                return cover.bore
    return bore.opening


def through_the_opening(opening: Any, diameter: float, hot: Hot, sheet: Sheet) -> Judgement:
    """A part against the opening of the chamber."""
    return passes(
        hot("o", sheet.take("D_o", opening)), diameter, "o", "through the opening of the chamber", sheet
    )


def through_the_cylinder(
    block: CylinderBlock, bore: SeatBore, diameter: float, length: float, hot: Hot, sheet: Sheet
) -> Judgement:
    """A part against the bore of the block without its liner, and, on its edge, against each port of its end."""
    name, cylinder = _bore_of_end(block, bore, sheet)
    judged = [
        passes(
            hot("b", sheet.take(f"D_{name}", cylinder.diameter)),
            diameter,
            "b",
            "through the bore of the cylinder",
            sheet,
        )
    ]
    ports = _ports(block, bore, sheet)
    if not ports:
        raise sheet.not_assessed(f"{block.id} states no port that leads to this seat", block.where)
    for of, port in ports.items():
        high, wide = sheet.take(f"h {of}", port.height), sheet.take(f"w {of}", port.width)
        judged += [
            passes(hot(f"w {of}", max(high, wide)), diameter, f"w {of}", f"along the port {of}", sheet),
            passes(hot(f"h {of}", min(high, wide)), length, f"h {of}", f"across the port {of}", sheet),
        ]
    return sheet.worst(*judged)


def _bore_of_end(block: CylinderBlock, bore: SeatBore, sheet: Sheet) -> tuple[str, Bore]:
    end = sheet.entry(block.ends, bore.end, f"the ends of {block.id}")
    found = sheet.entry(block.bores, end.of_bore, f"the bores of {block.id}")
    return sheet.read("bore of the end", end.of_bore), found


def _ports(block: CylinderBlock, bore: SeatBore, sheet: Sheet) -> dict[str, BlockPort]:
    end, serves = sheet.read("end of the bore", bore.end), sheet.read("serves", bore.serves)
    return {
        name: port
        for name, port in block.ports.items()
        if sheet.read(f"end of port {name}", port.of_end) == end
        and (
            not sheet.is_stated(f"what port {name} serves", port.serves)
            or sheet.read(f"what port {name} serves", port.serves) == serves
        )
    }
