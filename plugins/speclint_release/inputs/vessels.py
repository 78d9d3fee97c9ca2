"""Which vessel a part is of, and what that states for all its parts."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from speclint import Sheet
from speclint.specs import Component, Link

#: The links by which a part is of a vessel: what it holds or closes, what it is in or on, what it becomes.
_OF = (
    "holds",
    "of",
    "in_cover",
    "closes",
    "makes",
    "becomes",
    "housed_in",
    "pressed_into",
    "in_block",
    "screwed_into",
    "bolted_to",
)


def of_vessel(component: Component, name: str, sheet: Sheet) -> Any:
    """A value as the component states it, or else the nearest component that it is linked to."""
    own = getattr(component, name)
    for part in linked_parts(component, sheet):
        stated = getattr(part, name)
        if sheet.is_stated(f"{name} of {part.id}", stated):
            return stated
    return own


def linked_parts(component: Component, sheet: Sheet) -> Iterator[Component]:
    """The component, and what it is part of or closes, the nearest first; not what it is merely joined to."""
    waiting = [component]
    while waiting:
        part = waiting.pop(0)
        yield part
        links = [getattr(part, name, None) for name in _OF]
        found = [sheet.follow(link) for link in links if isinstance(link, Link)]
        waiting += [one for one in found if isinstance(one, Component)]
