"""Openings that bars divide: the number and width of the bars against the openings that they leave."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.facts import opening_by_bars
from speclint.specs import CylinderLiner, ValveCage
from speclint_agreement.formulae.openings import (
    closed_diameter,
    mean_opening,
    opening_with_bar,
    uneven_opening,
)


def _of_cage(cage: ValveCage, sheet: Sheet) -> Iterator[Pair]:
    """The widest opening against that of bars that stand evenly; the circle that they close against the cage.

    Round the bore of the cage they leave the least, round its outside the most.
    """
    if not sheet.is_stated("bars", cage.bars):
        return
    n, w = float(sheet.count("n", cage.bars)), sheet.take("w", cage.bar)
    least = opening_by_bars(cage, sheet)
    if least is not None:
        yield Pair(cage.opening, least, "at least", name="widest opening")
    if sheet.is_stated("outside of the cage", cage.outside_diameter):
        yield from _round_outside(cage, n, w, sheet)


def _round_outside(cage: ValveCage, n: float, w: float, sheet: Sheet) -> Iterator[Pair]:
    """What n bars of a width leave round the outside of the cage, and whether there is room for them at all."""
    closed = worked(sheet.work("D_n", closed_diameter, n=n, w=w), cage.bars, cage.bar)
    yield Pair(closed, cage.outside_diameter, "at most", name="bars together")
    mean = sheet.work("b_o", mean_opening, D=sheet.take("D_o", cage.outside_diameter), n=n, w=w)
    if mean > 0:
        most = sheet.work("b_h", uneven_opening, k=sheet.limit("uneven", "k"), b_m=mean)
        places = cage.bars, cage.bar, cage.outside_diameter
        yield Pair(cage.opening, worked(most, *places), "at most", name="opening between bars")


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
    edition=3,
    grade=Grade.NONCONFORMITY,
    why="a piece of a broken valve falls through the openings that the bars leave, and steam passes by them, not by "
    "the one that is stated",
    leaves_out="wider bars than the narrowest; a cage that counts no bars (cage.holds-a-broken-valve asks for them); "
    "openings lower than they are wide, and bars that stand at more unlike distances, for which a concession says so",
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
