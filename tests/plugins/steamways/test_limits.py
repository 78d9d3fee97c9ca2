"""The limits that the statements of the rules name, as a sheet takes them where the settings state none."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, limit, on_sheet
from tests.plugins.steamways import exhaust, way


@pytest.mark.parametrize(
    ("rule", "part", "symbol", "value"),
    [
        ("steamway.speed", "pocket", "v_max", 40),
        ("steamway.speed", "nozzle", "v_max", 80),
        ("steamway.speed", "pocket", "Ma_max", 0.3),
        ("steamway.speed", "pocket", "v_0", 30.48),  # 100 ft/s
        ("steamway.choked", "pocket", "C", 0.9),
        ("steamway.port-rule", "port", "k_0", 0.08),
        ("steamway.drifting", "breath", "κ", 1.4),
    ],
)
def test_limits_of_the_ways_of_steam(
    workshop: DesignFolder, rule: str, part: str, symbol: str, value: float
) -> None:
    check = workshop.write(way.files()).only(rule, part)
    assert on_sheet(check, symbol) == pytest.approx(value)


@pytest.mark.parametrize(
    ("rule", "part", "value"),
    [
        ("steamway.pressure-drop", "pocket", 0.05),
        ("steamway.pressure-drop", "nozzle", 0.10),
        ("steamway.area-continuity", "pocket", 1),
        ("steamway.choked", "pocket", 0.5),
        ("steamway.port-rule", "port", 0.08),
    ],
)
def test_what_the_ways_of_steam_are_held_to(
    workshop: DesignFolder, rule: str, part: str, value: float
) -> None:
    assert limit(workshop.write(way.files()).only(rule, part)) == pytest.approx(value)


@pytest.mark.parametrize(
    ("diameter", "outcome", "value"), [("260 mm", "finding", 0.85), ("140 mm", "conforms", 1.3)]
)
def test_the_momentum_of_the_jet_is_held_to_both_ends(
    workshop: DesignFolder, diameter: str, outcome: str, value: float
) -> None:
    """A wide nozzle has too little, a narrow one comes near too much: the jet is the faster the narrower it is."""
    check = workshop.write(way.files("nozzle", ("165 mm", diameter))).only("blast-pipe.lift")
    assert (check.outcome, limit(check)) == (outcome, value)


@pytest.mark.parametrize(
    ("symbol", "value"), [("x_a", 0.015), ("x_m", 0.03), ("m_1", 7.5 / 3600), ("ψ_1", 2)]
)
def test_limits_of_the_lost_work(workshop: DesignFolder, symbol: str, value: float) -> None:
    """1.5 and 3 % of the indicated power, by 7.5 kg of steam for each kilowatt-hour."""
    check = workshop.write(exhaust.files(("two walls", "single wall"))).only("heat.lost-work")
    assert on_sheet(check, symbol) == pytest.approx(value)
