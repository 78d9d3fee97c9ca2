"""What each notch does: tractive effort over the speed, with what rails and boiler allow, and steam for the work."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from speclint import Assessment, OutOfRange
from speclint.facts import CylinderGiven, cycles_as_drawn
from speclint.handbook.steam_cycle import over_speed
from speclint.reports import Figure, Paper
from speclint_events.figures.fields import WIDTH, Field, shown, top_of
from speclint_events.figures.gears import GearDrawn, gears_drawn

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

    def limit(self, boiler: float) -> tuple[float, float] | None:
        """Speed and effort at which the cylinders take all that the boiler makes; between two points by a line."""
        for (v_0, F_0, m_0, _), (v_1, F_1, m_1, _) in pairwise(self.points):
            if m_0 <= boiler < m_1:
                part = (boiler - m_0) / (m_1 - m_0)
                return v_0 + part * (v_1 - v_0), F_0 + part * (F_1 - F_0)
        return None


def notch_efforts(assessment: Assessment) -> Iterator[Figure]:
    """A figure of the notches that run in the direction of the load case."""
    for drawn in gears_drawn(assessment):
        engine, notches = _engine(drawn), []
        if engine is not None:
            notches = _worked(drawn, engine)
        if engine is not None and notches:
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
    name, rows = f"efforts-{drawn.name}", tuple(_rows(drawn, engine, notches))
    about = "; ".join(", ".join(row) for row in rows)
    paper = Paper(name, "Tractive effort and steam of each notch over the speed", about, WIDTH, 560.0)
    across = (0.0, notches[0].points[-1][0] * 1.16)
    highest = [F for notch in notches for _, F in notch.efforts()] + [(engine.adhesion or 0.0) / 1e3]
    _efforts(
        Field(paper, (70.0, 20.0), (660.0, 280.0), across, (0.0, top_of(highest))), drawn, engine, notches
    )
    rates = [rate for notch in notches for _, rate in notch.rates()]
    _rates(Field(paper, (70.0, 340.0), (660.0, 160.0), across, (0.0, top_of(rates, 1.25))), notches)
    return Figure(
        name,
        drawn.name,
        f"{drawn.of}: what each notch does over the speed",
        f"All {engine.cylinders:g} cylinders, tyres worn, friction of the engine left out; worked at the speeds "
        "that are marked, straight lines between. Dashed: the cylinders take more steam than the boiler makes.",
        paper.markup(),
        rows,
        ("notch", "speed", "tractive effort", "steam", "steam for work"),
    )


def _efforts(field: Field, drawn: GearDrawn, engine: Engine, notches: list[Notch]) -> None:
    field.frame("", "tractive effort, kN")
    labels = field.labels()
    if engine.adhesion is not None:
        x, y = field.level(engine.adhesion / 1e3)
        labels.avoid([field.place(0.0, engine.adhesion / 1e3), (x, y)])
        field.paper.text((x, y - 6), f"adhesion, {engine.adhesion / 1e3:.1f} kN", "figure", "end")
    for notch in notches:
        limit = notch.limit(engine.boiler) if engine.boiler is not None else None
        _curve(field, notch, engine, limit)
        labels.avoid(field.on(notch.efforts()))
    _name(field, [(notch.efforts()[-1], notch.name) for notch in notches])
    fed = [place for place, _ in _fed(engine, notches)]
    if len(fed) > 1:
        field.curve(fed, "axis")
        labels.avoid(field.on(fed))
    marked = [*_starting(drawn, engine), *_fed(engine, notches)]
    for place, says in marked:
        field.cross(*place)
        if says:
            labels.put(field.place(*place), says)
    v = engine.speed(drawn.given.speed)
    own = [point for notch in notches if notch.name == drawn.notch for point in notch.efforts()]
    for speed, effort in own:
        if math.isclose(speed, v):
            field.paper.circle(field.place(speed, effort), 4.5, "solid")
            labels.put(field.place(speed, effort), f"running, {effort:.1f} kN")


_Mark = tuple[tuple[float, float], str]


def _starting(drawn: GearDrawn, engine: Engine) -> Iterator[_Mark]:
    """Speed [km/h] and effort [kN] of starting, by its sheet."""
    turns, effort = drawn.on_sheet(_ADHESION, "n"), drawn.on_sheet(_ADHESION, "F")
    if turns is not None and effort is not None:
        yield (engine.speed(turns), effort / 1e3), f"starting, {effort / 1e3:.1f} kN"


def _fed(engine: Engine, notches: list[Notch]) -> Iterator[_Mark]:
    """Speed and effort of each notch at which it takes what the boiler makes, by speed; the first has the words."""
    says = f"boiler, {engine.boiler:.2f} kg/s" if engine.boiler is not None else ""
    found = [notch.limit(engine.boiler) for notch in notches if engine.boiler is not None]
    for place in sorted(one for one in found if one is not None):
        yield place, says
        says = ""


def _name(field: Field, ends: list[tuple[tuple[float, float], str]]) -> None:
    """The name of each notch at the end of its line; where two lines end close together the upper name is raised."""
    above = math.inf
    for end, name in sorted(ends):
        x, y = field.place(*end)
        above = min(y + 4, above - _LINE)
        field.paper.text((x + 8, above), f"notch {name}", "figure")


def _curve(field: Field, notch: Notch, engine: Engine, limit: tuple[float, float] | None) -> None:
    points, boiler = notch.efforts(), engine.boiler
    if boiler is None:
        field.curve(points)
    else:
        fed = [(v, F) for v, F, m, _ in notch.points if m <= boiler]
        beyond = [(v, F) for v, F, m, _ in notch.points if m > boiler]
        at = [limit] if limit else []
        for part, ink in (([*fed, *at], "edge"), ([*at, *beyond], "edge dashed")):
            if len(part) > 1:
                field.curve(part, ink)
    for point in points:
        field.paper.circle(field.place(*point), 2.2, "solid")


def _rates(field: Field, notches: list[Notch]) -> None:
    field.frame("speed of the engine, km/h", "steam, kg/kWh")
    for notch in notches:
        field.curve(notch.rates())
        for point in notch.rates():
            field.paper.circle(field.place(*point), 2.2, "solid")
    _name(field, [(notch.rates()[-1], notch.name) for notch in notches])


def _rows(drawn: GearDrawn, engine: Engine, notches: list[Notch]) -> Iterator[tuple[str, ...]]:
    for notch in notches:
        for v, F, m, rate in notch.points:
            yield notch.name, f"{v:.1f} km/h", f"{F:.1f} kN", f"{m:.2f} kg/s", f"{rate:.2f} kg/kWh"
    if engine.adhesion is not None:
        yield f"adhesion, {_ADHESION}", "", f"{engine.adhesion / 1e3:.1f} kN", "", ""
    if engine.boiler is not None:
        yield f"boiler, {_BOILER}", "", "", f"{shown(round(engine.boiler, 3))} kg/s", ""
    effort = drawn.on_sheet(_ADHESION, "F")
    if effort is not None:
        yield f"starting, {_ADHESION}", "", f"{effort / 1e3:.1f} kN", "", ""
