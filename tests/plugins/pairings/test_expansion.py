"""pairing.expansion, worked by hand on the bench of the joints and on plates of its metals.

Studs of M24 in holes of 26 mm on 700 mm; cover 12.5e-6 and block 10e-6/K, both at 200 °C:
350 × 2.5e-6 × 180 = 0.1575 mm.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, on_sheet
from speclint_pairings.formulae.expansion import shift_at_studs, stress_of_unlike_plates
from tests.plugins.joints import bench
from tests.plugins.valves import gear

RULE = "pairing.expansion"


def joint(workshop: DesignFolder, *changes: tuple[str, str], duty: str = bench.DUTY) -> DesignFolder:
    """The bench of the joints with some passages of the studs changed."""
    studs = bench.STUDS
    for old, new in changes:
        assert studs.count(old) == 1, old
        studs = studs.replace(old, new)
    found = {
        "metals.toml": bench.METALS,
        "duty.toml": duty,
        "block.toml": bench.BLOCK,
        "cover.toml": bench.COVER,
        "studs.toml": studs,
    }
    return workshop.write(found, settings=bench.SETTINGS_WITH_METALS)


@pytest.mark.parametrize(("hole", "outcome"), [("24.64 mm", "conforms"), ("24.62 mm", "finding")])
def test_a_cover_that_outgrows_its_block_has_room_round_its_studs(
    workshop: DesignFolder, hole: str, outcome: str
) -> None:
    """Half of (D − 24)/2 is 0.1575 mm at D = 24.63 mm."""
    check = joint(workshop).only(RULE, "studs")
    assert on_sheet(check, "s") == pytest.approx(0.1575e-3)
    assert (check.outcome, check.utilisation) == ("conforms", pytest.approx(0.315))  # of 0.5 mm
    check = joint(workshop, ('hole = "26 mm"', f'hole = "{hole}"')).only(RULE, "studs")
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


def test_the_case_that_governs_is_the_one_with_the_greatest_difference(workshop: DesignFolder) -> None:
    """Cooling, the cover down at 120 °C: |12.5e-6 × 100 − 10e-6 × 180| × 350 = 0.1925 mm, the other way."""
    head, cooling = bench.DUTY.split("[cases.cooling]")
    cooler = cooling.replace('cylinder-cover = "200 °C"', 'cylinder-cover = "120 °C"', 1)
    check = joint(workshop, duty=f"{head}[cases.cooling]{cooler}").only(RULE, "studs")
    assert check.case == "cooling"
    assert on_sheet(check, "s") == pytest.approx(0.1925e-3)


def test_one_metal_at_one_temperature_moves_nothing(workshop: DesignFolder) -> None:
    check = joint(workshop).replace("cover.toml", "test-cover", "test-block").only(RULE, "studs")
    assert on_sheet(check, "s") == 0


@pytest.mark.parametrize(
    "line",
    [
        'hole = "26 mm"',
        'circle = "700 mm"',
        'thread = "M24"\nthread_made = "cut"',
        'fastener = "stud"',
        'holds = "cover"',
    ],
)
def test_a_joint_is_not_assessed_without(workshop: DesignFolder, line: str) -> None:
    assert joint(workshop, (line + "\n", "")).only(RULE, "studs").outcome == "not assessed"


def test_a_joint_is_not_assessed_without_a_temperature(workshop: DesignFolder) -> None:
    duty = bench.DUTY.replace('cylinder-block = "200 °C"', "", 1)
    assert joint(workshop, duty=duty).only(RULE, "studs").outcome == "not assessed"


def weldment(workshop: DesignFolder, one: str, other: str, settings: str = "") -> DesignFolder:
    """Two plates of a block at 200 °C."""
    text = 'kind = "weldment"\nid = "weldment"\nmakes = "block"\n'
    text += "".join(
        f'[plates.{name}]\nmaterial = "{metal}"\n' for name, metal in (("wall", one), ("rib", other)) if metal
    )
    found = {
        "metals.toml": bench.METALS,
        "duty.toml": bench.DUTY,
        "block.toml": bench.BLOCK,
        "weldment.toml": text,
    }
    return workshop.write(found, settings=bench.SETTINGS_WITH_METALS + settings)


@pytest.mark.parametrize(("ranges", "outcome"), [("0.376", "conforms"), ("0.374", "finding")])
def test_unlike_plates_welded_strain_their_seam(workshop: DesignFolder, ranges: str, outcome: str) -> None:
    """200 GPa × 2.5e-6 × 180 K = 90 MPa of 2 × 240: 0.375 of one range of proof."""
    check = weldment(workshop, "test-cover", "test-block").only(RULE, "weldment")
    assert (check.outcome, check.utilisation) == ("conforms", pytest.approx(90 / 480))
    limit = f'[limits."{RULE}"]\nranges_of_proof = "{ranges}"\n'
    check = weldment(workshop, "test-cover", "test-block", limit).only(RULE, "weldment")
    assert check.outcome == outcome


def test_austenitic_steel_on_plain_steel_is_no_small_thing(workshop: DesignFolder) -> None:
    """Real plates: some 4.5e-6/K apart, so at 200 °C more than 100 MPa in either."""
    check = weldment(workshop, "plate-P265GH", "stainless-1.4541").only(RULE, "weldment")
    stress = [float(step.value) for step in check.steps if step.symbol.startswith("σ in ")]
    assert len(stress) == 2
    assert min(stress) > 100e6


def test_plates_of_one_metal_have_no_seam_of_two(workshop: DesignFolder) -> None:
    assert weldment(workshop, "test-block", "test-block").only(RULE, "weldment").outcome == "not applicable"


def test_a_weldment_without_plates_is_not_assessed(workshop: DesignFolder) -> None:
    assert weldment(workshop, "", "").only(RULE, "weldment").outcome == "not assessed"


def seat(workshop: DesignFolder, lost: str = "", metal: str = "bronze-CC480K") -> DesignFolder:
    """The seat of the valve gear's bench in another metal than iron, without one of its lines."""
    files = gear.seat_files()
    name = next(name for name, text in files.items() if 'kind = "valve-seat"' in text)
    lines = [
        f'material = "{metal}"' if line.startswith("material =") and metal else line
        for line in files[name].splitlines()
        if not lost or not line.startswith(f"{lost} =")
    ]
    return workshop.write({**files, name: "\n".join(lines)})


def test_a_bronze_seat_must_have_had_its_fit_worked_hot(workshop: DesignFolder) -> None:
    check = seat(workshop).only(RULE, "seat")
    assert check.outcome == "conforms"
    assert "assessed: seat.retained-hot, seat.fit-warming" in check.says


def test_a_bronze_seat_whose_fit_could_not_be_worked_is_a_finding(workshop: DesignFolder) -> None:
    check = seat(workshop, "outside_diameter").only(RULE, "seat")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "not assessed: seat.retained-hot" in check.says
    assert seat(workshop, "pressed_into").only(RULE, "seat").outcome == "not assessed"


def test_iron_in_steel_has_a_rule_of_its_own(workshop: DesignFolder) -> None:
    assert seat(workshop, metal="").only(RULE, "seat").outcome == "not applicable"


@given(
    C=st.floats(0.1, 1.0),
    a=st.floats(8e-6, 20e-6),
    b=st.floats(8e-6, 20e-6),
    T=st.floats(300.0, 700.0),
    U=st.floats(300.0, 700.0),
)
def test_it_does_not_matter_which_outgrows_the_other(
    C: float, a: float, b: float, T: float, U: float
) -> None:
    one = shift_at_studs(C, a, T, b, U, 293.15)
    assert one == pytest.approx(shift_at_studs(C, b, U, a, T, 293.15), abs=1e-15)
    assert shift_at_studs(2 * C, a, T, b, U, 293.15) == pytest.approx(2 * one)
    assert stress_of_unlike_plates(200e9, a, b, T, 293.15) == stress_of_unlike_plates(200e9, b, a, T, 293.15)
