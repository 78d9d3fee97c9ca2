"""What is loaded: rules, kinds and families, for reading and as data."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Sequence
from typing import Any

from speclint.errors import SettingsError, one_of
from speclint.families import Loaded
from speclint.reports.listed_keys import listed_keys
from speclint.reports.page import Page
from speclint.reports.rule_words import grades_in_words, hazards_in_words, kinds_in_words
from speclint.rules import Rule
from speclint.specs import Component, Spec, summary


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
            page.entry(rule.name, f"{grades_in_words(rule)}: {rule.title}", indent=2, column=column)
    return page


def rules_holding(rules: Sequence[Rule], text: str) -> tuple[Rule, ...]:
    """The rules in which every word of a text is found: in name, family, statement or kinds, in any case.

    :raises SettingsError: where it is found in none.
    """
    words = text.casefold().split()
    found = tuple(one for one in rules if all(word in _said_of(one) for word in words))
    if not found:
        instead = one_of(text, [rule.name for rule in rules])
        raise SettingsError(f'no rule has "{text}" in its name, family, statement or kinds; write {instead}')
    return found


def _said_of(rule: Rule) -> str:
    return f"{rule.name} {rule.family} {rule.title} {' '.join(kinds_in_words(rule))}".casefold()


def _column(names: Iterable[str]) -> int:
    """The width of a column that holds every name, with a space behind it."""
    return max(map(len, names), default=0) + 2


def _rule_in_full(page: Page, rule: Rule) -> None:
    page.gap()
    page.ends(rule.name, f"edition {rule.edition}", "strong")
    page.entry("says", rule.title, indent=2, column=13)
    page.entry("why", rule.why, indent=2, column=13)
    page.entry("grade", grades_in_words(rule), indent=2, column=13)
    page.entry("on", ", ".join(kinds_in_words(rule)), indent=2, column=13)
    page.entry("load cases", ", ".join(rule.cases) or "none", indent=2, column=13)
    for limit in rule.limits:
        text = f"{limit.name} = {limit.default} ({limit.says or limit.name}); {limit.source}"
        page.entry("limit", text, indent=2, column=13)
    page.entry("not covered", rule.leaves_out, indent=2, column=13)
    page.entry("against", hazards_in_words(rule), indent=2, column=13)
    for source in rule.cites:
        page.entry("source", str(source), indent=2, column=13)
    from speclint.reports.rule_working import working_on  # with the reference, only of a rule in full

    working_on(page, rule)


def rules_data(rules: Iterable[Rule], *, full: bool = False) -> list[dict[str, Any]]:
    """The rules as plain data; in ``full`` with how each is worked."""
    if full:
        from speclint.reports.rule_working import working_data  # with the reference, as above
    return [
        {
            "rule": rule.name,
            "family": rule.family,
            "statement": rule.title,
            "why": rule.why,
            "grade": rule.grade.word,
            "gravest": rule.gravest.word,
            "on": kinds_in_words(rule),
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
            **(working_data(rule) if full else {}),
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
    page = Page(width)
    page.ends(kind.kind, kind.called, "strong")
    page.wrapped(summary(kind))
    if issubclass(kind, Component) and kind.hazards:
        page.wrapped(f"What it can suffer, by common practice: {', '.join(kind.hazards)}.")
    page.gap()
    page.line(("Keys", "strong"))
    page.entry("kind", f'"{kind.kind}"', indent=2, column=26)
    common = False
    for key in listed_keys(kind):
        if key.of_every and not common:
            page.gap()
            page.line(("Keys of every component", "strong"))
        common = key.of_every
        page.entry(key.written, key.says, indent=2, column=26)
    return page


def about_family(module: str) -> str:
    """What a family concerns: the first line of the docstring of its module."""
    loaded = sys.modules.get(module)  # None has a docstring of its own since Python 3.13
    said = ((loaded.__doc__ if loaded else None) or "").strip().splitlines()
    return f"{said[0].rstrip('.')}. " if said else ""


def families_page(loaded: Loaded, width: int) -> Page:
    """The families loaded, with versions."""
    page = Page(width)
    for family in loaded.families:
        count = sum(rule.family == family.name for rule in loaded.rules)
        about = about_family(family.module)
        page.entry(
            family.name, f"{about}{family.version}, {count} rules ({family.module})", indent=2, column=16
        )
    for name in loaded.left_out:
        page.entry(name, "left out by speclint.toml", indent=2, column=16)
    if not loaded.families:
        page.line("no family is installed" if not loaded.left_out else "no other family is installed")
    return page
