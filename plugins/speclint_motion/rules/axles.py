"""What rests on the axles of an engine, and where the weight of the engine stands."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import KilogramMetres, Kilograms, Metres
from speclint.facts import axles_of, mass_together
from speclint.specs import DrivingAxle, Engine
from speclint_motion.formulae.balance import (
    centres_apart,
    moment_with,
    place_of_centre,
    unevenness,
)
from speclint_motion.formulae.guides import mass_apart


@rule(
    "axle.load",
    title="What rests on a driving axle is no more than the line permits, and lies evenly on its two wheels",
    on=DrivingAxle,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="rails and bridges are laid for a load of each axle; a wheel with less than its half slips and climbs first",
    leaves_out="load that springs and couples of the forces shift when running; how it was weighed; the railway's code "
    "and a competent person decide",
    limits=[
        Limit(
            "uneven",
            "0.03",
            "ratio",
            COMMON_PRACTICE,
            "greatest difference of a wheel's load from half of its axle's",
        )
    ],
    against=(),
)
def load(axle: DrivingAxle, sheet: Sheet) -> Judgement:
    """Both wheels together, and one against the other."""
    m_l, m_r = sheet.take("m_l", axle.left.load), sheet.take("m_r", axle.right.load)
    x = sheet.work("x", unevenness, m_l=m_l, m_r=m_r)
    even = sheet.at_most(x, sheet.limit("uneven")).else_says(
        "a wheel has {found} more than its half, {limit} allowed"
    )
    line = sheet.follow(axle.engine).line

    def by_code(_: str) -> Judgement:
        sheet.read("code of the line", line.code)
        m = sheet.work("m", mass_together, m_0=m_l, m_1=m_r)
        return sheet.at_most(m, sheet.take("m_c", line.axle_load)).else_says(
            "axle load {found}, {limit} permitted"
        )

    return sheet.worst(even, sheet.each(("axle",), by_code))


class _Weighed(NamedTuple):
    """Masses together and their moment along the engine."""

    M: Kilograms
    S: KilogramMetres


@rule(
    "engine.weight-on-axles",
    title="The loads of all axles make up the mass of the engine, its parts do too, and both have one centre, "
    "which is in the middle between the rails",
    on=Engine,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="loads that were only wished for show themselves on the scales, when nothing can be moved any more",
    leaves_out="how springs and beams divide the load between the axles, heights, and water and coal that are used up",
    limits=[
        Limit("mass", "0.01", "ratio", COMMON_PRACTICE, "greatest difference of sum and stated mass"),
        Limit(
            "along", "50 mm", "length", COMMON_PRACTICE, "greatest distance of the centres along the engine"
        ),
        Limit(
            "across", "15 mm", "length", COMMON_PRACTICE, "greatest distance of the centre from the middle"
        ),
    ],
    against=(),
)
def weight_on_axles(engine: Engine, sheet: Sheet) -> Judgement:
    """Sums of masses and of their moments: of the axles, and of what stands on them."""
    if not engine.stands:
        raise sheet.not_assessed(f"stands is not stated in {engine.where.file}", engine.where)
    M = sheet.take("M", engine.mass)
    carried = _sum("w", _loads(engine, sheet), sheet)
    parts = {name: (sheet.take(f"m {name}", one.mass), one) for name, one in engine.stands.items()}
    built = _sum("s", ((name, m, sheet.take(f"x {name}", one.at)) for name, (m, one) in parts.items()), sheet)
    aside = _sum(
        "y", ((name, m, sheet.take(f"y {name}", one.from_centre)) for name, (m, one) in parts.items()), sheet
    )
    x_w, x_s, y = (
        sheet.work(symbol, place_of_centre, S=one.S, M=one.M)
        for symbol, one in (("x_w", carried), ("x_s", built), ("y_s", aside))
    )
    off = sheet.work("δ_y", centres_apart, x_1=y, x_2=0.0)
    apart = sheet.work("δ_x", centres_apart, x_1=x_w, x_2=x_s)
    return sheet.worst(
        _agrees("axles", carried.M, M, sheet),
        _agrees("parts", built.M, M, sheet),
        sheet.at_most(apart, sheet.limit("along")).else_says(
            "centres of loads and parts {found} apart, {limit} allowed"
        ),
        sheet.at_most(off, sheet.limit("across")).else_says(
            "centre {found} out of the middle, {limit} allowed"
        ),
    )


def _agrees(what: str, m: Kilograms, M: Kilograms, sheet: Sheet) -> Judgement:
    x = sheet.work(f"x_m {what}", mass_apart, m=m, m_0=M)
    return sheet.at_most(x, sheet.limit("mass")).else_says(
        f"{what} together {{found}} off the mass, {{limit}} allowed"
    )


def _loads(engine: Engine, sheet: Sheet) -> Iterable[tuple[str, Kilograms, Metres]]:
    """Load of every axle, and where it stands."""
    for axle in axles_of(engine, sheet):
        m = sheet.work(
            f"m {axle.id}",
            mass_together,
            m_0=sheet.take(f"m_l {axle.id}", axle.left.load),
            m_1=sheet.take(f"m_r {axle.id}", axle.right.load),
        )
        yield axle.id, m, sheet.take(f"x {axle.id}", axle.at)
    for name, one in engine.carrying.items():
        yield name, sheet.take(f"m {name}", one.load), sheet.take(f"x {name}", one.at)


def _sum(mark: str, pieces: Iterable[tuple[str, Kilograms, Metres]], sheet: Sheet) -> _Weighed:
    M = S = 0.0
    for name, m, x in pieces:
        S = sheet.work(f"S_{mark} with {name}", moment_with, S_0=S, m=m, x=x)
        M = sheet.work(f"M_{mark} with {name}", mass_together, m_0=M, m_1=m)
    return _Weighed(M, S)


RULES = (load, weight_on_axles)
