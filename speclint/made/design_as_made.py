"""A design in which parts stand as they were made: what was measured in the place of the limits of the drawings."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping

from speclint.errors import Location, replace
from speclint.made.dimensions import DimensionMade
from speclint.quantities import Measure
from speclint.repository import Design
from speclint.specs import Component, Link, MadePart, NotStated, Stated, quantities_of, restated


def made_parts(design: Design) -> tuple[MadePart, ...]:
    """Every part as made of a design, in the order of the ids."""
    return tuple(one for one in design.parts_as_made() if isinstance(one, MadePart))


def made_to(made: MadePart, design: Design) -> Component | None:
    """The component that a part was made to; None where it cannot be read."""
    found = design.follow(made.of) if isinstance(made.of, Link) else None
    return found if isinstance(found, Component) else None


def fitted_parts(design: Design) -> dict[str, MadePart]:
    """The part as made that stands in the place of each spec: the only one made to it, or the one said to be fitted.

    Where several were made and none, or more than one, is said to be fitted, the drawing stands.
    """
    by_spec: dict[str, list[MadePart]] = defaultdict(list)
    for one in made_parts(design):
        if (spec := made_to(one, design)) is not None:
            by_spec[spec.id].append(one)
    found = {}
    for name, parts in by_spec.items():
        fitted = [one for one in parts if isinstance(one.fitted, Stated) and one.fitted.value]
        if len(chosen := fitted or parts) == 1:
            found[name] = chosen[0]
    return found


def as_made(drawn: Component, dimensions: Iterable[DimensionMade], made: MadePart) -> Component:
    """A component with what was measured in the place of its limits, and without the allowances that end with it.

    The size that the drawing aims at and its tolerance class stay: they are the drawing's. A value says in whose record
    it was written.
    """
    instead: dict[str, Measure | NotStated] = {}
    for one in dimensions:
        if (band := one.band) is not None and one.drawn is not None:
            where = Location(one.size.where.file, one.size.where.line, one.key, drawn.id)
            instead[one.key] = replace(
                band,
                nominal=one.drawn.nominal,
                tolerance_class=one.drawn.tolerance_class,
                provenance="as made",
                note=f"on {made.id}",
                where=where,
            )
    instead |= _ended(drawn, instead)
    return restated(drawn, instead)


def _ended(drawn: Component, measured: Mapping[str, Measure | NotStated]) -> dict[str, NotStated]:
    """The allowances for sizes that were measured."""
    return {key: NotStated(where) for key, where in _allowances(drawn, measured)}


def _allowances(
    drawn: Component, measured: Mapping[str, Measure | NotStated]
) -> Iterator[tuple[str, Location]]:
    for one in quantities_of(drawn).values():
        table = one.key.rpartition(".")[0]
        size = f"{table}.{one.until_measured}".strip(".")
        if one.until_measured and size in measured and isinstance(one.drawn, Measure):
            yield one.key, one.drawn.where
