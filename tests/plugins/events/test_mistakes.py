"""Four mistakes in a valve gear, of which each draws its own finding and none another's.

Queries aside: with a clearance beyond its ramp some events are not covered.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.checking import assess
from speclint.rules import Grade
from speclint.testing import installed_families
from tests.plugins.events.gear import files, foot, written

_RULES = (
    "events.cut-off-as-asked",
    "events.equal-ends",
    "events.compression",
    "events.ramp-takes-clearance",
)


def _dwell(cam: str, was: str, now: str) -> tuple[str, str, str]:
    return f"cam-{cam}.toml", f'dwell_angle = "{was} °"', f'dwell_angle = "{now} °"'


def _clearance(valve: str) -> tuple[str, str, str]:
    return f"tappet-{valve}.toml", 'clearance = "0.6 mm"', 'clearance = "1.2 mm"'


#: What was done to a sound gear, and the rule that finds it.
_MISTAKES = {
    "dwell lengthened": (
        "events.cut-off-as-asked",
        (_dwell("inlet-front-35", "3", "13"), _dwell("inlet-back-35", "12.5", "22.5")),
    ),
    "phase shifted": ("events.compression", (foot("35", "exhaust_front", "110 °"),)),
    "ends swapped": (
        "events.equal-ends",
        (_dwell("inlet-front-35", "3", "12.5"), _dwell("inlet-back-35", "12.5", "3")),
    ),
    "clearance doubled": ("events.ramp-takes-clearance", (_clearance("exhaust-back"),)),
}


def _found(folder: Path, *changes: tuple[str, str, str]) -> set[str]:
    design, loaded = written(folder, files(*changes)), installed_families()
    chosen = [rule for rule in loaded.rules if rule.name in _RULES]
    checks = assess([design.root], loaded, chosen).checks
    assert {check.rule.name for check in checks} == set(_RULES)
    found = [check for check in checks if check.outcome == "finding" and check.grade is not Grade.QUERY]
    return {check.rule.name for check in found}


def test_a_sound_gear_draws_none(tmp_path: Path) -> None:
    assert _found(tmp_path) == set()


@pytest.mark.parametrize("mistake", _MISTAKES)
def test_each_mistake_draws_its_own_finding(tmp_path: Path, mistake: str) -> None:
    rule, changes = _MISTAKES[mistake]
    assert _found(tmp_path, *changes) == {rule}
