"""A part states a mass that its sizes and its metal allow."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import BySizes, mass_by_sizes, share_of_mass
from speclint.specs import (
    CompressionSpring,
    DrivingAxle,
    Mass,
    Piston,
    PistonRod,
    PoppetValve,
    ValveSpindle,
    Weldment,
)

_Weighed = CompressionSpring | Piston | PistonRod | PoppetValve | ValveSpindle | Weldment


def _masses(part: _Weighed, sheet: Sheet) -> Iterator[Pair]:
    """The stated mass against the least and the most that the sizes give."""
    by_sizes = mass_by_sizes(part, sheet)
    if by_sizes is None:
        return
    yield from _pairs(part.mass, by_sizes, "", sheet)
    if isinstance(part, PistonRod) and by_sizes.least is not None:
        m = sheet.work("m_e", share_of_mass, s=sheet.limit("rod with its ends", "s_e"), M=by_sizes.least)
        yield Pair(part.mass, Worked(m, by_sizes.places), "at most", name="with its ends")


def _turning(axle: DrivingAxle, sheet: Sheet) -> Iterator[Pair]:
    """The mass of each piece that turns against that of the part which it names."""
    for name, piece in axle.turning.items():
        if not sheet.is_stated(f"part of {name}", piece.of):
            continue
        by_sizes = mass_by_sizes(sheet.follow(piece.of), sheet)
        if by_sizes is not None:
            yield from _pairs(piece.mass, by_sizes, name, sheet)


def _pairs(mass: Mass, by_sizes: BySizes, name: str, sheet: Sheet) -> Iterator[Pair]:
    for must, M in (("at least", by_sizes.least), ("at most", by_sizes.most)):
        if M is not None:
            s = (
                sheet.limit("least share", "s_l")
                if must == "at least"
                else sheet.limit("greatest share", "s_g")
            )
            m = sheet.work("m_l" if must == "at least" else "m_g", share_of_mass, s=s, M=M)
            yield Pair(
                mass, Worked(m, by_sizes.places), "at least" if must == "at least" else "at most", name=name
            )


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

by_sizes: Rule = agreement(
    "mass.by-sizes",
    title="The mass of a part is what its sizes and its metal give: of a spring its wire, of others no less than they "
    "are at their thinnest, and no more than they are solid",
    on=(CompressionSpring, Piston, PistonRod, PoppetValve, ValveSpindle, Weldment),
    pairs=_masses,
    within="",
    limits=[*_LIMITS, _ENDS],
    grade=Grade.NONCONFORMITY,
    why="forces of inertia, lifting and balance all rest on a mass that nobody works again",
    leaves_out="ribs, bosses, collars, nuts and ends, between the least and the most; plates that are no flat walls; "
    "crossheads, tappets and cam boxes, whose sizes do not describe them",
)

turning_parts: Rule = agreement(
    "mass.of-turning-parts",
    title="A mass that turns with an axle is no less than that of the part which it names",
    on=DrivingAxle,
    pairs=_turning,
    within="",
    limits=_LIMITS,
    grade=Grade.NONCONFORMITY,
    why="a pin that is counted too light turns out of balance with the rest of its mass",
    leaves_out="masses that name no part; the seat of a pin in its wheel",
)

RULES = (by_sizes, turning_parts)
