"""The document as data: the content of the page, in its order; the page decides and calculates nothing."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from importlib.metadata import version
from itertools import groupby

from speclint.checking import Alike, Assessment, Check, Unfinished, still_to_be_drawn
from speclint.quantities import System
from speclint.reports.accepted import Standings, standings_of, with_concessions
from speclint.reports.pack.anchors import (
    component_anchor,
    finding_anchor,
    sheet_anchor,
    sheets_anchor,
    source_anchor,
)
from speclint.reports.pack.drawings import figures
from speclint.reports.pack.drawn_once import ShownFigure, drawn_once
from speclint.reports.pack.mathematics import equation, filled, symbol
from speclint.reports.pack.same_working import Firsts, SameAs, firsts_of, led, same_as
from speclint.reports.phrases import CAUTIONS, NO_CODES, share_of_limit, share_used, tally, verdict
from speclint.reports.sheet_text import Line, SheetText, sheet_of
from speclint.reports.taken_over import said_of_like
from speclint.rules import Grade
from speclint.specs import Spec, Stated

_LONG = 60  # lines of a sheet that is still laid out at once: some two pages of A4
_GAUGE = 1.5  # a gauge ends at one and a half times the limit


@dataclass(frozen=True, slots=True)
class ShownLine:
    """A line of a sheet with its mathematics set and its source numbered in the list of the whole document."""

    line: Line
    symbol: str
    equation: str
    numbers: str
    source: int


@dataclass(frozen=True, slots=True)
class ShownSheet:
    """A sheet, where it stands, and its concession."""

    text: SheetText
    anchor: str
    lines: tuple[ShownLine, ...]
    sources: tuple[tuple[int, str], ...]
    concession: str
    alike: Alike

    @property
    def leads(self) -> bool:
        """Whether it stands for the findings of parts alike, if there are others."""
        return self.alike.first is self.check

    @property
    def others(self) -> list[str]:
        """Where the findings would stand for which it stands too."""
        return [finding_anchor(check) for check in self.alike.checks[1:]]

    @property
    def check(self) -> Check:
        """The check that it is of."""
        return self.text.check

    @property
    def way(self) -> str:
        """How the page has it, as a class: packed, packed for its length though it is printed, or "" where laid out."""
        if self.check.outcome == "conforms":
            return "packed"
        return "long" if len(self.lines) > _LONG else ""

    @property
    def after(self) -> list[tuple[int, str]]:
        """The sources, those that the rule itself cites first."""
        cited = [str(source) for source in self.check.rule.cites]
        order = {source: place for place, source in enumerate(cited)}
        return sorted(self.sources, key=lambda one: order.get(one[1], len(cited)))

    @property
    def finding(self) -> str:
        """Where the finding stands that it is about."""
        return finding_anchor(self.check)

    @property
    def word(self) -> str:
        """The grade of a finding or of a check that counts as one, else the outcome of the check."""
        grade = self.check.grade
        return grade.word if grade is not None and self.check.stands_in_the_way else self.check.outcome

    @property
    def on_gauge(self) -> str:
        """Where the bar of a gauge ends, as a share of the gauge, whose end is at one and a half times the limit."""
        return f"{min(self.check.utilisation or 0.0, _GAUGE) / _GAUGE:.3f}"

    @property
    def share(self) -> str:
        """The same in words."""
        return "" if self.check.utilisation is None else share_of_limit(self.check.utilisation)

    @property
    def used(self) -> str:
        """What is used of the limit, in two decimals."""
        return "" if self.check.utilisation is None else share_used(self.check.utilisation)


@dataclass(frozen=True, slots=True)
class Part:
    """A component and its sheets, and the checks for which sheets of parts alike stand."""

    name: str
    anchor: str
    described: str
    file: str
    sheets: tuple[ShownSheet, ...]
    same_as: tuple[SameAs, ...] = ()

    @property
    def sheets_anchor(self) -> str:
        """Where its sheets begin."""
        return sheets_anchor(self.name)

    @property
    def findings(self) -> list[ShownSheet]:
        """The sheets of its findings; those of parts alike stand under the first of these parts."""
        return [one for one in self.sheets if one.check.outcome == "finding" and one.leads]


@dataclass
class Document:
    """Everything that the page shows."""

    title: str
    stage: str
    verdict: str
    tally: str
    versions: tuple[tuple[str, str], ...]
    paths: tuple[str, ...]
    complaints: tuple[str, ...]
    changed_limits: tuple[str, ...]
    parts: tuple[Part, ...]
    figures: tuple[ShownFigure, ...]
    sources: tuple[str, ...]
    cautions: tuple[str, ...]
    codes: tuple[str, ...]
    counted: dict[str, int] = field(default_factory=dict)
    graded: dict[str, int] = field(default_factory=dict)
    unfinished: tuple[Unfinished, ...] = ()

    def sheets(self, *outcomes: str) -> list[ShownSheet]:
        """The sheets of some outcomes in the order of the components; all where none is named."""
        return [
            one for part in self.parts for one in part.sheets if one.check.outcome in outcomes or not outcomes
        ]

    @property
    def holds(self) -> list[ShownSheet]:
        """The findings that are holds, that with the greatest utilisation first."""
        found = [one for one in self.sheets("finding") if one.check.grade is Grade.HOLD and one.leads]
        return sorted(found, key=lambda one: (-(one.check.utilisation or 0.0), one.check.order))

    @property
    def families(self) -> list[str]:
        """The families whose rules were applied."""
        return sorted({sheet.check.rule.family for sheet in self.sheets()})


class _Sources:
    """Numbers every source of the document once."""

    def __init__(self) -> None:
        self.listed: dict[str, int] = {}

    def number(self, source: str) -> int:
        return self.listed.setdefault(source, len(self.listed) + 1)


def document(
    assessment: Assessment, system: System = "as written", on_progress: Callable[[str], None] = lambda _: None
) -> Document:
    """Gather the document; ``on_progress`` is called with the stage of the work."""
    sources = _Sources()
    names = assessment.design.files if assessment.design else ()
    conceded = standings_of(assessment)
    alike = tuple(with_concessions(_shown(assessment), conceded))
    firsts = {**firsts_of(assessment.checks, names), **dict(_firsts_of_findings(alike))}
    parts = tuple(_parts(assessment, system, sources, (conceded, alike, firsts), on_progress))
    on_progress("drawing")
    settings = assessment.settings
    name = settings.works.name if settings else None
    codes = settings.local_codes if settings else None
    return Document(
        title=name.value if isinstance(name, Stated) else assessment.root.name,
        stage=settings.stage if settings else "settings could not be read",
        verdict=verdict(assessment),
        tally=tally(assessment),
        versions=_versions(assessment),
        paths=tuple(sorted({part.file for part in parts if part.file})),
        complaints=tuple(str(one) for one in assessment.complaints),
        changed_limits=assessment.changed_limits,
        parts=parts,
        figures=drawn_once((led(figure, firsts) for figure in figures(assessment)), names),
        sources=tuple(sources.listed),
        cautions=CAUTIONS,
        codes=tuple([*codes.pressure, *codes.railway] if codes else ()) or (NO_CODES,),
        counted=assessment.counted(),
        graded=assessment.graded(),
        unfinished=still_to_be_drawn(assessment),
    )


def _versions(assessment: Assessment) -> tuple[tuple[str, str], ...]:
    families = [(f"family {one.name}", one.version) for one in assessment.loaded.families]
    return (("speclint", version("speclint")), *families)


def _shown(assessment: Assessment) -> list[Check]:
    return [check for check in assessment.checks if check.outcome != "not applicable"]


def _firsts_of_findings(groups: Iterable[Alike]) -> Iterator[tuple[tuple[str, str], Check]]:
    """Of findings on parts alike, each but the first, with the first."""
    for group in groups:
        if group.first.outcome == "finding":
            yield from ((check.order, group.first) for check in group.checks[1:])


def _parts(
    assessment: Assessment,
    system: System,
    sources: _Sources,
    known: tuple[Standings, Sequence[Alike], Firsts],
    on_progress: Callable[[str], None],
) -> Iterator[Part]:
    conceded, groups, firsts = known
    design = assessment.design
    alike = {check.order: group for group in groups for check in group.checks}
    for component, group in groupby(_shown(assessment), key=lambda check: check.component):
        on_progress(f"sheets of {component}")
        checks = list(group)
        sheets = [
            _sheet(assessment, alike[check.order], check, system, sources, conceded)
            for check in checks
            if check.order not in firsts
        ]
        sheets.sort(
            key=lambda one: (-(one.check.grade or 0), -(one.check.utilisation or 0.0), one.check.rule.name)
        )
        spec = design.specs.get(component) if design else None
        file = design.files.get(component, "") if design else ""
        said = "; ".join(filter(None, (_described(spec), said_of_like(assessment, component))))
        yield Part(
            component, component_anchor(component), said, file, tuple(sheets), tuple(same_as(checks, firsts))
        )


def _described(spec: Spec | None) -> str:
    if spec is None:
        return ""
    parts = [spec.title.value] if isinstance(spec.title, Stated) else [spec.called or spec.kind]
    if isinstance(spec.drawing, Stated):
        revision = f" rev. {spec.revision.value}" if isinstance(spec.revision, Stated) else ""
        parts.append(f"drawing {spec.drawing.value}{revision}")
    return ", ".join(parts)


def _sheet(
    assessment: Assessment,
    alike: Alike,
    check: Check,
    system: System,
    sources: _Sources,
    conceded: Standings,
) -> ShownSheet:
    text = sheet_of(assessment, check, system)
    numbers = [sources.number(source) for source in text.sources]
    standing = conceded.get((check.component, check.rule.name))
    said = ""
    if standing is not None:
        reasons = "; ".join((standing.concession.grounds, *standing.reasons))
        entry = standing.concession
        said = f"{entry.number}, {standing.state}, by {entry.accepted_by} until {entry.until}: {reasons}"
    return ShownSheet(
        text,
        sheet_anchor(check),
        tuple(_line(line, numbers) for line in text.lines),
        tuple(zip(numbers, text.sources, strict=True)),
        said,
        alike,
    )


def _line(line: Line, numbers: Sequence[int]) -> ShownLine:
    source = numbers[line.source - 1] if line.source else 0
    shown = symbol(line.symbol) if line.symbol else ""
    if not line.equation:
        return ShownLine(line, shown, "", "", source)
    return ShownLine(line, shown, equation(line.equation), filled(line.equation, line.values or {}), source)


__all__ = ["Document", "Part", "ShownLine", "ShownSheet", "document", "source_anchor"]
