"""A sheet as the page shows it, with its mathematics set, its sources numbered, and the label of its finding."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from msgspec import Struct

from speclint.checking import Alike, Assessment, Check
from speclint.quantities import System
from speclint.reports.accepted import Standings
from speclint.reports.finding_lines import short
from speclint.reports.pack.anchors import finding_anchor, sheet_anchor
from speclint.reports.pack.mathematics import equation, filled, symbol
from speclint.reports.phrases import share_used, units_asked
from speclint.reports.sheet_text import Line, Lines, SheetText, sheet_of

_LONG = 60  # lines of a sheet that is still laid out at once: some two pages of A4
_AT_LIMIT = 1.005  # what is below it is 1.00 in two decimals
_GAUGE = 1.5  # a gauge ends at one and a half times the limit


class ShownLine(Struct, frozen=True, eq=False):
    """A line of sheets with its mathematics set and its source numbered in the list of the whole document."""

    line: Line
    symbol: str
    equation: str
    numbers: str
    source: int


class ShownSheet(Struct, frozen=True):
    """A sheet, where it stands, its concession, and the label of its finding; "" where it is of none."""

    text: SheetText
    anchor: str
    lines: tuple[ShownLine, ...]
    sources: tuple[tuple[int, str], ...]
    concession: str
    alike: Alike
    label: str = ""

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
    def brief(self) -> str:
        """What is wrong, in few words with its numbers."""
        return short(self.check)

    @property
    def on_gauge(self) -> str:
        """Where the bar of a gauge ends, as a share of the gauge, whose end is at one and a half times the limit."""
        return f"{min(self.check.utilisation or 0.0, _GAUGE) / _GAUGE:.3f}"

    @property
    def share(self) -> str:
        """What is used of the limit, in words."""
        found = self.used
        return f"{found} of the limit" if found[:1].isdigit() else found

    @property
    def used(self) -> str:
        """What is used of the limit, in two decimals; in three where two would put a finding at the limit itself."""
        found = self.check.utilisation
        if found is None:
            return ""
        return f"{found:.3f}" if 1 < found < _AT_LIMIT else share_used(found)


class Sources:
    """Numbers every source of the document once."""

    def __init__(self) -> None:
        self.listed: dict[str, int] = {}

    def number(self, source: str) -> int:
        """The number of a source in the list."""
        return self.listed.setdefault(source, len(self.listed) + 1)


@dataclass(slots=True)
class Sheets:
    """What the sheets of one document have in common; the ``system`` is that in which they are shown."""

    assessment: Assessment
    system: System
    sources: Sources
    conceded: Standings
    alike: Mapping[tuple[str, str], Alike]
    labels: Mapping[tuple[str, str], str]
    _lines: Lines = field(init=False)
    _shown: dict[Line, ShownLine] = field(default_factory=dict, init=False)

    def __post_init__(self) -> None:
        self._lines = Lines(units_asked(self.assessment, self.system))

    def of(self, check: Check) -> ShownSheet:
        """The sheet of a check."""
        text = sheet_of(self.assessment, check, self.system, self._lines)
        numbers = [self.sources.number(source) for source in text.sources]
        return ShownSheet(
            text,
            sheet_anchor(check),
            tuple(map(self._line, text.lines)),
            tuple(zip(numbers, text.sources, strict=True)),
            self._concession(check),
            self.alike[check.order],
            self.labels.get(check.order, ""),
        )

    def _line(self, line: Line) -> ShownLine:
        shown = self._shown.get(line)
        if shown is None:
            shown = self._shown[line] = _set(line, self.sources.number(line.source) if line.source else 0)
        return shown

    def _concession(self, check: Check) -> str:
        standing = self.conceded.get(check.order)
        if standing is None:
            return ""
        entry = standing.concession
        reasons = "; ".join((entry.grounds, *standing.reasons))
        return f"{entry.number}, {standing.state}, by {entry.accepted_by} until {entry.until}: {reasons}"


def _set(line: Line, source: int) -> ShownLine:
    shown = symbol(line.symbol) if line.symbol else ""
    if not line.equation:
        return ShownLine(line, shown, "", "", source)
    return ShownLine(line, shown, equation(line.equation), filled(line.equation, line.values or {}), source)
