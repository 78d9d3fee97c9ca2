"""Bolts of a pad that slides: they stand still in the frame while the hot block moves past them."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Rule, Sheet, rule
from speclint.equations import Metres
from speclint.facts import fastenings_of_pad, locks_block
from speclint.handbook.fits import room_in_hole
from speclint.specs import HOT_CASES, FrameFastening, LoadCase, LocatingFace
from speclint_fits.formulae.pads import far_side, room_left
from speclint_fits.inputs.seating import Seated, growth_of, seated


@rule(
    "frame.bolts-let-it-grow",
    title="The bolts of a sliding pad have more room on one side in their holes than the hot block grows past its "
    "frame there",
    wrong="bolt of a sliding pad binds in its hole hot: {left} left",
    on=LocatingFace,
    cases=(*HOT_CASES, "water"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES],
    why="A bolt that stands against its hole holds the block fast where it is meant to slide: bolt, pad or frame gives "
    "way.",
    leaves_out="bolts of the pad that are farther from the fixed point than its middle, holes that are slotted or set "
    "off on purpose, how far a bolt leans, and whether the pad slides at all under the grip of its bolts",
    against=("break under load", "foul"),
    against_on={"cylinder-block": ("foul",)},
)
def bolts_let_it_grow(face: LocatingFace, case: LoadCase, sheet: Sheet) -> Judgement:
    """Half the difference of hole and shank, cold, less the growth of block over frame to the middle of the pad."""
    pad_in = seated(face, sheet)
    name = sheet.read("pad", face.pad)
    if locks_block(name, pad_in.pad, sheet):
        raise sheet.not_applicable("this pad locates the block; it does not slide")
    fastenings = fastenings_of_pad(pad_in.block, name, sheet)
    if not fastenings:
        raise sheet.not_assessed(f"no fastening of pad {name} of {pad_in.block.id} is stated", face.where)
    growth = _growth(pad_in, case, sheet)

    def judge(item: tuple[str, FrameFastening]) -> Judgement:
        _, one = item
        hole, shank = sheet.take(f"D of {one.id}", one.hole), sheet.take(f"d of {one.id}", one.shank)
        room = sheet.work("r", room_in_hole, D=hole, d=shank)
        return sheet.stays(sheet.work("r_h", room_left, r=room, g=growth), room, strictly=True)

    return sheet.each([(one.id, one) for one in fastenings], judge)


def _growth(pad_in: Seated, case: LoadCase, sheet: Sheet) -> Metres:
    """The growth of block over frame from the fixed point to the middle of the pad."""
    T_b = sheet.take("T_b", case.temperature_of(pad_in.block))
    T_f = sheet.take("T_f", case.temperature_of(pad_in.face))
    middle = sheet.work("L", far_side, a=sheet.take("a", pad_in.pad.at), w=0.0)
    return growth_of(middle, pad_in, (T_b, T_f), sheet)


RULES: tuple[Rule, ...] = (bolts_let_it_grow,)
