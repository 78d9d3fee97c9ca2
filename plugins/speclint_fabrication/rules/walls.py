"""Flat walls of chests and passages, and the ribs that stiffen them."""

from __future__ import annotations

from msgspec import Struct

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Kelvins, Metres, Pascals
from speclint.handbook.materials import Material, multiple_of_allowable
from speclint.handbook.members import bending_stress, fixed_moment_uniform, simple_moment_uniform
from speclint.handbook.plates import PANEL_TABLES, panel_stress, panel_stress_factor
from speclint.specs import CylinderBlock, FlatWall, LoadCase, Weldment
from speclint_fabrication.formulae.walls import (
    bending_allowed_at_weld,
    membrane_stress,
    plate_with_rib,
    rib_load,
    rib_section_modulus,
    stress_together,
)
from speclint_fabrication.inputs.plates import metal_of, plate_named, rolled_thickness, wall_left
from speclint_fabrication.inputs.pressures import across, pull_in, sides_of
from speclint_fabrication.inputs.temperatures import temperature_of_wall
from speclint_fabrication.inputs.unlisted import walls_not_listed
from speclint_fabrication.inputs.welds import may_be_of
from speclint_fabrication.sources import JOINT_FACTOR, RECTANGULAR_VESSELS


class Loaded(Struct, frozen=True):
    """A wall in a load case: metal, wall left, thickness as rolled, pressure across, membrane stress, temperature."""

    metal: Material
    t: Metres
    rolled: Metres
    p: Pascals
    membrane: Pascals
    at: Kelvins


@rule(
    "block.flat-wall",
    title="The membrane and bending stress of every flat wall and rib, wasted, hottest, under the worst "
    "pressures of both sides with water at relief, does not exceed that allowed for the plate as "
    "rolled",
    on=Weldment,
    cases=("starting", "running", "test", "water"),
    grade=Grade.HOLD,
    cites=[
        PANEL_TABLES,
        RECTANGULAR_VESSELS,
        JOINT_FACTOR,
        COMMON_PRACTICE,
    ],
    why="A flat wall bends where a cylindrical one only stretches: it is the weakest shape that can hold "
    "steam.",
    leaves_out="holes and stud bosses in the wall, forces in the ribs' welds, walls that are not "
    "rectangular, welds that are not listed, further walls between the same fluids than those "
    "listed; the local code for pressure parts and a competent person decide",
    against=("burst",),
    against_on={"cylinder-block": ("burst",)},
    reached_by="makes",
    edition=9,
    limits=[
        Limit(
            "bending_factor",
            "1.5",
            "ratio",
            RECTANGULAR_VESSELS,
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
    """k p a²/t² + N/t of each panel and w L²/8 or /12 over Z + N/t of each rib, at the wall that is left.

    The allowable stress of a panel is lowered by the least joint factor of its welds, and of those that may be its:
    welds on pressure that name no wall. A panel of one plate without a weld has none. The standard requires no factor
    under test; here it is applied under test as well. A wall that the plates, the divisions or the passages
    of the block want and that is not listed is not assessed.
    """
    if not weldment.walls:
        raise sheet.not_assessed("no flat wall is stated", weldment.where)
    block = sheet.follow(weldment.makes)

    def judge(item: tuple[str, FlatWall | None]) -> Judgement:
        name, wall = item
        if wall is None:
            raise sheet.not_assessed(f"no flat wall is listed for: {name}", weldment.where)
        return _wall(name, wall, weldment, case, block, sheet)

    missing: list[tuple[str, FlatWall | None]] = [
        (name, None) for name in walls_not_listed(weldment, block, sheet)
    ]
    return sheet.each([*weldment.walls.items(), *missing], judge)


def _wall(
    name: str, wall: FlatWall, weldment: Weldment, case: LoadCase, block: CylinderBlock, sheet: Sheet
) -> Judgement:
    loaded = loaded_wall(name, wall, weldment, case, block, sheet)
    stress, allowed = stress_of_panel(name, wall, loaded, weldment, sheet)
    panel = sheet.at_most(stress, allowed).else_says("wall {item} stressed to {found}, {limit} allowed")
    ribbed = sheet.read(f"{name} is ribbed", wall.ribbed)
    if not (ribbed or sheet.is_stated(f"spacing of the ribs of {name}", wall.ribs.spacing)):
        return panel
    return sheet.worst(panel, _rib(name, wall, loaded, sheet))


def loaded_wall(
    name: str, wall: FlatWall, weldment: Weldment, case: LoadCase, block: CylinderBlock, sheet: Sheet
) -> Loaded:
    """A flat wall in a load case."""
    plate = plate_named(weldment, wall.plate, sheet)
    t = wall_left(name, plate, sides_of(name, wall, sheet), sheet)
    return Loaded(
        metal=metal_of(name, plate, sheet),
        t=t,
        rolled=rolled_thickness(name, plate, sheet),
        p=across(name, wall, case, block, sheet),
        membrane=sheet.work(
            f"σ_m of {name}", membrane_stress, N=pull_in(name, wall, case, block, sheet), t=t
        ),
        at=temperature_of_wall(name, sides_of(name, wall, sheet), case, block, sheet),
    )


def edge_stress(name: str, wall: FlatWall, p: Pascals, t: Metres, sheet: Sheet) -> Pascals:
    """Greatest bending stress of a panel, with its edges held as stated."""
    a, b = sheet.take(f"a of {name}", wall.short), sheet.take(f"b of {name}", wall.long)
    edges = sheet.read(f"edges of {name}", wall.edges)
    k = sheet.look_up(f"k of {name}", panel_stress_factor, edges=edges, a=a, b=b)
    return sheet.work(f"σ_b of {name}", panel_stress, k=k, p=p, a=a, t=t)


def _allowed(name: str, factor: str, loaded: Loaded, rolled: Metres, sheet: Sheet) -> Pascals:
    f = sheet.look_up(f"f of {name}", loaded.metal.allowable_tension, at=loaded.at, wall=rolled)
    return sheet.work(f"S of {name}", multiple_of_allowable, k=sheet.limit(factor, "x"), f=f)


def stress_of_panel(
    name: str, wall: FlatWall, loaded: Loaded, weldment: Weldment, sheet: Sheet
) -> tuple[Pascals, Pascals]:
    """Stress of a panel, and what is allowed with the least factor of its welds."""
    bending = edge_stress(name, wall, loaded.p, loaded.t, sheet)
    stress = sheet.work(f"σ of {name}", stress_together, σ_b=bending, σ_m=loaded.membrane)
    allowed = _allowed(name, "bending_factor", loaded, loaded.rolled, sheet)
    factors = [
        sheet.take(f"z of {seam}", joint.joint_factor)
        for seam, joint in weldment.joints.items()
        if may_be_of(name, wall, seam, joint, sheet)
    ]
    if factors:
        allowed = sheet.work(f"S_z of {name}", bending_allowed_at_weld, z=min(factors), S=allowed)
    return stress, allowed


def _rib(name: str, wall: FlatWall, loaded: Loaded, sheet: Sheet) -> Judgement:
    """A rib is of the metal of its wall; the thicker of the two counts for its strength."""
    spacing, span = sheet.take("s", wall.ribs.spacing), sheet.take("L", wall.ribs.span)
    strip = sheet.work("b_r", plate_with_rib, s=spacing, n=sheet.limit("plate_with_rib", "n"), t=loaded.t)
    depth, thickness = sheet.take("d_r", wall.ribs.depth), sheet.take("w_r", wall.ribs.thickness)
    modulus = sheet.work("Z", rib_section_modulus, b=strip, t=loaded.t, d=depth, w=thickness)
    load = sheet.work("w", rib_load, p=loaded.p, s=spacing)
    clamped = sheet.read(f"ends of the ribs of {name}", wall.ribs.ends) == "clamped"
    moment = sheet.work("M", fixed_moment_uniform if clamped else simple_moment_uniform, w=load, L=span)
    bending = sheet.work(f"σ_r of {name}", bending_stress, M=moment, Z=modulus)
    stress = sheet.work(f"σ_rm of {name}", stress_together, σ_b=bending, σ_m=loaded.membrane)
    rolled = max(loaded.rolled, thickness)
    return sheet.at_most(stress, _allowed(f"ribs of {name}", "rib_factor", loaded, rolled, sheet)).else_says(
        "rib of wall {item} stressed to {found}, {limit} allowed"
    )


RULES: tuple[Rule, ...] = (flat_wall,)
