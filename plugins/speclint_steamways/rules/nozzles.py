"""The blast nozzle, and the branches that take steam before it."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import KilogramsPerSecond, MetresPerSecond, Pascals
from speclint.facts import (
    Stage,
    SteamPath,
    bores_on,
    branches_off,
    flow_to,
    flow_together,
    jet_speed,
    opening_of,
    paths_into,
    steam_along,
)
from speclint.handbook.members import load_ratio, share_of_bore, size_ratio
from speclint.handbook.steam import (
    IF97,
    jet_momentum,
    nozzle_mass_flow,
    steam_critical_pressure_ratio,
    steam_nozzle_flux,
)
from speclint.handbook.tables import POCKET_BOOK
from speclint.specs import BlastNozzle, LoadCase
from speclint_steamways.formulae.paths import flow_ratio, pressure_share

STEAM = IF97.at("basic and backward equations")


def _paths(nozzle: BlastNozzle, case: LoadCase, sheet: Sheet) -> list[tuple[tuple[Stage, ...], SteamPath]]:
    return [(stages, steam_along(stages, case, sheet)) for stages in paths_into(nozzle, sheet)]


def _atmosphere(sheet: Sheet) -> Pascals:
    return float(sheet.setting("site pressure"))


@rule(
    "blast-pipe.area",
    title="The nozzle passes the exhaust flow at the duty's back pressure, and does not choke",
    on=BlastNozzle,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[
        STEAM,
        FIRST_PRINCIPLES,
        COMMON_PRACTICE,
        POCKET_BOOK.at("p. 501, approximate rules for locomotives"),
    ],
    why="Back pressure works against the piston over the whole stroke; once a nozzle chokes, more flow "
    "needs ever more of it.",
    leaves_out="pulsation of the exhaust; smokebox vacuum, which helps a little; the period rule of 0.3 "
    "D is only reported",
    against=(),
    limits=[
        Limit(
            "period",
            "0.3",
            "ratio",
            POCKET_BOOK.at("p. 501"),
            "blast pipe over the bore by the period rule, reported",
        )
    ],
    edition=3,
)
def area(nozzle: BlastNozzle, case: LoadCase, sheet: Sheet) -> Judgement:
    """Flow of the cylinders over what the nozzle passes from the path's end to the atmosphere; critical ratio.

    Of several paths that of the least pressure at its end.
    """
    paths = _paths(nozzle, case, sheet)
    path = min((path for _, path in paths), key=lambda one: one.p)
    A, d = opening_of(nozzle, sheet), sheet.take("d", nozzle.diameter)
    m, out = flow_to(nozzle, paths, sheet), _atmosphere(sheet)
    D = max(sheet.take("D", bore) for bore in bores_on(nozzle, sheet))
    period = sheet.work("d_0", share_of_bore, k=sheet.limit("period", "k"), D=D)
    sheet.work("d/d_0", size_ratio, d=d, d_0=period)
    ratio = sheet.work("r", pressure_share, p_2=out, p=path.p)
    critical = sheet.work("r_c", steam_critical_pressure_ratio, p=path.p, h=path.h)
    G = sheet.work("G", steam_nozzle_flux, p=path.p, h=path.h, p_2=out)
    C = sheet.take("C", nozzle.discharge_coefficient)
    capacity = sheet.work("m_n", nozzle_mass_flow, C=C, A=A, G=G)
    return sheet.worst(
        sheet.at_most(m, capacity).else_says("nozzle passes {limit}, the exhaust is {found}"),
        sheet.at_least(ratio, critical).else_says("nozzle chokes: pressure ratio {found}, critical {limit}"),
    )


@rule(
    "blast-pipe.lift",
    title="The momentum of the jet, by its flow and the opening of the nozzle, is 0.85 to 1.3 times the reference of "
    "engines that steam well",
    wrong="jet momentum {found} times the reference, the nearer limit is {limit}",
    on=BlastNozzle,
    cases=("running",),
    edition=4,
    grade=Grade.OBSERVATION,
    cites=[STEAM, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="The momentum of the jet draws the fire: with too little the engine does not steam, with too "
    "much the fire is lifted.",
    leaves_out="chimney, petticoat and height of the nozzle, which make the same jet draw more or less",
    against=(),
    limits=[
        Limit("least", "0.85", "ratio", COMMON_PRACTICE, "least momentum over the stated reference"),
        Limit("most", "1.3", "ratio", COMMON_PRACTICE, "greatest momentum over the stated reference"),
    ],
)
def lift(nozzle: BlastNozzle, case: LoadCase, sheet: Sheet) -> Judgement:
    """m v of the jet, v by which the flow leaves the opening into the atmosphere, over that of the reference.

    A wide nozzle has a slow jet whatever pressure the duty states behind it.
    """
    paths = _paths(nozzle, case, sheet)
    path = min((path for _, path in paths), key=lambda one: one.h)
    m, A = flow_to(nozzle, paths, sheet), opening_of(nozzle, sheet)
    C = sheet.take("C", nozzle.discharge_coefficient)
    v: MetresPerSecond = sheet.work("v", jet_speed, m=m, C=C, A=A, h=path.h, p_2=_atmosphere(sheet))
    F = sheet.work("F", jet_momentum, m=m, v=v)
    x = sheet.work("x", load_ratio, F_1=F, F_2=sheet.take("F_0", nozzle.reference_momentum))
    return sheet.within(x, sheet.limit("least"), sheet.limit("most"))


@rule(
    "steamway.branch",
    edition=3,
    title="The branches off the exhaust leave at least 75 % of its flow for the nozzle",
    wrong="nozzle gets {found} of the exhaust, {limit} wanted",
    on=BlastNozzle,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A feed heater or a second outlet that takes too much leaves the fire without draught.",
    leaves_out="the flow of a branch when its valve is shut, or at short cut-off",
    against=(),
    limits=[
        Limit("left", "75 %", "ratio", COMMON_PRACTICE, "least share of the exhaust flow left at the nozzle")
    ],
)
def branch(nozzle: BlastNozzle, case: LoadCase, sheet: Sheet) -> Judgement:
    """Flow of all paths at the nozzle over that at their starts; the share of every branch as stated."""
    paths = paths_into(nozzle, sheet)
    branches = [one for stages in paths for stage in stages for one in branches_off(stage, sheet)]
    if not branches:
        raise sheet.not_applicable("nothing branches off the exhaust")
    for one in branches:
        sheet.read(f"what {one.id} feeds", one.feeds)
    along = [(stages, steam_along(stages, case, sheet)) for stages in paths]
    start = _together("m_e", [(stages, path.flows[0].m_1) for stages, path in along], sheet)
    end = _together("m_n", [(stages, path.m) for stages, path in along], sheet)
    left = sheet.work("x", flow_ratio, m_1=end, m_2=start)
    return sheet.at_least(left, sheet.limit("left"))


def _together(
    symbol: str, flows: Sequence[tuple[tuple[Stage, ...], KilogramsPerSecond]], sheet: Sheet
) -> KilogramsPerSecond:
    """The flow of paths together, each with as many cylinders as its last stage carries the steam of."""
    if len(flows) == 1:
        return flows[0][1]
    m = 0.0
    for number, (stages, one) in enumerate(flows, 1):
        z = sheet.count(f"z_{number}", stages[-1].cylinders)
        m = sheet.work(symbol, flow_together, m_0=m, z=float(z), m_1=one)
    return m


RULES = (area, lift, branch)
