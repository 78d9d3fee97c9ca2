"""The working conditions a component sees, as named load cases."""

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal, get_args

from pydantic import model_validator
from pydantic_core import PydanticCustomError

from speclint.quantities import Measure
from speclint.specs.fields import (
    NOT_STATED,
    Duration,
    Fraction,
    HeatTransfer,
    Length,
    NotStated,
    Pressure,
    RotationalSpeed,
    Speed,
    Temperature,
    Word,
)
from speclint.specs.geometry import AtMost, Conditions
from speclint.specs.spans import Span
from speclint.specs.spec import Spec, SpecTable
from speclint.specs.taking_over import TAKEN_WHOLE
from speclint.specs.ties import TemperatureOrTie, Tie, WrittenTie, tied
from speclint.specs.worked_values import (
    DrynessOrEvents,
    Estimate,
    FromEvents,
    MassFlowOrEvents,
    PressureOrEvents,
    TemperatureOrEvents,
)

#: The moments in an engine's life that a duty may state.
CaseName = Literal[
    "cold", "warming", "starting", "running", "drifting", "standing-hot", "cooling", "test", "water"
]
#: Temperatures of a load case that are those of no part; a part's may be tied to them.
_STEAM = (
    "live_temperature",
    "exhaust_temperature",
    "ambient_temperature",
    "cylinder_temperature",
    "admission_temperature",
    "release_temperature",
)
CASE_NAMES: tuple[CaseName, ...] = get_args(CaseName)
#: Those in which the engine is hot, at work or standing; water in the cylinder, which comes in one of them, is apart.
HOT_CASES: tuple[CaseName, ...] = ("warming", "starting", "running", "drifting", "standing-hot", "cooling")
#: What each load case is, and what of the parts shows in it.
CASE_MEANINGS: Mapping[CaseName, str] = {
    "cold": "as the parts are put together and measured in the shop: cold clearances and interferences rest on it",
    "warming": "the first steam is let into a cold block through the drain cocks: thin parts are hot before thick "
    "ones, so that fits are at their tightest or loosest, and water gathers",
    "starting": "regulator open, safety valves about to lift, the engine hardly moving: the greatest pressure on all "
    "parts",
    "running": "the greatest permitted speed at full superheat: the hottest metal, the quickest motion",
    "drifting": "regulator shut, rolling at speed: valves are lifted against little pressure, air and ash may be drawn "
    "in, and what is compressed in the cylinder gets hot",
    "standing-hot": "steam shut off after a run: the heat spreads, and no stream of steam or air carries it away",
    "cooling": "the thin parts cool first: fits change the other way than in warming",
    "test": "the hydraulic test in the shop, cold, before the valves are in; the local code says how high",
    "water": "water caught in the cylinder, the relief valves blowing: covers, studs, rod and motion carry it",
}


class LoadCase(SpecTable):
    """Pressures, temperatures and speed at one moment.

    ``live_pressure`` is the live steam in the chest and ``exhaust_pressure`` that behind the exhaust valves;
    ``safety_valve_pressure`` is the greatest boiler pressure; ``cylinder_pressure`` the greatest in the
    cylinder when it is not the live pressure (compression, trapped water, hydraulic test);
    ``least_cylinder_pressure`` the least when it is not the exhaust pressure (vacuum while drifting).
    ``ambient_temperature`` is that of the air on an ordinary day, ``hottest_ambient`` that of the hottest air in
    which the engine works or stands, ``coldest_ambient`` that of the coldest in which it stands until steam is raised.
    ``notch`` names the position of the reverser, of the valve gear of each cylinder, in which it runs; the events and
    the steam in the cylinder are worked with it. ``wall_coefficient`` is that of heat from steam to the walls of the
    cylinder; where it is left out no heat is exchanged. ``cylinder_temperature`` is the mean of the steam in the
    cylinder over a revolution, ``admission_temperature`` and ``release_temperature`` that of the steam in it as the
    inlet and as the exhaust opens; ``exhaust_dryness`` the dryness of the exhaust steam, 1 where it is left out. Each
    of them, a pressure of the cylinder, the temperature of the exhaust and the flow of steam may be
    ``{ from = "events" }``: then they are worked.
    ``cut_off`` is the share of the stroke at which the admission of steam ends, ``steam_flow`` the steam that one
    cylinder uses; where it is left out, rules that more steam makes worse take the most that its sizes can use.
    ``temperatures`` gives the metal temperature of parts by id or by kind (which stands for the kinds
    built on it too), stated or tied to another: "cylinder-block + 20..30 K", "live_temperature - 10 K"; or
    "estimate", which has it worked within a band from the steam and the parts beside.
    """

    geometry: ClassVar[Conditions] = (
        AtMost("ambient_temperature", "hottest_ambient"),
        AtMost("coldest_ambient", "ambient_temperature"),
        AtMost("coldest_ambient", "hottest_ambient"),
    )

    live_pressure: Pressure = NOT_STATED
    exhaust_pressure: Pressure = NOT_STATED
    safety_valve_pressure: Pressure = NOT_STATED
    cylinder_pressure: PressureOrEvents = NOT_STATED
    least_cylinder_pressure: PressureOrEvents = NOT_STATED
    live_temperature: Temperature = NOT_STATED
    exhaust_temperature: TemperatureOrEvents = NOT_STATED
    exhaust_dryness: DrynessOrEvents = NOT_STATED
    cylinder_temperature: TemperatureOrEvents = NOT_STATED
    admission_temperature: TemperatureOrEvents = NOT_STATED
    release_temperature: TemperatureOrEvents = NOT_STATED
    ambient_temperature: Temperature = NOT_STATED
    hottest_ambient: Temperature = NOT_STATED
    coldest_ambient: Temperature = NOT_STATED
    rotational_speed: RotationalSpeed = NOT_STATED
    track_speed: Speed = NOT_STATED
    notch: Word[str] = NOT_STATED
    cut_off: Fraction = NOT_STATED
    steam_flow: MassFlowOrEvents = NOT_STATED
    wall_coefficient: HeatTransfer = NOT_STATED
    temperatures: dict[str, TemperatureOrTie] = {}

    @model_validator(mode="after")
    def _ties_hold(self) -> "LoadCase":
        """Every tie leads to a stated temperature of the load case."""
        for name, value in self.temperatures.items():
            if isinstance(value, WrittenTie):
                try:
                    tied(name, self._stated_temperatures())
                except PydanticCustomError as problem:
                    said = {**(problem.context or {}), "within": ("temperatures", name)}
                    raise PydanticCustomError("refused", "{said}", said) from None
        return self

    @property
    def name(self) -> str:
        """Its name in the duty, such as running."""
        return self.where.key.rpartition(".")[2]

    @property
    def asks(self) -> bool:
        """Whether anything is to be worked: from the valve events, or by an estimate."""
        values = (*self.__dict__.values(), *self.temperatures.values())
        return any(isinstance(one, FromEvents | Estimate) for one in values)

    def _stated_temperatures(self) -> dict[str, Measure | WrittenTie | NotStated]:
        steam = {name: getattr(self, name) for name in _STEAM}
        return {**steam, **self.temperatures}

    def temperature_of(self, part: Spec) -> Measure | Tie | NotStated:
        """The metal temperature of a part: by its id, else by its kind or the nearest that this is built on."""
        return self._temperature(part.id, *part.words())

    def temperature_named(self, name: str) -> Measure | Tie | NotStated:
        """The metal temperature that the case states under a name, for a part that has no spec of its own."""
        return self._temperature(name)

    def _temperature(self, *names: str) -> Measure | Tie | NotStated:
        for name in names:
            if name in self.temperatures:
                return tied(name, self._stated_temperatures())
        return NotStated(self.where.at(f"{self.where.key}.temperatures.{names[0]}"))


class Life(SpecTable):
    """The life for which everything that sees the duty is made.

    Fields:
        distance: that the engine runs in its life
        starts: number of times that steam is raised in its life
    """

    distance: Annotated[Length, Span("1e5 km", "1e7 km")] = NOT_STATED
    starts: Word[int] = NOT_STATED


class FirstSteam(SpecTable):
    """How the engine is warmed.

    Fields:
        time: from the first steam in the block until it works
    """

    time: Duration = NOT_STATED


class Duty(Spec):
    """A set of load cases, shared by many components, and their life.

    ``like`` takes over what it does not state itself; a case that it states it states whole: it is one moment.
    """

    kind: ClassVar[str] = "duty"
    called: ClassVar[str] = "duty"

    life: Life = Life.unstated()
    warming: FirstSteam = FirstSteam.unstated()
    cases: Annotated[dict[CaseName, LoadCase], TAKEN_WHOLE] = {}
