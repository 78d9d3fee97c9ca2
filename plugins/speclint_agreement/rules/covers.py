"""A cover and the end that it closes, and the box, gland and rod that go through it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, agreement, worked
from speclint.facts import (
    bore_named,
    bore_under,
    bore_under_cover,
    box_of,
    end_closed_by,
    liner_under,
    openings_at_end,
    packing_in,
    rod_in,
)
from speclint.handbook.fits import share_of_size
from speclint.specs import ChamberCover, CylinderBlock, CylinderCover, Gland, StuffingBox


def _ends(cover: CylinderCover | ChamberCover, sheet: Sheet) -> Iterator[Pair]:
    """Bore and side that the cover states, against the liner and the end of the block that it closes.

    Of a bore without a liner, which says so, against the bore of the block; over a chamber against the opening of the
    chamber through which its valve goes in.
    """
    if isinstance(cover, ChamberCover):
        chamber = bore_under_cover(cover, sheet)
        if chamber is not None:
            yield Pair(cover.bore, chamber.opening, name="bore")
        return
    if not sheet.follow(cover.closes).ends:
        return
    _, end = end_closed_by(cover, sheet)
    if sheet.is_stated("end that it names", cover.of_end):  # else it was found by its side
        yield Pair(cover.end, end.side, name="side")
    liner = liner_under(cover, sheet)
    if liner is not None:
        yield Pair(cover.bore, liner.bore, name="bore")
        return
    name = bore_under(cover, sheet)
    if name is not None and _is_unlined(name, sheet.follow(cover.closes), sheet):
        yield Pair(cover.bore, sheet.follow(cover.closes).bores[name].diameter, name="bore")


def _is_unlined(name: str, block: CylinderBlock, sheet: Sheet) -> bool:
    """Whether a bore says that no liner goes in."""
    lined = bore_named(block, name, sheet).lined
    return sheet.is_stated(f"liner of bore {name}", lined) and not sheet.read(f"bore {name} lined", lined)


def _holes(cover: CylinderCover, sheet: Sheet) -> Iterator[Pair]:
    """The hole of the cover against the outside of each box in it, or against the rod where the box states none."""
    for box in sheet.belonging_to(cover, StuffingBox):
        rod = rod_in(box, sheet)
        if sheet.is_stated(f"outside of {box.id}", box.outside_diameter):
            yield Pair(cover.central_hole, box.outside_diameter, "at least", name=box.id)
        elif rod is not None:
            yield Pair(cover.central_hole, rod.diameter, "at least", name=rod.id)


def _spigots(cover: CylinderCover, sheet: Sheet) -> Iterator[Pair]:
    """What the spigot is said to enter, against the opening at its end that is nearest above its size."""
    if not sheet.is_stated("spigot", cover.spigot_diameter) or not sheet.follow(cover.closes).ends:
        return
    spigot, openings = sheet.take_nominal("D_s", cover.spigot_diameter), openings_at_end(cover, sheet)
    sizes = {name: sheet.take_nominal(f"D of the {name}", size) for name, size in openings.items()}
    around = {name: size for name, size in sizes.items() if size >= spigot}
    if spigot > 0 and around:
        nearest = min(around, key=lambda name: around[name])
        yield Pair(
            cover.spigot_enters, worked(nearest, cover.spigot_diameter, openings[nearest]), name="spigot"
        )


def _faces(cover: CylinderCover, sheet: Sheet) -> Iterator[Pair]:
    """The outside of the cover against the shares of the block's face between which it may be."""
    if not sheet.follow(cover.closes).ends:
        return
    face = end_closed_by(cover, sheet)[1].face_diameter
    if sheet.is_stated("face of the block", face):
        D = sheet.take_nominal("D_f", face)
        low = sheet.work("D_l", share_of_size, k=sheet.limit("least", "k_l"), t=D)
        high = sheet.work("D_g", share_of_size, k=sheet.limit("greatest", "k_g"), t=D)
        yield Pair(cover.outside_diameter, worked(low, face), "at least", name="outside")
        yield Pair(cover.outside_diameter, worked(high, face), "at most", name="outside")


def _glands(gland: Gland, sheet: Sheet) -> Iterator[Pair]:
    """Rod, box and packing that the gland states, against the box that it closes and the rod in that box."""
    box = box_of(gland, sheet)
    if box is None:
        return
    rod, packing = rod_in(box, sheet), packing_in(box, sheet)
    if rod is not None:
        yield Pair(gland.rod, rod.diameter, name="rod")
    if sheet.is_stated("bore of the box", box.bore):
        yield Pair(gland.box, box.bore, name="box")
    if packing is not None:
        yield Pair(gland.packing, worked(packing, box.packing), name="packing")


def _tests(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The test pressure of the block against that of the duty's test, and of every cover, box and gland on it."""
    if not sheet.is_stated("test pressure of the block", block.test_pressure):
        return  # cylinder.test-pressure asks for it
    covers = sheet.belonging_to(block, CylinderCover)
    boxes = [box for cover in covers for box in sheet.belonging_to(cover, StuffingBox)]
    glands = [gland for part in (*covers, *boxes) for gland in sheet.belonging_to(part, Gland)]
    lids = sheet.belonging_to(block, ChamberCover)
    for part in (*covers, *lids, *boxes, *glands):
        yield Pair(part.test_pressure, block.test_pressure, name=part.id)
    if sheet.is_stated("duty", block.duty):
        case = sheet.follow(block.duty).cases.get("test")
        if case is not None:
            yield Pair(case.cylinder_pressure, block.test_pressure, name="duty")
            yield Pair(case.live_pressure, block.test_pressure, name="duty, live steam")


of_its_end: Rule = agreement(
    "cover.of-its-end",
    title="A cover states the bore and the side of the end that it closes; over a valve it states the bore of the "
    "opening of the chamber",
    on=(CylinderCover, ChamberCover),
    pairs=_ends,
    within="0.5 mm",
    grade=Grade.HOLD,
    why="the steam pushes on the bore that is there, and a cover drawn for another opening is made for another",
    leaves_out="a spigot of the cover; the cover of a chamber that names neither a seat bore nor a valve",
    edition=3,
)

hole_for_box: Rule = agreement(
    "cover.hole-for-box",
    title="The hole of a cover takes the stuffing box, or the rod, that goes through it",
    on=CylinderCover,
    pairs=_holes,
    within="",
    grade=Grade.HOLD,
    why="a cover judged without its hole is stronger than the one that is made",
    leaves_out="how the box is fitted, and a hole in which no box is drawn",
)

spigot_enters: Rule = agreement(
    "cover.spigot-of-its-opening",
    title="The spigot of a cover is said to enter the opening of its end that it fits most closely",
    on=CylinderCover,
    pairs=_spigots,
    grade=Grade.NONCONFORMITY,
    why="a spigot judged against a wider opening than the one that centres it does not enter when it is offered up",
    leaves_out="how closely it fits (cover.enters), and a spigot larger than every opening, of which that rule tells",
)

of_its_face: Rule = agreement(
    "cover.of-its-face",
    title="A cylinder cover is between 0.9 and 1.1 of the face of the block that it closes, on the diameter",
    on=CylinderCover,
    pairs=_faces,
    within="",
    limits=[
        Limit("least", "0.9", "ratio", COMMON_PRACTICE, "least outside of a cover over the face of its end"),
        Limit(
            "greatest",
            "1.1",
            "ratio",
            COMMON_PRACTICE,
            "greatest outside of a cover over the face of its end",
        ),
    ],
    grade=Grade.NONCONFORMITY,
    why="a cover smaller than its face was drawn for another end and leaves studs or joint without metal; one much "
    "larger stands out into what is beside the cylinder, and has its edge on nothing",
    leaves_out="room for studs and nuts (joint.room, joint.edge), and an end that states no face",
)

of_the_rod: Rule = agreement(
    "gland.of-the-rod",
    title="A gland states the rod, the bore and the packing of the box that it closes",
    on=Gland,
    pairs=_glands,
    grade=Grade.NONCONFORMITY,
    why="a gland bored for another rod drags on it, and its studs are judged for another ring of steam",
    leaves_out="the play round the rod (packing.gland)",
    against=("seize",),
)

tested_together: Rule = agreement(
    "cylinder.tested-together",
    title="Block, covers of its cylinders and chambers, boxes, glands and the duty's test case state one test pressure",
    on=CylinderBlock,
    pairs=_tests,
    within="0.01 bar",
    dimension="pressure",
    grade=Grade.HOLD,
    why="the gauge shows one pressure for all that is bolted together",
    leaves_out="parts tested by themselves before they are fitted",
    edition=2,
)

RULES = (hole_for_box, of_its_end, of_its_face, of_the_rod, spigot_enters, tested_together)
