"""Fatigue of welds over the strokes of the engine's life."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Kelvins, NewtonsPerMetre, Pascals, Ratio
from speclint.handbook.members import range_of_stress
from speclint.handbook.steam import excess_pressure
from speclint.specs import CylinderBlock, FlatWall, LoadCase, WeldedJoint, Weldment
from speclint_fabrication.formulae.fatigue import (
    cycles_counted,
    fatigue_size_factor,
    fatigue_strength,
    fatigue_temperature_factor,
    range_allowed,
)
from speclint_fabrication.formulae.unlike_plates import (
    offset_factor,
    offset_when_flush,
    stress_with_offset,
)
from speclint_fabrication.formulae.walls import (
    membrane_force,
    membrane_stress,
    range_of_both_sides,
    stress_together,
)
from speclint_fabrication.inputs.barrel_seams import range_in_barrel, range_in_shell
from speclint_fabrication.inputs.branch_roots import (
    branch_joined,
    branches_of,
    branches_without_weld,
    range_beside,
)
from speclint_fabrication.inputs.categories import best_of_its_kind
from speclint_fabrication.inputs.cycles import starts, strokes
from speclint_fabrication.inputs.joined import joined_by
from speclint_fabrication.inputs.openings import Cut, is_in_flat_wall, wall_of
from speclint_fabrication.inputs.plates import plate_named, wall_left
from speclint_fabrication.inputs.pressures import (
    across,
    depths_beside,
    greatest_on,
    least_in_cylinder,
    pull_in,
    sides_of,
)
from speclint_fabrication.inputs.temperatures import temperature_of_wall
from speclint_fabrication.inputs.welds import holds_pressure, is_along_own_plate, walls_without_weld
from speclint_fabrication.rules.walls import edge_stress
from speclint_fabrication.sources import (
    FATIGUE_CURVE,
    HOBBACHER_OFFSET,
    HOT_FATIGUE,
    IIW_FATIGUE,
    PARTIAL_FACTOR,
)

#: What gives the stress ranges of a weld and how often they come.
_Ranges = Callable[
    [str, WeldedJoint, Weldment, CylinderBlock, LoadCase, Sheet], Iterator[tuple[Pascals, Ratio]]
]

#: Every fluid that a wall may bound: a weld whose wall is not stated is as hot as the hottest of them makes it.
_ALL = ("live steam", "exhaust steam", "cylinder")


@rule(
    "block.weld-fatigue",
    title="The membrane and bending stress range of every pressure weld, also along a round plate and at a branch, "
    "is within that allowed for life on worn tyres, hot, by a category that its shape can have",
    wrong="stress range of weld {item} {found}, {limit} allowed",
    on=Weldment,
    cases=("starting", "running", "drifting"),
    grade=Grade.HOLD,
    cites=[FATIGUE_CURVE, HOT_FATIGUE, IIW_FATIGUE.at("3.2"), HOBBACHER_OFFSET, COMMON_PRACTICE],
    why="A cylinder sees some hundred million strokes: a stress range that a boiler weld withstands for its "
    "few cycles breaks a cylinder weld.",
    leaves_out="a range stated for every stroke where less than the whole pressure of a round plate, such as a chest, "
    "comes and goes with it: nothing drawn tells how much; thermal stress, welds whose root cannot be inspected, "
    "corrosion at the weld toe, how smooth its caps are, damage summed over different loads; how a wall is held is "
    "taken as stated; the local code and a competent person decide",
    against=("break in fatigue",),
    against_on={"cylinder-block": ("break in fatigue",)},
    reached_by="makes",
    edition=15,
    limits=[
        Limit(
            "partial_factor",
            "1.35",
            "ratio",
            PARTIAL_FACTOR,
            "partial factor on fatigue strength",
        ),
        Limit(
            "branch root",
            "2.5",
            "ratio",
            COMMON_PRACTICE,
            "stress at the root of a branch over that of its shell or wall",
        ),
    ],
)
def weld_fatigue(weldment: Weldment, case: LoadCase, sheet: Sheet) -> Judgement:
    """Nominal stress range of a stroke, or of raising steam, against Δσ of the detail at its cycles × f_T f_t/γ.

    The detail is the stated category, and no better than the best of EN 1993-1-9 for the shape of the weld and how it
    is laid: a butt weld through its plate and ground flush, from both sides, from one side and examined, or else; a tee
    through its plate, by the plate that stands, or not through; a lap. The reference prints them: speclint reference,
    tables.
    """
    if not weldment.joints:
        raise sheet.not_assessed("no welded joint is stated", weldment.where)
    block = sheet.follow(weldment.makes)

    cuts = branches_of(block, sheet)

    def judge(item: tuple[str, WeldedJoint | Cut | None]) -> Judgement:
        name, joint = item
        if isinstance(joint, Cut):
            said = f"no weld is stated to join the branch at {name}"
            raise sheet.not_assessed(said, joint.opening.where)
        if joint is None:
            raise sheet.not_assessed(f"no weld is stated to join the wall {name}", weldment.walls[name].where)
        if not holds_pressure(name, joint, weldment, sheet):
            raise sheet.not_applicable("no weld holds pressure")
        cut = branch_joined(name, joint, cuts, sheet)
        ranges = _ranges if cut is None else _at_root(cut)
        return _joint(name, joint, ranges, weldment, block, case, sheet)

    unjoined = [(name, None) for name in walls_without_weld(weldment, sheet)]
    bare = [(name, cuts[name]) for name in branches_without_weld(weldment, cuts, sheet)]
    return sheet.each([*weldment.joints.items(), *unjoined, *bare], judge)


def _joint(
    name: str,
    joint: WeldedJoint,
    ranges: _Ranges,
    weldment: Weldment,
    block: CylinderBlock,
    case: LoadCase,
    sheet: Sheet,
) -> Judgement:
    category = sheet.take(f"Δσ_C of {name}", joint.detail_category)
    best = best_of_its_kind(name, joint, weldment, sheet)
    if category > best:
        return sheet.at_most(category, best).else_says(
            "weld {item} is given a category of {found}, {limit} at most for its shape, weld, sides and caps"
        )
    at = _temperature(name, joint, weldment, block, case, sheet)
    f_T = sheet.work(f"f_T of {name}", fatigue_temperature_factor, T=at)
    plate = plate_named(weldment, joint.plate, sheet)
    f_t = sheet.work(f"f_t of {name}", fatigue_size_factor, t=sheet.take(f"t of {name}", plate.thickness))
    gamma = sheet.limit("partial_factor", "γ")
    judged = []
    k_m = _offset(name, joint, weldment, sheet)
    for in_line, times in ranges(name, joint, weldment, block, case, sheet):
        found = (
            in_line if k_m is None else sheet.work(f"σ_k of {name}", stress_with_offset, k_m=k_m, σ=in_line)
        )
        cycles = sheet.work(f"N of {name}", cycles_counted, N=times)
        strength = sheet.work(f"Δσ of {name}", fatigue_strength, Δσ_C=category, N=cycles)
        allowed = sheet.work(f"S of {name}", range_allowed, Δσ=strength, f_T=f_T, f_t=f_t, gamma=gamma)
        judged.append(sheet.at_most(found, allowed))
    return sheet.worst(*judged)


def _offset(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> Ratio | None:
    """Factor for the bending of a butt weld whose plates are out of line; those not said to be are flush on one side.

    None where the joint names no two plates: weld.unequal-plates asks for them.
    """
    if not joint.plates_joined or sheet.read(f"shape of {name}", joint.shape) != "butt":
        return None
    t_1, t_2 = joined_by(name, joint, weldment, sheet).thicknesses(sheet)
    stated = sheet.is_stated(f"offset of {name}", joint.offset)
    flush = sheet.work(f"e_f of {name}", offset_when_flush, t_1=t_1, t_2=t_2)
    e = sheet.take(f"e of {name}", joint.offset) if stated else flush
    return sheet.work(f"k_m of {name}", offset_factor, e=e, t_1=min(t_1, t_2), t_2=max(t_1, t_2))


def _temperature(
    name: str, joint: WeldedJoint, weldment: Weldment, block: CylinderBlock, case: LoadCase, sheet: Sheet
) -> Kelvins:
    sides: tuple[str, ...] = _ALL
    if not is_along_own_plate(name, joint, weldment, sheet):
        sides = sides_of(name, _wall_of(joint, weldment, sheet), sheet)
    return temperature_of_wall(name, sides, case, block, sheet)


def _wall_of(joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> FlatWall:
    return sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}")


def _ranges(
    name: str, joint: WeldedJoint, weldment: Weldment, block: CylinderBlock, case: LoadCase, sheet: Sheet
) -> Iterator[tuple[Pascals, Ratio]]:
    """Stress ranges and their cycles: that stated for every stroke, and that worked for the wall that the weld joins.

    The one does not spare the other, unless the weld does not go through or names no wall: then it cannot be worked,
    but round the barrel of a bore, or another shell. That has its whole pressure at every start, and at every stroke
    where none is stated; a butt weld along it that names a wall of another plate has both.
    """
    stated = sheet.is_stated(f"stress range of {name}", joint.stress_range)
    if stated:
        yield sheet.take(f"σ_R of {name}", joint.stress_range), strokes(weldment, block, sheet)
        if sheet.read(f"weld of {name}", joint.weld) != "full penetration":
            return
    of_wall = sheet.is_stated(f"wall of {name}", joint.wall)
    own = is_along_own_plate(name, joint, weldment, sheet)
    barrel = range_in_barrel(name, joint, weldment, block, case, sheet) if own else None
    shell = range_in_shell(name, joint, weldment, block, case, sheet) if own and barrel is None else None
    if barrel is not None:
        yield barrel, strokes(weldment, block, sheet)
    elif shell is not None:
        in_shell, stroke = shell
        yield in_shell, starts(weldment, sheet) if stated and not stroke else strokes(weldment, block, sheet)
    if of_wall or (not stated and barrel is None and shell is None):
        yield _range(name, joint, weldment, block, case, sheet)


def _at_root(cut: Cut) -> _Ranges:
    """The ranges of a weld at the root of a branch: that stated, and the multiple of its shell's or its wall's."""

    def ranges(
        name: str, joint: WeldedJoint, weldment: Weldment, block: CylinderBlock, case: LoadCase, sheet: Sheet
    ) -> Iterator[tuple[Pascals, Ratio]]:
        if sheet.is_stated(f"stress range of {name}", joint.stress_range):
            yield sheet.take(f"σ_R of {name}", joint.stress_range), strokes(weldment, block, sheet)
        k = sheet.limit("branch root", "k_r")
        if is_in_flat_wall(cut, sheet):
            in_wall, cycles = _of_wall(name, wall_of(cut, sheet), weldment, block, case, sheet)
            yield sheet.work(f"Δσ_r of {name}", range_of_stress, k=k, σ=in_wall), cycles
            return
        found, stroke = range_beside(cut, k, case, sheet)
        yield found, strokes(weldment, block, sheet) if stroke else starts(weldment, sheet)

    return ranges


def _range(
    name: str, joint: WeldedJoint, weldment: Weldment, block: CylinderBlock, case: LoadCase, sheet: Sheet
) -> tuple[Pascals, Ratio]:
    """Stress range and cycles, worked for the wall that the weld joins.

    A seam in the middle of a supported wall is stressed as its middle, so that the greatest stress of the panel
    counts, wherever in it the weld is.
    """
    if sheet.read(f"weld of {name}", joint.weld) != "full penetration":
        raise sheet.not_assessed(
            f"the stress range of {name} must be stated: its weld is not full penetration",
            joint.stress_range.where,
        )
    return _of_wall(name, _wall_of(joint, weldment, sheet), weldment, block, case, sheet)


def _of_wall(
    name: str, wall: FlatWall, weldment: Weldment, block: CylinderBlock, case: LoadCase, sheet: Sheet
) -> tuple[Pascals, Ratio]:
    """Stress range and cycles of a flat wall."""
    sides = sides_of(name, wall, sheet)
    t = wall_left(name, plate_named(weldment, wall.plate, sheet), sides, sheet)
    if "cylinder" in sides:
        p, pull = _of_a_stroke(name, wall, case, block, sheet)
        cycles = strokes(weldment, block, sheet)
    else:
        p, pull = across(name, wall, case, block, sheet), pull_in(name, wall, case, block, sheet)
        cycles = starts(weldment, sheet)
    bending = edge_stress(name, wall, p, t, sheet)
    membrane = sheet.work(f"σ_m of {name}", membrane_stress, N=pull, t=t)
    return sheet.work(f"σ of {name}", stress_together, σ_b=bending, σ_m=membrane), cycles


def _of_a_stroke(
    name: str, wall: FlatWall, case: LoadCase, block: CylinderBlock, sheet: Sheet
) -> tuple[Pascals, NewtonsPerMetre]:
    """Range of the pressure across a wall and of the pull in it over a stroke: what stands on the other side is steady.

    Between two cylinders the one is full while the other is empty, and then the other way about.
    """
    one, other = (float(side == "cylinder") for side in sides_of(name, wall, sheet))
    greatest, least = greatest_on("cylinder", case, block, sheet), least_in_cylinder(case, sheet)
    p = sheet.work(f"Δp of {name}", excess_pressure, p_1=greatest, p_2=least)
    h_1, h_2 = depths_beside(name, wall, sheet)
    pull = sheet.work(f"N of {name}", membrane_force, p_1=one * p, h_1=h_1, p_2=other * p, h_2=h_2)
    if one and other:
        p = sheet.work(f"Δp_2 of {name}", range_of_both_sides, Δp=p)
    return p, pull


RULES: tuple[Rule, ...] = (weld_fatigue,)
