"""How many studs and how far apart."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.handbook.bolted_joints.layout import chordal_pitch
from speclint.testing import DesignFolder, on_sheet
from speclint_joints.formulae.holes import inside_of_holes, outside_of_nuts
from tests.plugins.joints.bench import bench, used

FLANGE = 'kind = "pipe-flange"\nid = "flange"\nof = "block"\nmaterial = "test-cover"\nthickness = "50 mm"\n'
GLAND = 'kind = "gland"\nid = "gland"\nof = "block"\nmaterial = "test-cover"\n'


def _holding(workshop: DesignFolder, what: str, text: str, count: int) -> DesignFolder:
    bench(
        workshop,
        ("studs", 'holds = "cover"', f'holds = "{what}"'),
        ("studs", "count = 20", f"count = {count}"),
    )
    (workshop.root / "held.toml").write_text(text, encoding="utf-8")
    return workshop


def test_the_bench_conforms_and_the_period_number_stands_beside(workshop: DesignFolder) -> None:
    """Khurmi: 0.01 × 500 + 4 = 9 to 0.02 × 500 + 4 = 14; the cover has 20, as a sound modern one does."""
    check = bench(workshop).only("joint.stud-count", "studs")
    assert check.outcome == "conforms"
    assert check.judgement is not None
    assert "20 studs can be tightened in pairs" in [one.says for one in check.judgement.parts]
    assert on_sheet(check, "n_few") == pytest.approx(9)
    assert on_sheet(check, "n_most") == pytest.approx(14)


@pytest.mark.parametrize(
    ("count", "outcome"), [(4, "conforms"), (3, "finding"), (2, "finding"), (19, "finding")]
)
def test_even_and_at_least_four_on_a_cover(workshop: DesignFolder, count: int, outcome: str) -> None:
    bench(workshop, ("studs", "count = 20", f"count = {count}"))
    assert workshop.only("joint.stud-count", "studs").outcome == outcome


@pytest.mark.parametrize(("count", "outcome"), [(4, "conforms"), (8, "conforms"), (6, "finding")])
def test_in_fours_on_a_pipe_flange(workshop: DesignFolder, count: int, outcome: str) -> None:
    check = _holding(workshop, "flange", FLANGE, count).only("joint.stud-count", "studs")
    assert check.outcome == outcome
    assert check.says.endswith("in fours") is (outcome == "finding")


@pytest.mark.parametrize(("count", "outcome"), [(2, "conforms"), (1, "finding"), (3, "finding")])
def test_a_gland_may_have_two(workshop: DesignFolder, count: int, outcome: str) -> None:
    assert _holding(workshop, "gland", GLAND, count).only("joint.stud-count", "studs").outcome == outcome


def test_the_number_not_stated_is_not_assessed(workshop: DesignFolder) -> None:
    check = bench(workshop, ("studs", "count = 20\n", "")).only("joint.stud-count", "studs")
    assert check.outcome == "not assessed"
    assert "count" in check.says


def test_pitch_of_the_bench_by_hand(workshop: DesignFolder) -> None:
    """700 sin(180°/20) = 700 × 0.156434 = 109.504 mm; spanner 60 mm; TEMA 2 × 24 + 6 × 50/2.5 = 168 mm, so
    28.5 √24 = 139.621 mm governs, along the arc, 700 π/20 = 109.956: 109.956/139.621 = 0.7875."""
    check = bench(workshop).only("joint.stud-pitch", "studs")
    assert on_sheet(check, "s") == pytest.approx(109.504e-3, abs=1e-6)
    assert on_sheet(check, "s_low") == pytest.approx(60e-3)
    assert on_sheet(check, "s_high") == pytest.approx(139.621e-3, abs=1e-6)
    assert used(workshop, "joint.stud-pitch") == pytest.approx(0.7875, abs=1e-4)


@pytest.mark.parametrize(
    ("circle", "outcome"),
    [
        ("888 mm", "conforms"),  # 888 π/20 = 139.487 mm, under 139.621
        ("889 mm", "finding"),  # 139.644 mm; along the chord it would be 139.070
        ("384 mm", "conforms"),  # 60.071 mm, over 60
        ("383 mm", "finding"),  # 59.914 mm
    ],
)
def test_both_limits_of_pitch_from_both_sides(workshop: DesignFolder, circle: str, outcome: str) -> None:
    bench(workshop, ("studs", 'circle = "700 mm"', f'circle = "{circle}"'))
    assert workshop.only("joint.stud-pitch", "studs").outcome == outcome


@pytest.mark.parametrize(("flange", "outcome"), [("26 mm", "conforms"), ("25 mm", "finding")])
def test_a_thin_flange_brings_the_studs_together(workshop: DesignFolder, flange: str, outcome: str) -> None:
    """48 + 6 t/2.5 is 110.4 mm at 26 mm and 108.0 mm at 25 mm; the studs stand 109.956 mm apart along the arc."""
    bench(workshop, ("cover", 'flange_thickness = "50 mm"', f'flange_thickness = "{flange}"'))
    assert workshop.only("joint.stud-pitch", "studs").outcome == outcome


def test_a_ground_face_is_not_forced_through_the_gasket_formula(workshop: DesignFolder) -> None:
    """A flange of 25 mm would fail with the gasket; iron to iron only 28.5 √d holds."""
    bench(
        workshop,
        ("cover", 'flange_thickness = "50 mm"', 'flange_thickness = "25 mm"'),
        ("studs", 'seal = "gasket"', 'seal = "ground face"'),
    )
    assert workshop.only("joint.stud-pitch", "studs").outcome == "conforms"


def test_pitch_without_a_circle_is_not_assessed(workshop: DesignFolder) -> None:
    check = bench(workshop, ("studs", 'circle = "700 mm"\n', "")).only("joint.stud-pitch", "studs")
    assert check.outcome == "not assessed"


@given(st.integers(4, 60), st.floats(0.1, 1.0))
def test_chords_of_all_studs_are_shorter_than_the_circle(n: int, circle: float) -> None:
    """More studs stand nearer, and n chords never reach round the circle."""
    pitch = chordal_pitch(D=circle, n=n)
    assert chordal_pitch(D=circle, n=n + 1) < pitch
    assert n * pitch < math.pi * circle


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ('outside = "636 mm"', 'outside = "674 mm"', "conforms"),  # 700 - 26
        ('outside = "636 mm"', 'outside = "674.1 mm"', "finding"),
        ('hole = "26 mm"', 'hole = "65 mm"', "finding"),
    ],
)
def test_holes_outside_the_gasket(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    bench(workshop, ("studs", old, new))
    assert workshop.only("joint.room", "studs").outcome == outcome


@pytest.mark.parametrize(("outside", "outcome"), [("736 mm", "conforms"), ("735.9 mm", "finding")])
def test_nuts_whole_on_the_flange(workshop: DesignFolder, outside: str, outcome: str) -> None:
    """700 + 36 mm."""
    bench(workshop, ("cover", 'outside_diameter = "760 mm"', f'outside_diameter = "{outside}"'))
    assert workshop.only("joint.room", "studs").outcome == outcome


def test_room_of_a_cover_without_a_size_is_not_assessed(workshop: DesignFolder) -> None:
    bench(workshop, ("cover", 'outside_diameter = "760 mm"\n', ""))
    assert workshop.only("joint.room", "studs").outcome == "not assessed"


@given(st.floats(0.2, 1.0), st.floats(0.01, 0.1), st.floats(0.01, 0.1))
def test_holes_lie_inside_and_nuts_outside_of_the_circle(circle: float, hole: float, face: float) -> None:
    assert inside_of_holes(circle, hole) < circle < outside_of_nuts(circle, face)
