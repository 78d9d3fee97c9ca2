"""Brittle metal where a part is pulled, bent or struck."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import (
    BoltedJoint,
    Component,
    Crosshead,
    FrameFastening,
    LiftingPlan,
    LiftingPoint,
    NotStated,
    Pin,
    PistonRod,
    Rocker,
    Shaft,
    SlideBar,
    Stated,
    Tappet,
    ValveSpindle,
)
from speclint_pairings.inputs.pieces import pieces_of

#: Families of iron that break without stretching, whatever a test bar may show.
_BRITTLE = ("grey-iron", "chilled-iron")
#: What a piece is called, and its material.
Named = tuple[str, Stated[str] | NotStated]


@rule(
    "material.brittle-in-bending",
    title="A part that is pulled, bent or struck, its pin and its nut among them, is not of grey or chilled "
    "iron, and its metal has at least 7 % elongation at fracture",
    on=(
        BoltedJoint,
        Crosshead,
        FrameFastening,
        LiftingPlan,
        Pin,
        PistonRod,
        Rocker,
        Shaft,
        SlideBar,
        Tappet,
        ValveSpindle,
    ),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="Grey and chilled iron give no warning: a flaw, a blow or bending breaks the part in two.",
    edition=2,
    leaves_out="the hard layer of a treated surface; toughness at low temperature (block.toughness "
    "covers the block); parts loaded only in compression: pistons, rings, seats, guides, feet of tappets",
    against=(),
    limits=[
        Limit("elongation", "7 %", "ratio", COMMON_PRACTICE, "least elongation at fracture"),
    ],
)
def brittle(component: Component, sheet: Sheet) -> Judgement:
    """By the family of the metal, and the least elongation at fracture in its standard."""
    if isinstance(component, Tappet) and sheet.read("follower", component.follower) != "roller":
        raise sheet.not_applicable("a tappet with a foot is loaded only in compression")
    return sheet.each(_pieces(component, sheet), lambda piece: _judged(*piece(), sheet))


def _pieces(component: Component, sheet: Sheet) -> list[Callable[[], Named]]:
    """What gives each piece of a component in the path of the load, and its material."""
    if not isinstance(component, LiftingPlan):
        own: Named = (component.id, component.material)
        loaded = [(one.called, one.material) for one in pieces_of(component) if one.carries_load]
        return [partial(_as_stated, piece) for piece in (own, *loaded)]
    if not component.points:
        raise sheet.not_assessed("no lifting point is stated", component.where)
    return [partial(_at_point, *item, component, sheet) for item in component.points.items()]


def _as_stated(piece: Named) -> Named:
    return piece


def _at_point(name: str, point: LiftingPoint, plan: LiftingPlan, sheet: Sheet) -> Named:
    lug = sheet.read(f"form of {name}", point.form) == "lug"
    return f"{name} of {plan.id}", point.lug.material if lug else plan.material


def _judged(called: str, material: Stated[str] | NotStated, sheet: Sheet) -> Judgement:
    metal = sheet.material_named(called, material)
    if metal.family in _BRITTLE:
        return sheet.states(
            False, f"{called} is of {metal.title}, which breaks without stretching", where=material.where
        )
    stretch = sheet.look_up(f"A of {called}", metal.elongation)
    return sheet.at_least(stretch, sheet.limit("elongation", "A_n")).else_says(
        f"metal of {called} breaks at {{found}} elongation, {{limit}} wanted"
    )


RULES = (brittle,)
