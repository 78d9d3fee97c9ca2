"""The metal of parts as made: strengths, elongation, hardness and carbon equivalent, each limit from both sides."""

from __future__ import annotations

import pytest

from speclint.checking import assess
from speclint.testing import DesignFolder, changed, expect_not_applicable, on_sheet
from tests.plugins.release.made import DRAWN, MADE, made
from tests.plugins.release.part import RING, files, settings


def test_certified_strengths_from_both_sides(workshop: DesignFolder) -> None:
    """EN 10028-2 table 4, P265GH of the greatest thickness, 150 to 250 mm: R_m is at least 390 MPa."""
    assert on_sheet(made(workshop, "made.strength"), "R_m_min") == 390e6
    for certified, outcome in (("390 MPa", "conforms"), ("389 MPa", "finding")):
        change = ('tensile_strength = "447 MPa"', f'tensile_strength = "{certified}"')
        assert made(workshop, "made.strength", change).outcome == outcome


def test_a_strength_that_no_certificate_states_is_held_against_nothing(workshop: DesignFolder) -> None:
    none = ('proof_stress = "281 MPa"\n', ""), ('tensile_strength = "447 MPa"\n', "")
    for one in none:
        assert made(workshop, "made.strength", one).outcome == "conforms"
    expect_not_applicable(made(workshop, "made.strength", *none), "its certificate states no strength")


def test_a_certified_elongation_from_both_sides(workshop: DesignFolder) -> None:
    """EN 10028-2 table 3, P265GH up to 100 mm: at least 22 %; it is told beside strengths that suffice."""
    for certified, outcome in (("22 %", "conforms"), ("21.9 %", "finding"), ("3 %", "finding")):
        change = ('tensile_strength = "447 MPa"', f'tensile_strength = "447 MPa"\nelongation = "{certified}"')
        assert made(workshop, "made.strength", change).outcome == outcome
    alone = ('proof_stress = "281 MPa"\n', ""), ('tensile_strength = "447 MPa"', 'elongation = "21 %"')
    assert made(workshop, "made.strength", *alone).outcome == "finding"


def test_the_carbon_equivalent_of_the_analysis(workshop: DesignFolder) -> None:
    """0.16 + 1.2/6 + (0.08 + 0.02 + 0.005)/5 + (0.15 + 0.15)/15 = 0.16 + 0.2 + 0.021 + 0.02 = 0.401 %."""
    check = made(workshop, "made.carbon-equivalent")
    assert on_sheet(check, "CE") == pytest.approx(0.00401)
    for stated, outcome in (
        ("0.4209 %", "conforms"),
        ("0.4211 %", "finding"),
        ("0.3811 %", "conforms"),
        ("0.3809 %", "finding"),
    ):
        change = ('carbon_equivalent = "0.41 %"', f'carbon_equivalent = "{stated}"')
        assert made(workshop, "made.carbon-equivalent", change).outcome == outcome
    left = made(workshop, "made.carbon-equivalent", ('V = "0.005 %"\n', ""))
    assert (left.outcome, left.says) == ("not assessed", "the analysis does not state V")


def test_no_metal_yields_above_its_tensile_strength(workshop: DesignFolder) -> None:
    for proof, told in (("447 MPa", 0), ("448 MPa", 1)):
        text = changed(MADE, ('proof_stress = "281 MPa"', f'proof_stress = "{proof}"'))
        workshop.write({**files(DRAWN), "cover-7.toml": text}, settings=settings())
        found = assess([workshop.root], workshop.loaded, []).complaints
        assert len(found) == told
        assert all("no more than 447 MPa" in str(one) for one in found)


def test_a_bar_of_iron_tells_nothing_of_its_part(workshop: DesignFolder) -> None:
    record = 'kind = "made-part"\nid = "ring-1"\nof = "ring"\n[certificate]\ntensile_strength = "90 MPa"\n'
    workshop.write({**files(), "ring-1.toml": record}, settings=settings())
    expect_not_applicable(workshop.only("made.strength", "ring-1"), "tells little of its walls")


@pytest.mark.parametrize("spec", [RING, 'kind = "cylinder-cover"\nid = "ring"\n'])
def test_a_hardness_that_no_spec_asks_for_is_not_judged(workshop: DesignFolder, spec: str) -> None:
    """Of a kind that may state one and does not, and of a kind that states none."""
    record = 'kind = "made-part"\nid = "ring-1"\nof = "ring"\n[certificate]\nhardness = "200 HB"\n'
    workshop.write({**files(), "ring.toml": spec, "ring-1.toml": record}, settings=settings())
    expect_not_applicable(workshop.only("made.hardness", "ring-1"), "asks for no hardness")


#: The record of a ring.
OF_RING = 'kind = "made-part"\nid = "ring-1"\nof = "ring"\n'


@pytest.mark.parametrize(
    ("certified", "outcome"),
    [("200 HB", "conforms"), ("220 HB", "conforms"), ("199 HB", "finding"), ("215..221 HB", "finding")],
)
def test_certified_hardness_from_both_sides(workshop: DesignFolder, certified: str, outcome: str) -> None:
    ring = f'{RING}hardness = "210 HB ±10"\n'
    record = f'{OF_RING}[certificate]\ntype = "3.1"\nhardness = "{certified}"\n'
    workshop.write({**files(), "ring.toml": ring, "ring-1.toml": record})
    assert workshop.only("made.hardness", "ring-1").outcome == outcome


_MEASURED = (
    '[measured.hardness]\nvalues = ["212 HB"]\nuncertainty = "2 HB"\ninstrument = "tester 4"\n'
    'date = "2026-03-02"\ninspector = "K. Ashby"\n'
)


@pytest.mark.parametrize(
    ("document", "more", "says"),
    [
        ('type = "2.1"\n', "", "inspection document 2.1 rests on no test"),
        ('type = "2.2"\n', "", "inspection document 2.2 rests on no test"),
        ("", "", "a document of no type"),
        ('type = "3.1"\n', "", None),
        ('type = "3.2"\n', "", None),
        ('type = "2.2"\n', _MEASURED, None),
    ],
)
def test_a_hardness_is_certified_by_a_test_of_its_metal(
    workshop: DesignFolder, document: str, more: str, says: str | None
) -> None:
    """EN 10204: 2.1 and 2.2 tell of no test of what is delivered; the works may have measured it instead."""
    ring = f'{RING}hardness = "210 HB ±10"\n'
    record = f'{OF_RING}[certificate]\n{document}hardness = "212 HB"\n{more}'
    workshop.write({**files(), "ring.toml": ring, "ring-1.toml": record}, settings=settings())
    check = workshop.only("made.hardness", "ring-1")
    assert (check.outcome == "conforms") == (says is None)
    assert says is None or says in check.says
