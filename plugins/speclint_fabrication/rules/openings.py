"""Openings in round shells and flat walls: the metal that replaces what is cut out."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres, Pascals, SquareMetres
from speclint.handbook.materials import multiple_of_allowable
from speclint.handbook.plates import wasted_thickness
from speclint.specs import BlockPort, CaseName, CylinderBlock, FlatWall, LoadCase
from speclint_fabrication.formulae.area_replacement import (
    area_of_branch,
    area_of_shell,
    area_required,
    share_of_area,
    thickness_required,
    wall_with_opening,
    wall_without_opening,
)
from speclint_fabrication.formulae.openings import (
    load_at_opening,
    metal_of_branch,
    metal_of_shell,
    reach_in_branch,
    reach_in_shell,
    strength_at_opening,
    stress_beside_ports,
    unworked_opening,
)
from speclint_fabrication.inputs.openings import (
    Cut,
    Shell,
    bores_of_plate,
    cuts_of,
    hole_of,
    is_in_flat_wall,
    plate_of,
    seats_cut_in,
    shell_of,
    sides_of_cut,
    silent_seats,
    strength_of_branch,
    tension_of_branch,
    wall_of,
    wall_of_branch,
)
from speclint_fabrication.inputs.plates import plate_named
from speclint_fabrication.inputs.ports import Barrel, barrels_of
from speclint_fabrication.inputs.pressures import sides_of
from speclint_fabrication.rules.walls import Loaded, loaded_wall, stress_of_panel
from speclint_fabrication.sources import (
    PRESSURE_AREA,
    RECTANGULAR_VESSELS,
    SMALL_OPENING,
    TEST_STRESS,
    UG_37,
    UG_39,
)

CASES: tuple[CaseName, ...] = ("starting", "running", "test", "water")
DEFERS = "the local code for pressure parts and a competent person decide"
#: Allowable stress on test, as a share of the proof stress: its source gives 1/1.05.
TEST = Limit("test_share", "0.95", "ratio", TEST_STRESS, "allowable stress on test over the proof stress")


@rule(
    "opening.metal-replaced",
    edition=4,
    title="Beside every opening in a round shell the net metal of shell and branch carries the pressure on what is cut "
    "out, and beside ports round a barrel at most half of the allowable tension is used",
    on=CylinderBlock,
    cases=CASES,
    grade=Grade.HOLD,
    cites=[PRESSURE_AREA, SMALL_OPENING, UG_37, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A shell is weakest where a branch was cut into it: it tears there, and the whole chest opens.",
    leaves_out="loads of pipes on a branch (opening.pipe-load), the weld between branch and shell, fatigue at its root "
    f"(block.weld-fatigue), the seat ring in a bore, which may work loose, creep; {DEFERS}",
    against=("burst",),
    limits=[
        Limit(
            "small",
            "0.15",
            "ratio",
            SMALL_OPENING,
            "largest opening that needs no working, over the length that helps",
        ),
        Limit(
            "branch",
            "2",
            "ratio",
            COMMON_PRACTICE,
            "greatest wall of a branch that counts, over that of the shell",
        ),
        Limit(
            "inward", "0.5", "ratio", PRESSURE_AREA, "length of branch inside that counts, over that outside"
        ),
        Limit(
            "beside ports",
            "0.5",
            "ratio",
            COMMON_PRACTICE,
            "allowable stress along a barrel over its tension",
        ),
        TEST,
    ],
)
def metal_replaced(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """A_s (f_s − P/2) + A_b (f_b − P/2) against P on the pressed areas; of ports also the metal left round it."""
    cuts = [*cuts_of(block, sheet), *seats_cut_in(block, sheet)]
    items: list[tuple[str, Cut | Barrel]] = [(cut.name, cut) for cut in cuts]
    items += [(barrel.name, barrel) for barrel in barrels_of(block, sheet)]
    if not items:
        raise sheet.not_applicable("no opening of the block is stated")

    def judge(item: tuple[str, Cut | Barrel]) -> Judgement:
        name, one = item
        return _ports(one, case, sheet) if isinstance(one, Barrel) else _round(name, one, cuts, case, sheet)

    return sheet.each(items, judge)


def _round(name: str, cut: Cut, cuts: list[Cut], case: LoadCase, sheet: Sheet) -> Judgement:
    if is_in_flat_wall(cut, sheet):
        raise sheet.not_applicable("it is cut in a flat wall: opening.in-flat-wall judges it")
    plate = plate_of(cut, sheet)
    of_plate = sheet.read(f"plate of {name}", cut.opening.plate)
    bores = bores_of_plate(of_plate, cut.block, sheet)
    sides = sides_of_cut(cut, bores, sheet)
    shell = shell_of(of_plate, plate, sides, bores, cut, case, sheet)
    d = hole_of(name, cut.opening, sheet)
    if d > 2 * shell.r:
        raise sheet.not_covered(f"opening {name} is wider than its shell: finite elements are wanted")
    l_s = sheet.work(f"l_s of {name}", reach_in_shell, r=shell.r, e=shell.e)
    alone = not any(
        other is not cut
        and not is_in_flat_wall(other, sheet)
        and sheet.read(f"plate of {other.name}", other.opening.plate) == of_plate
        for other in cuts
    )
    if alone and not bores:
        small = sheet.work("d_0", unworked_opening, k=sheet.limit("small", "k"), l_s=l_s)
        if d <= small:
            return sheet.at_most(d, small).else_says("opening {item} of {found} is worked, beyond {limit}")
    there = min(l_s, sheet.take(f"a of {name}", cut.opening.to_edge))
    if sheet.read(f"{name} is", cut.opening.set) in ("set in", "set on"):
        return _with_branch(name, cut, shell, d, there, sides, case, sheet)
    return _hole(name, shell, d, there, sheet)


def _hole(name: str, shell: Shell, d: Metres, there: Metres, sheet: Sheet) -> Judgement:
    """A hole without a branch: the shell alone, with the pressure in the hole."""
    A_s = sheet.work(f"A_s of {name}", metal_of_shell, e=shell.e, l=there)
    R = sheet.work(f"R of {name}", strength_at_opening, A_s=A_s, f_s=shell.f, A_b=0.0, f_b=shell.f, P=shell.P)
    F = sheet.work(
        f"F of {name}", load_at_opening, P=shell.P, r=shell.r, l_s=there, d=d, d_i=d, l_b=0.0, e=shell.e
    )
    return sheet.at_most(F, R).else_says(
        "metal beside opening {item} carries {limit}, pressure brings {found}"
    )


def _with_branch(
    name: str,
    cut: Cut,
    shell: Shell,
    d: Metres,
    there: Metres,
    sides: list[str],
    case: LoadCase,
    sheet: Sheet,
) -> Judgement:
    """A stub or a cast port: no more of its wall counts than the limit allows, and no more length than there is."""
    wall = wall_of_branch(cut, sheet)
    drawn = sheet.work(f"e_n of {name}", wasted_thickness, t=wall, c=shell.c)
    e_b = min(drawn, sheet.limit("branch", "k_b") * shell.e)
    set_in = sheet.read(f"{name} is", cut.opening.set) == "set in"
    outside, inside = (d, d - 2 * wall) if set_in else (d + 2 * wall, d)
    reach = sheet.work(f"l_b of {name}", reach_in_branch, d=outside, e=e_b)
    l_b = min(reach, sheet.take(f"h of {name}", cut.opening.projects_out))
    l_i = 0.0
    if set_in and sheet.is_stated(f"{name} stands inside", cut.opening.projects_in):
        within = sheet.take(f"h_i of {name}", cut.opening.projects_in)
        l_i = min(within, sheet.limit("inward", "k_i") * reach)
    f_b = strength_of_branch(cut, sides, wall, case, sheet)
    A_s = sheet.work(f"A_s of {name}", metal_of_shell, e=shell.e, l=there)
    A_b = sheet.work(
        f"A_b of {name}", metal_of_branch, e_b=e_b, l_b=l_b, l_i=l_i, s=shell.e if set_in else 0.0
    )
    on = {"P": shell.P, "r": shell.r, "l_s": there, "d": outside, "d_i": inside, "l_b": l_b, "e": shell.e}
    F = sheet.work(f"F of {name}", load_at_opening, **on)
    R = sheet.work(f"R of {name}", strength_at_opening, A_s=A_s, f_s=shell.f, A_b=A_b, f_b=f_b, P=shell.P)
    _beside(name, shell, inside, drawn, f_b, sheet)
    return sheet.at_most(F, R).else_says(
        "metal beside opening {item} carries {limit}, pressure brings {found}"
    )


def _beside(name: str, shell: Shell, d: Metres, t_n: Metres, f_b: Pascals, sheet: Sheet) -> None:
    """The areas of the ASME code, written beside; beyond half of the shell's diameter that code asks for more."""
    f_r = min(1.0, f_b / shell.f)
    t_r = sheet.work(f"t_r of {name}", thickness_required, P=shell.P, R=shell.r, S=shell.f)
    t_rn = sheet.work(f"t_rn of {name}", thickness_required, P=shell.P, R=d / 2, S=f_b)
    A = sheet.work(f"A of {name}", area_required, d=d, t_r=t_r, t_n=t_n, f_r=f_r)
    A_1 = sheet.work(f"A_1 of {name}", area_of_shell, d=d, t=shell.e, t_r=t_r, t_n=t_n, f_r=f_r)
    A_2 = sheet.work(f"A_2 of {name}", area_of_branch, t=shell.e, t_n=t_n, t_rn=t_rn, f_r=f_r)
    if A_1 + A_2 > 0:
        sheet.work(f"u of {name}", share_of_area, A=A, A_1=A_1, A_2=A_2)


def _ports(barrel: Barrel, case: LoadCase, sheet: Sheet) -> Judgement:
    """Ports cut round a barrel at one end: by height in the plane of the axis, by width in what is left round it."""
    shell = barrel.shell(case, sheet)
    l_s = sheet.work("l_s", reach_in_shell, r=shell.r, e=shell.e)
    heights = [((name, port), sheet.take(f"a of {name}", port.height)) for name, port in barrel.ports]
    along = sheet.worst(
        *(
            _hole(name, shell, a, min(l_s, barrel.beside(name, port, a, sheet)), sheet)
            for (name, port), a in heights
        )
    )
    b = sum(_width(name, port, sheet) for name, port in barrel.ports)
    σ = sheet.work("σ_x", stress_beside_ports, P=shell.P, r=shell.r, e=shell.e, b=b)
    S = sheet.work("S_x", multiple_of_allowable, k=sheet.limit("beside ports", "k_x"), f=shell.f)
    return sheet.worst(
        along,
        sheet.at_most(σ, S).else_says("metal between ports {item} stressed to {found}, {limit} allowed"),
    )


def _width(name: str, port: BlockPort, sheet: Sheet) -> Metres:
    return sheet.take(f"b of {name}", port.width)


@rule(
    "opening.in-flat-wall",
    edition=5,
    title="A flat wall with an opening is so thick, net of corrosion, that what is cut out is replaced, or √2 times as "
    "thick as without it; beyond half of its shorter side as the metal across the opening needs",
    wrong="wall with opening {item} {found} thick, {limit} wanted",
    on=CylinderBlock,
    cases=CASES,
    grade=Grade.HOLD,
    cites=[UG_39, RECTANGULAR_VESSELS, FIRST_PRINCIPLES],
    why="A hole in the middle of a flat wall takes out the very strip that carries it.",
    leaves_out=f"openings near a corner, ribs beside them, loads of pipes, the seat ring in a bore; {DEFERS}",
    against=("burst",),
    limits=[
        Limit(
            "bending_factor",
            "1.5",
            "ratio",
            RECTANGULAR_VESSELS,
            "allowable bending over allowable tensile stress",
        ),
    ],
)
def in_flat_wall(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """Net thickness against t_0 with the opening, t_0 = t √(σ/S) of the wall without it."""
    cuts = [*cuts_of(block, sheet), *seats_cut_in(block, sheet)]
    flat = [(cut.name, cut) for cut in cuts if is_in_flat_wall(cut, sheet)]
    silent = silent_seats(block, sheet)
    if not (flat or silent):
        raise sheet.not_applicable("no opening is stated in a flat wall")

    def judge(item: tuple[str, Cut]) -> Judgement:
        name, cut = item
        wall_name, wall = sheet.read(f"wall of {name}", cut.opening.flat_wall), wall_of(cut, sheet)
        loaded = loaded_wall(wall_name, wall, cut.weldment, case, block, sheet)
        σ, S = stress_of_panel(wall_name, wall, loaded, cut.weldment, sheet)
        t_0 = sheet.work(f"t_0 of {name}", wall_without_opening, t=loaded.t, σ=σ, S=S)
        wanted = sheet.work(
            f"t_n of {name}",
            wall_with_opening,
            t_0=t_0,
            d=hole_of(name, cut.opening, sheet),
            a=sheet.take(f"a of {wall_name}", wall.short),
            A_b=_spare_of_branch(cut, wall_name, wall, loaded, case, sheet),
        )
        return sheet.at_least(loaded.t, wanted)

    judged = [sheet.each(flat, judge)] if flat else []
    if silent:
        says = f"in which flat wall or plate they are cut is not stated by the seat bores {', '.join(silent)}"
        judged.append(sheet.states(False, says, where=block.where).graded(Grade.QUERY))
    return sheet.worst(*judged)


def _spare_of_branch(
    cut: Cut, wall_name: str, wall: FlatWall, loaded: Loaded, case: LoadCase, sheet: Sheet
) -> SquareMetres:
    """Metal that a branch in a flat wall has to spare outside; nothing without a branch."""
    name, opening = cut.name, cut.opening
    if sheet.read(f"{name} is", opening.set) not in ("set in", "set on"):
        return 0.0
    drawn = wall_of_branch(cut, sheet)
    c = sheet.take(f"c of {wall_name}", plate_named(cut.weldment, wall.plate, sheet).corrosion_allowance)
    t_n = sheet.work(f"e_n of {name}", wasted_thickness, t=drawn, c=c)
    sides = list(sides_of(wall_name, wall, sheet))
    f_b = tension_of_branch(cut, sides, drawn, case, sheet)
    f = sheet.look_up(f"f of {wall_name}", loaded.metal.allowable_tension, at=loaded.at, wall=loaded.rolled)
    d = hole_of(name, opening, sheet)
    t_rn = sheet.work(f"t_rn of {name}", thickness_required, P=loaded.p, R=d / 2, S=f_b)
    f_r = min(1.0, f_b / f)
    A_b = sheet.work(f"A_b of {name}", area_of_branch, t=loaded.t, t_n=t_n, t_rn=t_rn, f_r=f_r)
    return max(0.0, A_b)


RULES: tuple[Rule, ...] = (metal_replaced, in_flat_wall)
