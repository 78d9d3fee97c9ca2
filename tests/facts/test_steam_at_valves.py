"""The pressure beside a valve and the values of a load case, from cycles made here: which result of which corner.

A cycle is made of the numbers that are asked of it; no steam is worked.
"""

from __future__ import annotations

import math
from inspect import unwrap
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.errors import NOWHERE, OutOfRange, replace
from speclint.facts import cylinder_cycles, steam_at_valves, values_from_events
from speclint.facts.cylinder_cycles import CylinderBand, EndGiven
from speclint.facts.steam_at_valves import SteamAtValve, pressure_at_valve
from speclint.handbook.valve_events import End
from speclint.rules import NotAssessed, NotCovered

EVENTS = SimpleNamespace(admission=math.radians(350), cut_off=0.5, release=2.0, compression=math.radians(280))


def cycle(of: float, belt: float = 1e5, chest: float = 16e5) -> Any:
    """A cycle of which each result is some multiple of a number, so that it can be told which one was asked."""
    at = SimpleNamespace
    return at(
        end=at(events=EVENTS),
        running=at(supply=at(belt=belt, chest=chest)),
        compression_peak=1 * of,
        greatest_pressure=(2 * of, 0.4),
        at_release=at(pressure=3 * of, temperature=30 * of),
        at_compression=at(pressure=4 * of),
        at_admission=at(temperature=50 * of),
        least_pressure=(5 * of, 1.5),
        mean_temperature=60 * of,
        least_between=lambda start, end: (of * 1000 + start * 100 + end, 0.25),
    )


def both(front: float, back: float, **more: Any) -> Any:
    made: Any = SimpleNamespace(front=cycle(front), back=cycle(back), **more)
    return made


def band(*cycles: Any) -> CylinderBand:
    return CylinderBand(cycles[0], cycles[1:])


def at_valve(monkeypatch: pytest.MonkeyPatch, side: End, event: str) -> Any:
    """As drawn 100 in front and 200 at the back; the corners are 90 and 210, 120 and 190."""
    cycles = band(both(100.0, 200.0), both(90.0, 210.0), both(120.0, 190.0))
    monkeypatch.setattr(steam_at_valves, "cycles_to_safety_valves", lambda _: cycles)
    return pressure_at_valve(SteamAtValve(SimpleNamespace(), side, "gear, notch 35"), event)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("side", "limits"), [(End.FRONT, (100.0, 90.0, 120.0)), (End.BACK, (200.0, 190.0, 210.0))]
)
@pytest.mark.parametrize(
    ("event", "times"), [("compression", 1), ("release", 3), ("shutting", 4), ("least", 5)]
)
def test_the_pressure_beside_a_valve_is_that_of_its_end(
    monkeypatch: pytest.MonkeyPatch, side: End, limits: tuple[float, float, float], event: str, times: int
) -> None:
    found = at_valve(monkeypatch, side, event)
    assert (found.nominal, found.low, found.high) == tuple(times * one for one in limits)
    assert found.unit == "Pa"
    assert found.worked


def test_while_a_valve_is_shut_the_least_is_that_between_its_events(monkeypatch: pytest.MonkeyPatch) -> None:
    """The inlet from cut-off to the next admission, the exhaust from the compression before to release."""
    turn = 2 * math.pi
    inlet = at_valve(monkeypatch, End.FRONT, "least, inlet shut")
    assert inlet.nominal == pytest.approx(100_000 + 0.5 * 100 + EVENTS.admission + turn)
    exhaust = at_valve(monkeypatch, End.FRONT, "least, exhaust shut")
    assert exhaust.nominal == pytest.approx(100_000 + (EVENTS.compression - turn) * 100 + 2.0)


@pytest.mark.parametrize(
    ("event", "says"),
    [
        ("compression", "greatest pressure before admission, absolute, at 350° of its end's crank"),
        ("shutting", "pressure as the exhaust shuts, absolute, at 280° of its end's crank"),
        ("release", "pressure at release, absolute, at 115° of its end's crank"),  # 2 rad
        ("highest", "highest pressure of compression, absolute, at 350° of its end's crank"),
    ],
)
def test_it_says_which_pressure_it_is_and_where(
    monkeypatch: pytest.MonkeyPatch, event: str, says: str
) -> None:
    found = at_valve(monkeypatch, End.BACK, event)
    assert found.what == f"{says}, calculated: gear, notch 35, back"


# Which corners are worked


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[tuple[object, ...]]:
    """The cycles that are worked, each by chest, state, least volume and walls."""
    found: list[tuple[object, ...]] = []

    def work(_: object, *how: object) -> object:
        found.append(how)
        return how

    monkeypatch.setattr(cylinder_cycles, "_both", work)
    monkeypatch.setattr(cylinder_cycles, "_nominal", lambda _: ("as drawn", "walls"))
    return found


def given(chest: tuple[float, float, float], lifting: float = 0.0, coefficient: float = 0.0) -> Any:
    return SimpleNamespace(chest=chest, lifting=lifting, coefficient=coefficient)


VOLUME = (16.0, "hot", True, "walls")
STATES = [(16.0, "cold", False, "walls"), (16.0, "worn", False, "walls")]
CHESTS = [(15.0, "hot", False, "walls"), (17.0, "hot", False, "walls")]


def test_each_corner_is_worked_once(asked: list[tuple[object, ...]]) -> None:
    """A chest without limits adds none; the least volume is a corner all the same."""
    found: Any = unwrap(cylinder_cycles.worked_cycles)(given((16.0, 15.0, 17.0)))
    assert asked == [*CHESTS, VOLUME, *STATES]
    assert (found.nominal, found.corners) == ("as drawn", tuple(asked))
    asked.clear()
    unwrap(cylinder_cycles.worked_cycles)(given((16.0, 16.0, 16.0)))
    assert asked == [VOLUME, *STATES]
    asked.clear()
    unwrap(cylinder_cycles.worked_cycles)(given((16.0, 16.0, 17.0)))
    assert asked == [CHESTS[1], VOLUME, *STATES]


@pytest.mark.parametrize(("lifting", "more"), [(17.0, 0), (17.1, 1)])
def test_the_safety_valves_are_a_corner_beyond_the_chest(
    asked: list[tuple[object, ...]], monkeypatch: pytest.MonkeyPatch, lifting: float, more: int
) -> None:
    known = CylinderBand("as drawn", ("corner",))  # type: ignore[arg-type]  # words in place of cycles
    monkeypatch.setattr(cylinder_cycles, "worked_cycles", lambda _: known)
    found: Any = unwrap(cylinder_cycles.cycles_to_safety_valves)(given((16.0, 15.0, 17.0), lifting))
    assert asked == [(lifting, "hot", False, "walls")] * more
    assert found.nominal == "as drawn"
    assert found.corners == ("corner", *asked)


def end(name: str) -> Any:
    made: Any = SimpleNamespace(at=lambda state, least=False: (name, state, least))
    return made


def test_a_cycle_is_that_of_both_ends_with_their_walls(monkeypatch: pytest.MonkeyPatch) -> None:
    """Without heat to the walls none are balanced; with it each end has its own, as drawn and hot."""
    monkeypatch.setattr(cylinder_cycles, "cycle_of", lambda of, running: (of, running))
    monkeypatch.setattr(cylinder_cycles, "_running", lambda _, chest, wall: (chest, wall))
    monkeypatch.setattr(cylinder_cycles, "CylinderCycle", lambda front, back: (front, back))

    def balanced(of: object, running: object, coefficient: float) -> Any:
        return SimpleNamespace(of=of, running=SimpleNamespace(walls=(of, running, coefficient)))

    monkeypatch.setattr(cylinder_cycles, "balanced_cycle", balanced)
    cold = given((16.0, 15.0, 17.0))
    cold.front, cold.back = end("front"), end("back")
    nominal: Any
    walls: Any
    nominal, walls = unwrap(cylinder_cycles._nominal)(cold)
    assert nominal == ((("front", "hot", False), (16.0, None)), (("back", "hot", False), (16.0, None)))
    assert walls == (None, None)
    least: Any = cylinder_cycles._both(cold, 15.0, "worn", True, ("w1", "w2"))  # type: ignore[arg-type]
    assert least == ((("front", "worn", True), (15.0, "w1")), (("back", "worn", True), (15.0, "w2")))
    warm = given((16.0, 15.0, 17.0), coefficient=400.0)
    warm.front, warm.back = end("front"), end("back")
    nominal, walls = unwrap(cylinder_cycles._nominal)(warm)
    front, back = nominal
    assert (front.of, back.of) == (("front", "hot", False), ("back", "hot", False))
    assert walls == (
        (("front", "hot", False), (16.0, None), 400.0),
        (("back", "hot", False), (16.0, None), 400.0),
    )


def test_an_end_has_its_volume_as_drawn_or_at_its_least(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cylinder_cycles, "CylinderEnd", lambda *given: given)
    crank, inlet, exhaust = (SimpleNamespace(at=lambda state, name=name: (name, state)) for name in "cie")
    one: Any = EndGiven(End.BACK, crank, 0.5, 0.09, (2.0, 1.0), inlet, exhaust, 1.5)  # type: ignore[arg-type]
    assert one.at("hot") == (End.BACK, crank, 0.5, 0.09, 2.0, ("i", "hot"), ("e", "hot"), 1.5)
    assert one.at("worn", least=True)[4:7] == (1.0, ("i", "worn"), ("e", "worn"))


def test_each_clearance_of_a_valve_has_what_the_shaft_gives_way_as_it_shuts(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(cylinder_cycles, "passage_of", lambda *given: given)
    monkeypatch.setattr(cylinder_cycles, "ValveGiven", lambda *given: given)
    cam: Any = SimpleNamespace(
        clearances=SimpleNamespace(cold=6.0, hot=5.0, worn=4.5),
        shaft=SimpleNamespace(shuts=0.25),
        train=SimpleNamespace(valve="valve"),
        mark="if",
        cam="cam",
        foot=1.5,
        ratio=0.75,
    )
    sheet: Any = "sheet"
    found: Any = cylinder_cycles._valve_given(cam, sheet)
    assert found == ("cam", 1.5, 0.75, 6.25, 5.25, 4.75, ("valve", "if", "sheet"))


# The values of a load case


def value(monkeypatch: pytest.MonkeyPatch, key: str, *cycles: Any, lifting: Any = None) -> tuple[float, ...]:
    """Of the cycles of all corners; ``lifting`` is that with the safety valves."""
    monkeypatch.setattr(values_from_events, "worked_cycles", lambda _: band(*cycles))
    more = (lifting,) if lifting else ()
    monkeypatch.setattr(values_from_events, "cycles_to_safety_valves", lambda _: band(*cycles, *more))
    of: Any = None
    return values_from_events._RESULTS[key].band(of)


def test_a_temperature_is_the_mean_of_both_ends_within_the_least_and_the_greatest(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """What the safety valves let the chest rise to counts for pressures alone."""
    cycles = both(4.0, 6.0), both(3.0, 7.0), both(5.0, 8.0)
    for key, times in (
        ("cylinder_temperature", 60),
        ("admission_temperature", 50),
        ("release_temperature", 30),
    ):
        found = value(monkeypatch, key, *cycles, lifting=both(1.0, 99.0))
        assert found == (5.0 * times, 3.0 * times, 8.0 * times)


def test_the_flow_of_steam_has_no_error_but_its_corners(monkeypatch: pytest.MonkeyPatch) -> None:
    cycles = [both(1.0, 1.0, steam_flow=flow) for flow in (1.0, 0.9, 1.2)]
    found = value(monkeypatch, "steam_flow", *cycles, lifting=both(1.0, 1.0, steam_flow=9.0))
    assert found == (1.0, 0.9, 1.2)


def pressed(greatest: float, least: float = 2e5, peak: float = 1e5) -> Any:
    made = both(peak, peak / 2, greatest_pressure=greatest, least_pressure=least)
    for one in (made.front, made.back):
        one.greatest_pressure = (
            one.compression_peak,
            0.0,
        )  # below the chest: compression counts to admission
    return made


def test_the_greatest_pressure_counts_compression_within_its_error(monkeypatch: pytest.MonkeyPatch) -> None:
    """Belt 1 bar: a peak of 15 bar may be 1 + 1.1 × 14 = 16.4 bar, one of 10 bar 10.9; the safety valves count."""
    found = value(monkeypatch, "cylinder_pressure", pressed(16e5, peak=15e5), pressed(15e5))
    assert found == pytest.approx((16e5, 15e5, 16.4e5))
    found = value(monkeypatch, "cylinder_pressure", pressed(16e5, peak=10e5), lifting=pressed(18e5))
    assert found == pytest.approx((16e5, 16e5, 18e5))


def test_the_least_pressure_counts_expansion_below_the_exhaust_within_its_error(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Belt 1 bar: 0.5 bar may be 1 − 1.1 × 0.5 = 0.45 bar."""
    key = "least_cylinder_pressure"
    found = value(monkeypatch, key, pressed(16e5, 0.5e5), pressed(16e5, 0.8e5), lifting=pressed(16e5, 1.2e5))
    assert found == pytest.approx((0.5e5, 0.45e5, 1.2e5))


def test_the_exhaust_is_that_of_both_ends_at_the_belt(monkeypatch: pytest.MonkeyPatch) -> None:
    """Pressure of the belt and the enthalpy of what leaves, in that order."""
    state = lambda p, h: SimpleNamespace(temperature=p + h, dryness=p / h)  # noqa: E731 - two results of two numbers
    monkeypatch.setattr(values_from_events, "state_at_enthalpy", state)
    one = both(1.0, 1.0, exhaust_enthalpy=4e5)
    assert value(monkeypatch, "exhaust_temperature", one) == (5e5, 5e5, 5e5)
    assert value(monkeypatch, "exhaust_dryness", one) == (0.25, 0.25, 0.25)


def taken(monkeypatch: pytest.MonkeyPatch, key: str, *bands: Any) -> Any:
    """A value of several gears with their bands, and how each gear was asked."""
    asked: list[object] = []

    def of_gear(gear: Any, case: Any, _: Any, *, cold: bool) -> Any:
        asked.append((gear, case, cold))
        return gear, f"{gear} runs"

    def band_of(given: Any) -> Any:
        found = bands[int(given[-1])]
        if found is None:
            raise OutOfRange("not covered")
        return found

    how = replace(values_from_events._RESULTS[key])
    monkeypatch.setattr(type(how), "band", lambda _, given: band_of(given))
    monkeypatch.setattr(values_from_events, "_of_gear", of_gear)
    monkeypatch.setattr(
        values_from_events, "gears_beside", lambda part, _: [f"{part} {n}" for n in range(len(bands))]
    )
    part: Any = "gear"
    case: Any = "case"
    sheet: Any = SimpleNamespace(not_covered=NotCovered)
    return values_from_events.value_from_events(key, part, case, sheet), asked


def test_a_value_of_several_cylinders_has_the_whole_band(monkeypatch: pytest.MonkeyPatch) -> None:
    """The nominal of the first; pressures are absolute, and worked with the clearances hot."""
    found, asked = taken(monkeypatch, "cylinder_pressure", (5.0, 4.0, 6.0), (7.0, 3.0, 8.0))
    assert (found.nominal, found.low, found.high) == (5.0, 3.0, 8.0)
    assert (found.dimension, found.unit, found.datum) == ("fluid pressure", "bar absolute", "absolute")
    assert found.text == "calculated: gear 0 runs; gear 1 runs"
    assert found.provenance == "calculated"
    assert asked == [("gear 0", "case", False), ("gear 1", "case", False)]


@pytest.mark.parametrize(
    ("key", "cold"),
    [
        ("steam_flow", False),
        ("exhaust_dryness", True),
        ("cylinder_temperature", True),
        ("exhaust_temperature", True),
    ],
)
def test_temperatures_and_dryness_are_worked_cold(
    monkeypatch: pytest.MonkeyPatch, key: str, cold: bool
) -> None:
    found, asked = taken(monkeypatch, key, (0.9, 0.8, 1.0))
    assert asked == [("gear 0", "case", cold)]
    assert found.datum == ""


def test_a_cycle_that_is_not_covered_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(NotCovered, match="not covered"):
        taken(monkeypatch, "steam_flow", (5.0, 4.0, 6.0), None)


def test_the_notch_of_a_gear_must_be_one_in_which_it_runs(monkeypatch: pytest.MonkeyPatch) -> None:
    """And it is said with its speed, in turns a minute."""
    asked: list[object] = []

    def given(gear: Any, notch: str, *_: Any) -> Any:
        asked.append((gear.cold, notch))
        return SimpleNamespace(speed=2.5)

    def at_work(*_: Any, cold: bool) -> Any:
        return SimpleNamespace(running=("35", "mid"), cold=cold)

    monkeypatch.setattr(values_from_events, "GearAtWork", at_work)
    monkeypatch.setattr(values_from_events, "cylinder_given", given)
    gear: Any = SimpleNamespace(id="gear")

    def worked(notch: str, *, cold: bool) -> Any:
        case: Any = SimpleNamespace(notch=SimpleNamespace(where=NOWHERE))
        sheet: Any = SimpleNamespace(read=lambda *_: notch, not_assessed=NotAssessed)
        return values_from_events._of_gear(gear, case, sheet, cold=cold)

    assert worked("35", cold=True)[1] == "gear, notch 35, 150 rev/min, both ends"
    assert asked == [(True, "35")]
    with pytest.raises(NotAssessed, match="gear has no notch '40' in which the engine runs"):
        worked("40", cold=False)
