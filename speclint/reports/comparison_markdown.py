"""What a change did, between two states of a design, in Markdown: a change note."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from speclint.register import Comparison
from speclint.reports.comparison_page import findings_of, findings_said, judged_said, margins_said, specs_said
from speclint.reports.comparison_rows import lapsed_rows, margin_rows, spec_rows
from speclint.reports.markdown_report import ROWS
from speclint.reports.markdown_text import marked, table
from speclint.reports.phrases import CAUTIONS, count


def comparison_markdown(found: Comparison) -> str:
    """The change note."""
    lines = [f"## From {marked(found.old.called)} to {marked(found.new.called)}", ""]
    lines += [marked(said) for said in (specs_said(found), *judged_said(found))]
    lines += ["", *_specs(found), *_basis(found), *_findings(found), *_concessions(found), *_margins(found)]
    lines += [f"*{marked(caution)}*\n" for caution in CAUTIONS]
    return "\n".join(lines).rstrip() + "\n"


def _specs(found: Comparison) -> Iterator[str]:
    rows = list(spec_rows(found))
    if rows:
        yield from ("### Specs", "")
        yield from table(("what", "spec", "key", "before", "now"), _marked(rows))
        yield from _more(len(rows), "row")


def _basis(found: Comparison) -> Iterator[str]:
    if found.basis:
        yield from ("### What the design is judged by", "")
        yield from (f"- {marked(said)}" for said in found.basis)
        yield ""


def _findings(found: Comparison) -> Iterator[str]:
    yield from (f"### {findings_said(found)}", "")
    said = list(findings_of(found))
    yield from (f"- **{word}** {marked(one)}" for word, one in said[:ROWS])
    yield ""
    yield from _more(len(said), "finding")


def _concessions(found: Comparison) -> Iterator[str]:
    if found.lapsed:
        yield from ("### Concessions that hold no longer", "")
        yield from table(("number", "component", "rule", "state", "why"), _marked(list(lapsed_rows(found))))
        yield from _more(len(found.lapsed), "concession")


def _margins(found: Comparison) -> Iterator[str]:
    rows = [(*figures, marked(said)) for *figures, said in margin_rows(found)]
    yield from (f"### {marked(margins_said(found))}", "")
    yield from table(("before", "now", "change", "component and rule"), rows[:ROWS])
    yield from _more(len(rows), "row")


def _marked(rows: Sequence[tuple[str, ...]]) -> list[tuple[str, ...]]:
    return [tuple(map(marked, row)) for row in rows[:ROWS]]


def _more(number: int, word: str) -> Iterator[str]:
    if number > ROWS:
        yield from (f"… and {count(number - ROWS, f'more {word}')}: run `speclint compare`.", "")
