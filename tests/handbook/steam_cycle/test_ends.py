"""An end, its steam and its walls: volumes, and what is refused."""

from __future__ import annotations

import math

import pytest

from speclint.errors import OutOfRange, replace
from speclint.handbook.steam_cycle import Running, Supply, Walls
from tests.handbook.steam_cycle.engine import cylinder_end, running


def test_volume_and_surface_over_the_stroke() -> None:
    """By hand: 0.19635 m² · 0.66 m = 129.59 l, 8.5 % of it at dead centre; π · 0.5 · 0.66 = 1.0367 m² of bore."""
    end = cylinder_end(surface=0.6)
    assert end.swept == pytest.approx(0.12959, rel=1e-4)
    assert end.clearance_share == pytest.approx(0.085)
    assert end.volume(0.0) == pytest.approx(0.085 * 0.12959, rel=1e-4)
    assert end.volume(math.pi) == pytest.approx(1.085 * 0.12959, rel=1e-4)
    assert end.surface(0.0) == 0.6
    assert end.surface(math.pi) == pytest.approx(1.6367, rel=1e-4)


def test_the_rod_takes_its_area() -> None:
    assert replace(cylinder_end(), rod=0.09).area == pytest.approx(math.pi / 4 * (0.25 - 0.0081))


def test_supplies_of_steam() -> None:
    """Steam tables: 2777.1 kJ/kg dry saturated at 10 bar, 762.7 of it the water's; 3051.7 at 300 °C."""
    assert Supply.saturated(10e5, 1.0, 1e5).enthalpy == pytest.approx(2777.1e3, rel=1e-4)
    assert Supply.saturated(10e5, 0.9, 1e5).enthalpy == pytest.approx(
        0.9 * 2777.1e3 + 0.1 * 762.7e3, rel=1e-4
    )
    assert Supply.superheated(10e5, 573.15, 1e5).enthalpy == pytest.approx(3051.7e3, rel=1e-4)


def test_what_is_refused() -> None:
    end = cylinder_end()
    with pytest.raises(OutOfRange, match="thinner than the bore"):
        replace(end, rod=0.5)
    with pytest.raises(OutOfRange, match=r"volume of 128\.3 cm³ is below 0\.1 %"):  # of 129 590
        cylinder_end(share=0.00099)
    assert cylinder_end(share=0.00101).clearance_share == pytest.approx(0.00101)
    with pytest.raises(OutOfRange, match="not stated"):
        end.surface(0.0)
    with pytest.raises(OutOfRange, match="exhaust's 1 bar must lie below the chest's 1 bar"):
        Supply(1e5, 2.7e6, 1e5)
    with pytest.raises(OutOfRange, match=r"at 126\.9 °C and 10 bar there is no steam"):
        Supply.superheated(10e5, 400.0, 1e5)
    with pytest.raises(OutOfRange, match=r"outside 0\.8 to 1"):
        Supply.saturated(10e5, 0.79, 1e5)
    assert Supply.saturated(10e5, 0.8, 1e5).chest == 10e5
    with pytest.raises(OutOfRange, match=r"outside 0\.8 to 1"):
        Supply.saturated(10e5, 1.01, 1e5)
    with pytest.raises(OutOfRange, match="must not be below 0"):
        Walls(-1.0, 400.0)
    with pytest.raises(OutOfRange, match="above 0 K"):
        Walls(1.0, 0.0)
    with pytest.raises(OutOfRange, match="must turn"):
        Running(running().supply, 0.0)
