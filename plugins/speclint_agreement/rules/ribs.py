"""The ribs of a flat wall and the panel that is left between them are of one size."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.handbook.fits import share_of_size
from speclint.specs import Weldment
from speclint_agreement.formulae.panels import clear_between


def _ribs(weldment: Weldment, sheet: Sheet) -> Iterator[Pair]:
    """The spacing of ribs against the side of the panel across them, their span against its side along them.

    Ribs run along the longer side, unless they are as far apart as that. The panel is no narrower than they leave
    between them.
    """
    for name, wall in weldment.walls.items():
        ribs = wall.ribs
        stated = (
            sheet.is_stated(f"shorter side of {name}", wall.short),
            sheet.is_stated(f"longer side of {name}", wall.long),
            sheet.is_stated(f"spacing of the ribs of {name}", ribs.spacing),
            sheet.is_stated(f"span of the ribs of {name}", ribs.span),
        )
        if not all(stated):
            continue
        k = sheet.limit("share", "k")
        short = sheet.work("a_l", share_of_size, k=k, t=sheet.take_nominal(f"a of {name}", wall.short))
        long = sheet.work("b_l", share_of_size, k=k, t=sheet.take_nominal(f"b of {name}", wall.long))
        s, L = sheet.take_nominal("s", ribs.spacing), sheet.take_nominal("L", ribs.span)
        yield Pair(worked(s, ribs.spacing), worked(short, wall.short), "at least", name=f"spacing, {name}")
        along = worked(short, wall.short) if s >= long else worked(long, wall.long)
        yield Pair(worked(L, ribs.span), along, "at least", name=f"span, {name}")
        if sheet.is_stated(f"thickness of the ribs of {name}", ribs.thickness):
            across = wall.long if s >= long else wall.short
            between = sheet.work("s_0", clear_between, s=s, t=sheet.take_nominal("t", ribs.thickness))
            least = sheet.work("s_l", share_of_size, k=k, t=between)
            panel = worked(sheet.take_nominal("c", across), across)
            yield Pair(panel, worked(least, ribs.spacing, ribs.thickness), "at least", name=f"panel, {name}")


of_panel: Rule = agreement(
    "wall.ribs-of-its-panel",
    title="The ribs of a flat wall are as far apart as the panel between them is wide, and span its length",
    on=Weldment,
    pairs=_ribs,
    within="",
    limits=[
        Limit(
            "share",
            "95 %",
            "ratio",
            COMMON_PRACTICE,
            "least of spacing and span over the panel, or of the panel over the room between ribs, as some measure "
            "between centres",
        )
    ],
    grade=Grade.HOLD,
    why="a rib that is reckoned shorter than its wall, or with less of it to carry, bends the more where it is built",
    leaves_out="a wall that does not state all four sizes; ribs of one wall that are not alike; a panel narrower than "
    "ribs leave that state no thickness",
    edition=2,
)

RULES = (of_panel,)
