"""A passage of the steam between header and nozzle: chest, port, belt, branch, drain pocket or breather passage."""

from typing import Annotated, ClassVar, Literal

from speclint.specs.component import Component
from speclint.specs.fields import (
    NOT_STATED,
    Allowance,
    Area,
    Fraction,
    Length,
    LinkTo,
    Mass,
    NoArea,
    Temperature,
    Word,
)
from speclint.specs.freedom import GIVEN
from speclint.specs.link_targets import CylinderBlock, PoppetValve
from speclint.specs.named_in import NamedIn
from speclint.specs.spans import Span
from speclint.specs.spec import SpecTable
from speclint.specs.taking_over import OWN_PLACE
from speclint.specs.water import Drain, Floor, Wasting

#: What may lie beyond the wall of a passage, beside another passage.
BEYOND = ("atmosphere", "cylinder", "frame", "spring chamber")


class PassageFace(SpecTable):
    """A part of the wall of a passage, and what lies beyond it.

    Fields:
        to: "atmosphere", "cylinder", "frame", "spring chamber", or the id of the passage of steam beyond it
        share: of the whole surface of the passage, its perimeter times its length with its ends
        area: of this part; leave out where its share is stated
        wall: which wall that is: a flat wall of the block's weldment, a partition, the valve seat or the liner, as it
            is called there
    """

    to: Annotated[Word[str], OWN_PLACE, NamedIn(ids_of=("steam-passage",), beside=BEYOND)] = NOT_STATED
    share: Fraction = NOT_STATED
    area: Area = NOT_STATED
    wall: Annotated[Word[str], OWN_PLACE] = NOT_STATED


class SteamPassage(Component):
    """A passage that steam flows through, or a breather passage of a drifting engine.

    A steam path is a chain: each passage or pipe states which one it follows, from the header to the valve and
    from the valve to the nozzle.

    Fields:
        in_block: the block that it is made in.
        follows: the passage or pipe from which the steam comes; leave out for the first of its path.
        place: what it is.
        carries: live steam or exhaust steam.
        cylinders: how many cylinders it carries the steam of.
        cylinder_bore: name of the bore, in the block's spec, of the cylinder that it serves.
        of_end: of a port, name of the end of the cylinder at which it opens, in the block's spec.
        area: cross-section, at its narrowest.
        perimeter: wetted, of that section.
        length: along the centre line.
        roughness: of its walls: height of the equivalent sand grain.
        bends: how many round bends of 90° it has.
        bend_radius: of the sharpest bend, at its centre line.
        mitres: how many sharp corners of 90° it has.
        loss_coefficient: of whatever else is in it, such as ribs or a strainer, on its own speed; 0 where nothing is.
        valve: at which a live path ends, or an exhaust path begins; one of those that open in turn.
        share: of a branch or a breather passage: its share of the flow of the passage that it follows.
        feeds: of a branch, what its steam is for.
        low_point: whether water collects there.
        drained: whether a cock or valve drains that water.
        charge_temperature: of a breather passage: the charge in the cylinder when compression begins, drifting.
        discharge_coefficient: of a breather passage.
        faces: what lies beyond each part of its wall, by names of the designer's choice.
        floor: its floor, on which water lies.
        drains: the ways by which water leaves it, by name.
        water_of: mass of the metal whose water gathers in it as steam is first let in; left out, it is all of the
            block.
        wet: of one that lies in ash, what is taken of its metal.
        end_area: of its ends, which perimeter times length leaves out; 0 mm² where it is open at both.
    """

    kind: ClassVar[str] = "steam-passage"
    called: ClassVar[str] = "steam passage"
    of_metal: ClassVar[bool] = False

    in_block: Annotated[LinkTo[CylinderBlock], OWN_PLACE] = NOT_STATED
    follows: Annotated[LinkTo[Component], OWN_PLACE] = NOT_STATED
    place: Word[Literal["passage", "chest", "port", "valve pocket", "belt", "branch", "breathing way"]] = (
        NOT_STATED
    )
    carries: Word[Literal["live steam", "exhaust steam"]] = NOT_STATED
    cylinders: Word[int] = NOT_STATED
    cylinder_bore: Annotated[Word[str], OWN_PLACE, NamedIn("in_block.bores")] = NOT_STATED
    of_end: Annotated[Word[str], OWN_PLACE, NamedIn("in_block.ends")] = NOT_STATED
    area: Area = NOT_STATED
    perimeter: Annotated[Length, Span("60 mm", "5 m")] = NOT_STATED
    length: Annotated[Length, Span("25 mm", "5 m")] = NOT_STATED
    roughness: Annotated[Allowance, Span("5 µm", "2.5 mm")] = NOT_STATED
    bends: Word[int] = NOT_STATED
    bend_radius: Annotated[Length, Span("15 mm", "3 m")] = NOT_STATED
    mitres: Word[int] = NOT_STATED
    loss_coefficient: Annotated[Fraction, GIVEN] = NOT_STATED
    valve: Annotated[LinkTo[PoppetValve], OWN_PLACE] = NOT_STATED
    share: Fraction = NOT_STATED
    feeds: Word[str] = NOT_STATED
    low_point: Word[bool] = NOT_STATED
    drained: Word[bool] = NOT_STATED
    charge_temperature: Temperature = NOT_STATED
    discharge_coefficient: Annotated[Fraction, Span("0.1", "1"), GIVEN] = NOT_STATED
    faces: dict[str, PassageFace] = {}
    end_area: NoArea = NOT_STATED
    floor: Floor = Floor.unstated()
    drains: dict[str, Drain] = {}
    water_of: Mass = NOT_STATED
    wet: Wasting = Wasting.unstated()
