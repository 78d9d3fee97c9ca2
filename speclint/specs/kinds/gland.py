"""The gland that compresses the packing of a stuffing box."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from speclint.specs.component import PRESSURE_BY_KIND, Component
from speclint.specs.fields import NOT_STATED, Fraction, Length, LinkTo, Stress, Word
from speclint.specs.freedom import GIVEN
from speclint.specs.geometry import Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.spans import Span
from speclint.specs.taking_over import OWN_PLACE


class Gland(Component):
    """The gland that compresses the packing of a stuffing box.

    Fields:
        of: the stuffing box that it closes, or the cover, or other part, with that box.
        rod: diameter of the rod.
        box: bore of the stuffing box.
        packing: "soft" packing compressed by the gland, or "metallic" with springs of its own.
        packing_pressure: axial pressure on soft packing that makes it tight.
        flange_thickness: of the gland's flange under the nuts.
        stands_out: from the outer end of the stuffing box to the ends of the studs, or what else is outermost.
        tilt: uneven tightening of the nuts: greatest stud load over the mean.
        split: whether it is in halves, which go on round the rod.
    """

    kind: ClassVar[str] = "gland"
    called: ClassVar[str] = "gland"
    hazards: ClassVar[Hazards] = ("seize", "break under load")
    geometry: ClassVar[Conditions] = (Below("rod", "box"),)
    old_keys: ClassVar[Mapping[str, str]] = {
        **PRESSURE_BY_KIND,
        "rod": "of, the stuffing box, which seals the rod",
        "box": "of, the stuffing box, which states its bore",
        "packing": "of, the stuffing box, which states its packing",
    }

    of: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    rod: Annotated[Length, Span("15 mm", "250 mm")] = NOT_STATED
    box: Annotated[Length, Span("20 mm", "400 mm")] = NOT_STATED
    packing: Word[Literal["soft", "metallic"]] = NOT_STATED
    packing_pressure: Stress = NOT_STATED
    flange_thickness: Annotated[Length, Span("5 mm", "150 mm")] = NOT_STATED
    stands_out: Annotated[Length, Span("5 mm", "300 mm")] = NOT_STATED
    tilt: Annotated[Fraction, GIVEN] = NOT_STATED
    split: Word[bool] = NOT_STATED
