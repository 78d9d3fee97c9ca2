"""The greatest diameter of each end of a piston rod, and what it would have to pass."""

from __future__ import annotations

from speclint import Sheet
from speclint.specs import CylinderCover, Gland, Piston, PistonRod, RodSection, StuffingBox
from speclint_assembly.formulae.tables import over_the_thread

#: The ends of a rod as its sections name them.
PISTON_END, CROSSHEAD_END = "piston end", "crosshead end"


def forged_to(piston: Piston, sheet: Sheet) -> bool:
    """Whether a piston is forged in one with its rod."""
    return sheet.read("piston fastened by", piston.fastening.by) == "forged in one"


def sections_at(rod: PistonRod, end: str, sheet: Sheet) -> dict[str, RodSection]:
    """The sections of a rod at one end, by name."""
    return {
        name: section
        for name, section in rod.sections.items()
        if sheet.read(f"place of {name}", section.at) == end
    }


def over_section(name: str, section: RodSection, sheet: Sheet) -> float:
    """The greatest diameter at a section: over the crests of a thread, over the larger side of a shoulder.

    Whatever the section is called, the larger diameter that it states has to pass.
    """
    form = sheet.read(f"form of {name}", section.form)
    if form == "thread":
        designation = sheet.read(f"thread of {name}", section.thread)
        return sheet.look_up(f"D {name}", over_the_thread, designation=designation)
    if form == "shoulder" or sheet.is_stated(f"larger diameter at {name}", section.larger_diameter):
        return sheet.take(f"D {name}", section.larger_diameter)
    return sheet.take(f"D {name}", section.diameter)


def greatest_at(rod: PistonRod, end: str, sheet: Sheet) -> float:
    """The greatest diameter of one end of a rod, m."""
    found = [over_section(name, one, sheet) for name, one in sections_at(rod, end, sheet).items()]
    if not found:
        raise sheet.not_assessed(f"{rod.id} states no section at its {end}", rod.where)
    return max(found)


def in_halves(part: StuffingBox | Gland, sheet: Sheet) -> bool:
    """Whether a box or gland goes on round the rod; in one piece where it does not say so."""
    return sheet.said(f"{part.id} split", part.split) is True


def glands_on(box: StuffingBox, sheet: Sheet) -> tuple[Gland, ...]:
    """The glands that close a stuffing box, by the box or by its cover."""
    return sheet.belonging_to(box, Gland) or sheet.belonging_to(cover_of(box, sheet), Gland)


def cover_of(box: StuffingBox, sheet: Sheet) -> CylinderCover:
    """The cover that a box is in."""
    return sheet.follow(box.in_cover)


def ways_past(box: StuffingBox, sheet: Sheet) -> list[float]:
    """The bores, m, through which one end of the rod must go: of the cover, and of what is not in halves."""
    found = [sheet.take(f"D of {box.id}", cover_of(box, sheet).central_hole)]
    if not in_halves(box, sheet):
        found.append(sheet.take(f"d_n of {box.id}", box.neck_bush))
    glands = glands_on(box, sheet)
    if not glands or not all(in_halves(gland, sheet) for gland in glands):
        found.append(sheet.take(f"d_g of {box.id}", box.gland_bore))
    return found
