"""What the project has by name: options, files, Python, keys of specs, words of closed lists."""

from __future__ import annotations

import argparse
import builtins
import importlib
import inspect
import math
import re
import typing
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

from speclint.commands.command_line import COMMANDS, module_of
from speclint.commands.first_design import first_design
from speclint.commands.loading import loaded_families
from speclint.commands.new_family import family_files
from speclint.errors import field_names, is_record
from speclint.families import NameLists
from speclint.families.rule_examples import OF_A_RULE, OF_ANY_CHANGE
from speclint.handbook.materials import names
from speclint.quantities import DIMENSIONS
from speclint.repository import Settings
from speclint.repository.table_mappings import PartsMapping, TableMapping
from speclint.rules import Sheet
from speclint.specs import CASE_NAMES, HAZARDS, schema_of_table, words_of
from speclint.testing import installed_families
from tests.contracts.test_architecture import MODULES, exported
from tests.developers import NAME

ROOT = Path(__file__).parents[1]


#: Names that a page invents to show how something is written.
INVENTED = {"Beam", "Pipe", "Seats", "seat", "front"}


@cache
def options_of(command: str) -> Mapping[str, argparse.Action]:
    """The options of a command by their words."""
    parser = argparse.ArgumentParser(add_help=False)
    module_of(command).add_options(parser)
    return dict(parser._option_string_actions)


@cache
def options_of_programs() -> str:
    return "".join(path.read_text(encoding="utf-8") for path in (ROOT / "tests").rglob("__main__.py"))


@cache
def forms() -> set[str]:
    """The report writers."""
    return set(loaded_families().writers)


@cache
def begun() -> set[str]:
    """The files that ``speclint begin`` writes, and those that the guide and README have their readers write."""
    own = {
        "speclint.toml",
        "duties/main-line.toml",
        "hooks/pre-commit",
        "ci/check-change.sh",
        "pipes/pipe-live.toml",
    }
    return own | {one.file for one in first_design(2, "separate")} | {".git/hooks/pre-commit"}


@cache
def files() -> set[str]:
    """Every file and folder of the project, and of a family just written, by each end of its path."""
    paths = [path.relative_to(ROOT).as_posix() for top in _TOPS for path in sorted((ROOT / top).rglob("*"))]
    paths += [path.name for path in ROOT.iterdir()] + list(begun()) + list(family_files(NAME)) + list(_TOPS)
    folders = {parent.as_posix() for path in paths for parent in Path(path).parents}
    whole = [path.split("/") for path in {*paths, *folders} if "__pycache__" not in path]
    return {"/".join(parts[start:]) for parts in whole for start in range(len(parts))}


_TOPS = ("speclint", "plugins", "tests", "example_specs", ".ci")


@cache
def names_of_python() -> set[str]:
    """Public names of the packages, their classes' attributes, builtins, and what the family in the page is made of."""
    found = {*dir(builtins), *dir(typing), *MODULES, *INVENTED}
    for package in [one for one in MODULES if exported(one)]:
        for name in exported(package):
            found.add(name)
            if inspect.isclass(one := getattr(importlib.import_module(package), name, None)):
                found |= {*dir(one), *getattr(one, "__annotations__", {})}
    for text in family_files(NAME).values():
        found |= set(re.findall(r"\b[A-Za-z_]\w*\b", text))
    return found


@cache
def names_of_modules() -> set[str]:
    """What modules of the project define at their top and in classes: functions, classes, constants and fields."""
    found: set[str] = set()
    for path in (
        one
        for top in ("speclint", "plugins", "tests/contracts", "tests/published")
        for one in (ROOT / top).rglob("*.py")
    ):
        found |= {name for names in _DEFINED.findall(path.read_text(encoding="utf-8")) for name in names}
    return found - {""}


#: At the top of a module and in a class; of values only those at the top, and fields of a class by their types.
_DEFINED = re.compile(r"^(?:    )?(?:def|class) (\w+)|^(\w+)(?:: [^=\n]+)? = |^    (\w+): ", re.MULTILINE)


@cache
def parameters() -> set[str]:
    """Names of the parameters of the sheet's methods and of what the packages export: the page calls values by them."""
    called = [getattr(Sheet, one) for one in dir(Sheet) if not one.startswith("_")]
    return {name for one in [*called, *exported_calls().values()] for name in parameters_of(one)}


@cache
def exported_calls() -> Mapping[str, Any]:
    packages = [one for one in MODULES if exported(one) and one.startswith(("speclint.", "speclint"))]
    found = {
        name: getattr(importlib.import_module(one), name, None) for one in packages for name in exported(one)
    }
    return {name: one for name, one in found.items() if callable(one)}


def parameters_of(called: Any) -> tuple[str, ...]:
    if isinstance(called, type) and is_record(called):
        return field_names(called)
    try:
        return tuple(inspect.signature(called).parameters)
    except (TypeError, ValueError):
        return ()


@cache
def _schemas() -> tuple[Any, ...]:
    return tuple(schema_of_table(one) for one in (Settings, PartsMapping, TableMapping))


@cache
def _lists() -> NameLists:
    loaded = installed_families()
    return NameLists(loaded.kinds, loaded.materials)


#: Keys that a spec may have beside those of its kind.
_ANYWHERE = {"kind", "each", "for", "like", "mirror_of", "value", "from", "note"}


@cache
def keys() -> set[str]:
    """Every key of specs, settings, mappings and examples of rules; names that a designer chooses are none."""
    of_kinds = {part for key in _lists()._keys for part in (*key.path, *key.kind.old_keys)}
    of_examples = {*OF_A_RULE, *OF_ANY_CHANGE}
    return _ANYWHERE | of_kinds | of_examples | {key for one in _schemas() for key in _keys_in(one)}


def keys_of_kind(kind: str) -> set[str]:
    """The keys of a kind and of its tables."""
    return _ANYWHERE | {part for key in _lists()._keys if key.kind.kind == kind for part in key.path}


def keys_of(schema: Any) -> set[str]:
    """The keys for which a schema has a place."""
    return {*_keys_in(schema), "value", "from", "note"}


def _keys_in(schema: Any) -> Iterator[str]:
    if isinstance(schema, dict):
        for word, inside in schema.items():
            if word == "properties" and isinstance(inside, dict):
                yield from inside
            yield from _keys_in(inside)
    elif isinstance(schema, list):
        for one in schema:
            yield from _keys_in(one)


@cache
def closed_words() -> set[str]:
    """Words of closed lists, of specs and settings."""
    words = {word for key in _lists()._keys for word in words_of(key.field)}
    return words | {word for one in _schemas() for word in _words_in(one)}


def _words_in(schema: Any) -> Iterator[str]:
    if isinstance(schema, dict):
        for word, inside in schema.items():
            if word in ("enum", "propertyNames", "const"):
                yield from (one for one in _flat(inside) if isinstance(one, str))
            yield from _words_in(inside)
    elif isinstance(schema, list):
        for one in schema:
            yield from _words_in(one)


def _flat(inside: Any) -> list[Any]:
    if isinstance(inside, dict):
        return [word for one in inside.values() for word in _flat(one)]
    return inside if isinstance(inside, list) else [inside]


@cache
def rules() -> set[str]:
    """Names of rules."""
    template = "".join(family_files(NAME).values())
    return {one.name for one in installed_families().rules} | set(
        re.findall(rf'"({NAME}-[a-z]+\.[a-z]+)"', template)
    )


@cache
def limits() -> set[str]:
    """Names of the limits that rules have."""
    return {limit.name for one in installed_families().rules for limit in one.limits}


@cache
def kinds() -> set[str]:
    """Words of kinds."""
    return set(installed_families().kinds)


@cache
def listed() -> set[str]:
    """The lists of names, and each name of the materials among them."""
    return {*_lists().called(), *names()}


@cache
def known() -> set[str]:
    """Every word that something of the project has."""
    return {
        *(keys() | kinds() | rules() | closed_words() | limits() | listed() | forms() | files()),
        *(names_of_python() | names_of_modules() | parameters() | _choices() | _inks()),
        *(one.name for one in installed_families().families),
        *COMMANDS,
        *CASE_NAMES,
        *HAZARDS,
        *DIMENSIONS,
        *dir(math),
        "speclint",
    }


@cache
def code_of_core() -> tuple[str, ...]:
    return tuple(path.read_text(encoding="utf-8") for path in (ROOT / "speclint").rglob("*.py"))


@cache
def paths_of_keys() -> list[list[str]]:
    """The path of every key of every kind, without the names that a designer chooses."""
    return [[one for one in key.path if one != "*"] for key in _lists()._keys]


@cache
def _choices() -> set[str]:
    return {
        str(choice) for word in COMMANDS for one in options_of(word).values() for choice in one.choices or ()
    }


@cache
def _inks() -> set[str]:
    """The classes of ink for which the pack has rules."""
    style = (ROOT / "speclint/reports/pack/templates/style.css").read_text(encoding="utf-8")
    return set(re.findall(r"\.drawing \.(\w+)", style))


@cache
def names_of_texts() -> set[str]:
    """Words in quotes that code takes as they stand, such as those of an argument."""
    found: set[str] = set()
    for path in (ROOT / "speclint").rglob("*.py"):
        if path.parts[-2] in ("rules", "facts"):
            found |= set(re.findall(r'"([a-z -]+)"', path.read_text(encoding="utf-8")))
    return found
