"""coil-spring.tensile, coil-spring.stress-static and coil-spring.stress-solid."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.handbook.materials import share_of_strength
from speclint.handbook.springs import deflection
from speclint.handbook.springs.helical import shear_stress, spring_load, spring_rate
from speclint.testing import DesignFolder, found
from tests.plugins.known_metals import WITH_METALS
from tests.plugins.springs.spring import spring

TENSILE, STATIC, SOLID = "coil-spring.tensile", "coil-spring.stress-static", "coil-spring.stress-solid"


def test_strength_of_a_known_wire_is_reported(workshop: DesignFolder) -> None:
    """Up to 8 mm the wire has at least 1710 MPa."""
    check = workshop.write(spring()).only(TENSILE)
    assert check.outcome == "conforms"
    assert found(check) == pytest.approx(1710e6)


def test_a_material_that_is_no_wire_is_not_assessed(workshop: DesignFolder) -> None:
    check = workshop.write(spring(('"known-wire"', '"grey-iron-250"'))).only(TENSILE)
    assert check.outcome == "not assessed"


def test_wire_thicker_than_its_standard_is_a_query(workshop: DesignFolder) -> None:
    """The table of the wire ends at 10 mm."""
    assert workshop.write(spring(('wire = "8 mm"', 'wire = "10 mm"'))).only(TENSILE).outcome == "conforms"
    check = workshop.write(spring(('wire = "8 mm"', 'wire = "10.5 mm"'))).only(TENSILE)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@pytest.mark.parametrize(("certificate", "outcome"), [("1711 MPa", "conforms"), ("1709 MPa", "finding")])
def test_certificate_must_reach_the_standard(workshop: DesignFolder, certificate: str, outcome: str) -> None:
    check = workshop.write(spring(add=f'wire_tensile_strength = "{certificate}"\n')).only(TENSILE)
    assert check.outcome == outcome


def test_static_stress_of_a_sound_spring(workshop: DesignFolder) -> None:
    """F = 46.927 × 40 = 1877.1 N; τ = 8 × 48 × 1877.1/(π × 512) = 448.12 MPa; 0.5 × 1710 = 855; 0.5241."""
    check = workshop.write(spring()).only(STATIC)
    assert check.outcome == "conforms"
    assert check.utilisation == pytest.approx(0.5241, rel=1e-3)


@pytest.mark.parametrize(("opened", "outcome"), [("63.69 mm", "conforms"), ("63.67 mm", "finding")])
def test_static_limit_from_both_sides(workshop: DesignFolder, opened: str, outcome: str) -> None:
    """τ = G d s/(π D² n) reaches 855 MPa at s = 855 × π × 2304 × 8/(81090 × 8) = 76.319 mm: 63.681 mm long."""
    assert workshop.write(spring(('"100 mm"', f'"{opened}"'))).only(STATIC).outcome == outcome


@pytest.mark.parametrize(("load", "outcome"), [("3580 N", "conforms"), ("3583 N", "finding")])
def test_static_takes_a_stated_load(workshop: DesignFolder, load: str, outcome: str) -> None:
    """855 × π × 512/(8 × 48) = 3581.4 N."""
    check = workshop.write(spring(add=f'open_load = "{load}"\n')).only(STATIC)
    assert check.outcome == outcome


@pytest.mark.parametrize(("rate", "share"), [("60 N/mm", 0.6701), ("30 N/mm", 0.5241)])
def test_static_takes_the_greater_of_two_rates_that_differ(
    workshop: DesignFolder, rate: str, share: float
) -> None:
    """The sizes give 46.007 N/mm, more than 5 % from either: 60 N/mm as stated, and the sizes instead of 30 N/mm.

    60 × 40 = 2400 N; 46.927 × 40 = 1877.1 N with G 2 % high. τ = 8 × 48 F/(π × 512): 572.96 and 448.12 MPa, of 855.
    """
    check = workshop.write(spring(add=f'rate = "{rate}"\n')).only(STATIC)
    assert check.outcome == "conforms"
    assert check.utilisation == pytest.approx(share, rel=1e-3)


@pytest.mark.parametrize(("lift", "outcome"), [("53.2 mm", "conforms"), ("53.4 mm", "finding")])
def test_a_stated_open_load_does_not_hide_a_greater_lift(
    workshop: DesignFolder, lift: str, outcome: str
) -> None:
    """The drawing says 1840 N open. 1012.2 × 1.05 + 46.927 (h + 0.4) N is 3581.4 N at a lift h of 53.27 mm."""
    loads = 'open_load = "1840 N"\nshut_load = "1012.2 N ±5 %"\ncloses = "valve"\n'
    valve = f'kind = "poppet-valve"\nid = "valve"\nlift = "{lift}"\novertravel = "0.4 mm"\n'
    check = workshop.write({**spring(add=loads), "valve.toml": valve}).only(STATIC)
    assert check.outcome == outcome


@pytest.mark.parametrize(("lift", "outcome"), [("53.9 mm", "conforms"), ("54.0 mm", "finding")])
def test_a_stated_open_load_does_not_hide_that_of_the_sizes(
    workshop: DesignFolder, lift: str, outcome: str
) -> None:
    """The drawing says 1840 N open and nothing of the load shut, which is 46.92708 × 22 = 1032.396 N by the sizes.

    1032.396 + 46.92708 (h + 0.4) N is 3581.4 N at a lift h of 53.92 mm.
    """
    valve = f'kind = "poppet-valve"\nid = "valve"\nlift = "{lift}"\novertravel = "0.4 mm"\n'
    files = spring(add='open_load = "1840 N"\ncloses = "valve"\n')
    assert workshop.write({**files, "valve.toml": valve}).only(STATIC).outcome == outcome


@pytest.mark.parametrize(
    ("rule", "certificate", "outcome"),
    [
        (STATIC, "897 MPa", "conforms"),
        (STATIC, "895 MPa", "finding"),
        (SOLID, "1201 MPa", "conforms"),
        (SOLID, "1199 MPa", "finding"),
        (SOLID, "2500 MPa", "conforms"),
    ],
)
def test_weaker_wire_by_its_certificate_is_allowed_less(
    workshop: DesignFolder, rule: str, certificate: str, outcome: str
) -> None:
    """448.12/0.5 = 896.2 MPa and 672.2/0.56 = 1200.3 MPa."""
    check = workshop.write(spring(add=f'wire_tensile_strength = "{certificate}"\n')).only(rule)
    assert check.outcome == outcome


def test_a_stronger_certificate_allows_no_more(workshop: DesignFolder) -> None:
    add = 'open_load = "3583 N"\nwire_tensile_strength = "2500 MPa"\n'
    assert workshop.write(spring(add=add)).only(STATIC).outcome == "finding"


def test_static_limit_is_a_setting(workshop: DesignFolder) -> None:
    """A quarter of 1710 is 427.5 MPa, below the 448.12 worked."""
    own = WITH_METALS + '[limits."coil-spring.stress-static"]\nshare-of-strength = "0.25"\n'
    assert workshop.write({**spring(), "speclint.toml": own}).only(STATIC).outcome == "finding"


@pytest.mark.parametrize("line", ['free_length = "140 mm"', 'working_coils = "8"', 'material = "known-wire"'])
@pytest.mark.parametrize("rule", [STATIC, SOLID])
def test_stresses_are_not_assessed_without(workshop: DesignFolder, line: str, rule: str) -> None:
    check = workshop.write(spring((line, ""))).only(rule)
    assert check.outcome == "not assessed"
    assert line.split()[0] in check.says


def test_solid_stress_of_a_sound_spring(workshop: DesignFolder) -> None:
    """s = 140 − 80 = 60 mm; 448.12 × 60/40 = 672.2 MPa; 0.56 × 1710 = 957.6; 0.7020."""
    check = workshop.write(spring()).only(SOLID)
    assert check.outcome == "conforms"
    assert check.utilisation == pytest.approx(0.7020, rel=1e-3)
    assert check.judgement is not None
    assert "pressed solid when it was made" in [one.says for one in check.judgement.every]


@pytest.mark.parametrize(("free", "outcome"), [("165.47 mm", "conforms"), ("165.49 mm", "finding")])
def test_solid_limit_from_both_sides(workshop: DesignFolder, free: str, outcome: str) -> None:
    """957.6/855 × 76.319 = 85.477 mm above the 80 mm solid."""
    assert workshop.write(spring(('"140 mm"', f'"{free}"'))).only(SOLID).outcome == outcome


def test_a_spring_that_was_not_preset_is_a_query(workshop: DesignFolder) -> None:
    check = workshop.write(spring(("preset = true", "preset = false"))).only(SOLID)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert "it was not preset" in check.says
    silent = workshop.write(spring(("preset = true\n", ""))).only(SOLID)
    assert silent.outcome == "not assessed"


def test_hot_coiled_solid_stress_is_a_query(workshop: DesignFolder) -> None:
    check = workshop.write(spring(('"cold"', '"hot"'))).only(SOLID)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@given(
    G=st.floats(60e9, 85e9),
    d=st.floats(2e-3, 15e-3),
    w=st.floats(4.0, 12.0),
    n=st.floats(2.0, 20.0),
    s=st.floats(1e-3, 0.2),
)
def test_stress_by_way_of_load_is_that_of_the_strain(
    G: float, d: float, w: float, n: float, s: float
) -> None:
    """Independent route: the twist of the wire gives τ = G d s/(π D² n), the load does not come into it."""
    D = w * d
    F = spring_load(R=spring_rate(G=G, d=d, D=D, n=n), s=deflection(L_0=0.5, L=0.5 - s))
    assert shear_stress(F=F, D=D, d=d) == pytest.approx(G * d * s / (math.pi * D**2 * n), rel=1e-6)


@given(x=st.floats(0.1, 1.0), R_m=st.floats(1e9, 2.5e9))
def test_share_of_strength_rises_with_both(x: float, R_m: float) -> None:
    assert share_of_strength(k=x, R=2 * R_m) == pytest.approx(2 * share_of_strength(k=x, R=R_m))
