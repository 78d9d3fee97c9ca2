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
        (("0 °", "82.1 °"), "conforms"),  # 90° less 8°
        (("0 °", "81.9 °"), "finding"),
        (("0 °", "97.9 °"), "conforms"),
        (("0 °", "98.1 °"), "finding"),
        (("0 °", "-97.9 °"), "conforms"),
        (("0 °", "-98.1 °"), "finding"),
        (("0 °", "180 °"), "finding"),
        (("30 °", "30 °"), "finding"),
        (("0 °", "-120 °", "-240 °"), "conforms"),
        (("0 °", "120 °", "240 °"), "conforms"),
        (("10 °", "250 °", "130 °"), "conforms"),
        (("0 °", "120 °", "-240 °"), "finding"),  # the last two at one angle
        (("0 °", "-90 °", "-240 °"), "finding"),  # 90, 150 and 120° apart
        (("0 °", "-127.9 °", "-240 °"), "conforms"),  # 127.9, 112.1 and 120°
        (("0 °", "-128.1 °", "-240 °"), "finding"),
        (("0 °", "-112.1 °", "-224.2 °"), "finding"),  # twice 112.1 and once 135.8°
        (("0 °", "-127.9 °", "-247.9 °"), "conforms"),  # 127.9, 120 and 112.1°
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
        (("0 °", "-90 °", "-240 °"), "cranks c1 and c0 stand 90 ° apart, 112 ° at the least"),
        (("0 °", "-112.1 °", "-224.2 °"), "cranks c0 and c2 stand 135.8 ° apart, 128 ° at the most"),
        (("0 °", "270 °", "135 °"), "cranks c1 and c0 stand 90 ° apart, 112 ° at the least"),
        (("0 °", "70 °"), "cranks c0 and c1 stand 70 ° apart, 82 ° at the least"),
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
