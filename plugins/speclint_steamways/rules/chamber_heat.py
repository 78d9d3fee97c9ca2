"""Heat that metal leads out of the block into the chambers of springs and gear."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Kelvins, SquareMetres
from speclint.facts import spindles_into
from speclint.handbook.members import round_area
from speclint.specs import (
    CamBox,
    ChamberCover,
    CompressionSpring,
    CylinderBlock,
    LoadCase,
    PoppetValve,
    ValveSpindle,
)
from speclint_steamways.formulae.conducted import (
    between,
    cooler_by,
    paths_together,
    resistance_together,
    surface_resistance,
)
from speclint_steamways.inputs.chamber_outsides import UNEVEN, cooled_area


@rule(
    "heat.chamber-temperature",
    title="The chamber of a valve's springs and the cam box, cooled by no more outside than they have, are no hotter "
    "than wire, seals and oil bear, and at most 15 K hotter than the duty states",
    on=(ChamberCover, CamBox),
    cases=("running", "standing-hot"),
    edition=2,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A spring that is hotter than was reckoned loses its load, a seal hardens, and oil turns to carbon.",
    leaves_out="steam that leaks past spindles into the chamber, radiation from the block, and the wind of running; "
    "how much fins add, where they are stated; the outside of a box or a cover whose sizes are not stated",
    against=("burn",),
    against_on={"compression-spring": ("burn",)},
    limits=[
        Limit(
            "moving_air",
            "15 W/(m²·K)",
            "heat transfer",
            COMMON_PRACTICE,
            "film on the chamber of an engine that runs",
        ),
        Limit(
            "still_air",
            "8 W/(m²·K)",
            "heat transfer",
            COMMON_PRACTICE,
            "film on the chamber of one that stands",
        ),
        Limit(
            "within",
            "15 K",
            "temperature difference",
            COMMON_PRACTICE,
            "by which a stated temperature may lie below the worked one",
        ),
        Limit(
            "below_flash",
            "30 K",
            "temperature difference",
            COMMON_PRACTICE,
            "by which oil must be cooler than its flash point",
        ),
        UNEVEN,
    ],
)
def chamber_temperature(part: ChamberCover | CamBox, case: LoadCase, sheet: Sheet) -> Judgement:
    """Stool and spindles side by side against the film outside; then wire, seals, oil and what the duty states."""
    springs, spindles = _inside(part, sheet)
    if isinstance(part, ChamberCover) and not springs:
        raise sheet.not_applicable("no spring closes the valve under it")
    block = sheet.follow(part.closes if isinstance(part, ChamberCover) else part.mounted_on)
    area, told = cooled_area(part, springs, sheet)
    T = _worked(part, block, spindles, area, case, sheet)
    borne = sheet.each(_bounds(part, springs, spindles, case, sheet), lambda item: _borne(T, item, sheet))
    return sheet.worst(borne, *told)


class _Bound(NamedTuple):
    """What a temperature is held against, and whether that is a rating or what the duty states."""

    name: str
    take: Callable[[], Kelvins]
    stated: bool


def _borne(T: Kelvins, bound: _Bound, sheet: Sheet) -> Judgement:
    if not bound.stated:
        return sheet.no_hotter(T, bound.take()).else_says(
            "chamber warms to {found}, {limit} is the most for {item}"
        )
    least = sheet.work("T_1", cooler_by, T=T, ΔT=sheet.limit("within", "ΔT"))
    stated = sheet.no_hotter(least, bound.take()).else_says(
        "chamber has {limit} {item}, at least {found} is worked"
    )
    return stated.graded(Grade.QUERY)


def _inside(part: ChamberCover | CamBox, sheet: Sheet) -> tuple[list[CompressionSpring], list[ValveSpindle]]:
    """The springs and the spindles of a chamber; those of a box whose valves have no chamber cover of their own."""
    if isinstance(part, ChamberCover):
        if not sheet.is_stated("valve under the cover", part.over):
            return [], []
        valve = sheet.follow(part.over)
        return list(_springs_of(valve, sheet)), list(sheet.belonging_to(valve, ValveSpindle))
    spindles = {one.id: one for one in spindles_into(part, sheet)}
    springs: list[CompressionSpring] = []
    for spindle in spindles.values():
        valve = sheet.follow(spindle.moves)
        if not sheet.belonging_to(valve, ChamberCover):
            springs += _springs_of(valve, sheet)
    return springs, list(spindles.values())


def _springs_of(valve: PoppetValve, sheet: Sheet) -> tuple[CompressionSpring, ...]:
    """The springs that close a valve, those nested in them too."""
    found: dict[str, CompressionSpring] = {}
    waiting = list(sheet.belonging_to(valve, CompressionSpring))
    while waiting:
        one = waiting.pop(0)
        if one.id not in found:
            found[one.id] = one
            waiting += sheet.belonging_to(one, CompressionSpring)
    return tuple(found.values())


def _worked(
    part: ChamberCover | CamBox,
    block: CylinderBlock,
    spindles: list[ValveSpindle],
    area: SquareMetres,
    case: LoadCase,
    sheet: Sheet,
) -> Kelvins:
    """Temperature of a chamber between the block and the hottest air."""
    T_b, T_a = sheet.take("T_b", case.temperature_of(block)), sheet.take("T_a", case.hottest_ambient)
    L = sheet.take("L", part.path.length)
    λ = sheet.look_up("λ", sheet.material_of(block).conductivity, of=block, at=T_b)
    A = sheet.take("A", part.path.section)
    G = sheet.work("G", paths_together, G_0=0.0, λ=λ, A=A, L=L)
    for one in spindles:
        A_s = sheet.work("A_s", round_area, d=sheet.take(f"d_{one.id}", one.diameter))
        λ_s = sheet.look_up("λ_s", sheet.material_of(one).conductivity, of=one, at=T_b)
        G = sheet.work("G", paths_together, G_0=G, λ=λ_s, A=A_s, L=L)
    standing = case.name == "standing-hot"
    h = sheet.limit("still_air", "h_1") if standing else sheet.limit("moving_air", "h_2")
    R_a = sheet.work("R_a", surface_resistance, h=h, A=area)
    return sheet.work(
        "T", between, T_a=T_a, T_b=T_b, R_1=sheet.work("R_s", resistance_together, G=G), R_2=R_a
    )


def _bounds(
    part: ChamberCover | CamBox,
    springs: list[CompressionSpring],
    spindles: list[ValveSpindle],
    case: LoadCase,
    sheet: Sheet,
) -> Iterator[_Bound]:
    """Ratings of wire, seals and oil, and the temperatures that the duty states of springs and box."""
    for spring in springs:
        yield _Bound(f"wire of {spring.id}", lambda one=spring: _rated(one, sheet), False)  # type: ignore[misc]
        stated = case.temperature_of(spring)
        yield _Bound(f"stated for {spring.id}", lambda T=stated: sheet.take_limits("T_x", T)[1], True)  # type: ignore[misc]
    if not isinstance(part, CamBox):
        return
    for spindle in spindles:
        if sheet.is_stated(f"rating of the seal of {spindle.id}", spindle.seal_temperature):
            seal = spindle.seal_temperature
            yield _Bound(f"seal of {spindle.id}", lambda T=seal: sheet.take("T_s", T), False)  # type: ignore[misc]
    yield _Bound("oil", lambda: _oil(part, sheet), False)
    stated = case.temperature_of(part)
    if sheet.is_stated("temperature of the box", stated):
        yield _Bound("stated for the box", lambda T=stated: sheet.take_limits("T_x", T)[1], True)  # type: ignore[misc]


def _rated(spring: CompressionSpring, sheet: Sheet) -> Kelvins:
    return sheet.look_up("T_w", sheet.material_of(spring).wire_temperature_limit, of=spring)


def _oil(box: CamBox, sheet: Sheet) -> Kelvins:
    flash = sheet.take("T_F", box.lubrication.flash_point)
    return sheet.work("T_o", cooler_by, T=flash, ΔT=sheet.limit("below_flash", "ΔT_F"))


RULES: tuple[Rule, ...] = (chamber_temperature,)
