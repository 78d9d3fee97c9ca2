"""What the cycle of a cylinder rests on, of the engine of the worked cases: no cycle is worked here.

500 by 660 mm, a rod of 90 mm at the back, 8 mm and 9.5 dm³ of clearance: 11.0708 dm³ in front and 11.0199 at the back.
15.2 bar gauge are 16.21325 bar, at 180 rev/min, which is 3 a second.
"""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import pytest

from speclint.facts import CylinderBand, GearAtWork, cylinder_cycles, cylinder_given
from speclint.handbook.valve_events import Crank, End
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, opened
from tests.plugins.events.gear import files
from tests.plugins.known_metals import WITH_METALS


def given(folder: Path, *changes: tuple[str, str, str], notch: str = "35", cold: bool = False) -> Any:
    on = drawn(folder, *changes)
    case = on["duty"].cases["running"]
    return cylinder_given(GearAtWork(on["gear"], case, on.sheet, cold=cold), notch, case, on.sheet)


def drawn(folder: Path, *changes: tuple[str, str, str]) -> Bench:
    return opened(folder, {**files(*changes), "speclint.toml": WITH_METALS}, "gear")


def test_sizes_steam_and_speed_of_a_cylinder(tmp_path: Path) -> None:
    found = given(tmp_path)
    assert (found.front.side, found.back.side) == (End.FRONT, End.BACK)
    assert found.front.crank == found.back.crank == Crank(0.33, 1.9)
    assert (found.front.bore, found.back.bore) == (0.5, 0.5)
    assert (found.front.rod, found.back.rod) == (0.0, 0.09)
    assert found.front.clearance == pytest.approx((11.070796e-3,) * 2, rel=1e-6)
    assert found.back.clearance == pytest.approx((11.019903e-3,) * 2, rel=1e-6)
    assert found.chest == pytest.approx((16.21325e5,) * 3)
    assert found.belt == pytest.approx(1.36325e5)
    assert found.temperature == pytest.approx(663.15)
    assert found.speed == pytest.approx(3.0)
    assert (found.coefficient, found.front.surface, found.back.surface) == (0.0, None, None)
    assert found.lifting == pytest.approx(16.21325e5)


@pytest.mark.parametrize(("stated", "least"), [('clearance = "8 mm ±0.5"', 7.5e-3), ("", 8e-3)])
def test_the_least_clearance_is_that_stated_where_it_is(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, stated: str, least: float
) -> None:
    """π 500²/4 times 8 mm by the drawing, and its passage; where none is stated by the drawing alone."""
    monkeypatch.setattr(cylinder_cycles, "cold_clearance", lambda *_: 8e-3)
    side = 'side = "front"\n'
    found = given(tmp_path, ("block.toml", f'{side}clearance = "8 mm"', side + stated)).front.clearance
    assert found == pytest.approx([9.5e-3 + math.pi / 4 * 0.25 * c for c in (8e-3, least)])


def test_clearances_of_the_tappets_cold_hot_and_worn(tmp_path: Path) -> None:
    """0.6 mm, 0.5 and 0.45 by the strains of the known steel; on a cold engine all alike."""
    found = given(tmp_path)
    for valve in (found.front.inlet, found.front.exhaust, found.back.inlet, found.back.exhaust):
        assert [1e3 * one for one in (valve.cold, valve.hot, valve.worn)] == pytest.approx(
            [0.6, 0.5, 0.45], abs=1e-4
        )
        assert valve.ratio == 1.0
    (tmp_path / "cold").mkdir()
    cold = given(tmp_path / "cold", cold=True).front.inlet
    assert [1e3 * one for one in (cold.cold, cold.hot, cold.worn)] == pytest.approx([0.6, 0.6, 0.6])


def test_a_valve_has_the_clearance_of_a_state(tmp_path: Path) -> None:
    found = given(tmp_path).front
    assert found.inlet.at("worn").train.clearance == found.inlet.worn
    assert found.inlet.at("cold").train.clearance == found.inlet.cold
    end = found.at("hot")
    assert (end.bore, end.clearance) == (0.5, found.clearance[0])
    assert end.inlet.train.clearance == found.inlet.hot


CHEST = 'live_pressure = "15.2 bar gauge"\nexhaust_pressure = "0.35 bar gauge"\nlive_temperature = "390 °C"\n'
CHEST += 'exhaust_temperature = { from = "events" }\nrotational_speed = "180 rev/min"\n'


def of_running(old: str, new: str) -> tuple[str, str, str]:
    assert old in CHEST
    return "duty.toml", CHEST, CHEST.replace(old, new)


def test_limits_of_the_chest_and_its_safety_valves(tmp_path: Path) -> None:
    limits = CHEST.replace('"15.2 bar gauge"', '"15.2 bar gauge ±0.2"')
    limits += 'safety_valve_pressure = "16.5 bar gauge ±0.3"\n'
    found = given(tmp_path, ("duty.toml", CHEST, limits))
    assert found.chest == pytest.approx((16.21325e5, 16.01325e5, 16.41325e5))
    assert found.lifting == pytest.approx(17.81325e5)


def test_absolute_pressures_are_taken_as_they_are(tmp_path: Path) -> None:
    found = given(tmp_path, of_running('"0.35 bar gauge"', '"1.35 bar absolute"'))
    assert found.belt == pytest.approx(1.35e5)


def test_heat_to_the_walls_needs_their_surface(tmp_path: Path) -> None:
    walls = ("duty.toml", CHEST, CHEST + 'wall_coefficient = "400 W/(m²·K)"\n')
    with pytest.raises(NotAssessed, match="clearance_surface is not stated"):
        given(tmp_path, walls)
    (tmp_path / "a").mkdir()
    side = 'side = "{}"\nclearance = "8 mm"\n'
    surfaces = [
        ("block.toml", side.format(name), side.format(name) + f'clearance_surface = "{area} m²"\n')
        for name, area in (("front", 1.5), ("back", 1.6))
    ]
    found = given(tmp_path / "a", walls, *surfaces)
    assert (found.coefficient, found.front.surface, found.back.surface) == pytest.approx((400.0, 1.5, 1.6))


def test_the_least_volume_is_at_the_least_clearance(tmp_path: Path) -> None:
    """7.5 mm: 9.5 + 196.3495 × 7.5 = 10.9726 dm³, and 9.4 dm³ of passages less 0.1."""
    side = 'side = "front"\nclearance = "8 mm"\npassage_volume = "9500 cm³"\n'
    limits = 'side = "front"\nclearance = "8 mm ±0.5"\npassage_volume = "9500 cm³ ±100"\n'
    found = given(tmp_path, ("block.toml", side, limits))
    assert found.front.clearance == pytest.approx((11.070796e-3, 9.4e-3 + 0.1963495 * 7.5e-3), rel=1e-6)
    assert found.front.at("hot", least=True).clearance == found.front.clearance[1]
    assert found.back.clearance[0] == found.back.clearance[1]


def test_a_band_is_that_of_all_states() -> None:
    band = CylinderBand(3.0, (1.0, 5.0, 2.0))  # type: ignore[arg-type]  # numbers in place of cycles
    assert band.of(lambda one: 2 * one) == (6.0, 2.0, 10.0)  # type: ignore[operator]
