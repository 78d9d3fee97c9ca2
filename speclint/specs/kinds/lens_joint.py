"""A spherical ring between two seats, which allows a pipe small angular movement and stays tight."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from speclint.specs.component import PRESSURE_BY_KIND, Component
from speclint.specs.fields import NOT_STATED, Angle, Length, LinkTo, Word
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.spans import Span
from speclint.specs.taking_over import AS_FITTED, MADE_SO, OWN_PLACE


class LensJoint(Component):
    """A joint ring with spherical faces, pressed between two seats.

    Fields:
        material: of the ring.
        of: the pipe or the part that carries the seats.
        sphere_radius: of the ring's faces.
        contact_diameter: of the circle on which ring and seat touch.
        seat: "cone", or "sphere": concave, of a larger radius.
        seat_angle: half angle of the cone from its axis.
        seat_radius: of a concave spherical seat.
        seat_mouth: diameter of the cone where it meets the face of the flange.
        thickness: of the ring along its axis, between the circles on which it touches the seats.
        face_width: width of the ring's spherical face along its arc, contact in the middle.
        outside_diameter: of the ring.
        bore: of the ring.
        flange_thickness: of the flange under the nuts.
        swing: greatest angle of the pipe off its axis at assembly and in service.
    """

    kind: ClassVar[str] = "lens-joint"
    called: ClassVar[str] = "lens joint"
    hazards: ClassVar[Hazards] = ("leak", "burn")
    geometry: ClassVar[Conditions] = (
        Below("bore", "contact_diameter"),
        Below("contact_diameter", "outside_diameter"),
        Below("contact_diameter", "sphere_radius", times=2),
        Below("bore", "outside_diameter"),
        AtMost("contact_diameter", "seat_mouth"),
    )

    old_keys: ClassVar[Mapping[str, str]] = PRESSURE_BY_KIND

    of: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    sphere_radius: Annotated[Length, Span("20 mm", "1.5 m")] = NOT_STATED
    contact_diameter: Annotated[Length, Span("15 mm", "1 m")] = NOT_STATED
    seat: Annotated[Word[Literal["cone", "sphere"]], MADE_SO] = NOT_STATED
    seat_angle: Angle = NOT_STATED
    seat_radius: Annotated[Length, Span("20 mm", "1.5 m")] = NOT_STATED
    seat_mouth: Annotated[Length, Span("15 mm", "1.1 m")] = NOT_STATED
    thickness: Annotated[Length, Span("5 mm", "200 mm")] = NOT_STATED
    face_width: Annotated[Length, Span("3 mm", "150 mm")] = NOT_STATED
    outside_diameter: Annotated[Length, Span("20 mm", "1 m")] = NOT_STATED
    bore: Annotated[Length, Span("10 mm", "900 mm")] = NOT_STATED
    flange_thickness: Annotated[Length, Span("5 mm", "250 mm")] = NOT_STATED
    swing: Annotated[Angle, AS_FITTED] = NOT_STATED
