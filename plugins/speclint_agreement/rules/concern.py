"""What a spec says of pressure and danger agrees with the kind and the place of the part."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import hurts_by_kind, pressure_by_place
from speclint.specs import Component


def _pressure(component: Component, sheet: Sheet) -> Iterator[Pair]:
    """The word of the spec, where kind or place of the part says that it holds pressure."""
    if pressure_by_place(component, sheet):
        says = f"its place: a {component.called} holds the pressure of steam"
        yield Pair(component.pressure_part, Worked(True, says=says))


def _safety(component: Component, _sheet: Sheet) -> Iterator[Pair]:
    """The word of the spec, where the kind of the part says that its failure can hurt someone."""
    if hurts_by_kind(component):
        says = f"its kind: a {component.called} that fails can hurt someone"
        yield Pair(component.safety_part, Worked(True, says=says))


pressure_part: Rule = agreement(
    "release.pressure-by-place",
    title="No part is said to hold no pressure whose place says that it does",
    on=Component,
    pairs=_pressure,
    within="",
    grade=Grade.QUERY,
    why="a part that is said to hold none is asked for no test, no certificate and no second pair of eyes",
    leaves_out="parts that hold pressure without being of such a kind, which must say so; they are judged as pressure "
    "parts whatever this word says",
)

safety_part: Rule = agreement(
    "release.safety-by-kind",
    title="No part is said to hurt nobody whose kind says that its failure can",
    on=Component,
    pairs=_safety,
    edition=2,
    within="",
    grade=Grade.QUERY,
    why="a rod, a stud or a cover that lets go hurts whoever stands there, whatever its spec says",
    leaves_out="parts of other kinds, which must say so themselves; parts of these kinds are judged as safety parts "
    "whatever this word says",
)

RULES = (pressure_part, safety_part)
