"""A small family for tests of the core: tubes under pressure, their racks, and rules of every shape."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from importlib.metadata import EntryPoint
from typing import Annotated, Any, ClassVar, Literal

import pytest

from speclint import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Grade,
    Judgement,
    Limit,
    Rule,
    Sheet,
    formula,
    rule,
)
from speclint.checking import code_digest
from speclint.equations import Kelvins, Metres, Pascals, PerKelvin, Ratio
from speclint.families import Loaded, load_families
from speclint.handbook.tables.reading import Reading
from speclint.specs import (
    NOT_STATED,
    OWN_PLACE,
    Component,
    Length,
    LinkTo,
    LoadCase,
    Pressure,
    SpecTable,
    Temperature,
    Word,
)
from speclint.testing import made_family


class Rack(Component):
    """A rack that holds tubes."""

    kind: ClassVar[str] = "rack"
    called: ClassVar[str] = "rack"

    hole: Length = NOT_STATED
    slots: dict[str, Slot] = {}


class Slot(SpecTable):
    """One slot of a rack."""

    width: Length = NOT_STATED


class Tube(Component):
    """A tube under pressure."""

    kind: ClassVar[str] = "tube"
    called: ClassVar[str] = "tube"

    bore: Length = NOT_STATED
    outside: Length = NOT_STATED
    pressure: Pressure = NOT_STATED
    temperature: Temperature = NOT_STATED
    hoops: Word[int] = NOT_STATED
    ends: Word[Literal["open", "closed"]] = NOT_STATED
    held_in: Annotated[LinkTo[Rack], OWN_PLACE] = NOT_STATED
    in_slot: Annotated[Word[str], OWN_PLACE] = NOT_STATED


@formula("σ = p d/(D − d)", cites=[FIRST_PRINCIPLES])
def mean_hoop_stress(p: Pascals, d: Metres, D: Metres) -> Pascals:
    """Mean hoop stress of a tube."""
    return p * d / (D - d)


@formula("g = H − D", cites=[FIRST_PRINCIPLES])
def gap(H: Metres, D: Metres) -> Metres:
    """Gap round a tube in its hole."""
    return H - D


@formula("g′ = g − α D (T − T_0)", cites=[FIRST_PRINCIPLES])
def hot_gap(g: Metres, D: Metres, α: PerKelvin, T: Kelvins, T_0: Kelvins) -> Metres:
    """Gap left when the tube is hot and the rack is not."""
    return g - α * D * (T - T_0)


@formula("s = σ_all/σ", cites=[FIRST_PRINCIPLES])
def safety(σ: Pascals, σ_all: Pascals) -> Ratio:
    """Stress allowed over stress."""
    return σ_all / σ


def expansion() -> Reading:
    """A mean expansion with a tolerance."""
    return Reading("mean expansion", 12e-6, 11.7e-6, 12.3e-6, "1/K", COMMON_PRACTICE)


_COMMON: dict[str, Any] = {"cites": [FIRST_PRINCIPLES], "why": "for tests", "leaves_out": "nothing"}


@rule(
    "tube.stress",
    title="the tube carries its pressure",
    on=Tube,
    grade=Grade.HOLD,
    limits=[Limit("allowable", "100 MPa", "stress", COMMON_PRACTICE, "allowable stress")],
    **_COMMON,
)
def stress(tube: Tube, sheet: Sheet) -> Judgement:
    """One case, three toleranced values."""
    bore = sheet.take("d", tube.bore)
    outside = sheet.take("D", tube.outside)
    pressure = sheet.take("p", tube.pressure)
    return sheet.at_most(
        sheet.work("σ", mean_hoop_stress, p=pressure, d=bore, D=outside), sheet.limit("allowable", "σ_all")
    )


@rule(
    "tube.case-stress",
    title="the tube carries the steam",
    on=Tube,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    limits=[Limit("allowable", "100 MPa", "stress", COMMON_PRACTICE, "allowable stress")],
    **_COMMON,
)
def case_stress(tube: Tube, case: LoadCase, sheet: Sheet) -> Judgement:
    """Two load cases."""
    bore = sheet.take("d", tube.bore)
    outside = sheet.take("D", tube.outside)
    pressure = sheet.take("p", case.live_pressure)
    return sheet.at_most(
        sheet.work("σ", mean_hoop_stress, p=pressure, d=bore, D=outside), sheet.limit("allowable", "σ_all")
    )


@rule(
    "tube.loose-hot",
    title="the tube stays loose",
    on=Tube,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    **_COMMON,
)
def loose_hot(tube: Tube, sheet: Sheet) -> Judgement:
    """A limit at zero, a link, and a table with a tolerance."""
    rack = sheet.follow(tube.held_in)
    hole = sheet.take("H", rack.hole)
    outside = sheet.take("D", tube.outside)
    temperature = sheet.take("T", tube.temperature)
    growth = sheet.look_up("α", expansion, of=tube)
    cold = sheet.work("g", gap, H=hole, D=outside)
    left = sheet.work("g′", hot_gap, g=cold, D=outside, α=growth, T=temperature, T_0=293.15)
    return sheet.stays(left, cold)


@rule(
    "tube.hoops",
    title="the tube has hoops enough",
    on=Tube,
    grade=Grade.OBSERVATION,
    limits=[Limit("least", "4", "ratio", COMMON_PRACTICE, "least number of hoops")],
    **_COMMON,
)
def hoops(tube: Tube, sheet: Sheet) -> Judgement:
    """A count."""
    return sheet.at_least(sheet.count("n", tube.hoops), sheet.limit("least"))


@rule("tube.ends", title="the ends are stated and open", on=Tube, grade=Grade.QUERY, **_COMMON)
def ends(tube: Tube, sheet: Sheet) -> Judgement:
    """A matter of record."""
    return sheet.states(sheet.read("ends", tube.ends) == "open", "the ends are open")


@rule("tube.raises", title="never", on=Tube, grade=Grade.OBSERVATION, **_COMMON)
def raises(_tube: Tube, _sheet: Sheet) -> Judgement:
    """A rule with a fault."""
    raise ZeroDivisionError("a fault of the rule")


RULES = (stress, case_stress, loose_hot, hoops, ends)

DUTY = """
kind = "duty"
id = "duty"
[cases.starting]
live_pressure = "12 bar gauge"
[cases.running]
live_pressure = "10 bar gauge"
"""

TUBE = """
kind = "tube"
duty = "duty"
bore = "100 mm ±0.5"
outside = "105 mm ±0.5"
pressure = "30 bar gauge"
temperature = "200..220 °C"
hoops = 4
ends = "open"
held_in = "rack"
"""

RACK = """
kind = "rack"
hole = "106 mm +0.1/0"
"""

FILES = {"duty.toml": DUTY, "tube.toml": TUBE, "rack.toml": RACK}


def entry_point(name: str, kinds: Sequence[Any] = (Tube, Rack), rules: Sequence[Rule] = RULES) -> EntryPoint:
    """An entry point to a family made on the spot."""
    for one in rules:
        one.function.__doc__ = one.function.__doc__ or "Made for one test."
    return made_family(name, kinds, rules)


def tubes(*rules: Rule) -> Loaded:
    """The family of tubes alone, with some rules or all."""
    return load_families([entry_point("tubes", rules=rules or RULES)])


def code_known(
    patch: pytest.MonkeyPatch, of: Callable[[str], str] = lambda name: name.rpartition("_")[0]
) -> None:
    """Let words stand for the code of families that are made in memory, their names without a number unless others."""
    patch.setattr(code_digest, "_of_package", of)
    patch.setattr("speclint.checking.code_beside.code_beside", lambda *_: ())
