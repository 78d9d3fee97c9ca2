"""The crank that the piston of each bore turns: one, and no other bore's."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import SETTINGS

RULE = "bore.one-crank"
BLOCK = 'kind = "cylinder-block"\nid = "block"\n[bores.left]\ndiameter = "560 mm"\n[bores.right]\ndiameter = "560 mm"\n'
CRANK = '[cranks.{0}]\nblock = "block"\nbore = "{1}"\n'


def outcome(workshop: DesignFolder, *cranks: tuple[str, str]) -> tuple[str, str]:
    engine = 'kind = "engine"\nid = "engine"\n' + "".join(CRANK.format(*one) for one in cranks)
    found = workshop.write({"block.toml": BLOCK, "engine.toml": engine}, settings=SETTINGS).only(RULE)
    return found.outcome, found.says


def test_each_bore_has_its_crank(workshop: DesignFolder) -> None:
    assert outcome(workshop, ("1", "left"), ("2", "right"))[0] == "conforms"


@pytest.mark.parametrize(
    ("cranks", "names"),
    [
        ([("1", "left")], "bore right"),  # a crank left out of the list
        ([("1", "left"), ("2", "right"), ("3", "left")], "bore left is filled twice"),
    ],
)
def test_a_bore_without_a_crank_of_its_own_is_told(
    workshop: DesignFolder, cranks: list[tuple[str, str]], names: str
) -> None:
    found, says = outcome(workshop, *cranks)
    assert found == "finding"
    assert names in says


def test_a_crank_that_names_no_bore_of_two_is_of_neither(workshop: DesignFolder) -> None:
    engine = 'kind = "engine"\nid = "engine"\n' + "".join(
        CRANK.format(*one) for one in (("1", "left"), ("2", "right"))
    )
    engine += '[cranks.3]\nblock = "block"\n'
    found = workshop.write({"block.toml": BLOCK, "engine.toml": engine}, settings=SETTINGS).only(RULE)
    assert found.outcome == "conforms"


def test_the_only_bore_needs_no_name(workshop: DesignFolder) -> None:
    block = BLOCK.partition("[bores.right]")[0]
    engine = 'kind = "engine"\nid = "engine"\n[cranks.one]\nblock = "block"\n'
    found = workshop.write({"block.toml": block, "engine.toml": engine}).only(RULE)
    assert found.outcome == "conforms"


def test_a_block_that_no_engine_names_is_told_of_elsewhere(workshop: DesignFolder) -> None:
    found = workshop.write({"block.toml": BLOCK}, settings=SETTINGS).only(RULE)
    assert (found.outcome, found.says) == ("not applicable", "it has no such place")
