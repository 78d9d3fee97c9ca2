"""Checks that conform by the same working: their sheets differ in names only, and stand in the pack once."""

from __future__ import annotations

import re
from collections.abc import Collection, Hashable, Iterable, Iterator, Mapping

from msgspec import Struct

from speclint.checking import Check
from speclint.errors import replace
from speclint.reports.pack.anchors import sheet_anchor, sheet_anchor_of, sheets_anchor
from speclint.reports.pack.figures import Figure
from speclint.rules import Step

_MARKS = ",;:()\"'"
_LINK = re.compile(r'href="#(sheet\.[^"]+)"')

#: The check whose sheet stands for that of another, by the order of the other.
Firsts = Mapping[tuple[str, str], Check]


class SameAs(Struct, frozen=True):
    """Checks of one part that conform with the figures of another part's sheets, which stand for theirs too.

    ``rest`` says that they are all but those that have sheets of their own or are named elsewhere.
    """

    component: str
    checks: tuple[Check, ...]
    rest: bool = False

    @property
    def said(self) -> str:
        """Which checks they are: by name, or as all but those named before."""
        if self.rest:
            one = len(self.checks) == 1
            return (
                "its one other check that conforms"
                if one
                else f"its {len(self.checks)} other checks that conform"
            )
        return ", ".join(check.rule.name for check in self.checks)

    @property
    def anchor(self) -> str:
        """Where the sheets of that other part begin."""
        return sheets_anchor(self.component)

    @property
    def families(self) -> list[str]:
        """The families of their rules."""
        return sorted({check.rule.family for check in self.checks})


def firsts_of(checks: Iterable[Check], names: Collection[str]) -> Firsts:
    """Of checks that conform, those with the working of an earlier one, which is told; ``names`` are those of parts.

    A finding has a sheet of its own, and so has a check that could not be made: each is looked at by itself.
    """
    working = _Working(names)
    first: dict[Hashable, Check] = {}
    found: dict[tuple[str, str], Check] = {}
    for check in checks:
        if check.outcome == "conforms":
            one = first.setdefault(working.of(check), check)
            if one is not check:
                found[check.order] = one
    return found


def same_as(checks: Iterable[Check], firsts: Firsts) -> Iterator[SameAs]:
    """The checks of one part for which sheets of other parts stand, by the other part; the most stand last."""
    by_part: dict[str, list[Check]] = {}
    for check in checks:
        if check.outcome == "conforms" and (first := firsts.get(check.order)) is not None:
            by_part.setdefault(first.component, []).append(check)
    groups = sorted(by_part.items(), key=lambda one: len(one[1]))
    for number, (component, others) in enumerate(groups, 1):
        yield SameAs(component, tuple(others), rest=number == len(groups))


def led(figures: Iterable[Figure], firsts: Firsts) -> Iterator[Figure]:
    """Figures with their links to sheets that are not shown leading to those that stand for them."""
    instead = {sheet_anchor_of(*order): sheet_anchor(first) for order, first in firsts.items()}
    for figure in figures:
        drawing = _LINK.sub(lambda link: f'href="#{instead.get(link[1], link[1])}"', figure.drawing)
        yield replace(figure, drawing=drawing)


class _Words(dict[str, list[str]]):
    """The words of each text that names a part; none of other texts. Each text is looked at once."""

    def __init__(self, names: Collection[str]) -> None:
        super().__init__()
        self._names = names

    def __missing__(self, text: str) -> list[str]:
        words = text.split(" ")
        self[text] = found = words if any(word.strip(_MARKS) in self._names for word in words) else []
        return found


class _Working:
    """Tells the working of checks, so that it can be compared."""

    def __init__(self, names: Collection[str]) -> None:
        self._names = names
        self._words = _Words(names)

    def of(self, check: Check) -> Hashable:
        """What the sheet says, with each name of a part by its place among the names that the sheet has."""
        met = {check.component: 0}
        return (
            check.kind,
            check.rule.name,
            check.case,
            repr(check.utilisation),
            self._plain(check.says, met),
            tuple([self._plain(one, met) for one in check.governing]),
            tuple([self._line(one, met) for one in check.steps]),
        )

    def _line(self, one: Step, met: dict[str, int]) -> Hashable:
        words, value = self._words, one.value
        text = value if isinstance(value, str) else ""
        named = words[one.symbol] or words[one.name] or words[text] or words[one.note]
        told = (one.symbol, one.name, text, one.note)
        return (
            one.kind,
            tuple([self._plain(each, met) for each in told]) if named else told,
            None if text is value else repr(value),
            one.unit,
            one.expression,
            one.filled,
            one.source,
        )

    def _plain(self, text: str, met: dict[str, int]) -> str:
        """A text with the names of parts numbered in the order in which they are met."""
        words = self._words[text]
        return " ".join([self._numbered(word, met) for word in words]) if words else text

    def _numbered(self, word: str, met: dict[str, int]) -> str:
        name = word.strip(_MARKS)
        return word.replace(name, f"part {met.setdefault(name, len(met))}") if name in self._names else word
