"""The jet of a nozzle: what is asked of the tables of steam, by steam that is made simple here.

Steam of density ρ = p/(0.1 h): at 1 bar and 1 MJ/kg 1 kg/m³, at h less, denser in the measure.
"""

from __future__ import annotations

import math

import pytest

from speclint.errors import OutOfRange
from speclint.facts import jets
from speclint.facts.jets import jet_speed, pressure_before_nozzle

H = 1e6


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[float]:
    """The enthalpies at which the speed of sound is asked for; it is 300 m/s."""
    found: list[float] = []

    def temperature(*, p: float, h: float) -> float:
        assert p == 1e5
        found.append(h)
        return 400.0

    monkeypatch.setattr(jets, "temperature_at_enthalpy", temperature)
    monkeypatch.setattr(
        jets, "steam_speed_of_sound", lambda *, p, T: 300.0 if (p, T) == (1e5, 400.0) else 0.0
    )
    monkeypatch.setattr(jets, "density_at_enthalpy", lambda *, p, h: p / (0.1 * h))
    return found


def test_the_jet_leaves_with_what_its_enthalpy_loses(asked: list[float]) -> None:
    """v = 2 (1 − v²/2e6)/(0.8 × 0.0125) = 200 − 1e-4 v²: v = (√(1 + 4 × 1e-4 × 200) − 1)/2e-4 = 196.15 m/s."""
    v = jet_speed(m=2.0, C=0.8, A=0.0125, h=H, p_2=1e5)
    assert v == pytest.approx((math.sqrt(1.08) - 1) / 2e-4, rel=1e-9)
    assert asked == [pytest.approx(H - v**2 / 2)]


@pytest.mark.parametrize(("m", "chokes"), [(3.14, False), (3.15, True)])
def test_a_jet_as_fast_as_sound_chokes(asked: list[float], m: float, chokes: bool) -> None:
    """v = 100 m (1 − v²/2e6): 300 m/s are those of 300 = 100 m × 0.955, m = 3.1414 kg/s."""
    del asked
    if chokes:
        with pytest.raises(OutOfRange, match="faster than sound"):
            jet_speed(m=m, C=1.0, A=0.01, h=H, p_2=1e5)
    else:
        assert 299 < jet_speed(m=m, C=1.0, A=0.01, h=H, p_2=1e5) < 300


@pytest.mark.parametrize(
    ("C", "A", "told"),
    [
        (0.0, 0.01, "discharge coefficient 0 is not"),
        (1.01, 0.01, "discharge coefficient 1.01 is not"),
        (1.0, 0.0, "the opening of the nozzle"),
    ],
)
def test_what_is_no_nozzle_is_refused(asked: list[float], C: float, A: float, told: str) -> None:
    del asked
    with pytest.raises(OutOfRange, match=told):
        jet_speed(m=1.0, C=C, A=A, h=H, p_2=1e5)


def test_no_steam_is_faster_than_its_enthalpy(asked: list[float]) -> None:
    """1000 m/s have v² = h; at 1010 m/s nothing would be left to be steam."""
    del asked
    with pytest.raises(OutOfRange, match="no steam leaves at 1010 m/s"):
        jet_speed(m=10.1, C=1.0, A=0.01, h=H, p_2=1e5)


def test_the_pressure_before_a_nozzle_has_the_entropy_of_the_jet(
    asked: list[float], monkeypatch: pytest.MonkeyPatch
) -> None:
    """s = h/1000 − p/200: the jet of v has (h − v²/2)/1000 − 500, so that p = 1e5 + v²/10."""
    del asked
    monkeypatch.setattr(jets, "entropy_at_enthalpy", lambda *, p, h: h / 1000 - p / 200)
    numbers = {"m": 2.0, "C": 0.8, "A": 0.0125, "h": H, "p_2": 1e5}
    v = jet_speed(**numbers)
    assert pressure_before_nozzle(**numbers) == pytest.approx(1e5 + v**2 / 10, rel=1e-9)
