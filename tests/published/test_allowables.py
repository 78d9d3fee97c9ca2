"""Allowable tension of pressure parts against the tables of the codes.

Everything here is recalled (memory); each row was worked again by hand from the strengths that its code divides.
"""

from __future__ import annotations

import pytest

from speclint.handbook.materials import allowables, material
from tests.published.proof import proves

KSI = 6.894757293168e6
ROOM = 293.15


@proves("materials.allowables", memory="ASME BPVC Section II Part D, table 1A and Section VIII, UCI-23")
@pytest.mark.parametrize(
    ("iron", "strength", "printed"),
    [(20, 20, 2.0), (25, 25, 2.5), (30, 30, 3.0), (35, 35, 3.5), (40, 40, 4.0), (50, 50, 5.0), (60, 60, 6.0)],
)
def test_grey_iron_as_the_code_prints_it(iron: int, strength: float, printed: float) -> None:
    """UCI-23 prints 2.0 ksi for class 20 to 6.0 ksi for class 60, whose strengths in ksi are their names."""
    assert iron == strength
    assert allowables.grey_iron_allowable(strength * KSI) / KSI == pytest.approx(printed)


@proves("materials.allowables", memory="ASME BPVC Section VIII Division 1, UCD-23")
def test_ductile_iron_as_the_code_prints_it() -> None:
    """UCD-23: 12.0 ksi for SA-395 60-40-18, whose strength is 60 ksi."""
    assert allowables.ductile_iron_allowable(60 * KSI) / KSI == pytest.approx(12.0)


@proves("materials.allowables", "materials.library", memory="EN 13445-3, table 6-1")
@pytest.mark.parametrize(
    ("name", "thickness", "proof", "tensile", "expected"),
    [
        # EN 10028-2, up to 16 mm: 265 and 410 MPa; 265/1.5 = 176.7, 410/2.4 = 170.83
        ("plate-P265GH", 0.012, 265, 410, 170.83),
        # 235 and 360 MPa: 156.67, 150.0
        ("plate-P235GH", 0.012, 235, 360, 150.0),
        # 355 and 510 MPa: 236.67, 212.5
        ("plate-P355GH", 0.012, 355, 510, 212.5),
        # 275 and 440 MPa: 183.33, 183.33
        ("plate-16Mo3", 0.012, 275, 440, 183.33),
    ],
)
def test_cold_plate_is_allowed_a_share_of_its_tensile_strength(
    name: str, thickness: float, proof: float, tensile: float, expected: float
) -> None:
    plate = material(name)
    assert allowables.wrought_steel_allowable(proof * 1e6, tensile * 1e6) / 1e6 == pytest.approx(
        expected, rel=1e-4
    )
    assert plate.allowable_tension(ROOM, thickness).low / 1e6 == pytest.approx(expected, rel=1e-3)


@proves(
    "materials.allowables",
    "materials.library",
    seen="EN 10216-2:2007, tables 4 and 5, as reproduced in a public pipe-wall calculation",
)
def test_hot_tube_is_allowed_a_share_of_its_proof_stress() -> None:
    """Tube of P235GH at 350 °C: 120/1.5 = 80 MPa, below 360/2.4 = 150."""
    assert allowables.wrought_steel_allowable(120e6, 360e6) / 1e6 == pytest.approx(80)
    assert material("tube-P235GH").allowable_tension(623.15, 0.004).low / 1e6 == pytest.approx(80, rel=1e-3)


@proves("materials.allowables", memory="AD 2000-Merkblatt B 0, table 2")
@pytest.mark.parametrize(
    ("ask", "given", "expected"),
    [
        # rolled and forged steel: K/1.5; P265GH at 300 °C, K = 154 MPa
        (allowables.wrought_steel_allowable, (154e6, 410e6), 102.67e6),
        # austenitic steel: the 1 % proof stress over 1.5
        (allowables.austenitic_steel_allowable, (157e6,), 104.67e6),
        # rolled and cast bronze: K/4
        (allowables.copper_alloy_allowable, (220e6,), 55e6),
    ],
)
def test_safety_factors_of_the_german_rules(ask: object, given: tuple[float, ...], expected: float) -> None:
    assert callable(ask)
    assert ask(*given) == pytest.approx(expected, rel=1e-4)


@proves("materials.allowables", memory="EN 13445-3, 6.5 and 11.4.3")
@pytest.mark.parametrize(
    ("ask", "given", "expected"),
    [
        # cast steel 1.9 and 3: GP240GH at 20 °C, 240/1.9 = 126.32, 420/3 = 140; soft and strong castings
        (allowables.cast_steel_allowable, (240e6, 420e6), 126.32e6),
        (allowables.cast_steel_allowable, (300e6, 420e6), 140e6),
        # bolting 3 and 4: 42CrMo4 to 60 mm, 730/3 = 243.3, 860/4 = 215
        (allowables.bolting_steel_allowable, (730e6, 860e6), 215e6),
        (allowables.bolting_steel_allowable, (440e6, 600e6), 146.67e6),
    ],
)
def test_castings_and_bolting_by_the_european_rules(
    ask: object, given: tuple[float, ...], expected: float
) -> None:
    assert callable(ask)
    assert ask(*given) == pytest.approx(expected, rel=1e-4)
