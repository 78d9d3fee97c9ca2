"""Checks of parts alike in the example are written as if each had been worked by itself."""

from __future__ import annotations

import pytest

from tests.checking.test_worked_once import anew, as_written
from tests.example import assessed


@pytest.mark.long
def test_checks_of_the_example_are_written_as_those_made_anew() -> None:
    """A sample of the checks of parts of which a file draws several, but for the longest of them."""
    run = assessed()
    assert run.design is not None
    several = {name for name, entry in run.design.index.entries.items() if entry.of_several}
    checks = [one for one in run.checks if one.component in several and not one.rule.reviews]
    sample = [one for one in checks[::61] if one.rule.name != "cam.contact-stress"]
    assert len(sample) > 50
    assert as_written(run, sample) == as_written(run, anew(run, sample))
