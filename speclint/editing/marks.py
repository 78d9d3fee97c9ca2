"""Complaints and findings as marks in the text of a file: a line, how grave it is, and what is said."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Literal

from msgspec import Struct

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


class Mark(Struct, frozen=True):
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


def of_checks(
    checks: Iterable[Check],
    file: str,
    lines: Sequence[str],
    conceded: Mapping[tuple[str, str], str],
) -> list[Mark]:
    """The marks of findings and of checks not assessed; what several parts of the file have alike once.

    ``conceded`` says which findings are accepted, by component and rule: they are told, and no more.
    """
    groups: dict[tuple[int, str, str], list[Check]] = {}
    for one in checks:
        if one.outcome in ("finding", "not assessed"):
            line = one.where.line if one.where.file == file else 0
            rule = one.rule.name if one.outcome == "finding" else ""
            groups.setdefault((line, rule, _said(one, conceded)), []).append(one)
    found = [_of_group(alike, says, file, lines, conceded) for (_, _, says), alike in groups.items()]
    return sorted(found, key=lambda one: (one.line, one.rule, one.says))


def _of_group(
    alike: Sequence[Check],
    says: str,
    file: str,
    lines: Sequence[str],
    conceded: Mapping[tuple[str, str], str],
) -> Mark:
    """The mark of one finding on several parts, or of all checks that want the same."""
    first, rules = alike[0], sorted({one.rule.name for one in alike})
    parts = sorted({one.component for one in alike})
    more = f" ({', '.join(parts)})" if len(parts) > 1 else ""
    if first.outcome == "finding":
        weight = "information" if first.order in conceded else _WEIGHTS[first.grade or Grade.OBSERVATION]
        return _mark(first.where, file, lines, weight, f"{says}{more}", rules[0])
    safety = any(one.grade is Grade.HOLD for one in alike)
    wanted = f"{says}: needed for {', '.join(rules)}{more}"
    said = f"not assessed, a safety check among them: {wanted}" if safety else f"not assessed: {wanted}"
    return _mark(
        first.where, file, lines, "warning" if safety else "hint", said, rules[0] if len(rules) == 1 else ""
    )


def _said(check: Check, conceded: Mapping[tuple[str, str], str]) -> str:
    """What is wrong; of a check not assessed what it needs."""
    if check.outcome == "not assessed":
        return "; ".join(check.missing) or check.says
    words = [check.grade.word] if check.grade is not None else []
    words += [conceded[check.order]] if check.order in conceded else []
    return f"{', '.join(words)}: {check.actual}"


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
