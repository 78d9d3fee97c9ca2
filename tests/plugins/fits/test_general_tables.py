"""Every cell of the tables of general tolerances, by the rule that the standards made them by."""

from __future__ import annotations

import math

import pytest

from speclint_fits.formulae.tables import general_angle, general_flatness, weldment_angle

#: A length within each range of a table, m.
FACES = (0.008, 0.02, 0.07, 0.2, 0.5, 2.0)
LEGS = (0.005, 0.03, 0.08, 0.2, 1.0)
WELDED = (0.2, 0.7, 5.0)


@pytest.mark.parametrize(("size", "finest"), list(zip(FACES, (0.02, 0.05, 0.1, 0.2, 0.3, 0.4), strict=True)))
def test_flatness_doubles_from_class_to_class(size: float, finest: float) -> None:
    """ISO 2768-2:1989, Table 1 (memory): K is twice H and L twice K, but for 0.02, 0.05, 0.1 up to 10 mm."""
    found = [general_flatness(grade, size).nominal * 1e3 for grade in "HKL"]
    wanted = [finest, 0.05 if finest == 0.02 else 2 * finest, 0.1 if finest == 0.02 else 4 * finest]
    assert found == pytest.approx(wanted, abs=1e-9)


@pytest.mark.parametrize(("leg", "fine"), list(zip(LEGS, (60, 30, 20, 10, 5), strict=True)))
def test_angles_by_class(leg: float, fine: int) -> None:
    """ISO 2768-1:1989, Table 3 (memory): m is as f, c has 90, 60, 30, 15 and 10 minutes, and v twice as many as c."""
    found = [round(math.degrees(general_angle(grade, leg).nominal) * 60, 6) for grade in "fmcv"]
    coarse = {60: 90, 30: 60, 20: 30, 10: 15, 5: 10}[fine]
    assert found == pytest.approx([fine, fine, coarse, 2 * coarse])


@pytest.mark.parametrize(
    ("leg", "minutes"),
    list(zip(WELDED, ((20, 45, 60, 90), (15, 30, 45, 75), (10, 20, 30, 60)), strict=True)),
)
def test_angles_of_weldments_are_the_tangents_of_their_degrees(leg: float, minutes: tuple[int, ...]) -> None:
    """ISO 13920:1996, Table 2 (memory) prints each in degrees and, rounded to half a millimetre, in mm for each metre.

    tan 45′ = 0.01309: 13 mm in 1 m; tan 15′ = 0.00436: 4.5; tan 1° = 0.01746, printed as 18, is the farthest off.
    """
    found = [weldment_angle(grade, leg).nominal * 1e3 for grade in "ABCD"]
    worked = [math.tan(math.radians(one / 60)) * 1e3 for one in minutes]
    assert found == pytest.approx(worked, abs=0.55)
    assert [one * 2 % 1 for one in found] == pytest.approx([0] * 4, abs=1e-6)


def test_what_is_read_of_a_table_names_class_and_length() -> None:
    assert general_flatness("K", 0.2).what == "flatness of class K at 200 mm"
    assert weldment_angle("B", 0.5).what == "angle of class B at 500 mm"
    assert general_angle("m", 0.1).what == "tolerance of an angle of class m, leg 100 mm"
