"""All pages of the reference, made from what is loaded."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from speclint.families import Loaded, RuleExample
from speclint.reports.reference.entries import Entry, index_script
from speclint.reports.reference.family_page import family_page
from speclint.reports.reference.formula_pages import (
    ShownFormula,
    formula_pages,
    shown_formula,
    with_those_behind,
)
from speclint.reports.reference.guide_figures import guide_figure
from speclint.reports.reference.guide_pages import guide_pages, guide_texts
from speclint.reports.reference.kind_pages import kind_pages, rules_by_kind
from speclint.reports.reference.material_pages import material_pages
from speclint.reports.reference.name_pages import name_pages
from speclint.reports.reference.places import REFERENCE_FRONT, REFERENCE_MARK
from speclint.reports.reference.reference_page import INDEX_FILE, Link, ReferencePage, html_of
from speclint.reports.reference.rule_pages import link_to, rule_pages
from speclint.reports.reference.sections import FRONT, SAYS
from speclint.reports.reference.table_pages import table_pages
from speclint.reports.reference.word_pages import word_pages
from speclint.reports.reference.worked_formulae import Formula, FormulaSearch, name_of
from speclint.rules import Rule


class Worked(NamedTuple):
    """The formulae that each rule can work, by its name; all with those behind them; those of the sheet itself."""

    by_rule: dict[str, list[ShownFormula]]
    every: dict[str, ShownFormula]
    by_sheet: list[ShownFormula]


def pages_of(loaded: Loaded, examples: Mapping[str, RuleExample]) -> tuple[ReferencePage, ...]:
    """Every page in the order of the contents, the front page first."""
    return tuple(_pages(loaded, examples))


def files_of(pages: tuple[ReferencePage, ...]) -> dict[str, str]:
    """The text of every file by its place, the index of the search among them."""
    found = {page.file: html_of(page, pages) for page in pages}
    entries: list[Entry] = [entry for page in pages for entry in page.entries]
    found[INDEX_FILE] = index_script(entries, REFERENCE_MARK)
    return found


def _pages(loaded: Loaded, examples: Mapping[str, RuleExample]) -> Iterator[ReferencePage]:
    rules = loaded.rules
    links = {rule.name: link_to(rule) for rule in rules}
    worked = _worked(rules, links)
    listed = [
        *guide_pages(guide_texts(), guide_figure),
        *rule_pages(loaded, rules, worked.by_rule, worked.by_sheet, examples),
        *formula_pages(worked.every),
        *kind_pages(loaded, rules_by_kind(rules, loaded, links)),
        *word_pages(loaded, rules, links),
        *material_pages(loaded),
        *table_pages(loaded),
        *name_pages(loaded),
        family_page(loaded, rules),
    ]
    yield ReferencePage(
        REFERENCE_FRONT,
        "Reference",
        FRONT,
        "front.html",
        {"counts": _counts(listed), "families": loaded.families},
    )
    yield from listed


def _counts(pages: list[ReferencePage]) -> list[tuple[str, str, int]]:
    """The sections with what they are and how much each has."""
    found: dict[str, int] = {}
    for page in pages:
        found[page.section] = found.get(page.section, 0) + len(page.entries)
    return [(section, SAYS[section], number) for section, number in found.items()]


def _worked(rules: Sequence[Rule], links: Mapping[str, Link]) -> Worked:
    """The formulae of the rules, and those behind them."""
    search = FormulaSearch()
    of_rules = {rule.name: search.of_rule(rule) for rule in rules}
    used: dict[str, list[str]] = {}
    found: dict[str, Formula] = {}
    by_itself = search.of_sheet()
    found |= {name_of(one): one for one in by_itself}
    for rule, formulae in of_rules.items():
        for one in formulae:
            found[name_of(one)] = one
            used.setdefault(name_of(one), []).append(rule)
    shown = {
        name: shown_formula(one, search, [links[rule] for rule in used.get(name, ())])
        for name, one in sorted(with_those_behind(found, search).items())
    }
    by_rule = {rule: [shown[name_of(one)] for one in formulae] for rule, formulae in of_rules.items()}
    return Worked(by_rule, shown, [shown[name_of(one)] for one in by_itself])
