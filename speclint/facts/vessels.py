"""The vessel that a part closes, makes or is bolted to: what is tested and designed together."""

from __future__ import annotations

from speclint.rules import Sheet
from speclint.specs import (
    BoltedJoint,
    ChamberCover,
    Component,
    CylinderBlock,
    CylinderCover,
    Gland,
    LensJoint,
    Link,
    NotStated,
    PipeFlange,
    SteamPipe,
    StuffingBox,
    Weldment,
)


def vessel_of(part: Component, sheet: Sheet) -> CylinderBlock | SteamPipe | None:
    """The block or the pipe that a part closes, makes or is bolted to; None where its links lead to neither."""
    while not isinstance(part, CylinderBlock | SteamPipe):
        link = _next(part)
        if link is None or not sheet.is_stated(f"what {part.id} belongs to", link):
            return None
        part = sheet.follow(link)
    return part


def _next(part: Component) -> Link[Component] | NotStated | None:
    if isinstance(part, BoltedJoint):
        return part.holds
    if isinstance(part, CylinderCover | ChamberCover):
        return part.closes  # type: ignore[return-value]  # a link to a kind of component
    if isinstance(part, StuffingBox):
        return part.in_cover  # type: ignore[return-value]
    if isinstance(part, Weldment):
        return part.makes  # type: ignore[return-value]
    return part.of if isinstance(part, Gland | LensJoint | PipeFlange) else None
