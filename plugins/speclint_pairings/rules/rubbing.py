"""Pairs that rub: mean pressure times mean speed."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Hertz, MetresPerSecond, Pascals, RadiansPerSecond
from speclint.facts import (
    connecting_rod_of,
    greatest_bore,
    length_of_bearing,
    pressure_by_free_gap,
    side_load,
    speed_of_crank,
    speed_of_gear,
    stroke_of,
    width_on_bars,
)
from speclint.handbook.bolted_joints import pressure_load
from speclint.handbook.cams import revolutions
from speclint.handbook.members import projected_pressure, slipper_pressure
from speclint.handbook.tables import SHIGLEY
from speclint.specs import (
    Component,
    Crosshead,
    CylinderLiner,
    Pin,
    PistonRing,
    Rocker,
    SlideBar,
    ValveSpindle,
)
from speclint_pairings.formulae import rubbing as work
from speclint_pairings.formulae.tables import pressure_velocity, rated
from speclint_pairings.inputs.pairs import Surface, bore_of, guide_of, named_surface, surface_of

if TYPE_CHECKING:
    from speclint.specs import LoadCase


class Rubbing(Struct, frozen=True):
    """Two surfaces that rub, how, under which oil, and what works out their pressure and speed."""

    contact: str
    one: Surface
    other: Surface
    oil: str


Worked = tuple[Pascals, MetresPerSecond]


@rule(
    "pairing.pressure-velocity",
    title="Mean pressure times mean speed of the rubbing pair is at most the table's figure for its "
    "metals, motion and oil",
    wrong="pressure times speed {found}, {limit} allowed",
    on=(Crosshead, Pin, PistonRing, Rocker, ValveSpindle),
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    cites=[
        SHIGLEY.at("Table 12-8, boundary-lubricated bearings and their operating limits"),
        FIRST_PRINCIPLES,
        COMMON_PRACTICE,
    ],
    why="Pressure times speed sets the heat of friction: above what the pair can give off, the oil film "
    "fails, then the metal.",
    leaves_out="peaks of pressure and of speed (the rules of pins, slippers and bushes); supply and "
    "cooling of the oil; the inertia load, which is zero in the mean",
    against=("seize", "wear"),
    limits=[
        Limit("share", "1", "ratio", COMMON_PRACTICE, "share of the table's figure that may be used"),
    ],
    edition=5,
)
def rubbed(component: Component, case: LoadCase, sheet: Sheet) -> Judgement:
    """p v of each pair against the table by metals, oil and motion; a pair that is not in it is a query."""
    found, work_out = component.by_kind(_RUBBING)
    pairs = found(component, sheet)
    for pair in pairs:
        if rated(pair.contact, pair.one.counts_as, pair.other.counts_as, pair.oil) is None:
            says = (
                f"{_in_words(pair.one)} {pair.contact} on {_in_words(pair.other)} with {pair.oil}: "
                "no source held here gives the pressure times speed of this pair"
            )
            return sheet.states(False, says, where=component.where).graded(Grade.QUERY)
    p, v = work_out(component, case, sheet)
    pv = sheet.work("pv", work.pressure_times_speed, p=p, v=v)
    return sheet.worst(*(sheet.at_most(pv, _allowed(pair, sheet)) for pair in pairs))


def _in_words(surface: Surface) -> str:
    return f"{surface.called} ({surface.counts_as or 'not in the table of surfaces'})"


def _allowed(pair: Rubbing, sheet: Sheet) -> float:
    table = sheet.look_up(
        f"pv_t of {pair.other.called}",
        pressure_velocity,
        contact=pair.contact,
        one=pair.one.counts_as,
        other=pair.other.counts_as,
        oil=pair.oil,
    )
    return sheet.work("pv_n", work.share_of_rating, x=sheet.limit("share", "x"), pv_t=table)


def _oil(sheet: Sheet, *parts: Component) -> str:
    """The oil that one of the parts states, the first that does."""
    for part in parts:
        if sheet.is_stated(f"lubricant of {part.id}", part.lubrication.lubricant):
            return sheet.read(f"lubricant of {part.id}", part.lubrication.lubricant)
    return sheet.read(f"lubricant of {parts[0].id}", parts[0].lubrication.lubricant)


def _revolutions(speed: RadiansPerSecond, sheet: Sheet) -> Hertz:
    return sheet.work("n", revolutions, ω=speed)


def _steam(case: LoadCase, sheet: Sheet) -> Pascals:
    """Mean difference of pressure over a stroke; full pressure to its end where no cut-off is stated."""
    cut_off = sheet.take("c", case.cut_off) if sheet.is_stated("cut-off", case.cut_off) else 1.0
    return sheet.work(
        "p_m",
        work.mean_effective_pressure,
        p_1=sheet.take_absolute("p_1", case.safety_valve_pressure),
        p_e=sheet.take_absolute("p_e", case.exhaust_pressure),
        c=cut_off,
    )


def _load(crosshead: Crosshead, case: LoadCase, sheet: Sheet) -> tuple[CylinderLiner, float]:
    """The liner whose piston drives a crosshead, and the mean load on it, in its last bore where that is stated."""
    liner = sheet.follow(sheet.follow(sheet.follow(crosshead.on_rod).carries).runs_in)
    D = greatest_bore(liner, sheet)
    load = sheet.work("F_m", pressure_load, p=_steam(case, sheet), D=D)
    return liner, load


def _stroke_and_rod(liner: CylinderLiner, sheet: Sheet) -> tuple[float, float]:
    """The stroke of the piston in a liner, and the length of its connecting rod."""
    block = sheet.follow(liner.housed_in)
    stroke = sheet.take("S", stroke_of(block, sheet, liner.in_bore))
    return stroke, sheet.take("l", connecting_rod_of(block, sheet, liner.in_bore))


def _slippers(crosshead: Crosshead, sheet: Sheet) -> list[Rubbing]:
    slipper = named_surface(f"the slippers of {crosshead.id}", crosshead, crosshead.slipper_material, sheet)
    bars = sheet.belonging_to(crosshead, SlideBar)
    if not bars:
        raise sheet.not_assessed("no slide bar states that it guides this crosshead", crosshead.where)
    return [Rubbing("slides", slipper, surface_of(bar, sheet), _oil(sheet, crosshead, bar)) for bar in bars]


def _slipper_worked(crosshead: Crosshead, case: LoadCase, sheet: Sheet) -> Worked:
    liner, load = _load(crosshead, case, sheet)
    stroke, rod = _stroke_and_rod(liner, sheet)
    thrust = sheet.work(
        "N_m",
        work.mean_side_thrust,
        F_m=load,
        r=stroke / 2,
        l=rod,
    )
    p = sheet.work(
        "p",
        slipper_pressure,
        N=thrust,
        L=sheet.take("L_s", crosshead.slipper_length),
        b=width_on_bars(crosshead, sheet),
        x=sheet.take("x_b", crosshead.bearing_share),
    )
    n = _revolutions(speed_of_crank(sheet.follow(liner.housed_in), case, sheet), sheet)
    return p, sheet.work("v", work.reciprocating_speed, S=stroke, n=n)


def _pin(pin: Pin, sheet: Sheet) -> list[Rubbing]:
    bearing = named_surface(f"the bearing of {pin.id}", pin, pin.bearing_material, sheet)
    contact = "turns" if sheet.read("place", pin.place) == "crank pin" else "swings"
    return [Rubbing(contact, bearing, surface_of(pin, sheet), _oil(sheet, pin))]


def _pin_worked(pin: Pin, case: LoadCase, sheet: Sheet) -> Worked:
    liner, load = _load(sheet.follow(pin.moved_by), case, sheet)
    d, n = (
        sheet.take("d", pin.diameter),
        _revolutions(speed_of_crank(sheet.follow(liner.housed_in), case, sheet), sheet),
    )
    p = sheet.work("p", projected_pressure, F=load, d=d, b=length_of_bearing(pin, sheet))
    if sheet.read("place", pin.place) == "crank pin":
        return p, sheet.work("v", work.turning_speed, d=d, n=n)
    stroke, length = _stroke_and_rod(liner, sheet)
    return p, sheet.work("v", work.oscillating_speed, d=d, n=n, r=stroke / 2, l=length)


def _ring(ring: PistonRing, sheet: Sheet) -> list[Rubbing]:
    bore = bore_of(ring, sheet)
    return [Rubbing("slides", surface_of(ring, sheet), bore, _oil(sheet, bore.of, ring))]


def _ring_worked(ring: PistonRing, case: LoadCase, sheet: Sheet) -> Worked:
    bare = sheet.is_stated("bears on", ring.bears_on)
    by_gap = pressure_by_free_gap(ring, sheet.take, sheet)
    own = sheet.take("p_w", ring.wall_pressure) if by_gap is None else by_gap.value
    p = sheet.work("p", work.ring_pressure, p_w=own, p_m=_steam(case, sheet))
    if bare:
        block = sheet.follow(ring.bears_on)
        stroke = sheet.take("S", stroke_of(block, sheet))
    else:
        liner = sheet.follow(ring.runs_in)
        block = sheet.follow(liner.housed_in)
        stroke = sheet.take("S", stroke_of(block, sheet, liner.in_bore))
    n = _revolutions(speed_of_crank(block, case, sheet), sheet)
    return p, sheet.work("v", work.reciprocating_speed, S=stroke, n=n)


def _rocker(rocker: Rocker, sheet: Sheet) -> list[Rubbing]:
    bush = named_surface(f"the bush of {rocker.id}", rocker, rocker.bush_material, sheet)
    pin = named_surface(
        f"the pin of {rocker.id}", rocker, rocker.pin_material, sheet, treated=rocker.pin_surface
    )
    return [Rubbing("swings", bush, pin, _oil(sheet, rocker))]


def _rocker_worked(rocker: Rocker, case: LoadCase, sheet: Sheet) -> Worked:
    """At the greatest pressure that the bush is made for, against which rocker.stress judges the load."""
    valve = sheet.follow(sheet.follow(rocker.works).moves)
    lift = sheet.take("h", valve.lift)
    v = sheet.work(
        "v",
        work.rocking_speed,
        h=lift,
        b=sheet.take("b_v", rocker.valve_arm),
        d=sheet.take("d", rocker.pin),
        n=_revolutions(speed_of_gear(valve, case, sheet), sheet),
    )
    return sheet.take("p", rocker.bush_pressure), v


def _spindle(spindle: ValveSpindle, sheet: Sheet) -> list[Rubbing]:
    return [Rubbing("slides", surface_of(spindle, sheet), guide_of(spindle, sheet), _oil(sheet, spindle))]


def _spindle_worked(spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> Worked:
    p = sheet.work(
        "p",
        projected_pressure,
        F=side_load(spindle, sheet),
        d=sheet.take("d", spindle.diameter),
        b=sheet.take("L_g", spindle.guide_length),
    )
    valve = sheet.follow(spindle.moves)
    n = _revolutions(speed_of_gear(valve, case, sheet), sheet)
    return p, sheet.work("v", work.reciprocating_speed, S=sheet.take("h", valve.lift), n=n)


#: By kind: the pairs of a component, and how their pressure and speed are worked out.
_RUBBING: dict[str, tuple[Callable[..., list[Rubbing]], Callable[..., Worked]]] = {
    "crosshead": (_slippers, _slipper_worked),
    "pin": (_pin, _pin_worked),
    "piston-ring": (_ring, _ring_worked),
    "rocker": (_rocker, _rocker_worked),
    "valve-spindle": (_spindle, _spindle_worked),
}

RULES = (rubbed,)
