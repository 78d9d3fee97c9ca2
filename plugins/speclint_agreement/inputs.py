"""What several rules share: the block to which a link leads, and the wheelbase."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from speclint import COMMON_PRACTICE, Limit, Worked
from speclint.specs import Link, NotStated

if TYPE_CHECKING:
    from speclint.specs import CylinderBlock

WHEELBASE = Limit(
    "wheelbase",
    "2 mm",
    "length",
    COMMON_PRACTICE,
    "what the rigid wheelbase may differ by from the distance of two axles",
    "not negative",
)


def in_block(link: Link[Any] | NotStated, block: CylinderBlock) -> Worked:
    """The block to which a link leads, itself or by way of other parts; the second side of a pair, which names it."""
    return Worked(block.id, (link.where,), f"block {block.id}, to which this leads:")
