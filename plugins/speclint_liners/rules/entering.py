"""Assembly of a liner: by pressing, chilling or heating."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import block_when_entering, lengths_of_fit
from speclint.handbook.fits import (
    DRAWING_TEMPERATURE,
    axial_grip,
    contact_pressure,
    pressing_interference,
    shrinkage_available,
    shrinkage_to_enter,
)
from speclint.handbook.tables import Reading
from speclint.specs import CylinderLiner
from speclint_liners.inputs.fitted import Fit, Housing, cold_fit, elastic, housing, in_stiffest_block
from speclint_liners.sources import DIN_7190, ITS_90

#: Temperatures at which the coolants boil or sublime at one atmosphere.
_COOLANTS = {
    "solid carbon dioxide": Reading.exact(
        "sublimation point of carbon dioxide", 194.686, "K", ITS_90.at("secondary reference points")
    ),
    "liquid nitrogen": Reading.exact(
        "boiling point of nitrogen", 77.352, "K", ITS_90.at("secondary reference points")
    ),
}


@rule(
    "liner.entering",
    title="The stated method of assembly gives at least the shrinkage that the liner needs, which is more than its "
    "interference, or needs no more than the force of the press",
    on=CylinderLiner,
    edition=5,
    grade=Grade.OBSERVATION,
    gravest=Grade.NONCONFORMITY,
    cites=[DIN_7190, COMMON_PRACTICE],
    why="A liner that sticks half-way must be bored out and scrapped.",
    leaves_out="loss of heat or cold before assembly; tempering of the block's welds; burns by heat and "
    "cold, and suffocation by nitrogen or carbon dioxide in pits, for which the works' own safety rules "
    "apply",
    against=(),
    limits=[
        Limit(
            "handling",
            "0.05 mm",
            "length",
            COMMON_PRACTICE,
            "allowance for handling and dirt",
            "not negative",
        ),
        Limit(
            "hottest_block",
            "200 °C",
            "temperature",
            COMMON_PRACTICE,
            "greatest temperature of the block, below any tempering",
        ),
        Limit(
            "friction",
            "0.2",
            "ratio",
            COMMON_PRACTICE,
            "greatest coefficient of friction of iron pressed into steel",
        ),
    ],
)
def entering(liner: CylinderLiner, sheet: Sheet) -> Judgement:
    """Shrinkage required against that by chilling and heating; or the force against that of the press.

    A liner that is larger than its bore still when they meet cannot enter: a nonconformity.
    """
    housed = housing(liner, sheet)
    fit = cold_fit(liner, housed, sheet)
    way = sheet.read("put in", liner.entered)
    if way == "pressed":
        return _by_press(liner, housed, fit, sheet)
    needed = sheet.work("s", shrinkage_to_enter, delta=fit.delta, a=sheet.limit("handling", "a"), D=fit.bore)
    return _by_heat(liner, housed, fit, needed, ("chilled" in way, "heated" in way), sheet)


def _by_press(liner: CylinderLiner, housed: Housing, fit: Fit, sheet: Sheet) -> Judgement:
    rings = in_stiffest_block(
        elastic(liner, housed, fit, DRAWING_TEMPERATURE, DRAWING_TEMPERATURE, sheet), sheet
    )
    pressure = sheet.work(
        "p_c",
        contact_pressure,
        delta=sheet.work("δ_p", pressing_interference, delta=fit.delta),
        d_in=rings.d,
        D=rings.D,
        D_out=rings.D_s,
        E_in=rings.E,
        nu_in=rings.nu,
        E_out=rings.E_s,
        nu_out=rings.nu_s,
    )
    length = max(lengths_of_fit(liner, sheet))
    force = sheet.work("F", axial_grip, mu=sheet.limit("friction", "μ"), p=pressure, D=fit.bore, L=length)
    return sheet.at_most(force, sheet.take("F_press", liner.press_force)).else_says(
        "liner needs {found} to go in, the press gives {limit}"
    )


def _by_heat(
    liner: CylinderLiner, housed: Housing, fit: Fit, needed: float, ways: tuple[bool, bool], sheet: Sheet
) -> Judgement:
    chilled, heated = ways
    cold = warm = DRAWING_TEMPERATURE
    judgements = []
    if chilled:
        coolant = _COOLANTS[sheet.read("chilled in", liner.coolant)]
        cold = sheet.look_up("T_l", lambda: coolant)
    if heated:
        warm = sheet.take("T_b", block_when_entering(liner, housed.block, sheet))
        judgements.append(
            sheet.no_hotter(warm, sheet.limit("hottest_block", "T_max")).else_says(
                "block heated to {found} for entering, {limit} allowed"
            )
        )
    gained = sheet.work(
        "s_max",
        shrinkage_available,
        D=fit.bore,
        alpha_out=sheet.look_up("α_b", sheet.material_of(housed.block).expansion, of=housed.block, at=warm),
        T_out=warm,
        alpha_in=sheet.look_up("α_l", sheet.material_of(liner).expansion, of=liner, at=cold),
        T_in=cold,
        T_ref=DRAWING_TEMPERATURE,
    )
    enters = sheet.at_least(gained, fit.delta).else_says(
        "liner cannot enter: heat and cold give {found}, its interference is {limit}"
    )
    return sheet.worst(
        enters.graded(Grade.NONCONFORMITY),
        sheet.at_least(gained, needed).else_says(
            "too little shrinkage for the liner to go in: {found}, {limit} wanted"
        ),
        *judgements,
    )


RULES = (entering,)
