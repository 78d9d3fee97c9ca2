"""The mean temperature of a cylinder wall against a network of conductances and a wall followed in time."""

from __future__ import annotations

import pytest

from speclint.handbook.heat.lubrication import flash_point_margin, mean_wall_temperature
from tests.published.proof import proves

ICE = 273.15
#: Share of live steam, its film and temperature, exhaust's film and temperature, way out and what lies there.
ENGINES = [
    # full gear, superheated, lagged
    {"x": 0.75, "h_1": 900.0, "T_1": 623.15, "h_2": 300.0, "T_2": 393.15, "U_o": 5.0, "T_o": 293.15},
    # notched up
    {"x": 0.20, "h_1": 1200.0, "T_1": 593.15, "h_2": 350.0, "T_2": 383.15, "U_o": 5.0, "T_o": 293.15},
    # saturated, lagging lost
    {"x": 0.35, "h_1": 2500.0, "T_1": 477.0, "h_2": 400.0, "T_2": 378.0, "U_o": 25.0, "T_o": 273.15},
    # drifting: live steam shut off
    {"x": 0.0, "h_1": 0.0, "T_1": 600.0, "h_2": 60.0, "T_2": 453.15, "U_o": 8.0, "T_o": 293.15},
    # a jacket of live steam outside
    {"x": 0.30, "h_1": 800.0, "T_1": 600.0, "h_2": 250.0, "T_2": 390.0, "U_o": 180.0, "T_o": 560.0},
]


@proves("heat.lubrication", memory="J. Millman, A useful network theorem, Proc. IRE 28, 1940")
@pytest.mark.parametrize(
    ("engine", "expected"),
    # ΣTG/ΣG by hand, G in W/(m²·K):
    # 675 and 75 and 5: (420 626.25 + 29 486.25 + 1 465.75)/755
    # 240 and 280 and 5: (142 356 + 107 282 + 1 465.75)/525
    # 875 and 260 and 25: (417 375 + 98 280 + 6 828.75)/1160
    # 0 and 60 and 8: (27 189 + 2 345.2)/68
    # 240 and 175 and 180: (144 000 + 68 250 + 100 800)/595
    list(zip(ENGINES, (598.1169, 478.2929, 450.4170, 434.3265, 526.1345), strict=True)),
)
def test_the_wall_is_the_common_node_of_three_conductances(engine: dict[str, float], expected: float) -> None:
    """Three branches from temperatures meet at one node: its temperature is the mean weighed by conductance."""
    assert mean_wall_temperature(**engine) == pytest.approx(expected, abs=2e-3)


@proves(
    "heat.lubrication", derived="a wall 20 mm thick followed over many cycles by scipy, conduction and all"
)
@pytest.mark.parametrize("engine", ENGINES)
def test_a_wall_followed_in_time_has_that_mean(engine: dict[str, float]) -> None:
    """First principles: Fourier's equation in 20 mm of iron, in a strip for a square metre.

    Ten layers of 2 mm, 50 W/(m·K), 3.6 MJ/(m³·K), four cycles a second. In the steady state of the cycle the
    mean heat taken is the mean heat given; the periodic state is found by one linear solve, not by waiting.
    """
    import numpy as np
    from scipy.linalg import expm

    layers, λ, ρc, wall = 10, 50.0, 3.6e6, 0.020
    step = wall / layers
    between = λ / step

    def exchange(h: float, T: float) -> tuple[np.ndarray, np.ndarray]:
        A, b = np.zeros((layers, layers)), np.zeros(layers)
        for n in range(layers - 1):
            A[n, n] -= between
            A[n, n + 1] += between
            A[n + 1, n + 1] -= between
            A[n + 1, n] += between
        inside = 1 / (1 / h + step / 2 / λ) if h else 0.0
        outside = 1 / (1 / engine["U_o"] + step / 2 / λ)
        A[0, 0] -= inside
        b[0] += inside * T
        A[-1, -1] -= outside
        b[-1] += outside * engine["T_o"]
        return A / (ρc * step), b / (ρc * step)

    def propagator(h: float, T: float, seconds: float) -> tuple[np.ndarray, np.ndarray]:
        A, b = exchange(h, T)
        whole = np.zeros((layers + 1, layers + 1))
        whole[:layers, :layers], whole[:layers, layers] = A * seconds, b * seconds
        grown = expm(whole)
        return grown[:layers, :layers], grown[:layers, layers]

    share = engine["x"]
    live = propagator(engine["h_1"], engine["T_1"], 0.25 * share)
    exhaust = propagator(engine["h_2"], engine["T_2"], 0.25 * (1 - share))
    M, v = exhaust[0] @ live[0], exhaust[0] @ live[1] + exhaust[1]
    settled = np.linalg.solve(np.eye(layers) - M, v)
    # With its own resistance the wall is no single node: its mean lies within the fall of heat through it.
    through = abs(engine["U_o"] * (settled[-1] - engine["T_o"])) * wall / λ
    assert mean_wall_temperature(**engine) == pytest.approx(float(settled.mean()), abs=1.0 + 2 * through)


@proves("heat.lubrication", memory="common practice, cylinder oils by ISO 3448 class and open flash point")
@pytest.mark.parametrize(
    ("flash", "wall", "margin"),
    # flash points of steam cylinder oils of VG 460, 680, 1000 and 1500: 280, 300, 310 and 320 °C
    [(280.0, 250.0, 30.0), (300.0, 295.0, 5.0), (310.0, 325.0, -15.0), (320.0, 260.0, 60.0)],
)
def test_margin_of_cylinder_oils(flash: float, wall: float, margin: float) -> None:
    assert flash_point_margin(flash + ICE, wall + ICE) == pytest.approx(margin)
