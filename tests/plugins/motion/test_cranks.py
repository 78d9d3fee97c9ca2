"""The cranks of an engine: common practice, by hand."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_applicable, expect_not_assessed

RULE = "engine.starts-from-any-place"


def engine(*angles: str) -> dict[str, str]:
    cranks = "".join(f'[cranks.c{number}]\nangle = "{angle}"\n' for number, angle in enumerate(angles))
    return {"engine.toml": f'kind = "engine"\nid = "engine"\n{cranks}'}


@pytest.mark.parametrize(
    ("angles", "outcome"),
    [
        (("0 °", "90 °"), "conforms"),
        (("0 °", "120 °", "240 °"), "conforms"),  # sin 60° = 0.866
        (("0 °", "180 °"), "finding"),
        (("0 °", "180 °", "90 °"), "conforms"),
        (("0 °", "30.1 °"), "conforms"),  # 0.5015
        (("0 °", "29.9 °"), "finding"),  # 0.4985
        (("0 °", "-149.9 °"), "conforms"),
        (("0 °", "-150.1 °"), "finding"),
        (("0 °", "31 ° ±2"), "finding"),  # 29° at the worst
    ],
)
def test_two_cranks_stand_across_each_other(
    workshop: DesignFolder, angles: tuple[str, ...], outcome: str
) -> None:
    assert workshop.write(engine(*angles)).only(RULE).outcome == outcome


def test_one_crank_has_none_to_stand_across(workshop: DesignFolder) -> None:
    expect_not_applicable(workshop.write(engine("0 °")).only(RULE), "fewer than two")


def test_a_crank_without_its_angle_is_told(workshop: DesignFolder) -> None:
    files = engine("0 °", "90 °")
    files["engine.toml"] = files["engine.toml"].replace('angle = "90 °"\n', "")
    expect_not_assessed(workshop.write(files).only(RULE), "cranks.c1.angle")


EVENLY = "engine.cranks-evenly-apart"


@pytest.mark.parametrize(
    ("angles", "outcome"),
    [
        (("0 °", "90 °"), "conforms"),
        (("0 °", "-90 °"), "conforms"),
        (("90 °", "0 °"), "conforms"),
        (("0 °", "89.51 °"), "conforms"),  # 90° less 0.5°
        (("0 °", "89.49 °"), "finding"),
        (("0 °", "90.49 °"), "conforms"),
        (("0 °", "90.51 °"), "finding"),
        (("0 °", "-90.49 °"), "conforms"),
        (("0 °", "-90.51 °"), "finding"),
        (("0 °", "180 °"), "finding"),
        (("30 °", "30 °"), "finding"),
        (("0 °", "-120 °", "-240 °"), "conforms"),
        (("0 °", "120 °", "240 °"), "conforms"),
        (("10 °", "250 °", "130 °"), "conforms"),
        (("0 °", "120 °", "-240 °"), "finding"),  # the last two at one angle
        (("0 °", "-90 °", "-240 °"), "finding"),  # 90, 150 and 120° apart
        (("0 °", "-120.49 °", "-240 °"), "conforms"),  # 120.49, 119.51 and 120°
        (("0 °", "-120.51 °", "-240 °"), "finding"),
        (("0 °", "-119.6 °", "-239.2 °"), "finding"),  # twice 119.6 and once 120.8°
        (("0 °", "-127 °", "-240 °"), "finding"),  # a cylinder inclined, and nobody says so
        (("0 °", "90 °", "180 °", "270 °"), "not applicable"),
        (("0 °",), "not applicable"),
    ],
)
def test_cranks_stand_evenly_apart(workshop: DesignFolder, angles: tuple[str, ...], outcome: str) -> None:
    found = workshop.write(engine(*angles)).only(EVENLY)
    assert (found.outcome, found.grade) == (outcome, Grade.QUERY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("angles", "says"),
    [
        (
            ("0 °", "-90 °", "-240 °"),
            "cranks c1 and c0 stand 90 ° apart, with no cylinder said to be inclined, 119.5 ° at the least",
        ),
        (
            ("0 °", "-112.1 °", "-224.2 °"),
            "cranks c0 and c2 stand 135.8 ° apart, with no cylinder said to be inclined, 120.5 ° at the most",
        ),
        (
            ("0 °", "270 °", "135 °"),
            "cranks c1 and c0 stand 90 ° apart, with no cylinder said to be inclined, 119.5 ° at the least",
        ),
        (
            ("0 °", "70 °"),
            "cranks c0 and c1 stand 70 ° apart, with no cylinder said to be inclined, 89.5 ° at the least",
        ),
    ],
)
def test_a_finding_names_the_cranks_and_their_angle(
    workshop: DesignFolder, angles: tuple[str, ...], says: str
) -> None:
    assert says in workshop.write(engine(*angles)).only(EVENLY).actual


def test_a_crank_of_two_without_its_angle_is_asked_for_it(workshop: DesignFolder) -> None:
    files = engine("0 °", "90 °")
    files["engine.toml"] = files["engine.toml"].replace('angle = "90 °"\n', "")
    expect_not_assessed(workshop.write(files).only(EVENLY), "cranks.c1.angle")


@pytest.mark.parametrize(
    ("angles", "inclined", "outcome"),
    [
        (("0 °", "-127 °", "-240 °"), ("", "7 °", ""), "conforms"),
        (("0 °", "-127.49 °", "-240 °"), ("", "7 °", ""), "conforms"),
        (("0 °", "-127.51 °", "-240 °"), ("", "7 °", ""), "finding"),
        (("0 °", "-126.51 °", "-240 °"), ("", "7 °", ""), "conforms"),
        (("0 °", "-126.49 °", "-240 °"), ("", "7 °", ""), "finding"),
        (
            ("0 °", "-120 °", "-240 °"),
            ("", "7 °", ""),
            "finding",
        ),  # inclined, and the crank left as if it were level
        (("0 °", "-113 °", "-240 °"), ("", "7 °", ""), "finding"),  # turned the wrong way
        (("0 °", "-113 °", "-240 °"), ("", "-7 °", ""), "conforms"),  # it falls forward of its axle
        (("0 °", "-120 °", "-240 °"), ("3 °", "3 °", "3 °"), "conforms"),  # all alike
        (("0 °", "83 °"), ("", "7 °"), "conforms"),
        (("0 °", "90 °"), ("7 °", ""), "finding"),
    ],
)
def test_a_crank_counts_from_its_cylinder(
    workshop: DesignFolder, angles: tuple[str, ...], inclined: tuple[str, ...], outcome: str
) -> None:
    """A cylinder that rises forward by 7° has its front dead centre 7° sooner: its crank is set 7° further back."""
    files = engine(*angles)
    for angle, one in zip(angles, inclined, strict=True):
        if one:
            number = angles.index(angle)
            head = f"[cranks.c{number}]\n"
            files["engine.toml"] = files["engine.toml"].replace(head, f'{head}inclined = "{one}"\n')
    found = workshop.write(files).only(EVENLY)
    assert found.outcome == outcome
    assert outcome == "conforms" or "apart from cylinder to cylinder" in found.actual
