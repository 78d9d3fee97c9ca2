"""block.warming-rate by hand: 40 mm of steel, λ 50 W/(m·K), c_p 500 J/(kg·K), 7850 kg/m³: a = 12.739 mm²/s.

E α/(1 − ν) = 206 GPa × 11.8e-6/0.69 = 3.52290 MPa/K at the bad sides.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import OutOfRange
from speclint.testing import DesignFolder, found, limit, on_sheet
from speclint_fabrication.formulae.warming import face_above_mean, shock_difference
from tests.plugins.fabrication.bench import bare, write

RULE = "block.warming-rate"
WARM = ('least_temperature = "0 °C"', 'least_temperature = "20 °C"')
FAST = 'warming_time = "60 min"'


def test_first_steam_by_hand(workshop: DesignFolder) -> None:
    """1.98665 bar condenses at 120 °C (IF97), Bi = 5000 × 0.04/50 = 4: 100/(1.5 + 0.8125 − 0.5 e⁻⁴) = 43.416 K.

    152.95 of 0.67 × 240 MPa.
    """
    check = write(workshop, WARM).only(RULE)
    assert check.outcome == "conforms"
    assert found(check) == pytest.approx(152.95e6, rel=1e-4)
    assert limit(check) == pytest.approx(160.8e6)


@pytest.mark.parametrize(("steam", "outcome"), [("2.31 bar", "conforms"), ("2.36 bar", "finding")])
def test_first_steam_may_be_so_hot(workshop: DesignFolder, steam: str, outcome: str) -> None:
    """160.8/1.5295 = 105.13 K above 20 °C; IF97: 2.321 bar boils at 125 °C and 2.393 bar at 126 °C."""
    check = write(workshop, WARM, duty=("1.98665 bar", steam)).only(RULE)
    assert check.outcome == outcome


@pytest.mark.parametrize(("coldest", "outcome"), [("15 °C", "conforms"), ("14 °C", "finding")])
def test_the_block_is_as_cold_as_it_may_stand(workshop: DesignFolder, coldest: str, outcome: str) -> None:
    """105/2.30328 × 3.5229 = 160.6 of 160.8 MPa from 15 °C, 106 K from 14 °C 162.1; from 20 °C it was 152.95."""
    check = write(workshop, (WARM[0], f'least_temperature = "{coldest}"')).only(RULE)
    assert check.outcome == outcome


def test_a_machined_plate_has_the_proof_stress_of_its_thickness_as_rolled(workshop: DesignFolder) -> None:
    """P355GH at 20 °C: 345 MPa to 40 mm, 335 to 60 (EN 10028-2:2009, table 3); the flange of 40 mm was 46."""
    steel = (
        'material = "known-plate"\nthickness = "40 mm"',
        'material = "plate-P355GH"\nthickness = "40 mm"',
    )
    check = write(workshop, steel, ('"0.040 m"', '"46 mm"')).only(RULE)
    assert limit(check) == pytest.approx(0.67 * 335e6)


@pytest.mark.parametrize(("time", "outcome"), [("205 s", "conforms"), ("204 s", "finding")])
def test_the_block_may_be_warmed_so_fast(workshop: DesignFolder, time: str, outcome: str) -> None:
    """0.3 × 240/3.5229 = 20.438 K ahead; × 3 a/t² = 0.48817 K/s: 100 K in 204.85 s."""
    check = write(workshop, WARM, (FAST, f'warming_time = "{time}"')).only(RULE)
    assert check.outcome == outcome
    assert on_sheet(check, "ΔT of flange") == pytest.approx(20.438 * 204.85 / float(time[:3]), rel=1e-3)


@pytest.mark.parametrize("missing", [FAST, 'warming_rise = "100 K"', WARM[0]])
def test_the_rate_must_be_stated(workshop: DesignFolder, missing: str) -> None:
    assert write(workshop, (missing, "")).only(RULE).outcome == "not assessed"


def test_plates_must_be_stated(workshop: DesignFolder) -> None:
    assert bare(workshop, "plates").only(RULE).outcome == "not assessed"


@given(t=st.floats(5e-3, 0.1), by=st.floats(1.0, 4.0))
def test_the_difference_goes_with_the_square_of_the_wall(t: float, by: float) -> None:
    assert face_above_mean(100.0, 3600.0, by * t, 12e-6) == pytest.approx(
        by**2 * face_above_mean(100.0, 3600.0, t, 12e-6)
    )


@given(biot=st.floats(0.01, 1e6))
def test_a_shock_never_exceeds_its_step(biot: float) -> None:
    assert 0 < shock_difference(400.0, 300.0, biot) <= 100.0


def test_a_shock_by_the_series_of_a_slab() -> None:
    """Bi 5 by the exact series of Carslaw and Jaeger: the greatest of face above mean over all times.

    θ(x, t) = Σ 2 sin ζ/(ζ + sin ζ cos ζ) cos(ζ x) e^(−ζ² Fo), ζ tan ζ = Bi; mean with sin ζ/ζ in place of cos(ζ x).
    """
    biot = 5.0
    roots = []
    for n in range(60):
        low, high = n * math.pi + 1e-9, n * math.pi + math.pi / 2 - 1e-9
        for _ in range(80):
            middle = (low + high) / 2
            low, high = (middle, high) if middle * math.tan(middle) < biot else (low, middle)
        roots.append(low)

    def ahead(fourier: float) -> float:
        return sum(
            2
            * math.sin(z)
            / (z + math.sin(z) * math.cos(z))
            * math.exp(-z * z * fourier)
            * (math.sin(z) / z - math.cos(z))
            for z in roots
        )

    exact = max(ahead(i / 2000) for i in range(1, 1000))
    assert shock_difference(1.0, 0.0, biot) == pytest.approx(exact, rel=0.05)
    with pytest.raises(OutOfRange):
        shock_difference(1.0, 0.0, 0.0)
