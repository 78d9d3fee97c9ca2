"""Materials against published tables, textbooks and reference libraries.

Rows are in materials.csv. Seen rows were read in a copy of the document named, textbooks in public companion
notebooks; library rows were read from the library and version named; memory rows are recalled.
"""

from __future__ import annotations

import csv
import math
from pathlib import Path

import pytest

from speclint.handbook.materials import Material, material
from speclint.handbook.materials.properties import PROPERTIES
from speclint.handbook.tables.reading import Reading
from tests.published.proof import proves


def published() -> list[dict[str, str]]:
    """The rows of materials.csv."""
    lines = Path(__file__).with_name("materials.csv").read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def read(one: Material, row: dict[str, str]) -> Reading:
    """What the library says to the question of a row."""
    key, _, part = row["property"].partition(" ")
    method = getattr(one, key.replace("-", "_"))
    asked = [part] if part else []
    arguments = [float(row["at_degC"]) + 273.15] if row["at_degC"] else []
    sizes = [float(row["size_mm"]) / 1e3] if row["size_mm"] else []
    reading: Reading = method(*asked, *arguments, *sizes)
    return reading


def sources(rows: list[dict[str, str]]) -> dict[str, set[str]]:
    """The sources of the rows by how they were obtained."""
    return {how: {row["source"] for row in rows if row["how"] == how} for how in {row["how"] for row in rows}}


ROWS = published()


@proves("materials.library", "materials.properties", **sources(ROWS))
@pytest.mark.parametrize(
    "row", ROWS, ids=[f"{r['material']}-{r['property']}-{r['at_degC']}-{n}" for n, r in enumerate(ROWS)]
)
def test_published_figure(row: dict[str, str]) -> None:
    factor, offset = PROPERTIES[row["property"].split()[0]].units[row["unit"]]
    expected = float(row["expected"]) * factor + offset
    reading = read(material(row["material"]), row)
    if row["compare"] == "near":
        assert reading.nominal == pytest.approx(expected, rel=float(row["tolerance_percent"]) / 100)
    else:
        assert row["compare"] == "inside"
        assert reading.low * (1 - 1e-9) <= expected <= reading.high * (1 + 1e-9)


@proves("materials.library", library="me-toolbox, after Shigley, table 10-4")
@pytest.mark.parametrize(
    ("wire", "A", "m", "diameters", "within"),
    [
        # A in MPa·mm^m; the American wire nearest to each of EN 10270
        ("wire-patented-SH", 2211, 0.145, (0.4, 1, 2, 4, 6), 0.08),
        ("wire-patented-SL", 1783, 0.190, (1, 2, 4, 6), 0.07),
        ("wire-oil-tempered-FDC", 1855, 0.187, (0.6, 1, 2, 4), 0.08),
        ("wire-oil-tempered-VDCrV", 2005, 0.168, (1, 2, 3, 4, 6, 8, 10), 0.05),
        ("wire-oil-tempered-VDSiCr", 1974, 0.108, (2, 4, 6, 8), 0.12),
        ("wire-stainless-1.4310", 1867, 0.146, (0.5, 1, 2), 0.09),
        ("wire-stainless-1.4310", 2065, 0.263, (3, 4), 0.06),
    ],
)
def test_wire_strength_against_the_american_wires(
    wire: str, A: float, m: float, diameters: tuple[float, ...], within: float
) -> None:
    """S_ut = A/d^m, Budynas and Nisbett, Shigley's Mechanical Engineering Design, table 10-4.

    The constants are those that me-toolbox 0.0.18 holds. Grades differ, so that they agree within some per cent.
    """
    for d in diameters:
        assert material(wire).wire_strength(d / 1e3).low == pytest.approx(A / d**m * 1e6, rel=within)


@proves("materials.library", memory="Roloff/Matek, Maschinenelemente")
@pytest.mark.parametrize(
    ("wire", "at_1_mm", "fall"),
    [("wire-patented-SL", 1720, 660), ("wire-patented-SM", 1980, 740), ("wire-patented-DH", 2220, 820)],
)
def test_patented_wire_against_the_line_of_a_handbook(wire: str, at_1_mm: float, fall: float) -> None:
    """R_m = a - b lg d (Roloff/Matek, Maschinenelemente, from memory) draws EN 10270-1 within 2 %, in every band."""
    (table,) = material(wire).tables["wire-strength"]
    diameters = [edge for edge in table.edges[1:] if 1e-3 <= edge <= 20e-3]
    assert len(diameters) >= 30
    for d in diameters:
        expected = (at_1_mm - fall * math.log10(d * 1e3)) * 1e6
        assert material(wire).wire_strength(d).low == pytest.approx(expected, rel=0.02)


@proves("materials.library", memory="EN 1993-1-2")
@pytest.mark.parametrize("at", [100.0, 200.0, 300.0, 400.0, 500.0])
def test_expansion_of_carbon_steel_against_the_fire_code(at: float) -> None:
    """EN 1993-1-2, 3.4.1.1 (from memory): Δl/l = 1.2e-5 θ + 0.4e-8 θ² - 2.416e-4, zero at 20 °C.

    Hand working at 300 °C: 3.6e-3 + 3.6e-4 - 2.416e-4 = 3.7184e-3 over 280 K: 13.28e-6/K.
    """
    strain = 1.2e-5 * at + 0.4e-8 * at**2 - 2.416e-4
    reading = material("plate-P265GH").expansion(at + 273.15)
    assert reading.nominal == pytest.approx(strain / (at - 20), rel=0.04)


@proves("materials.library", seen="ASME B31.1-1995")
def test_modulus_of_every_grey_iron_falls_as_the_code_says() -> None:
    """ASME B31.1-1995, seen: 13.2, 12.6 and 11.7 million psi at 200, 400 and 600 °F."""
    for name in ("grey-iron-200", "grey-iron-250", "grey-iron-300", "grey-iron-350", "ring-iron"):
        at_200, at_400, at_600 = (
            material(name).modulus((f + 459.67) / 1.8).nominal for f in (200.0, 400.0, 600.0)
        )
        assert at_400 / at_200 == pytest.approx(12.6 / 13.2, rel=2e-3)
        assert at_600 / at_200 == pytest.approx(11.7 / 13.2, rel=2e-3)


@proves("materials.library", memory="ASME II-D, table Y-1")
def test_hot_proof_stress_of_plate_lies_near_that_of_the_like_american_steel() -> None:
    """ASME II-D table Y-1, SA-516 grade 60 (from memory): 32 ksi at 100 °F, 25.9 at 600 °F: 81 % is kept.

    EN warrants its hot figures as minima, ASME states expected ones; EN lies lower, by no more than a quarter.
    """
    plate = material("plate-P265GH")
    kept = plate.proof_stress((600 + 459.67) / 1.8, 0.012).low / plate.proof_stress(293.15, 0.012).low
    assert 0.75 * 25.9 / 32 < kept < 25.9 / 32


@proves("materials.library", memory="EN 10028-2:2009")
@pytest.mark.parametrize(
    ("name", "kept"),
    [
        # the share of the room yield kept at 100, 200, 300 and 400 °C, from the least thickness of each steel
        ("plate-P235GH", (214 / 235, 182 / 235, 153 / 235, 133 / 235)),
        ("plate-P265GH", (241 / 265, 205 / 265, 173 / 265, 150 / 265)),
        ("plate-P355GH", (323 / 355, 275 / 355, 232 / 355, 202 / 355)),
        ("plate-P355NH", (323 / 355, 275 / 355, 232 / 355, 202 / 355)),
        ("plate-16Mo3", (264 / 275, 233 / 275, 194 / 275, 159 / 275)),
        ("plate-13CrMo4-5", (285 / 300, 252 / 300, 216 / 300, 186 / 300)),
    ],
)
def test_every_thickness_of_a_plate_keeps_the_same_share_when_hot(name: str, kept: tuple[float, ...]) -> None:
    """EN 10028-2 and -3:2009 draw one curve a steel and scale it by the yield stress of each thickness."""
    plate = material(name)
    (table,) = plate.tables["proof-stress"]
    for thickness in table.edges[1:]:
        cold = plate.proof_stress(293.15, thickness).low
        for at, share in zip((100.0, 200.0, 300.0, 400.0), kept, strict=True):
            assert plate.proof_stress(at + 273.15, thickness).low / cold == pytest.approx(share, rel=0.01)


@proves("materials.library", memory="EN 10028-2:2009")
def test_the_carbon_plates_share_one_curve() -> None:
    """P235GH, P265GH and P355GH of EN 10028-2:2009 keep 65 % of their yield stress at 300 °C, within 1 %."""
    for name in ("plate-P235GH", "plate-P265GH", "plate-P355GH"):
        plate = material(name)
        share = plate.proof_stress(573.15, 0.016).low / plate.proof_stress(293.15, 0.016).low
        assert share == pytest.approx(0.652, rel=0.01)
