"""The fit of a liner in its bore: stress cold and in warming, interference left hot, closing of the bore."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from msgspec.structs import asdict

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.fits import (
    COMPOUND,
    DIN_7190_2001,
    DRAWING_TEMPERATURE,
    SHRINK_FIT,
    bore_closing,
    contact_pressure,
    gap_of_interference,
    inner_hoop_stress,
    outer_tresca_stress,
    pressing_interference,
    relative_growth,
    shell_pressure,
)
from speclint.handbook.materials import share_of_strength
from speclint.handbook.tables import Reading
from speclint.specs import HOT_CASES, CylinderLiner
from speclint_liners.formulae.walls import compression
from speclint_liners.inputs.as_made import metal_of_wall
from speclint_liners.inputs.cylinders import ends_beside
from speclint_liners.inputs.fitted import (
    Elastic,
    Fit,
    HotFit,
    Housing,
    cold_fit,
    elastic,
    gripping,
    hot_fit,
    housing,
    in_stiffest_block,
)
from speclint_liners.inputs.pressures import pressure_inside
from speclint_liners.inputs.retention import LIMITS, retention

if TYPE_CHECKING:
    from speclint.specs import LoadCase

SHARES = [
    Limit("liner_share", "0.5", "ratio", COMMON_PRACTICE, "share of the iron's compressive strength"),
    Limit("block_share", "0.67", "ratio", COMMON_PRACTICE, "share of the block's proof stress"),
]


def _pressing(symbol: str, rings: Elastic, fit: Fit, sheet: Sheet) -> float:
    """The contact pressure of the interference by the drawings."""
    pressing = sheet.work("δ_p", pressing_interference, delta=fit.delta)
    return sheet.work(
        symbol,
        contact_pressure,
        delta=pressing,
        d_in=rings.d,
        D=rings.D,
        D_out=rings.D_s,
        E_in=rings.E,
        nu_in=rings.nu,
        E_out=rings.E_s,
        nu_out=rings.nu_s,
    )


def _both_stresses(
    liner: CylinderLiner,
    housed: Housing,
    rings: Elastic,
    pressures: tuple[float, float],
    at: tuple[float, float],
    sheet: Sheet,
) -> Judgement:
    """Compression of the liner under the first pressure, Tresca of the block under the second."""
    squeezed = sheet.work("σ_l", inner_hoop_stress, p=pressures[0], d_in=rings.d, D=rings.D)
    pressed = sheet.work("σ_c", compression, sigma=squeezed)
    iron = sheet.look_up("R_c", sheet.material_of(liner).compressive_strength, of=liner, at=at[0])
    may_liner = sheet.work("σ_c,all", share_of_strength, k=sheet.limit("liner_share", "k_l"), R=iron)
    tresca = sheet.work("σ_T", outer_tresca_stress, p=pressures[1], D=rings.D, D_out=rings.D_s)
    metal, made = metal_of_wall(housed.bore, housed.block, sheet)
    proof = sheet.look_up("R_p", metal.proof_stress, of=housed.block, at=at[1], thickness=made)
    may_block = sheet.work("σ_T,all", share_of_strength, k=sheet.limit("block_share", "k_b"), R=proof)
    return sheet.worst(
        sheet.at_most(pressed, may_liner).else_says("fit compresses the liner to {found}, {limit} allowed"),
        sheet.at_most(tresca, may_block).else_says("fit stresses the block to {found}, {limit} allowed"),
    )


@rule(
    "liner.fit-stress-cold",
    title="At the greatest interference, cold, the stress of neither the liner nor the block round it "
    "exceeds its share of the strength",
    on=CylinderLiner,
    grade=Grade.NONCONFORMITY,
    cites=[*SHRINK_FIT, COMMON_PRACTICE],
    why="A block that yields when the liner goes in has lost the fit before the engine is first steamed.",
    leaves_out="stress at the ends of the fit, ovality of both parts, residual stress of welding",
    against=("break under load",),
    against_on={"cylinder-block": ("break under load",)},
    limits=SHARES,
    edition=5,
)
def fit_stress_cold(liner: CylinderLiner, sheet: Sheet) -> Judgement:
    """Lamé of both rings under the contact pressure of the greatest interference.

    The block has its least wall; the liner is judged where the block is thicker, and presses harder.
    """
    housed = housing(liner, sheet)
    fit = cold_fit(liner, housed, sheet)
    rings = elastic(liner, housed, fit, DRAWING_TEMPERATURE, DRAWING_TEMPERATURE, sheet)
    pressures = (
        _pressing("p_∞", in_stiffest_block(rings, sheet), fit, sheet),
        _pressing("p_c", rings, fit, sheet),
    )
    at = (DRAWING_TEMPERATURE, DRAWING_TEMPERATURE)
    return _both_stresses(liner, housed, rings, pressures, at, sheet)


@rule(
    "liner.fit-warming",
    title="With liner and block each at its temperature in every hot case, first steam among them, the stress of "
    "neither exceeds its share of the strength",
    on=CylinderLiner,
    cases=(*HOT_CASES, "water"),
    grade=Grade.NONCONFORMITY,
    cites=[*COMPOUND, COMMON_PRACTICE],
    why="Whenever the liner is the hotter it expands in its block, and steam or water in it presses it outwards.",
    leaves_out="temperature differences through each wall and along the length",
    against=("break under load",),
    against_on={"cylinder-block": ("break under load",)},
    limits=SHARES,
    edition=5,
)
def fit_warming(liner: CylinderLiner, case: LoadCase, sheet: Sheet) -> Judgement:
    """Stress of the liner by heat and fit without steam, and of the block by heat, fit and steam."""
    housed = housing(liner, sheet)
    fit = cold_fit(liner, housed, sheet)
    hot = hot_fit(liner, housed, case, fit, sheet)
    rings = elastic(liner, housed, fit, hot.at_liner, hot.at_block, sheet)
    gap = sheet.work("c", gap_of_interference, delta=hot.delta)
    steam = pressure_inside(case, ends_beside(housed.block, liner, sheet), sheet)
    without = sheet.work("q_0", shell_pressure, p=0.0, c=gap, **asdict(rings))
    under_steam = sheet.work("q", shell_pressure, p=steam, c=gap, **asdict(rings))
    at = (hot.at_liner, hot.at_block)
    return _both_stresses(liner, housed, rings, (without, under_steam), at, sheet)


@rule(
    "liner.fit-hot",
    title="The fit keeps interference hot with its roughness smoothed, or a nipped collar or dowels strong enough hold "
    "the liner",
    on=CylinderLiner,
    cases=("starting", "running", "drifting", "standing-hot", "cooling"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[*SHRINK_FIT, DIN_7190_2001, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="The steel block expands more than the iron: a loose liner turns or moves along and closes its ports.",
    leaves_out="creep and embedding of the fit over years; drag of the piston rings on a loose liner, small beside "
    "the steam on its end; the local code and a competent person decide where a loose liner can trap steam or "
    "water",
    against=("loosen",),
    limits=LIMITS,
    edition=6,
)
def fit_hot(liner: CylinderLiner, case: LoadCase, sheet: Sheet) -> Judgement:
    """The least interference left with each part at its own temperature, both expansions at their worst.

    The interference is that left when the roughness of both faces is smoothed.
    """
    housed = housing(liner, sheet)
    fit = gripping(liner, housed, cold_fit(liner, housed, sheet), sheet)
    hot = hot_fit(liner, housed, case, fit, sheet)
    least, most = _loss(liner, housed, fit, hot, sheet)
    left = sheet.stays(hot.delta, fit.delta).else_says(
        "loose hot: {left} of interference left, and nothing else holds it"
    )
    if left.holds:
        return left
    loss = f"thermal expansion takes {sheet.millimetres(least, '.2f', most)} at these temperatures"
    grade = Grade.HOLD if _can_close_a_port(liner, sheet) else Grade.NONCONFORMITY
    held = retention(liner, housed, hot, case, sheet)
    if held is None:
        return left.saying(f"{left.says}; {loss}; nothing else holds the liner").graded(grade)
    loose = f"loose hot by {sheet.millimetres(-hot.delta, '.2f')} ({loss})"
    by = sheet.read("held by", liner.retained_by)
    if held.holds:
        return left.accepted(f"{loose}, and held by: {by}")
    return held.saying(f"{loose}, and not held by: {by}: {held.says}").graded(grade)


def _loss(liner: CylinderLiner, housed: Housing, fit: Fit, hot: HotFit, sheet: Sheet) -> tuple[float, float]:
    """The interference lost at the temperatures of this corner, over the whole band of both expansions."""
    iron, steel = sheet.material_of(liner), sheet.material_of(housed.block)

    def lost(symbol: str, of_iron: Band, of_steel: Band) -> float:
        return sheet.work(
            symbol,
            relative_growth,
            L=fit.bore,
            alpha_2=sheet.look_up("α_l", of_iron(iron.expansion), of=liner, at=hot.at_liner),
            T_2=hot.at_liner,
            alpha_1=sheet.look_up("α_b", of_steel(steel.expansion), of=housed.block, at=hot.at_block),
            T_1=hot.at_block,
            T_ref=DRAWING_TEMPERATURE,
        )

    return lost("Δ_least", greatest, least), lost("Δ_most", least, greatest)


Table = Callable[..., Reading]
Band = Callable[[Table], Table]


def least(table: Table) -> Table:
    """The same table, read at the low end of its band."""

    def least_expansion(**at: Any) -> Reading:
        found = table(**at)
        return Reading.exact(f"least {found.what}", found.low, found.unit, found.source)

    return least_expansion


def greatest(table: Table) -> Table:
    """The same table, read at the high end of its band."""

    def greatest_expansion(**at: Any) -> Reading:
        found = table(**at)
        return Reading.exact(f"greatest {found.what}", found.high, found.unit, found.source)

    return greatest_expansion


def _can_close_a_port(liner: CylinderLiner, sheet: Sheet) -> bool:
    """Whether the liner has openings that must meet ports of the block."""
    return any(sheet.is_stated(f"port {name}", port.matches) for name, port in liner.ports.items())


@rule(
    "liner.bore-after-pressing",
    title="The bore is finished after the liner is in, or closes by no more than its tolerance",
    on=CylinderLiner,
    grade=Grade.NONCONFORMITY,
    cites=SHRINK_FIT,
    why="Pressing in a liner reduces its bore, more over the lands than between them.",
    leaves_out="uneven bore between lands, ovality of the block, which is taken as thick without end: less of it "
    "closes the bore by less",
    against=(),
    edition=2,
)
def bore_after_pressing(liner: CylinderLiner, sheet: Sheet) -> Judgement:
    """Reduction of the bore by the contact pressure of the stiffest block against the bore's tolerance."""
    if sheet.read("finished after", liner.finish_bored_after):
        return sheet.states(True, "the bore is finished after the liner is in")
    housed = housing(liner, sheet)
    fit = cold_fit(liner, housed, sheet)
    rings = elastic(liner, housed, fit, DRAWING_TEMPERATURE, DRAWING_TEMPERATURE, sheet)
    pressure = _pressing("p_∞", in_stiffest_block(rings, sheet), fit, sheet)
    closes = sheet.work("Δd", bore_closing, p=pressure, d_in=rings.d, D=rings.D, E_in=rings.E)
    return sheet.at_most(closes, sheet.tolerance("IT", liner.bore)).else_says(
        "bore closes by {found} when the liner goes in, its tolerance is {limit}"
    )


RULES = (fit_stress_cold, fit_warming, fit_hot, bore_after_pressing)
