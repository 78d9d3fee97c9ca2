"""Families are found, listed and, where anything is amiss, refused."""

from __future__ import annotations

import sys
from collections.abc import Collection
from importlib.abc import MetaPathFinder
from importlib.metadata import EntryPoint, PathDistribution
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from speclint import family, rules_in
from speclint.errors import FamilyError
from speclint.families import Loaded, ReportWriter, find_families, load_families, require
from speclint.families.loading import installed
from speclint.reports import hooks
from speclint.testing import made_family
from tests.tubes import RULES, Rack, Tube, entry_point, stress


def nothing() -> list[Any]:
    """A hook that brings nothing."""
    return []


def test_a_family_is_listed_with_its_rules_in_order() -> None:
    loaded = load_families([entry_point("tubes")])
    assert [one.name for one in loaded.families] == ["tubes"]
    assert [rule.name for rule in loaded.rules] == sorted(rule.name for rule in RULES)
    assert {rule.family for rule in loaded.rules} == {"tubes"}
    assert loaded.kinds["tube"] is Tube
    assert "duty" in loaded.kinds
    assert loaded.writers == {}


def test_what_speclint_hands_over_itself_comes_by_the_same_hooks() -> None:
    loaded = load_families([entry_point("tubes")], built_in=hooks)
    assert {"json", "sarif", "markdown", "csv"} <= set(loaded.writers)
    assert [one.name for one in loaded.families] == ["tubes"]


def test_no_family_at_all_is_allowed_but_requires_nothing() -> None:
    loaded = load_families([])
    assert loaded.rules == ()
    require(loaded, [])
    with pytest.raises(FamilyError, match="requires the family tubes; installed: none"):
        require(loaded, ["tubes"])


@pytest.mark.parametrize(
    ("points", "said"),
    [
        (
            [EntryPoint("lost", "no_such_module", "speclint")],
            "family lost cannot be imported: ModuleNotFoundError",
        ),
        (
            [EntryPoint("lost", "sys:no_such_name", "speclint")],
            "family lost cannot be imported: AttributeError",
        ),
        (
            [entry_point("one"), entry_point("two", kinds=())],
            "family two: the name tube.stress is taken by one",
        ),
        (
            [entry_point("one", rules=()), entry_point("two", rules=())],
            "family two: the name tube is taken by one",
        ),
        ([entry_point("one"), entry_point("one", kinds=(), rules=())], "already loaded"),
        ([entry_point("speclint")], "already loaded"),
        ([entry_point("one", rules=(stress, stress))], "the name tube.stress is taken by another of its own"),
        (
            [made_family("bad", speclint_rules=lambda: 1 / 0)],
            "family bad: speclint_rules raised ZeroDivisionError",
        ),
        ([made_family("bad", speclint_rules=lambda extra: [extra])], "family bad"),
        (
            [made_family("bad", speclint_reports=lambda: [ReportWriter("json", "", str)])],
            "the name json is taken by speclint",
        ),
    ],
)
def test_a_family_that_cannot_be_trusted_is_refused(points: list[EntryPoint], said: str) -> None:
    with pytest.raises(FamilyError) as refused:
        assert load_families(points, built_in=hooks).rules
    assert said in str(refused.value)
    assert refused.value.exit_code == 3


def test_every_fault_is_named_at_once() -> None:
    with pytest.raises(FamilyError) as refused:
        load_families([EntryPoint("a", "no_such_a", "speclint"), EntryPoint("b", "no_such_b", "speclint")])
    assert "no_such_a" in str(refused.value)
    assert "no_such_b" in str(refused.value)


def test_rules_in_a_module_wait_until_one_of_their_kinds_is_checked() -> None:
    module = ModuleType("tubes_kept_apart")
    vars(module).update(RULES=RULES)
    sys.modules["tubes_kept_apart"] = module
    loaded = load_families(
        [made_family("apart", speclint_rules=lambda: [rules_in("tubes_kept_apart", "tube")])]
    )
    assert loaded.rules_for({"rack"}) == ()
    assert {rule.family for rule in loaded.rules_for({"tube", "rack"})} == {"apart"}


def test_a_module_of_rules_that_cannot_be_imported_is_refused_when_it_is_needed() -> None:
    loaded = load_families([made_family("apart", speclint_rules=lambda: [rules_in("no_such_rules", "tube")])])
    assert loaded.rules_for({"rack"}) == ()
    with pytest.raises(FamilyError, match="family apart cannot be imported: ModuleNotFoundError"):
        loaded.rules_for({"tube"})


def test_a_fault_that_two_modules_of_a_family_share_is_told_once() -> None:
    """Such as a name of speclint that another version of it does not have."""
    modules = "first_of_the_rules", "second_of_the_rules"
    finder = _NotThere(modules)
    sys.meta_path.insert(0, finder)
    try:
        loaded = load_families(
            [made_family("apart", speclint_rules=lambda: [rules_in(one, "tube") for one in modules])]
        )
        with pytest.raises(FamilyError) as refused:
            loaded.rules_for({"tube"})
    finally:
        sys.meta_path.remove(finder)
    assert str(refused.value).count("cannot import name 'replaced'") == 1


class _NotThere(MetaPathFinder):
    """Says of some modules that they import what is not there."""

    def __init__(self, modules: Collection[str]) -> None:
        self._modules = modules

    def find_spec(self, name: str, path: object = None, target: object = None) -> None:  # noqa: ARG002
        """What Python asks for each module that is imported."""
        if name in self._modules:
            raise ImportError("cannot import name 'replaced' from 'speclint'")


def test_hooks_may_be_left_out() -> None:
    assert load_families([made_family("quiet", speclint_rules=nothing)]).families[0].name == "quiet"


def test_families_of_this_distribution_are_declared_as_a_stranger_would() -> None:
    names = [point.name for point in installed()]
    assert names == sorted(names)
    assert "liners" in names
    assert all(point.dist is not None and point.dist.name == "speclint" for point in installed())


def test_kinds_of_another_family_may_be_named(  # a family may bring kinds without rules
) -> None:
    loaded = load_families([entry_point("kinds", kinds=(Rack,), rules=())])
    assert loaded.kinds["rack"] is Rack


def test_a_family_that_asks_for_another_speclint_is_refused_before_it_is_imported(tmp_path: Path) -> None:
    """Its module may use what this speclint lacks, so its requirement is told and not what the import raises."""
    (tmp_path / "late-1.dist-info").mkdir()
    (tmp_path / "late-1.dist-info" / "METADATA").write_text(
        "Metadata-Version: 2.1\nName: late\nVersion: 1\nRequires-Dist: speclint>=99\n", encoding="utf-8"
    )
    (tmp_path / "late-1.dist-info" / "entry_points.txt").write_text(
        "[speclint]\nlate = no_such_module\n", encoding="utf-8"
    )
    found = find_families(PathDistribution(tmp_path / "late-1.dist-info").entry_points)
    assert found.families == ()
    ((name, said),) = found.refused
    assert name == "late"
    assert said.startswith('family late (late) asks for "speclint>=99"; this is speclint ')


def test_a_fault_of_what_speclint_hands_over_itself_is_told() -> None:
    own = ModuleType("own_hooks")
    vars(own)["speclint_reports"] = family(lambda: None)
    assert find_families([], built_in=own).refused == (
        ("speclint", "family speclint: speclint_reports returned nothing, not a list or a tuple"),
    )


def test_nothing_is_loaded_where_nothing_is_there() -> None:
    assert find_families([]) == Loaded()


def test_two_families_cannot_share_a_module() -> None:
    """The second is told, with the module that was loaded before it."""
    one = made_family("one")
    ((name, said),) = find_families([one, EntryPoint("two", one.value, "speclint")]).refused
    assert name == "two"
    assert said.startswith("family two cannot be used: ")
    assert one.value in said
