"""Ports of liner and block: their overlap hot, and openings that rings run over."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import crossed_by_rings
from speclint.handbook.fits import DRAWING_TEMPERATURE, size_when_hot
from speclint.specs import BlockPort, CylinderLiner
from speclint_liners.formulae.ports import (
    angle_between,
    blocked_share,
    least_bar,
    overlap,
    place_round_bore,
    widest_opening,
)
from speclint_liners.formulae.walls import thinnest_wall
from speclint_liners.inputs.fitted import housing

if TYPE_CHECKING:
    from speclint.specs import LinerPort, LoadCase


@rule(
    "liner.port-register",
    title="The share of each port that the liner blocks, in warming and running, does not exceed its limit",
    wrong="liner blocks {found} of {item}, {limit} allowed",
    on=CylinderLiner,
    cases=("warming", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A port partly covered by a misplaced liner costs power for the life of the engine.",
    leaves_out="bars across the liner's port, rounded corners, clearance of the dowel that sets the angle",
    against=(),
    limits=[Limit("blocked", "5 %", "ratio", COMMON_PRACTICE, "greatest share of the port that is blocked")],
    edition=2,
)
def port_register(liner: CylinderLiner, case: LoadCase, sheet: Sheet) -> Judgement:
    """The share of each port that is blocked, by tolerances and by growth from the collar seat."""
    if not liner.ports:
        raise sheet.not_applicable("the liner has no ports")
    housed = housing(liner, sheet)
    at_liner = sheet.take("T_l", case.temperature_of(liner))
    at_block = sheet.take("T_b", case.temperature_of(housed.block))
    iron, steel = sheet.material_of(liner), sheet.material_of(housed.block)
    heats = (
        (sheet.look_up("α_l", iron.expansion, of=liner, at=at_liner), at_liner),
        (sheet.look_up("α_b", steel.expansion, of=housed.block, at=at_block), at_block),
    )
    bore = sheet.take("D_b", housed.bore.diameter)

    def judge(port: LinerPort) -> Judgement:
        meets = sheet.entry(housed.block.ports, port.matches, f"ports of {housed.block.id}")
        blocked = _blocked(port, meets, heats, bore, sheet)
        return sheet.at_most(blocked, sheet.limit("blocked"))

    return sheet.each(liner.ports.values(), judge)


def _blocked(
    port: LinerPort, meets: BlockPort, heats: tuple[tuple[float, float], ...], bore: float, sheet: Sheet
) -> float:
    """The share of the block's port that the liner covers."""
    places = []
    for place, (alpha, at) in zip((port.from_collar, meets.from_seat), heats, strict=True):
        cold = sheet.take("x", place)
        places.append(sheet.work("x_h", size_when_hot, L=cold, alpha=alpha, T=at, T_ref=DRAWING_TEMPERATURE))
    away = sheet.work(
        "φ", angle_between, theta_1=sheet.take("θ_l", port.angle), theta_2=sheet.take("θ_b", meets.angle)
    )
    round_bore = sheet.work("s", place_round_bore, D=bore, theta=away)
    height, width = sheet.take("h", meets.height), sheet.take("w", meets.width)
    along = sheet.work(
        "o_x", overlap, x_a=places[0], a=sheet.take("h_l", port.height), x_b=places[1], b=height
    )
    around = sheet.work("o_s", overlap, x_a=round_bore, a=sheet.take("w_l", port.width), x_b=0.0, b=width)
    return sheet.work("k", blocked_share, o_x=along, o_s=around, h=height, w=width)


@rule(
    "liner.port-bars",
    title="Openings that rings run over are no wider than their share of the bore, and the bars between "
    "them no narrower than their limit",
    on=CylinderLiner,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="A ring springs into a wide opening and breaks; a thin bar overheats and wears to a ridge.",
    leaves_out="overheating of the bars; edges of the openings, which must be well rounded",
    against=("wear",),
    against_on={"piston-ring": ("break under load",)},
    limits=[
        Limit("opening_share", "0.12", "ratio", COMMON_PRACTICE, "widest opening as a share of the bore"),
        Limit("bar_share", "0.6", "ratio", COMMON_PRACTICE, "least bar as a share of the wall"),
        Limit("least_bar", "12 mm", "length", COMMON_PRACTICE, "least bar whatever the wall"),
    ],
    edition=3,
)
def port_bars(liner: CylinderLiner, sheet: Sheet) -> Judgement:
    """Width of openings against the bore, and of bars against the wall."""
    crossed = [port for port in liner.ports.values() if _is_crossed(port, liner, sheet)]
    if not crossed:
        raise sheet.not_applicable("no ring runs over a port")
    d = sheet.take("d", liner.bore)
    wall = sheet.work("t", thinnest_wall, d=d, D=sheet.take("D_l", liner.outside_diameter), e=0.0)
    widest = sheet.work("b_max", widest_opening, k=sheet.limit("opening_share"), d=d)
    narrowest = sheet.work(
        "w_min", least_bar, k=sheet.limit("bar_share"), t=wall, w_0=sheet.limit("least_bar")
    )
    openings = sheet.each(
        crossed,
        lambda port: sheet.at_most(sheet.take("b", port.opening), widest).else_says(
            "rings run over {item}, {found} wide, {limit} allowed"
        ),
    )
    bars = sheet.each(
        crossed,
        lambda port: sheet.at_least(sheet.take("w", port.bar), narrowest).else_says(
            "bar beside {item} is {found} wide, {limit} wanted"
        ),
    )
    return sheet.worst(openings, bars)


def _is_crossed(port: LinerPort, liner: CylinderLiner, sheet: Sheet) -> bool:
    """Whether a ring runs over a port: by the places of rings, faces and port, else as stated."""
    by_places = crossed_by_rings(port, liner, sheet)
    return (
        sheet.read("crossed by rings", port.crossed_by_rings) if by_places is None else bool(by_places.value)
    )


RULES = (port_register, port_bars)
