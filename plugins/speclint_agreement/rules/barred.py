"""Openings that bars divide: the number and width of the bars against the openings that they leave."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.specs import CylinderLiner, ValveCage
from speclint_agreement.formulae.openings import (
    closed_diameter,
    mean_opening,
    opening_with_bar,
    straight_opening,
    uneven_opening,
)

if TYPE_CHECKING:
    from speclint.specs import Length, PoppetValve


def _of_cage(cage: ValveCage, sheet: Sheet) -> Iterator[Pair]:
    """The widest opening against that of bars that stand evenly; the circle that they close against the cage.

    The bars stand no nearer than the bore that the valve states round it, or than the valve itself where it states
    none, so that what they would leave there is the least that they leave; round the outside it is the most.
    """
    if not sheet.is_stated("bars", cage.bars) or not sheet.is_stated("width of a bar", cage.bar):
        return
    n, w = float(sheet.count("n", cage.bars)), sheet.take("w", cage.bar)
    if sheet.is_stated("valve", cage.surrounds):
        inside = _inside(sheet.follow(cage.surrounds), sheet)
        least = sheet.work("b_s", straight_opening, D=sheet.take("D", inside), n=n, w=w)
        yield Pair(
            cage.opening, worked(least, cage.bars, cage.bar, inside), "at least", name="widest opening"
        )
    if sheet.is_stated("outside of the cage", cage.outside_diameter):
        closed = worked(sheet.work("D_n", closed_diameter, n=n, w=w), cage.bars, cage.bar)
        yield Pair(closed, cage.outside_diameter, "at most", name="bars together")
        mean = sheet.work("b_o", mean_opening, D=sheet.take("D_o", cage.outside_diameter), n=n, w=w)
        if mean > 0:
            most = sheet.work("b_h", uneven_opening, k=sheet.limit("uneven", "k"), b_m=mean)
            places = cage.bars, cage.bar, cage.outside_diameter
            yield Pair(cage.opening, worked(most, *places), "at most", name="opening between bars")


def _inside(valve: PoppetValve, sheet: Sheet) -> Length:
    """The bore of the cage round a valve, where it states one and is held by it, else the valve's own outside."""
    caged = sheet.said("retained", valve.retained) == "cage"
    stated = caged and sheet.is_stated("bore round the valve", valve.box_diameter)
    return valve.box_diameter if stated else valve.outside_diameter


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
    title="The widest opening of a cage is no narrower than its bars, evenly spaced, leave round its bore, and at most "
    "twice what they leave round its outside, where they have room",
    on=ValveCage,
    pairs=_of_cage,
    within="",
    limits=[
        Limit(
            "uneven",
            "2",
            "ratio",
            COMMON_PRACTICE,
            "widest opening between bars over the mean round the outside",
        ),
    ],
    edition=2,
    grade=Grade.NONCONFORMITY,
    why="a piece of a broken valve falls through the openings that the bars leave, and steam passes by them, not by "
    "the one that is stated",
    leaves_out="bars of several widths; a cage that does not state how wide they are; openings lower than they are "
    "wide, and bars that stand at more unlike distances, for which a concession says so",
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
