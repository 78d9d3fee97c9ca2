"""What is loaded, asked for in parts: no fault of a family and no rule is lost on the way."""

from __future__ import annotations

from pathlib import Path
from typing import ClassVar

import pytest

from speclint import rules_in
from speclint.errors import FamilyError
from speclint.families import Family, Loaded, find_families, load_families
from tests.families.test_refusing import gives, kind, module_of, point
from tests.families.test_requirements import distribution
from tests.tubes import RULES, Tube, entry_point


class Bent(Tube):
    """A bent tube."""

    kind: ClassVar[str] = "bent-tube"
    called: ClassVar[str] = "bent tube"


def apart() -> Loaded:
    """A family whose rules of tubes wait in a module, beside one kind that is built on a tube."""
    waiting = rules_in(module_of(*RULES), "tube")
    return load_families([point("apart", speclint_kinds=gives(Tube, Bent), speclint_rules=gives(waiting))])


def test_the_fault_of_a_family_is_told_where_another_is_left_out() -> None:
    loaded = find_families([entry_point("tubes"), point("bad", speclint_api="2")]).without(["tubes"])
    with pytest.raises(FamilyError, match="family bad is written for interface '2'"):
        loaded.sound()


def test_no_rule_is_given_while_a_family_is_not_whole() -> None:
    loaded = find_families([entry_point("tubes"), point("bad", speclint_api="2")])
    with pytest.raises(FamilyError, match="family bad is written for interface '2'"):
        assert loaded.rules is None
    with pytest.raises(FamilyError, match="family bad is written for interface '2'"):
        loaded.rules_for({"tube"})


def test_two_families_that_claim_one_kind_are_refused_where_rules_are_asked_for() -> None:
    loaded = find_families(
        [point("one", speclint_kinds=gives(kind())), point("two", speclint_kinds=gives(kind()))]
    )
    with pytest.raises(FamilyError, match="family two: the name thing is taken by one"):
        loaded.rules_for({"thing"})


def test_a_family_that_was_left_out_before_is_not_told_as_absent() -> None:
    """It is installed: only what was never there is absent."""
    loaded = find_families([entry_point("tubes"), point("own")]).without(["tubes"])
    assert loaded.without(["own", "tubes"]).absent == ()


def test_a_kind_has_the_rules_of_the_kind_that_it_is_built_on() -> None:
    """A bent tube is a tube: a rule that waits for tubes would else be skipped without a word."""
    assert {rule.name for rule in apart().rules_for({"bent-tube"})} == {rule.name for rule in RULES}


def test_rules_that_were_read_for_one_kind_are_not_given_for_another() -> None:
    loaded = apart()
    assert loaded.rules_for({"tube"})
    assert loaded.rules_for({"duty"}) == ()


def test_a_module_of_rules_is_read_once() -> None:
    loaded = apart()
    first, again = loaded.rules_for({"tube"}), loaded.rules_for({"tube"})
    assert first
    assert all(one is other for one, other in zip(first, again, strict=True))


def test_the_version_of_a_family_is_that_of_its_distribution(tmp_path: Path) -> None:
    """The metadata made for these tests states 1."""
    assert Family("made", "made", distribution(tmp_path)).version == "1"
    assert Family("made", "made", None).version == "unknown"
