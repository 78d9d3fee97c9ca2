"""A check of parts alike is worked once, and comes out as if each had been worked by itself."""

from __future__ import annotations

from dataclasses import fields
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings, strategies as st

from speclint.checking import Check, rule_run, worst_corner
from speclint.testing import DesignFolder
from tests.tubes import DUTY, RACK, TUBE, tubes

Files = dict[str, str]
FAMILY = tubes()


@pytest.fixture
def worked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Each search for a worst corner, as long as a test runs: the rule and the load case."""
    seen: list[str] = []
    search = worst_corner.find_worst

    def counted(*given: Any) -> Any:
        seen.append("worked")
        return search(*given)

    monkeypatch.setattr(rule_run, "find_worst", counted)
    return seen


def said(check: Check) -> dict[str, Any]:
    """All that a check says; of how it is known to be the worst only the manner."""
    whole = {one.name: getattr(check, one.name) for one in fields(check)}
    return {**whole, "proofs": {case: proof.method for case, proof in check.proofs.items()}}


def compared(folder: DesignFolder, files: Files, *single: str) -> None:
    """The checks of all together are those of each file by itself."""
    together = folder.write(files).assess()
    assert together.complaints == ()
    alone = [check for file in single for check in folder.assess(file).checks]
    expected = {check.order: said(check) for check in alone}
    found = {check.order: said(check) for check in together.checks if check.order in expected}
    assert len(found) == len(expected) > 0
    for order in expected:
        assert found[order] == expected[order], order


LIKE = 'kind = "tube"\nlike = "tube"\nheld_in = "{rack}"\n'
PLAIN = {"duty.toml": DUTY, "rack.toml": RACK, "tube.toml": TUBE}
OTHER = RACK.replace('kind = "rack"', 'kind = "rack"\nid = "other"')


@pytest.mark.parametrize(
    ("second", "searches"),
    [
        (LIKE.format(rack="rack"), 6),
        (LIKE.format(rack="other"), 6),
        (LIKE.format(rack="rack") + 'title = "another"\n', 6),
        (LIKE.format(rack="rack") + "hoops = 5\n", 7),
        (LIKE.format(rack="rack") + 'bore = "99 mm ±0.5"\n', 9),
    ],
)
def test_only_what_asked_for_a_difference_is_worked_again(
    tmp_path: Path, worked: list[str], second: str, searches: int
) -> None:
    """Five rules of which one has two load cases: six searches for the first, and those that took the change."""
    folder = DesignFolder(tmp_path, FAMILY).write({**PLAIN, "other.toml": OTHER, "second.toml": second})
    assert folder.assess().complaints == ()
    assert len(worked) == searches


def test_a_rack_that_differs_in_what_was_asked_is_followed_again(tmp_path: Path) -> None:
    other = OTHER.replace("+0.1/0", "+0.11/0")
    files = {**PLAIN, "other.toml": other, "second.toml": LIKE.format(rack="other")}
    compared(DesignFolder(tmp_path, FAMILY), files, "second.toml")


@pytest.mark.parametrize(
    "second",
    [
        LIKE.format(rack="rack"),
        LIKE.format(rack="other"),
        LIKE.format(rack="other") + 'bore = "100.4 mm ±0.5"\n',
        LIKE.format(rack="other").replace("like", "mirror_of") + 'ends = "closed"\n',
    ],
)
def test_it_comes_out_as_by_itself(tmp_path: Path, second: str) -> None:
    files = {**PLAIN, "other.toml": OTHER, "second.toml": second}
    compared(DesignFolder(tmp_path, FAMILY), files, "second.toml", "tube.toml")


def test_a_temperature_stated_for_one_of_them_is_its_own(tmp_path: Path) -> None:
    """The duty names one of the parts: whatever took it is worked again."""
    duty = DUTY + '[cases.running.temperatures]\nsecond = "300 °C"\n'
    compared(
        DesignFolder(tmp_path, FAMILY),
        {**PLAIN, "duty.toml": duty, "second.toml": LIKE.format(rack="rack")},
        "second.toml",
    )


@settings(max_examples=8, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    bore=st.sampled_from(["", "99 mm ±0.5", "100 mm ±0.6"]),
    pressure=st.sampled_from(["", "31 bar gauge", "45 bar gauge"]),
    hoops=st.sampled_from(["", "3"]),
    rack=st.sampled_from(["rack", "other"]),
    hole=st.sampled_from(["106 mm +0.1/0", "105.6 mm +0.1/0"]),
    stated=st.booleans(),
)
def test_whatever_differs_the_outcome_is_that_of_each_by_itself(
    tmp_path: Path, bore: str, pressure: str, hoops: str, rack: str, hole: str, stated: bool
) -> None:
    """Property: sharing the work changes nothing, whether a value is the same, another, or not stated at all."""
    lines = [f'{key} = "{value}"' for key, value in (("bore", bore), ("pressure", pressure)) if value]
    lines += [f"hoops = {hoops}"] if hoops else []
    lines += ['in_slot = "first"'] if stated else []
    second = LIKE.format(rack=rack) + "\n".join(lines) + "\n"
    other = OTHER.replace("106 mm +0.1/0", hole)
    files = {**PLAIN, "other.toml": other, "second.toml": second}
    compared(DesignFolder(tmp_path, FAMILY), files, "second.toml")
