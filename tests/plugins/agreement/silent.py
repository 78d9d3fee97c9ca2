"""Places that state nothing: rows of what an agreement then says, for the tests of each subject.

A place that states nothing is no gap where its fact is worked from the other, and a gap where it is the other. Each row
takes passages out of a design that agrees. What an agreement is declared to compare says what is left: a first place
need not be stated, a part or a link that is not drawn leaves nothing to compare, and a second place that is drawn
without its size leaves the rule not assessed.
"""

from __future__ import annotations

from typing import NamedTuple

from speclint.testing import DesignFolder, changed

Files = dict[str, str]
Gone = tuple[tuple[str, str], ...]
FINE, SILENT, ASKED = "conforms", "not applicable", "not assessed"


class Row(NamedTuple):
    """A rule, the part judged, a design that agrees, what is taken out of its files, and what is then to be said."""

    rule: str
    part: str
    files: Files
    gone: Gone
    outcome: str


def rows(rule: str, part: str, files: Files, *left_out: tuple[str, *Gone]) -> list[Row]:
    """A row for each outcome and what is taken out for it."""
    return [Row(rule, part, files, tuple(gone), outcome) for outcome, *gone in left_out]


def named(row: Row) -> str:
    """What a row is called among the tests: its rule, and the keys that are taken out."""
    return f"{row.rule} {' '.join(text.split(' =')[0].strip() for _, text in row.gone)}"


def expect_said(folder: DesignFolder, row: Row) -> None:
    """Take out what a row takes out, and expect the outcome that it says."""
    files = dict(row.files)
    for file, text in row.gone:
        files[file] = changed(files[file], (text, ""), of=file)
    check = folder.write(files).only(row.rule, row.part)
    assert check.outcome == row.outcome, check.says
