"""The invented engine's blocks as welded: one plate without its quality, and first steam a little brisk."""

from __future__ import annotations

from tests.example import assessed


def test_only_the_honest_mistakes_are_found() -> None:
    checks = [one for one in assessed().checks if one.rule.family == "fabrication"]
    assert len(checks) > 15
    found = {(c.rule.name, c.component) for c in checks if c.outcome not in ("conforms", "not applicable")}
    assert found == {
        ("block.through-thickness", "weldment-block-right"),
        ("block.warming-rate", "weldment-block-left"),
        ("block.warming-rate", "weldment-block-middle"),
        ("block.warming-rate", "weldment-block-right"),
    }
