"""heat.every-face-counted, heat.one-wall-between and heat.gap-works."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_applicable, found, on_sheet
from tests.plugins.steamways.exhaust import FACES, files

EVERY, ONE, GAP = "heat.every-face-counted", "heat.one-wall-between", "heat.gap-works"
SINGLE = ("two walls", "single wall")
#: Of a surface of 0.8 × 0.6 + 1.52 = 2.00 m² the chest takes 1.5, the cylinder and the air the rest.
WHOLE = """
end_area = "1.52 m²"
[faces.chest]
to = "chest"
area = "1.5 m²"
wall = "wall"
[faces.cylinder]
to = "cylinder"
share = "0.2"
[faces.outside]
to = "atmosphere"
area = "0.1 m²"
"""


def test_a_belt_that_counts_all_of_its_surface(workshop: DesignFolder) -> None:
    check = workshop.write(files(faces=WHOLE)).only(EVERY, "belt")
    assert check.outcome == "conforms"
    assert on_sheet(check, "ΣA/A") == pytest.approx(1.0, abs=1e-9)


@pytest.mark.parametrize(
    ("outside", "outcome"),
    [
        ("0.061 m²", "conforms"),  # 1.961/2.00
        ("0.059 m²", "finding"),
        ("0.139 m²", "conforms"),  # 2.039/2.00
        ("0.141 m²", "finding"),
    ],
)
def test_the_faces_are_the_whole_surface(workshop: DesignFolder, outside: str, outcome: str) -> None:
    faces = WHOLE.replace('"0.1 m²"', f'"{outside}"')
    check = workshop.write(files(faces=faces)).only(EVERY, "belt")
    assert (check.outcome, check.grade) == (
        outcome,
        Grade.NONCONFORMITY if outcome == "finding" else None,
    )


@pytest.mark.parametrize(
    ("there", "outcome"),
    [
        ("1.43 m²", "conforms"),  # 1.5/1.43 = 1.049
        ("1.42 m²", "finding"),
        ("1.57 m²", "conforms"),  # 0.955
        ("1.59 m²", "finding"),
    ],
)
def test_a_face_is_answered_by_an_equal_one(workshop: DesignFolder, there: str, outcome: str) -> None:
    made = files(faces=WHOLE)
    made["chest.toml"] = made["chest.toml"].replace('"1.5 m²"', f'"{there}"')
    assert workshop.write(made).only(EVERY, "belt").outcome == outcome


def test_a_chest_that_names_no_face_does_not_answer(workshop: DesignFolder) -> None:
    made = files(faces=WHOLE)
    made["chest.toml"] = made["chest.toml"].replace('to = "belt"', 'to = "atmosphere"')
    check = workshop.write(made).only(EVERY, "belt")
    assert "chest names no face to belt" in check.says


def test_no_face_of_a_belt_lies_beside_itself(workshop: DesignFolder) -> None:
    check = workshop.write(files(faces=WHOLE.replace('to = "cylinder"', 'to = "belt"'))).only(EVERY, "belt")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "belt names a face to itself" in check.says


@pytest.mark.parametrize(("area", "outcome"), [("1.43 m²", "conforms"), ("1.42 m²", "finding")])
def test_a_partition_has_the_area_of_its_face(workshop: DesignFolder, area: str, outcome: str) -> None:
    made = files(faces=WHOLE)
    made["wall.toml"] = made["wall.toml"].replace('"1.5 m²"', f'"{area}"')
    assert workshop.write(made).only(EVERY, "belt").outcome == outcome


def test_a_partition_that_no_face_names_is_told(workshop: DesignFolder) -> None:
    """Half of the surface said to face the cylinder, where the drawing has a wall to the chest."""
    faces = WHOLE.replace('to = "chest"', 'to = "cylinder"').replace('wall = "wall"\n', "")
    check = workshop.write(files(faces=faces)).only(EVERY, "belt")
    assert check.outcome == "finding"
    assert "no face of belt names wall" in check.says


def test_only_exhaust_is_asked(workshop: DesignFolder) -> None:
    workshop.write(files(faces=WHOLE))
    assert workshop.only(EVERY, "chest").outcome == "not applicable"
    assert workshop.only(EVERY, "breath").outcome == "not applicable"
    expect_not_applicable(workshop.only(ONE, "chest"), "it carries live steam")
    expect_not_applicable(workshop.only(ONE, "breath"), "the engine draws air through it")


def test_a_belt_without_faces_is_asked_for_them(workshop: DesignFolder) -> None:
    assert workshop.write(files(faces="")).only(EVERY, "belt").outcome == "not assessed"


@pytest.mark.parametrize(("bridges", "share"), [("0", 0.21), ("0.01", 0.375), ("0.02", 0.48), ("0.05", 0.65)])
def test_bridges_across_the_gap(workshop: DesignFolder, bridges: str, share: float) -> None:
    """22.8, 40.7, 52.2 and 70.6 of 108.7 W/(m²·K): two walls bridged over 5 % of their area count as one."""
    check = workshop.write(files(('bridges = "0"', f'bridges = "{bridges}"'))).only(ONE, "belt")
    assert on_sheet(check, "k") == pytest.approx(share, rel=1e-2)
    assert (check.outcome, check.grade) == (("conforms", None) if share < 0.6 else ("finding", Grade.QUERY))


@pytest.mark.parametrize(("bridges", "outcome"), [("0.037", "conforms"), ("0.039", "finding")])
def test_bridges_from_both_sides(workshop: DesignFolder, bridges: str, outcome: str) -> None:
    """U = 0.6 × 108.65 = 65.19 leaves 1/65.19 − 1/242.5 − 1/211.6 − 2/2812.5 = 0.005780 to the gap: 173.0 W/(m²·K).

    173.0 − 29.2 = 143.8 = b × 45/0.012: b = 0.0383.
    """
    check = workshop.write(files(('bridges = "0"', f'bridges = "{bridges}"'))).only(ONE, "belt")
    assert check.outcome == outcome


def test_one_wall_of_steel_wants_its_reason(workshop: DesignFolder) -> None:
    """A small wall, far below the limit of the heat: what passed without a word."""
    made = files(SINGLE, area="0.25 m²")
    check = workshop.write(made).only(ONE, "belt")
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    made["belt.toml"] += '[notes]\nchest = "no room for two walls beside the drain; 1.7 K by the sum"\n'
    assert workshop.write(made).only(ONE, "belt").outcome == "conforms"


def test_a_reason_counts_only_with_the_whole_sum(workshop: DesignFolder) -> None:
    made = files(SINGLE, area="0.25 m²")
    made["belt.toml"] += '[notes]\nchest = "no room for two walls beside the drain"\n'
    made["belt.toml"] = made["belt.toml"].replace('perimeter = "0.8 m"', "")
    assert workshop.write(made).only(ONE, "belt").outcome == "not assessed"


def test_no_reason_makes_one_wall_of_iron_right(workshop: DesignFolder) -> None:
    made = files(SINGLE, ("steel-45", "iron-45"), area="0.05 m²")
    made["belt.toml"] += '[notes]\nchest = "as the old pattern"\n'
    check = workshop.write(made).only(ONE, "belt")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert "iron" in check.says


def test_iron_is_found_by_its_partition_alone(workshop: DesignFolder) -> None:
    made = files(SINGLE, ("steel-45", "iron-45"), faces="")
    check = workshop.write(made).only(ONE, "belt")
    assert check.grade is Grade.NONCONFORMITY
    assert check.judgement is not None
    assert check.judgement.where.file == "wall.toml"


def test_the_name_of_the_wall_must_lead_to_one(workshop: DesignFolder) -> None:
    faces = FACES.replace('wall = "wall"', 'wall = "walls"')
    made = files(faces=faces)
    del made["wall.toml"]
    check = workshop.write(made).only(ONE, "belt")
    assert check.outcome == "not assessed"
    assert "walls is no flat wall" in check.says


def bent(p: float, t: float, alpha: float = 0.00254) -> float:
    """Deflection of a clamped panel, Timoshenko table 35, b/a = 2: α p a⁴ × 12 (1 − 0.09)/(E t³), in mm."""
    return alpha * p * 450**4 * 12 * 0.91 / (200e3 * t**3)


@pytest.mark.parametrize(("more", "outcome"), [(0.01, "conforms"), (-0.01, "finding")])
def test_the_gap_stays_open(workshop: DesignFolder, more: float, outcome: str) -> None:
    """16.6 bar gauge on the chest's side, 0.35 on the belt's; 5 mm must be left between both."""
    gap = 5 + bent(1.66, 16) + bent(0.035, 16) + more
    check = workshop.write(files(('"12 mm"', f'"{gap:.4f} mm"'))).only(GAP, "wall")
    assert (check.outcome, check.grade) == (
        outcome,
        Grade.NONCONFORMITY if outcome == "finding" else None,
    )


def test_the_gap_is_judged_at_its_least(workshop: DesignFolder) -> None:
    """A gap of 12 mm as drawn conformed at 12; at 12 − 6 mm of its limits it is below 5 with the bend of the walls."""
    assert workshop.write(files()).only(GAP, "wall").outcome == "conforms"
    check = workshop.write(files(('"12 mm"', '"12 mm ± 6 mm"'))).only(GAP, "wall")
    assert check.outcome == "finding"


def test_air_in_the_gap_is_no_fault(workshop: DesignFolder) -> None:
    """12 mm with 220 K across, air of 280 °C by table A.4 of Incropera: ν = 46.02e-6 m²/s, Pr = 0.683.

    Ra = 9.80665 × 220 × 0.012³ × 0.683/(553.15 × 46.02e-6²) = 2174; 30 times as high as wide Nu = 0.42 × 2174^0.25 ×
    30^−0.3 = 1.034.
    """
    check = workshop.write(files(('"450 mm"', '"360 mm"'))).only(GAP, "wall")
    assert on_sheet(check, "Ra") == pytest.approx(2174, rel=0.01)
    assert on_sheet(check, "Nu_g") == pytest.approx(1.034, rel=0.01)
    assert check.outcome == "conforms"


@pytest.mark.parametrize(
    ("bridges", "outcome"), [("0.000202", "conforms"), ("0.000198", "finding"), ("0", "conforms")]
)
def test_what_bridges_the_gap_is_a_stay_at_least(workshop: DesignFolder, bridges: str, outcome: str) -> None:
    """Of 0.5 m²: 101 and 99 mm²."""
    made = files(('bridges = "0"', f'bridges = "{bridges}"'), area="0.5 m²")
    check = workshop.write(made).only(GAP, "wall")
    assert check.outcome == outcome
    if outcome == "finding":
        assert found(check) == pytest.approx(99e-6)


def test_bridges_of_no_known_area_are_not_assessed(workshop: DesignFolder) -> None:
    made = files(('bridges = "0"', 'bridges = "0.01"'))
    made["wall.toml"] = made["wall.toml"].replace('area = "1.5 m²"\n', "")
    assert workshop.write(made).only(GAP, "wall").outcome == "not assessed"


def test_a_single_wall_has_no_gap(workshop: DesignFolder) -> None:
    assert workshop.write(files(SINGLE)).only(GAP, "wall").outcome == "not applicable"
