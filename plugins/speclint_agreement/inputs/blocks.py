"""The block to which a link leads."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from speclint import Worked
from speclint.specs import Link, NotStated

if TYPE_CHECKING:
    from speclint.specs import CylinderBlock


def in_block(link: Link[Any] | NotStated, block: CylinderBlock) -> Worked:
    """The block to which a link leads, itself or by way of other parts; the second side of a pair, which names it."""
    return Worked(block.id, (link.where,), f"block {block.id}, to which this leads:")
