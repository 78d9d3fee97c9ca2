"""Rings: irons that run together, and overrun of the end rings past the working bore."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.fits import DRAWING_TEMPERATURE, size_when_hot
from speclint.specs import CylinderBlock, CylinderEnd, CylinderLiner, LoadCase, PistonRing
from speclint_liners.formulae.ends import (
    beyond_working_bore,
    clearance_left,
    half_width,
    hardness_apart,
    ring_overrun,
)
from speclint_liners.inputs.cylinders import end_of
from speclint_liners.inputs.travel import hot_clearance, stretch
from speclint_liners.sources import MARINE_LINERS


@rule(
    "liner.ring-overrun",
    title="The end rings overrun the working bore by at least the least overrun and by no more than half "
    "their width",
    on=PistonRing,
    cases=("running", "drifting"),
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A ring that stops short leaves a wear ridge that breaks the next new ring; one that overruns too "
    "far springs out.",
    leaves_out="wear at the ends of the bore; chamfers there",
    limits=[Limit("least", "1.5 mm", "length", COMMON_PRACTICE, "least overrun")],
)
def overrun(ring: PistonRing, case: LoadCase, sheet: Sheet) -> Judgement:
    """Overrun at the ring's dead centre, hot: least and greatest, with wear either way and stretch at speed."""
    place = sheet.read("place", ring.place)
    if place == "middle":
        raise sheet.not_applicable("only the end rings run past the working bore")
    liner = sheet.follow(ring.runs_in)
    block = sheet.follow(liner.housed_in)
    end = end_of(block, liner, place, sheet)
    free = _beyond(liner, block, end, case, sheet)
    _, hot = hot_clearance(block, end, case, sheet)
    edge = sheet.take("e", ring.edge_from_piston_face)
    worn, pulled = sheet.take("w", block.drive.wear), stretch(block, case, sheet)
    near = sheet.work("c_near", clearance_left, c_h=hot, u=pulled, w=worn)
    far = sheet.work("c_far", clearance_left, c_h=hot, u=0.0, w=-worn)
    most = sheet.work("o_max", ring_overrun, w=free, c=near, e=edge)
    least = sheet.work("o_min", ring_overrun, w=free, c=far, e=edge)
    half = sheet.work("b/2", half_width, b=sheet.take("b", ring.width))
    return sheet.worst(sheet.at_least(least, sheet.limit("least")), sheet.at_most(most, half))


def _beyond(
    liner: CylinderLiner, block: CylinderBlock, end: CylinderEnd, case: LoadCase, sheet: Sheet
) -> float:
    """Length between the cover's face and the working bore, with liner and block hot."""
    at_collar = sheet.read("end of collar", liner.collar.end) == sheet.read("side of end", end.side)
    bore_end = sheet.take("x_w", liner.working_from if at_collar else liner.working_to)
    face = sheet.take("x_f", end.face_from_seat)
    hot = []
    for symbol, part, cold in (("l", liner, bore_end), ("b", block, face)):
        at = sheet.take(f"T_{symbol}", case.temperature_of(part))
        alpha = sheet.look_up(f"α_{symbol}", sheet.material_of(part).expansion, of=part, at=at)
        hot.append(
            sheet.work(f"x_{symbol}", size_when_hot, L=cold, alpha=alpha, T=at, T_ref=DRAWING_TEMPERATURE)
        )
    return sheet.work("w", beyond_working_bore, x_w=hot[0], x_f=hot[1])


@rule(
    "liner.iron",
    title="Liner and rings are not ferritic; phosphorus and liner hardness are within their limits, and "
    "ring hardness within its band of that specified",
    on=(CylinderLiner, PistonRing),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE, MARINE_LINERS],
    why="Soft or ferritic iron scuffs and wears to a ridge; a ring far harder than specified wears the "
    "liner instead.",
    leaves_out="graphite form and size, which a micrograph shows",
    limits=[
        Limit("least_phosphorus", "0.3 %", "ratio", COMMON_PRACTICE, "least phosphorus of cylinder iron"),
        Limit("most_phosphorus", "0.9 %", "ratio", COMMON_PRACTICE, "greatest phosphorus of cylinder iron"),
        Limit(
            "least_hardness", "180 HB", "Brinell hardness", COMMON_PRACTICE, "least hardness of cylinder iron"
        ),
        Limit(
            "most_hardness",
            "240 HB",
            "Brinell hardness",
            COMMON_PRACTICE,
            "greatest hardness of cylinder iron",
        ),
        Limit(
            "ring_band",
            "20 HB",
            "Brinell hardness",
            COMMON_PRACTICE,
            "greatest difference of the ring from the specified hardness",
        ),
    ],
)
def iron(part: CylinderLiner | PistonRing, sheet: Sheet) -> Judgement:
    """Structure, phosphorus and hardness as stated, else of the material; rings against the specified hardness."""
    grey = sheet.read("structure", part.structure)
    judgements = [_phosphorus(part, sheet), _hardness(part, sheet)]
    if grey == "ferritic grey":
        judgements.append(sheet.states(False, "ferritic iron scuffs: a pearlitic structure is needed"))
    return sheet.worst(*judgements)


def _phosphorus(part: CylinderLiner | PistonRing, sheet: Sheet) -> Judgement:
    if sheet.is_stated("phosphorus", part.phosphorus):
        share = sheet.take("P", part.phosphorus)
    else:
        share = sheet.look_up("P", sheet.material_of(part).composition, of=part, element="P")
    return sheet.within(share, sheet.limit("least_phosphorus"), sheet.limit("most_phosphorus"))


def _hardness(part: CylinderLiner | PistonRing, sheet: Sheet) -> Judgement:
    if sheet.is_stated("hardness", part.hardness):
        hardness = sheet.take("HB", part.hardness)
    else:
        hardness = sheet.look_up("HB", sheet.material_of(part).hardness, of=part)
    if isinstance(part, CylinderLiner):
        return sheet.within(hardness, sheet.limit("least_hardness"), sheet.limit("most_hardness"))
    asked = sheet.take("HB_asked", sheet.follow(part.runs_in).ring_hardness)
    apart = sheet.work("ΔHB", hardness_apart, H_1=hardness, H_2=asked)
    return sheet.at_most(apart, sheet.limit("ring_band"))


RULES = (overrun, iron)
