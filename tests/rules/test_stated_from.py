"""A sheet lists where a component states quantities of one provenance."""

from __future__ import annotations

from speclint import Sheet
from speclint.rules import Corner
from speclint.specs import Component
from speclint.testing import DesignFolder, changed
from tests.plugins.release.part import COVER

FILES = {
    "cover.toml": COVER.replace(
        'thickness = "50 mm"', 'thickness = { value = "50 mm", from = "assumed" }\nbore = "500 mm"'
    ).replace('duty = "duty"\n', "")
}


def sheet_on(workshop: DesignFolder, *changes: tuple[str, str]) -> tuple[Sheet, Component]:
    assessment = workshop.write({"cover.toml": changed(FILES["cover.toml"], *changes)}).assess()
    assert assessment.design is not None
    assert assessment.context is not None
    part = assessment.design.specs["cover"]
    assert isinstance(part, Component)
    rule = workshop.loaded.rules[0]
    return Sheet(rule, part, assessment.context, Corner(), record=True), part


def test_only_the_quantities_of_that_provenance_are_listed(workshop: DesignFolder) -> None:
    sheet, part = sheet_on(workshop)
    assert [where.key for where in sheet.stated_from("assumed", part)] == ["thickness"]
    assert [step.value for step in sheet.record.steps] == ["50 mm"]
    assert sheet.stated_from("measured", part) == ()


def test_the_list_is_part_of_what_the_check_rests_on(workshop: DesignFolder) -> None:
    sheet, part = sheet_on(workshop)
    sheet.stated_from("assumed", part)
    assert sheet.record.basis == {"assumed in cover": "[('thickness', 0.05, 0.05, '')]"}
    assert sheet.record.rests_on == {"assumed in cover": "thickness 50 mm"}


def test_a_value_in_another_unit_is_the_same_ground(workshop: DesignFolder) -> None:
    """50 mm is 5 cm: a concession on what is assumed goes on."""
    first, part = sheet_on(workshop)
    first.stated_from("assumed", part)
    other, same = sheet_on(workshop, ("50 mm", "5 cm"))
    other.stated_from("assumed", same)
    assert other.record.basis == first.record.basis
