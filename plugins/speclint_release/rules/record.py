"""The record of the inspection of a part while it is made."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import holds_pressure, is_welded
from speclint.specs import Component
from speclint_release.sources import EN_13445_5


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
    edition=4,
    leaves_out="who the inspector is, and what is measured at each point",
    against=(),
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
    if is_welded(component, sheet):
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


RULES = (inspection_points,)
