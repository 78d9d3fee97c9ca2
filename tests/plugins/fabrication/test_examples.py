"""The invented engine's blocks as welded: one plate without its quality, and first steam a little brisk."""

from __future__ import annotations

from pathlib import Path

from speclint.checking import assess
from speclint.testing import installed_families

SPECS = Path(__file__).parents[3] / "example_specs"


def test_only_the_honest_mistakes_are_found() -> None:
    loaded = installed_families()
    names = {one.name for one in loaded.rules if one.family == "fabrication"}
    checks = [one for one in assess([SPECS], loaded).checks if one.rule.name in names]
    assert len(checks) > 15
    found = {(c.rule.name, c.component) for c in checks if c.outcome not in ("conforms", "not applicable")}
    assert found == {
        ("block.through-thickness", "weldment-block-right"),
        ("block.warming-rate", "weldment-block-left"),
        ("block.warming-rate", "weldment-block-right"),
    }
