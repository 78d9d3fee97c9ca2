"""The document as data: the content of the page, in its order; the page decides and calculates nothing."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cached_property, partial

from msgspec import Struct

from speclint.checking import Alike, Assessment, Check, Unfinished, still_to_be_drawn
from speclint.quantities import System
from speclint.register import Comparison
from speclint.reports.accepted import standings_of, with_concessions
from speclint.reports.arithmetic import Arithmetic, arithmetic_of
from speclint.reports.dossier import DossierSaid, dossier_said
from speclint.reports.pack.asked_for import AskedFor, asked_for
from speclint.reports.pack.counted import said_of_numbers
from speclint.reports.pack.drawings import figures
from speclint.reports.pack.drawn_once import drawn_once
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.finding_labels import labels_of, not_conceded
from speclint.reports.pack.not_looked_at import NotLookedAt, not_looked_at
from speclint.reports.pack.open_actions import Action, open_actions
from speclint.reports.pack.parts import Part, Placed, figures_by_name, figures_of_all, parts_of, with_figures
from speclint.reports.pack.reviewers import Signatory, nobody_for, signatories
from speclint.reports.pack.same_working import firsts_of, led
from speclint.reports.pack.shown_sheets import Sheets, ShownSheet, Sources
from speclint.reports.pack.title_page import TitlePage, title_page
from speclint.reports.pack.what_changed import WhatChanged, what_changed
from speclint.reports.phrases import CAUTIONS, NO_CODES, verdict
from speclint.repository import WorkTree
from speclint.rules import Grade


class Document(Struct, frozen=True, dict=True):
    """Everything that the page shows.

    ``figures`` are those of the whole design, ``shown_in`` gives those that show each component.
    """

    title: TitlePage
    verdict: str
    sums: Arithmetic
    numbers: tuple[str, ...]
    complaints: tuple[str, ...]
    changed_limits: tuple[str, ...]
    parts: tuple[Part, ...]
    figures: tuple[Placed, ...]
    shown_in: Mapping[str, tuple[Placed, ...]]
    actions: tuple[Action, ...]
    signed: tuple[Signatory, ...]
    nobody_for: tuple[tuple[str, str], ...]
    asked_for: AskedFor
    sources: tuple[str, ...]
    cautions: tuple[str, ...]
    codes: tuple[str, ...]
    rules: tuple[tuple[str, str], ...]
    paths: tuple[str, ...]
    not_looked_at: NotLookedAt
    unfinished: tuple[Unfinished, ...] = ()
    dossier: DossierSaid | None = None
    changed: WhatChanged | None = None

    def sheets(self, *outcomes: str) -> list[ShownSheet]:
        """The sheets of some outcomes in the order of the components; all where none is named."""
        return [
            one for part in self.parts for one in part.sheets if one.check.outcome in outcomes or not outcomes
        ]

    def findings(self, grade: str) -> list[ShownSheet]:
        """The findings of a grade in the order of their labels: the gravest first."""
        found = [one for one in self.sheets("finding") if one.word == grade]
        return sorted(found, key=lambda one: int(one.label[1:]))

    @property
    def holds(self) -> list[ShownSheet]:
        """The findings that are holds, the gravest first."""
        return self.findings(Grade.HOLD.word)

    @property
    def waiting(self) -> list[ShownSheet]:
        """The checks that were not assessed, those of safety first."""
        return sorted(self.sheets("not assessed"), key=lambda one: one.check.grade is not Grade.HOLD)

    @property
    def told_alike(self) -> list[Part]:
        """The components for which the sheets of others stand throughout."""
        return [part for part in self.parts if not part.alone]

    def drawing_of(self, component: str) -> str:
        """The drawing of a component with its revision; "" where none is stated."""
        return next((part.drawing for part in self.parts if part.name == component), "")

    @cached_property
    def cited_by_holds(self) -> frozenset[int]:
        """The numbers of the sources of the sheets of holds."""
        return frozenset(number for one in self.holds for number, _ in one.sources)

    @property
    def families(self) -> list[str]:
        """The families whose rules were applied."""
        return sorted({sheet.check.rule.family for sheet in self.sheets()})


def document(
    assessment: Assessment,
    system: System = "as written",
    on_progress: Callable[[str], None] = lambda _: None,
    revision: WorkTree | None = None,
    compared: Comparison | None = None,
    drawing: Callable[[], Iterable[Figure]] | None = None,
) -> Document:
    """Gather the document; ``on_progress`` is called with the stage of the work.

    Sheets and figures are in the units of the ``system``, else in those that the works chose. ``drawing`` gives the
    figures where they are being drawn already, ``compared`` the design held against another state of it.
    """
    today = dt.date.today()
    names = assessment.design.files if assessment.design else ()
    conceded = standings_of(assessment, today)
    checks = [check for check in assessment.checks if check.outcome != "not applicable"]
    groups = tuple(with_concessions(checks, conceded))
    labels = labels_of(groups)
    firsts = {**firsts_of(assessment.checks, names), **dict(_firsts_of_findings(groups))}
    sheets = Sheets(assessment, system, Sources(), conceded, _by_check(groups), labels)
    parts = tuple(parts_of(assessment, checks, sheets, firsts, on_progress))
    on_progress("drawing")
    drawn = drawn_once(led((drawing or partial(figures, assessment, system))(), firsts), names)
    parts = with_figures(parts, drawn)
    signed, lacking = _signatures(assessment, groups, labels)
    return Document(
        title=title_page(assessment, revision, today),
        verdict=verdict(assessment),
        sums=arithmetic_of(assessment, conceded),
        numbers=said_of_numbers(assessment, sum(part.conforms for part in parts)),
        complaints=tuple(str(one) for one in assessment.complaints),
        changed_limits=assessment.changed_limits,
        parts=parts,
        figures=figures_of_all(parts, drawn),
        shown_in=figures_by_name(parts),
        actions=tuple(open_actions(assessment, conceded, not_conceded(groups, labels, conceded))),
        signed=signed,
        nobody_for=lacking,
        asked_for=asked_for(assessment),
        sources=tuple(sheets.sources.listed),
        cautions=CAUTIONS,
        codes=_codes(assessment),
        rules=tuple(_editions(checks)),
        paths=tuple(sorted({part.file for part in parts if part.file})),
        not_looked_at=not_looked_at(assessment),
        unfinished=still_to_be_drawn(assessment),
        dossier=dossier_said(assessment, conceded),
        changed=None if compared is None else what_changed(compared),
    )


def _codes(assessment: Assessment) -> tuple[str, ...]:
    codes = assessment.settings.local_codes if assessment.settings else None
    return tuple([*codes.pressure, *codes.railway] if codes else ()) or (NO_CODES,)


def _by_check(groups: Iterable[Alike]) -> Mapping[tuple[str, str], Alike]:
    return {check.order: group for group in groups for check in group.checks}


def _firsts_of_findings(groups: Iterable[Alike]) -> Iterator[tuple[tuple[str, str], Check]]:
    """Of findings on parts alike, each but the first, with the first."""
    for group in groups:
        if group.first.outcome == "finding":
            yield from ((check.order, group.first) for check in group.checks[1:])


def _signatures(
    assessment: Assessment, groups: Iterable[Alike], labels: Mapping[tuple[str, str], str]
) -> tuple[tuple[Signatory, ...], tuple[tuple[str, str], ...]]:
    """Who signs, and the holds for which the settings name nobody."""
    held = dict(_families_of_holds(groups, labels))
    signed = signatories(assessment, held)
    return signed, nobody_for(signed, held)


def _families_of_holds(
    groups: Iterable[Alike], labels: Mapping[tuple[str, str], str]
) -> Iterator[tuple[str, str]]:
    """The label of each hold with the family of its rule, in the order of the labels."""
    family = {one.first.order: one.first.rule.family for one in groups if one.first.grade is Grade.HOLD}
    return ((label, family[order]) for order, label in labels.items() if order in family)


def _editions(checks: Iterable[Check]) -> Iterator[tuple[str, str]]:
    """The rules that were applied with their editions, by family."""
    applied = {check.rule.name: check.rule for check in checks}
    by_family: dict[str, list[str]] = {}
    for name, rule in sorted(applied.items()):
        by_family.setdefault(rule.family, []).append(f"{name} {rule.edition}")
    return ((family, ", ".join(rules)) for family, rules in sorted(by_family.items()))
