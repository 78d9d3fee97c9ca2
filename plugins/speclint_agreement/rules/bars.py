"""A slide bar and the slipper that runs on it: width, and the length of the stroke."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.facts import half_of_slipper, reach_on_bar
from speclint.specs import SlideBar
from speclint_agreement.formulae.bars import width_that_bears


def _slippers(bar: SlideBar, sheet: Sheet) -> Iterator[Pair]:
    """The slipper's width within that of the bar; at either dead centre the slipper within its supports."""
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


takes_the_stroke: Rule = agreement(
    "slidebar.takes-the-stroke",
    title="The slipper is no wider than the slide bar between its rounded edges, and over the whole stroke it stays "
    "between the bar's supports",
    on=SlideBar,
    pairs=_slippers,
    within="",
    limits=[
        Limit("edges", "2 mm", "length", COMMON_PRACTICE, "what both rounded edges take off the bar's width")
    ],
    grade=Grade.NONCONFORMITY,
    why="a slipper that overhangs its bar wears a step, and one that runs off its end strikes the support",
    leaves_out="wear of the motion, the larger of two unequal slippers, and wings that guide the slipper sideways",
    against=("foul", "wear"),
)

RULES = (takes_the_stroke,)
