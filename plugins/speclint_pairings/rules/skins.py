"""Whether a metal takes the treatment by which its surface is said to be hardened, as deep as it is stated."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Ratio
from speclint.specs import (
    NOT_STATED,
    Cam,
    Component,
    Crosshead,
    Length,
    NotStated,
    Pin,
    PistonRod,
    PoppetValve,
    Rocker,
    Shaft,
    SlideBar,
    Stated,
    Tappet,
    ValveSpindle,
)

#: Treatments that harden the metal itself; a plated or a faced surface is another metal.
HARDENS: tuple[str | None, ...] = ("case hardened", "induction hardened", "nitrided")
#: Families that take none of them: what they hold in place of iron forms no hard skin.
_NOT_FERROUS = ("copper-alloy", "polymer", "white-metal")
#: Steels that harden when they are heated and cooled with less carbon than others.
_HARDENS_WITH_LESS = "stainless-martensitic"
#: Metals that stay as they are when they are cooled quickly: no skin of them hardens by it.
_AUSTENITIC = ("stainless-austenitic", "austenitic-iron")
#: Steels whose core is strong enough under the skin to bear a cam or a tappet, which touch on a line.
_STRONG_CORE = ("case-hardening-steel", _HARDENS_WITH_LESS)
#: From memory, EN 10084 (2008) lets 28Cr4, of the steels for case hardening that with most carbon, have 0.31 %.
CASE = Limit("case", "0.31 %", "ratio", COMMON_PRACTICE, "most carbon of a steel that is case hardened")
INDUCTION = Limit(
    "induction", "0.28 %", "ratio", COMMON_PRACTICE, "least carbon of a steel that is induction hardened"
)
#: What each treatment gives within the time that is spent on it; from memory, a hundred hours nitride some 0.8 mm.
DEPTHS = (
    Limit("deepest nitrided", "0.8 mm", "length", COMMON_PRACTICE, "deepest skin of a nitrided surface"),
    Limit(
        "deepest case hardened", "4 mm", "length", COMMON_PRACTICE, "deepest skin of a case hardened surface"
    ),
    Limit("deepest induction hardened", "10 mm", "length", COMMON_PRACTICE, "deepest skin by induction"),
    Limit(
        "shallowest induction hardened", "0.5 mm", "length", COMMON_PRACTICE, "shallowest skin by induction"
    ),
)
#: A treatment, and what is treated: its name and its material.
_Treated = tuple[Stated[Any] | NotStated, str, Stated[str] | NotStated]


#: The kinds of which a surface may be said to be hardened.
HARDENED: tuple[type[Component], ...] = (
    Cam,
    Crosshead,
    Pin,
    PistonRod,
    PoppetValve,
    Rocker,
    Shaft,
    SlideBar,
    Tappet,
    ValveSpindle,
)


@rule(
    "material.takes-its-skin",
    title="Case hardened steel has at most 0.31 % carbon, in cams and tappets made for it; induction hardened is iron, "
    "martensitic or of 0.28 % or more; nitrided steel or iron; no skin is unnamed or too deep",
    on=HARDENED,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="A skin that its metal cannot form is on the drawing alone: the part wears and pits as soft metal does.",
    leaves_out="how hard the skin becomes; how deep, where no depth is stated; which steels nitriding suits well; the "
    "core under other skins, as of pins and slides of mild steel; parts other than cams, tappets, pins and rockers "
    "that are of a steel for case hardening and left soft; the metal of a cap; plated and faced surfaces; whether a "
    "skin is deep enough, which cam.contact-stress judges",
    against=(),
    limits=[CASE, INDUCTION, *DEPTHS],
    edition=5,
)
def takes_its_skin(component: Component, sheet: Sheet) -> Judgement:
    """By the family of the metal and the carbon that its standard allows; of a rocker its pin too; and by its depth.

    Cams, tappets, pins and rockers of a steel made for case hardening are hardened.
    """
    treated = [one for one in _surfaces(component) if _hardens(one, sheet)]
    deep = [*_depths(component, sheet), *_left_soft(component, sheet)]
    if treated:
        deep.append(sheet.each([(one[1], one) for one in treated], lambda item: _judged(item[1], sheet)))
        deep += _core(component, sheet)
    if not deep:
        raise sheet.not_applicable("no surface of it is said to be hardened")
    return sheet.worst(*deep)


def _core(component: Component, sheet: Sheet) -> Iterator[Judgement]:
    """Of a cam or a tappet that is case hardened, and touches on a line: a steel with a core that bears it."""
    if not isinstance(component, Cam | Tappet):
        return
    if sheet.said(f"surface of {component.id}", component.surface) != "case hardened":
        return
    metal = sheet.material_of(component)
    if metal.family in _STRONG_CORE or _takes_none(metal.family, "case hardened"):
        return
    says = (
        f"{component.id} is of {metal.title}, which is no steel for case hardening: its soft core gives way under the "
        "line on which it touches"
    )
    yield sheet.states(False, says, where=component.material.where)


def _left_soft(component: Component, sheet: Sheet) -> Iterator[Judgement]:
    """What rubs, is of a steel made for case hardening or states how deep its skin is, and is not hardened."""
    if not isinstance(component, Cam | Pin | Rocker | Tappet):
        return
    for surface, called, material in _surfaces(component):
        if sheet.is_stated(f"surface of {called}", surface):
            continue
        skin = component.hardened_depth if isinstance(component, Cam | Tappet) else NOT_STATED
        if sheet.is_stated(f"depth of the skin of {called}", skin):
            says = f"a skin of {called} is stated, and not how it is hardened"
            yield sheet.states(False, says, where=skin.where)
        elif sheet.is_stated(f"metal of {called}", material):
            metal = sheet.material_named(called, material)
            if metal.family == "case-hardening-steel":
                says = f"{called} is of {metal.title}, which is soft until it is case hardened, and is not said to be"
                yield sheet.states(False, says, where=material.where)


def _skin_of(component: Component) -> tuple[Stated[Any] | NotStated, str, Length] | None:
    """How a cam, a tappet or the cap of a spindle is hardened, what it is called, and how deep."""
    if isinstance(component, ValveSpindle):
        return component.cap.hardening, f"the cap of {component.id}", component.cap.hardened_depth
    if isinstance(component, Cam | Tappet):
        return component.surface, component.id, component.hardened_depth
    return None


def _depths(component: Component, sheet: Sheet) -> Iterator[Judgement]:
    """The stated depth of a skin against what its treatment gives."""
    skin = _skin_of(component)
    if skin is None:
        return
    surface, called, depth = skin
    treatment = sheet.said(f"hardening of {called}", surface)
    if treatment not in HARDENS or not sheet.is_stated(f"depth of the skin of {called}", depth):
        return
    t = sheet.take("t_h", depth)
    yield sheet.at_most(t, sheet.limit(f"deepest {treatment}", "t_m")).else_says(
        f"skin of {called} is {{found}} deep, {treatment} makes {{limit}} at most"
    )
    if treatment == "induction hardened":
        yield sheet.at_least(t, sheet.limit("shallowest induction hardened", "t_l")).else_says(
            f"skin of {called} is {{found}} deep, {treatment} makes {{limit}} at least"
        )


def _surfaces(component: Component) -> list[_Treated]:
    own: _Treated = component.surface, component.id, component.material
    if not isinstance(component, Rocker):
        return [own]
    return [own, (component.pin_surface, f"the pin of {component.id}", component.pin_material)]


def _hardens(one: _Treated, sheet: Sheet) -> bool:
    treatment, called, _ = one
    return sheet.said(f"surface of {called}", treatment) in HARDENS


def _judged(one: _Treated, sheet: Sheet) -> Judgement:
    surface, called, material = one
    treatment, metal = sheet.read(f"surface of {called}", surface), sheet.material_named(called, material)
    if _takes_none(metal.family, treatment):
        return sheet.states(
            False, f"{called} is of {metal.title}, which cannot be {treatment}", where=surface.where
        )
    if not by_carbon(metal.family, treatment):
        return sheet.states(
            True, f"{called} is of {metal.title}, which can be {treatment}", where=surface.where
        )
    return held_by_carbon(
        sheet.look_up(f"C of {called}", metal.composition, element="C"), treatment, called, sheet
    )


def by_carbon(family: str, treatment: str) -> bool:
    """Whether the carbon of a metal decides if it takes a treatment."""
    if treatment == "nitrided" or _takes_none(family, treatment) or family.endswith("-iron"):
        return False
    return treatment == "case hardened" or family != _HARDENS_WITH_LESS


def held_by_carbon(carbon: Ratio, treatment: str, called: str, sheet: Sheet) -> Judgement:
    """The carbon of a steel against the most for a case, or the least that induction hardens."""
    if treatment == "case hardened":
        return sheet.at_most(carbon, sheet.limit("case", "C_m")).else_says(
            f"steel of {called} has {{found}} of carbon, {{limit}} at most to be case hardened"
        )
    return sheet.at_least(carbon, sheet.limit("induction", "C_l")).else_says(
        f"steel of {called} has {{found}} of carbon, {{limit}} at least to be induction hardened"
    )


def _takes_none(family: str, treatment: str) -> bool:
    """Whether no metal of a family takes a treatment, whatever its carbon."""
    if treatment != "nitrided" and family in _AUSTENITIC:
        return True
    return family in _NOT_FERROUS or (treatment == "case hardened" and family.endswith("-iron"))


RULES = (takes_its_skin,)
