"""A slide bar and the slipper that runs on it: width, and the length of the stroke."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import (
    connecting_rod_of,
    ends_by_side,
    faces_apart,
    half_of_slipper,
    places_apart,
    reach_on_bar,
    stroke_of,
)
from speclint.specs import Crosshead, SlideBar
from speclint_agreement.formulae.bars import crank_to_cylinder, pin_to_cylinder, width_that_bears


def _slippers(bar: SlideBar, sheet: Sheet) -> Iterator[Pair]:
    """The slipper's width within that of the bar; at either dead centre the slipper within its supports.

    These stand between the cylinder and the circle of the crank pin.
    """
    if not sheet.is_stated("crosshead on the bar", bar.guides):
        return
    crosshead = sheet.follow(bar.guides)
    if sheet.is_stated("width of the bar", bar.width):
        most = sheet.work(
            "b", width_that_bears, b_0=sheet.take("b_0", bar.width), e=sheet.limit("edges", "e")
        )
        yield Pair(crosshead.slipper_width, worked(most, bar.width), "at most", name="width")
    if not sheet.is_stated("length of the slipper", crosshead.slipper_length):
        return
    half = sheet.work("L_2", half_of_slipper, L=sheet.take("L", crosshead.slipper_length))
    yield Pair(bar.crosshead_from_end, worked(half, crosshead.slipper_length), "at least", name="front")
    needed = reach_on_bar(bar, sheet)
    if needed is not None:
        yield Pair(bar.span, needed, "at least", name="back")
    yield from _between(bar, crosshead, sheet)


def _between(bar: SlideBar, crosshead: Crosshead, sheet: Sheet) -> Iterator[Pair]:
    """The front support is behind the cylinder, the back one ahead of the crank pin; none where a size is wanting."""
    liner = sheet.follow(sheet.follow(sheet.follow(crosshead.on_rod).carries).runs_in)
    block = sheet.follow(liner.housed_in)
    ends = ends_by_side(block, sheet.said("bore of the liner", liner.in_bore) or "", sheet)
    faces = places_apart((ends["front"], ends["back"]), sheet) if len(ends) == 2 else None
    stroke, rod = stroke_of(block, sheet, liner.in_bore), connecting_rod_of(block, sheet, liner.in_bore)
    sizes = {"length of the rod": block.drive.rod_length, "stroke": stroke, "connecting rod": rod}
    if faces is None or not all(sheet.is_stated(name, one) for name, one in sizes.items()):
        return
    X_f = faces_apart(faces, sheet, sheet.take)
    L, S = sheet.take("L_r", block.drive.rod_length), sheet.take("S", stroke)
    x_m = sheet.work("x_m", pin_to_cylinder, L=L, S=S, X_f=X_f)
    places = worked(x_m, block.drive.rod_length, stroke, *faces)
    yield Pair(bar.crosshead_from_end, places, "at most", name="front support")
    l_m = sheet.work("l_m", crank_to_cylinder, x_m=x_m, l=sheet.take("l_r", rod))
    yield Pair(bar.span, Worked(l_m, (*places.places, *worked(l_m, rod).places)), "at most", name="length")


takes_the_stroke: Rule = agreement(
    "slidebar.takes-the-stroke",
    title="The slipper is no wider than the slide bar between its rounded edges, and over the whole stroke it stays "
    "between the bar's supports, which stand between cylinder and crank",
    on=SlideBar,
    pairs=_slippers,
    within="",
    limits=[
        Limit("edges", "2 mm", "length", COMMON_PRACTICE, "what both rounded edges take off the bar's width")
    ],
    grade=Grade.NONCONFORMITY,
    why="a slipper that overhangs its bar wears a step, and one that runs off its end strikes the support",
    leaves_out="wear of the motion, the larger of two unequal slippers, wings that guide the slipper sideways, "
    "and where the supports stand if rods or faces of the cylinder are not stated",
    edition=2,
    against=("foul", "wear"),
)

RULES = (takes_the_stroke,)
