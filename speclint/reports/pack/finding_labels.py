"""Short names for findings, by which a meeting speaks of them: H1 is the gravest hold, N1 a nonconformity."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from speclint.checking import Alike
from speclint.reports.accepted import Standings
from speclint.reports.finding_lines import gravity

FindingLabels = Mapping[tuple[str, str], str]


def labels_of(groups: Iterable[Alike]) -> FindingLabels:
    """The label of the first check of each group of findings, in the order of their gravity."""
    numbers: Counter[str] = Counter()
    found: dict[tuple[str, str], str] = {}
    for alike in sorted((one for one in groups if one.first.outcome == "finding"), key=gravity):
        grade = alike.first.grade
        letter = grade.word[0].upper() if grade is not None else "F"
        numbers[letter] += 1
        found[alike.first.order] = f"{letter}{numbers[letter]}"
    return found


def not_conceded(groups: Iterable[Alike], labels: FindingLabels, conceded: Standings) -> dict[str, list[str]]:
    """The labels of the findings of which no concession holds, in their order, by the word of their grade."""
    found: dict[str, list[str]] = {}
    firsts = {one.first.order: one.first for one in groups}
    for order, label in labels.items():
        standing, grade = conceded.get(order), firsts[order].grade
        if grade is not None and (standing is None or not standing.holds):
            found.setdefault(grade.word, []).append(label)
    return found
