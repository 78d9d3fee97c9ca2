"""What is loaded: rules, kinds and families, for reading and as data."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from typing import Any

from speclint.families import Loaded
from speclint.reports.page import Page
from speclint.rules import Rule
from speclint.specs import (
    Component,
    Spec,
    SpecTable,
    conditions_of,
    inner_table,
    meanings,
    own_first,
    said_of,
    summary,
)


def rules_page(rules: Iterable[Rule], width: int, *, full: bool) -> Page:
    """The rules by family: one line each, or each in full."""
    page = Page(width)
    family = None
    listed = sorted(rules, key=lambda one: (one.family, one.name))
    column = _column(rule.name for rule in listed)
    for rule in listed:
        if rule.family != family:
            page.gap()
            page.line((f"family {rule.family}", "strong"))
            family = rule.family
        if full:
            _rule_in_full(page, rule)
        else:
            page.entry(rule.name, f"{_grades(rule)}: {rule.title}", indent=2, column=column)
    return page


def _column(names: Iterable[str]) -> int:
    """The width of a column that holds every name, with a space behind it."""
    return max(map(len, names), default=0) + 2


def _on(rule: Rule) -> list[str]:
    return ["every component" if kind is Component else kind.kind for kind in rule.on]


def _grades(rule: Rule) -> str:
    return rule.grade.word if rule.gravest is rule.grade else f"{rule.grade.word}, or {rule.gravest.word}"


def _rule_in_full(page: Page, rule: Rule) -> None:
    page.gap()
    page.ends(rule.name, f"edition {rule.edition}", "strong")
    page.entry("says", rule.title, indent=2, column=13)
    page.entry("why", rule.why, indent=2, column=13)
    page.entry("grade", _grades(rule), indent=2, column=13)
    page.entry("on", ", ".join(_on(rule)), indent=2, column=13)
    page.entry("load cases", ", ".join(rule.cases) or "none", indent=2, column=13)
    for limit in rule.limits:
        text = f"{limit.name} = {limit.default} ({limit.says or limit.name}); {limit.source}"
        page.entry("limit", text, indent=2, column=13)
    page.entry("not covered", rule.leaves_out, indent=2, column=13)
    page.entry("against", _against(rule), indent=2, column=13)
    for source in rule.cites:
        page.entry("source", str(source), indent=2, column=13)


def _against(rule: Rule) -> str:
    """The hazards that a rule guards against, on the part that is checked and on others."""
    if rule.against is None:
        return "it does not say which hazard it guards against"
    said = [", ".join(rule.against)] if rule.against else []
    said += [f"{', '.join(hazards)} of the {word}" for word, hazards in rule.against_on.items()]
    return "; ".join(said) or "no hazard by itself"


def rules_data(rules: Iterable[Rule]) -> list[dict[str, Any]]:
    """The rules as plain data."""
    return [
        {
            "rule": rule.name,
            "family": rule.family,
            "statement": rule.title,
            "why": rule.why,
            "grade": rule.grade.word,
            "gravest": rule.gravest.word,
            "on": _on(rule),
            "cases": list(rule.cases),
            "limits": [
                {
                    "name": limit.name,
                    "default": limit.default,
                    "says": limit.says,
                    "source": str(limit.source),
                }
                for limit in rule.limits
            ],
            "leaves_out": rule.leaves_out,
            "against": list(rule.against or ()),
            "against_on": {word: list(hazards) for word, hazards in rule.against_on.items()},
            "sources": [str(source) for source in rule.cites],
            "edition": rule.edition,
        }
        for rule in rules
    ]


def kinds_page(kinds: Iterable[type[Spec]], width: int) -> Page:
    """The kinds, one line each."""
    page, listed = Page(width), list(kinds)
    column = _column(kind.kind for kind in listed)
    for kind in listed:
        page.entry(kind.kind, summary(kind), indent=2, column=column)
    return page


def kind_page(kind: type[Spec], width: int) -> Page:
    """One kind: what it is and every key."""
    kind.model_rebuild()  # so that tables named before they are defined are known
    page = Page(width)
    page.ends(kind.kind, kind.called, "strong")
    page.wrapped(summary(kind))
    if issubclass(kind, Component) and kind.hazards:
        page.wrapped(f"What it can suffer, by common practice: {', '.join(kind.hazards)}.")
    page.gap()
    page.line(("Keys", "strong"))
    page.entry("kind", f'"{kind.kind}"', indent=2, column=26)
    _keys(page, kind, "")
    for condition in kind.hosts:
        page.entry("must fit", str(condition), indent=2, column=26)
    return page


def _keys(page: Page, table: type[SpecTable], prefix: str) -> None:
    known = meanings(table)
    for name, field in own_first(table).items():
        if issubclass(table, Component) and name == "title":
            page.gap()
            page.line(("Keys of every component", "strong"))
        inner, named = inner_table(field.annotation)
        meaning = f"{known[name]}; " if name in known else ""
        if inner is None:
            page.entry(prefix + name, meaning + said_of(field), indent=2, column=26)
        else:
            page.entry(prefix + name, f"{meaning}a table. {summary(inner)}", indent=2, column=26)
            _keys(page, inner, f"{prefix}{name}{named}.")
    for condition in conditions_of(table):
        page.entry(f"{prefix}must hold", str(condition), indent=2, column=26)


def _about(module: str) -> str:
    """What a family concerns: the first line of the docstring of its module."""
    said = (getattr(sys.modules.get(module), "__doc__", None) or "").strip().splitlines()
    return f"{said[0].rstrip('.')}. " if said else ""


def families_page(loaded: Loaded, width: int) -> Page:
    """The families loaded, with versions."""
    page = Page(width)
    for family in loaded.families:
        count = sum(rule.family == family.name for rule in loaded.rules)
        about = _about(family.module)
        page.entry(
            family.name, f"{about}{family.version}, {count} rules ({family.module})", indent=2, column=16
        )
    for name in loaded.left_out:
        page.entry(name, "left out by speclint.toml", indent=2, column=16)
    if not loaded.families:
        page.line("no family is installed" if not loaded.left_out else "no other family is installed")
    return page
