"""Pistons and rings are no cooler than the liner in which they run; from both sides."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "duty.piston-follows-liner"
HOLD, FINE, SILENT = ("finding", Grade.HOLD), ("conforms", None), ("not applicable", None)
#: The piston may be 10 K cooler than its liner at its coolest, and 10 K cooler at its hottest.
DUTY = """
kind = "duty"
id = "duty"
[cases.starting.temperatures]
cylinder-liner = "200..230 °C"
piston = "200..230 °C"
piston-ring = "200..230 °C"
[cases.running.temperatures]
cylinder-liner = "255..285 °C"
piston = "280..330 °C"
piston-ring = "260..300 °C"
[cases.drifting.temperatures]
cylinder-liner = "240..290 °C"
piston = "270..320 °C"
piston-ring = "260..310 °C"
[cases.cooling.temperatures]
cylinder-liner = "120..140 °C"
piston = "60..80 °C"
piston-ring = "60..80 °C"
"""
FILES = {
    "duty.toml": DUTY,
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nduty = "duty"\n',
    "piston.toml": 'kind = "piston"\nid = "piston"\nduty = "duty"\nruns_in = "liner"\n',
    "ring.toml": 'kind = "piston-ring"\nid = "ring"\nduty = "duty"\nruns_in = "liner"\n',
}


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(FILES)


@pytest.mark.parametrize(
    ("part", "old", "new", "ends"),
    [
        ("piston", 'piston = "280..330 °C"', 'piston = "245..275 °C"', FINE),
        ("piston", 'piston = "280..330 °C"', 'piston = "244.9..275 °C"', HOLD),
        ("piston", 'piston = "280..330 °C"', 'piston = "245..274.9 °C"', HOLD),
        ("piston", 'piston = "280..330 °C"', 'piston = "100..110 °C"', HOLD),
        ("piston", 'piston = "200..230 °C"', 'piston = "189..230 °C"', HOLD),
        ("piston", 'piston = "270..320 °C"', 'piston = "229..320 °C"', HOLD),
        ("piston", 'cylinder-liner = "255..285 °C"', 'cylinder-liner = "255..340 °C"', FINE),
        ("piston", 'cylinder-liner = "255..285 °C"', 'cylinder-liner = "255..341 °C"', HOLD),
        ("ring", 'piston-ring = "260..300 °C"', 'piston-ring = "245..275 °C"', FINE),
        ("ring", 'piston-ring = "260..300 °C"', 'piston-ring = "60..70 °C"', HOLD),
        ("ring", 'piston-ring = "60..80 °C"', 'piston-ring = "20..30 °C"', FINE),
    ],
)
def test_no_cooler_than_the_liner(
    design: DesignFolder, part: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    check = design.replace("duty.toml", old, new).only(RULE, part)
    assert (check.outcome, check.grade) == ends
