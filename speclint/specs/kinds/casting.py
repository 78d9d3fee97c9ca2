"""A casting: its tolerance grades, its machined faces, its junctions of walls and its cores."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Allowance, Length, LinkTo, Word
from speclint.specs.making import CastingMaking
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE

#: A wall of a liner (its barrel, its collar) or of a cover (its plate, its flange).
Wall = Literal["barrel", "collar", "plate", "flange"]


class MachinedFace(SpecTable):
    """A face that is cast with a machining allowance.

    Fields:
        dimension: the finished dimension to which it belongs
        of_key: the key under which the finished part states that dimension, such as "outside_diameter"; of a liner
            from its free end to the face of its collar "length over collar"
        allowance: machining allowance on this face by the drawing
        both_sides: true where both faces of the dimension are machined, as with a diameter
    """

    dimension: Annotated[Length, Span("20 mm", "8 m")] = NOT_STATED
    of_key: Word[str] = NOT_STATED
    allowance: Annotated[Allowance, Span("0.4 mm", "40 mm")] = NOT_STATED
    both_sides: Word[bool] = NOT_STATED


class Meeting(SpecTable):
    """Two walls that meet.

    Fields:
        thick: the thicker wall, as cast
        thick_of: which wall of the finished part that is, such as the barrel or the collar of a liner
        thin: the thinner wall, as cast
        thin_of: which wall of the finished part that is
        fillet: radius where they meet
    """

    thick: Annotated[Length, Span("3 mm", "300 mm")] = NOT_STATED
    thick_of: Word[Wall] = NOT_STATED
    thin: Annotated[Length, Span("3 mm", "300 mm")] = NOT_STATED
    thin_of: Word[Wall] = NOT_STATED
    fillet: Annotated[Length, Span("1 mm", "150 mm")] = NOT_STATED


class Core(SpecTable):
    """A core of the mould.

    Fields:
        held: whether core prints at both ends, or chaplets that fuse, support it
        vented: whether its gas can leave the mould
    """

    held: Word[bool] = NOT_STATED
    vented: Word[bool] = NOT_STATED


class Casting(Component):
    """How a part is cast.

    Fields:
        becomes: the finished component
        process: moulding process
        largest_dimension: largest overall dimension of the finished part
        tolerance_grade: of its cast dimensions, DCTG 1 to 16 of ISO 8062-3
        allowance_grade: of its machining allowance, RMAG A to K of ISO 8062-3
        faces: machined faces, by name
        meetings: walls that meet, by name
        cores: by name
        cored: false where it has no core
        first_datum: name of the machined face from which its first machining is set out
        first_machining: the operation in which that is done, and what is held
        weld_preparation: of its edges, where it is welded into a block
        making: the steps in which it is made
    """

    kind: ClassVar[str] = "casting"
    called: ClassVar[str] = "casting"
    of_metal: ClassVar[bool] = False

    becomes: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    process: Word[Literal["sand, hand moulded", "sand, machine moulded", "investment"]] = NOT_STATED
    largest_dimension: Annotated[Length, Span("50 mm", "8 m")] = NOT_STATED
    tolerance_grade: Word[int] = NOT_STATED
    allowance_grade: Word[Literal["A", "B", "C", "D", "E", "F", "G", "H", "J", "K"]] = NOT_STATED
    faces: dict[str, MachinedFace] = {}
    meetings: dict[str, Meeting] = {}
    cores: dict[str, Core] = {}
    cored: Word[bool] = NOT_STATED
    first_datum: Annotated[Word[str], NamedIn("faces")] = NOT_STATED
    first_machining: Word[str] = NOT_STATED
    weld_preparation: Word[str] = NOT_STATED
    making: CastingMaking = CastingMaking.unstated()
