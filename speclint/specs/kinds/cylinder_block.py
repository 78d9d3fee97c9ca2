"""The cylinder block: what makes it up, where it is fixed, and how its growth is taken up."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from speclint.specs.block_bores import Bore, SeatBore
from speclint.specs.block_ends import CylinderEnd
from speclint.specs.block_openings import BlockOpening, BlockPort
from speclint.specs.block_pads import Pad
from speclint.specs.block_walls import Division
from speclint.specs.component import PRESSURE_BY_KIND, Component
from speclint.specs.drive import Drive
from speclint.specs.fields import NOT_STATED, Area, Length, Position, SectionModulus, Temperature, Word
from speclint.specs.freedom import GIVEN
from speclint.specs.hazards import Hazards
from speclint.specs.lubrication import RubbingPair
from speclint.specs.making import BlockMaking
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.taking_over import AS_FITTED, MADE_SO


class CylinderBlock(Component):
    """The block that carries the cylinders, their steamways and the valve seats.

    Positions along the axis count from the fixed point of expansion, forward positive; distances of ports
    and relieved lengths count from the collar seat of the bore.

    Fields:
        construction: fabricated of plate, or cast
        heated_to: temperature of the block when liners and seats are shrunk into it, all in one heating
        fixed_point: name of the pad that fixes the block along the frame, and from where it expands
        bores: bores that take liners, by name
        ports: ports through the wall of a bore, by name
        seat_bores: bores that take valve seats, by name
        openings: openings to which pipes are joined, by name
        ends: ends of the cylinders, by name
        divisions: walls between neighbouring bores and passages, by name
        pads: pads on the frames, by name
        scheme: how its growth along a frame is taken up: one pad locked and every other sliding, two locked, or one
            locked between two that slide
        section: of its metal between two locked pads
        offset: of the pads' force from the middle of that section
        section_modulus: of that section
        mean_temperature: name under which the duty states its mean temperature along the pads
        weight_at: its centre of weight, forward of the fixed point
        pairs: what rubs in its cylinders and on their motion, and how it is oiled, by name
        drive: the piston and what drives it
        entering_width: greatest width that passes the opening of the frames as the block is put in
        entering_height: greatest height that passes that opening
        making: the steps in which it is made
    """

    kind: ClassVar[str] = "cylinder-block"
    called: ClassVar[str] = "cylinder block"
    hazards: ClassVar[Hazards] = (
        "burst",
        "loosen",
        "break under load",
        "break in fatigue",
        "foul",
        "burn",
        "corrode",
    )

    old_keys: ClassVar[Mapping[str, str]] = PRESSURE_BY_KIND

    construction: Annotated[Word[Literal["fabricated", "cast"]], MADE_SO] = NOT_STATED
    heated_to: Temperature = NOT_STATED
    fixed_point: Annotated[Word[str], NamedIn("pads")] = NOT_STATED
    bores: dict[str, Bore] = {}
    ports: dict[str, BlockPort] = {}
    seat_bores: dict[str, SeatBore] = {}
    openings: dict[str, BlockOpening] = {}
    ends: dict[str, CylinderEnd] = {}
    divisions: dict[str, Division] = {}
    pads: dict[str, Pad] = {}
    scheme: Word[Literal["one locked", "two locked", "locked at the middle"]] = NOT_STATED
    section: Area = NOT_STATED
    offset: Annotated[Position, Span("0.5 mm", "1 m")] = NOT_STATED
    section_modulus: SectionModulus = NOT_STATED
    mean_temperature: Word[str] = NOT_STATED
    weight_at: Annotated[Position, Span("1 mm", "5 m"), GIVEN] = NOT_STATED
    pairs: dict[str, RubbingPair] = {}
    drive: Annotated[Drive, AS_FITTED] = Drive.unstated()
    entering_width: Annotated[Length, Span("100 mm", "4 m")] = NOT_STATED
    entering_height: Annotated[Length, Span("100 mm", "4 m")] = NOT_STATED
    making: BlockMaking = BlockMaking.unstated()
