"""Geometrical tolerances of a part by the words of ISO 1101, its datums, and patterns of holes."""

import string
from typing import Annotated, Literal

from speclint.specs.fields import NOT_STATED, Angle, Length, Position, Word
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import Mirrors

#: Words of ISO 1101:2017, by what they limit.
FORMS = ("flat", "straight", "round", "cylindrical", "profile")
ORIENTATIONS = ("parallel", "square", "angular")
LOCATIONS = ("position", "coaxial", "symmetric")
RUN_OUTS = ("run-out", "total run-out")
#: By which the datums of a part are called; any other word is the id of a part.
LETTERS = tuple(string.ascii_uppercase)
#: The general geometrical tolerances that a drawing may name for faces without one of their own.
GeneralTolerance = Literal["ISO 2768-2 H", "ISO 2768-2 K", "ISO 2768-2 L", "ISO 22081"]


class Datum(SpecTable):
    """A face or an axis from which geometrical tolerances count.

    Fields:
        feature: the face or the axis
    """

    feature: Word[str] = NOT_STATED


class GeometricalTolerance(SpecTable):
    """A geometrical tolerance of one face or axis.

    Fields:
        form: what is limited, by ISO 1101
        of: the face or the axis
        zone: width of its zone, or its diameter
        diameter_zone: diameter of a round zone, in the place of its width; of an axis alone
        to: the datums from which it counts, by their letters, or ids of other parts
        over: the length over which the zone holds
        modifier: M where the zone is that at maximum material, ISO 2692; P where it is projected out of the part,
            ISO 10578
        projects: height above the face to which a projected zone holds
    """

    form: Word[
        Literal[
            "flat",
            "straight",
            "round",
            "cylindrical",
            "profile",
            "parallel",
            "square",
            "angular",
            "position",
            "coaxial",
            "symmetric",
            "run-out",
            "total run-out",
        ]
    ] = NOT_STATED
    of: Word[str] = NOT_STATED
    zone: Annotated[Length, Span("2 µm", "20 mm")] = NOT_STATED
    diameter_zone: Annotated[Length, Span("2 µm", "20 mm")] = NOT_STATED
    to: Annotated[tuple[Word[str], ...], NamedIn(ids_of=("component",), beside=LETTERS)] = ()
    over: Annotated[Length, Span("2 mm", "10 m")] = NOT_STATED
    modifier: Word[Literal["M", "P"]] = NOT_STATED
    projects: Annotated[Length, Span("2 mm", "500 mm")] = NOT_STATED


class HolePattern(SpecTable):
    """Holes that match those of a joined part, on a circle or at their places; what is left out is that of the joint.

    Fields:
        joint: the bolted joint, by its id
        count: how many
        circle: diameter of the circle
        first_angle: of the first hole round the circle, from the top, clockwise seen from outside
        x: of holes off a circle, the place of each across, from the middle of the joint, seen from outside
        y: the place of each upwards from there
        diameter: of the holes; of tapped holes left out
        position: zone in which the axis of each hole lies, as a diameter
        coordinates: error of each coordinate either way, where no zone is stated
        projected: whether the zone of a tapped hole is projected to the height of the plate that it holds
        projects: height above the face to which it is projected; that of the plate where left out
    """

    joint: Word[str] = NOT_STATED
    count: Word[int] = NOT_STATED
    circle: Annotated[Length, Span("40 mm", "2.5 m")] = NOT_STATED
    first_angle: Annotated[Angle, Mirrors("round the axis")] = NOT_STATED
    x: tuple[Annotated[Position, Span("0.1 mm", "3 m")], ...] = ()
    y: tuple[Annotated[Position, Span("0.1 mm", "3 m")], ...] = ()
    diameter: Annotated[Length, Span("4 mm", "130 mm")] = NOT_STATED
    position: Annotated[Length, Span("0.05 mm", "6 mm")] = NOT_STATED
    coordinates: Annotated[Length, Span("2 µm", "4 mm")] = NOT_STATED
    projected: Word[bool] = NOT_STATED
    projects: Annotated[Length, Span("2 mm", "500 mm")] = NOT_STATED
