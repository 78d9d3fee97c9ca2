"""Lengths that one drawing states and other sizes give: of a gland on its box, of a spindle beyond its guide."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement, worked
from speclint.specs import BoltedJoint, Gland, ValveSpindle
from speclint_agreement.formulae.lengths import before_guide, beyond_guide, flange_with_nut


def _standing_out(gland: Gland, sheet: Sheet) -> Iterator[Pair]:
    """How far the gland is said to stand out, against its flange with the nuts of its studs on it."""
    if not sheet.is_stated("flange", gland.flange_thickness):
        return  # gland.flange asks for it
    for joint in sheet.belonging_to(gland, BoltedJoint):
        if sheet.is_stated(f"nuts of {joint.id}", joint.nut.engagement):
            t, m = sheet.take("t", gland.flange_thickness), sheet.take("m", joint.nut.engagement)
            least = sheet.work("e_g", flange_with_nut, t=t, m=m)
            parts = gland.flange_thickness, joint.nut.engagement
            yield Pair(gland.stands_out, worked(least, *parts), "at least", name=joint.id)


def _unsupported(spindle: ValveSpindle, sheet: Sheet) -> Iterator[Pair]:
    """The length in which a spindle may buckle, against what lies on either side of its guide.

    And the part of its length that belongs to the valve, against the height of that.
    """
    lengths = {"L": spindle.heated_length, "a": spindle.guide_from_seat, "L_g": spindle.guide_length}
    if all(sheet.is_stated(f"length {name}", length) for name, length in lengths.items()):
        taken = {name: sheet.take(name, length) for name, length in lengths.items()}
        least = sheet.work("L_f", beyond_guide, **taken)
        yield Pair(spindle.free_length, worked(least, *lengths.values()), "at least", name="to the gear")
    before = {"a": spindle.guide_from_seat, "L_v": spindle.valve_length}
    if all(sheet.is_stated(f"length {name}", length) for name, length in before.items()):
        least = sheet.work(
            "L_b", before_guide, **{name: sheet.take(name, one) for name, one in before.items()}
        )
        yield Pair(spindle.free_length, worked(least, *before.values()), "at least", name="to the valve")
    if sheet.is_stated("part of the valve", spindle.valve_length) and sheet.is_stated("valve", spindle.moves):
        valve = sheet.follow(spindle.moves)
        if sheet.is_stated(f"height of {valve.id}", valve.height):
            yield Pair(spindle.valve_length, valve.height, "at most", name="of the valve")


gland_stands_out: Rule = agreement(
    "gland.stands-out",
    title="A gland stands out from its box by no less than its flange and the nuts on it",
    on=Gland,
    pairs=_standing_out,
    within="",
    grade=Grade.NONCONFORMITY,
    edition=2,
    why="a chain that takes less than is there finds room for the crosshead where it strikes the nuts of the gland",
    leaves_out="washers, lock nuts, ends of the studs beyond the nuts, and a gland whose flange does not yet lie on "
    "its box",
    against=(),
)

spindle_beyond_guide: Rule = agreement(
    "spindle.free-length",
    title="The unsupported length of a spindle is no less than what lies between its guide and the gear or the valve, "
    "and no more of its length belongs to the valve than that is high",
    on=ValveSpindle,
    pairs=_unsupported,
    within="",
    grade=Grade.NONCONFORMITY,
    edition=3,
    why="a spindle judged against buckling by less than its length bends in the guide, and its valve stays open",
    leaves_out="a second guide, and what holds the end at the gear aside; how much less of its length than the whole "
    "height of the valve belongs to that",
    against=("break under load",),
)

RULES = (gland_stands_out, spindle_beyond_guide)
