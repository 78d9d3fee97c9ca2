"""Welds that join plates of unlike thickness or of unlike metal."""

from __future__ import annotations

from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Metres
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import Material, preheat_band, share_of_strength
from speclint.specs import CylinderBlock, LoadCase, Plate, WeldedJoint, Weldment
from speclint_fabrication.formulae.tables import coolest_relief, hottest_relief
from speclint_fabrication.formulae.unlike_plates import (
    difference_of_plates,
    difference_without_taper,
    stress_of_unlike_growth,
)
from speclint_fabrication.inputs.joined import Joined, joined_by
from speclint_fabrication.inputs.plates import metal_of
from speclint_fabrication.inputs.pressures import sides_of
from speclint_fabrication.inputs.temperatures import temperature_of_wall
from speclint_fabrication.sources import BUTT_DETAILS, EN_1011_2, EN_13445_4, HOBBACHER_OFFSET, UW_9

_IRON = ("grey-iron", "ductile-iron", "chilled-iron", "austenitic-iron")
_ALL = ("live steam", "exhaust steam", "cylinder")


@rule(
    "weld.unequal-plates",
    title="A butt weld of plates that differ by more than 3 mm, or a quarter of the thinner, has the thicker drawn "
    "down to it at no more than 1 in 4 where it feels every stroke, at no more than 1 in 3 elsewhere",
    on=Weldment,
    grade=Grade.NONCONFORMITY,
    cites=[BUTT_DETAILS, UW_9, HOBBACHER_OFFSET.at("6.3, its bending counts in block.weld-fatigue")],
    why="A step beside a weld gathers the stress of both plates at the toe, and there it cracks.",
    leaves_out="fillet and tee joints, the side on which the plates are flush",
    against=("break in fatigue",),
    against_on={"cylinder-block": ("break in fatigue",)},
    reached_by="makes",
    limits=[
        Limit(
            "every stroke", "0.25", "ratio", BUTT_DETAILS, "steepest taper of a weld that every stroke loads"
        ),
        Limit("elsewhere", "0.3333", "ratio", UW_9, "steepest taper of any other weld"),
    ],
)
def unequal_plates(weldment: Weldment, sheet: Sheet) -> Judgement:
    """Difference of both plates against that without a taper; beyond, the taper stated."""
    butts = [
        (name, joint)
        for name, joint in weldment.joints.items()
        if sheet.read(f"shape of {name}", joint.shape) == "butt"
    ]
    if not butts:
        raise sheet.not_applicable("no butt joint is stated")
    return sheet.each(butts, lambda item: _drawn_down(*item, weldment, sheet))


def _drawn_down(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> Judgement:
    pair = joined_by(name, joint, weldment, sheet)
    t_1, t_2 = pair.thicknesses(sheet)
    apart = sheet.work(f"Δt of {name}", difference_of_plates, t_1=t_1, t_2=t_2)
    free = sheet.work(f"d of {name}", difference_without_taper, t_1=min(t_1, t_2))
    if apart <= free:
        return sheet.at_most(apart, free).else_says(
            "plates of weld {item} differ by {found}, {limit} allowed"
        )
    strokes = "every stroke" if _feels_strokes(name, joint, weldment, sheet) else "elsewhere"
    return sheet.at_most(sheet.take(f"s of {name}", joint.taper), sheet.limit(strokes)).else_says(
        "plates of weld {item} drawn down at {found}, {limit} allowed"
    )


def _feels_strokes(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> bool:
    """Whether a weld may be beside a cylinder: by its wall; one that names none may."""
    if not sheet.is_stated(f"wall of {name}", joint.wall):
        return True
    wall = sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}")
    return "cylinder" in sides_of(name, wall, sheet)


class _Two(NamedTuple):
    """Both plates of a weld with their metals."""

    plates: tuple[Plate, Plate]
    metals: tuple[Material, Material]


@rule(
    "weld.two-metals",
    edition=2,
    title="A weld of two metals names its filler, is preheated for the worse, relieved to suit both, and stressed by "
    "unlike growth to at most half of the proof stress; none is of iron",
    on=Weldment,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[EN_13445_4.at("Table 10.1-1"), EN_1011_2, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A weld that is right for one plate and wrong for the other cracks beside the other.",
    leaves_out="a weld that names neither two plates nor a plate and a wall; whether the filler named is right for the "
    "pair, loss of carbon beside the weld in long service; the local code for pressure parts and a competent person "
    "decide",
    against=("break under load",),
    against_on={"cylinder-block": ("break under load",)},
    reached_by="makes",
    limits=[
        Limit(
            "growth_share",
            "0.5",
            "ratio",
            COMMON_PRACTICE,
            "greatest stress of unlike growth over proof stress",
        ),
        Limit(
            "austenitic",
            "300 °C",
            "temperature",
            COMMON_PRACTICE,
            "hottest weld of austenitic to ferritic steel",
        ),
    ],
)
def two_metals(weldment: Weldment, case: LoadCase, sheet: Sheet) -> Judgement:
    """Carbon equivalent of the worse, the ranges of relief of both, ½ E Δα ΔT."""
    block = sheet.follow(weldment.makes)
    pairs = []
    for name, joint in weldment.joints.items():
        pair = _joined(name, joint, weldment, sheet)
        if pair is None:
            continue
        metals = (
            metal_of(pair.names[0], pair.plates[0], sheet),
            metal_of(pair.names[1], pair.plates[1], sheet),
        )
        if metals[0].name != metals[1].name:
            pairs.append((name, joint, _Two(pair.plates, metals)))
    if not pairs:
        raise sheet.not_applicable("no weld is stated to join two metals")
    return sheet.each(pairs, lambda item: _of_two(*item, weldment, block, case, sheet))


def _joined(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> Joined | None:
    """The plates that a weld names; of another than a butt joint that names none, its plate and that of its wall."""
    if sheet.read(f"shape of {name}", joint.shape) == "butt" or joint.plates_joined:
        return joined_by(name, joint, weldment, sheet)
    if not (
        sheet.is_stated(f"plate of {name}", joint.plate) and sheet.is_stated(f"wall of {name}", joint.wall)
    ):
        return None
    wall = sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}")
    if not sheet.is_stated(f"plate of the wall of {name}", wall.plate):
        return None
    of = f"plates of {weldment.id}"
    return Joined(
        (sheet.read(f"plate of {name}", joint.plate), sheet.read(f"plate of the wall of {name}", wall.plate)),
        (sheet.entry(weldment.plates, joint.plate, of), sheet.entry(weldment.plates, wall.plate, of)),
    )


def _of_two(
    name: str,
    joint: WeldedJoint,
    two: _Two,
    weldment: Weldment,
    block: CylinderBlock,
    case: LoadCase,
    sheet: Sheet,
) -> Judgement:
    iron = [metal.title for metal in two.metals if metal.family in _IRON]
    if iron:
        says = f"weld {name} joins {iron[0]}, which is not welded"
        return sheet.states(False, says, where=joint.where).graded(Grade.HOLD)
    filler = sheet.read(f"filler of {name}", joint.filler)
    judged = [
        sheet.states(True, f"weld {name} is made with {filler}"),
        _growth(name, joint, two, weldment, block, case, sheet),
    ]
    if not any(metal.family == "stainless-austenitic" for metal in two.metals):
        judged += [_preheated(name, two, weldment, sheet), _relieved(name, two, weldment, sheet)]
    return sheet.worst(*judged)


def _growth(
    name: str,
    joint: WeldedJoint,
    two: _Two,
    weldment: Weldment,
    block: CylinderBlock,
    case: LoadCase,
    sheet: Sheet,
) -> Judgement:
    sides: tuple[str, ...] = _ALL
    if sheet.is_stated(f"wall of {name}", joint.wall):
        sides = sides_of(name, sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}"), sheet)
    at = temperature_of_wall(name, sides, case, block, sheet)
    one, other = two.metals
    α_1 = sheet.look_up(f"α_1 of {name}", one.expansion, at=at)
    α_2 = sheet.look_up(f"α_2 of {name}", other.expansion, at=at)
    E = max(
        sheet.look_up(f"E_1 of {name}", one.modulus, at=at),
        sheet.look_up(f"E_2 of {name}", other.modulus, at=at),
    )
    σ = sheet.work(
        f"σ of {name}", stress_of_unlike_growth, E=E, α_1=α_1, α_2=α_2, ΔT=at - DRAWING_TEMPERATURE
    )
    R = min(
        sheet.look_up(f"R_{number} of {name}", metal.proof_stress, at=at, thickness=t)
        for number, (metal, t) in enumerate(_with_thickness(two, name, sheet), start=1)
    )
    S = sheet.work(f"S of {name}", share_of_strength, k=sheet.limit("growth_share", "k"), R=R)
    grown = sheet.at_most(σ, S).else_says("unlike growth stresses weld {item} to {found}, {limit} allowed")
    if not any(metal.family == "stainless-austenitic" for metal in two.metals):
        return grown
    hot = sheet.no_hotter(at, sheet.limit("austenitic", "T_a")).else_says(
        "weld {item} of austenitic to ferritic steel at {found}, {limit} without a reason"
    )
    return sheet.worst(grown, hot.graded(Grade.QUERY))


def _with_thickness(two: _Two, name: str, sheet: Sheet) -> list[tuple[Material, Metres]]:
    return [
        (metal, sheet.take(f"t_{number} of {name}", plate.rolled_thickness))
        for number, (plate, metal) in enumerate(zip(two.plates, two.metals, strict=True), start=1)
    ]


def _preheated(name: str, two: _Two, weldment: Weldment, sheet: Sheet) -> Judgement:
    CE = max(
        sheet.take(f"CE_{number} of {name}", plate.carbon_equivalent)
        for number, plate in enumerate(two.plates, start=1)
    )
    wanted = sheet.look_up(f"T_n of {name}", preheat_band, CE=CE)
    return sheet.at_least(sheet.take("T_p", weldment.welding.preheat), wanted).else_says(
        "weld {item} preheated to {found}, {limit} wanted for the worse plate"
    )


def _relieved(name: str, two: _Two, weldment: Weldment, sheet: Sheet) -> Judgement:
    """The ranges of both steels overlap, and the treatment lies in what they have in common."""
    one, other = two.metals
    low = max(
        sheet.look_up(f"T_1 of {name}", coolest_relief, metal=one),
        sheet.look_up(f"T_2 of {name}", coolest_relief, metal=other),
    )
    high = min(
        sheet.look_up(f"T_3 of {name}", hottest_relief, metal=one),
        sheet.look_up(f"T_4 of {name}", hottest_relief, metal=other),
    )
    common = sheet.at_least(high, low).else_says(
        "no heat treatment suits both plates of weld {item}: one to {found}, the other from {limit}"
    )
    if not common.holds:
        return common
    T = sheet.take("T_r", weldment.treatment.temperature)
    return sheet.within(T, low, high).else_says(
        "stress relief at {found}, where the nearer limit of both plates of weld {item} is {limit}"
    )


RULES: tuple[Rule, ...] = (unequal_plates, two_metals)
