"""What modules of rules state is kept as it is read in them; they are imported when one of their rules is run."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest

from speclint.checking import KeptFolder
from speclint.checking.kept_rules import KeptRules
from speclint.families import Brought, Loaded
from speclint.rules import Rule, RulesIn
from speclint.testing import installed_families
from tests import tubes

GROUPS = [
    (brought.family, group)
    for brought in installed_families().brought
    for group in brought.rules
    if isinstance(group, RulesIn)
]
#: A rule that knows nothing but its part, so that it can stand in a module by itself.
MODULE = '''
"""One rule."""
from tests.tubes import Tube
from speclint.rules import Grade, rule
from speclint.equations import COMMON_PRACTICE

@rule("rust.none", title="it does not rust", on=Tube, grade=Grade.QUERY, cites=[COMMON_PRACTICE],
      why="Rust is no good.", leaves_out="all else; a competent person looks at it")
def none(tube, sheet):
    """Nothing to rust."""
    return sheet.conforms("it does not rust")

RULES = (none,)
'''


@pytest.fixture
def shelf(tmp_path: Path) -> KeptRules:
    return KeptRules(KeptFolder(tmp_path / "kept"), "code")


@pytest.mark.parametrize(("family", "group"), GROUPS, ids=lambda one: getattr(one, "module", str(one)))
def test_every_module_of_rules_is_kept_as_it_is_read(family: str, group: RulesIn, shelf: KeptRules) -> None:
    read = tuple(rule.of_family(family) for rule in group.load())
    assert shelf.recall(family, group) is None
    shelf.keep(family, group, read)
    recalled = shelf.recall(family, group)
    assert recalled == read
    assert read == recalled
    for one, other in zip(recalled, read, strict=True):
        assert (one.family, one.against_on, one.function, one.on) == (
            other.family,
            other.against_on,
            other.function,
            other.on,
        )
        assert hash(one) == hash(other)


def test_a_rule_that_says_something_else_is_another(shelf: KeptRules) -> None:
    family, group = GROUPS[0]
    read = tuple(rule.of_family(family) for rule in group.load())
    shelf.keep(family, group, read)
    first = (shelf.recall(family, group) or ())[0]
    assert first != read[1]
    assert first != read[0].name
    assert read[1] != first


def test_another_code_or_family_or_module_has_its_own(tmp_path: Path) -> None:
    family, group = GROUPS[0]
    folder = KeptFolder(tmp_path / "kept")
    KeptRules(folder, "code").keep(family, group, tuple(group.load()))
    assert KeptRules(folder, "code").recall(family, group) is not None
    assert KeptRules(folder, "other").recall(family, group) is None
    assert KeptRules(folder, "code").recall("other", group) is None
    assert KeptRules(folder, "code").recall(family, RulesIn("other", ())) is None


def test_what_only_the_module_holds_is_taken_from_it_when_it_is_asked_for(
    shelf: KeptRules, monkeypatch: pytest.MonkeyPatch
) -> None:
    module = ModuleType("rust_rules")
    exec(MODULE, module.__dict__)
    group = RulesIn("rust_rules", ("tube",))
    rules: tuple[Rule, ...] = module.__dict__["RULES"]
    shelf.keep("rust", group, rules)
    (kept,) = shelf.recall("rust", group) or ()
    assert kept.title == "it does not rust"
    with pytest.raises(ImportError):
        _ = kept.function
    monkeypatch.setitem(sys.modules, "rust_rules", module)
    assert kept.function is rules[0].function
    assert kept.on == (tubes.Tube,)
    with pytest.raises(AttributeError):
        _ = kept.nothing_of_the_kind  # type: ignore[attr-defined]
    module.__dict__["RULES"] = ()
    (again,) = shelf.recall("rust", group) or ()
    with pytest.raises(LookupError, match=r"rust_rules has no rule rust\.none"):
        _ = again.function


def test_what_is_loaded_takes_its_rules_from_what_is_kept_and_keeps_what_it_reads(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    class Shelf:
        kept: dict[str, tuple[Rule, ...]] = {}
        recalled: list[str] = []

        def recall(self, family: str, group: RulesIn) -> tuple[Rule, ...] | None:
            self.recalled.append(group.module)
            return self.kept.get(f"{family} {group.module}")

        def keep(self, family: str, group: RulesIn, rules: tuple[Rule, ...]) -> None:
            self.kept[f"{family} {group.module}"] = rules

    module = ModuleType("rust_rules")
    exec(MODULE, module.__dict__)
    monkeypatch.setitem(sys.modules, "rust_rules", module)
    brought = Brought("rust", rules=(RulesIn("rust_rules", ()),))
    shelf = Shelf()
    (read,) = Loaded(brought=(brought,), recollection=shelf).rules
    assert shelf.kept == {"rust rust_rules": (read,)}
    monkeypatch.delitem(sys.modules, "rust_rules")
    again = Loaded(brought=(brought,), recollection=shelf)
    assert again.rules == (read,)
    assert again.rules_for({"tube"}) == (read,)
    assert shelf.recalled == ["rust_rules", "rust_rules"]


CHECK = """
import sys
from speclint.commands import main
code = main(["check", sys.argv[1]])
print(code, [name for name in sys.modules if name.startswith("speclint_") and ".rules." in name])
"""


def test_a_check_again_imports_no_module_of_rules(tmp_path: Path) -> None:
    """As a user meets it: one spec of the example, checked twice."""
    example = Path(__file__).parents[2] / "example_specs"
    spec = str(example / "rings" / "ring.toml")
    environment = {**os.environ, "XDG_CACHE_HOME": str(tmp_path), "LOCALAPPDATA": str(tmp_path)}
    said = [
        subprocess.run(
            [sys.executable, "-c", CHECK, spec], capture_output=True, text=True, check=True, env=environment
        ).stdout.splitlines()
        for _ in range(2)
    ]
    assert "speclint_liners.rules" in said[0][-1]
    assert said[1][-1].endswith(" []")
    assert said[0][-8:-1] == said[1][-8:-1]  # how the checks came out; before it, what was read
