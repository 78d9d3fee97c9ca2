"""A spherical ring between two seats, which allows a pipe small angular movement and stays tight."""

from __future__ import annotations

from typing import ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Angle, Length, LinkTo, Word


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

    of: LinkTo[Component] = NOT_STATED
    sphere_radius: Length = NOT_STATED
    contact_diameter: Length = NOT_STATED
    seat: Word[Literal["cone", "sphere"]] = NOT_STATED
    seat_angle: Angle = NOT_STATED
    seat_radius: Length = NOT_STATED
    seat_mouth: Length = NOT_STATED
    thickness: Length = NOT_STATED
    face_width: Length = NOT_STATED
    outside_diameter: Length = NOT_STATED
    bore: Length = NOT_STATED
    flange_thickness: Length = NOT_STATED
    swing: Angle = NOT_STATED
