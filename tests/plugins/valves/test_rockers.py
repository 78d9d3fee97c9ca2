"""rocker.stress and rocker.stiffness."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.errors import OutOfRange
from speclint.handbook.members import projected_pressure, rectangle_second_moment
from speclint.testing import DesignFolder, changed, found
from speclint_valves.formulae.spindle import arm_stress, lift_lost, pin_bending_stress, pin_load
from tests.plugins.known_metals import WITH_METALS
from tests.plugins.valves.gear import train_files

STRESS, STIFFNESS = "rocker.stress", "rocker.stiffness"
ROCKER = """
kind = "rocker"
id = "rocker"
material = "known-steel"
works = "spindle"
carried_in = "box"
valve_arm = "60 mm"
tappet_arm = "60 mm"
inertia = "0.00036 kg·m²"
arm_depth = "35 mm"
arm_width = "25 mm"
boss = "40 mm"
pin = "36 mm"
pin_span = "60 mm"
bush_length = "40 mm"
bush_material = "bronze-CC483K"
pin_material = "known-steel"
bush_pressure = "20 MPa"
"""


def rocker_files(*changes: tuple[str, str]) -> dict[str, str]:
    """The train with a rocker of equal arms between tappet and spindle.

    Its 0.00036/0.06² = 0.1 kg at the valve bring the mass to 7.2 kg; by the working of spindle.stress the
    greatest load is 1100 + 6001.2 + 68.84 + 7.2 × 90.215 = 7819.6 N at either end, 15639.2 N on the pin.
    """
    files = train_files(tappet=(('works = "spindle"', 'works = "rocker"'),))
    return {**files, "rocker.toml": changed(ROCKER, *changes)}


@pytest.mark.parametrize(("depth", "outcome"), [("30.7 mm", "conforms"), ("30.5 mm", "finding")])
def test_arm_stress_from_both_sides(workshop: DesignFolder, depth: str, outcome: str) -> None:
    """6 × 7819.6 × 40/(25 h²) = 80 MPa at h = 30.63 mm."""
    assert workshop.write(rocker_files(('"35 mm"', f'"{depth}"'))).only(STRESS).outcome == outcome


@pytest.mark.parametrize(("pin", "outcome"), [("31.1 mm", "conforms"), ("30.9 mm", "finding")])
def test_pin_bending_from_both_sides(workshop: DesignFolder, pin: str, outcome: str) -> None:
    """8 × 15639.2 × 60/(π d³) = 80 MPa at d = 31.03 mm."""
    assert workshop.write(rocker_files(('"36 mm"', f'"{pin}"'))).only(STRESS).outcome == outcome


@pytest.mark.parametrize(("rated", "outcome"), [("10.9 MPa", "conforms"), ("10.8 MPa", "finding")])
def test_bush_pressure_from_both_sides(workshop: DesignFolder, rated: str, outcome: str) -> None:
    """15639.2/(36 × 40) = 10.861 MPa."""
    assert workshop.write(rocker_files(('"20 MPa"', f'"{rated}"'))).only(STRESS).outcome == outcome


@pytest.mark.parametrize(("pin", "outcome"), [("39.5 mm", "conforms"), ("39.3 mm", "finding")])
def test_the_pin_is_judged_by_its_own_metal(workshop: DesignFolder, pin: str, outcome: str) -> None:
    """Of iron, 0.2 × 195 = 39 MPa: 8 × 15639.2 × 60/(π d³) at d = 39.42 mm; by the rocker's metal 31.03 mm passed."""
    weak = ('pin_material = "known-steel"', 'pin_material = "known-iron"')
    files = rocker_files(weak, ('"36 mm"', f'"{pin}"'))
    assert workshop.write(files).only(STRESS).outcome == outcome


@pytest.mark.parametrize(("length", "outcome"), [("22 mm", "conforms"), ("21 mm", "finding")])
def test_the_metal_of_the_bush_caps_what_is_stated(workshop: DesignFolder, length: str, outcome: str) -> None:
    """Bronze 20 MPa whatever is stated: 15639.2/(36 × 22) = 19.75, on 21 mm 20.69 MPa."""
    files = rocker_files(('"20 MPa"', '"63 MPa"'), ('bush_length = "40 mm"', f'bush_length = "{length}"'))
    assert workshop.write(files).only(STRESS).outcome == outcome


@pytest.mark.parametrize(
    ("metal", "length", "outcome"),
    [
        ("bronze-CC483K", "22.0 mm", "conforms"),
        ("bronze-CC483K", "21.5 mm", "finding"),
        ("known-iron", "54.6 mm", "conforms"),
        ("known-iron", "54.0 mm", "finding"),
        ("white-metal-tin", "62.4 mm", "conforms"),
        ("white-metal-tin", "61.7 mm", "finding"),
    ],
)
def test_each_metal_of_a_bush_from_both_sides(
    workshop: DesignFolder, metal: str, length: str, outcome: str
) -> None:
    """15639.2 N over 36 mm: 20 MPa on 21.72 mm of bronze, 8 on 54.30 of iron, 7 on 62.06 of white metal."""
    files = rocker_files(
        ("bronze-CC483K", metal),
        ('bush_length = "40 mm"', f'bush_length = "{length}"'),
        ('"20 MPa"', '"63 MPa"'),
        ('pin_span = "60 mm"', 'pin_span = "70 mm"'),
    )
    assert workshop.write(files).only(STRESS).outcome == outcome


def test_a_bush_of_a_metal_without_a_figure_is_a_query(workshop: DesignFolder) -> None:
    check = workshop.write(rocker_files(('"bronze-CC483K"', '"known-steel"'))).only(STRESS)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@pytest.mark.parametrize("line", ['pin_material = "known-steel"', 'bush_material = "bronze-CC483K"'])
def test_stress_is_not_assessed_without_the_metal(workshop: DesignFolder, line: str) -> None:
    assert workshop.write(rocker_files((line, ""))).only(STRESS).outcome == "not assessed"


@pytest.mark.parametrize("line", ['boss = "40 mm"', 'pin_span = "60 mm"', 'bush_pressure = "20 MPa"'])
def test_stress_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    assert workshop.write(rocker_files((line, ""))).only(STRESS).outcome == "not assessed"


@pytest.mark.parametrize(("share", "outcome"), [("0.1405 %", "conforms"), ("0.1395 %", "finding")])
def test_stiffness_from_both_sides(workshop: DesignFolder, share: str, outcome: str) -> None:
    """I = 25 × 35³/12 = 89323 mm⁴: 2 × 7819.6 × 40³/(3 × 194000 × 89323) = 0.019253 mm;

    I_p = π 36⁴/64 = 82448 mm⁴: 2 × 15639.2 × 60³/(48 × 194000 × 82448) = 0.008800 mm; 0.028053 of 20 mm: 0.1403 %.
    """
    own = WITH_METALS + f'[limits."{STIFFNESS}"]\nshare-of-lift = "{share}"\n'
    check = workshop.write({**rocker_files(), "speclint.toml": own}).only(STIFFNESS)
    assert check.outcome == outcome
    assert found(check) == pytest.approx(0.028053e-3, rel=1e-3)


@pytest.mark.parametrize(("depth", "outcome"), [("12.9 mm", "conforms"), ("12.75 mm", "finding")])
def test_two_hundredths_of_the_lift_from_both_sides(workshop: DesignFolder, depth: str, outcome: str) -> None:
    """0.0193 × (35/h)³ of the arms and 0.0088 of the pin are 0.4 mm of 20 at h = 12.83 mm."""
    check = workshop.write(rocker_files(('"35 mm"', f'"{depth}"'))).only(STIFFNESS)
    assert (check.outcome, check.grade) == (outcome, Grade.OBSERVATION if outcome == "finding" else None)


def test_stiffness_is_not_assessed_without_depth(workshop: DesignFolder) -> None:
    assert workshop.write(rocker_files(('arm_depth = "35 mm"', ""))).only(STIFFNESS).outcome == "not assessed"


@given(F=st.floats(1.0, 1e4), scale=st.floats(0.5, 3.0))
def test_a_rocker_scaled_up_is_stressed_by_the_square(F: float, scale: float) -> None:
    def arm(x: float) -> float:
        return arm_stress(F=F, b=0.06 * x, B=0.04 * x, w=0.02 * x, h=0.03 * x)

    assert arm(scale) == pytest.approx(arm(1.0) / scale**2)
    assert pin_bending_stress(F=F, L=0.06 * scale, d=0.03 * scale) == pytest.approx(
        pin_bending_stress(F=F, L=0.06, d=0.03) / scale**2
    )
    assert projected_pressure(F=pin_load(F_v=F, F_t=F), d=0.03, b=0.04) == pytest.approx(2 * F / 0.0012)


@given(E=st.floats(100e9, 250e9))
def test_a_stiffer_metal_gives_less(E: float) -> None:
    sizes = {
        "b_v": 0.06,
        "b_t": 0.06,
        "B": 0.04,
        "I": rectangle_second_moment(b=0.02, h=0.03),
        "L": 0.06,
        "I_p": 4e-8,
    }
    loads = {"F_v": 3e3, "F_t": 3e3, "F_p": 6e3, "i": 1.0}
    assert lift_lost(E=2 * E, **sizes, **loads) == pytest.approx(lift_lost(E=E, **sizes, **loads) / 2)


def test_an_arm_within_its_boss_is_refused() -> None:
    with pytest.raises(OutOfRange, match="boss"):
        arm_stress(F=1.0, b=0.02, B=0.05, w=0.02, h=0.03)
