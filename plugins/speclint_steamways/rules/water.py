"""The water of the first steam: that it gathers where a drain is, and that the drain passes it."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Kilograms, KilogramsPerCubicMetre, KilogramsPerSecond, Pascals, Ratio
from speclint.facts import mass_together
from speclint.handbook.members import round_area
from speclint.specs import CylinderBlock, Drain, LoadCase
from speclint_steamways.formulae.water import (
    density_of_boiling_water,
    drained_together,
    pressure_of_head,
    share_of_metal,
    water_allowed_for,
)
from speclint_steamways.inputs.chambers import (
    GATHERED,
    Chamber,
    chambers_of,
    draining_into,
    drains_of,
    metal_of_block,
    metal_of_chamber,
    water_at_first,
)

#: Water as it boils under the atmosphere, Pa absolute: that which leaves through drains is hardly denser.
_ATMOSPHERE = 101325.0


@rule(
    "water.of-warming",
    edition=4,
    title="All water that condenses as steam warms the block gathers in chambers that have a drain",
    on=CylinderBlock,
    cases=("warming",),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="Two tonnes of cold metal make more than fifty kilograms of water; what is not drained goes with the steam.",
    leaves_out="priming of the boiler, water hammer in pipes, heat lost to the air while the engine stands",
    against=("burst",),
    limits=[
        GATHERED,
        Limit(
            "counted",
            "98 %",
            "ratio",
            COMMON_PRACTICE,
            "least metal of the chambers with drains over that of the block",
        ),
    ],
)
def of_warming(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """M c (T_s − T_0)/r and its greatest rate; the metal of every chamber with a drain against all of the block.

    A chamber that states no metal may gather the water of all; together they drain no more than all.
    """
    chambers = chambers_of(block, sheet)
    if not chambers:
        raise sheet.not_applicable("neither a passage where water gathers nor an end of a cylinder is drawn")
    whole = metal_of_block(block, sheet)
    water_at_first(whole, block, case, sheet)
    lands: dict[str, Kilograms] = {}

    def judge(chamber: Chamber) -> Judgement:
        has_drain = bool(list(drains_of(chamber, sheet)))
        lands[chamber.name] = metal_of_chamber(chamber, whole, sheet) if has_drain else 0.0
        said = "has a drain" if has_drain else "gathers water and has no drain"
        return sheet.states(has_drain, f"{chamber.name} {said}", where=chamber.part.where)

    drained = sheet.each([(one.name, one) for one in chambers], lambda item: judge(item[1]))
    if len(lands) < len(chambers):
        return drained  # whether the others have drains is not stated
    share: Ratio = 0.0
    for metal in lands.values():
        share = sheet.work("x_M", share_of_metal, x_0=share, M_d=metal, M=whole)
    return sheet.worst(
        drained,
        sheet.at_least(share, sheet.limit("counted", "x_c")).else_says(
            "chambers with drains have {found} of the metal, {limit} wanted"
        ),
    )


@rule(
    "water.drain-passes-it",
    edition=4,
    title="The drains of each chamber pass 1.5 times the water of the first steam, with that drained into it, flashing "
    "at 0.2 bar, or by their head where no steam presses; each end and live chamber has one",
    on=CylinderBlock,
    cases=("warming",),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="Water that gathers faster than it drains goes into the cylinder with the first stroke and breaks the cover.",
    leaves_out="resistance of long drain pipes, and who opens the cocks and when; the local code and a competent "
    "person decide",
    against=("burst",),
    against_on={"cylinder-cover": ("burst",)},
    limits=[
        GATHERED,
        Limit(
            "margin", "1.5", "ratio", COMMON_PRACTICE, "least flow of the drains over the rate of the water"
        ),
        Limit("first", "0.2 bar", "pressure", COMMON_PRACTICE, "least pressure of the first steam"),
        Limit("discharge", "0.6", "ratio", COMMON_PRACTICE, "coefficient of discharge of a drain"),
        Limit(
            "flashing", "0.3", "ratio", COMMON_PRACTICE, "share of the flow left where water flashes to steam"
        ),
    ],
)
def drain_passes_it(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """C A √(2 ρ Δp) of all drains of a chamber against the greatest rate of its water, chamber by chamber.

    Of a chamber with several drains all water is taken to go by each of them.
    """
    chambers = chambers_of(block, sheet)
    if not chambers:
        raise sheet.not_applicable("neither a passage where water gathers nor an end of a cylinder is drawn")
    whole = metal_of_block(block, sheet)
    ρ = sheet.work("ρ", density_of_boiling_water, p=_ATMOSPHERE)

    def judge(chamber: Chamber) -> Judgement:
        drains = list(drains_of(chamber, sheet))
        if not drains:
            return _without_way(f"{chamber.name} has no drain", chamber, sheet)
        passed: KilogramsPerSecond = 0.0
        for name, drain in drains:
            passed = _passed(passed, name, drain, chamber, ρ, sheet)
        above = draining_into(chamber, chambers, block, sheet)
        if chamber.name in above:
            return _without_way(f"{chamber.name} drains back into itself", chamber, sheet)
        M = _metal_drained([chamber, *above.values()], whole, sheet)
        rate = water_at_first(M, block, case, sheet)
        return sheet.at_least(
            passed, sheet.work("w_a", water_allowed_for, n=sheet.limit("margin", "n"), w=rate)
        ).else_says("drains of {item} pass {found}, {limit} wanted")

    return sheet.each([(one.name, one) for one in chambers], lambda item: judge(item[1]))


def _without_way(said: str, chamber: Chamber, sheet: Sheet) -> Judgement:
    """Water that cannot leave a chamber: where steam is live it goes into the cylinder."""
    grade = Grade.NONCONFORMITY if chamber.exhaust else Grade.HOLD
    return sheet.states(False, said, where=chamber.part.where).graded(grade)


def _metal_drained(chambers: list[Chamber], whole: Kilograms, sheet: Sheet) -> Kilograms:
    """The metal whose water leaves by one chamber: its own and that of those above it, at most all of the block."""
    M: Kilograms = 0.0
    for one in chambers:
        M = sheet.work("M_s", mass_together, m_0=M, m_1=metal_of_chamber(one, whole, sheet))
    return min(M, whole)


def _passed(
    before: KilogramsPerSecond,
    name: str,
    drain: Drain,
    chamber: Chamber,
    ρ: KilogramsPerCubicMetre,
    sheet: Sheet,
) -> KilogramsPerSecond:
    """What a drain passes, with those before it: flashing by the first steam, or by gravity alone."""
    Δp: Pascals = sheet.limit("first", "Δp")
    k = sheet.limit("flashing", "k")
    if chamber.exhaust:
        k, Δp = 1.0, sheet.work("Δp_h", pressure_of_head, ρ=ρ, H=sheet.take(f"H_{name}", drain.head))
    A = sheet.work("A_d", round_area, d=sheet.take(f"d_{name}", drain.bore))
    C = sheet.limit("discharge", "C")
    return sheet.work(f"w_{chamber.name}", drained_together, w_0=before, k=k, C=C, A=A, ρ=ρ, Δp=Δp)


RULES: tuple[Rule, ...] = (drain_passes_it, of_warming)
