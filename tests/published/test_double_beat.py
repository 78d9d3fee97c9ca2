"""Double-beat valves against printed rules, hand working and the geometry itself."""

from __future__ import annotations

import math
from dataclasses import dataclass

import pytest

from speclint.handbook.cams.laws import cam_law
from speclint.handbook.cams.profiles import CamProfile, Flank, Ramp
from speclint.handbook.steam import double_beat as db
from tests.published.proof import proves


def frustum(h: float, d: float, β: float, u: float) -> float:
    """Area of the frustum from the valve's lower edge to the seat a length u up its side."""
    side = math.hypot(u * math.cos(β), h - u * math.sin(β))
    return math.pi * (d + u * math.cos(β)) * side


@proves("steam.double_beat", derived="least of 4001 frusta")
@pytest.mark.parametrize("degrees", [0.0, 15.0, 30.0, 45.0, 60.0])
@pytest.mark.parametrize("w_d", [0.01, 0.02, 0.05])
def test_area_is_the_least_frustum_between_the_two_cones(degrees: float, w_d: float) -> None:
    """First principles: the least of 4001 places; the module says how little above it the area may stand."""
    d, β = 0.160, math.radians(degrees)
    w = w_d * d
    for thousandths in range(5, 126, 5):
        h = d * thousandths / 1000
        least = min(frustum(h, d, β, w * n / 4000) for n in range(4001))
        area = db.beat_area(h, d, w, β)
        assert least * (1 - 1e-6) <= area <= least * (1 + (0.002 if degrees >= 45 else 0.007))


@proves("steam.double_beat", memory="J. B. Heywood, Internal Combustion Engine Fundamentals")
def test_heywood_first_stage_in_his_own_symbols() -> None:
    """J. B. Heywood (from memory): π L cos β (D_v − 2w + (L/2) sin 2β) to L = w/(sin β cos β), w radial."""
    L, D_v, w_radial, β = 2e-3, 0.150, 3e-3, math.radians(45)
    heywood = math.pi * L * math.cos(β) * (D_v - 2 * w_radial + L / 2 * math.sin(2 * β))
    ours = db.beat_area(L, D_v - 2 * w_radial, w_radial / math.cos(β), β)
    assert ours == pytest.approx(heywood, rel=1e-12)


@proves("steam.double_beat", memory="J. B. Heywood, Internal Combustion Engine Fundamentals")
def test_heywood_second_stage_in_his_own_symbols() -> None:
    """The same (from memory): π D_m √((L − w tan β)² + w²), D_m = D_v − w."""
    L, D_v, w_radial, β = 12e-3, 0.150, 3e-3, math.radians(30)
    heywood = math.pi * (D_v - w_radial) * math.hypot(L - w_radial * math.tan(β), w_radial)
    ours = db.beat_area(L, D_v - 2 * w_radial, w_radial / math.cos(β), β)
    assert ours == pytest.approx(heywood, rel=1e-12)


@proves("steam.double_beat", seen="D. Lardner, The Steam Engine Explained and Illustrated")
def test_flat_single_beat_opens_its_bore_at_a_quarter_of_the_diameter() -> None:
    """By hand, and D. Lardner, The Steam Engine Explained and Illustrated: π d h = π d²/4 at d/4."""
    assert db.lift_for_area(math.pi / 4, 1.0, 0.02, 0.0) == pytest.approx(0.25, rel=1e-12)


@proves("steam.double_beat", derived="hand working")
def test_equal_flat_double_beat_opens_its_bore_at_an_eighth() -> None:
    """By hand: 2 π d h = π d²/4 at d/8."""
    A = db.beat_area(0.125, 1.0, 0.02, 0.0)
    assert db.double_beat_flow_area(A, 1.0, A, 1.0) == pytest.approx(math.pi / 4, rel=1e-12)


@proves("steam.double_beat", derived="hand working")
def test_curtain_area_by_the_mean_diameter() -> None:
    """By hand: 160 and 150 mm, 18 mm, 45°: π (d₁ + d₂) h cos 45° = 12 395.6 mm², without h sin β cos β.

    On a contact wide enough for the first stage the two beats differ from it by π h² sin β cos² β each.
    """
    h, β = 18.0, math.radians(45)
    both = db.beat_area(h, 160.0, 13.0, β) + db.beat_area(h, 150.0, 13.0, β)
    assert both - 2 * math.pi * h**2 * math.sin(β) * math.cos(β) ** 2 == pytest.approx(12395.6, rel=1e-5)


@proves("steam.double_beat", derived="hand working")
def test_net_steam_load_and_that_of_a_single_valve() -> None:
    """By hand: 160 and 150 mm at 1.4 MPa, 3408.6 N; a single 160 mm valve 28 149 N."""
    assert db.unbalanced_load(1.4e6, 0.160, 0.150) == pytest.approx(3408.6, rel=2e-5)
    assert db.unbalanced_load(1.4e6, 0.160, 0.0) == pytest.approx(28149, rel=2e-5)


@proves("steam.double_beat", seen="T. Tredgold, The Steam Engine, vol. 1, p. 206")
def test_tredgold_net_force_only_on_the_annulus_between_the_seats() -> None:
    """T. Tredgold, The Steam Engine, vol. 1, p. 206 (seen): equal seats leave no load at all."""
    assert db.unbalanced_load(1.4e6, 0.160, 0.160) == 0


@proves("steam.double_beat", derived="hand working")
def test_seat_stress_shared_by_two_seats() -> None:
    """By hand: (3408.6 + 900)/(π (160 + 150) · 2.5) = 1.7697 MPa on mean diameters of 160 and 150 mm.

    The shares carried go as the contact areas, so both seats stand at the stress of the whole.
    """
    F = 3408.6 + 900.0
    upper = F * 160 / 310
    stress = db.seat_bearing_stress(upper, 0.160 - 0.0025, 0.0025, 0.0)
    assert stress == pytest.approx(1.7697e6, rel=1e-4)


@proves("steam.double_beat", derived="quadrature of the frustum")
@pytest.mark.parametrize("w", [0.5e-3, 3e-3, 20e-3])
def test_area_by_turning_the_gap_round_the_axis(w: float) -> None:
    """First principles: the frustum's area as the integral of 2π r along its side, by quadrature."""
    from scipy.integrate import quad

    h, d, β = 12e-3, 0.15, math.radians(45)
    u = min(h * math.sin(β), w)
    x, y = u * math.cos(β), u * math.sin(β) - h
    side = math.hypot(x, y)
    area, _ = quad(lambda t: 2 * math.pi * (d / 2 + t * x) * side, 0, 1)
    assert db.beat_area(h, d, w, β) == pytest.approx(area, rel=1e-12)


@dataclass(frozen=True)
class Beat:
    """Smaller diameter and width of the contact, angle of the seat, throat and what stands in it: mm, degrees."""

    seat: float
    width: float
    angle: float
    throat: float
    blocked: float

    def area(self, h: float) -> float:
        return db.beat_area(h, self.seat / 1e3, self.width / 1e3, math.radians(self.angle))

    @property
    def throat_area(self) -> float:
        return db.throat_area(self.throat / 1e3, 0.0, self.blocked / 1e6)


def gear(lift: float, rise: float, dwell: float) -> CamProfile:
    """3-4-5 polynomial above ramps of 1.1 mm in 10°, the same up and down: mm and degrees."""
    law, ramp = cam_law("3-4-5 polynomial"), Ramp(1.1e-3, math.radians(10))
    flank = Flank(law, lift / 1e3, math.radians(rise), ramp)
    return CamProfile(flank, math.radians(dwell), flank)


INLET = ((9.5, 21, 6), -10.5, Beat(153, 2.5, 45, 140, 3000), Beat(143, 2.5, 18.5, 130, 1800))
EXHAUST = ((23.8, 56, 50), 140, Beat(172, 2.5, 45, 160, 3000), Beat(161, 2.5, 22.6, 150, 1800))
#: Crank angle, travel of the tappet [mm] and area [mm²], 0.5 mm of it taken up by the clearance.
BY_CRANK_ANGLE = [
    *((INLET, *row) for row in (
        (-5, 0.605, 80.44), (0, 1.1561, 503.35), (6, 3.2250, 2102.05), (15, 9.5920, 7605.06), (25, 10.6, 8527.54),
        (35, 7.7598, 5945.44), (45, 1.4882, 758.82), (52, 0.605, 80.44),
    )),
    *((EXHAUST, *row) for row in (
        (146, 0.66, 135.90), (155, 1.7742, 1085.37), (180, 15.4494, 14534.25), (230, 24.9, 24476.35),
        (290, 9.5430, 8399.55), (315, 0.77, 229.40),
    )),
]  # fmt: skip


@proves(
    "steam.double_beat", "cams.profiles", derived="two valves and their cams worked apart by another program"
)
@pytest.mark.parametrize(("train", "degrees", "tappet", "area"), BY_CRANK_ANGLE)
def test_area_of_a_valve_by_the_crank_angle(
    train: tuple[tuple[float, float, float], float, Beat, Beat], degrees: float, tappet: float, area: float
) -> None:
    cam, foot, upper, lower = train
    travel = gear(*cam).at(math.radians(degrees - foot)).lift
    assert travel * 1e3 == pytest.approx(tappet, abs=6e-5)
    h = travel - 0.5e-3
    found = db.double_beat_flow_area(upper.area(h), upper.throat_area, lower.area(h), lower.throat_area)
    assert found * 1e6 == pytest.approx(area, rel=1e-4)
