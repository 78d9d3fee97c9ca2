"""Complaints and findings as marks in the text of a file: a line, how grave it is, and what is said."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from speclint.checking import Check
from speclint.errors import Complaint, Location
from speclint.rules import Grade

Weight = Literal["error", "warning", "information", "hint"]
_WEIGHTS: dict[Grade, Weight] = {
    Grade.HOLD: "error",
    Grade.NONCONFORMITY: "error",
    Grade.QUERY: "warning",
    Grade.OBSERVATION: "information",
}


@dataclass(frozen=True, slots=True)
class Mark:
    """A mark on one line, from 0; ``start`` and ``end`` are columns of it. ``rule`` is "" for a complaint."""

    line: int
    start: int
    end: int
    weight: Weight
    says: str
    rule: str = ""


def of_complaints(complaints: Iterable[Complaint], file: str, lines: Sequence[str]) -> list[Mark]:
    """The marks of what could not be read, or does not go with other specs."""
    found = []
    for one in complaints:
        words = (one.message, one.read and f"read {one.read}", one.write and f"write {one.write}")
        says = "; ".join(word for word in words if word)
        found.append(_mark(one.where, file, lines, "error", f"{one.where.key}: {says}".lstrip(": ")))
    return found


def of_checks(checks: Iterable[Check], file: str, lines: Sequence[str]) -> list[Mark]:
    """The marks of findings and of checks not assessed; what several parts of the file have alike once."""
    groups: dict[tuple[int, str, str], list[Check]] = {}
    for one in checks:
        if one.outcome in ("finding", "not assessed"):
            line = one.where.line if one.where.file == file else 0
            says = one.actual if one.outcome == "finding" else "; ".join(one.missing) or one.says
            groups.setdefault((line, one.rule.name, says), []).append(one)
    found = []
    for (_, rule, says), alike in groups.items():
        first = alike[0]
        weight = _WEIGHTS[first.grade] if first.grade is not None else "hint"
        word = first.grade.word if first.grade is not None else ""
        said = (
            f"{word}: {says}"
            if first.outcome == "finding"
            else ", ".join(filter(None, (word, "not assessed"))) + f": {says}"
        )
        parts = f" ({', '.join(one.component for one in alike)})" if len(alike) > 1 else ""
        found.append(_mark(first.where, file, lines, weight, said + parts, rule))
    return sorted(found, key=lambda one: (one.line, one.rule))


def _mark(
    where: Location, file: str, lines: Sequence[str], weight: Weight, says: str, rule: str = ""
) -> Mark:
    """A mark at a place; at the head of the file, with the place in words, for one that lies in another file."""
    if where.file != file:
        says = f"{says} (at {where})" if where.file else says
    head = next((number for number, text in enumerate(lines) if text.strip() and text.strip()[0] != "#"), 0)
    line = max(where.line - 1, 0) if where.file == file else head
    line = min(line, max(len(lines) - 1, 0))
    text = lines[line] if lines else ""
    start = len(text) - len(text.lstrip())
    return Mark(line, start, max(len(text.rstrip()), start + 1), weight, says, rule)
