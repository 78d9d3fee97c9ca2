"""The limits that a repository sets for itself, read against the rules that declare them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from speclint.errors import Complaint, Location, QuantityError, one_of
from speclint.quantities import Measure
from speclint.repository import FILE_NAME, Settings
from speclint.rules.definition import Rule
from speclint.specs import Leaf, opened

Limits = dict[tuple[str, str], Measure]


def read_limits(settings: Settings, rules: Sequence[Rule]) -> tuple[Limits, list[Complaint]]:
    """The limits set in speclint.toml by rule and name, and what is wrong with the others."""
    by_name = {rule.name: rule for rule in rules}
    limits: Limits = {}
    complaints: list[Complaint] = []
    for rule_name, table in settings.limits.items():
        rule = by_name.get(rule_name)
        for name, leaf in table.items():
            found = _read(rule, rule_name, name, leaf, by_name)
            if isinstance(found, Complaint):
                complaints.append(found)
            else:
                limits[rule_name, name] = found
    return limits, complaints


def _read(
    rule: Rule | None, rule_name: str, name: str, leaf: Any, rules: dict[str, Rule]
) -> Measure | Complaint:
    value, where = opened(leaf)
    where = where if isinstance(leaf, Leaf) else Location(FILE_NAME, 0, f"limits.{rule_name}.{name}")
    if rule is None:
        return Complaint(where, f"no rule is called {rule_name}", "", one_of(rule_name, rules))
    known = [limit.name for limit in rule.limits]
    if name not in known:
        instead = one_of(name, known) if known else "nothing: this rule has no limit to set"
        return Complaint(where, f"{rule_name} has no limit called {name}", "", instead)
    if not isinstance(value, str):
        return Complaint(
            where, "a limit is written as text with its unit", str(value), f'"{rule.limit(name).default}"'
        )
    try:
        measure = rule.limit(name).read(value)
    except QuantityError as problem:
        return Complaint(where, str(problem), f'"{value}"', problem.instead)
    if not measure.exact:
        return Complaint(
            where, "a limit has no tolerance of its own", f'"{value}"', f'"{rule.limit(name).default}"'
        )
    return measure
