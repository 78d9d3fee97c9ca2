"""The slide bar that guides a crosshead."""

from __future__ import annotations

from typing import ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Length, LinkTo, Word
from speclint.specs.link_targets import Crosshead


class SlideBar(Component):
    """A slide bar between two supports.

    Fields:
        guides: the crosshead
        span: between its supports
        ends: "both pinned" where it is simply supported, "both fixed" where its ends cannot rotate
        section: rectangle, or I with equal flanges
        width: of the bar, or of its flanges
        depth: in the direction of the thrust
        web: thickness of the web of an I
        flange: thickness of the flanges of an I
        bars_sharing: how many equal bars share the thrust in one direction
        crosshead_from_end: from its front support to the crosshead's middle with the piston at its front dead centre
    """

    kind: ClassVar[str] = "slide-bar"
    called: ClassVar[str] = "slide bar"

    guides: LinkTo[Crosshead] = NOT_STATED
    span: Length = NOT_STATED
    ends: Word[Literal["both pinned", "both fixed"]] = NOT_STATED
    section: Word[Literal["rectangle", "I"]] = NOT_STATED
    width: Length = NOT_STATED
    depth: Length = NOT_STATED
    web: Length = NOT_STATED
    flange: Length = NOT_STATED
    bars_sharing: Word[int] = NOT_STATED
    crosshead_from_end: Length = NOT_STATED
