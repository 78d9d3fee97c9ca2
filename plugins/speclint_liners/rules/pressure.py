"""The block as a pressure part: its hydraulic test, and the walls between its bores and passages."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Kelvins, Metres, Pascals
from speclint.facts import Panel, liners_of, panels_of_division, wall_beyond_relief, wall_round
from speclint.handbook.cylinders import bore_hoop_stress, outside_of_wall
from speclint.handbook.fits import DRAWING_TEMPERATURE, outer_tresca_stress
from speclint.handbook.materials import Material, share_of_strength
from speclint.handbook.plates import PANEL_TABLES, panel_stress, panel_stress_factor
from speclint.specs import CylinderBlock
from speclint_liners.formulae.walls import bore_stress_of_wall, thinnest_wall, wall_when_wasted
from speclint_liners.formulae.water import greatest_pressure_across, wanted_test_pressure
from speclint_liners.inputs.as_made import liner_as_cast, metal_of_panel, metal_of_wall
from speclint_liners.inputs.cylinders import bores_in_work
from speclint_liners.inputs.fitted import off_centre
from speclint_liners.inputs.neighbours import missing_divisions, temperatures_beside
from speclint_liners.inputs.pressures import beside
from speclint_liners.sources import ASME_VIII, EN_13445_3, EN_13445_5, LAME, PED

if TYPE_CHECKING:
    from speclint.specs import Bore, Division, LoadCase


@rule(
    "cylinder.test-pressure",
    title="The hydraulic test pressure is at least that required by the hottest wall in service, and "
    "stresses each liner and bore, relieved and at its last bore too, to no more than its share of "
    "the strength",
    on=CylinderBlock,
    cases=("starting", "running"),
    grade=Grade.HOLD,
    cites=[EN_13445_5, PED, ASME_VIII.at("UCI-99"), COMMON_PRACTICE],
    why="Cold metal is stronger: a test pressure only just above the duty proves nothing about the hot "
    "block.",
    leaves_out="the safety of the test itself: only water, proven gauges, and nobody close by; the local "
    "code named in the settings and a competent person decide the pressure",
    against=("burst",),
    limits=[
        Limit("factor", "1.5", "ratio", COMMON_PRACTICE, "least test pressure over the duty"),
        Limit(
            "strength_factor",
            "1.25",
            "ratio",
            EN_13445_5,
            "factor on the ratio of strengths, cold over hot",
        ),
        Limit("iron_factor", "2", "ratio", ASME_VIII.at("UCI-99"), "least factor for a block of cast iron"),
        Limit(
            "steel_share", "0.9", "ratio", COMMON_PRACTICE, "share of the proof stress of steel at the test"
        ),
        Limit("iron_share", "0.2", "ratio", COMMON_PRACTICE, "share of the strength of iron at the test"),
        Limit("relieved wall", "1 mm", "length", COMMON_PRACTICE, "least wall of which a stress is worked"),
    ],
    edition=8,
)
def hydraulic_test(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """Test pressure against the duty and the loss of strength with heat; stress of block and liners at the test.

    Each wall is taken as hot as the block or the hottest passage that it bounds, its strength as rolled or cast.
    """
    test = sheet.take("p_t", block.test_pressure)
    duty = sheet.take("p", case.safety_valve_pressure)
    hot = sheet.take("T_b", case.temperature_of(block))
    sheet.setting("pressure codes")
    if not block.bores:
        raise sheet.not_assessed(f"bores is not stated in {block.where.file}", block.where)

    def judge_bore(item: tuple[str, Bore]) -> Judgement:
        name, bore = item
        made = metal_of_wall(bore, block, sheet)
        enough = sheet.at_least(test, _required(block, made, duty, hot, sheet)).else_says(
            "tested at {found}, bore {item} requires {limit}"
        )
        stressed = _block_at_test(block, name, made, test, sheet)
        return sheet.worst(enough, stressed, *_liners_at_test(block, name, test, sheet))

    def judge_division(division: Division) -> Judgement:
        return sheet.worst(
            *(
                sheet.at_least(
                    test, _required(block, metal_of_panel(panel, division, block, sheet), duty, at, sheet)
                ).else_says("tested at {found}, {item} requires {limit}")
                for panel in panels_of_division(division, block, sheet)
                for at in temperatures_beside(panel.sides, block, case, sheet)
            )
        )

    bores = sheet.each(block.bores.items(), judge_bore)
    if not block.divisions:
        return bores
    return sheet.worst(bores, sheet.each(block.divisions.values(), judge_division))


def _required(
    block: CylinderBlock, made: tuple[Material, Metres], duty: Pascals, hot: Kelvins, sheet: Sheet
) -> Pascals:
    """The test pressure that one wall requires, by the loss of its strength with heat."""
    metal, thickness = made
    return sheet.work(
        "p_w",
        wanted_test_pressure,
        p=duty,
        k=sheet.limit("iron_factor" if metal.family == "grey-iron" else "factor"),
        k_T=sheet.limit("strength_factor"),
        f_20=sheet.look_up("f_20", metal.allowable_tension, of=block, at=DRAWING_TEMPERATURE, wall=thickness),
        f_T=sheet.look_up("f_T", metal.allowable_tension, of=block, at=hot, wall=thickness),
    )


def _block_at_test(
    block: CylinderBlock, name: str, made: tuple[Material, Metres], test: Pascals, sheet: Sheet
) -> Judgement:
    """The ring of block round a bore, as if the liner were not there; rebored to its last where there is none.

    Where the bore is relieved, the same outside stands round the relieved diameter.
    """
    bore = block.bores[name]
    d = sheet.take("D_b", bore.diameter)
    t = wall_round(bore, block, sheet)
    outside = sheet.work("D_s", outside_of_wall, d=d, t=t)
    if not liners_of(block, name, sheet):
        d = max(d, sheet.take("D_last", bores_in_work(block, name, sheet)[1]))
    whole = _ring_at_test(block, (d, outside), made, test, sheet)
    relieved = [sheet.take(f"D_r {called}", one.diameter) for called, one in bore.relieved.items()]
    if not relieved:
        return whole
    widest = max(relieved)
    left = sheet.work("w_r", wall_beyond_relief, w=t, D=sheet.take("D_b", bore.diameter), D_r=widest)
    if left < (least := sheet.limit("relieved wall")):
        return sheet.at_least(left, least).else_says(
            "wall of bore {item} where it is relieved is {found}, {limit} at least"
        )
    thinned = _ring_at_test(block, (widest, outside), made, test, sheet, " where it is relieved")
    return sheet.worst(whole, thinned)


def _ring_at_test(
    block: CylinderBlock,
    ring: tuple[Metres, Metres],
    made: tuple[Material, Metres],
    test: Pascals,
    sheet: Sheet,
    place: str = "",
) -> Judgement:
    """The stress at the test of a ring of the block against its share of the strength of its metal."""
    (metal, thickness), (d, outside) = made, ring
    at = DRAWING_TEMPERATURE
    if metal.family == "grey-iron":
        stress = sheet.work("σ_b", bore_hoop_stress, p=test, d=d, D=outside)
        strength = sheet.look_up("R_m", metal.tensile_strength, of=block, at=at, thickness=thickness)
        share = sheet.limit("iron_share")
    else:
        stress = sheet.work("σ_b", outer_tresca_stress, p=test, D=d, D_out=outside)
        strength = sheet.look_up("R_p", metal.proof_stress, of=block, at=at, thickness=thickness)
        share = sheet.limit("steel_share")
    allowed = sheet.work("S_b", share_of_strength, k=share, R=strength)
    return sheet.at_most(stress, allowed).else_says(
        f"test stresses the wall of bore {{item}}{place} to {{found}}, {{limit}} allowed"
    )


def _liners_at_test(block: CylinderBlock, bore: str, test: float, sheet: Sheet) -> Iterator[Judgement]:
    """Each liner in a bore, new and alone, in its thinnest wall."""
    for liner in liners_of(block, bore, sheet):
        d, outside = sheet.take("d", liner.bore), sheet.take("D_l", liner.outside_diameter)
        wall = sheet.work("t_l", thinnest_wall, d=d, D=outside, e=off_centre(liner, sheet))
        stress = sheet.work("σ_l", bore_stress_of_wall, p=test, d=d, t=wall)
        iron, cast = sheet.material_of(liner), liner_as_cast(liner, sheet)
        strength = sheet.look_up(
            "R_m", iron.tensile_strength, of=liner, at=DRAWING_TEMPERATURE, thickness=cast
        )
        yield sheet.at_most(
            stress, sheet.work("S_l", share_of_strength, k=sheet.limit("iron_share"), R=strength)
        ).else_says("test stresses the liner of bore {item} to {found}, {limit} allowed")


@rule(
    "cylinder.between-bores",
    title="The stress of each wall between neighbouring bores and passages, wasted and at the greatest pressure "
    "difference, does not exceed the allowable stress of its metal",
    wrong="{item} stressed to {found}, {limit} allowed",
    on=CylinderBlock,
    cases=("starting", "running", "water"),
    grade=Grade.HOLD,
    cites=[
        LAME,
        PANEL_TABLES,
        EN_13445_3,
        COMMON_PRACTICE,
    ],
    why="The thin wall between two passages is where a block cracks first, and nobody can see it.",
    leaves_out="thermal stress, welds, walls of another shape; walls beside valve seats, whose places are not "
    "stated; the local code and a competent person decide",
    against=("burst",),
    edition=9,
)
def between_bores(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """Each dividing wall as a flat plate, as a ring, or as the worse of both; none left out.

    One that names a flat wall of the weldment is as that is drawn, with its edges; another has clamped edges.

    One that names a bore and no diameter of its own is a ring of that bore.

    The greatest pressure of one side meets the least of the other at some moment of the case and the stroke.
    """
    if not block.divisions:
        raise sheet.not_assessed(f"divisions is not stated in {block.where.file}", block.where)
    judged = sheet.each(block.divisions.values(), lambda one: _division(one, block, case, sheet))
    missing = missing_divisions(block, sheet)
    if judged.holds and missing:
        said = f"divisions: {'; '.join(missing)} is not stated in {block.where.file}"
        raise sheet.not_assessed(said, block.where)
    return judged


def _division(division: Division, block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """Each wall of a division: one, or two with a hollow between them."""
    panels = panels_of_division(division, block, sheet)
    return sheet.worst(*(_judged(panel, division, block, case, sheet) for panel in panels))


def _judged(
    panel: Panel, division: Division, block: CylinderBlock, case: LoadCase, sheet: Sheet
) -> Judgement:
    metal, made = metal_of_panel(panel, division, block, sheet)
    wasted = sheet.work(
        "t_w", wall_when_wasted, t=sheet.take("t", panel.thickness), w=_wasting(panel, division, sheet)
    )
    pressure = max(
        _across(sides, case, block, sheet) for sides in _pairs_of_sides(division, panel.sides, sheet)
    )
    allowables = [
        sheet.look_up("f", metal.allowable_tension, of=block, at=at, wall=made)
        for at in temperatures_beside(panel.sides, block, case, sheet)
    ]
    return sheet.worst(
        *(
            sheet.at_most(stress, min(allowables))
            for stress in _stresses(panel, division, block, pressure, wasted, sheet)
        )
    )


def _wasting(panel: Panel, division: Division, sheet: Sheet) -> Metres:
    """What wastes away of a wall: as the division states, and no less than its plate is allowed to corrode."""
    wasting = sheet.take("w", division.wasting)
    plate = panel.plate
    if plate is None or not sheet.is_stated("corrosion of the plate", plate.corrosion_allowance):
        return wasting
    return max(wasting, sheet.take("c", plate.corrosion_allowance))


def _pairs_of_sides(division: Division, sides: Sequence[str], sheet: Sheet) -> list[tuple[str, str]]:
    """The fluids that a division may stand between: as stated, and with the cylinder beside each bore that it names.

    Where it names a bore and calls neither side a cylinder, either side may be.
    """
    one, other = sides
    pairs = [(one, other)]
    if "cylinder" not in sides and sheet.is_stated("bore", division.bore):
        pairs += [("cylinder", one), ("cylinder", other)]
    if sheet.is_stated("other bore", division.other_bore):
        pairs.append(("cylinder", "cylinder"))
    return pairs


def _across(sides: tuple[str, str], case: LoadCase, block: CylinderBlock, sheet: Sheet) -> Pascals:
    (p_1, q_1), (p_2, q_2) = (beside(side, case, block.ends.values(), sheet) for side in sides)
    return sheet.work("Δp", greatest_pressure_across, p_1=p_1, q_1=q_1, p_2=p_2, q_2=q_2)


def _stresses(
    panel: Panel, division: Division, block: CylinderBlock, pressure: float, thickness: float, sheet: Sheet
) -> Iterator[float]:
    """Stress as a flat wall where a span is stated, and as a ring where it has a diameter or stands beside a bore."""
    ringed, flat = sheet.is_stated("ring", division.ring_diameter), sheet.is_stated("span", panel.short)
    if flat or not ringed:
        span, length = sheet.take("a", panel.short), sheet.take("b", panel.long)
        edges = "clamped" if panel.edges is None else sheet.read("edges", panel.edges)
        factor = sheet.look_up("k", panel_stress_factor, edges=edges, a=span, b=length)
        yield sheet.work("σ_f", panel_stress, k=factor, p=pressure, a=span, t=thickness)
    if not (ringed or sheet.is_stated("bore", division.bore)):
        return
    d = sheet.take("d", division.ring_diameter if ringed else _beside(division, block, sheet).diameter)
    outside = sheet.work("D", outside_of_wall, d=d, t=thickness)
    yield sheet.work("σ_r", bore_hoop_stress, p=pressure, d=d, D=outside)


def _beside(division: Division, block: CylinderBlock, sheet: Sheet) -> Bore:
    return sheet.entry(block.bores, division.bore, f"bores of {block.id}")


RULES = (hydraulic_test, between_bores)
