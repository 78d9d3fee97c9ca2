"""The piston rod, from the piston to the crosshead."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import NOT_STATED, Hardness, Length, LinkTo, Mass, Word
from speclint.specs.freedom import NO_LESS
from speclint.specs.geometry import AtMost, Below, Conditions
from speclint.specs.hazards import Hazards
from speclint.specs.link_targets import Piston
from speclint.specs.listed_in import THREADS
from speclint.specs.reworking import CUT_DOWN
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import DONE_OR_NOT, MADE_SO, OWN_PLACE

#: Ways in which the ends of a strut are held, in the words of the handbook's table.
EndFixity = Literal[
    "both fixed",
    "one fixed and one pinned",
    "both fixed and free to move sideways",
    "both pinned",
    "one fixed and one free",
    "one pinned and one held from turning but free to move sideways",
]


class RodSection(SpecTable):
    """A section at which a rod is weakened.

    Fields:
        form: what weakens it
        at: the end of the rod at which it is; the crosshead's end must have one, and the piston's where it is forged on
        thread: of a threaded length, such as "M85x4"
        rolled: whether the thread is rolled, not cut
        diameter: of the rod there; not for a thread
        larger_diameter: next to a shoulder
        fillet: fillet radius of a shoulder
        slot_width: width of a cotter slot across the load
        pushed: whether it carries compression as well as tension; a thread under a nut does not
    """

    geometry: ClassVar[Conditions] = (
        AtMost("diameter", "larger_diameter"),
        Below("slot_width", "diameter"),
    )

    form: Annotated[Word[Literal["thread", "shoulder", "cotter slot", "plain"]], MADE_SO] = NOT_STATED
    at: Word[Literal["piston end", "crosshead end", "between the ends"]] = NOT_STATED
    thread: Annotated[Word[str], THREADS, MADE_SO] = NOT_STATED
    rolled: Annotated[Word[bool], MADE_SO] = NOT_STATED
    diameter: Annotated[Length, Span("15 mm", "300 mm"), CUT_DOWN, NO_LESS] = NOT_STATED
    larger_diameter: Annotated[Length, Span("20 mm", "500 mm")] = NOT_STATED
    fillet: Annotated[Length, Span("0.5 mm", "60 mm")] = NOT_STATED
    slot_width: Annotated[Length, Span("3 mm", "100 mm")] = NOT_STATED
    pushed: Word[bool] = NOT_STATED


class PistonRod(Component):
    """A solid round piston rod.

    Fields:
        carries: the piston
        diameter: least diameter of the rod in its packing
        free_length: from the piston's face to the crosshead, with the piston at the far end of its stroke
        ends: how its ends are held against buckling
        tail_rod: whether it goes on beyond the piston, through the front cover
        mass: of the rod
        roughness: arithmetical mean (Ra) of its surface
        hardness: of its surface
        sections: sections at which it is weakened, by name
    """

    kind: ClassVar[str] = "piston-rod"
    called: ClassVar[str] = "piston rod"
    hazards: ClassVar[Hazards] = ("loosen", "break under load", "break in fatigue", "corrode", "wear")
    geometry: ClassVar[Conditions] = (Below("diameter", "free_length"),)

    carries: Annotated[LinkTo[Piston], OWN_PLACE] = NOT_STATED
    diameter: Annotated[Length, Span("20 mm", "250 mm"), CUT_DOWN, NO_LESS] = NOT_STATED
    free_length: Annotated[Length, Span("150 mm", "4 m")] = NOT_STATED
    ends: Word[EndFixity] = NOT_STATED
    tail_rod: Word[bool] = NOT_STATED
    mass: Mass = NOT_STATED
    roughness: Annotated[Length, Span("0.05 µm", "5 µm"), DONE_OR_NOT] = NOT_STATED
    hardness: Annotated[Hardness, MADE_SO] = NOT_STATED
    sections: dict[str, RodSection] = {}
