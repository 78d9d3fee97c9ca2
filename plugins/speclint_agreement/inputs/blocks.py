"""The block, or the cam box, to which a link leads."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from speclint import Worked
from speclint.specs import Link, NotStated

if TYPE_CHECKING:
    from speclint.specs import Component


def in_block(link: Link[Any] | NotStated, block: Component) -> Worked:
    """The block or box to which a link leads, by way of other parts too; the second side of a pair, which names it."""
    return Worked(block.id, (link.where,), f"{block.called} {block.id}, to which this leads:")
