"""Zones of form beside the tolerance of their size, and the least that machines keep, from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, found
from tests.plugins.fits.test_geometry import COVER, ROD, zone

OF_SIZE, MADE = "geometry.form-of-size", "geometry.zone-can-be-made"
SEAT = 'kind = "valve-seat"\nid = "seat"\noutside_diameter = "{size}"\n'
OUTSIDE = "outside_diameter"


@pytest.mark.parametrize("form", ["round", "cylindrical"])
@pytest.mark.parametrize(
    ("size", "t", "outcome"),
    [
        ("180 mm +0.05/+0.02", "0.015 mm", "conforms"),  # half of 0.03 mm
        ("180 mm +0.05/+0.02", "0.0151 mm", "finding"),
        ("180 mm h7", "0.02 mm", "conforms"),  # IT7 of 120 to 180 mm is 40 µm, ISO 286-1, table 1
        ("180 mm h7", "0.0201 mm", "finding"),
        ("180 mm h7", "0.254 mm", "finding"),
        ("180 mm", "0.254 mm", "not applicable"),
    ],
)
def test_a_face_is_rounder_than_half_of_its_tolerance(
    workshop: DesignFolder, form: str, size: str, t: str, outcome: str
) -> None:
    """An oval as wide as the zone has diameters that differ by twice the zone."""
    text = SEAT.format(size=size) + zone("of-it", form, t, OUTSIDE)
    check = workshop.write({"seat.toml": text}).only(OF_SIZE)
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(("form", "of"), [("straight", OUTSIDE), ("flat", "face"), ("round", "land")])
def test_other_forms_and_faces_have_no_size(workshop: DesignFolder, form: str, of: str) -> None:
    """A bent shaft is no wider anywhere; a face that is no size of its part has no tolerance to compare."""
    text = SEAT.format(size="180 mm h7") + zone("of-it", form, "0.254 mm", of)
    assert workshop.write({"seat.toml": text}).only(OF_SIZE).outcome == "not applicable"


@pytest.mark.parametrize("of", ["outside diameter", "the outside diameter", "Outside_diameter"])
@pytest.mark.parametrize(("t", "outcome"), [("0.02 mm", "conforms"), ("0.0201 mm", "finding")])
def test_a_face_may_be_named_by_the_words_of_its_size(
    workshop: DesignFolder, of: str, t: str, outcome: str
) -> None:
    """IT7 of 120 to 180 mm is 40 µm, ISO 286-1, table 1."""
    text = SEAT.format(size="180 mm h7") + zone("of-it", "round", t, of)
    assert workshop.write({"seat.toml": text}).only(OF_SIZE).outcome == outcome


def test_the_worst_of_several_zones_is_told(workshop: DesignFolder) -> None:
    text = SEAT.format(size="180 mm h7") + zone("first", "round", "0.01 mm", OUTSIDE)
    text += zone("second", "cylindrical", "0.03 mm", OUTSIDE)
    check = workshop.write({"seat.toml": text}).only(OF_SIZE)
    assert check.outcome == "finding"
    assert found(check) == pytest.approx(0.03e-3)


@pytest.mark.parametrize(
    ("form", "t", "outcome"),
    [
        ("flat", "0.0101 mm", "conforms"),
        ("flat", "0.0099 mm", "finding"),
        ("flat", "0.0039 mm", "finding"),  # 0.1 mm taken for inches
        ("straight", "0.0031 mm", "conforms"),
        ("straight", "0.0029 mm", "finding"),
        ("round", "0.0031 mm", "conforms"),
        ("round", "0.0029 mm", "finding"),
        ("cylindrical", "0.0029 mm", "finding"),
        ("profile", "0.0029 mm", "not applicable"),
    ],
)
def test_a_form_that_no_machine_keeps_is_a_query(
    workshop: DesignFolder, form: str, t: str, outcome: str
) -> None:
    check = workshop.write({"cover.toml": COVER + zone("of-it", form, t)}).only(MADE)
    assert (check.outcome, check.grade) == (outcome, Grade.QUERY if outcome == "finding" else None)


@pytest.mark.parametrize("form", ["parallel", "square", "position", "coaxial", "run-out", "total run-out"])
@pytest.mark.parametrize(("t", "outcome"), [("0.0051 mm", "conforms"), ("0.0049 mm", "finding")])
def test_direction_place_and_run_out_have_a_least_of_their_own(
    workshop: DesignFolder, form: str, t: str, outcome: str
) -> None:
    made = {"cover.toml": COVER + zone("of-it", form, t, "bore", "rod"), **ROD}
    check = workshop.write(made).only(MADE, "cover")
    assert (check.outcome, check.grade) == (outcome, Grade.QUERY if outcome == "finding" else None)


def test_a_part_without_zones_is_not_judged(workshop: DesignFolder) -> None:
    for rule in (OF_SIZE, MADE):
        assert workshop.write({"cover.toml": COVER}).only(rule).outcome == "not applicable"
