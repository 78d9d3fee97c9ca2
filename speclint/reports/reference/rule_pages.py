"""The rules, a page for each family: what each says and why, limits, formulae, what it leaves out, an example."""

from __future__ import annotations

import inspect
from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from speclint.families import Loaded, RuleExample
from speclint.reports.listings import about_family
from speclint.reports.reference.entries import Entry
from speclint.reports.reference.formula_pages import ShownFormula
from speclint.reports.reference.formula_text import plain
from speclint.reports.reference.places import (
    EVERY_COMPONENT,
    anchor,
    case_place,
    file_of,
    kind_place,
    rule_place,
)
from speclint.reports.reference.reference_page import Link, ReferencePage
from speclint.reports.reference.sections import RULES
from speclint.reports.rule_words import grades_in_words, hazards_in_words
from speclint.rules import Rule
from speclint.specs import Component


class ShownRule(Struct, frozen=True):
    """A rule as its page lays it out; ``worked`` says how, in the words of its function."""

    rule: Rule
    anchor: str
    worked: str
    grades: str
    against: str
    on: tuple[Link, ...]
    cases: tuple[Link, ...]
    sources: tuple[str, ...]
    own_formulae: tuple[ShownFormula, ...]
    other_formulae: tuple[ShownFormula, ...]
    example: RuleExample | None


def link_to(rule: Rule) -> Link:
    """A link to a rule."""
    return Link(rule.name, rule_place(rule.family, rule.name))


def rule_pages(
    loaded: Loaded,
    rules: Sequence[Rule],
    worked: Mapping[str, Sequence[ShownFormula]],
    by_sheet: Sequence[ShownFormula],
    examples: Mapping[str, RuleExample],
) -> Iterator[ReferencePage]:
    """A list of all rules, and a page for each family; ``worked`` are the formulae by the name of their rule.

    ``by_sheet`` are those that a sheet works by itself.
    """
    by_family: dict[str, list[Rule]] = {}
    for rule in rules:
        by_family.setdefault(rule.family, []).append(rule)
    groups = [
        (family, [(link_to(rule), rule.title) for rule in own]) for family, own in sorted(by_family.items())
    ]
    says = "Every rule that is loaded, by family. A finding names its rule; the rule stands here under that name."
    yield ReferencePage("rules/index.html", "Rules", RULES, "list.html", {"says": says, "groups": groups})
    about = {one.name: about_family(one.module).strip() for one in loaded.families}
    for family, own in sorted(by_family.items()):
        shown = [_shown(rule, worked[rule.name], examples.get(rule.name)) for rule in own]
        entries = [Entry(rule.name, "rule", link_to(rule).place, f"{rule.title}. {rule.why}") for rule in own]
        content = {"about": about.get(family, ""), "rules": shown, "by_sheet": by_sheet}
        yield ReferencePage(
            file_of("rules", family),
            f"Rules: {family}",
            RULES,
            "rules.html",
            content,
            entries,
            here=[one.name for one in own],
        )


def _shown(rule: Rule, worked: Sequence[ShownFormula], example: RuleExample | None) -> ShownRule:
    return ShownRule(
        rule=rule,
        anchor=anchor(rule.name),
        worked=plain(inspect.getdoc(rule.function) or ""),
        grades=grades_in_words(rule),
        against=hazards_in_words(rule),
        on=tuple(map(_kind, rule.on)),
        cases=tuple(Link(case, case_place(case)) for case in rule.cases),
        sources=tuple(map(str, rule.cites)),
        own_formulae=tuple(one for one in worked if one.of_family),
        other_formulae=tuple(one for one in worked if not one.of_family),
        example=example,
    )


def _kind(kind: type[Component]) -> Link:
    if kind is Component:
        return Link("every component", EVERY_COMPONENT)
    return Link(kind.kind, kind_place(kind.kind))
