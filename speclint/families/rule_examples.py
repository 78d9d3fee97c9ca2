"""Of each rule an example that holds and the change that breaks it, as families bring them in ``data/examples.toml``.

The file is read only where somebody asks for it: no command starts with it. What it says is proved by tests, which make
the check unchanged and changed (``tests/contracts/test_rule_examples.py``).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from importlib.resources import files
from importlib.util import find_spec
from typing import Any

from msgspec import Struct

from speclint.errors import Complaint, FamilyError, Location, Path, TomlError, locate, one_of, read_toml_text
from speclint.families.excerpts import ExcerptLine, excerpt
from speclint.families.loaded import Family
from speclint.repository import Change, inline

#: The file, in the package of a family.
FILE = "data/examples.toml"
_TEXTS = ("component", "holds", "result", "finding")
_CHANGES = ("given", "breaks")
#: The keys of a rule's table, and those that a change may have.
OF_A_RULE = (*_TEXTS, "alone", *_CHANGES)
#: What a change states beside its component: one of these sets of keys.
_OF_A_CHANGE = ({"key", "value"}, {"key", "absent"}, {"spec"}, {"absent"})
OF_ANY_CHANGE = ("component", "key", "value", "absent", "spec")


class RuleExample(Struct, frozen=True):
    """A component of which a rule holds, and the change with which it is a finding.

    ``holds`` shows, as specs write it, what the check took of the component and of the parts beside it; ``result`` is
    what the rule says of it, ``finding`` what it says once ``changes`` are made. The component is one of
    ``example_specs`` with ``given`` changed or added; where the design is ``alone``, ``given`` is the whole of it:
    specs, and files such as ``speclint.toml`` by their name.
    """

    rule: str
    component: str
    holds: str
    result: str
    finding: str
    changes: tuple[Change, ...]
    given: tuple[Change, ...] = ()
    alone: bool = False

    @property
    def breaks(self) -> str:
        """The changed lines as specs write them, each part under its id; what is left out as a comment."""
        by_part: dict[str, list[Change]] = {}
        for one in self.changes:
            by_part.setdefault(one.component, []).append(one)
        return "\n".join(_changed_part(part, changes) for part, changes in by_part.items())


def _changed_part(part: str, changes: Iterable[Change]) -> str:
    whole = [one for one in changes if not one.key]
    keys = [one for one in changes if one.key]
    text = "".join(
        f"# {part} left out\n" if one.absent else f"# {part} beside the others\n{one.value.strip()}\n"
        for one in whole
    )
    lines = (ExcerptLine(one.key, "" if one.absent else inline(one.value)) for one in keys)
    return text + (excerpt(part, lines) if keys else "")


def rule_examples(families: Iterable[Family]) -> Mapping[str, RuleExample]:
    """The examples that some families bring, by the name of the rule.

    :raises FamilyError: where a file cannot be read, or two families bring an example of one rule: one line for each
        fault, with file, line and key.
    """
    found: dict[str, RuleExample] = {}
    brought_by: dict[str, str] = {}
    faults: list[str] = []
    for family in families:
        for name, example in _of_family(family, faults).items():
            if name in found:
                faults.append(
                    f"family {family.name}: {FILE} has an example of {name}, and so has the family {brought_by[name]}"
                )
            else:
                found[name], brought_by[name] = example, family.name
    if faults:
        raise FamilyError("; ".join(faults))
    return found


def _of_family(family: Family, faults: list[str]) -> dict[str, RuleExample]:
    try:
        text = _text_of(family)
        return {} if text is None else _Reading(text).examples()
    except _Refused as refused:
        faults.append(f"family {family.name}: {refused}")
        return {}


def _text_of(family: Family) -> str | None:
    """The file in the package of a family; None where it brings none."""
    module = family.module.partition(":")[0].strip()
    try:
        found = find_spec(module)
    except (ImportError, ValueError):  # a module that was made in memory has no place
        return None
    if found is None or found.submodule_search_locations is None:
        return None
    file = files(module).joinpath(FILE)
    if not file.is_file():
        return None
    try:
        return file.read_text(encoding="utf-8")
    except UnicodeDecodeError as problem:
        raise _Refused(_complaint(0, "", "the file is not UTF-8 text", "", "it saved as UTF-8")) from problem
    except OSError as problem:
        why = problem.strerror or str(problem)
        raise _Refused(_complaint(0, "", f"the file cannot be read: {why}")) from problem


class _Refused(Exception):
    """What is wrong with a file of examples, in one line."""


def _complaint(line: int, key: str, said: str, read: str = "", write: str = "") -> str:
    return str(Complaint(Location(FILE, line, key), said, read, write))


class _Reading:
    """A file of examples while it is read."""

    def __init__(self, text: str) -> None:
        self._text = text
        try:
            self._tree = read_toml_text(self._text)
        except TomlError as problem:
            key = ".".join(map(str, problem.path))
            said = _complaint(problem.line, key, str(problem), write=problem.write)
            raise _Refused(said) from problem

    def examples(self) -> dict[str, RuleExample]:
        """Every example of the file, by its rule."""
        return {name: self._example(name, table) for name, table in self._tree.items()}

    def _example(self, rule: str, table: Any) -> RuleExample:
        if not isinstance(table, dict):
            raise self._refused(
                (rule,), "a table is expected for each rule", table, f'["{rule}"] and its keys'
            )
        self._refuse_unknown((rule,), table, OF_A_RULE)
        texts = {key: self._sentence((rule, key), table.get(key)) for key in _TEXTS}
        alone = table.get("alone", False)
        if not isinstance(alone, bool):
            raise self._refused((rule, "alone"), "this is true or false", alone, "alone = true")
        given, breaks = (tuple(self._changes((rule, key), table.get(key, []))) for key in _CHANGES)
        if not breaks:
            raise self._refused(
                (rule,), "it does not say what breaks the rule", write=f'[["{rule}".breaks]], a change'
            )
        return RuleExample(rule=rule, changes=breaks, given=given, alone=alone, **texts)

    def _sentence(self, path: Path, value: Any) -> str:
        if not isinstance(value, str) or not value.strip():
            raise self._refused(path, "a text is expected here", value, f'{path[-1]} = "…"')
        return value

    def _changes(self, path: Path, value: Any) -> Iterator[Change]:
        if not isinstance(value, list):
            raise self._refused(
                path, "a list of changes is expected here", value, f'[["{path[0]}".{path[1]}]]'
            )
        for number, one in enumerate(value):
            yield self._change((*path, number), one)

    def _change(self, path: Path, table: Any) -> Change:
        if not isinstance(table, dict):
            raise self._refused(
                path, "a change is a table", table, '{ component = "…", key = "…", value = … }'
            )
        self._refuse_unknown(path, table, OF_ANY_CHANGE)
        component = self._sentence((*path, "component"), table.get("component"))
        if table.keys() - {"component"} not in _OF_A_CHANGE or table.get("absent", True) is not True:
            write = (
                "key and value; key and absent = true; spec, the text of a whole one; or absent = true alone"
            )
            raise self._refused(path, "it does not say what is changed", write=write)
        key = self._sentence((*path, "key"), table["key"]) if "key" in table else ""
        value = self._sentence((*path, "spec"), table["spec"]) if "spec" in table else table.get("value")
        return Change(component, key, value, absent="absent" in table)

    def _refuse_unknown(self, path: Path, table: Mapping[str, Any], known: tuple[str, ...]) -> None:
        for key in table:
            if key not in known:
                raise self._refused((*path, key), f'"{key}" is no key here', write=one_of(key, known))

    def _refused(self, path: Path, said: str, read: Any = None, write: str = "") -> _Refused:
        lines = locate(self._text)
        there = next(path[:depth] for depth in range(len(path), -1, -1) if path[:depth] in lines or not depth)
        key = ".".join(f'"{step}"' if "." in str(step) else str(step) for step in path)
        shown = "" if read is None or isinstance(read, dict | list) else inline(read)
        return _Refused(_complaint(lines.get(there, 0), key, said, shown, write))
