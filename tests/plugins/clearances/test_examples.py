"""The invented engine: room, access and lifting, with one eye that is short of thread."""

from __future__ import annotations

from pathlib import Path

from speclint.checking import assess
from speclint.testing import installed_families

SPECS = Path(__file__).parents[3] / "example_specs"


def test_only_the_honest_mistake_is_found() -> None:
    loaded = installed_families()
    names = {one.name for one in loaded.rules if one.family == "clearances"}
    checks = [one for one in assess([SPECS], loaded).checks if one.rule.name in names]
    assert len(checks) >= 5
    found = {(c.rule.name, c.component) for c in checks if c.outcome not in ("conforms", "not applicable")}
    assert found == {("lifting.points", "lifting-block-right")}
