"""Which cylinders push the same way at once, by the angles of their cranks, worked by hand."""

from __future__ import annotations

import math
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.facts import cranks


def together(
    monkeypatch: pytest.MonkeyPatch, angles: dict[str, float], lead: float = 0.0, case: str = "running"
) -> Any:
    """Of the bores a, b and c, with the angles of some cranks in degrees."""
    known = {name: math.radians(one) for name, one in angles.items()}
    monkeypatch.setattr(cranks, "_angles", lambda *_: known)
    bores = tuple(angles) if len(angles) > 1 else ("a", "b")
    at = SimpleNamespace(name=case)
    return cranks.bores_pushing_together(bores, None, at, math.radians(lead), None)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("angles", "lead", "sets"),
    [
        ({"a": 0, "b": 90}, 0, (("a", "b"),)),  # a quarter of a turn both push forward
        ({"a": 0, "b": 180}, 0, (("a", "b"),)),  # at the dead centres, where one ends and the other begins
        ({"a": 0, "b": 120, "c": 240}, 0, (("a", "b"), ("a", "c"), ("b", "c"))),
        ({"a": 0, "b": 120, "c": 240}, 61, (("a", "b", "c"),)),
        ({"b": 0, "c": 120, "a": 240}, 0, (("b", "a"), ("b", "c"), ("c", "a"))),  # in the order of the bores
        ({"a": 0, "b": 0}, 0, (("a", "b"),)),
    ],
)
def test_cranks_tell_who_pushes_together(
    monkeypatch: pytest.MonkeyPatch,
    angles: dict[str, float],
    lead: float,
    sets: tuple[tuple[str, ...], ...],
) -> None:
    assert together(monkeypatch, angles, lead) == sets


THREE = {"a": 0.0, "b": 120.0, "c": 240.0}


@pytest.mark.parametrize("case", ["starting", "running", "drifting", "water"])
def test_where_the_engine_turns_the_cranks_count(monkeypatch: pytest.MonkeyPatch, case: str) -> None:
    assert together(monkeypatch, THREE, case=case) == (("a", "b"), ("a", "c"), ("b", "c"))


def test_where_it_stands_or_an_angle_is_not_stated_all_push_together(monkeypatch: pytest.MonkeyPatch) -> None:
    assert together(monkeypatch, THREE, case="test") == (("a", "b", "c"),)
    assert together(monkeypatch, {"a": 0}) == (("a", "b"),)
    assert together(monkeypatch, {}) == (("a", "b"),)
