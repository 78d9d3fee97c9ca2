"""A fit and the seat or liner that it joins to a block state one friction, one load and one roughness."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import bore_of
from speclint.specs import CylinderLiner, Fit, Length, NotStated, ValveSeat


def _fits(fit: Fit, sheet: Sheet) -> Iterator[Pair]:
    """Friction, axial load and both roughnesses of the fit against those of the seat or liner and of its bore."""
    if not sheet.is_stated("part with the shaft", fit.shaft.of):
        return
    part = sheet.follow(fit.shaft.of)
    if not isinstance(part, ValveSeat | CylinderLiner):
        return
    if isinstance(part, ValveSeat):
        yield from _both("friction", fit.friction, part.friction, sheet)
        yield from _both("load", fit.axial_load, part.sticking_drag, sheet)
    yield from _both("roughness", fit.shaft_roughness, part.roughness, sheet)
    if isinstance(part, ValveSeat):
        yield from _both("roughness", fit.hole_roughness, bore_of(part, sheet).roughness, sheet)
    elif sheet.is_stated("block", part.housed_in) and sheet.is_stated("bore", part.in_bore):
        block = sheet.follow(part.housed_in)
        bore = sheet.entry(block.bores, part.in_bore, f"bores of {block.id}")
        yield from _both("roughness", fit.hole_roughness, bore.roughness, sheet)


def _both(limit: str, here: Length, there: Length, sheet: Sheet) -> Iterator[Pair]:
    """Both ends of a quantity that fit and part state."""
    if isinstance(here, NotStated) or isinstance(there, NotStated):
        sheet.is_stated(limit, here)
        sheet.is_stated(limit, there)
        return
    ends = zip(
        ("least", "greatest"), sheet.take_limits("x", here), sheet.take_limits("y", there), strict=True
    )
    for end, own, other in ends:
        name = f"{here.where.key}, {end}"
        yield Pair(Worked(own, (here.where,)), Worked(other, (there.where,)), name=name, within=limit)


says_once: Rule = agreement(
    "fit.says-once",
    title="A fit states the friction, the axial load and the roughnesses of the seat or liner in it and of its bore",
    on=Fit,
    pairs=_fits,
    within="",
    limits=[
        Limit(
            "friction",
            "0.001",
            "ratio",
            COMMON_PRACTICE,
            "what two coefficients may differ by",
            "not negative",
        ),
        Limit("load", "1 N", "force", COMMON_PRACTICE, "what two loads may differ by", "not negative"),
        Limit(
            "roughness",
            "0.1 µm",
            "length",
            COMMON_PRACTICE,
            "what two roughnesses may differ by",
            "not negative",
        ),
    ],
    grade=Grade.HOLD,
    why="one ring is judged by two fits: it holds by the one and comes out by the other",
    leaves_out="a fit of other parts than a valve seat or a liner",
)

RULES = (says_once,)
