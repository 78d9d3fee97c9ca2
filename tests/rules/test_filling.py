"""Where a place that is to be filled is looked for."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from speclint.errors import Location
from speclint.rules.filling import ToFill


def test_a_place_is_looked_for_where_it_is_stated_else_at_its_owner() -> None:
    owner: Any = SimpleNamespace(where=Location("block.toml", 1, ""))
    stated = Location("block.toml", 12, "bores.left")
    assert ToFill("bore left", "cylinder liner", where=stated).at(owner) == stated
    assert ToFill("bore left", "cylinder liner").at(owner) == owner.where
