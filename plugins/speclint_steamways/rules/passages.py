"""Single passages: ports, drains, and the passages by which a drifting engine draws air."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, SquareMetres
from speclint.facts import connecting_rod_of, is_drained, speed_of_crank, stroke_of
from speclint.handbook.cams import mean_piston_speed, piston_speed, revolutions
from speclint.handbook.members import round_area
from speclint.handbook.steam import compressed_temperature
from speclint.handbook.tables import POCKET_BOOK
from speclint.specs import (
    CylinderBlock,
    CylinderLiner,
    LoadCase,
    NotStated,
    RelievedLength,
    Stated,
    SteamPassage,
)
from speclint_steamways.formulae.paths import (
    air_density,
    area_ratio,
    bourne_port,
    breathing_depression,
    compression_ratio,
    effective_area_together,
    period_port,
    trade_port,
)
from speclint_steamways.sources import BOURNE

#: Places where water gathers.
_GATHERING_WATER = ("chest", "valve pocket", "belt")


def _bore(passage: SteamPassage, sheet: Sheet) -> tuple[CylinderBlock, Metres]:
    """The block, and the bore of the cylinder that a passage serves."""
    block = sheet.follow(passage.in_block)
    name = sheet.read("bore of the cylinder", passage.cylinder_bore)
    for liner in sheet.belonging_to(block, CylinderLiner):
        if sheet.read(f"bore that houses {liner.id}", liner.in_bore) == name:
            return block, sheet.take("D", liner.bore)
    raise sheet.not_assessed(f"no liner states that it is housed in bore {name} of {block.id}")


@rule(
    "steamway.port-rule",
    title="The port is at least 0.08 of the piston area (other period rules are reported beside it)",
    wrong="port {found} of the piston's area, {limit} wanted",
    on=SteamPassage,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[POCKET_BOOK.at("p. 501, approximate rules for locomotives"), BOURNE.at("Q. 320")],
    why="Ports smaller than this were found to throttle engines that ran far slower than this one.",
    leaves_out="any judgement by the other rules: sound engines break them in both directions",
    against=(),
    limits=[
        Limit("least", "0.08", "ratio", COMMON_PRACTICE, "least port area over piston area"),
        Limit(
            "live",
            "0.08",
            "ratio",
            POCKET_BOOK.at("p. 501"),
            "steam port area over the square of the bore, reported",
        ),
        Limit(
            "exhaust",
            "0.18",
            "ratio",
            POCKET_BOOK.at("p. 501"),
            "exhaust port area over the square of the bore, reported",
        ),
        Limit(
            "bourne_least", "0.1", "ratio", BOURNE.at("Q. 320"), "least port area over piston area, reported"
        ),
        Limit(
            "bourne_most",
            "0.125",
            "ratio",
            BOURNE.at("Q. 320"),
            "greatest port area over piston area, reported",
        ),
    ],
    edition=3,
)
def port_rule(passage: SteamPassage, case: LoadCase, sheet: Sheet) -> Judgement:
    """Port over 0.08 of the piston judged; over 0.08 D², 0.18 D² and two rules of piston speed reported."""
    if sheet.read("place", passage.place) != "port":
        raise sheet.not_applicable("it is not a port")
    block, D = _bore(passage, sheet)
    A, A_p = sheet.take("A", passage.area), sheet.work("A_p", round_area, d=D)
    n = sheet.work("n", revolutions, ω=speed_of_crank(block, case, sheet))
    v = sheet.work(
        "v_m", mean_piston_speed, S=sheet.take("S", stroke_of(block, sheet, passage.cylinder_bore)), n=n
    )
    if sheet.read("carries", passage.carries) == "exhaust steam":
        exhaust = sheet.work("A_e", period_port, k=sheet.limit("exhaust", "k_e"), D=D)
        sheet.work("A/A_e", area_ratio, A_1=A, A_2=exhaust)
    sheet.limit("bourne_least", "k_B")
    sheet.limit("bourne_most", "k_B′")
    for symbol, formula in (("A_B", bourne_port), ("A_v", trade_port)):
        sheet.work(f"A/{symbol}", area_ratio, A_1=A, A_2=sheet.work(symbol, formula, A_p=A_p, v=v))
    sheet.work(
        "A/A_0", area_ratio, A_1=A, A_2=sheet.work("A_0", period_port, k=sheet.limit("live", "k_0"), D=D)
    )
    return sheet.at_least(sheet.work("A/A_p", area_ratio, A_1=A, A_2=A_p), sheet.limit("least"))


@rule(
    "steamway.drains",
    title="Every place where water gathers has a drain",
    on=(SteamPassage, CylinderBlock),
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="Water that lies in a chest goes into the cylinder with the first steam and breaks it.",
    leaves_out="how fast the drains clear and who opens them; the local code and a competent person decide",
    against=("burst",),
    against_on={"cylinder-cover": ("burst",)},
)
def drains(part: SteamPassage | CylinderBlock, sheet: Sheet) -> Judgement:
    """Chests, valve pockets, belts and low points of passages, and relieved lengths of a block, as stated."""
    return _of_block(part, sheet) if isinstance(part, CylinderBlock) else _of_passage(part, sheet)


def _of_block(block: CylinderBlock, sheet: Sheet) -> Judgement:
    relieved = [
        (f"{name} of bore {bore}", length)
        for bore, one in block.bores.items()
        for name, length in one.relieved.items()
    ]
    if not relieved:
        raise sheet.not_applicable("the block has no relieved length where water could gather")

    def judge(item: tuple[str, RelievedLength]) -> Judgement:
        name, length = item
        drained = sheet.read(f"relieved length {name} drained", length.drained)
        said = "is drained" if drained else "holds water and has no drain"
        return sheet.states(drained, f"relieved length {name} {said}", where=length.where)

    return sheet.each(relieved, judge)


def _of_passage(passage: SteamPassage, sheet: Sheet) -> Judgement:
    place = sheet.read("place", passage.place)
    if place not in _GATHERING_WATER and not sheet.read("low point", passage.low_point):
        raise sheet.not_applicable("water does not gather in it")
    drained = is_drained(passage, sheet)
    said = "is drained" if drained else "holds water and has no drain"
    return sheet.states(drained, f"the {place} {said}", where=passage.where)


@rule(
    "steamway.drifting",
    title="While the engine drifts, its cylinder draws air through all its breather passages with at most 0.1 bar "
    "of depression and compresses it, from that depression, to at most 350 °C",
    on=SteamPassage,
    cases=("drifting",),
    edition=4,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A cylinder that cannot draw air freely draws ash from the smokebox, and hot air turns its oil "
    "to carbon.",
    leaves_out="springs and flutter of snifting valves, heat given to the walls during compression",
    against=(),
    limits=[
        Limit("depression", "0.1 bar", "pressure", COMMON_PRACTICE, "greatest depression in the cylinder"),
        Limit(
            "temperature",
            "350 °C",
            "temperature",
            COMMON_PRACTICE,
            "greatest temperature that cylinder oil withstands",
        ),
        Limit("exponent", "1.4", "ratio", FIRST_PRINCIPLES, "isentropic exponent of dry air"),
    ],
)
def drifting(way: SteamPassage, case: LoadCase, sheet: Sheet) -> Judgement:
    """Depression at the greatest piston speed; temperature of the charge compressed without loss of heat."""
    if sheet.read("place", way.place) != "breathing way":
        raise sheet.not_applicable("it is not a breathing way")
    block, D = _bore(way, sheet)
    v = _greatest_speed(block, way.cylinder_bore, case, sheet)
    p_0 = sheet.take_absolute("p_0", case.exhaust_pressure)
    ρ = sheet.work("ρ", air_density, p=p_0, T=sheet.take("T_a", case.ambient_temperature))
    depression = sheet.work(
        "Δp",
        breathing_depression,
        ρ=ρ,
        A_p=sheet.work("A_p", round_area, d=D),
        v=v,
        C=1.0,
        A=_effective_area(way, block, sheet),
    )
    p_2 = sheet.take_absolute("p_2", case.cylinder_pressure)
    T_2 = sheet.work(
        "T_2",
        compressed_temperature,
        T=sheet.take("T_1", way.charge_temperature),
        r=sheet.work("r", compression_ratio, p_2=p_2, p_0=p_0, Δp=depression),
        κ=sheet.limit("exponent", "κ"),
    )
    return sheet.worst(
        sheet.at_most(depression, sheet.limit("depression")).else_says(
            "drifting draws a depression of {found}, {limit} allowed"
        ),
        sheet.no_hotter(T_2, sheet.limit("temperature")).else_says(
            "drifting compresses the air to {found}, {limit} allowed"
        ),
    )


def _effective_area(way: SteamPassage, block: CylinderBlock, sheet: Sheet) -> SquareMetres:
    """Discharge coefficient times area, of every breather passage of the same cylinder together."""
    bore = sheet.read("bore of the cylinder", way.cylinder_bore)
    together: SquareMetres = 0.0
    for one in sheet.belonging_to(block, SteamPassage):
        if one.id == way.id or _breathes_for(one, bore, sheet):
            C, A = sheet.take(f"C_{one.id}", one.discharge_coefficient), sheet.take(f"A_{one.id}", one.area)
            together = sheet.work("A_e", effective_area_together, A_0=together, C=C, A=A)
    return together


def _breathes_for(one: SteamPassage, bore: str, sheet: Sheet) -> bool:
    """Whether another passage is a breather of that bore; one that does not say so is not."""
    said = sheet.is_stated(f"place of {one.id}", one.place) and sheet.is_stated(
        f"bore of {one.id}", one.cylinder_bore
    )
    return (
        said
        and sheet.read(f"place of {one.id}", one.place) == "breathing way"
        and sheet.read(f"bore of {one.id}", one.cylinder_bore) == bore
    )


def _greatest_speed(
    block: CylinderBlock, bore: Stated[str] | NotStated, case: LoadCase, sheet: Sheet
) -> float:
    r = sheet.take("S", stroke_of(block, sheet, bore)) / 2
    rod = sheet.take("l", connecting_rod_of(block, sheet, bore))
    ω = speed_of_crank(block, case, sheet)
    angle = sheet.scan(
        "θ",
        "crank angle of the greatest piston speed",
        lambda θ: piston_speed(r=r, l=rod, ω=ω, θ=θ),
        0.0,
        math.pi,
        unit="rad",
    )
    return sheet.work("v_max", piston_speed, r=r, l=rod, ω=ω, θ=angle)


RULES = (port_rule, drains, drifting)
