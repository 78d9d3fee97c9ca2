"""How a finding is graded, and what the check and the gate do with each grade."""

from __future__ import annotations

from typing import NamedTuple

from speclint.reports.pack.paper import Paper
from speclint.rules import Grade

_WIDTH, _TOP, _HIGH, _GAP = 420.0, 52.0, 82.0, 12.0
#: Left edge and width of the three columns.
_COLUMNS = ((10.0, 150.0), (176.0, 84.0), (276.0, 134.0))
_LINE = 18.0


class Row(NamedTuple):
    """One grade: its name, what it says of the part, the exit code of the check, and what the gate does."""

    name: str
    says: tuple[str, ...]
    code: int
    gate: tuple[str, ...]
    withholds: bool


#: By the settings that are usual: the check ends with 1 from nonconformities on.
ROWS = (
    Row(
        Grade.HOLD.word,
        ("safety: not before", "a competent", "person looked"),
        1,
        ("withheld, until", "conceded"),
        True,
    ),
    Row(
        "not assessed",
        ("a safety check", "that could not", "be made"),
        1,
        ("withheld, until", "conceded"),
        True,
    ),
    Row(Grade.NONCONFORMITY.word, ("breaks a rule", "of the trade"), 1, ("counted, not", "withheld"), False),
    Row(Grade.QUERY.word, ("too little said,", "or no source"), 0, ("counted, not", "withheld"), False),
    Row(
        Grade.OBSERVATION.word,
        ("not good practice,", "or a thin margin"),
        0,
        ("counted, not", "withheld"),
        False,
    ),
)


def drawn() -> Paper:
    """A row for each grade, from the finding by the check to the gate."""
    paper = Paper(
        "guide-grades",
        "What follows from the grade of a finding",
        "; ".join(
            f"{row.name}: {' '.join(row.says)}; check ends with {row.code}; gate: {' '.join(row.gate)}"
            for row in ROWS
        )
        + ".",
        _WIDTH,
        _TOP + len(ROWS) * (_HIGH + _GAP),
    )
    for (left, _), words in zip(_COLUMNS, ("the check finds", "exit code", "the gate"), strict=True):
        paper.text((left, 20), words)
    paper.text((_COLUMNS[1][0], 38), "of check", "quiet")
    for number, row in enumerate(ROWS):
        _row(paper, row, _TOP + number * (_HIGH + _GAP))
    return paper


def _row(paper: Paper, row: Row, y: float) -> None:
    middle = y + _HIGH / 2
    (first, wide), (second, narrow), (third, last) = _COLUMNS
    paper.box((first, y), wide, _HIGH, "metal")
    paper.text((first + 8, y + 19), row.name)
    for number, words in enumerate(row.says):
        paper.text((first + 8, y + 19 + (number + 1) * _LINE), words, "quiet")
    paper.box((second, middle - 16), narrow - 24, 32)
    paper.named(str(row.code))
    paper.text((second + (narrow - 24) / 2, middle + 5), str(row.code), "word", "middle")
    _arrow(paper, first + wide, second, middle)
    _arrow(paper, second + narrow - 24, third, middle)
    paper.box((third, middle - 26), last, 52, "asked" if row.withholds else "edge")
    for number, words in enumerate(row.gate):
        paper.text((third + 8, middle - 5 + number * _LINE), words)


def _arrow(paper: Paper, start: float, end: float, y: float) -> None:
    paper.line((start, y), (end - 1, y), "thin")
    paper.shape([(end, y), (end - 8, y - 3), (end - 8, y + 3)], "arrow")
