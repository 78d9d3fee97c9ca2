"""The files of planted parts: a rule worked by hand, parts that must be a finding, and parts that must hold."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, Literal, get_args

import tomli

from speclint.repository import Change

FOLDER = Path(__file__).parent
Sort = Literal["bad", "sound"]
_OF_FILE = {"worked", "bad", "sound"}
_OF_PART = {"component", "why", "changes", "alone", "found", "limit", "within", "says"}
_OF_CHANGE = {"component", "key", "value", "spec", "absent"}
#: What a value worked by hand may differ by from that of the check, as a share: what is lost in rounding by hand.
_ROUNDED = 0.01


@dataclass(frozen=True, slots=True)
class Planted:
    """One part: the design is the example with some changes, or, ``alone``, the specs and files of the changes.

    ``found`` and ``limit`` are what the check must have found and held it against, as somebody worked them by hand, to
    a share ``within``; ``says`` are words that must stand in what it says.
    """

    rule: str
    sort: Sort
    component: str
    why: str
    changes: tuple[Change, ...]
    alone: bool = False
    found: str = ""
    limit: str = ""
    within: float = _ROUNDED
    says: str = ""
    name: str = ""


class NotReadable(ValueError):
    """What is wrong with a file of planted parts."""


def files(family: str) -> list[Path]:
    """The files of a family, by the names of their rules."""
    return sorted((FOLDER / family).glob("*.toml"))


def families() -> list[str]:
    """The families for which parts are planted."""
    return sorted(one.name for one in FOLDER.iterdir() if one.is_dir() and files(one.name))


@cache
def planted(family: str) -> tuple[Planted, ...]:
    """All planted parts of a family.

    :raises NotReadable: with the file and the key.
    """
    return tuple(one for file in files(family) for one in read(file.stem, _table(file)))


def _table(file: Path) -> dict[str, Any]:
    try:
        return tomli.loads(file.read_text(encoding="utf-8"))
    except tomli.TOMLDecodeError as problem:
        raise NotReadable(f"{file.name}: {problem}") from None


def read(rule: str, table: Mapping[str, Any]) -> Iterator[Planted]:
    """The planted parts of one rule.

    :raises NotReadable: where a key is strange or one is missing.
    """
    _known(rule, table, _OF_FILE)
    if not str(table.get("worked", "")).strip():
        raise NotReadable(f"{rule}: worked is missing: how the rule is worked by hand, from its statement")
    for sort in get_args(Sort):
        for number, part in enumerate(table.get(sort, ()), start=1):
            yield _part(rule, sort, f"{rule}, {sort} {number}", part)


def _part(rule: str, sort: Sort, name: str, part: Mapping[str, Any]) -> Planted:
    _known(name, part, _OF_PART)
    for key in ("component", "why"):
        if not part.get(key):
            raise NotReadable(f"{name}: {key} is missing")
    changes = tuple(_change(name, part["component"], one) for one in part.get("changes", ()))
    more = {key: part[key] for key in ("alone", "found", "limit", "within", "says") if key in part}
    return Planted(rule, sort, part["component"], part["why"], changes, name=name, **more)


def _change(name: str, component: str, table: Mapping[str, Any]) -> Change:
    _known(name, table, _OF_CHANGE)
    if not table.get("key") and not table.get("absent") and "spec" not in table:
        raise NotReadable(f"{name}: a change has neither key, spec nor absent")
    value = table["spec"] if "spec" in table else table.get("value")
    return Change(table.get("component", component), table.get("key", ""), value, table.get("absent", False))


def _known(name: str, table: Mapping[str, Any], keys: set[str]) -> None:
    strange = sorted(table.keys() - keys)
    if strange:
        raise NotReadable(f"{name}: {', '.join(strange)} is none of {', '.join(sorted(keys))}")
