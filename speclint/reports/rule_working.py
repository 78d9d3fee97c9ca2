"""How a rule is worked, so that a reader can work it by hand: in words, and by the formulae of its family."""

from __future__ import annotations

import inspect
from functools import cache
from typing import Any

from speclint.equations import described
from speclint.reports.page import Page
from speclint.reports.phrases import count
from speclint.reports.reference.formula_text import plain, text_of
from speclint.reports.reference.worked_formulae import Formula, FormulaSearch
from speclint.rules import Rule

_COLUMN = 13
#: Packages whose formulae many rules share: they are told in short, and where there are more than so many, which are
#: those of a whole steam cycle or of a scan over a cam, by their number.
_SHARED = ("speclint.facts.", "speclint.handbook.")
_MOST_IN_SHORT = 20


def working_on(page: Page, rule: Rule) -> None:
    """What the rule works, the formulae of its family with their symbols, and those that it shares in short."""
    for number, paragraph in enumerate(_paragraphs(rule)):
        page.entry("" if number else "works", paragraph, indent=2, column=_COLUMN)
    own, shared = _formulae(rule)
    for one in own:
        page.entry("formula", described(one).equation, indent=2, column=_COLUMN)
        page.entry("", _explained(one), indent=2, column=_COLUMN)
    in_short = shared if len(shared) <= _MOST_IN_SHORT else []
    for number, one in enumerate(in_short):
        said = f"{described(one).equation}: {text_of(one).summary}"
        page.entry("" if number else "and by", said, indent=2, column=_COLUMN)
    if shared:
        more = f"{count(len(shared), 'formula')} that other rules share"
        where = "speclint reference writes them out, speclint sheet those that a part needs"
        page.entry("" if in_short else "and by", f"{more}: {where}", indent=2, column=_COLUMN)


def working_data(rule: Rule) -> dict[str, Any]:
    """The same as plain data."""
    own, shared = _formulae(rule)
    return {
        "works": "\n\n".join(_paragraphs(rule)),
        "formulae": [_formula_data(one) for one in own],
        "shared_formulae": [described(one).equation for one in shared],
    }


def _paragraphs(rule: Rule) -> list[str]:
    return [plain(one) for one in (inspect.getdoc(rule.function) or "").split("\n\n") if one.strip()]


def _formulae(rule: Rule) -> tuple[list[Formula], list[Formula]]:
    """Those of the rule's own family, and those that stand where every family finds them."""
    found = _search().of_rule(rule)
    shared = [one for one in found if one.__module__.startswith(_SHARED)]
    return [one for one in found if one not in shared], shared


@cache
def _search() -> FormulaSearch:
    return FormulaSearch()


def _explained(formula: Formula) -> str:
    """What a formula gives, its symbols with their units, its range and its sources, as one paragraph."""
    text, about = text_of(formula), described(formula)
    symbols = "; ".join(
        f"{', '.join(one.names)}: {one.means}{f' [{one.unit}]' if one.unit else ''}" for one in text.symbols
    )
    units = f"Stated in {about.empirical}." if about.empirical else ""
    said = [text.summary, f"{symbols}." if symbols else "", units, *text.ranges, text.rest]
    return " ".join([*filter(None, said), f"Source: {'; '.join(map(str, about.cites))}."])


def _formula_data(formula: Formula) -> dict[str, Any]:
    text, about = text_of(formula), described(formula)
    return {
        "equation": about.equation,
        "says": text.summary,
        "symbols": [
            {"names": list(one.names), "unit": one.unit or "1", "means": one.means} for one in text.symbols
        ],
        "unit": about.unit or "1",
        "ranges": list(text.ranges),
        "sources": [str(one) for one in about.cites],
    }
