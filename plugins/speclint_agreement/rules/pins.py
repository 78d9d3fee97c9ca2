"""A crosshead pin and the crosshead that holds it; the fillet of a pin and its shoulder."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import beside_fillet, gap_for_bearing, length_in_bosses
from speclint.specs import Pin
from speclint_agreement.formulae.pins import height_of_shoulder, widest_eye


def _in_crosshead(pin: Pin, sheet: Sheet) -> Iterator[Pair]:
    """The bearing with its play in the gap of the bosses, or between the middles of the supports; then the seat."""
    gap = gap_for_bearing(pin, sheet, sheet.take)
    if gap is not None:
        widest = sheet.work("b_m", widest_eye, g=gap.value, c=sheet.limit("side-play", "c"))
        yield Pair(pin.length, Worked(widest, gap.places), "at most", name="bearing")
    if sheet.read("place", pin.place) == "crosshead pin" and sheet.is_stated("crosshead", pin.moved_by):
        yield from _seat(pin, sheet)


def _seat(pin: Pin, sheet: Sheet) -> Iterator[Pair]:
    """No longer than both bosses together and no larger than one of them, of the metal of the crosshead.

    Each size as it is aimed at: limits that both drawings give to one boss are no difference.
    """
    crosshead, seat = sheet.follow(pin.moved_by), pin.seat
    if sheet.is_stated("length of the seat", seat.length):
        L = worked(sheet.take_nominal("L_s", seat.length), seat.length)
        both = sheet.work("L_b", length_in_bosses, b=sheet.take_nominal("b", crosshead.boss_width))
        yield Pair(L, worked(both, crosshead.boss_width), "at most", name="length of the seat")
    if sheet.is_stated("boss of the seat", seat.boss):
        D = worked(sheet.take_nominal("D_s", seat.boss), seat.boss)
        drawn = worked(sheet.take_nominal("D_b", crosshead.boss_diameter), crosshead.boss_diameter)
        yield Pair(D, drawn, "at most", name="boss of the seat")
    if sheet.is_stated("metal of the boss", seat.boss_material):
        yield Pair(seat.boss_material, crosshead.material, name="metal of the boss")


def _shoulder(pin: Pin, sheet: Sheet) -> Iterator[Pair]:
    """A fillet that runs into its shoulder is as high as its radius; beyond it a seat begins, before it the bearing."""
    if sheet.is_stated("fillet", pin.fillet) and sheet.is_stated("larger diameter", pin.larger_diameter):
        D, d = sheet.take("D_s", pin.larger_diameter), sheet.take("d", pin.diameter)
        h = sheet.work("h", height_of_shoulder, D=D, d=d)
        yield Pair(pin.fillet, worked(h, pin.larger_diameter, pin.diameter), "at most", name="fillet")
    if sheet.said("held by", pin.seat.by) == "press fit" and sheet.is_stated("seat", pin.seat.diameter):
        d_s = worked(sheet.take_nominal("d_s", pin.seat.diameter), pin.seat.diameter)
        if sheet.is_stated("larger diameter", pin.larger_diameter):
            shoulder = worked(sheet.take_nominal("D_s", pin.larger_diameter), pin.larger_diameter)
            yield Pair(shoulder, d_s, "at least", name="seat beyond the shoulder")
    yield from _beside_fillet(pin, sheet)


def _beside_fillet(pin: Pin, sheet: Sheet) -> Iterator[Pair]:
    """The edge of the bearing of a pin held at one end clear of the fillet, by the middle of the bearing."""
    stated = pin.overhang, pin.length, pin.fillet
    if all(sheet.is_stated("overhang, length or fillet", one) for one in stated):
        least = sheet.work(
            "a_l", beside_fillet, b=sheet.take("b", pin.length), r_f=sheet.take("r_f", pin.fillet)
        )
        yield Pair(
            pin.overhang, worked(least, pin.length, pin.fillet), "at least", name="bearing beside the fillet"
        )


in_its_crosshead: Rule = agreement(
    "pin.in-its-crosshead",
    title="The bearing of a crosshead pin leaves its eye 0.2 mm of play between the bosses that hold it, and its seat "
    "is no longer than both bosses, no larger than they are, and in their metal",
    on=Pin,
    pairs=_in_crosshead,
    within="",
    limits=[
        Limit(
            "side-play",
            "0.2 mm",
            "length",
            COMMON_PRACTICE,
            "least play of an eye between its bosses, both sides together",
        )
    ],
    edition=3,
    grade=Grade.NONCONFORMITY,
    why="an eye wider than the gap of the crosshead does not go in, and a seat longer than its bosses grips on paper",
    leaves_out="what heat takes of the play of the eye; a bearing beside bosses whose width the crosshead does not "
    "state; bosses with a bush of another metal",
)

fillet_of_its_shoulder: Rule = agreement(
    "pin.fillet-of-its-shoulder",
    title="The shoulder of a pin is at least as high as the radius of its fillet and as thick as the seat pressed in "
    "beyond it, and the bearing of a pin held at one end begins clear of the fillet",
    on=Pin,
    pairs=_shoulder,
    within="",
    edition=3,
    grade=Grade.QUERY,
    why="a fillet larger than its shoulder is cut off before it meets the face: nothing bears there, and the factor of "
    "the pin is judged for a shape that is not turned",
    leaves_out="a pin that states no shoulder; a relief that is cut into the face; a bearing rounded at its edge to "
    "go over the fillet, of which the length is that between the roundings; its play along the pin",
)

RULES = (in_its_crosshead, fillet_of_its_shoulder)
