"""The cranks of an engine: common practice, by hand."""

from __future__ import annotations

import pytest

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
