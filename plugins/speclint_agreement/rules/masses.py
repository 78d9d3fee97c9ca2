"""A part states a mass that its sizes and its metal allow."""

from __future__ import annotations

from collections.abc import Iterator
from typing import get_args

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import (
    BySizes,
    Weighed,
    box_with_gear,
    mass_by_sizes,
    mass_of_part,
    share_of_mass,
)
from speclint.specs import (
    CamBox,
    DrivingAxle,
    Mass,
    Pin,
    PistonRod,
    ValveSpindle,
)


def _masses(part: CamBox | Weighed, sheet: Sheet) -> Iterator[Pair]:
    """The stated mass against the least and the most that the sizes give; of a cam box against walls and gear."""
    if isinstance(part, CamBox):
        yield from _box(part, sheet)
        return
    by_sizes = mass_by_sizes(part, sheet, sheet.take)
    if by_sizes is None:
        return
    most = "spindle with its plates" if isinstance(part, ValveSpindle) else "greatest share"
    yield from _pairs(part.mass, by_sizes, "", sheet, most)
    if isinstance(part, PistonRod) and by_sizes.least is not None:
        m = sheet.work("m_e", share_of_mass, s=sheet.limit("rod with its ends", "s_e"), M=by_sizes.least)
        yield Pair(part.mass, Worked(m, by_sizes.places), "at most", name="with its ends")


def _box(box: CamBox, sheet: Sheet) -> Iterator[Pair]:
    """The mass of a cam box against that of its gear and of walls as thin as they are made."""
    by_sizes = box_with_gear(box, sheet.limit("wall of a box", "t"), sheet, sheet.take)
    if by_sizes.places:
        least = sheet.work("m_l", share_of_mass, s=sheet.limit("least share", "s_l"), M=by_sizes.value)
        yield Pair(box.mass, Worked(least, by_sizes.places), "at least")


def _turning(axle: DrivingAxle, sheet: Sheet) -> Iterator[Pair]:
    """The mass of each piece that turns against that of the part which it names: as that states it, else by sizes."""
    for name, piece in axle.turning.items():
        if not sheet.is_stated(f"part of {name}", piece.of):
            continue
        part = sheet.follow(piece.of)
        known = mass_of_part(part, sheet, sheet.take_nominal)
        if known is not None:
            yield from _pairs(piece.mass, BySizes(known.value, known.value, known.places), name, sheet)
            continue
        by_sizes = mass_by_sizes(part, sheet, sheet.take)
        if by_sizes is None:
            continue
        yield from _pairs(piece.mass, by_sizes, name, sheet)
        if isinstance(part, Pin) and by_sizes.least is not None:
            m = sheet.work("m_e", share_of_mass, s=sheet.limit("pin with its seat", "s_e"), M=by_sizes.least)
            yield Pair(piece.mass, Worked(m, by_sizes.places), "at most", name=f"{name} with its seat")


def _pairs(
    mass: Mass, by_sizes: BySizes, name: str, sheet: Sheet, most: str = "greatest share"
) -> Iterator[Pair]:
    if by_sizes.least is not None:
        s = sheet.limit("least share", "s_l")
        m = sheet.work("m_l", share_of_mass, s=s, M=by_sizes.least)
        yield Pair(mass, Worked(m, by_sizes.places), "at least", name=name)
    if by_sizes.most is not None:
        m = sheet.work("m_g", share_of_mass, s=sheet.limit(most, "s_g"), M=by_sizes.most)
        yield Pair(mass, Worked(m, by_sizes.places), "at most", name=name)


_LIMITS = [
    Limit(
        "least share",
        "0.9",
        "ratio",
        COMMON_PRACTICE,
        "least mass over that of the sizes, for what is cut away",
    ),
    Limit(
        "greatest share",
        "1.1",
        "ratio",
        COMMON_PRACTICE,
        "greatest mass over that of the sizes, for what is added to them",
    ),
]
_ENDS = Limit(
    "rod with its ends",
    "2",
    "ratio",
    COMMON_PRACTICE,
    "greatest mass of a piston rod over that of its free length",
)
_WALL = Limit(
    "wall of a box",
    "5 mm",
    "length",
    COMMON_PRACTICE,
    "thinnest wall of a cam box, cast or welded, all round its overall sizes",
)
_PLATES = Limit(
    "spindle with its plates",
    "3",
    "ratio",
    COMMON_PRACTICE,
    "greatest mass of a spindle over that of a bar of its diameter, for collars, nuts and spring plates",
)
_SEAT = Limit(
    "pin with its seat",
    "3",
    "ratio",
    COMMON_PRACTICE,
    "greatest mass of a pin over that of its bearing alone, for its seat in the wheel and its collars",
)

by_sizes: Rule = agreement(
    "mass.by-sizes",
    title="The mass of a part is what its sizes and metal give: of a spring its wire; of others no less than at their "
    "thinnest (cam box with its gear, bosses of a crosshead with its pin), no more than solid",
    on=(CamBox, *get_args(Weighed)),
    pairs=_masses,
    within="",
    limits=[*_LIMITS, _ENDS, _PLATES, _WALL],
    edition=5,
    grade=Grade.NONCONFORMITY,
    why="forces of inertia, lifting and balance all rest on a mass that nobody works again",
    leaves_out="ribs, bosses, collars, nuts and ends, and walls of a piston beyond half of their thickness at the hub, "
    "between the least and the most; faces of a piston that are cut back deeper than its grooves; plates that are no "
    "flat walls; the most that a weldment weighs whose block states no width and height; a hollow pin, and of a "
    "crosshead all but its bosses and its pin; tappets, whose sizes do not describe them; the most that a cam box "
    "weighs, oil in it, and a box that is lifted off without its gear",
)

turning_parts: Rule = agreement(
    "mass.of-turning-parts",
    title="A mass that turns with an axle is that of the part which it names, and of a pin no less than that without "
    "its seat",
    on=DrivingAxle,
    pairs=_turning,
    within="",
    limits=[*_LIMITS, _SEAT],
    edition=2,
    grade=Grade.NONCONFORMITY,
    why="a pin that is counted too light or too heavy turns out of balance with the rest of its mass",
    leaves_out="masses that name no part; the seat of a pin in its wheel, between the least and the most",
)

RULES = (by_sizes, turning_parts)
