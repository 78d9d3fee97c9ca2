"""A family that the settings misspell is told, with the name of the installed one; one that is not installed is not."""

from __future__ import annotations

import pytest

from speclint.errors import Location
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES

FAMILIES = '[works]\nstage = "draft"\n\n[families]\nleave_out = ["{}"]\n'
REVIEWER = '[works]\nstage = "draft"\n\n[reviewers."A. B."]\ncompetent_for = ["liners", "{}"]\n'


@pytest.mark.parametrize(
    ("settings", "line", "key"),
    [(FAMILIES, 4, "families.leave_out"), (REVIEWER, 4, "reviewers.A. B..competent_for")],
)
def test_a_misspelt_family_is_told_with_the_one_that_is_meant(
    workshop: DesignFolder, settings: str, line: int, key: str
) -> None:
    workshop.loaded = tubes.tubes()
    (name,) = (one.name for one in workshop.loaded.families)
    [told] = workshop.write(FILES, settings=settings.format(f"{name}x")).assess().complaints
    assert told.where == Location("speclint.toml", line, key)
    assert (told.message, told.read, told.write) == (
        "no family of this name is installed",
        f'"{name}x"',
        f'"{name}"',
    )


@pytest.mark.parametrize("settings", [FAMILIES, REVIEWER])
def test_a_family_that_is_not_installed_is_none_that_is_misspelt(
    workshop: DesignFolder, settings: str
) -> None:
    workshop.loaded = tubes.tubes()
    assert not workshop.write(FILES, settings=settings.format("gauges")).assess().complaints


def test_a_family_that_is_left_out_is_not_misspelt(workshop: DesignFolder) -> None:
    """It is installed, though none of its rules is run."""
    workshop.loaded = tubes.tubes()
    (name,) = (one.name for one in workshop.loaded.families)
    both = FAMILIES.format(name) + REVIEWER.format(name).partition("\n\n")[2]
    told = (
        workshop.write({"rack.toml": FILES.get("rack.toml", tubes.RACK)}, settings=both).assess().complaints
    )
    assert not [one for one in told if "no family of this name" in one.message]
