"""Flat walls of chests and passages, and the ribs that stiffen them."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Kelvins, Metres, Pascals
from speclint.handbook.materials import Material, multiple_of_allowable
from speclint.handbook.members import bending_stress, fixed_moment_uniform, simple_moment_uniform
from speclint.handbook.plates import TIMOSHENKO_PLATES, panel_stress, panel_stress_factor, pressure_across
from speclint.specs import FlatWall, LoadCase, Weldment
from speclint_fabrication.formulae.walls import (
    bending_allowed_at_weld,
    plate_with_rib,
    rib_load,
    rib_section_modulus,
)
from speclint_fabrication.inputs import greatest_on, metal_of, plate_named, wall_left
from speclint_fabrication.sources import EN_13445_3


@rule(
    "block.flat-wall",
    title="The bending stress of flat walls and their ribs, less the corrosion allowance, does not exceed "
    "the allowable bending stress",
    on=Weldment,
    cases=("starting", "running", "test", "water"),
    grade=Grade.HOLD,
    cites=[
        TIMOSHENKO_PLATES.at("Tables 8 and 35"),
        EN_13445_3.at("clause 15, vessels of rectangular section"),
        EN_13445_3.at("5.6, joint factor"),
        COMMON_PRACTICE,
    ],
    why="A flat wall bends where a cylindrical one only stretches: it is the weakest shape that can hold "
    "steam.",
    leaves_out="holes and stud bosses in the wall, forces in the ribs' welds, walls that are not "
    "rectangular, welds not stated as joints of this wall; the local code for pressure parts and a "
    "competent person decide",
    edition=2,
    limits=[
        Limit(
            "bending_factor",
            "1.5",
            "ratio",
            EN_13445_3.at("clause 15, membrane and bending stress together"),
            "allowable bending stress over allowable tensile stress of the plate",
        ),
        Limit(
            "rib_factor",
            "1",
            "ratio",
            COMMON_PRACTICE,
            "allowable bending stress of a rib over allowable tensile stress",
        ),
        Limit(
            "plate_with_rib",
            "30",
            "ratio",
            COMMON_PRACTICE,
            "effective width of wall that acts with a rib, in wall thicknesses",
        ),
    ],
)
def flat_wall(weldment: Weldment, case: LoadCase, sheet: Sheet) -> Judgement:
    """k p a²/t² of each panel and w L²/8 or /12 over Z of each rib, at the wall that is left.

    The allowable stress of a panel is lowered by the least joint factor of its welds; a panel of one plate without
    a weld has none. The standard requires no factor under test; here it is applied under test as well.
    """
    if not weldment.walls:
        raise sheet.not_assessed("no flat wall is stated", weldment.where)
    at = sheet.take("T", case.temperature_of(sheet.follow(weldment.makes)))
    return sheet.worst(
        *(_wall(name, wall, weldment, case, at, sheet) for name, wall in weldment.walls.items())
    )


def _wall(
    name: str, wall: FlatWall, weldment: Weldment, case: LoadCase, at: Kelvins, sheet: Sheet
) -> Judgement:
    plate = plate_named(weldment, wall.plate, sheet)
    metal, t = metal_of(name, plate, sheet), wall_left(name, plate, sheet)
    p = across(name, wall, case, sheet)
    panel = _panel(name, wall, metal, (p, t, at), weldment, sheet)
    if not sheet.read(f"{name} is ribbed", wall.ribbed):
        return panel
    return sheet.worst(panel, _rib(name, wall, metal, (p, t, at), sheet))


def across(name: str, wall: FlatWall, case: LoadCase, sheet: Sheet) -> Pascals:
    """Pressure across a wall in a load case."""
    one, other = sheet.read(f"{name}, one side", wall.one_side), sheet.read(f"{name}, other", wall.other_side)
    p_1, p_2 = greatest_on(one, case, sheet), greatest_on(other, case, sheet)
    return sheet.work(f"Δp of {name}", pressure_across, p_1=p_1, p_2=p_2)


def edge_stress(name: str, wall: FlatWall, edges: str, p: Pascals, t: Metres, sheet: Sheet) -> Pascals:
    """Greatest stress of a panel with its edges held in one way."""
    a, b = sheet.take(f"a of {name}", wall.short), sheet.take(f"b of {name}", wall.long)
    k = sheet.look_up(f"k of {name}", panel_stress_factor, edges=edges, a=a, b=b)
    return sheet.work(f"σ of {name}", panel_stress, k=k, p=p, a=a, t=t)


def _allowed(name: str, factor: str, metal: Material, wall: Metres, at: Kelvins, sheet: Sheet) -> Pascals:
    f = sheet.look_up(f"f of {name}", metal.allowable_tension, at=at, wall=wall)
    return sheet.work(f"S of {name}", multiple_of_allowable, k=sheet.limit(factor, "x"), f=f)


def _panel(
    name: str,
    wall: FlatWall,
    metal: Material,
    at: tuple[Pascals, Metres, Kelvins],
    weldment: Weldment,
    sheet: Sheet,
) -> Judgement:
    p, t, temperature = at
    stress = edge_stress(name, wall, sheet.read(f"edges of {name}", wall.edges), p, t, sheet)
    allowed = _allowed(name, "bending_factor", metal, t, temperature, sheet)
    factors = [
        sheet.take(f"z of {seam}", joint.joint_factor)
        for seam, joint in weldment.joints.items()
        if sheet.is_stated(f"wall of {seam}", joint.wall)
        and sheet.read(f"wall of {seam}", joint.wall) == name
    ]
    if factors:
        allowed = sheet.work(f"S_z of {name}", bending_allowed_at_weld, z=min(factors), S=allowed)
    return sheet.at_most(stress, allowed)


def _rib(
    name: str, wall: FlatWall, metal: Material, at: tuple[Pascals, Metres, Kelvins], sheet: Sheet
) -> Judgement:
    p, t, temperature = at
    spacing, span = sheet.take("s", wall.ribs.spacing), sheet.take("L", wall.ribs.span)
    strip = sheet.work("b_r", plate_with_rib, s=spacing, n=sheet.limit("plate_with_rib", "n"), t=t)
    depth, thickness = sheet.take("d_r", wall.ribs.depth), sheet.take("w_r", wall.ribs.thickness)
    modulus = sheet.work("Z", rib_section_modulus, b=strip, t=t, d=depth, w=thickness)
    load = sheet.work("w", rib_load, p=p, s=spacing)
    clamped = sheet.read(f"ends of the ribs of {name}", wall.ribs.ends) == "clamped"
    moment = sheet.work("M", fixed_moment_uniform if clamped else simple_moment_uniform, w=load, L=span)
    stress = sheet.work(f"σ_r of {name}", bending_stress, M=moment, Z=modulus)
    return sheet.at_most(
        stress, _allowed(f"ribs of {name}", "rib_factor", metal, thickness, temperature, sheet)
    )


RULES: tuple[Rule, ...] = (flat_wall,)
