"""Classes refused, their limits from both sides, and what holds of all of them."""

from __future__ import annotations

import pytest

from speclint.errors import NotKnown
from speclint.handbook.threads.property_classes import HOTTEST, property_class, property_classes


@pytest.mark.parametrize(
    ("name", "diameter", "strength", "proof"),
    [
        # ISO 898-1:2013, Table 3 and Table 5, MPa: memory
        ("8.8", 16, 800, 580),
        ("8.8", 16.001, 830, 600),
        ("4.6", 39, 400, 225),
        ("12.9", 1.6, 1220, 970),
        ("9.8", 16, 900, 650),
        # ISO 3506-1:2009, Table 2; the stress at 0.2 % stands for proof stress: memory
        ("A4-70", 24, 700, 450),
        ("A2-50", 39, 500, 210),
        ("A4-80", 12, 800, 600),
        ("C3-80", 20, 800, 640),
        ("C1-50", 39, 500, 250),
        ("C4-70", 39, 700, 410),
        ("F1-60", 24, 600, 410),
    ],
)
def test_published_strengths_at_the_ends_of_their_ranges(
    name: str, diameter: float, strength: float, proof: float
) -> None:
    found = property_class(name, diameter / 1e3)
    assert found.tensile_strength == pytest.approx(strength * 1e6)
    assert found.proof_stress == pytest.approx(proof * 1e6)


@pytest.mark.parametrize(
    ("name", "diameter"),
    [
        ("8.8", 1.599),
        ("8.8", 39.001),
        ("9.8", 16.001),
        ("A4-70", 24.001),
        ("A2-50", 39.001),
        ("F1-45", 24.001),
    ],
)
def test_diameters_outside_the_standard_are_refused(name: str, diameter: float) -> None:
    with pytest.raises(NotKnown, match=f"gives class {name} from 1.6 to"):
        property_class(name, diameter / 1e3)


@pytest.mark.parametrize("name", property_classes())
def test_every_class_ends_where_its_standard_does(name: str) -> None:
    """39 mm; 16 mm for 9.8; 24 mm for stainless classes 70 and 80 of A1 to A5 and for F1 (memory)."""
    by_agreement = name.startswith("F1") or (name.startswith("A") and not name.endswith("-50"))
    last = 16e-3 if name == "9.8" else 24e-3 if by_agreement else 39e-3
    assert property_class(name, last).name == name
    with pytest.raises(NotKnown, match="is outside"):
        property_class(name, last + 1e-6)


@pytest.mark.parametrize("name", ["8.9", "", "A4", "a4-70", "8,8", "B7", "10.9.1"])
def test_unknown_classes_are_refused_with_those_known(name: str) -> None:
    with pytest.raises(NotKnown, match=r"is no property class; known: 4\.6, "):
        property_class(name, 16e-3)


@pytest.mark.parametrize("name", property_classes())
def test_proof_is_below_yield_and_yield_below_strength(name: str) -> None:
    found = property_class(name, 12e-3)
    assert 0 < found.proof_stress <= found.yield_stress < found.tensile_strength
    assert found.hardness is None or 100 < found.hardness < 400
    assert found.elongation is None or 0.05 < found.elongation < 0.3
    assert found.source.memory


@pytest.mark.parametrize(("name", "share"), [("4.6", 0.22), ("8.8", 0.12), ("10.9", 0.09), ("12.9", 0.08)])
def test_elongation_after_fracture(name: str, share: float) -> None:
    """ISO 898-1, Table 3, A in per cent (from memory)."""
    assert property_class(name, 12e-3).elongation == pytest.approx(share)


@pytest.mark.parametrize("name", ["4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9"])
def test_the_name_is_the_strength(name: str) -> None:
    """ISO 898-1: first figure a hundredth of the strength in MPa, second ten times yield over strength (nominal)."""
    first, second = name.split(".")
    found = property_class(name, 12e-3)
    assert found.tensile_strength / 1e6 == pytest.approx(100 * int(first), rel=0.06)
    assert found.yield_stress / found.tensile_strength == pytest.approx(int(second) / 10, rel=0.04)


def test_stronger_classes_are_harder() -> None:
    hardness = [
        property_class(name, 12e-3).hardness or 0 for name in ("4.6", "5.6", "6.8", "8.8", "10.9", "12.9")
    ]
    assert hardness == sorted(set(hardness))


def test_the_hottest_is_150_degrees() -> None:
    assert pytest.approx(150) == HOTTEST - 273.15
