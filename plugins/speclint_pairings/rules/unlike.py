"""Unlike surfaces: which one is harder, and which one corrodes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.materials import MIL_STD_1250, anodic_index, potential_difference, potential_limit
from speclint.specs import (
    BoltedJoint,
    ChamberCover,
    Component,
    CylinderCover,
    CylinderLiner,
    Duty,
    Link,
    PipeFlange,
    Rocker,
    Tappet,
    ValveSeat,
    ValveSpindle,
)
from speclint_pairings.formulae.surfaces import harder_by
from speclint_pairings.formulae.tables import anodic_metal
from speclint_pairings.rules.skins import HARDENS


@rule(
    "pairing.hardness",
    edition=2,
    title="The spindle has a treated surface, or is at least 30 HB harder than its guide; its cap is hardened where a "
    "hardened tappet or rocker strikes it",
    wrong="spindle {found} harder than its guide, {limit} wanted",
    on=ValveSpindle,
    grade=Grade.OBSERVATION,
    gravest=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="of two surfaces that rub the softer wears: that should be the bush, which is cheap, and not "
    "the spindle; a soft cap under a hard tappet is beaten hollow, and the clearance of the gear grows with it",
    leaves_out="how hard a treated surface is; a cap that is harder than what strikes it; the pressure between them; "
    "rings and liners, which have a rule of their own",
    against=("wear",),
    limits=[
        Limit("apart", "30 HB", "Brinell hardness", COMMON_PRACTICE, "least difference in Brinell hardness")
    ],
)
def hardness(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    """The hardness of both materials, at the ends of their bands that are nearest to each other; the cap by words."""
    return sheet.worst(_in_guide(spindle, sheet), *_struck(spindle, sheet))


def _in_guide(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    if sheet.is_stated("surface", spindle.surface):
        treatment = sheet.read("surface", spindle.surface)
        return sheet.states(True, f"the spindle is {treatment}", where=spindle.surface.where)
    guide = sheet.material_named(f"the guide of {spindle.id}", spindle.guide_material)
    H_1 = sheet.look_up("H_1", sheet.material_of(spindle).hardness, of=spindle)
    H_2 = sheet.look_up("H_2", guide.hardness)
    return sheet.at_least(sheet.work("ΔH", harder_by, H_1=H_1, H_2=H_2), sheet.limit("apart", "ΔH_n"))


def _struck(spindle: ValveSpindle, sheet: Sheet) -> Iterator[Judgement]:
    """The cap of a spindle against each hardened tappet or rocker that works it: the cap itself is hardened.

    Where nothing is said of the cap, a spindle that is hardened answers for its end; else it is a query.
    """
    for one in (*sheet.belonging_to(spindle, Tappet), *sheet.belonging_to(spindle, Rocker)):
        if sheet.said(f"surface of {one.id}", one.surface) not in HARDENS:
            continue
        cap = spindle.cap.hardening
        if sheet.is_stated("hardening of its cap", cap):
            how = sheet.read("hardening of its cap", cap)
            says = f"{one.id} is hardened, and strikes a cap that is {how}"
            yield sheet.states(how != "not hardened", says, where=cap.where).graded(Grade.NONCONFORMITY)
        elif sheet.said(f"surface of {spindle.id}", spindle.surface) not in HARDENS:
            says = f"{one.id} is hardened, and nothing says how the cap that it strikes is"
            yield sheet.states(False, says, where=spindle.where).graded(Grade.QUERY)


@rule(
    "pairing.galvanic",
    title="Metals in contact differ in the anodic index by no more than their surroundings allow, which on the "
    "steam side are wet: there water stands while the engine is cold",
    on=(BoltedJoint, ChamberCover, CylinderCover, CylinderLiner, PipeFlange, ValveSeat),
    grade=Grade.OBSERVATION,
    gravest=Grade.NONCONFORMITY,
    cites=[MIL_STD_1250.at("Table II and clause on compatible couples"), COMMON_PRACTICE],
    why="where water stands between two metals the less noble one corrodes, and the fit or the thread "
    "is lost",
    edition=4,
    leaves_out="areas: a small less noble part in a large noble one corrodes fastest; treated and "
    "boiler water",
    against=("corrode",),
)
def galvanic(component: Component, sheet: Sheet) -> Judgement:
    """The component's metal against that of each part it is linked to, by the anodic index.

    Metals that are allowed together in any surroundings need no surroundings stated, and no word clears others where
    steam condenses: a seat, a liner, a cover, a flange, a joint that holds pressure.
    """
    links = [link for link in component.links() if _touches(component, link)]
    if not links:
        raise sheet.not_assessed("it states no link to a part that it touches", component.where)
    return sheet.each(links, lambda link: _between(component, sheet.follow(link), sheet))


def _touches(component: Component, link: Link[Any]) -> bool:
    """Whether a link names a part that the component touches: no duty, and not the valve that a cover stands over."""
    over = isinstance(component, ChamberCover) and link is component.over
    return Duty.kind not in link.kinds and not over


def _between(one: Component, other: Component, sheet: Sheet) -> Judgement:
    E_1 = sheet.look_up("E_1", anodic_index, of=one, metal=_metal(one, sheet))
    E_2 = sheet.look_up("E_2", anodic_index, of=other, metal=_metal(other, sheet))
    U = sheet.work("U", potential_difference, E_1=E_1, E_2=E_2)
    harshest = sheet.at_most(U, sheet.look_up("U_w", potential_limit, where="weather and wet")).else_says(
        f"metals of {one.id} and {other.id} {{found}} apart, {{limit}} allowed"
    )
    if harshest.holds:
        return harshest
    if not sheet.is_stated("surroundings", one.surroundings) and _stands_wet(one, sheet):
        return harshest
    surroundings = sheet.read("surroundings", one.surroundings)
    if surroundings == "weather and wet":
        return harshest.graded(Grade.NONCONFORMITY)
    if surroundings == "dry steam" or _stands_wet(one, sheet):
        return harshest
    if surroundings == "oiled":
        return sheet.states(True, f"{one.id} and {other.id} are unlike metals, and are stated to be oiled")
    return sheet.at_most(U, sheet.look_up("U_a", potential_limit, where=surroundings)).else_says(
        f"metals of {one.id} and {other.id} {{found}} apart, {{limit}} allowed"
    )


def _stands_wet(component: Component, sheet: Sheet) -> bool:
    """Whether steam condenses on the part while the engine stands: on any but a joint that holds no pressure."""
    if not isinstance(component, BoltedJoint):
        return True
    return sheet.is_stated("pressure that it holds", component.pressure)


def _metal(component: Component, sheet: Sheet) -> str:
    material = sheet.material_of(component)
    found = anodic_metal(material)
    if not found:
        raise sheet.not_covered(f"the anodic index does not hold {material.title}")
    return found


RULES = (hardness, galvanic)
