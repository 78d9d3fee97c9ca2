"""Two mating features: their dimensions, the kind of fit, how they are assembled."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.dimension import Dimension
from speclint.specs.fields import NOT_STATED, Angle, Force, Fraction, Length, Position, Word
from speclint.specs.freedom import GIVEN
from speclint.specs.hazards import Hazards
from speclint.specs.spans import Span


class Wall(Dimension):
    """A wall, wherever it is stated."""

    size: Annotated[Position, Span("2 mm", "500 mm")] = NOT_STATED


class Fit(Component):
    """A hole and the shaft in it, or a saddle and the barrel it is bedded on.

    Fields:
        hole: the diameter of the hole, or of the saddle
        shaft: the diameter of the shaft, or of the barrel
        intent: kind of fit that is intended; a saddle is bedded
        bore: the inside of a hollow shaft
        solid: true where the shaft has no bore
        wall: least wall round the hole
        length: of the joint, along the axis
        entered: how the parts are assembled
        press_force: that the press can give
        axial_load: the greatest that the fit must hold
        friction: between the parts
        hole_roughness: mean roughness depth Rz of the hole
        shaft_roughness: mean roughness depth Rz of the shaft
        half_arc: half of the arc on which a saddle bears
        foot_width: of a saddle, straight across the barrel from edge to edge of what bears on it
        jointing: the gap that the jointing of a saddle fills, where it is known
    """

    kind: ClassVar[str] = "fit"
    called: ClassVar[str] = "fit"
    of_metal: ClassVar[bool] = False
    hazards: ClassVar[Hazards] = ("loosen", "seize", "break under load")

    hole: Dimension = Dimension.unstated()
    shaft: Dimension = Dimension.unstated()
    intent: Word[Literal["clearance", "transition", "interference", "bedded"]] = NOT_STATED
    bore: Dimension = Dimension.unstated()
    solid: Word[bool] = NOT_STATED
    wall: Wall = Wall.unstated()
    length: Dimension = Dimension.unstated()
    entered: Word[Literal["pressed", "shrunk"]] = NOT_STATED
    press_force: Force = NOT_STATED
    axial_load: Annotated[Force, GIVEN] = NOT_STATED
    friction: Annotated[Fraction, Span("0.01", "1"), GIVEN] = NOT_STATED
    hole_roughness: Annotated[Length, Span("0.2 µm", "50 µm")] = NOT_STATED
    shaft_roughness: Annotated[Length, Span("0.2 µm", "50 µm")] = NOT_STATED
    half_arc: Angle = NOT_STATED
    foot_width: Annotated[Length, Span("10 mm", "3 m")] = NOT_STATED
    jointing: Annotated[Length, Span("10 µm", "25 mm")] = NOT_STATED
