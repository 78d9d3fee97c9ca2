"""How bolts hold: the hole that a stud is screwed into, the nuts, and how they are tightened."""

from typing import Annotated, Literal

from speclint.specs.fields import (
    NOT_STATED,
    Angle,
    Force,
    Fraction,
    Length,
    Moment,
    Remark,
    Temperature,
    Word,
)
from speclint.specs.freedom import GIVEN
from speclint.specs.listed_in import MATERIALS, THREADS, ListedIn
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE

#: Where the plate of a tapped hole stands: in the weldment of the block that its studs are screwed into.
_PLATE = NamedIn("plates", of="weldment", by="makes", through="screwed_into")
#: What keeps a part up when its first fastening has failed.
SecondRetention = Literal[
    "none", "safety strap", "keep plate", "chain", "pinned stud", "hooked over the frame"
]

_TIGHTENING = ListedIn(
    "tightening",
    "ways to tighten a nut, with the scatter of the preload",
    table="tightening-methods-vdi-2230-2003.csv",
    column="method",
    shows=(
        ("factor_low", "greatest over least preload from {}"),
        ("factor_high", "to {}"),
        ("note", "{}"),
    ),
)


class Tightening(SpecTable):
    """How the nuts are tightened, and to what.

    Fields:
        method: as the handbook lists it, such as "torque wrench".
        torque: on the nut, for a method that measures torque; of one that measures the angle, to draw it snug.
        angle: by which the nut is turned after that.
        torque_coefficient: K in T = K F d, the mean for this lubrication; its scatter belongs to the method.
        preload: mean in one stud, for a method that measures it (elongation, tensioner).
        lubrication: of thread and nut face.
        temperature: of the metal when it is tightened.
    """

    method: Annotated[Word[str], _TIGHTENING] = NOT_STATED
    torque: Moment = NOT_STATED
    angle: Angle = NOT_STATED
    torque_coefficient: Annotated[Fraction, Span("0.05", "0.6"), GIVEN] = NOT_STATED
    preload: Force = NOT_STATED
    lubrication: Remark = NOT_STATED
    temperature: Temperature = NOT_STATED


class TappedHole(SpecTable):
    """The tapped hole into which a stud is screwed.

    Fields:
        plate: name of the plate of the block's weldment in which it stands.
        thread: as tapped, such as "M24".
        engagement: length of full thread in engagement.
        depth: of the drilled hole below the face.
        run_out: room at the bottom for the tap's lead and for chips.
        opens_into: what the drilled hole breaks into.
        sealed: how a hole that breaks into steam is sealed; "none" where it is not.
    """

    plate: Annotated[Word[str], OWN_PLACE, _PLATE] = NOT_STATED
    thread: Annotated[Word[str], THREADS] = NOT_STATED
    engagement: Annotated[Length, Span("4 mm", "200 mm")] = NOT_STATED
    depth: Annotated[Length, Span("5 mm", "400 mm")] = NOT_STATED
    run_out: Annotated[Length, Span("0.5 mm", "60 mm")] = NOT_STATED
    opens_into: Word[Literal["nothing", "air", "steam"]] = NOT_STATED
    sealed: Word[Literal["none", "sealant", "welded", "copper washer", "taper thread"]] = NOT_STATED


class Nut(SpecTable):
    """The nuts.

    Fields:
        thread: as tapped.
        material: of the nut, as the handbook lists it.
        engagement: length of full thread in engagement.
        across_flats: width across its flats; of a round nut its outside diameter.
        face: outside diameter of the bearing face (of the washer's, if it is thick).
        locking: how a nut is kept from turning.
        could_fall_into: where a loose nut could fall.
    """

    thread: Annotated[Word[str], THREADS] = NOT_STATED
    material: Annotated[Word[str], MATERIALS] = NOT_STATED
    engagement: Annotated[Length, Span("3 mm", "200 mm")] = NOT_STATED
    across_flats: Annotated[Length, Span("6 mm", "200 mm")] = NOT_STATED
    face: Annotated[Length, Span("6 mm", "300 mm")] = NOT_STATED
    locking: Word[
        Literal[
            "none",
            "split pin",
            "tab washer",
            "lock plate",
            "wire",
            "lock nut",
            "prevailing torque nut",
            "peened",
            "wedge washers",
            "spring washer",
            "nylon ring nut",
            "adhesive",
        ]
    ] = NOT_STATED
    could_fall_into: Word[Literal["nothing", "valve", "cylinder", "cam box", "motion", "track"]] = NOT_STATED
