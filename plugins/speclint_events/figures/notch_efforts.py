"""What each notch does: tractive effort over the speed, with what rails and boiler allow, and steam for the work."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from itertools import pairwise

from speclint import Assessment, OutOfRange
from speclint.facts import CylinderGiven, cycles_as_drawn
from speclint.handbook.steam_cycle import over_speed
from speclint.reports import DrawnAgain, Figure, Paper, Quantity, shown, words
from speclint_events.figures.fields import WIDTH, Field, top_of
from speclint_events.figures.gears import STEAM_RATE, GearDrawn, gear_of, gears_drawn

_ADHESION, _BOILER = "events.adhesion", "events.boiler-feeds"
#: Cycles that may be worked for one figure, each of one end: about half a second.
_CYCLES = 24
#: The least and the greatest speed that are drawn, as shares of that of the load case.
_SLOWEST, _FASTEST = 0.3, 1.35
_LINE = 14.0  # from one line of words to the next


@dataclass(frozen=True)
class Engine:
    """What the sheets say of the engine: cylinders, wheel [m], limits of rail [N] and boiler [kg/s], None unstated."""

    cylinders: float
    wheel: float
    adhesion: float | None
    boiler: float | None

    def speed(self, turns: float) -> float:
        """Speed of the engine [km/h] at revolutions in a second."""
        return math.pi * self.wheel * turns * 3.6


@dataclass(frozen=True)
class Notch:
    """A notch over the speed: speed [km/h], effort [kN], steam of all cylinders [kg/s], steam for work [kg/kWh]."""

    name: str
    points: tuple[tuple[float, float, float, float], ...]

    def efforts(self) -> list[tuple[float, float]]:
        """Speed and effort."""
        return [(v, F) for v, F, _, _ in self.points]

    def rates(self) -> list[tuple[float, float]]:
        """Speed and steam for each kilowatt-hour."""
        return [(v, rate) for v, _, _, rate in self.points]

    def limit(self, boiler: float | None) -> tuple[float, float] | None:
        """Speed and effort at which the cylinders take all that the boiler makes; between two points by a line.

        None where they take less or more at every speed, or the boiler is not known.
        """
        if boiler is None:
            return None
        for (v_0, F_0, m_0, _), (v_1, F_1, m_1, _) in pairwise(self.points):
            if m_0 <= boiler < m_1:
                part = (boiler - m_0) / (m_1 - m_0)
                return v_0 + part * (v_1 - v_0), F_0 + part * (F_1 - F_0)
        return None


def notch_efforts(assessment: Assessment) -> Iterator[Figure]:
    """A figure of the notches that run in the direction of the load case."""
    for drawn in gears_drawn(assessment):
        engine = _engine(drawn)
        if engine is None:
            continue  # the check of adhesion says why
        notches = _worked(drawn, engine)
        if notches:
            yield _figure(drawn, engine, notches)


def _engine(drawn: GearDrawn) -> Engine | None:
    z, D = drawn.on_sheet(_ADHESION, "z"), drawn.on_sheet(_ADHESION, "D")
    if z is None or D is None:
        return None
    return Engine(z, D, drawn.on_sheet(_ADHESION, "F_a"), drawn.on_sheet(_BOILER, "m_b"))


def _worked(drawn: GearDrawn, engine: Engine) -> list[Notch]:
    own = drawn.directions[drawn.notch]
    names = [name for name in drawn.notches if drawn.directions[name] == own]
    count = max(3, min(6, _CYCLES // (2 * len(names))))
    speeds = [drawn.given.speed * share for share in _shares(count)]
    found = [Notch(name, tuple(_points(drawn.notches[name], engine, speeds))) for name in names]
    return [notch for notch in found if len(notch.points) > 1]


def _shares(count: int) -> list[float]:
    """Even shares of the speed of the load case; the nearest of those between the ends is that speed itself."""
    even = [_SLOWEST + (_FASTEST - _SLOWEST) * n / (count - 1) for n in range(count)]
    own = min(range(1, count - 1), key=lambda n: abs(even[n] - 1))
    return [*even[:own], 1.0, *even[own + 1 :]]


def _points(
    given: CylinderGiven, engine: Engine, speeds: list[float]
) -> Iterator[tuple[float, float, float, float]]:
    try:
        known = cycles_as_drawn(given)
    except OutOfRange:
        return
    ends, running = (given.front.at("hot"), given.back.at("hot")), known.front.running
    for (
        speed
    ) in speeds:  # with the walls that the engine settles at; at its own speed the cycle is known already
        result: tuple[float | None, float | None, float | None]
        if speed == given.speed and known.power > 0:
            result = known.tractive_effort(engine.wheel), known.steam_flow, known.per_kilowatt_hour
        else:
            (point,) = over_speed(*ends, running, engine.wheel, [speed])
            result = point.tractive_effort, point.steam_flow, point.per_kilowatt_hour
        effort, steam, rate = result
        if effort is not None and steam is not None and rate is not None:
            z = engine.cylinders
            yield engine.speed(speed), z * effort / 1e3, z * steam, rate


def _figure(drawn: GearDrawn, engine: Engine, notches: list[Notch]) -> Figure:
    name, rows = f"efforts-{drawn.name}", tuple(_rows(drawn, notches))
    about = "; ".join(", ".join(row) for row in rows)
    paper = Paper(name, "Tractive effort and steam of each notch over the speed", about, WIDTH, 560.0)
    across = (0.0, notches[0].points[-1][0] * 1.16)
    highest = [F for notch in notches for _, F in notch.efforts()] + [(engine.adhesion or 0.0) / 1e3]
    _efforts(
        Field(paper, (70.0, 20.0), (660.0, 280.0), across, (0.0, top_of(highest))), drawn, engine, notches
    )
    rates = [rate for notch in notches for _, rate in notch.rates()]
    _rates(Field(paper, (70.0, 340.0), (660.0, 160.0), across, (0.0, top_of(rates, 1.25))), notches)
    return Figure.of(
        paper,
        drawn.name,
        f"{drawn.of}: what each notch does over the speed",
        f"All {engine.cylinders:g} cylinders, tyres worn, friction of the engine left out; worked at the speeds "
        "that are marked, straight lines between. Dashed: the cylinders take more steam than the boiler makes.",
        rows,
        ("notch", "speed", "tractive effort", "steam", "steam for work"),
    )


def _efforts(field: Field, drawn: GearDrawn, engine: Engine, notches: list[Notch]) -> None:
    field.frame("", "tractive effort, {kN}", unit="km/h")
    labels = field.labels()
    if engine.adhesion is not None:
        x, y = field.level(engine.adhesion / 1e3)
        labels.avoid([field.place(0.0, engine.adhesion / 1e3), (x, y)])
        field.paper.text(
            (x, y - 6), _on_sheet(drawn, _ADHESION, "F_a", "adhesion, {} {kN}", "kN", 1), "figure", "end"
        )
    for notch in notches:
        _curve(field, notch, engine.boiler)
        labels.avoid(field.on(notch.efforts()))
    _name(field, [(notch.efforts()[-1], notch.name) for notch in notches])
    limits = list(_fed(drawn, engine, notches))
    fed = [place for place, _ in limits]
    if len(fed) > 1:
        field.curve(fed, "axis")
        labels.avoid(field.on(fed))
    for place, says in (*_starting(drawn, engine), *limits):
        field.cross(*place)
        if says:
            labels.put(field.place(*place), says)
    v = engine.speed(drawn.given.speed)
    own = [(one, at) for one in notches if one.name == drawn.notch for at in range(len(one.points))]
    for notch, at in own:
        speed, effort = notch.efforts()[at]
        if math.isclose(speed, v):
            field.paper.circle(field.place(speed, effort), 4.5, "solid")
            running = words("running, {} {kN}", shown(_at(drawn, notch, at, 1), "kN", 1))
            labels.put(field.place(speed, effort), running)


_Mark = tuple[tuple[float, float], str]


def _starting(drawn: GearDrawn, engine: Engine) -> Iterator[_Mark]:
    """Speed [km/h] and effort [kN] of starting, by its sheet."""
    turns, effort = drawn.on_sheet(_ADHESION, "n"), drawn.on_sheet(_ADHESION, "F")
    if turns is not None and effort is not None:
        yield (
            (engine.speed(turns), effort / 1e3),
            _on_sheet(drawn, _ADHESION, "F", "starting, {} {kN}", "kN", 1),
        )


def _fed(drawn: GearDrawn, engine: Engine, notches: list[Notch]) -> Iterator[_Mark]:
    """Speed and effort of each notch at which it takes what the boiler makes, by speed; the first has the words."""
    says = _on_sheet(drawn, _BOILER, "m_b", "boiler, {} {kg/s}", "kg/s", 2)
    found = [notch.limit(engine.boiler) for notch in notches]
    for place in sorted(one for one in found if one is not None):
        yield place, says
        says = ""


def _name(field: Field, ends: list[tuple[tuple[float, float], str]]) -> None:
    """The name of each notch at the end of its line; where two lines end close together the upper name is raised."""
    above = math.inf
    for end, name in sorted(ends):
        x, y = field.place(*end)
        above = min(y + 4, above - _LINE)
        field.paper.named(name, f"notch {name}")
        field.paper.text((x + 8, above), f"notch {name}", "figure")


def _curve(field: Field, notch: Notch, boiler: float | None) -> None:
    """The effort over the speed, dashed where the cylinders take more than the boiler makes."""
    points, limit = notch.efforts(), notch.limit(boiler)
    if limit is not None:
        field.curve([*(one for one in points if one[0] < limit[0]), limit])
        field.curve([limit, *(one for one in points if one[0] > limit[0])], "edge dashed")
    else:
        beyond = boiler is not None and notch.points[0][2] > boiler
        field.curve(points, "edge dashed" if beyond else "edge")
    for point in points:
        field.paper.circle(field.place(*point), 2.2, "solid")


def _rates(field: Field, notches: list[Notch]) -> None:
    field.frame("speed of the engine, {km/h}", "steam, {kg/kWh}")
    for notch in notches:
        field.curve(notch.rates())
        for point in notch.rates():
            field.paper.circle(field.place(*point), 2.2, "solid")
    _name(field, [(notch.rates()[-1], notch.name) for notch in notches])


def efforts_of(assessment: Assessment, name: str) -> list[Notch]:
    """The notches of a gear over the speed, worked anew."""
    drawn = gear_of(assessment, name)
    engine = _engine(drawn)
    assert engine is not None  # as it is drawn
    return _worked(drawn, engine)


#: SI value of one of the unit of each number of a point of a notch.
_UNITS = (1 / 3.6, 1e3, 1.0, 1.0)


def of_notch(name: str, at: int, which: int, notches: list[Notch]) -> float:
    """A number of a point of a notch, in SI units."""
    return next(one.points[at][which] * _UNITS[which] for one in notches if one.name == name)


def _at(drawn: GearDrawn, notch: Notch, at: int, which: int) -> Quantity:
    origin = DrawnAgain(drawn.name, STEAM_RATE, efforts_of, partial(of_notch, notch.name, at, which))
    return Quantity(notch.points[at][which] * _UNITS[which], origin)


def _on_sheet(drawn: GearDrawn, rule: str, symbol: str, says: str, unit: str, places: int) -> str:
    """A number of a sheet in words; nothing where there is none."""
    found = drawn.quantity(rule, symbol)
    return "" if found is None else words(says, shown(found, unit, places))


def _rows(drawn: GearDrawn, notches: list[Notch]) -> Iterator[tuple[str, ...]]:
    units = (("km/h", 1), ("kN", 1), ("kg/s", 2), ("kg/kWh", 2))
    for notch in notches:
        for at in range(len(notch.points)):
            numbers = (
                words(f"{{}} {{{unit}}}", shown(_at(drawn, notch, at, which), unit, places))
                for which, (unit, places) in enumerate(units)
            )
            yield notch.name, *numbers
    found = (
        (f"adhesion, {_ADHESION}", 2, _on_sheet(drawn, _ADHESION, "F_a", "{} {kN}", "kN", 1)),
        (f"boiler, {_BOILER}", 3, _on_sheet(drawn, _BOILER, "m_b", "{} {kg/s}", "kg/s", 3)),
        (f"starting, {_ADHESION}", 2, _on_sheet(drawn, _ADHESION, "F", "{} {kN}", "kN", 1)),
    )
    for what, place, says in found:
        if says:
            yield what, *(says if place == column else "" for column in range(1, 5))
