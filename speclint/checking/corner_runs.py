"""The corners of one rule in one load case that were run, and the worst of them."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping, Sequence

from msgspec import Struct

from speclint.checking.severity import NOTHING, Ending, Severity, severity
from speclint.rules import Corner, Judgement, NotTogether, OverBox, Rule

Sides = Mapping[Hashable, bool]
Highs = frozenset[Hashable]
Together = Callable[[Sequence[Sides]], OverBox]
#: So many corners are worked at once sooner than one after another.
_WORTH_IT = 4


class CornerRun(Struct, frozen=True):
    """A rule at one corner."""

    corner: Corner
    ending: Ending
    severity: Severity

    def part(self, index: int) -> Judgement | None:
        """One of the comparisons that the rule made here; None where it made no such."""
        parts = self.ending.every if isinstance(self.ending, Judgement) else ()
        return parts[index] if index < len(parts) else None


class CornerRuns:
    """Runs a rule at corners, each once, and keeps the worst: of all, and of each comparison that fails.

    ``together`` runs it at several corners at once.
    """

    def __init__(self, run: Callable[[Corner], Ending], rule: Rule, together: Together | None = None) -> None:
        self._run, self._rule, self._together = run, rule, together
        self._seen: dict[Highs, CornerRun] = {}
        self._elsewhere: dict[tuple[Highs, tuple[tuple[int, float], ...]], CornerRun] = {}
        self._failing: dict[tuple[int, int, str], tuple[Severity, Corner]] = {}
        self.worst: CornerRun | None = None

    def __len__(self) -> int:
        return len(self._seen)

    def at(self, sides: Sides) -> CornerRun:
        """The rule at one corner; an input without a side is at its low."""
        key = highs(sides)
        found = self._seen.get(key)
        if found is None:
            corner = Corner(sides)
            found = self._seen[key] = self._kept(corner, self._run(corner))
        return found

    def at_once(self, corners: Sequence[Sides]) -> OverBox | None:
        """The margins of the rule at several corners, of which none is kept; None where each is to be run by itself."""
        if self._together is None or len(corners) < _WORTH_IT:
            return None
        try:
            return self._together(corners)
        except NotTogether:
            return None

    def elsewhere(self, sides: Sides, places: Mapping[int, float]) -> CornerRun:
        """The rule at one corner with some of its scans held at other places than their worst; it is none of ``at``."""
        key = highs(sides), tuple(places.items())
        found = self._elsewhere.get(key)
        if found is None:
            corner = Corner(sides, places)
            ending = self._run(corner)
            found = self._elsewhere[key] = CornerRun(corner, ending, severity(ending, self._rule))
        return found

    def keep(self, corner: Corner, ending: Ending) -> None:
        """Add a run that was made elsewhere."""
        self._seen[highs(corner.met)] = self._kept(corner, ending)

    def of_part(self, run: CornerRun, index: int) -> Severity:
        """How grave one comparison is at one corner; what ended the rule there is as grave for each."""
        part = run.part(index)
        if part is None:
            return NOTHING if isinstance(run.ending, Judgement) else run.severity
        return severity(part, self._rule)

    @property
    def failing(self) -> list[tuple[tuple[int, int, str], Corner]]:
        """The worst corner of each comparison that fails at any that was run, the gravest first.

        Each with the number of comparisons there, its index among them, and the side of a band on which it fails.
        """
        ordered = sorted(self._failing.items(), key=lambda item: item[1][0], reverse=True)
        return [(place, corner) for place, (_, corner) in ordered]

    def _kept(self, corner: Corner, ending: Ending) -> CornerRun:
        run = CornerRun(corner, ending, severity(ending, self._rule))
        if self.worst is None or _before(run, self.worst):
            self.worst = run
        if isinstance(ending, Judgement) and not ending.holds:
            self._keep_failing(ending, corner)
        return run

    def _keep_failing(self, ending: Judgement, corner: Corner) -> None:
        parts = ending.every
        for index, part in enumerate(parts):
            if not part.holds:
                key, grave = (len(parts), index, part.compared), severity(part, self._rule)
                if key not in self._failing or grave > self._failing[key][0]:
                    self._failing[key] = grave, corner


def _before(one: CornerRun, other: CornerRun) -> bool:
    """Whether a corner is the worse; of two alike the one with the first inputs at their low sides."""
    if one.severity != other.severity:
        return one.severity > other.severity
    return tuple(one.corner.met.values()) < tuple(other.corner.met.values())


def highs(sides: Sides) -> Highs:
    """A corner as those of its inputs that are high: whatever else a rule meets is low."""
    return frozenset(key for key, high in sides.items() if high)
