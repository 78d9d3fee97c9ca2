"""Where a rule of hold grade goes on without a value: every ``is_stated`` and ``said`` of a sheet that it can reach.

Found in the syntax tree: from the function of each rule along the names that it and its callees use. Agreements are
left out: they compare two places that state one fact, and where one of them is silent there is nothing to compare.
"""

from __future__ import annotations

import ast
import csv
from collections import defaultdict
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import NamedTuple

from speclint import Grade, Rule
from speclint.testing import installed_families

ROOT = Path(__file__).parents[2]
LIST = Path(__file__).with_name("passed_over.csv")
_FACTS = "speclint.facts"
#: Methods of a sheet, and what functions call them where they are handed over, that end a rule without the value.
_ASKS = {"take", "take_nominal", "take_absolute", "take_limits", "read", "count", "follow", "entry"}


class Use(NamedTuple):
    """One question whether a value is stated: module, function, and the value as the code writes it."""

    module: str
    function: str
    value: str

    @property
    def key(self) -> str:
        """The key of the spec that is asked for, or the variable that holds its value."""
        return self.value.rpartition(".")[2]


class Row(NamedTuple):
    """What is taken instead; where that is nothing, the rule that says so in ``words``, or asks for the key itself."""

    instead: str
    rule: str
    words: str


class _Code:
    """Functions of the families and of the facts that they share, by module and name, and which of them use which."""

    def __init__(self) -> None:
        self.functions: dict[tuple[str, str], ast.FunctionDef] = {}
        self._imported: dict[str, dict[str, tuple[str, str]]] = defaultdict(dict)
        for path in [*ROOT.glob("plugins/speclint_*/**/*.py"), *ROOT.glob("speclint/facts/*.py")]:
            self._read(path)
        self._of_facts = {name: (m, name) for m, name in self.functions if m.startswith(_FACTS)}

    def _read(self, path: Path) -> None:
        parts = path.relative_to(ROOT).with_suffix("").parts
        module = ".".join(part for part in parts if part not in ("plugins", "__init__"))
        tree = ast.parse(path.read_text(encoding="utf-8"))
        for node in ast.walk(tree):
            if isinstance(node, ast.ImportFrom) and node.module:
                names = {one.asname or one.name: (node.module, one.name) for one in node.names}
                self._imported[module].update(names)
        for node in tree.body:
            if isinstance(node, ast.FunctionDef):
                self.functions[module, node.name] = node
            elif isinstance(node, ast.ClassDef):
                methods = (one for one in node.body if isinstance(one, ast.FunctionDef))
                self.functions.update({(module, f"{node.name}.{one.name}"): one for one in methods})

    def reached(self, rule: Rule) -> set[tuple[str, str]]:
        """Every function that a rule may call, at any depth."""
        found: set[tuple[str, str]] = set()
        waiting = [(rule.function.__module__, rule.function.__name__)]
        while waiting:
            one = waiting.pop()
            if one in self.functions and one not in found:
                found.add(one)
                waiting += self._used_by(*one)
        return found

    @cache  # noqa: B019  # one object, kept as long as the tests run
    def _used_by(self, module: str, name: str) -> list[tuple[str, str]]:
        found: list[tuple[str, str]] = []
        for node in ast.walk(self.functions[module, name]):
            if isinstance(node, ast.Name):
                found += self._named(module, node.id)
            elif isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name):
                package, part = self._imported[module].get(node.value.id, ("", ""))
                found.append((f"{package}.{part}", node.attr))
        return found

    def _named(self, module: str, name: str) -> Iterator[tuple[str, str]]:
        source, own = self._imported[module].get(name, (module, name))
        if source == _FACTS and own in self._of_facts:
            yield self._of_facts[own]
        yield source, own
        yield from (one for one in self.functions if one[0] == source and one[1].startswith(f"{own}."))


@cache
def code() -> _Code:
    """The code of the families, read once."""
    return _Code()


def hold_rules() -> list[Rule]:
    """Every rule that is of hold grade, or may rise to it, but for agreements."""
    return [rule for rule in installed_families().rules if rule.gravest is Grade.HOLD and not rule.agreement]


def _asked(function: ast.FunctionDef) -> Iterator[str]:
    for node in ast.walk(function):
        if not isinstance(node, ast.Call) or len(node.args) < 2:
            continue
        if getattr(node.func, "attr", "") in ("is_stated", "said"):
            yield ast.unparse(node.args[1])


@cache
def uses() -> set[Use]:
    """Every question whether a value is stated that a rule of hold grade can reach."""
    reached = set().union(*(code().reached(rule) for rule in hold_rules()))
    return {Use(*one, value) for one in reached for value in _asked(code().functions[one])}


def asks_for(rule: Rule, key: str) -> bool:
    """Whether a rule takes or reads a key without first asking whether it is stated."""
    return any(_takes(code().functions[one], key) for one in code().reached(rule))


def _takes(function: ast.FunctionDef, key: str) -> bool:
    if any(value.endswith(f".{key}") for value in _asked(function)):
        return False
    calls = (node for node in ast.walk(function) if isinstance(node, ast.Call))
    return any(
        getattr(call.func, "attr", getattr(call.func, "id", "")) in _ASKS
        and any(isinstance(arg, ast.Attribute) and arg.attr == key for arg in call.args)
        for call in calls
    )


def listed() -> Mapping[Use, Row]:
    """The list of what is taken instead of each value that is passed over."""
    with LIST.open(encoding="utf-8", newline="") as lines:
        rows = [list(row.values()) for row in csv.DictReader(lines)]
    found = {Use(*row[:3]): Row(*row[3:]) for row in rows}
    if len(found) != len(rows):
        raise ValueError(f"{LIST.name} lists a use twice")
    return found
