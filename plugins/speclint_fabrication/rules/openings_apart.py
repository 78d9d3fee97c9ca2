"""Openings beside each other, and beside welds, corners, flanges and ribs."""

from __future__ import annotations

from itertools import pairwise

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres
from speclint.specs import CylinderBlock, LoadCase
from speclint_fabrication.formulae.openings import (
    apart_alone,
    between_ports,
    least_to_edge,
    reach_in_shell,
    stress_between_openings,
    stress_of_ligament,
)
from speclint_fabrication.inputs.openings import (
    Cut,
    Shell,
    bores_of_plate,
    cuts_of,
    hole_of,
    is_in_flat_wall,
    plate_of,
    shell_of,
    sides_of_cut,
    wall_of,
)
from speclint_fabrication.inputs.ports import Barrel, barrels_of
from speclint_fabrication.rules.openings import CASES, DEFERS, TEST
from speclint_fabrication.rules.walls import loaded_wall, stress_of_panel
from speclint_fabrication.sources import (
    OPENING_TO_EDGE,
    OPENINGS_APART,
    RECTANGULAR_VESSELS,
    UG_53,
)


@rule(
    "opening.apart",
    edition=4,
    title="Openings so near that they weaken each other leave a ligament that carries the load of both, and each is "
    "clear of welds, corners, flanges and ribs, or cut through a weld that is fully examined",
    on=CylinderBlock,
    cases=CASES,
    grade=Grade.HOLD,
    cites=[UG_53, OPENINGS_APART, OPENING_TO_EDGE, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A row of holes is a line of perforation: the shell tears along it as a stamp does.",
    leaves_out="openings nearer aslant than along the axis of the shell, tapped holes that do not break through, bores "
    f"of valve seats; {DEFERS}",
    against=("burst",),
    limits=[
        Limit(
            "bending_factor",
            "1.5",
            "ratio",
            RECTANGULAR_VESSELS,
            "allowable bending over allowable tensile stress",
        ),
        Limit(
            "examined", "1", "ratio", OPENING_TO_EDGE, "least examined share of a weld that is cut through"
        ),
        TEST,
    ],
)
def apart(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """Pairs nearer than 2 l_s and half of both: P r_m/(e η); the edge of each at max(0.2 l_s, 3 e)."""
    cuts, barrels = cuts_of(block, sheet), barrels_of(block, sheet)
    pairs = [
        (f"{one.name} and {other.name}", (one, other))
        for one, other in pairwise(barrels)
        if one.bore == other.bore
    ]
    items: list[tuple[str, Cut | tuple[Barrel, Barrel]]] = [*((cut.name, cut) for cut in cuts), *pairs]
    if not items:
        raise sheet.not_applicable("no opening of the block is stated")

    def judge(item: tuple[str, Cut | tuple[Barrel, Barrel]]) -> Judgement:
        name, one = item
        if isinstance(one, tuple):
            return _ports_apart(*one, case, sheet)
        if is_in_flat_wall(one, sheet):
            return _in_wall(name, one, cuts, case, sheet)
        return _in_shell(name, one, cuts, barrels, case, sheet)

    return sheet.each(items, judge)


def _in_shell(
    name: str, cut: Cut, cuts: list[Cut], barrels: list[Barrel], case: LoadCase, sheet: Sheet
) -> Judgement:
    plate = plate_of(cut, sheet)
    of_plate = sheet.read(f"plate of {name}", cut.opening.plate)
    bores = bores_of_plate(of_plate, cut.block, sheet)
    shell = shell_of(of_plate, plate, sides_of_cut(cut, bores, sheet), bores, cut, case, sheet)
    l_s = sheet.work(f"l_s of {name}", reach_in_shell, r=shell.r, e=shell.e)
    beside = _to_edge(name, cut, sheet.work(f"a_n of {name}", least_to_edge, l_s=l_s, e=shell.e), sheet)
    d = hole_of(name, cut.opening, sheet)
    mates = [
        hole_of(other.name, other.opening, sheet)
        for other in cuts
        if _is_mate(cut, other, sheet)
        and not is_in_flat_wall(other, sheet)
        and sheet.read(f"plate of {other.name}", other.opening.plate) == of_plate
    ]
    for barrel in barrels:
        if barrel.of_plate == of_plate:
            mates += [a for _, a in barrel.places(sheet)]
    if not mates:
        return beside
    p = sheet.take(f"p of {name}", cut.opening.to_next)
    return sheet.worst(beside, _ligament(name, shell, l_s, p, d, max(mates), sheet))


def _is_mate(cut: Cut, other: Cut, sheet: Sheet) -> bool:
    """Whether another opening is the one that ``to_next`` of an opening leads to, or may be.

    Of a row it is one of its own, or of another row: what stands alone states its own distance to the row.
    """
    if _is_row(cut, sheet):
        return other is cut or _is_row(other, sheet)
    return other is not cut


def _is_row(cut: Cut, sheet: Sheet) -> bool:
    count = cut.opening.count
    return sheet.is_stated(f"how many of {cut.name}", count) and sheet.count(f"n of {cut.name}", count) > 1


def _ligament(
    name: str, shell: Shell, l_s: Metres, p: Metres, d_1: Metres, d_2: Metres, sheet: Sheet
) -> Judgement:
    alone = sheet.work(f"n of {name}", apart_alone, l_s=l_s, d_1=d_1, d_2=d_2)
    if p >= alone:
        return sheet.at_least(p, alone).else_says("opening {item} {found} from the next, {limit} wanted")
    σ = sheet.work(f"σ of {name}", stress_of_ligament, P=shell.P, r=shell.r, e=shell.e, p=p, d_1=d_1, d_2=d_2)
    return sheet.at_most(σ, shell.f).else_says(
        "ligament beside opening {item} stressed to {found}, {limit} allowed"
    )


def _to_edge(name: str, cut: Cut, least: Metres, sheet: Sheet) -> Judgement:
    """Clear of welds and corners; cut through a weld, that weld is examined over its whole length."""
    if sheet.is_stated(f"weld that {name} is cut through", cut.opening.through_weld):
        weld = sheet.entry(cut.weldment.joints, cut.opening.through_weld, f"joints of {cut.weldment.id}")
        return sheet.at_least(sheet.take(f"x of {name}", weld.examined), sheet.limit("examined")).else_says(
            "opening {item} is cut through a weld examined over {found}, {limit} wanted"
        )
    edge = sheet.at_least(sheet.take(f"a of {name}", cut.opening.to_edge), least).else_says(
        "opening {item} lies {found} from a weld, corner, flange or rib, {limit} wanted"
    )
    return edge.graded(Grade.NONCONFORMITY)


def _in_wall(name: str, cut: Cut, cuts: list[Cut], case: LoadCase, sheet: Sheet) -> Judgement:
    wall_name, wall = sheet.read(f"wall of {name}", cut.opening.flat_wall), wall_of(cut, sheet)
    loaded = loaded_wall(wall_name, wall, cut.weldment, case, cut.block, sheet)
    least = sheet.work(f"a_n of {name}", least_to_edge, l_s=0.0, e=loaded.t)
    beside = _to_edge(name, cut, least, sheet)
    mates = [
        hole_of(other.name, other.opening, sheet)
        for other in cuts
        if _is_mate(cut, other, sheet)
        and is_in_flat_wall(other, sheet)
        and sheet.read(f"wall of {other.name}", other.opening.flat_wall) == wall_name
    ]
    if not mates:
        return beside
    σ, S = stress_of_panel(wall_name, wall, loaded, cut.weldment, sheet)
    σ_η = sheet.work(
        f"σ_η of {name}",
        stress_between_openings,
        σ=σ,
        p=sheet.take(f"p of {name}", cut.opening.to_next),
        d_1=hole_of(name, cut.opening, sheet),
        d_2=max(mates),
    )
    return sheet.worst(
        beside,
        sheet.at_most(σ_η, S).else_says("wall beside opening {item} stressed to {found}, {limit} allowed"),
    )


def _ports_apart(one: Barrel, other: Barrel, case: LoadCase, sheet: Sheet) -> Judgement:
    """The nearest ports of both ends of a bore."""
    shell = one.shell(case, sheet)
    l_s = sheet.work("l_s", reach_in_shell, r=shell.r, e=shell.e)
    judged = [
        _ligament(
            f"{one.name} and {other.name}",
            shell,
            l_s,
            sheet.work("p", between_ports, x_1=x_1, x_2=x_2),
            a_1,
            a_2,
            sheet,
        )
        for x_1, a_1 in one.places(sheet)
        for x_2, a_2 in other.places(sheet)
    ]
    return sheet.worst(*judged)


RULES: tuple[Rule, ...] = (apart,)
