"""The file of examples of a family as text, and the changes and designs that are stated by hand."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any

import tomli

from speclint.families import RuleExample
from speclint.repository import Change
from speclint.repository.toml_writing import inline

ROOT = Path(__file__).parents[2]
#: Changes, and small designs, for rules of which the search finds none: a file for each family.
BY_HAND = Path(__file__).with_name("by_hand")
_HEAD = """\
# Of each rule an example that holds and the change that breaks it. Written by python -m tests.rule_examples and proved
# by tests/contracts/test_rule_examples.py; components are those of example_specs, or are stated under given.
"""


def file_of(family: str) -> Path:
    """The file of examples of a family of ours."""
    return ROOT / "plugins" / f"speclint_{family}" / "data" / "examples.toml"


def written(examples: Iterable[RuleExample]) -> str:
    """The file of examples of one family."""
    return "\n".join([_HEAD, *map(_example, sorted(examples, key=lambda one: one.rule))])


def _example(one: RuleExample) -> str:
    lines = [f'["{one.rule}"]', f"component = {inline(one.component)}"]
    lines += ["alone = true"] if one.alone else []
    lines += [
        f"holds = {_text(one.holds)}",
        f"result = {inline(one.result)}",
        f"finding = {inline(one.finding)}",
    ]
    for name, changes in (("given", one.given), ("breaks", one.changes)):
        for change in changes:
            lines += ["", f'[["{one.rule}".{name}]]', *_change(change)]
    return "\n".join(lines) + "\n"


def _change(one: Change) -> Iterator[str]:
    yield f"component = {inline(one.component)}"
    if one.key:
        yield f"key = {inline(one.key)}"
    if one.absent:
        yield "absent = true"
    else:
        yield f"value = {inline(one.value)}" if one.key else f"spec = {_text(one.value)}"


def _text(text: str) -> str:
    """A text of several lines, as a reader of the file wants it."""
    return inline(text) if "'''" in text else f"'''\n{text}'''"


def by_hand() -> Mapping[str, RuleExample]:
    """What is stated by hand, by rule: component and changes, as yet without what the checks say."""
    found: dict[str, RuleExample] = {}
    for file in sorted(BY_HAND.glob("*.toml")):
        for rule, table in tomli.loads(file.read_text(encoding="utf-8")).items():
            if rule in found:
                raise ValueError(f"{file.name}: {rule} stands in another file too")
            given, changes = (tuple(map(_read, table.get(key, ()))) for key in ("given", "breaks"))
            found[rule] = RuleExample(
                rule, table["component"], "", "", "", changes, given, table.get("alone", False)
            )
    return found


def _read(table: Mapping[str, Any]) -> Change:
    value = table["spec"] if "spec" in table else table.get("value")
    return Change(table["component"], table.get("key", ""), value, table.get("absent", False))
