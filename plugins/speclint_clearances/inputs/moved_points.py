"""What a point near the gauge is moved by: the wear of the tyres and the length over which its part grows."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Limit, Sheet
from speclint.facts import new_wheel, worn_wheel
from speclint.handbook.fits import share_of_size
from speclint.specs import Component, CylinderBlock, Envelope, GaugePoint
from speclint_clearances.formulae.room import across_from_frame, wear_of_radius
from speclint_clearances.inputs.counted import Counted, rounded

GROWS = Limit(
    "grows",
    "0.9",
    "ratio",
    COMMON_PRACTICE,
    "least length over which a point is said to grow over its distance from the frame",
)


def worn_radius(envelope: Envelope, part: Component, sheet: Sheet) -> Counted:
    """Wear of the tyres' radius: as stated, and no less than that of the wheels that the block drives."""
    worn = sheet.take("w_t", envelope.tyre_wear)
    if not isinstance(part, CylinderBlock):
        return Counted(worn)
    new, least = new_wheel(part, sheet), worn_wheel(part, sheet)
    if not (sheet.is_stated("new wheel", new) and sheet.is_stated("worn wheel", least)):
        return Counted(worn)
    of_wheel = sheet.work("w_w", wear_of_radius, D=sheet.take("D", new), D_w=sheet.take("D_w", least))
    told = sheet.at_least(worn, rounded("w_l", of_wheel, sheet)).else_says(
        "tyres are said to wear by {found} of radius, those of the engine by {limit} at least"
    )
    return Counted(max(worn, of_wheel), (told.graded(Grade.NONCONFORMITY),))


def length_grown(name: str, point: GaugePoint, envelope: Envelope, sheet: Sheet) -> Counted:
    """Length from where the part is held, the middle of the engine unless one is stated.

    No less than across the engine from the frame that holds the part.
    """
    stated = sheet.is_stated(f"growth length of {name}", point.growth_length)
    L = sheet.take(f"L {name}", point.growth_length if stated else point.from_centre)
    if not sheet.is_stated("frame", envelope.frame_from_centre):
        return Counted(L)
    y, y_f = sheet.take(f"y {name}", point.from_centre), sheet.take("y_f", envelope.frame_from_centre)
    across = sheet.work(f"L_f {name}", across_from_frame, y=y, y_f=y_f)
    if not stated:
        return Counted(max(L, across))
    least = sheet.work(f"L_l {name}", share_of_size, k=sheet.limit(GROWS.name, "k"), t=across)
    told = sheet.at_least(L, least).else_says(
        "{item} is said to grow over {found}, from the frame it is {limit} at least"
    )
    return Counted(max(L, across), (told.graded(Grade.NONCONFORMITY),))
