"""A finding points at a value that a printed remedy changes."""

from __future__ import annotations

import pytest

from speclint.errors import Location, replace
from speclint.reports import terminal_page
from speclint.reports.finding_lines import where_to_look
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES


@pytest.fixture
def stressed(workshop: DesignFolder) -> DesignFolder:
    """A tube at 45 bar: a wall too thin."""
    workshop.loaded = tubes.tubes()
    return workshop.write({**FILES, "tube.toml": FILES["tube.toml"].replace("30 bar", "45 bar")})


def test_the_value_of_the_check_is_shown_where_a_remedy_changes_it_or_there_is_none(
    stressed: DesignFolder,
) -> None:
    found = stressed.assess()
    check = stressed.only("tube.stress")
    remedies = found.remedies(check)
    assert remedies
    own = replace(check, where=remedies[-1].where)
    assert where_to_look(own, remedies) == remedies[-1].where
    assert where_to_look(check, []) == check.where


def test_another_value_gives_way_to_that_of_the_first_remedy(stressed: DesignFolder) -> None:
    found = stressed.assess()
    check = stressed.only("tube.stress")
    remedies = found.remedies(check)
    elsewhere = replace(check, where=Location("tube.toml", 2, "hoops"))
    assert where_to_look(elsewhere, remedies) == remedies[0].where
    page = terminal_page.write(found, 100).text()
    assert any(f"where        {one.where}" in page for one in remedies)
