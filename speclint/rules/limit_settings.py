"""The limits that a repository sets for itself, read against the rules that declare them.

A limit of a rule that can hold a part back is set with the grounds for it, and by a reviewer who is competent for the
family of the rule: such a limit may make the rule kinder for every part, which is more than a concession does for one.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from speclint.errors import Complaint, Location, QuantityError, one_of, replace
from speclint.quantities import Measure
from speclint.repository import FILE_NAME, Settings
from speclint.rules.definition import Limit, Rule
from speclint.rules.grade import Grade
from speclint.specs import Leaf, Table, bare, names_nothing, opened

Limits = dict[tuple[str, str], Measure]
#: The keys of a limit that is written as a table.
_VALUE, _GROUNDS, _ACCEPTED_BY = _KEYS = ("value", "grounds", "accepted_by")


def read_limits(settings: Settings, rules: Sequence[Rule]) -> tuple[Limits, list[Complaint]]:
    """The limits set in speclint.toml by rule and name, and what is wrong with the others."""
    by_name = {rule.name: rule for rule in rules}
    limits: Limits = {}
    complaints: list[Complaint] = []
    for rule_name, table in settings.limits.items():
        for name, stated in table.items():
            where = _where(stated, f"limits.{rule_name}.{name}")
            rule = _rule_with(name, rule_name, by_name, where)
            found = rule if isinstance(rule, Complaint) else _read(rule, name, stated, where, settings)
            if isinstance(found, Complaint):
                complaints.append(found)
            else:
                limits[rule_name, name] = found
    return limits, complaints


def _where(stated: Any, key: str) -> Location:
    return stated.where if isinstance(stated, Leaf | Table) else Location(FILE_NAME, 0, key)


def _rule_with(name: str, rule_name: str, rules: Mapping[str, Rule], where: Location) -> Rule | Complaint:
    """The rule of a name, where it declares the limit."""
    rule = rules.get(rule_name)
    if rule is None:
        return Complaint(where, f"no rule is called {rule_name}", "", one_of(rule_name, rules))
    known = [limit.name for limit in rule.limits]
    if name not in known:
        instead = one_of(name, known) if known else "nothing: this rule has no limit to set"
        return Complaint(where, f"{rule_name} has no limit called {name}", "", instead)
    return rule


def _read(rule: Rule, name: str, stated: Any, where: Location, settings: Settings) -> Measure | Complaint:
    limit = rule.limit(name)
    said = bare(stated) if isinstance(stated, Mapping) else {_VALUE: opened(stated)[0]}
    measure = _measured(limit, said.get(_VALUE), where)
    if isinstance(measure, Complaint):
        return measure
    unknown = sorted(set(said) - set(_KEYS))
    if unknown:
        instead = one_of(unknown[0], _KEYS)
        return Complaint(where, f"{unknown[0]} is no key of a limit", f'"{measure.text}"', instead)
    asked = _is_for_a_reviewer(rule, limit, measure)
    wrong = (_without_grounds(rule, said) if asked else "") or (
        _no_reviewer(rule, said.get(_ACCEPTED_BY), settings) if asked or _ACCEPTED_BY in said else ""
    )
    if wrong:
        write = f'{{ value = "{measure.text}", grounds = "…", accepted_by = "…" }}, or "{limit.default}"'
        return Complaint(where, wrong, f'"{measure.text}"', write)
    by = f"accepted by {said[_ACCEPTED_BY]}" if _ACCEPTED_BY in said else ""
    return replace(measure, note=": ".join(str(one) for one in (by, said.get(_GROUNDS, "")) if one))


def _is_for_a_reviewer(rule: Rule, limit: Limit, measure: Measure) -> bool:
    """Whether a limit decides on holds and is another than the rule's own; a fact of the line is no choice."""
    if rule.gravest is not Grade.HOLD or limit.setting is not None:
        return False
    return measure.nominal != limit.read(limit.default).nominal


def _measured(limit: Limit, value: object, where: Location) -> Measure | Complaint:
    """The quantity that is written for a limit."""
    if not isinstance(value, str):
        return Complaint(
            where, "a limit is written as text with its unit", str(bare(value)), f'"{limit.default}"'
        )
    try:
        measure = limit.read(value)
    except QuantityError as problem:
        return Complaint(where, str(problem), f'"{value}"', problem.instead)
    if not measure.exact:
        return Complaint(where, "a limit has no tolerance of its own", f'"{value}"', f'"{limit.default}"')
    return measure


def _without_grounds(rule: Rule, said: Mapping[str, object]) -> str:
    """Why another limit of a rule of hold grade cannot be read; "" where it states its grounds."""
    grounds = said.get(_GROUNDS)
    if not isinstance(grounds, str) or not grounds.strip() or names_nothing(grounds):
        return f"{rule.name} can hold a part back: another limit of it states its grounds and who accepted it"
    return ""


def _no_reviewer(rule: Rule, name: object, settings: Settings) -> str:
    """Why a name answers for no limit of a rule; "" for a competent reviewer. Of any grade: reports print the name."""
    reviewer = settings.reviewers.get(name) if isinstance(name, str) else None
    if reviewer is None:
        named = ", ".join(sorted(settings.reviewers)) or "none is named under [reviewers]"
        return f"another limit of {rule.name} is accepted by one of the reviewers of these settings ({named})"
    if rule.family not in reviewer.competent_for:
        return f"{name} is not competent for the family {rule.family}, to which {rule.name} belongs"
    return ""
