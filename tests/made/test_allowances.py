"""What ends when a part is measured, what stays, and strengths as certified where a setting allows them."""

from __future__ import annotations

import pytest

from speclint.handbook.materials import material
from speclint.made import PartMade, judge
from speclint.made.certified import certified, material_as_certified
from speclint.specs import Stated
from speclint.testing import DesignFolder, on_sheet
from tests.plugins.steamways.pipe import files

MADE = """
kind = "made-part"
id = "pipe-1"
of = "pipe"
serial = "1"
[measured.wall]
values = ["5.55 mm", "5.61 mm"]
uncertainty = "50 µm"
date = "2026-05-31"
[certificate]
type = "3.1"
number = "C-1"
proof_stress = "320 MPa"
tensile_strength = "500 MPa"
"""
MEASURED = MADE[MADE.index("[measured") : MADE.index("[certificate")]


def judged(workshop: DesignFolder, made: str = MADE, settings: str = "") -> PartMade:
    stated = '[works]\nstage = "draft"\nsite_pressure = "1.01325 bar absolute"\n' + settings
    drawn = workshop.write({**files(), "pipe-1.toml": made}, settings=stated).assess()
    assert not drawn.complaints
    return judge(drawn).parts[0]


def sheet_of(part: PartMade, rule: str, name: str) -> tuple[float, float]:
    """A value of a rule on the pipe, as drawn and as made."""
    pair = next(one for one in part.pairs if one.made.rule.name == rule)
    return on_sheet(pair.drawn, name), on_sheet(pair.made, name)


def test_the_mills_tolerance_ends_and_the_allowances_for_bending_and_corrosion_stay(
    workshop: DesignFolder,
) -> None:
    """Drawn 5.6 mm less 12.5 % is 4.9 mm. Measured the thinnest is 5.55 − 0.05 = 5.50 mm, at the bend 0.85 × 5.50 =
    4.675 mm; the inside of the bend needs 2.59283 mm (test_pipes), of which 2.59283/5.50 = 0.47142 is used.
    """
    part = judged(workshop)
    pair = next(one for one in part.pairs if one.made.rule.name == "pipe.wall")
    assert pair.drawn.utilisation == pytest.approx(2.59283 / 4.9, rel=1e-5)
    assert pair.made.utilisation == pytest.approx(2.59283 / 5.5, rel=1e-5)
    assert sheet_of(part, "pipe.wall", "t_b") == pytest.approx((4.165e-3, 4.675e-3))
    assert sheet_of(part, "pipe.wall", "A") == pytest.approx((1e-3, 1e-3))


def test_the_mills_tolerance_stays_where_the_wall_was_not_measured(workshop: DesignFolder) -> None:
    part = judged(workshop, MADE.replace(MEASURED, ""))
    assert sheet_of(part, "pipe.wall", "t_b") == pytest.approx((4.165e-3, 4.165e-3))


ALLOWED = "[made]\ncertificate_strengths = true\n"


def test_strengths_as_certified_only_where_a_setting_allows_them(workshop: DesignFolder) -> None:
    """ASME B31.1 takes the tensile strength cold; the proof stress hot is that of the standard either way."""
    drawn, made = sheet_of(judged(workshop), "pipe.wall", "R_m")
    assert drawn == made
    part = judged(workshop, settings=ALLOWED)
    drawn, made = sheet_of(part, "pipe.wall", "R_m")
    assert (drawn < 500e6, made) == (True, 500e6)
    hot = sheet_of(part, "pipe.wall", "R_p")
    assert hot[0] == hot[1]


def test_the_strengths_of_a_certificate_stand_as_warm_as_the_room_of_its_test(workshop: DesignFolder) -> None:
    """ISO 6892-1 tests at 10 to 35 °C, 308.15 K: at 36 °C the standard's figures stand."""
    part = judged(workshop)
    assert part.drawn is not None
    word = certified(part.drawn, part.made).material
    assert isinstance(word, Stated)
    metal = material_as_certified(material, {part.made.id: part.made})(word.value)
    plain = material("tube-16Mo3")
    for of, ours, figure in (
        (metal.proof_stress, plain.proof_stress, 320e6),
        (metal.tensile_strength, plain.tensile_strength, 500e6),
    ):
        assert of(308.15, 0.005).nominal == figure
        assert of(309.15, 0.005) == ours(309.15, 0.005)
        assert ours(309.15, 0.005).nominal < figure


@pytest.mark.parametrize(
    ("number", "called"),
    [('number = "C-1"\n', "certificate C-1 of"), ("", "certificate without a number of")],
)
def test_a_strength_of_a_certificate_has_its_limits_and_its_number(
    workshop: DesignFolder, number: str, called: str
) -> None:
    made = MADE.replace('number = "C-1"\n', number).replace('"320 MPa"', '"320..336 MPa"')
    part = judged(workshop, made)
    metal = material_as_certified(material, {"pipe-1": part.made})("tube-16Mo3 as certified for pipe-1")
    reading = metal.proof_stress(293.15, 0.005)
    assert (reading.low, reading.nominal, reading.high) == pytest.approx((320e6, 328e6, 336e6))
    assert str(reading.source).startswith(f"{called} pipe-1")


def test_of_cast_iron_nothing_is_taken_from_a_certificate(workshop: DesignFolder) -> None:
    """A bar cast beside the part tells little of the iron in a thick wall."""
    part = judged(workshop)
    found = material_as_certified(material, {"pipe-1": part.made})
    for name in ("grey-iron-250", "ductile-iron-500-7"):
        assert found(f"{name} as certified for pipe-1") == material(name)


def test_a_certificate_gives_only_the_strength_that_it_states(workshop: DesignFolder) -> None:
    for stated in ('proof_stress = "320 MPa"\n', 'tensile_strength = "500 MPa"\n'):
        part = judged(workshop, MADE.replace(stated, ""), ALLOWED)
        drawn, made = sheet_of(part, "pipe.wall", "R_m")
        assert made == (500e6 if "proof" in stated else drawn)


def test_a_document_that_rests_on_no_test_gives_no_strength(workshop: DesignFolder) -> None:
    drawn, made = sheet_of(judged(workshop, MADE.replace('"3.1"', '"2.2"'), ALLOWED), "pipe.wall", "R_m")
    assert drawn == made
