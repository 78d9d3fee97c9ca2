"""The gland that compresses the packing of a stuffing box."""

from __future__ import annotations

from typing import ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Fraction, Length, LinkTo, Stress, Word


class Gland(Component):
    """The gland that compresses the packing of a stuffing box.

    Fields:
        of: the stuffing box that it closes, or the cover, or other part, with that box.
        rod: diameter of the rod.
        box: bore of the stuffing box.
        packing: "soft" packing compressed by the gland, or "metallic" with springs of its own.
        packing_pressure: axial pressure on soft packing that makes it tight.
        flange_thickness: of the gland's flange under the nuts.
        tilt: uneven tightening of the nuts: greatest stud load over the mean.
    """

    kind: ClassVar[str] = "gland"
    called: ClassVar[str] = "gland"

    of: LinkTo[Component] = NOT_STATED
    rod: Length = NOT_STATED
    box: Length = NOT_STATED
    packing: Word[Literal["soft", "metallic"]] = NOT_STATED
    packing_pressure: Stress = NOT_STATED
    flange_thickness: Length = NOT_STATED
    tilt: Fraction = NOT_STATED
