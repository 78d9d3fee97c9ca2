"""fault.some-listed: an engine with a known fault on a part of it, and without one."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, expect_conforms, expect_not_applicable, expect_query
from tests.plugins.release.part import settings

RULE = "fault.some-listed"
DESIGN = {
    "engine.toml": 'kind = "engine"\nid = "engine"\n[cranks.left]\nblock = "block"\n',
    "block.toml": 'kind = "cylinder-block"\nid = "block"\n',
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\n',
}
FAULT = 'kind = "known-fault"\nid = "fault"\n'


@pytest.mark.parametrize("on", ["liner", "block", "engine"])
def test_a_fault_on_any_part_of_the_engine_is_one(workshop: DesignFolder, on: str) -> None:
    design = workshop.write(
        {**DESIGN, "fault.toml": f'{FAULT}on = "{on}"\n'}, settings=settings(stage="for-review")
    )
    expect_conforms(design.only(RULE, "engine"))


@pytest.mark.parametrize("stage", ["for-review", "released"])
@pytest.mark.parametrize("fault", [{}, {"fault.toml": FAULT}])
def test_none_at_all_or_one_on_no_part_is_asked_about(
    workshop: DesignFolder, fault: dict[str, str], stage: str
) -> None:
    design = workshop.write({**DESIGN, **fault}, settings=settings(stage=stage))
    expect_query(design.only(RULE, "engine"), "no known fault of any part of this engine is listed")


def test_a_draft_may_list_them_later(workshop: DesignFolder) -> None:
    design = workshop.write(DESIGN, settings=settings(stage="draft"))
    expect_not_applicable(design.only(RULE, "engine"), "the design is a draft")
