"""How a rubbing surface is oiled."""

from typing import Annotated, Literal

from speclint.specs.fields import NOT_STATED, Pressure, Temperature, Word
from speclint.specs.naming import NAMES
from speclint.specs.spec import SpecTable

#: Classes of cylinder oils by ISO 3448: the number is the kinematic viscosity at 40 °C in mm²/s.
ViscosityClass = Literal["ISO VG 320", "ISO VG 460", "ISO VG 680", "ISO VG 1000", "ISO VG 1500"]


class RubbingPair(SpecTable):
    """A rubbing pair and its oil, or all pairs alike of a box or a block.

    Fields:
        between: the two parts, by their ids or kinds; "guide" for that of a spindle
        oil: what lubricates it
        feed: what feeds it, such as "oil pump, branch 2"
        returns: where the oil goes back or away
        shared: true where one feed serves several pairs on purpose
    """

    between: tuple[Word[str], ...] = ()
    oil: Word[Literal["cylinder oil", "engine oil", "grease"]] = NOT_STATED
    feed: Annotated[Word[str], NAMES] = NOT_STATED
    returns: Annotated[Word[str], NAMES] = NOT_STATED
    shared: Word[bool] = NOT_STATED


class Lubrication(SpecTable):
    """How a rubbing surface is oiled.

    Fields:
        lubricant: what it is, or none
        viscosity_class: of the oil, by ISO 3448
        flash_point: of the oil
        feed: what feeds it, such as "mechanical lubricator, feed 3"
        check_valve: whether a check valve at the point of feed keeps steam out of the pipe
        check_valve_pressure: pressure against which that valve is tested tight
        drained: whether water that collects there can drain
    """

    lubricant: Word[Literal["none", "cylinder oil", "engine oil", "grease"]] = NOT_STATED
    viscosity_class: Word[ViscosityClass] = NOT_STATED
    flash_point: Temperature = NOT_STATED
    feed: Annotated[Word[str], NAMES] = NOT_STATED
    check_valve: Word[bool] = NOT_STATED
    check_valve_pressure: Pressure = NOT_STATED
    drained: Word[bool] = NOT_STATED
