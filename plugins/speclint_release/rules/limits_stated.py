"""Sizes on which fits, walls and loads rest, and that no drawing leaves without limits."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import graded_by_stage
from speclint.specs import (
    BoltedJoint,
    CompressionSpring,
    CylinderBlock,
    CylinderLiner,
    Piston,
    PistonRod,
    PoppetValve,
    Tappet,
    ValveSeat,
)

if TYPE_CHECKING:
    from collections.abc import Iterator

    from speclint.specs import Component, Length, Stress


@rule(
    "release.limits-stated",
    title="The wall of a valve, the wire of a spring, the modulus of a gasket, and the diameters of bores, liners, "
    "seats, pistons, rods and stems state limits",
    on=(
        BoltedJoint,
        CompressionSpring,
        CylinderBlock,
        CylinderLiner,
        Piston,
        PistonRod,
        PoppetValve,
        Tappet,
        ValveSeat,
    ),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a size without limits is reckoned as if every part came out exactly so, and the shop makes it as it likes",
    leaves_out="sizes that vary with no harm, and those that other rules ask limits of; whether the limits can be held",
    against=(),
)
def limits_stated(part: Component, sheet: Sheet) -> Judgement:
    """Each of these sizes that is stated, by itself; a query in a draft. What was measured on a part as made is so."""
    measured = {where.key for where in sheet.stated_from("as made", part)}
    sizes = [one for one in _sizes(part) if one[1].where.key not in measured and sheet.is_stated(*one)]
    if not sizes:
        raise sheet.not_applicable("none of its sizes that want limits is stated")
    return sheet.each(sizes, lambda one: _judged(*one, sheet))


def _judged(name: str, size: Length | Stress, sheet: Sheet) -> Judgement:
    has = sheet.tolerance(f"Δ {name}", size) > 0.0
    says = f"{name} states limits" if has else f"{name} states no limits, and is taken as exact"
    return graded_by_stage(
        sheet.states(has, says, where=size.where),
        sheet,
        draft=Grade.QUERY,
        for_review=Grade.NONCONFORMITY,
        released=Grade.NONCONFORMITY,
    )


def _sizes(part: Component) -> Iterator[tuple[str, Length | Stress]]:
    """The sizes of a part that want limits."""
    match part:
        case BoltedJoint():
            yield "modulus of the gasket", part.gasket.modulus
        case CompressionSpring():
            yield from (("wire", part.wire), ("mean diameter", part.mean_diameter))
        case CylinderBlock():
            for table, bores in (("bore", part.bores), ("seat bore", part.seat_bores)):
                yield from ((f"diameter of {table} {name}", one.diameter) for name, one in bores.items())
        case CylinderLiner():
            yield from (("outside diameter", part.outside_diameter), ("bore", part.bore))
        case PoppetValve():
            yield "wall", part.wall
        case Tappet():
            yield "stem diameter", part.stem_diameter
        case ValveSeat():
            yield "outside diameter", part.outside_diameter
        case Piston() | PistonRod():
            yield "diameter", part.diameter


RULES = (limits_stated,)
