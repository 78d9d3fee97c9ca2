"""made.sizes-traced: of each measured size the day, the instrument and who measured it."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, expect_conforms, expect_finding, expect_not_applicable
from tests.plugins.release.made import DRAWN, MADE
from tests.plugins.release.part import files

RULE = "made.sizes-traced"
TRACED = 'date = "2026-05-31"\ninstrument = "micrometer 3"\ninspector = "R. Fell"\n'
WHOLE = changed(MADE, ('date = "2026-05-31"\n', TRACED))


def test_a_size_with_all_three(workshop: DesignFolder) -> None:
    expect_conforms(workshop.write({**files(DRAWN), "made.toml": WHOLE}).only(RULE, "cover-7"))


@pytest.mark.parametrize("line", TRACED.splitlines())
def test_each_that_is_missing_is_named(workshop: DesignFolder, line: str) -> None:
    made = changed(WHOLE, (f"{line}\n", ""))
    check = workshop.write({**files(DRAWN), "made.toml": made}).only(RULE, "cover-7")
    expect_finding(check, grade=Grade.NONCONFORMITY, says=f"thickness: not stated: {line.split(' =')[0]}")


def test_nothing_that_was_measured(workshop: DesignFolder) -> None:
    before, after = WHOLE.split("[measured.thickness]")
    made = f"{before}[certificate]{after.split('[certificate]')[1]}"
    check = workshop.write({**files(DRAWN), "made.toml": made}).only(RULE, "cover-7")
    expect_not_applicable(check, "nothing was measured")
