"""Oil: where it is fed, and whether it withstands the heat."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Kelvins, PascalSeconds
from speclint.facts import greatest_live_pressure, spindles_into
from speclint.handbook.heat import flash_point_margin
from speclint.specs import (
    CamBox,
    Component,
    CylinderBlock,
    CylinderLiner,
    LoadCase,
    PistonRing,
    ValveSpindle,
)
from speclint_pairings.formulae.surfaces import dynamic_viscosity, oil_density_when_hot, viscosity_when_hot
from speclint_pairings.formulae.tables import (
    oil_density,
    oil_expansion,
    oil_viscosity_at_40,
    oil_viscosity_at_100,
)
from speclint_pairings.sources import ASTM_D341, ISO_3448


@rule(
    "lubrication.points",
    title="Each sliding pair in steam has an oil feed, a drain and a check valve proved to the pressure of the "
    "safety valves; a cam box has oil, spindle seals, a drain and a leak-off for each spindle",
    wrong="check valve proved for {found}, live steam has {limit}",
    on=(CamBox, CylinderBlock, CylinderLiner, ValveSpindle),
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="without a check valve the steam drives the oil back to the lubricator, and without a drain "
    "water displaces it from the joint; water that follows a spindle into the cam box emulsifies its oil",
    leaves_out="quantity of oil; whether a seal withstands its heat and speed (spindle.seal)",
    against=("seize", "wear"),
    against_on={"cam-box": ("leak",)},
    edition=4,
)
def points(component: Component, case: LoadCase, sheet: Sheet) -> Judgement:
    """Feed, check valve and drain are stated, and the check valve's proof pressure against that of the safety valves.

    A cam box has oil, seals round its spindles and a drain, and each spindle a leak-off before them.
    """
    if isinstance(component, CamBox):
        return _kept_dry(component, sheet)
    if isinstance(component, CylinderBlock) and not _bare_rings(component, sheet):
        raise sheet.not_applicable("no ring bears on the block itself")
    oiled = component.lubrication
    fed = sheet.is_stated("feed", oiled.feed) and bool(sheet.read("feed", oiled.feed).strip())
    missing = [] if fed else ["feed"]
    missing += [
        name
        for name, value in (("check_valve", oiled.check_valve), ("drained", oiled.drained))
        if not sheet.read(name, value)
    ]
    if missing:
        return sheet.states(False, f"without {', '.join(missing)}", where=oiled.where)
    proved = sheet.take("p_c", oiled.check_valve_pressure)
    return sheet.at_least(proved, sheet.take("p", greatest_live_pressure(case, sheet)))


def _kept_dry(box: CamBox, sheet: Sheet) -> Judgement:
    """The means that keep water along the spindles out of a cam box."""
    spindles = {spindle.id: spindle for spindle in spindles_into(box, sheet)}
    if not spindles:
        raise sheet.not_assessed(
            "no tappet or rocker of a spindle states that it is carried in it", box.where
        )
    missing = [] if sheet.read("lubricant", box.lubrication.lubricant) != "none" else ["oil"]
    missing += (
        [] if sheet.read("spindle seals", box.spindle_seals) != "none" else ["seals round its spindles"]
    )
    missing += [] if sheet.read("drained", box.lubrication.drained) else ["a drain"]
    missing += [
        f"a leak-off of {name}"
        for name, spindle in spindles.items()
        if not sheet.is_stated(f"leak-off of {name}", spindle.leak_off)
    ]
    says = f"without {', '.join(missing)}" if missing else f"sealed at {len(spindles)} spindles and drained"
    return sheet.states(not missing, says, where=box.spindle_seals.where)


@rule(
    "pairing.lubricant",
    title="The cylinder oil's flash point is at least 30 K above the wall or the spindle that it wets, and "
    "its viscosity there at least 1.2 mPa·s",
    on=(CylinderBlock, CylinderLiner, ValveSpindle),
    cases=("starting", "running", "drifting"),
    grade=Grade.OBSERVATION,
    cites=[
        ISO_3448.at("table 1, classes at 40 °C"),
        ASTM_D341.at("annex, equations A1 and A2"),
        COMMON_PRACTICE,
    ],
    why="an oil near its flash point evaporates from the wall and cokes in the ring grooves; one too "
    "thin leaves the wall dry",
    leaves_out="air drawn in when drifting, which burns an oil that steam would not; compounding "
    "against wet steam; oils that are not straight mineral oils",
    against=("wear",),
    edition=3,
    limits=[
        Limit(
            "margin",
            "30 K",
            "temperature difference",
            COMMON_PRACTICE,
            "least margin of the flash point above the wall temperature",
        ),
        Limit(
            "thinnest",
            "1.2 mPa·s",
            "viscosity",
            COMMON_PRACTICE,
            "least dynamic viscosity on the wall, a little more than that of cold water",
        ),
    ],
)
def lubricant(component: Component, case: LoadCase, sheet: Sheet) -> Judgement:
    """Flash point against the metal in the hot cases, and the viscosity of its class there after Walther."""
    if isinstance(component, CylinderBlock) and not _bare_rings(component, sheet):
        raise sheet.not_applicable("no ring bears on the block itself")
    T = sheet.take("T", case.temperature_of(component))
    flash = sheet.take("T_f", component.lubrication.flash_point)
    margin = sheet.work("ΔT", flash_point_margin, T_f=flash, T_w=T)
    thick = sheet.at_least(_viscosity(component, T, sheet), sheet.limit("thinnest", "η_n")).else_says(
        "oil thins to {found} hot, {limit} wanted"
    )
    return sheet.worst(
        sheet.at_least(margin, sheet.limit("margin", "ΔT_n")).else_says(
            "flash point over the temperature of the metal: {found}, {limit} wanted"
        ),
        thick,
    )


def _viscosity(component: Component, T: Kelvins, sheet: Sheet) -> PascalSeconds:
    oil = sheet.read("viscosity class", component.lubrication.viscosity_class)
    nu = sheet.work(
        "ν",
        viscosity_when_hot,
        nu_40=sheet.look_up("ν_40", oil_viscosity_at_40, oil_class=oil),
        nu_100=sheet.look_up("ν_100", oil_viscosity_at_100, oil_class=oil),
        T=T,
    )
    rho = sheet.work(
        "ρ",
        oil_density_when_hot,
        rho_15=sheet.look_up("ρ_15", oil_density, oil_class=oil),
        beta=sheet.look_up("β", oil_expansion),
        T=T,
        T_15=_FIFTEEN_CELSIUS,
    )
    return sheet.work("η", dynamic_viscosity, nu=nu, rho=rho)


#: At which the density of oils is stated [K].
_FIFTEEN_CELSIUS = 288.15


def _bare_rings(block: CylinderBlock, sheet: Sheet) -> bool:
    return bool(sheet.belonging_to(block, PistonRing))


RULES = (points, lubricant)
