"""The invented engine: room, access and lifting, with one eye that is short of thread."""

from __future__ import annotations

from tests.example import assessed


def test_only_the_honest_mistake_is_found() -> None:
    checks = [one for one in assessed().checks if one.rule.family == "clearances"]
    assert len(checks) >= 5
    found = {(c.rule.name, c.component) for c in checks if c.outcome not in ("conforms", "not applicable")}
    assert found == {("lifting.points", "lifting-block-right")}
