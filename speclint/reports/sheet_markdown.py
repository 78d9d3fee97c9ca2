"""The calculation sheets of some checks in Markdown, from the same lines as those of the terminal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from speclint.checking import Assessment, Check
from speclint.quantities import System
from speclint.reports.markdown_text import marked, table
from speclint.reports.phrases import CAUTIONS, said_of_item
from speclint.reports.sheet_page import SIGNED
from speclint.reports.sheet_text import Line, SheetText, sheet_of


def write(assessment: Assessment, checks: Sequence[Check], system: System = "as written") -> str:
    """The sheets, one after the other."""
    lines: list[str] = []
    for check in checks:
        lines += _sheet(sheet_of(assessment, check, system))
    lines += [f"*{marked(caution)}*\n" for caution in CAUTIONS]
    return "\n".join([*lines, marked(SIGNED)]) + "\n"


def _sheet(sheet: SheetText) -> Iterator[str]:
    check = sheet.check
    yield f"## {marked(check.component)}: {marked(check.rule.title)}"
    yield ""
    yield f"Rule {marked(check.rule.name)}, edition {check.rule.edition}, family {marked(check.rule.family)}."
    yield f"Why: {marked(check.rule.why)}"
    yield ""
    yield f"Worked for {marked(sheet.worked_for)}."
    if sheet.like:
        yield f"The part: {marked(sheet.like)}."
    yield ""
    yield from table(
        ("line", "what", "working", "from"),
        [
            _row(number, line, sheet.number_of(line.source))
            for number, line in enumerate(sheet.lines, start=1)
        ],
    )
    grade = f", grade {check.grade.word}" if check.grade else ""
    used = f"; {sheet.used}" if sheet.used else ""
    yield f"**{check.outcome.upper()}{grade}**: {marked(sheet.result)}{used}"
    yield ""
    for label, texts in (
        ("Fails too", tuple(said_of_item(other) for other in check.also_failing)),
        ("Needs", check.missing),
        ("Would clear it", sheet.would_clear),
        ("Refer to", (sheet.refer_to,) if sheet.refer_to else ()),
        ("Not covered", (check.rule.leaves_out,)),
    ):
        yield from (f"- {label}: {marked(text)}" for text in texts)
    yield ""
    yield from (f"{number}. {marked(source)}" for number, source in enumerate(sheet.sources, start=1))
    yield ""


def _row(number: int, line: Line, source: int) -> tuple[str, ...]:
    origin = marked(f"{line.where.file}:{line.where.line}") if line.where else ""
    if source:
        origin = f"source {source}"
    symbol = f"{line.symbol} = " if line.symbol else ""
    steps = [line.equation, f"= {line.numbers}"] if line.equation else []
    working = "<br>".join([*(marked(step) for step in steps), f"**{marked(f'{symbol}{line.value}')}**"])
    note = f"<br>{marked(line.note)}" if line.note else ""
    return str(number), f"{marked(line.name)}{note}", working, origin
