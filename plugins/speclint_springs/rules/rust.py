"""What keeps a spring from rust, and the hydrogen of a plating bath out of it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import (
    CamBox,
    CompressionSpring,
    PoppetValve,
    Rocker,
    RubbingPair,
    Tappet,
    ValveSpindle,
    denies,
)
from speclint_springs.formulae.tables import RUSTLESS
from speclint_springs.sources import EN_10270, ISO_9588

_OF_THE_BOX = "oil of its cam box"
_PLATED = "electroplated zinc"


@rule(
    "coil-spring.kept-from-rust",
    title="A spring whose wire rusts is kept from it by a coating, or by the oil that its cam box feeds to the valve's "
    "spindle; one plated in a bath is baked for 24 h at 190 to 220 °C",
    on=CompressionSpring,
    grade=Grade.NONCONFORMITY,
    cites=[EN_10270[2], ISO_9588, COMMON_PRACTICE],
    why="a valve spring breaks from the first pit that rust makes in it; hydrogen from a plating bath breaks a loaded "
    "spring within days",
    leaves_out="how thick and how sound the coating is, and what rubs it off; pickling in acid, and how soon after "
    "the bath baking begins; whether oil reaches every coil; stainless wire in salt",
    against=("corrode",),
    limits=[
        Limit(
            "baked",
            "24 h",
            "time",
            ISO_9588,
            "least time of baking, as for the strongest steels of its table",
        ),
        Limit("coolest", "190 °C", "temperature", ISO_9588, "coolest baking"),
        Limit("hottest", "220 °C", "temperature", ISO_9588, "hottest baking"),
    ],
)
def kept_from_rust(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """Wire that rusts has a coating, or a box that feeds oil to the spindle; plating its time and heat of baking.

    A spring within another is oiled as that is.
    """
    wire = sheet.read("wire grade", spring.wire_grade)
    stated = sheet.is_stated("protection", spring.protection)
    if wire in RUSTLESS and not stated:
        return sheet.states(True, f"wire {wire} does not rust")
    protection = sheet.read("protection", spring.protection)
    if protection == _PLATED:
        return _baked(spring, sheet)
    if wire in RUSTLESS:
        return sheet.states(True, f"wire {wire} does not rust, whatever is on it")
    if protection == _OF_THE_BOX:
        return _oiled(spring, sheet)
    says = f"kept from rust by {protection}" if protection != "none" else f"wire {wire} rusts, and is bare"
    return sheet.states(protection != "none", says, where=spring.protection.where)


def _baked(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """Long enough at the heat that drives hydrogen out of the wire, and does not soften it."""
    if not any(sheet.is_stated("baking", one) for one in (spring.baked_for, spring.baked_at)):
        return sheet.states(
            False, "plated in a bath, and not said to be baked", where=spring.protection.where
        )
    heat = spring.baked_at
    return sheet.worst(
        sheet.at_least(sheet.take("t", spring.baked_for), sheet.limit("baked")).else_says(
            "plated spring baked for {found}, {limit} wanted"
        ),
        sheet.at_least(sheet.take("T", heat), sheet.limit("coolest")).else_says(
            "plated spring baked at {found}, {limit} wanted"
        ),
        sheet.no_hotter(sheet.take("T", heat), sheet.limit("hottest")).else_says(
            "plated spring baked at {found}, {limit} allowed"
        ),
    )


def _oiled(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """Whether a box that carries what works the valve's spindle lists a feed of oil to it."""
    seen: dict[str, None] = {}
    for spindle in sheet.belonging_to(_valve_of(spring, sheet), ValveSpindle):
        for box in _boxes_at(spindle, sheet):
            if _oils(box, spindle, sheet):
                return sheet.states(True, f"{box.id} feeds oil to {spindle.id}")
            seen[box.id] = None
    says = f"{' and '.join(seen)} feeds no oil to the spindle of its valve"
    where = spring.protection.where
    return sheet.states(False, says if seen else "no cam box carries what works its valve", where=where)


def _valve_of(spring: CompressionSpring, sheet: Sheet) -> PoppetValve:
    """The valve that a spring shuts, or the one round it in its set; the core cuts links that run in a loop."""
    while not sheet.is_stated(f"valve of {spring.id}", spring.closes):
        spring = sheet.follow(spring.nested_in)
    return sheet.follow(spring.closes)


def _boxes_at(spindle: ValveSpindle, sheet: Sheet) -> Iterator[CamBox]:
    """The boxes that carry the rocker or the tappet by which a spindle is worked."""
    drivers: list[Rocker | Tappet] = [*sheet.belonging_to(spindle, Rocker)]
    for driver in (*drivers, *sheet.belonging_to(spindle, Tappet)):
        if sheet.is_stated(f"box that carries {driver.id}", driver.carried_in):
            yield sheet.follow(driver.carried_in)


def _oils(box: CamBox, spindle: ValveSpindle, sheet: Sheet) -> bool:
    """Whether one of the pairs of a box feeds a spindle, and the box does not say that nothing oils it."""
    if sheet.said(f"lubricant of {box.id}", box.lubrication.lubricant) == "none":
        return False
    return any(_feeds(name, pair, spindle, sheet) for name, pair in box.pairs.items())


def _feeds(name: str, pair: RubbingPair, spindle: ValveSpindle, sheet: Sheet) -> bool:
    """Whether a rubbing pair of a box is one of a spindle, and has a feed of oil."""
    known = (spindle.id, spindle.kind)
    if not any(sheet.read(f"parts of {name}", word) in known for word in pair.between):
        return False
    oil, feed = sheet.said(f"oil of {name}", pair.oil), sheet.said(f"feed of {name}", pair.feed)
    return oil is not None and oil != "grease" and feed is not None and not denies(feed)


RULES = (kept_from_rust,)
