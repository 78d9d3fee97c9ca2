"""The panel of a flat wall against the passage that it bounds."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.equations import Ratio
from speclint.handbook.fits import share_of_size
from speclint.specs import FlatWall, Length, LinkTo, SteamPassage, Weldment
from speclint_agreement.formulae.panels import panel_across, shortest_leg

#: The shortest leg of a bent passage over the mean of its legs (common practice).
_LEAST_LEG = 0.5


def _panels(weldment: Weldment, sheet: Sheet) -> Iterator[Pair]:
    """The shorter side of each flat wall without ribs against the passage that it names on either side.

    The lesser of the width of that, by its section and its depth there, between its bridges, and of its shortest leg.
    """
    for name, wall in weldment.walls.items():
        if sheet.said(f"{name} has ribs", wall.ribbed) is True:
            continue
        for link, depth in ((wall.one_passage, wall.one_depth), (wall.other_passage, wall.other_depth)):
            yield from _beside(name, wall, link, depth, sheet)


def _beside(
    name: str, wall: FlatWall, link: LinkTo[SteamPassage], depth: Length, sheet: Sheet
) -> Iterator[Pair]:
    if not (
        sheet.is_stated(f"passage beside {name}", link) and sheet.is_stated(f"width of {name}", wall.short)
    ):
        return
    passage = sheet.follow(link)
    sizes = (passage.area, passage.length, depth)
    silent = [one for one in sizes if not sheet.is_stated(f"sizes beside {name}", one)]
    if silent:
        yield Pair(wall.short, silent[0], "at least", name=f"{name}, {passage.id}")
        return
    A, h = sheet.take_nominal("A", passage.area), sheet.take_nominal("h", depth)
    b = sheet.work("b", panel_across, A=A, h=h, n=_bridges(wall, sheet))
    n, L = _bends(passage, sheet), sheet.take_nominal("L", passage.length)
    leg = sheet.work("l", shortest_leg, k=_LEAST_LEG if n else 1.0, L=L, n=n)
    least = sheet.work("b_l", share_of_size, k=sheet.limit("share", "k"), t=min(b, leg))
    there = (passage.area, depth) if b <= leg else (passage.length,)
    short = sheet.take_nominal(f"a of {name}", wall.short)
    yield Pair(worked(short, wall.short), worked(least, *there), "at least", name=f"{name}, {passage.id}")


def _bridges(wall: FlatWall, sheet: Sheet) -> Ratio:
    return float(sheet.count("n_b", wall.bridges)) if sheet.is_stated("bridges", wall.bridges) else 0.0


def _bends(passage: SteamPassage, sheet: Sheet) -> Ratio:
    stated = [
        one for one in (passage.bends, passage.mitres) if sheet.is_stated(f"bends of {passage.id}", one)
    ]
    return float(sum(sheet.count(f"n_{number}", one) for number, one in enumerate(stated, start=1)))


of_passage: Rule = agreement(
    "wall.panel-of-its-passage",
    title="A flat wall without ribs is no narrower than the passage that it bounds, between the bridges of that",
    on=Weldment,
    pairs=_panels,
    within="",
    limits=[
        Limit(
            "share",
            "90 %",
            "ratio",
            COMMON_PRACTICE,
            "least side of a panel over that of its passage, whose corners are round",
        )
    ],
    grade=Grade.HOLD,
    why="the stress of a flat wall goes with the square of its width: one that is drawn half as wide as it is built "
    "bears a quarter of what it must",
    leaves_out="a wall that names no passage; one with ribs (wall.ribs-of-its-panel); the pull in the "
    "bridges, and whether they stand as far apart as each other",
)

RULES = (of_passage,)
