"""Packings, galvanic pairs and weldability against figures in print.

seen: read in a copy of the work; derived: by hand from figures seen; memory: recalled, not read.
"""

from __future__ import annotations

import math

import pytest

from speclint.handbook.materials import galvanic, packings, weldability
from tests.published.proof import proves

# Packings


@proves("materials.packings", memory=["ASTM B23", "ASTM D4894", "ASTM D2000"])
@pytest.mark.parametrize(
    ("packing", "ends_at", "why"),
    [
        pytest.param("white metal segments", 241, "solidus of grade 2", id="ASTM B23 (memory)"),
        pytest.param("braided PTFE", 327, "melting point of PTFE", id="ASTM D4894 (memory)"),
        pytest.param("NBR ring", 100, "type B", id="ASTM D2000 class BG (memory)"),
        pytest.param("EPDM ring", 150, "type D", id="ASTM D2000 class DA (memory)"),
        pytest.param("FKM ring", 250, "type H", id="ASTM D2000 class HK (memory)"),
        pytest.param("silicone ring", 225, "type G", id="ASTM D2000 class GE (memory)"),
    ],
)
def test_no_packing_is_rated_past_what_its_material_bears(packing: str, ends_at: float, why: str) -> None:
    rated = packings.hottest(packing).nominal - 273.15
    assert rated <= ends_at, why
    assert rated > 0.55 * ends_at


@proves("materials.packings", library="iapws")
def test_white_metal_bears_saturated_steam_at_its_own_pressure() -> None:
    """IAPWS-IF97 through the iapws library: saturated at 16 bar gauge (1.701 MPa absolute) is 204.3 °C."""
    from iapws import IAPWS97

    saturated = IAPWS97(P=1.6 + 0.101325, x=1).T
    assert saturated == pytest.approx(204.3 + 273.15, abs=0.1)
    assert packings.greatest_pressure("white metal segments").nominal == pytest.approx(1.6e6)
    assert packings.hottest("white metal segments").nominal > saturated


@proves("materials.packings", memory="common practice")
def test_iron_segments_are_rated_as_running_parts_of_iron() -> None:
    """Grey iron that does not hold pressure runs to about 400 °C before it grows (common practice)."""
    assert packings.hottest("grey iron segments").nominal - 273.15 == pytest.approx(400, abs=1)


RATINGS = [
    # °C, bar, m/s; why. Set beside the table with the table in view: reasons, not a second source.
    pytest.param(
        "white metal segments", 210, 16, 6, id="saturated steam at 16 bar is 204 °C; solidus 241 °C"
    ),
    pytest.param("bronze segments", 300, 20, 6, id="tin bronze keeps its strength to about 300 °C"),
    pytest.param("grey iron segments", 400, 25, 8, id="iron grows above 400 °C; piston speeds of 8 m/s"),
    pytest.param("carbon segments", 350, 25, 10, id="resin-free carbon burns slowly in air above 350 °C"),
    pytest.param(
        "braided graphite", 450, 250, 2, id="graphite oxidises in air above 450 °C; valve stems to PN 250"
    ),
    pytest.param("braided PTFE", 260, 100, 2, id="PTFE serves to 260 °C; stems to PN 100 and 2 m/s"),
    pytest.param(
        "braided PTFE with graphite", 280, 100, 8, id="makers' sheets: 280 °C, 100 bar on rams, 8 m/s"
    ),
    pytest.param("braided aramid", 250, 60, 8, id="aramid fibre to 250 °C in steam-free service"),
    pytest.param("braided flax with tallow", 110, 10, 3, id="vegetable fibre: hot water, no more"),
    pytest.param("grooved bush", 400, 25, 12, id="iron, as its segments; nothing rubs"),
    pytest.param("NBR ring", 100, 40, 0.5, id="ISO 1629 NBR: 100 °C; O-ring reciprocating 0.5 m/s"),
    pytest.param("EPDM ring", 140, 16, 0.5, id="ISO 1629 EPDM, sulphur cured: 140 °C, wet steam to 3.6 bar"),
    pytest.param("FKM ring", 200, 40, 0.5, id="ISO 1629 FKM: 200 °C continuous"),
    pytest.param("silicone ring", 200, 10, None, id="ISO 1629 VMQ: 200 °C, weak: 10 bar, not sliding"),
]


@proves(
    "materials.packings",
    memory="common practice, as rod packers and makers' sheets of braids and rings have it",
)
@pytest.mark.parametrize(("packing", "celsius", "bar", "speed"), RATINGS)
def test_ratings_of_packings(packing: str, celsius: float, bar: float, speed: float | None) -> None:
    """No standard rates packings: each figure stands here again with a reason; no independent source."""
    assert packings.hottest(packing).nominal == pytest.approx(celsius + 273.15)
    assert packings.greatest_pressure(packing).nominal == pytest.approx(bar * 1e5)
    if speed is not None:
        assert packings.fastest(packing).nominal == speed


@proves(
    "materials.packings",
    memory="common practice, as rod packers and makers' sheets of braids and rings have it",
)
def test_every_packing_is_among_the_ratings() -> None:
    assert {str(row.values[0]) for row in RATINGS} == set(packings.packings())


# Galvanic pairs


@proves("materials.galvanic", seen="anodic index, public table", memory="MIL-STD-1250A")
@pytest.mark.parametrize(
    ("metal", "index"),
    [
        pytest.param("18 % chromium stainless steel", -0.50, id="seen"),
        pytest.param("12 % chromium stainless steel", -0.60, id="seen, note"),
        pytest.param("carbon steel", -0.85, id="memory"),
        pytest.param("cast iron", -0.85, id="memory, iron"),
        pytest.param("brass or bronze", -0.40, id="derived"),
    ],
)
def test_anodic_index_as_printed(metal: str, index: float) -> None:
    """A published anodic index table (rows as marked)."""
    assert galvanic.anodic_index(metal).nominal == index


@proves("materials.galvanic", derived="hand working")
def test_bronze_on_cast_iron() -> None:
    """(derived) 0.45 V: too much for weather and for indoors, within the limit of dry and controlled air."""
    U = galvanic.potential_difference(-0.40, -0.85)
    assert pytest.approx(0.45) == U
    assert U > galvanic.potential_limit("weather and wet").nominal == 0.15
    assert U > galvanic.potential_limit("indoors").nominal == 0.25
    assert U < galvanic.potential_limit("dry and controlled").nominal == 0.50


@proves("materials.galvanic", seen="Professional Boatbuilder 100 (2006), Galvanic series in sea water")
@pytest.mark.parametrize(
    ("metal", "noble", "base"),
    [("cast iron", -0.60, -0.71), ("mild steel", -0.60, -0.71), ("nickel cast iron", -0.46, -0.58)],
)
def test_sea_water_potentials_as_printed(metal: str, noble: float, base: float) -> None:
    """Galvanic series in sea water, Professional Boatbuilder 100 (2006) (seen), V against Ag/AgCl."""
    found = galvanic.sea_water_potential(metal)
    assert (found.high, found.low) == (noble, base)


@proves("materials.galvanic", seen=["Professional Boatbuilder 100 (2006), Galvanic series in sea water"])
def test_both_series_agree_on_who_corrodes() -> None:
    """The anodic index (MIL-STD-1250A) and the sea water series are independent: same order for shared metals."""
    shared = ["copper", "brass or bronze", "cast iron", "zinc plate"]
    in_sea_water = ["copper", "brass", "cast iron", "zinc"]
    index = [galvanic.anodic_index(name).nominal for name in shared]
    potential = [galvanic.sea_water_potential(name).nominal for name in in_sea_water]
    assert index == sorted(index, reverse=True)
    assert potential == sorted(potential, reverse=True)
    assert pytest.approx(potential[2] - potential[1], abs=0.2) == -0.85 + 0.40


# Weldability


@proves("materials.weldability", derived="CSA Z662 (1999), method sheet whose composition was seen")
def test_steel_of_the_pipeline_method_sheet() -> None:
    """CSA Z662 (1999) method sheet (composition seen): 0.25 C, 1.28 Mn, 0.109 Cu, 0.06 Ni, 0.088 Cr+Mo+V+Nb.

    By hand in the IIW form: 0.25 + 0.21333 + 0.0176 + 0.01127 = 0.4922 %. The sheet's own form, with silicon
    and nickel/20, prints 0.5078 %.
    """
    found = weldability.carbon_equivalent(0.0025, 0.0128, 0.00088, 0.0, 0.0, 0.0006, 0.00109) * 100
    assert found == pytest.approx(0.4922, abs=1e-4)
    theirs = found + 0.29 / 24 + 0.06 / 20 - 0.06 / 15 + 5 * 0.0009
    assert theirs == pytest.approx(0.5078, abs=1e-4)


@proves("materials.weldability", memory=["EN 10083-3", "EN 10025-2", "EN 10028-2"])
@pytest.mark.parametrize(
    ("C", "Mn", "Cr", "Mo", "published"),
    [
        pytest.param(0.42, 0.75, 1.05, 0.225, 0.80, id="42CrMo4 of EN 10083-3, mid composition"),
        pytest.param(0.20, 1.60, 0.0, 0.0, 0.467, id="S355 of EN 10025-2, greatest carbon and manganese"),
        pytest.param(0.13, 0.70, 0.925, 0.50, 0.53, id="13CrMo4-5 of EN 10028-2, mid composition"),
    ],
)
def test_known_steels(C: float, Mn: float, Cr: float, Mo: float, published: float) -> None:
    """Compositions from memory of the standards named, equivalents by hand to two figures."""
    found = weldability.carbon_equivalent(C / 100, Mn / 100, Cr / 100, Mo / 100, 0.0, 0.0, 0.0)
    assert found * 100 == pytest.approx(published, abs=6e-3)


@proves("materials.weldability", memory="EN 1011-2")
@pytest.mark.parametrize("CET", [0.25, 0.33, 0.40])
@pytest.mark.parametrize("d", [15.0, 40.0, 80.0])
@pytest.mark.parametrize(("HD", "Q"), [(3.0, 0.8), (5.0, 1.0), (10.0, 2.5)])
def test_preheat_is_the_sum_of_the_standard_s_four_parts(CET: float, d: float, HD: float, Q: float) -> None:
    """EN 1011-2, C.3.2.2 to C.3.2.5 (memory), prints the parts apart, °C."""
    by_steel = 750 * CET - 150
    by_plate = 160 * math.tanh(d / 35) - 110
    by_hydrogen = 62 * HD**0.35 - 100
    by_heat = (53 * CET - 32) * Q - 53 * CET + 32
    found = weldability.preheat_temperature(CET / 100, d / 1e3, HD * 1e-5, Q * 1e6) - 273.15
    assert found == pytest.approx(by_steel + by_plate + by_hydrogen + by_heat)


@proves("materials.weldability", derived="hand working")
def test_iron_of_the_foundry_definition() -> None:
    """(derived) 3.3 C, 1.5 Si, 0.5 P: CE 3.967 %, short of the eutectic at 4.3 %."""
    found = weldability.carbon_equivalent_of_iron(0.033, 0.015, 0.005)
    assert found * 100 == pytest.approx(3.967, abs=1e-3)
    assert found < 0.043
    assert weldability.saturation_of_iron(0.033, 0.015, 0.005) < 1


@proves("materials.weldability", memory="iron-carbon phase diagram", derived="hand working")
@pytest.mark.parametrize(("C", "Si", "S_c"), [(4.26, 0.0, 1.0), (3.4, 2.0, 0.934), (3.2, 1.8, 0.864)])
def test_saturation(C: float, Si: float, S_c: float) -> None:
    """Iron and carbon alone have their eutectic at 4.26 % (phase diagram, memory); the rest by hand."""
    assert weldability.saturation_of_iron(C / 100, Si / 100, 0.0) == pytest.approx(S_c, abs=1e-3)
