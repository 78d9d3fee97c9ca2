"""Openings that bars divide: the number and width of the bars against the openings that they leave."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement, worked
from speclint.specs import CylinderLiner, ValveCage
from speclint_agreement.formulae.openings import closed_diameter, mean_opening, opening_with_bar


def _of_cage(cage: ValveCage, sheet: Sheet) -> Iterator[Pair]:
    """The widest opening against what the bars leave on average; the circle that they close against the cage.

    The bars stand no nearer than the valve, so that what they would leave round that is the least that they leave.
    """
    if not sheet.is_stated("bars", cage.bars) or not sheet.is_stated("width of a bar", cage.bar):
        return
    n, w = float(sheet.count("n", cage.bars)), sheet.take("w", cage.bar)
    if sheet.is_stated("valve", cage.surrounds):
        valve = sheet.follow(cage.surrounds)
        D = sheet.take("D", valve.outside_diameter)
        least = sheet.work("b_m", mean_opening, D=D, n=n, w=w)
        yield Pair(
            cage.opening,
            worked(least, cage.bars, cage.bar, valve.outside_diameter),
            "at least",
            name="widest opening",
        )
    if sheet.is_stated("outside of the cage", cage.outside_diameter):
        closed = worked(sheet.work("D_n", closed_diameter, n=n, w=w), cage.bars, cage.bar)
        yield Pair(closed, cage.outside_diameter, "at most", name="bars together")


def _of_ports(liner: CylinderLiner, sheet: Sheet) -> Iterator[Pair]:
    """The widest opening of each port and a bar beside it against the width of the port."""
    for name, port in liner.ports.items():
        sizes = {"opening": port.opening, "bar": port.bar, "width": port.width}
        if all(sheet.is_stated(f"{word} of port {name}", size) for word, size in sizes.items()):
            b, w = sheet.take(f"b {name}", port.opening), sheet.take(f"w {name}", port.bar)
            both = sheet.work(f"b_w {name}", opening_with_bar, b=b, w=w)
            yield Pair(worked(both, port.opening, port.bar), port.width, "at most", name=name)


opening_of_bars: Rule = agreement(
    "cage.opening-of-its-bars",
    title="The widest opening of a cage is no narrower than its bars leave between them, and they have room round it",
    on=ValveCage,
    pairs=_of_cage,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a piece of a broken valve falls through the openings that the bars leave, not through the one that is stated",
    leaves_out="bars of several widths; a cage that does not state how wide they are; openings lower than they are "
    "wide, for which a concession says so",
    against=(),
)

port_divided: Rule = agreement(
    "liner.port-divided",
    title="The widest opening of a barred port and one bar lie within the width of the port",
    on=CylinderLiner,
    pairs=_of_ports,
    within="",
    grade=Grade.NONCONFORMITY,
    why="rings and steam are judged by bars for which the port has no room",
    leaves_out="how many bars there are, and the openings beside the widest",
    against=(),
)

RULES = (opening_of_bars, port_divided)
