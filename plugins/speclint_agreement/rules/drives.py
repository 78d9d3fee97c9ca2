"""The drive of a block: its connecting rod by that of the engine, and its axle by the lengths of the motion."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import connecting_rod_of, cranks_of, ends_by_side, engine_of, face_aimed_at, rod_mass
from speclint.specs import CylinderBlock
from speclint_agreement.formulae.drives import axle_from_datum, section_of_mass


def _sections(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The stated section of the connecting rods against that of a bar of the mass of each."""
    engine, drive = engine_of(block, sheet), block.drive
    if engine is None or not sheet.is_stated("metal of the rod", drive.connecting_rod_material):
        return
    metal = sheet.material_named(f"connecting rod of {block.id}", drive.connecting_rod_material)
    if not metal.holds("density"):
        return
    for bore, crank in cranks_of(engine, block, sheet):
        mass, length = rod_mass(crank, engine, sheet), connecting_rod_of(block, sheet, bore)
        if sheet.is_stated("mass of the rod", mass) and sheet.is_stated("length of the rod", length):
            A = sheet.work(
                "A_m",
                section_of_mass,
                m=sheet.take("m_c", mass),
                rho=sheet.look_up("ρ", metal.density),
                l=sheet.take("l", length),
            )
            yield Pair(drive.connecting_rod_area, worked(A, mass, length), "at most", name=bore)


def _axles(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The stated distance of the axle against that which rods and faces give, of a block with one bore."""
    if len(block.bores) != 1:
        return
    bore = next(iter(block.bores))
    rods = connecting_rod_of(block, sheet, bore), block.drive.rod_length
    sides = ends_by_side(block, bore, sheet)
    if len(sides) < 2 or not all(sheet.is_stated("length of a rod", one) for one in rods):
        return
    front, back = (face_aimed_at(block, sides[side], sheet) for side in ("front", "back"))
    if front is None or back is None:
        return
    X = sheet.work(
        "X_a",
        axle_from_datum,
        l=sheet.take_nominal("l", rods[0]),
        L=sheet.take_nominal("L", rods[1]),
        x_f=front.value,
        x_b=back.value,
    )
    places = (rods[0].where, rods[1].where, *front.places, *back.places)
    yield Pair(block.drive.axle_from_fixed_point, Worked(X, places), name=bore)


section_by_mass: Rule = agreement(
    "drive.section-by-mass",
    title="The least section of a connecting rod is no more than that of a bar of its length between centres and mass",
    on=CylinderBlock,
    pairs=_sections,
    within="",
    grade=Grade.HOLD,
    why="a rod that is stated stiffer than its metal stretches further than the clearance of the piston was worked for",
    leaves_out="how the metal of the rod is spread along it; a rod whose mass the engine does not state",
    against=("foul",),
)

axle_by_rods: Rule = agreement(
    "drive.axle-by-rods",
    title="The axle that a cylinder drives is as far from its fixed point as connecting rod, piston rod and faces of "
    "the covers put it",
    on=CylinderBlock,
    pairs=_axles,
    within="25 mm",
    grade=Grade.HOLD,
    why="the frame grows between axle and block while the rods grow, and the piston's clearance is what is left",
    leaves_out="a block with several bores, whose rods may turn different axles; an axis that lies at more than "
    "1 in 10; rods that run forward from their cylinder",
    against=("foul",),
)

RULES = (axle_by_rods, section_by_mass)
