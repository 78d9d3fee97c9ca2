"""What seals a joint: a gasket, a ground face, or the packing of one that holds no steam."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.fields import NOT_STATED, Allowance, Length, Stress, Word
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.listed_in import ListedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable

_GASKETS = ListedIn(
    "gaskets",
    "gaskets of a bolted joint",
    table="gaskets-asme-viii-1-2019-table-2-5-1.csv",
    column="gasket",
    shows=(
        ("m", "m = {}"),
        ("y_MPa", "y = {} MPa"),
        ("hottest_C", "to {} °C"),
        ("greatest_bar", "to {} bar gauge"),
        ("crushed_above_MPa", "crushed above {} MPa"),
    ),
)


class Gasket(SpecTable):
    """A flat gasket or a ring inside the stud circle.

    Fields:
        name: the gasket as the handbook lists it, such as "graphite sheet on tanged steel 1.5 mm".
        form: "flat" between two faces, or "ring in a groove".
        outside: of the ring on which gasket and both faces touch.
        inside: of the same ring.
        thickness: as compressed.
        modulus: of the compressed gasket when it is unloaded, with its limits.
    """

    geometry: ClassVar[Conditions] = (Below("inside", "outside"), AtMost("outside", "inside", times=5))

    name: Annotated[Word[str], _GASKETS] = NOT_STATED
    form: Word[Literal["flat", "ring in a groove"]] = NOT_STATED
    outside: Annotated[Length, Span("20 mm", "2.5 m")] = NOT_STATED
    inside: Annotated[Length, Span("15 mm", "2.4 m")] = NOT_STATED
    thickness: Annotated[Length, Span("0.2 mm", "15 mm")] = NOT_STATED
    modulus: Stress = NOT_STATED


class GroundFace(SpecTable):
    """A face ground or scraped to its mating face, metal to metal.

    Fields:
        outside: of the ring on which the two faces touch.
        inside: of the same ring.
    """

    geometry: ClassVar[Conditions] = (Below("inside", "outside"), AtMost("outside", "inside", times=5))

    outside: Annotated[Length, Span("20 mm", "2.5 m")] = NOT_STATED
    inside: Annotated[Length, Span("15 mm", "2.4 m")] = NOT_STATED


class Packing(SpecTable):
    """The packing of a joint that keeps air or oil out or in, and no steam.

    Fields:
        width: of the strip that is pressed
        pressure: that seats it
        recovery: what it springs back when the joint opens
    """

    width: Annotated[Length, Span("1 mm", "200 mm")] = NOT_STATED
    pressure: Stress = NOT_STATED
    recovery: Annotated[Allowance, Span("5 µm", "20 mm")] = NOT_STATED
