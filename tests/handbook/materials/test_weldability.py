"""Weldability: ranges from both sides, monotony, and per cent taken for fractions is refused."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.materials import weldability as w

NOTHING = {"Cr": 0.0, "Mo": 0.0, "V": 0.0, "Ni": 0.0, "Cu": 0.0}
contents = st.floats(0, 0.02)


@given(contents, contents, contents, contents, contents, contents, contents)
def test_every_element_adds_to_the_carbon_equivalent(
    C: float, Mn: float, Cr: float, Mo: float, V: float, Ni: float, Cu: float
) -> None:
    steel = {"C": C, "Mn": Mn, "Cr": Cr, "Mo": Mo, "V": V, "Ni": Ni, "Cu": Cu}
    found = w.carbon_equivalent(**steel)
    assert found >= C
    for element, divisor in {"Mn": 6, "Cr": 5, "Mo": 5, "V": 5, "Ni": 15, "Cu": 15}.items():
        more = w.carbon_equivalent(**{**steel, element: steel[element] + 0.003})
        assert more - found == pytest.approx(0.003 / divisor)


@pytest.mark.parametrize(("element", "divisor"), [("Mn", 10), ("Mo", 10), ("Cr", 20), ("Cu", 20), ("Ni", 40)])
def test_what_each_element_adds_to_cet(element: str, divisor: float) -> None:
    steel = {"C": 0.0018, "Mn": 0.0140, "Mo": 0.0, "Cr": 0.0, "Cu": 0.0, "Ni": 0.0}
    more = w.carbon_equivalent_cet(**{**steel, element: steel[element] + 0.004})
    assert more - w.carbon_equivalent_cet(**steel) == pytest.approx(0.004 / divisor)


def test_plain_carbon_steel_is_its_own_equivalent() -> None:
    assert w.carbon_equivalent(0.0020, 0.0, **NOTHING) == pytest.approx(0.0020)
    assert w.cracking_parameter(0.0020, 0, 0, 0, 0, 0, 0, 0, 0) == pytest.approx(0.0020)


def test_per_cent_in_place_of_fractions_is_refused() -> None:
    assert w.carbon_equivalent(0.021, 0.0, **NOTHING) == pytest.approx(0.021)
    with pytest.raises(OutOfRange, match=r"carbon of steel, %, of 18 is outside 0 to 2\.1"):
        w.carbon_equivalent(0.18, 1.4, **NOTHING)
    with pytest.raises(OutOfRange, match=r"carbon of steel, %, of 2\.11 is outside"):
        w.carbon_equivalent(0.0211, 0.0, **NOTHING)
    with pytest.raises(OutOfRange, match="a content, %, of 140 is outside 0 to 100"):
        w.cracking_parameter(0.0018, 0.003, 1.4, 0, 0, 0, 0, 0, 0)
    with pytest.raises(OutOfRange, match="a content"):
        w.carbon_equivalent(0.002, -0.001, **NOTHING)


@pytest.mark.parametrize(
    ("element", "least", "greatest"),
    [("C", 0.05, 0.32), ("Mn", 0.5, 1.9), ("Mo", 0, 0.75), ("Cr", 0, 1.5), ("Cu", 0, 0.7), ("Ni", 0, 2.5)],
)
def test_cet_holds_within_its_contents(element: str, least: float, greatest: float) -> None:
    steel = {"C": 0.0018, "Mn": 0.0140, "Mo": 0.0, "Cr": 0.0, "Cu": 0.0, "Ni": 0.0}
    for inside in (least, greatest):
        assert w.carbon_equivalent_cet(**{**steel, element: inside / 100}) > 0
    for outside in (least - 0.001, 1.005 * greatest):
        with pytest.raises(OutOfRange, match=f"{element}, % for CET"):
            w.carbon_equivalent_cet(**{**steel, element: outside / 100})


@given(st.floats(0.0021, 0.0049), st.floats(0.011, 0.089), st.floats(1.1e-5, 19e-5), st.floats(0.55e6, 3.9e6))
def test_preheat_rises_with_steel_plate_and_hydrogen(CET: float, d: float, HD: float, Q: float) -> None:
    found = w.preheat_temperature(CET, d, HD, Q)
    assert w.preheat_temperature(CET * 1.01, d, HD, Q) > found
    assert w.preheat_temperature(CET, d * 1.01, HD, Q) > found
    assert w.preheat_temperature(CET, d, HD * 1.01, Q) > found
    assert w.preheat_temperature(CET, d, HD, Q * 1.01) < found


@pytest.mark.parametrize(
    ("name", "inside", "outside"),
    [
        ("CET", (0.0020, 0.0050), (0.00199, 0.00501)),
        ("d", (0.010, 0.090), (0.0099, 0.0901)),
        ("HD", (1e-5, 20e-5), (0.99e-5, 20.1e-5)),
        ("Q", (0.5e6, 4e6), (0.49e6, 4.01e6)),
    ],
)
def test_preheat_holds_within_its_ranges(
    name: str, inside: tuple[float, float], outside: tuple[float, float]
) -> None:
    usual = {"CET": 0.0035, "d": 0.030, "HD": 5e-5, "Q": 1e6}
    for value in inside:
        assert w.preheat_temperature(**{**usual, name: value}) > 0
    for value in outside:
        with pytest.raises(OutOfRange, match="is outside"):
            w.preheat_temperature(**{**usual, name: value})


@pytest.mark.parametrize(
    ("CE", "word", "high"),
    [(0.0039, "good", 20), (0.0041, "fair", 100), (0.0046, "limited", 200), (0.0056, "poor", 250)],
)
def test_bands(CE: float, word: str, high: float) -> None:
    assert w.weldability(CE).startswith(word)
    assert w.preheat_band(CE).high == pytest.approx(high + 273.15)
    assert w.preheat_band(CE).source.common_practice


def test_the_middle_of_a_band_stands_for_it() -> None:
    """0.50 %: 100 to 200 °C."""
    found = w.preheat_band(0.0050)
    assert [found.low, found.nominal, found.high] == pytest.approx([373.15, 423.15, 473.15])


def test_bands_end() -> None:
    assert w.weldability(0.0149).startswith("hardly")
    for beyond in (0.0151, -0.0001):
        with pytest.raises(NotKnown, match="beyond the bands"):
            w.preheat_band(beyond)


@given(st.floats(0, 0.0149), st.floats(0, 0.0149))
def test_a_higher_equivalent_never_asks_for_less(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert w.preheat_band(low).low <= w.preheat_band(high).low


@given(st.floats(0.025, 0.042), st.floats(0, 0.03), st.floats(0, 0.01))
def test_iron_below_the_eutectic_by_one_measure_is_below_by_the_other(C: float, Si: float, P: float) -> None:
    """CE 4.26 and S_c 1 part only by 0.31 against 1/3 and 0.27 against 1/3: within 0.1 % of carbon."""
    gap = 0.0426 - w.carbon_equivalent_of_iron(C, Si, P)
    assert (w.saturation_of_iron(C, Si, P) < 1) == (gap > 0) or abs(gap) < 0.002


def test_iron_has_its_range() -> None:
    assert w.saturation_of_iron(0.02, 0.0, 0.0) == pytest.approx(0.02 / 0.0426)
    assert w.carbon_equivalent_of_iron(0.05, 0.06, 0.02) > 0.07
    for C, Si, P in ((0.0199, 0.02, 0.0), (0.0501, 0.02, 0.0), (0.03, 0.061, 0.0), (0.03, 0.02, 0.0201)):
        with pytest.raises(OutOfRange, match="of cast iron"):
            w.saturation_of_iron(C, Si, P)
        with pytest.raises(OutOfRange, match="of cast iron"):
            w.carbon_equivalent_of_iron(C, Si, P)
