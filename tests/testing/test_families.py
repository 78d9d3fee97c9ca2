"""Families for a test: one by its package, one made on the spot, all that are installed."""

from __future__ import annotations

import pytest

from speclint.errors import FamilyError
from speclint.families import load_families
from speclint.handbook.materials import material
from speclint.testing import installed_families, load_family, made_family
from tests.tubes import RULES, Tube


def test_one_family_by_its_package() -> None:
    loaded = load_family("speclint_springs")
    assert [(one.name, one.module) for one in loaded.families] == [("springs", "speclint_springs")]
    assert {rule.family for rule in loaded.rules} == {"springs"}
    assert "compression-spring" in loaded.kinds
    with pytest.raises(FamilyError, match="speclint_nothing"):
        load_family("speclint_nothing")
    with pytest.raises(FamilyError, match=r"family no-such-parts\b"):
        load_family("speclint_no_such_parts")  # called as its entry point would be, with hyphens


def test_a_family_made_on_the_spot() -> None:
    iron = material("grey-iron-250")
    loaded = load_families([made_family("wheel-sets", [Tube], RULES, speclint_materials=lambda: [iron])])
    assert loaded.kinds["tube"] is Tube
    assert {rule.name for rule in loaded.rules} == {rule.name for rule in RULES}
    assert loaded.materials["grey-iron-250"] is iron
    assert loaded.families[0].name == "wheel-sets"


def test_a_made_family_states_the_interface_that_a_test_gives_it() -> None:
    assert made_family("one").load().speclint_api == "1"
    assert made_family("one", speclint_api="0").load().speclint_api == "0"


def test_two_made_families_are_two_modules() -> None:
    one, other = made_family("one"), made_family("one")
    assert one.value != other.value


def test_installed_families_are_loaded_once() -> None:
    assert installed_families() is installed_families()
    assert {"liners", "valves"} <= {one.name for one in installed_families().families}
