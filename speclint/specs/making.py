"""In which steps a part is made, in their order: words of the trade, from a list for each kind."""

from typing import Literal

from speclint.specs.fields import NOT_STATED, Temperature, Word
from speclint.specs.spec import SpecTable

#: A step that comes again has its number behind it.
BlockStep = Literal[
    "open vents",
    "weld",
    "weld 2",
    "weld lugs and bosses",
    "test welds",
    "test welds 2",
    "weld ribs and covers",
    "stress relieve",
    "stress relieve 2",
    "test welds by ultrasound",
    "rough machine",
    "rough machine 2",
    "heat block",
    "heat block 2",
    "press liners",
    "press liners 2",
    "press seats",
    "press seats 2",
    "press guides",
    "match ports",
    "finish bore",
    "chamfer ports",
    "hone",
    "ream guides",
    "finish seats in line",
    "face pads",
    "measure pads",
    "grind last link",
    "tap holes",
    "set studs",
    "fit covers",
    "hydraulic test",
    "hydraulic test 2",
    "fit gear",
    "lap valves",
    "set tappets",
    "grind caps",
    "measure cold clearance",
    "paint",
    "lift in",
    "bolt pads",
    "measure growth room",
    "fit pipes",
    "steam test",
    "retighten hot",
    "lag",
]
#: Where the last weld stands.
LastWeld = Literal["before stress relief", "after stress relief"]
WeldmentStep = Literal[
    "open vents",
    "weld",
    "weld 2",
    "weld lugs and bosses",
    "test welds",
    "test welds 2",
    "weld ribs and covers",
    "stress relieve",
    "stress relieve 2",
    "test welds by ultrasound",
    "rough machine",
    "rough machine 2",
    "measure hardness",
    "paint",
]
CastingStep = Literal[
    "mould",
    "cast",
    "fettle",
    "weld repair",
    "test welds",
    "normalize",
    "stress relieve",
    "stress relieve 2",
    "rough machine",
    "measure hardness",
    "hydraulic test",
    "paint",
]
LinerStep = Literal[
    "cast",
    "stress relieve",
    "stress relieve 2",
    "rough machine",
    "rough machine 2",
    "cut ports",
    "measure hardness",
    "hydraulic test",
    "finish outside",
]
SeatStep = Literal[
    "cast",
    "stress relieve",
    "rough machine",
    "hard face",
    "harden",
    "temper",
    "measure hardness",
    "finish outside",
]


class StepDetail(SpecTable):
    """What one step of the making rests on; it has the name of the step.

    Fields:
        datum: the face or bore from which the work is set up
        cuts: the faces and bores that the step machines
        needs: the steps that must be done before it
        temperature: to which the part is heated in it
    """

    datum: Word[str] = NOT_STATED
    cuts: tuple[Word[str], ...] = ()
    needs: tuple[Word[str], ...] = ()
    temperature: Temperature = NOT_STATED


class Making(SpecTable):
    """What the making of every kind states beside its steps.

    Fields:
        details: datum, cuts, needs and temperature of steps, each by the name of the step
        as_blank: faces and bores that are there before the first step, as cast, rolled or welded
    """

    details: dict[str, StepDetail] = {}
    as_blank: tuple[Word[str], ...] = ()


class BlockMaking(Making):
    """The steps in which a block is made, from welding or casting to its first steam.

    Fields:
        steps: in their order
        last_weld: whether the last weld comes before the last stress relief, where that is said beside the list
    """

    steps: tuple[Word[BlockStep], ...] = ()
    last_weld: Word[LastWeld] = NOT_STATED


class WeldmentMaking(Making):
    """The steps in which a weldment is made; those of the block that it becomes follow them.

    Fields:
        steps: in their order
        last_weld: whether the last weld comes before the last stress relief, where that is said beside the list
    """

    steps: tuple[Word[WeldmentStep], ...] = ()
    last_weld: Word[LastWeld] = NOT_STATED


class CastingMaking(Making):
    """The steps in which a casting is made; those of the part that it becomes follow them.

    Fields:
        steps: in their order
    """

    steps: tuple[Word[CastingStep], ...] = ()


class LinerMaking(Making):
    """The steps in which a liner is made, until it goes into its block.

    Fields:
        steps: in their order
        at_step: the step of the block at which it goes in; "press liners" where it is left out
    """

    steps: tuple[Word[LinerStep], ...] = ()
    at_step: Word[BlockStep] = NOT_STATED


class SeatMaking(Making):
    """The steps in which a seat is made, until it goes into its block.

    Fields:
        steps: in their order
        at_step: the step of the block at which it goes in; "press seats" where it is left out
    """

    steps: tuple[Word[SeatStep], ...] = ()
    at_step: Word[BlockStep] = NOT_STATED


class FittedMaking(SpecTable):
    """At which step of its block a part goes in that is not made with it: studs, a cam box.

    Fields:
        at_step: the step of the block; that usual for its kind where it is left out
    """

    at_step: Word[BlockStep] = NOT_STATED
