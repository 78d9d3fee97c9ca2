"""The formulae behind the rules, by the package in which they stand: equation, symbols with units, range and source."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import groupby

from msgspec import Struct

from speclint.equations import described
from speclint.reports.pack.mathematics import equation, wide_equation
from speclint.reports.reference.entries import Entry
from speclint.reports.reference.formula_text import FormulaText, text_of
from speclint.reports.reference.places import file_of, formula_group, formula_place
from speclint.reports.reference.reference_page import Link, ReferencePage
from speclint.reports.reference.sections import FORMULAE
from speclint.reports.reference.worked_formulae import Formula, FormulaSearch, name_of

_UNIT = re.compile(r"^\[[^\]]*\]")


class ShownFormula(Struct, frozen=True):
    """A formula as it stands on its page, and in short where a rule works it.

    ``symbols`` are typeset, each with its SI unit and its meaning; ``behind`` the formulae that it calls.
    """

    name: str
    anchor: str
    link: Link
    equation: str
    text: FormulaText
    symbols: tuple[tuple[str, str, str], ...]
    unit: str
    result: str
    empirical: str
    sources: tuple[str, ...]
    behind: tuple[Link, ...]
    used_by: tuple[Link, ...]

    @property
    def of_family(self) -> bool:
        """Whether it is a family's own, and no formula of the handbook or of the facts."""
        return not self.link.place.startswith(("formulae/handbook", "formulae/facts"))


def shown_formula(formula: Formula, search: FormulaSearch, used_by: Sequence[Link]) -> ShownFormula:
    """A formula with its equation set."""
    about, text = described(formula), text_of(formula)
    return ShownFormula(
        name=formula.__name__,
        anchor=formula_place(formula.__module__, formula.__name__).partition("#")[2],
        link=link_to(formula),
        equation=wide_equation(about.equation),
        text=text,
        symbols=tuple(
            (", ".join(map(equation, one.names)), one.unit or "1", one.means) for one in text.symbols
        ),
        unit=about.unit or "1",
        result=f" {said}" if (said := _UNIT.sub("", text.result).strip(" ,")) != about.unit else "",
        empirical=about.empirical,
        sources=tuple(map(str, about.cites)),
        behind=tuple(map(link_to, search.named_by(formula))),
        used_by=tuple(used_by),
    )


def link_to(formula: Formula) -> Link:
    """A link to a formula, by its name in words."""
    return Link(formula.__name__.replace("_", " "), formula_place(formula.__module__, formula.__name__))


def with_those_behind(found: Mapping[str, Formula], search: FormulaSearch) -> dict[str, Formula]:
    """Some formulae with those that they call, and those that these call."""
    every, waiting = dict(found), list(found.values())
    while waiting:
        for one in search.named_by(waiting.pop()):
            if name_of(one) not in every:
                every[name_of(one)] = one
                waiting.append(one)
    return every


def formula_pages(formulae: Mapping[str, ShownFormula]) -> Iterator[ReferencePage]:
    """A page for each group of formulae, those of families first."""
    ordered = sorted(formulae.items(), key=lambda one: (not one[1].of_family, _group(one[0]), one[0]))
    groups = [
        (group, [one for _, one in members])
        for group, members in groupby(ordered, lambda one: _group(one[0]))
    ]
    yield ReferencePage(
        "formulae/index.html",
        "Formulae",
        FORMULAE,
        "list.html",
        {
            "says": "Every formula that a rule can work, by the family or the part of the handbook in which it stands.",
            "groups": [
                (
                    "",
                    [
                        (Link(title_of(group), file_of("formulae", group)), _count(members))
                        for group, members in groups
                    ],
                )
            ],
        },
    )
    for group, members in groups:
        entries = [Entry(one.link.words, "formula", one.link.place, one.text.summary) for one in members]
        yield ReferencePage(
            file_of("formulae", group),
            title_of(group),
            FORMULAE,
            "formulae.html",
            {"formulae": members},
            entries,
            here=[one.name for one in entries],
        )


def _group(name: str) -> str:
    return formula_group(name.rpartition(".")[0])


def title_of(group: str) -> str:
    """A group of formulae in words."""
    head, _, rest = group.partition("-")
    said = f"{head}, {rest}" if head == "handbook" and rest else group
    return f"Formulae: {said.replace('-', ' ')}"


def _count(members: Iterable[object]) -> str:
    number = len(list(members))
    return f"{number} formula{'e' if number != 1 else ''}"
