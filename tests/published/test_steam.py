"""Steam against the values IAPWS prints for verification and against three independent libraries."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import pytest

from speclint.handbook.steam import dry_steam as steam, states as steam_states
from tests.published.proof import proves

R7 = "IAPWS R7-97(2012)"


@dataclass(frozen=True)
class Row:
    """One printed value: what was asked of speclint, in SI, and what the source says, in SI."""

    ask: Callable[..., float]
    given: tuple[float, float]
    expected: float
    tolerance: float
    source: str
    how: str

    def __str__(self) -> str:
        return f"{self.ask.__name__}{self.given}"


def volume(p: float, T: float) -> float:
    return steam_states.state_at_temperature(p, T).specific_volume


def enthalpy(p: float, T: float) -> float:
    return steam_states.state_at_temperature(p, T).enthalpy


def entropy(p: float, T: float) -> float:
    return steam_states.state_at_temperature(p, T).entropy


# The tables print nine figures. T(p,h) and T(p,s) are backward equations, good to 25 mK.
ROWS = [
    Row(steam_states.wet_steam_enthalpy, (10e5, 1.0), 2777.12e3, 2e-6, "pyXSteam 0.4.10", "library"),
    Row(steam_states.wet_steam_enthalpy, (10e5, 0.0), 762.68e3, 7e-6, "pyXSteam 0.4.10", "library"),
    Row(steam.steam_specific_volume, (3500.0, 300.0), 39.4913866, 2e-9, f"{R7} Table 15", "seen"),
    Row(steam.steam_specific_volume, (3500.0, 700.0), 92.3015898, 2e-9, f"{R7} Table 15", "seen"),
    Row(steam.steam_heat_capacity, (3500.0, 700.0), 2.08141274e3, 3e-9, f"{R7} Table 15", "seen"),
    Row(steam.steam_enthalpy, (30e6, 700.0), 2631.49474e3, 2e-9, f"{R7} Table 15", "seen"),
    Row(steam.steam_enthalpy, (3500.0, 300.0), 2549.91145e3, 2e-9, f"{R7} Table 15", "memory"),
    Row(steam.steam_entropy, (3500.0, 300.0), 8.52238967e3, 2e-9, f"{R7} Table 15", "memory"),
    Row(steam.steam_heat_capacity, (3500.0, 300.0), 1.91300162e3, 3e-9, f"{R7} Table 15", "memory"),
    Row(steam.steam_speed_of_sound, (3500.0, 300.0), 427.920172, 2e-9, f"{R7} Table 15", "memory"),
    Row(steam.steam_speed_of_sound, (30e6, 700.0), 480.386523, 2e-9, f"{R7} Table 15", "memory"),
    Row(steam.steam_specific_volume, (30e6, 1500.0), 0.0230761299, 3e-9, f"{R7} Table 42", "memory"),
    Row(steam.steam_enthalpy, (30e6, 1500.0), 5167.23514e3, 2e-9, f"{R7} Table 42", "memory"),
    Row(volume, (3e6, 300.0), 0.00100215168, 6e-9, f"{R7} Table 5", "memory"),
    Row(enthalpy, (3e6, 500.0), 975.542239e3, 2e-9, f"{R7} Table 5", "memory"),
    Row(entropy, (3e6, 300.0), 0.392294792e3, 2e-9, f"{R7} Table 5", "memory"),
    Row(
        steam_states.temperature_at_enthalpy, (0.001e6, 3000e3), 534.433241, 5e-5, f"{R7} Table 24", "memory"
    ),
    Row(steam_states.temperature_at_enthalpy, (3e6, 4000e3), 1010.77577, 3e-5, f"{R7} Table 24", "memory"),
    Row(steam_states.temperature_at_entropy, (0.1e6, 7.5e3), 399.517097, 6e-5, f"{R7} Table 29", "memory"),
    Row(steam_states.temperature_at_entropy, (2.5e6, 8e3), 1039.84917, 3e-5, f"{R7} Table 29", "memory"),
    # Printed at 1 kg/m³ and at zero density; asked here at the pressure that gives nearly that density.
    Row(steam.steam_viscosity, (0.19692e6, 433.15), 14.538324e-6, 1e-5, "IAPWS R12-08 Table 4", "seen"),
    Row(steam.steam_conductivity, (700.0, 298.15), 18.4341883e-3, 2e-5, "IAPWS R15-11 Table 4", "seen"),
    Row(steam.steam_conductivity, (700.0, 873.15), 79.1034659e-3, 2e-5, "IAPWS R15-11 Table 4", "seen"),
]


@proves(
    "steam.dry_steam",
    "steam.states",
    "steam.if97",
    seen=["IAPWS R7-97(2012)", "IAPWS R12-08", "IAPWS R15-11"],
    memory="IAPWS R7-97(2012)",
)
@pytest.mark.parametrize("row", ROWS, ids=str)
def test_value_printed_by_iapws(row: Row) -> None:
    assert row.ask(*row.given) == pytest.approx(row.expected, rel=row.tolerance)


@proves("steam.dry_steam", "steam.if97", seen="IAPWS R7-97(2012), Table 36")
@pytest.mark.parametrize(
    ("p", "T"),
    [(0.1e6, 372.755919), (1e6, 453.035632), (10e6, 584.149488)],
)
def test_saturation_temperature_printed_by_iapws(p: float, T: float) -> None:
    """R7-97 Table 36; 0.1 and 10 MPa seen, 1 MPa from memory."""
    assert steam.saturation_temperature(p) == pytest.approx(T, abs=6e-7)


@proves("steam.dry_steam", "steam.if97", memory="IAPWS R7-97(2012), Table 35")
@pytest.mark.parametrize(
    ("T", "p"),
    [(300.0, 0.00353658941e6), (500.0, 2.63889776e6), (600.0, 12.3443146e6)],
)
def test_saturation_pressure_printed_by_iapws(T: float, p: float) -> None:
    """R7-97 Table 35, from memory."""
    assert steam.saturation_pressure(T) == pytest.approx(p, rel=3e-9)


# Working range of a locomotive and well beyond: 16 pressures by 16 superheats, 256 dry states.
PRESSURES = [0.1, 0.5, 1.01325, 1.5, 2, 3, 5, 7, 10, 12, 15, 17, 20, 25, 30, 40]
SUPERHEATS = [0.5, 2, 5, 10, 20, 30, 40, 60, 80, 100, 125, 150, 180, 210, 250, 300]
ASKED = {
    "density": steam.steam_density,
    "enthalpy": steam.steam_enthalpy,
    "entropy": steam.steam_entropy,
    "cp": steam.steam_heat_capacity,
    "sound": steam.steam_speed_of_sound,
    "viscosity": steam.steam_viscosity,
    "conductivity": steam.steam_conductivity,
}


def iapws_library(p: float, T: float) -> dict[str, float]:
    """iapws 1.5.5: an independent implementation of IF97, R12-08 and R15-11."""
    from iapws import IAPWS97

    state = IAPWS97(P=p / 1e6, T=T)
    return {
        "density": state.rho,
        "enthalpy": state.h * 1e3,
        "entropy": state.s * 1e3,
        "cp": state.cp * 1e3,
        "sound": state.w,
        "viscosity": state.mu,
        "conductivity": state.k,
    }


def coolprop_library(p: float, T: float) -> dict[str, float]:
    """CoolProp: IAPWS-95, another equation of state altogether."""
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    keys = {"density": "D", "enthalpy": "H", "entropy": "S", "cp": "C", "sound": "A"}
    keys |= {"viscosity": "V", "conductivity": "L"}
    return {name: coolprop.PropsSI(key, "P", p, "T", T, "Water") for name, key in keys.items()}


def pyxsteam_library(p: float, T: float) -> dict[str, float]:
    """pyXSteam 0.4.10: a third implementation of IF97; its transport equations are older and left out."""
    from pyXSteam.XSteam import XSteam

    table: Any = XSteam(XSteam.UNIT_SYSTEM_MKS)
    at = (p / 1e5, T - 273.15)
    return {
        "density": table.rho_pt(*at),
        "enthalpy": table.h_pt(*at) * 1e3,
        "entropy": table.s_pt(*at) * 1e3,
        "cp": table.Cp_pt(*at) * 1e3,
        "sound": table.w_pt(*at),
    }


# What each library may differ by, as a share of the value. The same formulation leaves round-off; IAPWS-95
# differs by IF97's own uncertainty (R7-97 figures 3 to 5), most in cp near saturation.
LIBRARIES = [
    (
        iapws_library,
        {"density": 1e-9, "enthalpy": 1e-9, "entropy": 1e-9, "cp": 1e-9, "sound": 1e-9}
        | {"viscosity": 1e-9, "conductivity": 0.012},
    ),
    (
        coolprop_library,
        {"density": 5e-4, "enthalpy": 2e-4, "entropy": 2e-4, "cp": 1e-2, "sound": 2e-3}
        | {"viscosity": 1e-4, "conductivity": 0.012},
    ),
    (pyxsteam_library, {"density": 1e-6, "enthalpy": 1e-6, "entropy": 1e-6, "cp": 1e-6, "sound": 1e-6}),
]


@proves("steam.dry_steam", "steam.if97", library=["iapws", "CoolProp", "pyXSteam"])
@pytest.mark.parametrize("bars", PRESSURES)
@pytest.mark.parametrize(("library", "tolerances"), LIBRARIES, ids=lambda item: getattr(item, "__name__", ""))
def test_dry_steam_agrees_with_an_independent_library(
    library: Callable[[float, float], dict[str, float]], tolerances: dict[str, float], bars: float
) -> None:
    p = bars * 1e5
    boiling = steam.saturation_temperature(p)
    for degrees in SUPERHEATS:
        T = boiling + degrees
        theirs = library(p, T)
        for name, tolerance in tolerances.items():
            ours = ASKED[name](p, T)
            assert ours == pytest.approx(theirs[name], rel=tolerance), f"{name} {bars} bar +{degrees} K"


@proves("steam.states", "steam.if97", library=["iapws", "pyXSteam"])
@pytest.mark.parametrize("bars", [0.5, 1.01325, 5, 10, 15, 20, 25])
@pytest.mark.parametrize("dryness", [0.0, 0.3, 0.9, 0.97, 1.0])
def test_wet_steam_agrees_with_iapws_and_pyxsteam(bars: float, dryness: float) -> None:
    from iapws import IAPWS97
    from pyXSteam.XSteam import XSteam

    table: Any = XSteam(XSteam.UNIT_SYSTEM_MKS)
    other = IAPWS97(P=bars / 10, x=dryness)
    ours = steam_states.saturated_state(bars * 1e5, dryness)
    assert ours.specific_volume == pytest.approx(other.v, rel=1e-9)
    assert ours.enthalpy == pytest.approx(other.h * 1e3, rel=1e-9)
    assert ours.entropy == pytest.approx(other.s * 1e3, rel=1e-9)
    assert ours.temperature == pytest.approx(other.T, rel=1e-9)
    assert ours.enthalpy == pytest.approx(table.h_px(bars, dryness) * 1e3, rel=1e-6)


@proves("steam.states", "steam.if97", library=["iapws", "CoolProp"])
@pytest.mark.parametrize("bars", [0.5, 1.01325, 5, 10, 15, 20, 25])
@pytest.mark.parametrize("kj", [300.0, 1500.0, 2500.0, 2850.0, 3000.0, 3300.0])
def test_states_from_enthalpy_agree_with_iapws_and_coolprop(bars: float, kj: float) -> None:
    from iapws import IAPWS97

    coolprop = pytest.importorskip("CoolProp.CoolProp")
    ours = steam_states.state_at_enthalpy(bars * 1e5, kj * 1e3)
    other = IAPWS97(P=bars / 10, h=kj)
    assert ours.temperature == pytest.approx(other.T, abs=0.03)
    assert ours.dryness == pytest.approx(other.x, abs=1e-6)
    assert ours.density == pytest.approx(other.rho, rel=2e-4)
    assert ours.entropy == pytest.approx(other.s * 1e3, rel=2e-5)
    given = ("P", bars * 1e5, "H", kj * 1e3, "Water")
    assert ours.temperature == pytest.approx(coolprop.PropsSI("T", *given), abs=0.15)
    assert ours.density == pytest.approx(coolprop.PropsSI("D", *given), rel=1e-3)


@proves("steam.states", "steam.if97", library=["iapws", "CoolProp"])
@pytest.mark.parametrize("bars", [0.5, 1.01325, 5, 10, 15, 20, 25])
@pytest.mark.parametrize("entropy_kj", [0.9, 3.0, 6.2, 6.9, 7.2, 7.6])
def test_states_from_entropy_agree_with_iapws_and_coolprop(bars: float, entropy_kj: float) -> None:
    from iapws import IAPWS97

    coolprop = pytest.importorskip("CoolProp.CoolProp")
    ours = steam_states.state_at_entropy(bars * 1e5, entropy_kj * 1e3)
    other = IAPWS97(P=bars / 10, s=entropy_kj)
    assert ours.temperature == pytest.approx(other.T, abs=0.03)
    assert ours.dryness == pytest.approx(other.x, abs=1e-6)
    assert ours.enthalpy == pytest.approx(other.h * 1e3, rel=3e-5)
    given = ("P", bars * 1e5, "S", entropy_kj * 1e3, "Water")
    assert ours.temperature == pytest.approx(coolprop.PropsSI("T", *given), abs=0.15)
    assert ours.enthalpy == pytest.approx(coolprop.PropsSI("H", *given), rel=3e-4)
