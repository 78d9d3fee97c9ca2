"""The record for whoever certifies the engine: of each pressure part and safety part the pieces made, and the sheets.

A piece is a part as made that is fitted in the place of its spec, or may be: where one is said to be fitted, the others
are left out.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import cast

from msgspec import Struct

from speclint.checking import Assessment, Check, made_to_old_revision
from speclint.facts import holds_pressure, is_safety_part
from speclint.handbook.inspection import Decision
from speclint.made.design_as_made import made_parts
from speclint.made.dimensions import DimensionMade, dimensions_of
from speclint.rules import Context, Corner, Grade, Rule, RuleEnded, Sheet
from speclint.specs import Component, Link, MadePart, Stated


class PieceMade(Struct, frozen=True):
    """One piece of metal: what was measured on it that is not proved to be in, and the checks of its record."""

    made: MadePart
    fitted: bool
    old_revision: bool
    departures: tuple[DimensionMade, ...]
    checks: tuple[Check, ...]


class PartInDossier(Struct, frozen=True):
    """A pressure part or safety part: why it is one, its pieces, and the sheets on which its safety rests.

    ``sheets`` are its checks of which a hold can come and that applied; ``open`` those of them and of all its other
    checks that stand in the way as a hold or a nonconformity.
    """

    part: Component
    why: tuple[str, ...]
    pieces: tuple[PieceMade, ...]
    sheets: tuple[Check, ...]
    open: tuple[Check, ...]


def dossier(drawn: Assessment) -> tuple[PartInDossier, ...]:
    """Each pressure part and safety part of a design, in the order of the ids.

    :raises ValueError: for an assessment of a design that could not be read.
    """
    if drawn.design is None or drawn.context is None:
        raise ValueError("nothing could be read to make the record of")
    checks: dict[str, list[Check]] = {}
    for one in drawn.checks:
        checks.setdefault(one.component, []).append(one)
    pieces = _by_spec(drawn, checks)
    found = []
    for name in drawn.design.part_names():
        part, own = drawn.design.specs.get(name), checks.get(name, [])
        if not isinstance(part, Component) or isinstance(part, MadePart) or not own or not part.of_metal:
            continue
        if why := tuple(_why(part, own[0].rule, drawn.context)):
            sheets = tuple(
                one for one in own if one.rule.gravest is Grade.HOLD and one.outcome != "not applicable"
            )
            there = tuple(pieces.get(name, ()))
            found.append(PartInDossier(part, why, there, sheets, tuple(_in_the_way(own))))
    return tuple(found)


def _by_spec(drawn: Assessment, checks: dict[str, list[Check]]) -> dict[str, list[PieceMade]]:
    """The pieces made to each spec: those that are said to be fitted, or all where none is."""
    assert drawn.design is not None
    decision = cast(Decision, drawn.design.settings.decision)
    old = set(made_to_old_revision(drawn))
    found: dict[str, list[PieceMade]] = {}
    for made in made_parts(drawn.design):
        spec = drawn.design.specs.get(made.of.id) if isinstance(made.of, Link) else None
        if spec is None:
            continue
        sizes = dimensions_of(made, spec, decision)
        departures = tuple(one for one in sizes if one.verdict in ("out", "undecided"))
        fitted = isinstance(made.fitted, Stated) and made.fitted.value
        own = tuple(_in_the_way(checks.get(made.id, []), Grade.QUERY))
        found.setdefault(spec.id, []).append(PieceMade(made, fitted, made.id in old, departures, own))
    return {
        name: [one for one in some if one.fitted] or [one for one in some if not _scrapped(one.made)]
        for name, some in found.items()
    }


def _scrapped(made: MadePart) -> bool:
    return isinstance(made.fitted, Stated) and not made.fitted.value


def _in_the_way(checks: list[Check], least: Grade = Grade.NONCONFORMITY) -> Iterator[Check]:
    for one in checks:
        grade = one.stands_in_the_way
        if grade is not None and grade >= least:
            yield one


def _why(part: Component, rule: Rule, context: Context) -> Iterator[str]:
    """Why a part is in the record; of one of which it is not stated whether it holds pressure, that is said."""
    sheet = Sheet(rule, part, context, Corner(), record=False)
    try:
        if holds_pressure(part, sheet):
            yield "pressure part"
    except RuleEnded as ended:
        yield f"whether it holds pressure is not known: {ended.says}"
    if is_safety_part(part, sheet):
        yield "safety part"
