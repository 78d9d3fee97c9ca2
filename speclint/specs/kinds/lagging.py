"""Lagging on a pipe, a cylinder or a cover."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Area, Conductivity, Density, Factor, Length, LinkTo, Word
from speclint.specs.hazards import Hazards
from speclint.specs.listed_in import MATERIALS, THREADS
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import AS_FITTED, MADE_SO, OWN_PLACE


class SheetFixing(SpecTable):
    """What holds the sheet over lagging, and with it the lagging.

    Fields:
        by: screws through the sheet, or bands about round lagging
        count: how many screws or bands there are
        thread: of the screws
        head: diameter of the head of a screw, or of the washer under it
        edge: least distance from the middle of a screw to an edge of the sheet
        width: of a band
        thickness: of a band
        material: of the screws or bands
        locked_by: what keeps the screws in place, or those that draw a band together
    """

    by: Word[Literal["screws", "bands"]] = NOT_STATED
    count: Word[int] = NOT_STATED
    thread: Annotated[Word[str], THREADS] = NOT_STATED
    head: Annotated[Length, Span("4 mm", "60 mm")] = NOT_STATED
    edge: Annotated[Length, Span("2 mm", "100 mm")] = NOT_STATED
    width: Annotated[Length, Span("5 mm", "150 mm")] = NOT_STATED
    thickness: Annotated[Length, Span("0.2 mm", "6 mm")] = NOT_STATED
    material: Annotated[Word[str], MATERIALS] = NOT_STATED
    locked_by: Word[
        Literal["prevailing torque nut", "lock nut", "tab washer", "wire", "spring washer", "nothing"]
    ] = NOT_STATED


class Lagging(Component):
    """Lagging and the sheet over it, whose material it states.

    Fields:
        covers: the part that it covers.
        form: round, about a pipe or barrel; or flat, on an upright wall or cover.
        inside_diameter: of round lagging; left out, it is the outside of the pipe that it covers.
        thickness: of the lagging.
        height: of a flat wall.
        density: of the lagging itself, without the sheet.
        sheet_thickness: of the sheet over it.
        conductivity: of the lagging at its mean temperature in service.
        emissivity: of the sheet outside.
        reach: whether someone can touch it, or has to when preparing or driving the engine.
        length: of round lagging.
        area: of flat lagging.
        room_behind: least room between the part that it covers and what stands beside it; of 1 m and more, 1 m is
            enough.
        fixing: what holds the sheet, and the lagging with it.
    """

    kind: ClassVar[str] = "lagging"
    called: ClassVar[str] = "lagging"
    hazards: ClassVar[Hazards] = ("burn", "fall")

    covers: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    form: Annotated[Word[Literal["round", "flat"]], MADE_SO] = NOT_STATED
    inside_diameter: Annotated[Length, Span("15 mm", "2.5 m")] = NOT_STATED
    thickness: Annotated[Length, Span("3 mm", "300 mm")] = NOT_STATED
    height: Annotated[Length, Span("60 mm", "5 m")] = NOT_STATED
    density: Annotated[Density, Span("10 kg/m³", "2000 kg/m³")] = NOT_STATED
    sheet_thickness: Annotated[Length, Span("0.3 mm", "6 mm")] = NOT_STATED
    conductivity: Annotated[Conductivity, Span("0.015 W/(m·K)", "2 W/(m·K)")] = NOT_STATED
    emissivity: Annotated[Factor, Span("0.01", "1")] = NOT_STATED
    reach: Word[Literal["out of reach", "in reach", "a hand must go there"]] = NOT_STATED
    length: Annotated[Length, Span("100 mm", "20 m")] = NOT_STATED
    area: Area = NOT_STATED
    room_behind: Annotated[Length, Span("3 mm", "1 m"), AS_FITTED] = NOT_STATED
    fixing: SheetFixing = SheetFixing.unstated()
