"""Where water lies and how it leaves: floors, their drains, and metal that wastes away in the wet."""

from typing import Annotated, Literal

from speclint.specs.fields import NOT_STATED, Allowance, Duration, Fraction, Length, WastingRate, Word
from speclint.specs.freedom import GIVEN
from speclint.specs.inclinations import Inclination
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable


class Drain(SpecTable):
    """The way by which water leaves a chamber.

    Fields:
        at: height of its mouth above the lowest place of the floor; 0 mm where it is flush
        along: its mouth, from the front end of the floor towards the back
        across: its mouth, from the left side of the floor
        bore: at the narrowest place of its way: cock, pipe or trap
        into: "open air", or the name of the pipe, trap or passage that it leads into
        rises: by how much its way rises again anywhere; 0 mm where it falls all the way
        head: height of the chamber's floor above its outlet, by which water drains where no steam presses
    """

    at: Annotated[Allowance, Span("0.2 mm", "300 mm")] = NOT_STATED
    along: Annotated[Allowance, Span("2 mm", "5 m")] = NOT_STATED
    across: Annotated[Allowance, Span("2 mm", "3 m")] = NOT_STATED
    bore: Annotated[Length, Span("2 mm", "150 mm")] = NOT_STATED
    into: Word[str] = NOT_STATED
    rises: Annotated[Allowance, Span("1 mm", "3 m")] = NOT_STATED
    head: Annotated[Length, Span("5 mm", "1.5 m")] = NOT_STATED


class Floor(SpecTable):
    """The flat floor of a chamber on which water lies.

    Fields:
        length: along the engine
        width: across the engine
        fall: slope of the floor along the engine, such as "0.02" for 1 in 50; 0 where it is level
        towards: the end to which it falls; left out for a level floor
        inclined: how a line square to it stands, in the place of fall and towards, such as that of an inclined valve
    """

    length: Annotated[Length, Span("15 mm", "5 m")] = NOT_STATED
    width: Annotated[Length, Span("15 mm", "3 m")] = NOT_STATED
    fall: Annotated[Fraction, Span("0.0001", "1")] = NOT_STATED
    towards: Word[Literal["front", "back"]] = NOT_STATED
    inclined: Inclination = NOT_STATED


class Wasting(SpecTable):
    """Metal that ash and acid take away, and when it is renewed.

    Fields:
        allowance: thickness provided for it, beyond what strength needs
        rate: thickness that is lost in a year, such as "0.3 mm/year"
        years: from new to renewal, such as "10 year"
        renewal: what is renewed then
    """

    allowance: Annotated[Allowance, Span("0.1 mm", "40 mm")] = NOT_STATED
    rate: WastingRate = NOT_STATED
    years: Annotated[Duration, GIVEN] = NOT_STATED
    renewal: Word[Literal["lining", "plate", "none"]] = NOT_STATED
