"""The cover on one end of a cylinder."""

from __future__ import annotations

from typing import ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Allowance, Fraction, Length, LinkTo, Word
from speclint.specs.link_targets import CylinderBlock


class CylinderCover(Component):
    """The cover on one end of a cylinder, held by studs.

    Fields:
        closes: the block with the bore that it closes.
        of_end: name of the end, in the block's spec, that it closes; it can be left out where only one is on its side.
        bore: diameter of the bore that it closes.
        end: front or back end of the cylinder.
        form: "flat", or "dished".
        thickness: least thickness of the plate inside the gasket.
        flange_thickness: of the flange under the nuts.
        as_made: of the plate as rolled, or of the wall as cast, before machining; strength is by it.
        outside_diameter: of the flange.
        central_hole: diameter of the hole for the stuffing box; 0 mm where there is none.
        ribs: how many ribs stiffen it.
        weld_efficiency: joint efficiency of a welded plate; 1 where it is in one piece.
    """

    kind: ClassVar[str] = "cylinder-cover"
    called: ClassVar[str] = "cylinder cover"

    closes: LinkTo[CylinderBlock] = NOT_STATED
    of_end: Word[str] = NOT_STATED
    bore: Length = NOT_STATED
    end: Word[Literal["front", "back"]] = NOT_STATED
    form: Word[Literal["flat", "dished"]] = NOT_STATED
    thickness: Length = NOT_STATED
    flange_thickness: Length = NOT_STATED
    as_made: Length = NOT_STATED
    outside_diameter: Length = NOT_STATED
    central_hole: Allowance = NOT_STATED
    ribs: Word[int] = NOT_STATED
    weld_efficiency: Fraction = NOT_STATED
