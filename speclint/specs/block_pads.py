"""The pads by which a block is seated on the frames."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

from speclint.specs.block_openings import Closable
from speclint.specs.block_walls import PLATE
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    Area,
    Length,
    Position,
    SectionModulus,
    Stiffness,
    Word,
)
from speclint.specs.freedom import GIVEN
from speclint.specs.heat_flow import HeatPath
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable


class PadWeb(SpecTable):
    """The web by which a pad stands on its block.

    Fields:
        section: at its root, square to the force along the frame
        arm: from the root to where the force acts on the pad
        section_modulus: of the root
    """

    section: Area = NOT_STATED
    arm: Annotated[Length, Span("1 mm", "1 m")] = NOT_STATED
    section_modulus: SectionModulus = NOT_STATED


class Pad(Closable):
    """A pad by which the block is seated on a frame.

    Fields:
        at: its middle, forward of the block's fixed point
        width: along the frame
        height: up the frame
        plate: name of the plate of the block's weldment that it is cut from
        area: face in contact, where it is less than its sides leave beside the holes of its bolts
        takes: what it takes of the block's forces: "lengthwise" where it locks the block along the frame, "crosswise",
            "weight", or "nothing" where it only slides
        locates: whether it locates the block; every other pad slides
        stiffness: of the pad with its web and the root of that, along the frame
        web: the web by which it stands on the block
        carry_height: height of its carrying face over the common plane of all that carry, with its tolerance
        flatness: zone of its faces along the frame
        squareness: zone of those faces to the frame, over their height
        square_to_axis: zone of those faces, square to the axis of the bore, over their height
        roughness: mean roughness depth Rz of those faces
        path: metal that leads heat from the hot wall of the block to its face
    """

    old_keys: ClassVar[Mapping[str, str]] = {
        "locates": 'takes: "lengthwise" where it locates, and what else it takes'
    }

    at: Annotated[Position, Span("1 mm", "5 m")] = NOT_STATED
    width: Annotated[Length, Span("20 mm", "1.5 m")] = NOT_STATED
    height: Annotated[Length, Span("20 mm", "2 m")] = NOT_STATED
    plate: Annotated[Word[str], PLATE] = NOT_STATED
    area: Area = NOT_STATED
    takes: tuple[Word[Literal["lengthwise", "crosswise", "weight", "nothing"]], ...] = ()
    locates: Word[bool] = NOT_STATED
    stiffness: Annotated[Stiffness, Span("1e4 N/mm", "1e9 N/mm"), GIVEN] = NOT_STATED
    web: PadWeb = PadWeb.unstated()
    carry_height: Annotated[Position, Span("1 µm", "20 mm")] = NOT_STATED
    flatness: Annotated[Allowance, Span("1 µm", "5 mm")] = NOT_STATED
    squareness: Annotated[Allowance, Span("1 µm", "2 mm")] = NOT_STATED
    square_to_axis: Annotated[Allowance, Span("1 µm", "5 mm")] = NOT_STATED
    roughness: Annotated[Length, Span("0.2 µm", "0.2 mm")] = NOT_STATED
    path: HeatPath = HeatPath.unstated()
