"""A summary for a change request: the verdict, the findings, what was not assessed, in Markdown."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from speclint.checking import Alike, Assessment, Check, Sought, Waiting, still_to_be_drawn
from speclint.errors import Complaint
from speclint.reports.accepted import Standings, standings_of, with_concessions
from speclint.reports.arithmetic import arithmetic_of
from speclint.reports.changed import FIRST_FEW, came_and_went, rest, told
from speclint.reports.complaints_listing import said_of_waiting
from speclint.reports.finding_lines import called
from speclint.reports.markdown_text import marked, table
from speclint.reports.phrases import (
    CAUTIONS,
    count,
    drawings_said,
    known_faults_said,
    left_out,
    passed_over,
    referred_to,
    said_of_none,
    said_of_remedy,
    share_used,
    verdict,
)
from speclint.reports.unseen_listing import hazards_said
from speclint.rules import Grade

#: Rows of a table before the rest is only counted: code hosts refuse a comment that is too long.
ROWS = 100
_REMEDIES_SHOWN = 2


def write(assessment: Assessment) -> str:
    """The summary as one document."""
    conceded = standings_of(assessment)
    sums = arithmetic_of(assessment, conceded)
    lines = [f"## {marked(verdict(assessment))}", "", marked(f"{sums.says} {sums.beside}"), ""]
    if absent := left_out(assessment):
        lines += [marked(absent), ""]
    for said in (known_faults_said(assessment), hazards_said(assessment), drawings_said(assessment)):
        if said:
            lines += [marked(said), ""]
    lines += _complaints(assessment)
    lines += _names_not_known(assessment)
    lines += _changes(assessment)
    lines += _findings(assessment, conceded)
    lines += _not_assessed(assessment)
    lines += _unfinished(assessment)
    lines += _passed_over(assessment)
    lines += _old_keys(assessment)
    if assessment.changed_limits:
        lines += ["Limits set in speclint.toml: " + marked("; ".join(assessment.changed_limits)), ""]
    lines += [f"*{marked(caution)}*\n" for caution in CAUTIONS]
    return "\n".join(lines).rstrip() + "\n"


def _complaints(assessment: Assessment) -> list[str]:
    told = [(one, assessment.waits.of(one)) for one in assessment.complaints]
    return _to_put_right(told, f"{count(len(told), 'line')} could not be read")


def _names_not_known(assessment: Assessment) -> list[str]:
    told = [(one.complaint, one) for one in assessment.waits.names]
    return _to_put_right(told, f"{count(len(told), 'name')} not known")


def _to_put_right(told: Sequence[tuple[Complaint, Waiting | None]], heading: str) -> list[str]:
    """A table of complaints, each with the checks that wait for it."""
    rows = [
        tuple(map(marked, (str(one.where), one.message, one.read, one.write, said_of_waiting(waiting))))
        for one, waiting in told
    ]
    if not rows:
        return []
    columns = ("where", "what", "read", "write", "waiting")
    return [f"### {heading}", "", *table(columns, rows[:ROWS]), *_more(rows)]


def _changes(assessment: Assessment) -> list[str]:
    """What changed since a revision, where the report was asked to say so."""
    changes = assessment.changes
    if changes is None:
        return []
    rows = came_and_went(assessment, changes)
    lines = [f"### Since {marked(changes.since)}: {marked(told(changes))}", ""]
    lines += [f"- **{word}** {marked(said)}" for word, said in rows[:FIRST_FEW]]
    if left := rest(rows):
        lines.append(f"- {left}")
    return [*lines, ""]


def _passed_over(assessment: Assessment) -> list[str]:
    rows = [(marked(files), marked(why)) for why, files in passed_over(assessment)]
    if not rows:
        return []
    heading = f"### {count(len(assessment.passed_over), 'TOML file')} passed over"
    return [heading, "", *table(("files", "why"), rows)]


def _unfinished(assessment: Assessment) -> list[str]:
    lists = still_to_be_drawn(assessment)
    if not lists:
        return []
    return ["### Still to be drawn in this draft", "", *(f"- {marked(one.says)}" for one in lists), ""]


def _old_keys(assessment: Assessment) -> list[str]:
    rows = [(marked(str(one.where)), marked(one.read), marked(one.write)) for one in assessment.old_keys]
    if not rows:
        return []
    heading = f"### {count(len(rows), 'old key')}, read for one more edition"
    return [heading, "", *table(("where", "read", "write"), rows[:ROWS]), *_more(rows)]


def _findings(assessment: Assessment, conceded: Standings) -> list[str]:
    found = [check for check in assessment.checks if check.outcome == "finding"]
    found.sort(key=lambda check: (-(check.grade or 0), -(check.utilisation or 0.0), check.order))
    rows = [_finding(assessment, alike, conceded) for alike in with_concessions(found, conceded)]
    if not rows:
        return []
    each = "" if len(rows) == len(found) else f" ({len(found)} with those of parts alike)"
    lines = [f"### {count(len(rows), 'finding')}{each}", ""]
    lines += table(("grade", "component", "rule and finding", "of the limit", "look at"), rows[:ROWS])
    lines += _more(rows)
    if any(check.grade is Grade.HOLD for check in found):
        lines += [f"Holds are referred to {marked(referred_to(assessment))}.", ""]
    return lines


def _finding(assessment: Assessment, alike: Alike, conceded: Standings) -> tuple[str, ...]:
    check = alike.first
    grade = check.grade or Grade.OBSERVATION
    word = f"**{grade.word.upper()}**" if grade is Grade.HOLD else grade.word
    standing = conceded.get((check.component, check.rule.name))
    if standing is not None:
        word += f"<br>concession {marked(standing.concession.number)} {standing.state}"
    when = "; ".join(part for part in (check.case, ", ".join(check.at_worst)) if part)
    others = f"<br>and {marked(alike.said)}" if alike.said else ""
    said = f"{marked(check.rule.name)}<br>{marked(check.could_not_run or check.actual)}"
    sought = assessment.sought(check)
    remedies = _remedies(assessment, sought) if sought is not None else ()
    clear = "".join(f"<br>remedy: {marked(one)}" for one in remedies)
    return (
        word,
        marked(called(assessment, check.component)),
        said + (f"<br>when {marked(when)}" if when else "") + others + clear,
        "" if check.utilisation is None else share_used(check.utilisation),
        marked(str(check.where)),
    )


def _remedies(assessment: Assessment, sought: Sought) -> tuple[str, ...]:
    said = [said_of_remedy(assessment, one) for one in sought.remedies[:_REMEDIES_SHOWN]]
    return tuple(said or filter(None, [said_of_none(sought)]))


def _not_assessed(assessment: Assessment) -> list[str]:
    checks = [check for check in assessment.checks if check.outcome == "not assessed"]
    holds = [check for check in checks if check.grade is Grade.HOLD]
    others = [check for check in checks if check.grade is not Grade.HOLD]
    lines = _needs("safety check not assessed, which counts as a hold", holds)
    return lines + _needs("other check not assessed", others)


def _needs(what: str, checks: Sequence[Check]) -> list[str]:
    rows = [
        (marked(check.component), marked(check.rule.name), marked("; ".join(check.missing) or check.says))
        for check in checks
    ]
    if not rows:
        return []
    heading = f"### {len(rows)} {what}" if len(rows) == 1 else f"### {len(rows)} {_plural(what)}"
    return [heading, "", *table(("component", "rule", "needs"), rows[:ROWS]), *_more(rows)]


def _plural(what: str) -> str:
    return what.replace("check", "checks").replace("counts as a hold", "count as holds")


def _more(rows: Sequence[Iterable[str]]) -> list[str]:
    rest = len(rows) - ROWS
    return [f"… and {rest} more: run `speclint check`.", ""] if rest > 0 else []
