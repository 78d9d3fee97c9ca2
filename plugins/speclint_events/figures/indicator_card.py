"""The indicator diagrams of both ends on one card, over the theoretical ones, with their mean effective pressures."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import partial

from speclint import Assessment, OutOfRange
from speclint.facts import cycles_as_drawn
from speclint.handbook.steam_cycle import Cycle, CylinderCycle, indicator_card, theoretical_card
from speclint.handbook.valve_events import End
from speclint.reports import Figure, Labels, Paper, Words, shown, words
from speclint_events.figures.fields import WIDTH, Field, top_of
from speclint_events.figures.gears import GearDrawn, gears_drawn, share_at

_STEAM, _FACTOR = "cycle.steam-rate", "diagram factor"
_AIR = 101325.0  # Pa, the standard atmosphere: the line that an indicator draws with its cock open
_POINTS = 180
_INK = {End.FRONT: "edge", End.BACK: "edge dashed"}


def indicator_cards(assessment: Assessment) -> Iterator[Figure]:
    """A card of both ends in the notch of the load case."""
    for drawn in gears_drawn(assessment):
        try:
            both = cycles_as_drawn(drawn.given)
        except OutOfRange:
            continue  # the checks of the cycle say so
        yield _figure(drawn, both)


def _figure(drawn: GearDrawn, both: CylinderCycle) -> Figure:
    name, rows = f"indicator-{drawn.name}", tuple(_rows(drawn))
    about = "; ".join(f"{what}: {size}" for what, size in rows)
    paper = Paper(name, f"Indicator diagrams of {drawn.name}", about, WIDTH, 520.0)
    supply = both.front.running.supply
    ends = (both.front, both.back)
    before, after = (cycle.end.clearance_share for cycle in ends)
    highest = top_of([supply.chest, both.greatest_pressure], 1.08) / 1e5
    field = Field(paper, (70.0, 26.0), (660.0, 390.0), (-before, 1 + after), (0.0, highest))
    field.frame("share of the stroke from the front dead centre", "pressure, {bar} absolute", marks=_TENTHS)
    labels = field.labels()
    _lines(field, supply.chest, supply.belt, labels)
    for cycle in ends:
        _theoretical(field, cycle)
        labels.avoid(field.on(_diagram(cycle)))
    for cycle in ends:
        field.curve(_diagram(cycle), _INK[cycle.end.end])
        _events(field, drawn, cycle, labels)
    for cycle in ends:
        _name(field, cycle, labels)
    for number, cycle in enumerate(ends):
        paper.text((70.0, 480.0 + 20 * number), _beneath(drawn, cycle.end.end.value), "figure")
    return Figure.of(
        paper,
        drawn.name,
        f"{drawn.of}: indicator diagrams of both ends",
        "As drawn, clearances hot: the front's from the left, the back's, dashed, from the right, as on one card of an "
        "indicator. Chain lines are the theoretical diagrams with the same events; the strips beyond the dead "
        "centres are the clearance volumes. Crosses: admission, cut-off, release, compression.",
        rows,
        ("what", "size"),
    )


_TENTHS = [n / 10 for n in range(11)]


def _lines(field: Field, chest: float, belt: float, labels: Labels) -> None:
    for value, says in ((chest, "chest"), (belt, "belt"), (_AIR, "atmosphere")):
        x, y = field.level(value / 1e5, "fine")
        labels.avoid([(field.corner[0], y), (x, y)])
        field.paper.text((x, y + (14 if says == "atmosphere" else -4)), says, "quiet", "end")
    for share in (0.0, 1.0):
        field.upright(share)


def _across(cycle: Cycle, share: float) -> float:
    """A share of an end's stroke from its dead centre, on the card."""
    return share if cycle.end.end is End.FRONT else 1 - share


def _theoretical(field: Field, cycle: Cycle) -> None:
    card = theoretical_card(cycle, 60)
    field.curve([(_across(cycle, share), p / 1e5) for share, p in card], "axis")


def _diagram(cycle: Cycle) -> list[tuple[float, float]]:
    """Places on the card and pressures [bar] of a revolution."""
    return [(_across(cycle, share), p / 1e5) for share, p in thinned(indicator_card(cycle))]


def _events(field: Field, drawn: GearDrawn, cycle: Cycle, labels: Labels) -> None:
    """A cross at each event, with the share of the stroke."""
    for event in ("cut_off", "admission", "release", "compression"):
        share, pressure = at_angle(cycle, getattr(cycle.end.events, event))
        place = _across(cycle, share), pressure / 1e5
        field.cross(*place)
        share_of = drawn.again(partial(share_at, drawn.notch, cycle.end.end.value, event))
        labels.put(field.place(*place), words("{} %", shown(share_of, "%", 1)))


def _name(field: Field, cycle: Cycle, labels: Labels) -> None:
    """The name of the end on its line of expansion."""
    angle = cycle.end.crank.angle(cycle.end.end, _NAMED)
    share, pressure = at_angle(cycle, angle)
    labels.put(field.place(_across(cycle, share), pressure / 1e5), cycle.end.end.value)


#: The share of the stroke at which the name of an end stands.
_NAMED = 0.6


def at_angle(cycle: Cycle, angle: float) -> tuple[float, float]:
    """Share of the stroke and pressure [Pa absolute] of the cycle at a crank angle of its end."""
    return cycle.end.crank.share(cycle.end.end, angle), cycle.pressure(angle)


def thinned(card: tuple[tuple[float, float], ...], most: int = _POINTS) -> list[tuple[float, float]]:
    """A card with no more points than a line of this width shows; both its ends are kept."""
    step = math.ceil((len(card) - 1) / (most - 1))
    return [*card[:-1:step], card[-1]]


def of_cycle(side: str, what: str, drawn: GearDrawn) -> float:
    """A number of the cycle of an end as drawn, by its name."""
    both = cycles_as_drawn(drawn.given)
    return float(getattr(both.front if side == "front" else both.back, what))


def pressure_at(side: str, event: str, drawn: GearDrawn) -> float:
    """The pressure in an end at an event."""
    both = cycles_as_drawn(drawn.given)
    cycle = both.front if side == "front" else both.back
    return cycle.pressure(getattr(cycle.end.events, event))


def clearance_of(side: str, drawn: GearDrawn) -> float:
    """The clearance volume of an end as a share of its stroke."""
    return drawn.end(drawn.notch, side).clearance_share


def supplied(what: str, drawn: GearDrawn) -> float:
    """The pressure in the chest or in the belt."""
    return float(getattr(cycles_as_drawn(drawn.given).front.running.supply, what))


def _beneath(drawn: GearDrawn, side: str) -> Words:
    mean, factor = (
        drawn.again(partial(of_cycle, side, what)) for what in ("mean_pressure", "diagram_factor")
    )
    return words(
        f"{side}: mean effective pressure {{}} {{bar}}, {_FACTOR} {{}}, clearance volume {{}} %",
        shown(mean, "bar", 2),
        shown(factor, "", 2),
        shown(drawn.again(partial(clearance_of, side)), "%", 1),
    )


def _rows(drawn: GearDrawn) -> Iterator[tuple[str, str]]:
    for side in ("front", "back"):
        mean, factor = (
            drawn.again(partial(of_cycle, side, what)) for what in ("mean_pressure", "diagram_factor")
        )
        yield f"mean effective pressure, {side}, as drawn", words("{} {bar}", shown(mean, "bar", 2))
        sheets = drawn.quantity(_STEAM, f"p_m{side[0]}"), drawn.quantity(_STEAM, f"k_{side[0]}")
        if sheets[0] is not None and sheets[1] is not None:
            says = words(f"{{}} {{bar}}, {_FACTOR} {{}}", shown(sheets[0], "bar", 2), shown(sheets[1], "", 3))
            yield f"on the sheet of {_STEAM}, {side}", says
        yield f"{_FACTOR}, {side}, as drawn", words("{}", shown(factor, "", 3))
        for event in ("admission", "cut_off", "release", "compression"):
            left = "" if event in ("cut_off", "release") else " left"
            pressure = drawn.again(partial(pressure_at, side, event))
            share = drawn.again(partial(share_at, drawn.notch, side, event))
            says = words(
                f"{{}} {{bar}} absolute, {{}} % of the stroke{left}",
                shown(pressure, "bar", 2),
                shown(share, "%", 1),
            )
            yield f"{event.replace('_', '-')}, {side}", says
    chest, belt = (shown(drawn.again(partial(supplied, what)), "bar", 2) for what in ("chest", "belt"))
    yield "chest and belt", words("{} {bar} and {} {bar} absolute", chest, belt)
