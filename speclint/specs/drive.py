"""The piston and what drives it, as far as the cylinder depends on them."""

from typing import Annotated, ClassVar

from speclint.specs.fields import NOT_STATED, Allowance, Area, Fraction, Length, Mass, Word
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.listed_in import MATERIALS
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable


class Drive(SpecTable):
    """The piston and what drives it, as far as the cylinder depends on them.

    Fields:
        stroke: of the piston
        rod_diameter: of the piston rod
        rod_length: from the crosshead's centre to the piston's middle
        rod_material: of the piston rod
        reciprocating_mass: piston, rod, crosshead and the small end's share
        connecting_rod_length: between centres
        connecting_rod_area: its least section between the eyes
        connecting_rod_material: of the connecting rod
        axle_from_fixed_point: along the frame, from the axle that it drives to the block's fixed point
        frame_material: of the frame
        driving_wheel_diameter: on the tread, with new tyres
        least_wheel_diameter: on the tread, with tyres worn to their limit
        gear_ratio: turns of the crank for one of the wheels; left out where the crank turns with them
        axlebox_wear: greatest movement along the frame, either way, that the wear of its axleboxes allows
        wear: greatest movement of the piston along the cylinder, either way, by wear of axleboxes and bearings
    """

    geometry: ClassVar[Conditions] = (
        AtMost("least_wheel_diameter", "driving_wheel_diameter"),
        Below("rod_diameter", "rod_length"),
        Below("stroke", "driving_wheel_diameter"),
        Below("stroke", "connecting_rod_length", times=2),
    )

    stroke: Annotated[Length, Span("150 mm", "1.2 m")] = NOT_STATED
    rod_diameter: Annotated[Length, Span("20 mm", "250 mm")] = NOT_STATED
    rod_length: Annotated[Length, Span("200 mm", "4 m")] = NOT_STATED
    rod_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    reciprocating_mass: Mass = NOT_STATED
    connecting_rod_length: Annotated[Length, Span("300 mm", "6 m")] = NOT_STATED
    connecting_rod_area: Area = NOT_STATED
    connecting_rod_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    axle_from_fixed_point: Annotated[Length, Span("300 mm", "12 m")] = NOT_STATED
    frame_material: Annotated[Word[str], MATERIALS] = NOT_STATED
    driving_wheel_diameter: Annotated[Length, Span("600 mm", "2.6 m")] = NOT_STATED
    least_wheel_diameter: Annotated[Length, Span("550 mm", "2.6 m")] = NOT_STATED
    gear_ratio: Fraction = NOT_STATED
    axlebox_wear: Annotated[Length, Span("20 µm", "15 mm")] = NOT_STATED
    wear: Annotated[Allowance, Span("50 µm", "20 mm")] = NOT_STATED
