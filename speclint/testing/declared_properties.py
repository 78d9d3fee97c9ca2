"""What a family declares of how its rules must go, in its ``data/properties.toml``: read by tests alone.

``[never_better_with]`` lists under ``pressure``, ``temperature``, ``wear`` and ``eccentricity`` the rules of which no
check is better where that rises. ``[[with_size]]`` lists rules of which what is used of the limit goes with a ``power``
of the size, with the physics in ``why``. ``[exempt."rule"]`` says of a property, by its word, why a rule lacks it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from importlib.resources import files
from importlib.util import find_spec
from typing import Any, Literal, get_args

import tomli

from speclint.errors import FamilyError, one_of, replace
from speclint.families import Family

#: The file, in the package of a family.
FILE = "data/properties.toml"
#: What may rise in a design.
Direction = Literal["pressure", "temperature", "wear", "eccentricity"]
DIRECTIONS: tuple[Direction, ...] = get_args(Direction)
#: What is tried on every rule: other units, another order, tighter tolerances, values stated that were not.
Property = Literal["units", "order", "tightening", "stating"]
PROPERTIES: tuple[Property, ...] = get_args(Property)
_TABLES = ("never_better_with", "with_size", "exempt")


@dataclass(frozen=True)
class Declared:
    """What is declared of one rule.

    ``never_better_with`` is what may rise without making a check better. ``power`` is that of the size with which what
    is used of the limit goes, None where nothing is declared. ``exempt`` are the properties that do not hold, with why.
    """

    never_better_with: tuple[Direction, ...] = ()
    power: int | None = None
    exempt: Mapping[Property, str] = field(default_factory=dict)


def declared_properties(families: Iterable[Family]) -> Mapping[str, Declared]:
    """What some families declare, by the name of the rule.

    :raises FamilyError: where a file cannot be read, or states something else.
    """
    found: dict[str, Declared] = {}
    for family in families:
        tree = _tree_of(family)
        _refuse_unknown(family, tree, _TABLES)
        _take_directions(family, tree.get("never_better_with", {}), found)
        _take_powers(family, tree.get("with_size", []), found)
        _take_exempt(family, tree.get("exempt", {}), found)
    return found


def _tree_of(family: Family) -> Mapping[str, Any]:
    module = family.module.partition(":")[0].strip()
    try:
        spec = find_spec(module)
    except (ImportError, ValueError):  # a module that was made in memory has no place
        return {}
    if spec is None or spec.submodule_search_locations is None:
        return {}
    file = files(module).joinpath(FILE)
    if not file.is_file():
        return {}
    try:
        return tomli.loads(file.read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError, tomli.TOMLDecodeError) as problem:
        raise _refused(family, f"cannot be read: {problem}") from problem


def _refused(family: Family, why: str) -> FamilyError:
    return FamilyError(f"family {family.name}: {FILE}: {why}")


def _refuse_unknown(family: Family, table: Any, known: Sequence[str], called: str = "") -> None:
    if not isinstance(table, Mapping):
        raise _refused(family, f"{called} is a table")
    for key in table:
        if key not in known:
            raise _refused(family, f'"{key}" is no key here; write {one_of(key, known)}')


def _take_directions(family: Family, table: Any, found: dict[str, Declared]) -> None:
    _refuse_unknown(family, table, DIRECTIONS, "never_better_with")
    for direction in DIRECTIONS:
        for rule in _names(family, table.get(direction, []), direction):
            was = found.get(rule, Declared())
            found[rule] = replace(was, never_better_with=(*was.never_better_with, direction))


def _take_powers(family: Family, tables: Any, found: dict[str, Declared]) -> None:
    if not isinstance(tables, list):
        raise _refused(family, "with_size is a list of tables, [[with_size]]")
    for table in tables:
        _refuse_unknown(family, table, ("power", "why", "rules"), "with_size")
        power, why = table.get("power"), table.get("why")
        if not isinstance(power, int) or not isinstance(why, str) or not why.strip():
            raise _refused(family, "with_size wants a whole number as power, and the physics in why")
        for rule in _names(family, table.get("rules"), "rules"):
            if found.get(rule, Declared()).power is not None:
                raise _refused(family, f"with_size lists {rule} twice")
            found[rule] = replace(found.get(rule, Declared()), power=power)


def _take_exempt(family: Family, tables: Any, found: dict[str, Declared]) -> None:
    _refuse_unknown(family, tables, tuple(tables), "exempt")
    for rule, table in tables.items():
        _refuse_unknown(family, table, PROPERTIES, f"exempt.{rule}")
        if not table or not all(isinstance(why, str) and why.strip() for why in table.values()):
            raise _refused(family, f"exempt.{rule} says of a property why it does not hold")
        found[rule] = replace(found.get(rule, Declared()), exempt=dict(table))


def _names(family: Family, names: Any, key: str) -> list[str]:
    if not isinstance(names, list) or not all(isinstance(one, str) for one in names):
        raise _refused(family, f"{key} is a list of names of rules")
    return names
