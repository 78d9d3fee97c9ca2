"""How parts wear, to what they may wear, and what regrinding takes off them."""

from typing import Annotated, Literal

from speclint.specs.fields import NOT_STATED, Allowance, Length, Word
from speclint.specs.freedom import GIVEN
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable


class Wear(SpecTable):
    """What wear changes of a part, up to when.

    What is measured is, by kind: of a liner how far its bore is out of round or tapered; of a ring its radial
    thickness; of a spindle the diametral clearance in its guide; of a valve, a seat and a cam the depth worn off the
    face, square to it; of a pin and a rocker the diametral clearance of the bearing; of a slide bar the clearance of
    the slippers; of a spring its free length.

    Fields:
        limit: at which the part is renewed or made good
        rate: by how much it changes while the engine runs 100 000 km
        basis: how the rate is known
        until: the overhaul up to which the part must last
    """

    limit: Annotated[Length, Span("5 µm", "4 mm")] = NOT_STATED
    rate: Annotated[Length, Span("0.5 µm", "1.2 mm"), GIVEN] = NOT_STATED
    basis: Word[Literal["works record", "common practice"]] = NOT_STATED
    until: Word[Literal["light overhaul", "heavy overhaul"]] = NOT_STATED


class WearOfFace(Wear):
    """The same, of a part on which no size of its own says how far it is worn.

    Fields:
        as_worn: what is measured of it at an overhaul, as told above; a drawing states none
    """

    as_worn: Annotated[Allowance, Span("1 µm", "6 mm")] = NOT_STATED


class WearFromNew(Wear):
    """The same, of a part whose own sizes do not say what is measured when it is new.

    Fields:
        new: what is measured of a new part, with its tolerance
    """

    new: Annotated[Allowance, Span("1 µm", "20 mm")] = NOT_STATED


class SpringWear(Wear):
    """The same, of a spring, whose length is measured.

    Fields:
        limit: free length at which it is renewed
    """

    limit: Annotated[Length, Span("20 mm", "1.2 m")] = NOT_STATED


class RingWear(Wear):
    """The same, of a piston ring, whose thickness is measured and which wears its groove too.

    Fields:
        limit: radial thickness at which it is renewed
        side_limit: clearance beside it in its groove at which one of the two is renewed
        gap_limit: gap between its ends, in its bore and cold, at which it is renewed
    """

    limit: Annotated[Length, Span("2 mm", "50 mm")] = NOT_STATED
    side_limit: Annotated[Length, Span("20 µm", "3 mm")] = NOT_STATED
    gap_limit: Annotated[Length, Span("0.3 mm", "30 mm")] = NOT_STATED


class BearingWear(WearFromNew):
    """The same, of a bearing with a bush, which is reamed when its pin is reground.

    Fields:
        bush_wall: thickness of the new bush
        reamed: by how much its bore may be reamed larger in its life, on the diameter
    """

    bush_wall: Annotated[Length, Span("1 mm", "60 mm")] = NOT_STATED
    reamed: Annotated[Allowance, Span("50 µm", "15 mm")] = NOT_STATED


class PinWear(BearingWear):
    """The same, of a pin of the motion.

    Fields:
        along: greatest movement along the cylinder, either way, that the wear of its bearing allows
    """

    along: Annotated[Allowance, Span("20 µm", "4 mm")] = NOT_STATED


class Regrind(SpecTable):
    """What is ground off a face in the life of a part, square to the face.

    Fields:
        depth: each time
        times: how often
    """

    depth: Annotated[Length, Span("10 µm", "3 mm")] = NOT_STATED
    times: Word[int] = NOT_STATED
