"""Records of parts as made, read beside the spec that they were made to: what is wrong is told in one line each."""

from __future__ import annotations

import math

import pytest

from speclint.specs import MadePart, measured_size, quantities_of
from speclint.testing import DesignFolder, changed
from tests.plugins.release.part import files

MADE = """
kind = "made-part"
id = "cover-7"
of = "cover"
serial = "7"
made_to = "A"
maker = "an invented works"
[measured.thickness]
values = ["50.02 mm", { value = "50.04 mm", along = "20 mm", round = "90 °" }]
uncertainty = "4 µm"
instrument = "micrometer 14"
date = "2026-05-31"
inspector = "R. Fell"
[certificate]
type = "3.1"
heat = "H-3312"
analysis.C = "0.18 %"
"""


def complaints(workshop: DesignFolder, *changes: tuple[str, str]) -> list[str]:
    text = changed(MADE, *changes)
    assessment = workshop.write({**files(), "cover-7.toml": text}).assess("duty.toml")
    return [str(one) for one in assessment.complaints]


def test_a_record_that_is_right_is_read(workshop: DesignFolder) -> None:
    """50.02 − 0.004 = 50.016; 50.04 + 0.004 = 50.044 mm."""
    assert complaints(workshop) == []
    design = workshop.assess("duty.toml").design
    assert design is not None
    made, cover = design.specs["cover-7"], design.specs["cover"]
    assert isinstance(made, MadePart)
    size = measured_size("thickness", made.measured["thickness"], quantities_of(cover)["thickness"])
    band = size.band(size.uncertainty or 0.0)
    assert (band.low, band.high) == pytest.approx((0.050016, 0.050044), rel=1e-12)
    assert band.text == "50.016..50.044 mm"
    assert (size.name, size.key, size.written, size.date) == (
        "thickness",
        "thickness",
        "4 µm",
        "2026-05-31",
    )
    assert str(size.where) == "cover-7.toml:8 measured.thickness"
    assert size.values[0].along is None
    assert (size.values[1].along, size.values[1].round) == pytest.approx((0.02, math.pi / 2))


#: What is wrong: the passage that is changed, and what the one line says.
WRONG = {
    "a key that the kind has not": (
        ("[measured.thickness]", "[measured.thicknes]"),
        "cover-7.toml:8 measured.thicknes: a cylinder-cover has no quantity of this key; "
        'read "thicknes"; write "thickness"',
    ),
    "a key that is no quantity": (
        ("[measured.thickness]", "[measured.material]"),
        "a cylinder-cover has no quantity of this key",
    ),
    "a value of another dimension": (('"50.02 mm"', '"50.02 bar"'), '"bar" is no unit of length'),
    "a comma": (('"50.02 mm"', '"50,02 mm"'), "a comma is not a decimal point"),
    "a value with limits": (('"50.02 mm"', '"50.02 mm ±0.01"'), "what was measured has no limits"),
    "a slip of the unit": (('"50.02 mm"', '"50.02 m"'), "thickness lies in "),
    "an uncertainty of another dimension": (('"4 µm"', '"4 N"'), '"N" is no unit of length'),
    "an uncertainty of nothing": (('"4 µm"', '"0 µm"'), "a length of 0 is not possible here"),
    "no value": (
        ('values = ["50.02 mm", { value = "50.04 mm", along = "20 mm", round = "90 °" }]\n', ""),
        "nothing was measured; write the values",
    ),
    "a day to come": (("2026-05-31", "2126-05-31"), "this day is still to come"),
    "no day": (("2026-05-31", "31.5.2026"), "this is not a date"),
    "no spec": (('of = "cover"\n', ""), "a made part says which spec it was made to"),
    "another type of certificate": (
        ('type = "3.1"', 'type = "3.3"'),
        "this is not one of the words used here",
    ),
    "no element": (("analysis.C", "analysis.Xx"), '"Xx" is not a name used here'),
}


@pytest.mark.parametrize("case", sorted(WRONG))
def test_what_is_wrong_is_told_in_one_line(workshop: DesignFolder, case: str) -> None:
    change, said = WRONG[case]
    found = complaints(workshop, change)
    assert len(found) == 1
    assert found[0].startswith("cover-7.toml:")
    assert said in found[0]


def test_an_absent_uncertainty_is_told_and_nothing_put_in_its_place(workshop: DesignFolder) -> None:
    (said,) = complaints(workshop, ('uncertainty = "4 µm"\n', ""))
    assert "no uncertainty is recorded for thickness" in said
    design = workshop.assess("duty.toml").design
    assert design is not None
    made = design.specs["cover-7"]
    assert isinstance(made, MadePart)
    at = quantities_of(design.specs["cover"])["thickness"]
    assert measured_size("thickness", made.measured["thickness"], at).uncertainty is None


STEAMED = """
[steamings.first]
case = "running"
value = "200 °C"
uncertainty = "2 K"
date = "2026-05-31"
"""
PRESSURE = ('value = "200 °C"\nuncertainty = "2 K"', 'quantity = "live_pressure"\nvalue = "16 bar gauge"\n')
SIZE = ('value = "200 °C"\nuncertainty = "2 K"', 'dimension = "thickness"\nvalue = "50.1 mm"\n')
NOT_BOTH = ('value = "200', 'quantity = "live_pressure"\ndimension = "thickness"\nvalue = "200')


def steamed(workshop: DesignFolder, *changes: tuple[str, str], made: str = MADE) -> list[str]:
    text = made + changed(STEAMED, *changes)
    assessment = workshop.write({**files(), "cover-7.toml": text}).assess("duty.toml")
    return [str(one) for one in assessment.complaints]


def half(written: str, of: tuple[str, str]) -> tuple[str, str]:
    """The change with an uncertainty."""
    return of[0], f'{of[1]}uncertainty = "{written}"'


@pytest.mark.parametrize(
    "change", [("first", "second"), half("0.1 bar", PRESSURE), half("0.1 mm", SIZE)], ids=str
)
def test_what_was_measured_in_steam_and_can_be_read(workshop: DesignFolder, change: tuple[str, str]) -> None:
    assert steamed(workshop, change) == []


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (('case = "running"\n', ""), 'a value measured in steam names its load case; write case = "running"'),
        (('uncertainty = "2 K"\n', ""), "no uncertainty is recorded for what was measured in steam"),
        (('value = "200 °C"\n', ""), "nothing was measured; write the value as read"),
        (NOT_BOTH, "one value is that of a load case or a size of the part, not both"),
        (half("0.1 K", PRESSURE), '"K" is no unit of pressure'),
        (
            half("0.1 bar", (PRESSURE[0], PRESSURE[1].replace("live_pressure", "live_presure"))),
            'a load case has no quantity of this key; read "live_presure"; write "live_pressure"',
        ),
        (
            half("0.1 bar", (PRESSURE[0], PRESSURE[1].replace("live_pressure", "zzzzzz"))),
            "write a key of a load case, or nothing for the temperature of the part",
        ),
        (
            half("0.1 mm", (SIZE[0], SIZE[1].replace("thickness", "thicknes"))),
            'a cylinder-cover has no quantity of this key; read "thicknes"; write "thickness"',
        ),
        (
            half("0.1 mm", (SIZE[0], SIZE[1].replace("thickness", "zzzzzz"))),
            'read "zzzzzz"; write a key of cover that takes a quantity',
        ),
        (("200 °C", "200 mm"), '"mm" is no unit of temperature'),
        (("200 °C", "200,5 °C"), "a comma is not a decimal point"),
        (("2 K", "2 bar"), "bar"),
        (("2026-05-31", "2126-05-31"), "this day is still to come"),
    ],
)
def test_what_is_wrong_in_a_record_of_steaming(
    workshop: DesignFolder, change: tuple[str, str], said: str
) -> None:
    (found,) = steamed(workshop, change)
    assert found.startswith("cover-7.toml:")
    assert said in found


def test_a_size_measured_in_steam_of_a_spec_that_is_not_there_is_not_looked_up(
    workshop: DesignFolder,
) -> None:
    """That there is no such spec is said once, and nothing of what was measured of it."""
    change = half("0.1 mm", (SIZE[0], SIZE[1].replace("thickness", "thicknes")))
    found = steamed(workshop, change, made=changed(MADE, ('of = "cover"', 'of = "covr"')))
    assert len(found) == 1
    assert "no spec has this id" in found[0]


def test_a_size_without_a_key_that_is_near_is_told_of_its_part(workshop: DesignFolder) -> None:
    (found,) = complaints(workshop, ("[measured.thickness]", "[measured.zzzzzz]"))
    assert found.endswith("write a key of cover that takes a quantity")


EXACT = {
    "a key that is near none": (
        ("[measured.thickness]", "[measured.zzzzzz]"),
        'cover-7.toml:8 measured.zzzzzz: a cylinder-cover has no quantity of this key; read "zzzzzz"; '
        "write a key of cover that takes a quantity",
    ),
    "no spec": (
        ('of = "cover"\n', ""),
        'cover-7.toml:3 of: a made part says which spec it was made to; write of = "liner-left"',
    ),
    "no uncertainty": (
        ('uncertainty = "4 µm"\n', ""),
        "cover-7.toml:8 measured.thickness.uncertainty: no uncertainty is recorded for thickness, so that nothing is "
        "proved; write the expanded one, k = 2, as it was recorded",
    ),
    "no value": (
        ('values = ["50.02 mm", { value = "50.04 mm", along = "20 mm", round = "90 °" }]\n', ""),
        "cover-7.toml:8 measured.thickness.values: nothing was measured; write the values",
    ),
    "limits": (
        ('"50.02 mm"', '"50.02 mm ±0.01"'),
        "cover-7.toml:9 measured.thickness.values[0]: what was measured has no limits: its uncertainty stands under "
        'uncertainty; read "50.02 mm ±0.01"; write the number and its unit alone',
    ),
    "a day to come": (
        ("2026-05-31", "2126-05-31"),
        'cover-7.toml:12 measured.thickness.date: this day is still to come; read "2126-05-31"; '
        "write the day on which it was done, as 2027-05-31",
    ),
}


@pytest.mark.parametrize("case", sorted(EXACT))
def test_what_is_wrong_has_its_place_what_was_read_and_what_to_write(
    workshop: DesignFolder, case: str
) -> None:
    change, line = EXACT[case]
    assert complaints(workshop, change) == [line]


def test_every_entry_is_looked_at_also_behind_one_that_is_wrong(workshop: DesignFolder) -> None:
    more = '[measured.outside_diameter]\nvalues = "400 kg"\nuncertainty = "4 µm"\n'
    text = changed(
        MADE, ("[measured.thickness]", "[measured.zzzzzz]"), ("[certificate]", f"{more}[certificate]")
    )
    found = workshop.write({**files(), "cover-7.toml": text}).assess("duty.toml").complaints
    assert [one.where.key for one in found] == ["measured.zzzzzz", "measured.outside_diameter.values"]
    assert '"kg" is no unit of length' in found[1].message


@pytest.mark.parametrize(
    ("change", "line"),
    [
        (
            ('case = "running"\n', ""),
            "cover-7.toml:19 steamings.first.case: a value measured in steam names its load case; "
            'write case = "running"',
        ),
        (
            ('uncertainty = "2 K"\n', ""),
            "cover-7.toml:19 steamings.first.uncertainty: no uncertainty is recorded for what was measured in steam, "
            "so that nothing is proved; write the expanded one, k = 2, as it was recorded",
        ),
        (
            ('value = "200 °C"\n', ""),
            "cover-7.toml:19 steamings.first.value: nothing was measured; write the value as read, with its unit",
        ),
        (
            NOT_BOTH,
            "cover-7.toml:22 steamings.first.dimension: one value is that of a load case or a size of the part, "
            "not both; write either quantity or dimension",
        ),
        (
            half("0.1 bar", (PRESSURE[0], PRESSURE[1].replace("live_pressure", "live_presure"))),
            "cover-7.toml:21 steamings.first.quantity: a load case has no quantity of this key; "
            'read "live_presure"; write "live_pressure"',
        ),
    ],
)
def test_a_record_of_steaming_is_told_to_the_letter(
    workshop: DesignFolder, change: tuple[str, str], line: str
) -> None:
    assert steamed(workshop, change) == [line]
