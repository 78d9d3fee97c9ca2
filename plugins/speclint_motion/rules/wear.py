"""Wear between overhauls: its limits, and whether they are reached before."""

from __future__ import annotations

from typing import get_args

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.handbook.fits import diametral_clearance, share_of_diameter
from speclint.specs import (
    Cam,
    CompressionSpring,
    CylinderLiner,
    Pin,
    PistonRing,
    PoppetValve,
    Rocker,
    SlideBar,
    ValveSeat,
    ValveSpindle,
)
from speclint_motion.formulae.wear import PER_DISTANCE, distance_to_limit, grown_by_wear, left_by_wear
from speclint_motion.sources import REBORING

Wearing = (
    Cam
    | CompressionSpring
    | CylinderLiner
    | Pin
    | PistonRing
    | PoppetValve
    | Rocker
    | SlideBar
    | ValveSeat
    | ValveSpindle
)
_KINDS = get_args(Wearing)


@rule(
    "wear.limits-stated",
    title="Each part that wears states its limit of wear, its rate with how that is known, and the overhaul until "
    "which it lasts; the limit of a bore, a guide or a slide bar beyond common practice is a query",
    on=_KINDS,
    grade=Grade.NONCONFORMITY,
    cites=[REBORING, COMMON_PRACTICE],
    why="a part without a limit of wear is run until it fails",
    leaves_out="whether the limit is right for the part (wear.works-at-limit, wear.rings, wear.pins-and-bushes)",
    against=(),
    limits=[
        Limit("bore", "1.5 mm", "length", REBORING, "greatest taper or ovality of a cylinder bore"),
        Limit(
            "guide",
            "0.010",
            "ratio",
            COMMON_PRACTICE,
            "greatest clearance in a guide over the spindle's diameter",
        ),
        Limit(
            "slide bar",
            "3 mm",
            "length",
            COMMON_PRACTICE,
            "greatest clearance of a crosshead on its bars: its rod knocks, and bears on neck bush and packing",
        ),
    ],
    edition=2,
)
def limits_stated(part: Wearing, sheet: Sheet) -> Judgement:
    """What the table of wear states, and three limits against common practice."""
    if sheet.setting("stage") == "draft":
        raise sheet.not_applicable("a draft: wear is stated before review")
    wear = part.wear
    stated = {"limit": wear.limit, "rate": wear.rate, "basis": wear.basis, "until": wear.until}
    missing = [name for name, value in stated.items() if not sheet.is_stated(f"{name} of wear", value)]
    if missing:
        return sheet.states(False, f"of its wear not stated: {', '.join(missing)}", where=part.where)
    if isinstance(part, CylinderLiner | SlideBar):
        most = sheet.limit("bore" if isinstance(part, CylinderLiner) else "slide bar")
        judged = sheet.at_most(sheet.take("m_n", wear.limit), most).else_says(
            "may wear to {found}, common practice allows {limit}"
        )
        return judged.graded(Grade.QUERY)
    if isinstance(part, ValveSpindle):
        k, d = sheet.limit("guide", "k"), sheet.take("d", part.diameter)
        most = sheet.work("c_n", share_of_diameter, k=k, D=d)
        judged = sheet.at_most(sheet.take("m_n", wear.limit), most).else_says(
            "may wear to {found}, common practice allows {limit}"
        )
        return judged.graded(Grade.QUERY)
    return sheet.states(True, "limit and rate of wear are stated")


@rule(
    "wear.lasts-to-overhaul",
    title="At the overhaul until which a part lasts its wear has not passed its limit",
    on=_KINDS,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a part that wears out between two overhauls stops the engine, or goes on working worn out",
    leaves_out="wear out of proportion to the distance run: scuffing for want of oil, dirt, corrosion",
    against=("wear",),
    limits=[
        Limit("light", "100000 km", "length", COMMON_PRACTICE, "distance run until a light overhaul"),
        Limit("heavy", "200000 km", "length", COMMON_PRACTICE, "distance run until a heavy overhaul"),
    ],
)
def lasts_to_overhaul(part: Wearing, sheet: Sheet) -> Judgement:
    """New size and rate × distance against the limit; where the rate is common practice alone, a query."""
    limit, w = sheet.take("m_n", part.wear.limit), sheet.take("w", part.wear.rate)
    until = sheet.read("lasts until", part.wear.until)
    run = {"w": w, "s": sheet.limit(until.removesuffix(" overhaul"), "s"), "S": PER_DISTANCE}
    if isinstance(part, PistonRing | CompressionSpring):
        left = sheet.work("m", left_by_wear, a=_new(part, sheet), **run)
        judged = sheet.at_least(left, limit).else_says(f"worn to {{found}} at the {until}, {{limit}} wanted")
    else:
        grown = sheet.work("m", grown_by_wear, a=_new(part, sheet), **run)
        judged = sheet.at_most(grown, limit).else_says(f"worn to {{found}} at the {until}, {{limit}} allowed")
    known = sheet.read("rate known by", part.wear.basis)
    return judged.graded(Grade.QUERY) if known == "common practice" and not judged.holds else judged


@rule(
    "wear.reaches-its-limit",
    title="At the rate that is stated a part wears from new to its limit within 2.5 million km, the life of an engine; "
    "a lower rate is a query",
    wrong="at its rate of wear it reaches its limit after {found}, an engine runs {limit} in its life",
    on=_KINDS,
    grade=Grade.QUERY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a rate written in a wrong unit makes every check of wear pass, and the part is worn out years before it is "
    "measured",
    leaves_out="a rate that is too high (wear.lasts-to-overhaul); whether the record of the works is of a part like "
    "this one",
    against=(),
    limits=[
        Limit("life", "2500000 km", "length", COMMON_PRACTICE, "greatest distance an engine runs in its life")
    ],
)
def reaches_its_limit(part: Wearing, sheet: Sheet) -> Judgement:
    """The room between new and limit over the rate, also where the rate is a record of the works."""
    limit, w = sheet.take("m_n", part.wear.limit), sheet.take("w", part.wear.rate)
    s = sheet.work("s", distance_to_limit, m_n=limit, a=_new(part, sheet), w=w, S=PER_DISTANCE)
    return sheet.at_most(s, sheet.limit("life"))


def _new(part: Wearing, sheet: Sheet) -> Metres:
    """The thickness, length or clearance of a new part; nothing is worn off a new face."""
    if isinstance(part, PistonRing):
        return sheet.take("a", part.thickness)
    if isinstance(part, CompressionSpring):
        return sheet.take("a", part.free_length)
    if isinstance(part, ValveSpindle):
        D, d = sheet.take("D_g", part.guide_bore), sheet.take("d", part.diameter)
        return sheet.work("a", diametral_clearance, D=D, d=d)
    if isinstance(part, CylinderLiner | Pin | Rocker | SlideBar):
        return sheet.take("a", part.wear.new)
    return 0.0


RULES = (limits_stated, lasts_to_overhaul, reaches_its_limit)
