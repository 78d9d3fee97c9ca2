"""Rings: irons that run together, and overrun of the end rings past the working bore."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import edge_of_ring, place_in_piston, wear_along
from speclint.handbook.fits import DRAWING_TEMPERATURE, size_when_hot
from speclint.specs import CylinderBlock, CylinderLiner, PistonRing
from speclint_liners.formulae.ends import (
    beyond_working_bore,
    clearance_left,
    greatest_overrun,
    hardness_apart,
    ring_overrun,
    room_before_port,
)
from speclint_liners.inputs.cylinders import end_of
from speclint_liners.inputs.travel import hot_clearance, stretch
from speclint_liners.sources import MARINE_LINERS

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd, LoadCase


@rule(
    "liner.ring-overrun",
    title="The end rings overrun the working bore by at least the least overrun when new, reach its end when worn, and "
    "neither leave it nor enter a port",
    on=PistonRing,
    cases=("running", "drifting"),
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A ring that stops short leaves a wear ridge that breaks the next new ring; one that overruns too "
    "far springs out.",
    leaves_out="wear at the ends of the bore; chamfers there",
    against=("break under load",),
    against_on={"cylinder-liner": ("wear",)},
    limits=[
        Limit("least", "1.5 mm", "length", COMMON_PRACTICE, "least overrun of a new engine"),
        Limit("least_worn", "0 mm", "length", COMMON_PRACTICE, "least overrun of a worn engine"),
        Limit("held", "0.25", "ratio", COMMON_PRACTICE, "least share of the ring's width left in the bore"),
    ],
    edition=7,
)
def overrun(ring: PistonRing, case: LoadCase, sheet: Sheet) -> Judgement:
    """Overrun at the ring's own dead centre, hot: least when new; least and greatest with wear either way.

    The greatest has the stretch of the rods at speed; the least has none.
    """
    place = _place(ring, sheet)
    if place == "middle":
        raise sheet.not_applicable("only the end rings run past the working bore")
    liner = sheet.follow(ring.runs_in)
    block = sheet.follow(liner.housed_in)
    end = end_of(block, liner, place, sheet)
    free = _beyond(liner, block, end, case, sheet)
    _, hot = hot_clearance(block, end, case, sheet)
    bore = sheet.read("bore", liner.in_bore)
    worn, pulled = wear_along(block, bore, sheet), stretch(block, case, sheet)

    def run(symbol: str, u: float, w: float) -> float:
        left = sheet.work(f"c_{symbol}", clearance_left, c_h=hot, u=u, w=w)
        return sheet.work(f"o_{symbol}", ring_overrun, w=free, c=left, e=edge)

    edge = edge_of_ring(ring, place, sheet)
    most = run("max", pulled, worn)
    may = sheet.work("b_o", greatest_overrun, b=sheet.take("b", ring.width), k=sheet.limit("held"))
    return sheet.worst(
        sheet.at_least(run("new", 0.0, 0.0), sheet.limit("least")).else_says(
            "ring overruns the bore by {found} when new, {limit} wanted"
        ),
        sheet.at_least(run("min", 0.0, -worn), sheet.limit("least_worn")).else_says(
            "ring overruns the bore by {found} when worn, {limit} wanted"
        ),
        sheet.at_most(most, may).else_says(
            "ring leaves the bore: it overruns by {found}, held up to {limit}"
        ),
        *(
            sheet.at_most(most, room).else_says(
                "ring enters a port: it overruns by {found}, {limit} to the port"
            )
            for room in _rooms(liner, end, sheet)
        ),
    )


def _place(ring: PistonRing, sheet: Sheet) -> str:
    """Front, middle or back: by the order of the grooves in the piston, else as stated."""
    by_groove = place_in_piston(ring, sheet)
    return sheet.read("place", ring.place) if by_groove is None else str(by_groove.value)


def _rooms(liner: CylinderLiner, end: CylinderEnd, sheet: Sheet) -> Iterator[float]:
    """Length of bore before each port that lies beyond the working bore at an end."""
    at_collar = sheet.read("end of collar", liner.collar.end) == sheet.read("side of end", end.side)
    edge = sheet.take("x_w", liner.working_from if at_collar else liner.working_to)
    for port in liner.ports.values():
        place = sheet.take("x_p", port.from_collar)
        if (place < edge) == at_collar:
            yield sheet.work("r", room_before_port, x_p=place, x_w=edge, h=sheet.take("h", port.height))


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
    title="A liner is of grey iron, rings of grey or ductile iron, none ferritic; phosphorus and liner hardness are "
    "within limits, ring hardness within its bands of that specified and of the liner's",
    on=(CylinderLiner, PistonRing),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE, MARINE_LINERS],
    why="Soft or ferritic iron scuffs and wears to a ridge; a ring far harder than specified wears the "
    "liner instead.",
    leaves_out="graphite form and size, which a micrograph shows",
    against=("wear",),
    edition=2,
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
        Limit(
            "liner_band",
            "50 HB",
            "Brinell hardness",
            COMMON_PRACTICE,
            "greatest difference of the ring from the liner in which it runs",
        ),
    ],
)
def iron(part: CylinderLiner | PistonRing, sheet: Sheet) -> Judgement:
    """Structure, phosphorus and hardness as stated, else of the material; rings against their liner."""
    metal = sheet.material_of(part)
    if metal.family not in (_OF_LINERS if isinstance(part, CylinderLiner) else _OF_RINGS):
        return sheet.states(False, f"{metal.title} is no iron for a {part.called}", where=part.material.where)
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
    return sheet.within(share, sheet.limit("least_phosphorus"), sheet.limit("most_phosphorus")).else_says(
        "phosphorus {found}, where the nearer limit is {limit}"
    )


def _hardness(part: CylinderLiner | PistonRing, sheet: Sheet) -> Judgement:
    hardness = _hardness_of("HB", part, sheet)
    if isinstance(part, CylinderLiner):
        return sheet.within(hardness, sheet.limit("least_hardness"), sheet.limit("most_hardness")).else_says(
            "hardness {found}, where the nearer limit is {limit}"
        )
    liner = sheet.follow(part.runs_in)
    asked = sheet.take("HB_asked", liner.ring_hardness)
    apart = sheet.work("ΔHB", hardness_apart, H_1=hardness, H_2=asked)
    from_liner = sheet.work("ΔHB_l", hardness_apart, H_1=hardness, H_2=_hardness_of("HB_l", liner, sheet))
    return sheet.worst(
        sheet.at_most(apart, sheet.limit("ring_band")).else_says(
            "hardness {found} off that specified, {limit} allowed"
        ),
        sheet.at_most(from_liner, sheet.limit("liner_band")).else_says(
            "hardness {found} off that of the liner, {limit} allowed"
        ),
    )


def _hardness_of(symbol: str, part: CylinderLiner | PistonRing, sheet: Sheet) -> float:
    if sheet.is_stated(f"hardness of {part.id}", part.hardness):
        return sheet.take(symbol, part.hardness)
    return sheet.look_up(symbol, sheet.material_of(part).hardness, of=part)


#: Families of iron of which liners and rings are made.
_OF_LINERS = ("grey-iron",)
_OF_RINGS = ("grey-iron", "ductile-iron")

RULES = (overrun, iron)
