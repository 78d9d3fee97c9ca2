"""The block, its pads, and what fastens it to the frame state one face of each pad and one thrust."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import bores_on_frame, face_by_sides, fits_of_bolts, mass_left
from speclint.handbook.threads import ISO_273, clearance_hole
from speclint.specs import CylinderBlock, FrameFastening


def _areas(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The stated face of each pad against its sides, less the holes of the bolts of its fastening."""
    for name, pad in block.pads.items():
        by_sides = face_by_sides(block, name, sheet, sheet.take)
        if by_sides is not None:
            yield Pair(pad.area, by_sides, "at most", name=name)


def _bores(fastening: FrameFastening, sheet: Sheet) -> Iterator[Pair]:
    """The bore that a fastening names against all bores of the block that no pad on another frame takes."""
    block = sheet.follow(fastening.holds)
    on_frame = bores_on_frame(fastening, block, sheet)
    yield Pair(
        fastening.bore, Worked(" and ".join(on_frame), tuple(block.bores[name].where for name in on_frame))
    )


def _masses(fastening: FrameFastening, sheet: Sheet) -> Iterator[Pair]:
    """The stated mass against what is drawn on the block, less what the fastenings on its other frames state."""
    left = mass_left(fastening, sheet.follow(fastening.holds), sheet, sheet.take)
    if left is not None:
        yield Pair(fastening.carried_mass, left, "at least")


def _holes(fastening: FrameFastening, sheet: Sheet) -> Iterator[Pair]:
    """The basic size of the hole: of fitted bolts that of shank and fit, of others between those of the series.

    Only for metric threads are there such series.
    """
    if sheet.read("thrust taken by", fastening.thrust_taken_by) == "fitted bolts":
        yield Pair(fastening.fitted_diameter, fastening.hole, name="shank")
        for fit in fits_of_bolts(fastening, sheet):
            yield Pair(fastening.hole, sheet.dimension(fit.hole), name=fit.id)
        return
    thread = sheet.read("thread", fastening.thread)
    if thread.startswith("M"):
        hole = worked(sheet.take_nominal("d_h", fastening.hole), fastening.hole)
        fine = sheet.look_up("d_fine", clearance_hole, designation=thread, series="fine")
        coarse = sheet.look_up("d_coarse", clearance_hole, designation=thread, series="coarse")
        yield Pair(hole, worked(fine, fastening.thread), "at least", name="fine series")
        yield Pair(hole, worked(coarse, fastening.thread), "at most", name="coarse series")


area_of_sides: Rule = agreement(
    "pad.area-of-sides",
    title="The stated face of a pad is no larger than its sides leave beside the holes of its bolts",
    on=CylinderBlock,
    pairs=_areas,
    within="",
    grade=Grade.HOLD,
    why="a pad that is smaller than it was reckoned is crushed where the couple presses it on the frame",
    leaves_out="chamfers, grooves and other reliefs of the face, and the frame under it",
)

thrust_of_all: Rule = agreement(
    "frame.thrust-of-all",
    title="The bore whose thrust a fastening names is the only one of the block that comes on its frame",
    on=FrameFastening,
    pairs=_bores,
    within="",
    grade=Grade.HOLD,
    why="bolts chosen for the thrust of one cylinder slip under that of two",
    leaves_out="how two frames share the thrust of a bore between them",
)

mass_adds_up: Rule = agreement(
    "frame.mass-adds-up",
    title="The mass that a fastening carries is not less than the block as drawn with its liners, its covers and what "
    "its lifting plan adds, less what is carried on other frames",
    on=FrameFastening,
    pairs=_masses,
    within="",
    grade=Grade.HOLD,
    why="every shock of buffing pulls at the bolts with the mass that really hangs on them",
    leaves_out="valves, gear, pipes and lagging, and parts whose specs give neither a mass nor the sizes for one; "
    "weights of the plan that name no part, where the covers drawn are more than they: they may be those covers",
    edition=2,
)

bolt_fits_hole: Rule = agreement(
    "frame.bolt-fits-hole",
    title="A fitted bolt and its holes in pad and frame are of one basic size, and the hole of any other is not "
    "below the fine nor above the coarse series for its thread",
    cites=[ISO_273, COMMON_PRACTICE],
    on=FrameFastening,
    pairs=_holes,
    optional=False,
    grade=Grade.HOLD,
    why="a bolt that is loose in its hole takes no thrust before the block has moved; "
    "one in too small a hole does not enter",
    leaves_out="the play between the limits of bolt and hole (frame.block-slip), and holes of bolts "
    "that have no metric thread",
)

RULES = (area_of_sides, bolt_fits_hole, mass_adds_up, thrust_of_all)
