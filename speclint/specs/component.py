"""What every part of the engine states in addition to its own dimensions."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.drawing import FileWithin, Issue
from speclint.specs.fields import (
    FOR_REVIEW,
    NOT_STATED,
    Allowance,
    LinkTo,
    Pressure,
    Remark,
    Temperature,
    Word,
)
from speclint.specs.freedom import NO_LESS
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import Duty
from speclint.specs.listed_in import MATERIALS, ListedIn
from speclint.specs.lubrication import Lubrication
from speclint.specs.shop_record import InspectionPoints, Procedures
from speclint.specs.spans import Span
from speclint.specs.spec import Spec
from speclint.specs.taking_over import DONE_OR_NOT, Mirrors
from speclint.specs.tolerancing import Datum, GeneralTolerance, GeometricalTolerance, HolePattern
from speclint.specs.welding import Welding

#: How a rubbing surface is treated.
Surface = Literal["case hardened", "induction hardened", "nitrided", "hard chromium plated", "hard faced"]
#: The structure of the iron of a liner and of its rings.
Structure = Literal["pearlitic grey", "ferritic grey", "pearlitic grey with phosphide network"]
#: The medium where a part touches its neighbour.
Surroundings = Literal["weather and wet", "indoors", "oiled", "dry steam"]


#: The old key of kinds that hold the pressure of steam wherever they are.
PRESSURE_BY_KIND = {"pressure_part": "nothing: the kind says that it holds pressure"}


class Component(Spec):
    """A part of the engine: its material, the duty it sees, and what must be on its record.

    A component without ``duty`` sees that of the component it is linked to (:mod:`speclint.repository.design`).
    ``hand`` is the side of the engine for which the part is made, where the other side has another.
    ``of_metal`` is false for a kind that is no piece of its own: a fit, a chain of dimensions, a plan, a
    passage of a block. ``hazards`` are those that a part of the kind can suffer, by common practice; None where the
    kind does not say, which a report of what was not looked at tells of a kind of metal.
    ``tolerances`` are its geometrical tolerances by name, ``datums`` what they count from, ``hole_patterns`` its
    patterns of holes; ``general_tolerance`` is the class of the drawing for faces that state none, ``general_zone`` its
    zone where that standard leaves it to the drawing.
    ``drawing_file`` is the file of its drawing in the repository, of any format; ``issued`` to whom the drawing was
    issued, when and at which revision. A part that is like another takes over neither where it states a ``drawing`` of
    another number. ``item`` is the row of the table, or the mark, by which a drawing of several parts tells this one
    from the others.
    """

    kind: ClassVar[str] = "component"
    of_metal: ClassVar[bool] = True
    hazards: ClassVar[Hazards | None] = None

    drawing_file: Annotated[Word[str], FileWithin()] = NOT_STATED
    issued: tuple[Issue, ...] = ()
    item: Word[str] = NOT_STATED
    material: Annotated[Word[str], FOR_REVIEW, MATERIALS] = NOT_STATED
    duty: Annotated[LinkTo[Duty], FOR_REVIEW] = NOT_STATED
    hand: Annotated[Word[Literal["left", "right"]], Mirrors("swap")] = NOT_STATED
    safety_part: Word[bool] = NOT_STATED
    pressure_part: Word[bool] = NOT_STATED
    design_pressure: Annotated[Pressure, NO_LESS] = NOT_STATED
    design_temperature: Temperature = NOT_STATED
    test_pressure: Annotated[Pressure, NO_LESS] = NOT_STATED
    inspection_document: Word[Literal["2.1", "2.2", "3.1", "3.2"]] = NOT_STATED
    examination: Remark = NOT_STATED
    competent_body: Annotated[Word[str], FOR_REVIEW] = NOT_STATED
    supplied_as: Word[Literal["made", "bought"]] = NOT_STATED
    inspection_points: InspectionPoints = InspectionPoints.unstated()
    procedures: Procedures = Procedures.unstated()
    welding: Welding = Welding.unstated()
    lubrication: Lubrication = Lubrication.unstated()
    surface: Annotated[
        Word[Surface], ListedIn("finishes", "treatments of a rubbing surface"), DONE_OR_NOT
    ] = NOT_STATED
    datums: dict[str, Datum] = {}
    tolerances: dict[str, GeometricalTolerance] = {}
    hole_patterns: dict[str, HolePattern] = {}
    general_tolerance: Annotated[Word[GeneralTolerance], DONE_OR_NOT] = NOT_STATED
    general_zone: Annotated[Allowance, Span("2 µm", "20 mm")] = NOT_STATED
    surroundings: Word[Surroundings] = NOT_STATED
