"""like.examined-alike: parts of one file, of which each may state what it asks for by itself."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import (
    DesignFolder,
    expect_conforms,
    expect_finding,
    expect_not_applicable,
    expect_query,
)

RULE = "like.examined-alike"
ROCKERS = """
kind = "rocker"
id = "rocker-{{each}}"
each = ["left", "right"]
material = "forging-42CrMo4"
{both}
[for.left]
{left}
[for.right]
{right}
"""
BY_POWDER = 'examination = "magnetic particle, all over"'


def rockers(folder: DesignFolder, left: str, right: str, both: str = "") -> DesignFolder:
    return folder.write({"rocker.toml": ROCKERS.format(left=left, right=right, both=both)})


@pytest.mark.parametrize("none", ["", 'examination = "not required"'])
def test_one_that_is_spared_what_its_like_is_given(workshop: DesignFolder, none: str) -> None:
    design = rockers(workshop, BY_POWDER, none)
    check = design.only(RULE, "rocker-right")
    expect_finding(check, grade=Grade.NONCONFORMITY, says="rocker-left")
    expect_conforms(design.only(RULE, "rocker-left"))


@pytest.mark.parametrize(
    ("left", "right"),
    [(BY_POWDER, BY_POWDER), ("", ""), (BY_POWDER, 'examination = "Magnetic particle, all  over."')],
)
def test_what_is_examined_alike(workshop: DesignFolder, left: str, right: str) -> None:
    expect_conforms(rockers(workshop, left, right).only(RULE, "rocker-right"))


def test_other_words_are_asked_about_on_both(workshop: DesignFolder) -> None:
    design = rockers(workshop, BY_POWDER, 'examination = "magnetic particle, one in ten"')
    for side in ("left", "right"):
        expect_query(design.only(RULE, f"rocker-{side}"), "one in ten")


@pytest.mark.parametrize(("pin", "asked"), [("40 mm", True), ("45 mm", False)])
def test_parts_of_unlike_sizes_may_be_examined_in_other_words(
    workshop: DesignFolder, pin: str, asked: bool
) -> None:
    other = 'examination = "magnetic particle, one in ten"'
    left, right = f'pin = "40 mm"\n{BY_POWDER}', f'pin = "{pin}"\n{other}'
    check = rockers(workshop, left, right).only(RULE, "rocker-right")
    assert check.outcome == ("finding" if asked else "conforms")


def test_parts_of_unlike_sizes_are_both_examined(workshop: DesignFolder) -> None:
    left, right = f'pin = "40 mm"\n{BY_POWDER}', 'pin = "45 mm"'
    check = rockers(workshop, left, right).only(RULE, "rocker-right")
    expect_finding(check, grade=Grade.NONCONFORMITY)


@pytest.mark.parametrize("differs", ['material = "forging-C45"', 'design_pressure = "17 bar gauge"'])
def test_parts_of_unlike_need_may_be_examined_otherwise(workshop: DesignFolder, differs: str) -> None:
    design = rockers(workshop, BY_POWDER, differs)
    expect_not_applicable(design.only(RULE, "rocker-right"), "no part alike")


@pytest.mark.parametrize(("pressure", "alike"), [("17 bar gauge", True), ("18 bar gauge", False)])
def test_parts_for_one_pressure(workshop: DesignFolder, pressure: str, alike: bool) -> None:
    left = f'design_pressure = "17 bar gauge"\n{BY_POWDER}'
    check = rockers(workshop, left, f'design_pressure = "{pressure}"').only(RULE, "rocker-right")
    assert check.outcome == ("finding" if alike else "not applicable")


@pytest.mark.parametrize("by", ["like", "mirror_of"])
def test_a_part_that_takes_over_the_other_has_its_examination(workshop: DesignFolder, by: str) -> None:
    first = 'kind = "rocker"\nid = "first"\nmaterial = "forging-42CrMo4"\n' + BY_POWDER
    second = f'kind = "rocker"\nid = "second"\n{by} = "first"\n'
    expect_conforms(workshop.write({"first.toml": first, "second.toml": second}).only(RULE, "second"))
    none = second + 'examination = "none required"\n'
    check = workshop.write({"first.toml": first, "second.toml": none}).only(RULE, "second")
    expect_finding(check, grade=Grade.NONCONFORMITY)


@pytest.mark.parametrize(("by", "asked"), [("like", False), ("mirror_of", True)])
def test_a_mirror_is_asked_about_whatever_its_sizes(workshop: DesignFolder, by: str, asked: bool) -> None:
    first = f'kind = "rocker"\nid = "first"\nmaterial = "forging-42CrMo4"\npin = "40 mm"\n{BY_POWDER}'
    second = f'kind = "rocker"\nid = "second"\n{by} = "first"\npin = "45 mm"\nexamination = "by eye"\n'
    design = workshop.write({"first.toml": first, "second.toml": second})
    for one in ("first", "second"):
        if asked:
            expect_query(design.only(RULE, one), "by eye")
        else:
            expect_conforms(design.only(RULE, one))
