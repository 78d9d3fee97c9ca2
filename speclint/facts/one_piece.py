"""Two specs of what is said to be one piece of metal: whether they can be."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint.rules import Sheet
from speclint.specs import as_filed

if TYPE_CHECKING:
    from speclint.specs import Component


def two_pieces_by(part: Component, other: Component, sheet: Sheet) -> Iterator[str]:
    """What makes two pieces of a part and another that it is said to be forged on: a metal of its own, or a drawing.

    The metals are asked for; where one of both states no drawing, it is taken to be on that of the other.
    """
    own, theirs = sheet.read("material", part.material), sheet.read(f"that of {other.id}", other.material)
    if own != theirs:
        yield f"it is of {own}, {other.id} of {theirs}"
    drawings = [sheet.said(f"drawing of {one.id}", one.drawing) for one in (part, other)]
    if all(drawings) and as_filed(str(drawings[0])) != as_filed(str(drawings[1])):
        yield f"it is on drawing {drawings[0]}, {other.id} on {drawings[1]}"
