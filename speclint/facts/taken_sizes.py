"""Sizes that a chain or a fit takes from the specs of its parts."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.rules import Sheet

if TYPE_CHECKING:
    from speclint.specs import Component, Dimension


def is_size_of(size: Dimension, part: Component, key: str, asked: tuple[str, str], sheet: Sheet) -> bool:
    """Whether a size is that which a part states under a key; a sheet asks for both by the words in ``asked``."""
    its_part, its_key = asked
    if not sheet.is_stated(its_part, size.of) or sheet.follow(size.of).id != part.id:
        return False
    return sheet.said(its_key, size.dimension) == key
