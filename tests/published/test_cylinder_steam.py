"""Steam in a cylinder against IAPWS-95 and IAPWS-IF97 as two other libraries work them."""

from __future__ import annotations

import math

import pytest

from speclint.handbook.steam import pressure_of_energy, swelling, temperature_and_exponent
from tests.published.proof import proves

COOLPROP, IAPWS = "CoolProp 8.0.0 (IAPWS-95)", "iapws 1.5.5 (IAPWS-IF97)"
#: Pressure [Pa], and superheat [K] or dryness.
DRY = [(1.3e5, 5.0), (1.3e5, 200.0), (5e5, 40.0), (16e5, 5.0), (16e5, 190.0), (30e5, 100.0)]
WET = [(1.3e5, 0.85), (5e5, 0.95), (16e5, 0.99)]


def by_coolprop(p: float, second: float, name: str) -> dict[str, float]:
    """u, v, h, T and speed of sound at a pressure and a dryness Q or temperature T."""
    props = pytest.importorskip("CoolProp.CoolProp")
    letters = {"u": "U", "ρ": "D", "h": "H", "T": "T", "s": "S"}
    found = {
        key: float(props.PropsSI(key_of, "P", p, name, second, "Water")) for key, key_of in letters.items()
    }
    return {**found, "v": 1 / found["ρ"]}


def superheated(p: float, superheat: float) -> dict[str, float]:
    props = pytest.importorskip("CoolProp.CoolProp")
    T = float(props.PropsSI("T", "P", p, "Q", 1, "Water")) + superheat
    return {
        **by_coolprop(p, T, "T"),
        "a": float(props.PropsSI("A", "P", p, "T", T, "Water")),
        "cp": float(props.PropsSI("C", "P", p, "T", T, "Water")),
        "expansion": float(props.PropsSI("ISOBARIC_EXPANSION_COEFFICIENT", "P", p, "T", T, "Water")),
    }


@proves("steam.cylinder_steam", library=COOLPROP)
@pytest.mark.parametrize(("p", "superheat"), DRY)
def test_dry_steam_in_a_volume(p: float, superheat: float) -> None:
    """Pressure within 0.05 %, temperature within 0.1 K, κ = a²/(p v) within 0.5 %, (∂v/∂h)/v = β/c_p within 3 %."""
    state = superheated(p, superheat)
    assert pressure_of_energy(state["u"], state["v"], near=0.7 * p) == pytest.approx(p, rel=5e-4)
    T, κ = temperature_and_exponent(p, state["h"])
    assert pytest.approx(state["T"], abs=0.1) == T
    assert pytest.approx(state["a"] ** 2 / (p * state["v"]), rel=5e-3) == κ
    found = swelling(p, state["h"], state["v"])
    assert found == pytest.approx(state["expansion"] / state["cp"], rel=3e-2)


@proves("steam.cylinder_steam", library=COOLPROP, memory="G. Zeuner, Technical Thermodynamics")
@pytest.mark.parametrize(("p", "x"), WET)
def test_wet_steam_in_a_volume(p: float, x: float) -> None:
    """The isentrope of equilibrium over a tenth of the pressure has Zeuner's 1.035 + 0.1 x within 1 %."""
    props = pytest.importorskip("CoolProp.CoolProp")
    state = by_coolprop(p, x, "Q")
    assert pressure_of_energy(state["u"], state["v"], near=1.3 * p) == pytest.approx(p, rel=5e-4)
    T, κ = temperature_and_exponent(p, state["h"])
    assert pytest.approx(state["T"], abs=0.1) == T
    assert pytest.approx(1.035 + 0.1 * x, rel=1e-3) == κ
    after = 1 / float(props.PropsSI("D", "P", 0.9 * p, "S", state["s"], "Water"))
    assert pytest.approx(math.log(1 / 0.9) / math.log(after / state["v"]), rel=1e-2) == κ


@proves("steam.cylinder_steam", library=IAPWS)
@pytest.mark.parametrize(("p", "superheat"), DRY[::2])
def test_dry_steam_by_another_library_of_the_same_formulation(p: float, superheat: float) -> None:
    from iapws import IAPWS97

    T = float(IAPWS97(P=p / 1e6, x=1).T) + superheat
    state = IAPWS97(P=p / 1e6, T=T)
    assert pressure_of_energy(float(state.u) * 1e3, float(state.v), near=1.1 * p) == pytest.approx(
        p, rel=1e-4
    )
    found, κ = temperature_and_exponent(p, float(state.h) * 1e3)
    assert found == pytest.approx(T, abs=0.03)
    assert pytest.approx(float(state.w) ** 2 / (p * float(state.v)), rel=1e-3) == κ
