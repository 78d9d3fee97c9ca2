"""The record of a pressure part and of its inspection."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any, cast

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Kelvins, Pascals
from speclint.specs import Component, LoadCase, NotStated
from speclint_release.formulae.records import temperature_margin
from speclint_release.inputs import holds_pressure
from speclint_release.sources import B31_1, EN_10204, EN_13445_5

if TYPE_CHECKING:
    from speclint.specs import BoltedJoint, CylinderBlock, SteamPipe

#: What may be stated once for a vessel and all its parts.
_OF_THE_VESSEL = ("design_pressure", "design_temperature", "test_pressure", "competent_body")


@rule(
    "release.pressure-part",
    title="A pressure part states its test, examination, inspection document and competent body, and a "
    "design pressure and temperature that cover its duty, the temperature with at least 20 K to spare",
    on=Component,
    cases=("starting", "running"),
    grade=Grade.HOLD,
    cites=[
        B31_1.at("101.2.4 and 101.3.2, design pressure and metal temperature"),
        EN_10204.at("clauses 4 and 5"),
        EN_13445_5.at("clauses 6 and 10"),
        COMMON_PRACTICE,
    ],
    why="whoever examines, tests or repairs it in thirty years has only this record",
    leaves_out="water trapped in the cylinder, and whether test and examination are sufficient: the "
    "local code and the competent person or body that it names decide",
    limits=[
        Limit(
            "swing",
            "20 K",
            "temperature difference",
            COMMON_PRACTICE,
            "least margin of the design temperature for variation of the superheat",
        )
    ],
)
def pressure_part(component: Component, case: LoadCase, sheet: Sheet) -> Judgement:
    """Lists what is missing; then judges design pressure against the highest in service, and design temperature.

    Design figures, test and competent body may stand on the part that this one closes, holds or is joined
    to. Where the duty gives no metal temperature, that of the steam is taken.
    """
    if not holds_pressure(component, sheet):
        raise sheet.not_applicable("it is not stated to be a pressure part")
    found = {name: _of_vessel(component, name, sheet) for name in _OF_THE_VESSEL}
    found["inspection_document"] = component.inspection_document
    if not component.is_one_of(("bolted-joint",)):  # codes ask for no examination of finished studs
        found["examination"] = component.examination
    missing = [(name, value.where) for name, value in found.items() if not sheet.is_stated(name, value)]
    if missing:
        names = ", ".join(name for name, _ in missing)
        return sheet.states(False, f"not stated: {names}", where=missing[0][1])
    design = sheet.take("p_d", found["design_pressure"])
    margin = sheet.work(
        "ΔT",
        temperature_margin,
        T_d=sheet.take("T_d", found["design_temperature"]),
        T=_temperature(component, case, sheet),
    )
    return sheet.worst(
        sheet.at_least(design, _pressure(component, case, sheet)),
        sheet.at_least(margin, sheet.limit("swing", "ΔT_s")),
    )


def _of_vessel(component: Component, name: str, sheet: Sheet) -> Any:
    """A value as the component states it, or else the nearest component that it is linked to."""
    own = getattr(component, name)
    for part in _linked(component, sheet):
        stated = getattr(part, name)
        if sheet.is_stated(f"{name} of {part.id}", stated):
            return stated
    return own


def _linked(component: Component, sheet: Sheet) -> Iterator[Component]:
    """The component, and those it is linked to, the nearest first."""
    waiting = [component]
    while waiting:
        part = waiting.pop(0)
        yield part
        for link in part.links():
            found = sheet.follow(link)
            if isinstance(found, Component):
                waiting.append(found)


def _pressure(component: Component, case: LoadCase, sheet: Sheet) -> Pascals:
    """Highest pressure of the part in the load case: that of exhaust steam where it, or its pipe, carries that."""
    held = ""
    for part in _linked(component, sheet):
        if part.is_one_of(("bolted-joint",)):
            held = sheet.read(f"pressure held by {part.id}", cast("BoltedJoint", part).pressure)
        elif part.is_one_of(("steam-pipe",)):
            held = sheet.read(f"carried by {part.id}", cast("SteamPipe", part).carries)
        if held:
            break
    return sheet.take("p", case.exhaust_pressure if "exhaust" in held else case.safety_valve_pressure)


def _temperature(component: Component, case: LoadCase, sheet: Sheet) -> Kelvins:
    metal = case.temperature_of(component)
    known = not isinstance(metal, NotStated) and sheet.is_stated("metal temperature", metal)
    return sheet.take("T", metal if known else case.live_temperature)


@rule(
    "release.inspection-points",
    title="Welding, pressing, pressure test and lift-in of the part are hold or witness points of its "
    "inspection plan",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[
        EN_13445_5.at("clauses 6 and 10, inspection during fabrication and final assessment"),
        COMMON_PRACTICE,
    ],
    why="the next run covers a root run and assembly hides a fit: they can be inspected only at that moment",
    leaves_out="who the inspector is, and what is measured at each point",
)
def inspection_points(component: Component, sheet: Sheet) -> Judgement:
    """Requires of each part the points that its manufacture has."""
    needed = list(_operations(component, sheet))
    if not needed:
        raise sheet.not_applicable(
            "it is neither welded nor pressed in, holds no pressure and is not a block"
        )
    points = component.inspection_points
    stated = {
        "welding": points.welding,
        "pressing": points.pressing,
        "pressure_test": points.pressure_test,
        "lift_in": points.lift_in,
    }
    if not any(sheet.is_stated(name, value) for name, value in stated.items()):
        raise sheet.not_assessed(f"inspection_points is not stated: {', '.join(needed)}", points.where)
    missing = [
        name
        for name in needed
        if not sheet.is_stated(name, stated[name]) or sheet.read(name, stated[name]) == "none"
    ]
    if missing:
        return sheet.states(
            False, f"not a point of the inspection plan: {', '.join(missing)}", where=points.where
        )
    return sheet.states(True, f"points of the inspection plan: {', '.join(needed)}")


def _operations(component: Component, sheet: Sheet) -> Iterator[str]:
    if _is_welded(component, sheet):
        yield "welding"
    if component.is_one_of(("cylinder-block",)):
        yield "lift_in"
    if component.is_one_of(("cylinder-liner", "valve-seat")):
        yield "pressing"
    if _is_tested(component, sheet):
        yield "pressure_test"


def _is_tested(component: Component, sheet: Sheet) -> bool:
    """Whether it has a test of its own: a block or pipe that holds pressure, or a part that states a test pressure.

    Covers, flanges and studs are tested with what they close.
    """
    if component.is_one_of(("bolted-joint",)):
        return False
    own = component.is_one_of(("cylinder-block", "steam-pipe"))
    return holds_pressure(component, sheet) and (
        own or sheet.is_stated("test pressure", component.test_pressure)
    )


def _is_welded(component: Component, sheet: Sheet) -> bool:
    """Whether it states that it is welded, or is a fabricated block."""
    if sheet.is_stated("welded", component.welding.welded):
        return sheet.read("welded", component.welding.welded)
    if component.is_one_of(("cylinder-block",)):
        return sheet.read("construction", cast("CylinderBlock", component).construction) == "fabricated"
    return False


RULES = (pressure_part, inspection_points)
