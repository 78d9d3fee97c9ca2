"""Room that is wanted beside a part as it is put in."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Judgement, Limit, Sheet
from speclint.handbook.fits import DRAWING_TEMPERATURE, size_when_hot
from speclint.specs import Component
from speclint_assembly.formulae.sizes import room_left

#: To what a finding on assembly of a part under pressure is deferred.
DEFERS = "the local code and a competent person decide"
BY_HAND = Limit(
    "by_hand",
    "0.5 mm",
    "length",
    COMMON_PRACTICE,
    "room wanted on a diameter, put in by hand",
    "not negative",
)
WITH_TACKLE = Limit(
    "with_tackle",
    "5 mm",
    "length",
    COMMON_PRACTICE,
    "room wanted where a lifting tackle goes",
    "not negative",
)


def passes(
    way: float, part: float, index: str, where: str, sheet: Sheet, limit: str = "by_hand"
) -> Judgement:
    """A part against the way through which it goes, both m: the room that is left against that wanted."""
    left = sheet.work(f"c_{index}", room_left, W=way, w=part)
    judged = sheet.at_least(left, sheet.limit(limit, "c")).else_says(
        f"{{found}} of room {where}, {{limit}} wanted"
    )
    return judged.saying(f"{judged.says}, {where}") if judged.says else judged


def heated(size: float, part: Component, at: float, index: str, sheet: Sheet) -> float:
    """A size at the temperature, K, at which its part is when something goes in."""
    alpha = sheet.look_up(f"α_{index}", sheet.material_of(part).expansion, of=part, at=at)
    return sheet.work(f"D_{index}", size_when_hot, L=size, alpha=alpha, T=at, T_ref=DRAWING_TEMPERATURE)
