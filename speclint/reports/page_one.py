"""Page one of a check: what a chief reads first, in at most forty lines whatever the size of the design.

The verdict and its arithmetic, the holds, what could not be judged, the other findings, and what is nearest its limit.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from speclint.checking import Alike, Assessment, Check, still_to_be_drawn
from speclint.reports.accepted import Standings, with_concessions
from speclint.reports.arithmetic import arithmetic_of
from speclint.reports.changed import changes_on
from speclint.reports.complaints_listing import said_of_waiting, waited_for
from speclint.reports.finding_lines import called, conceded_by, cut_to_one, gravity, row, short, used
from speclint.reports.page import Line, Page
from speclint.reports.phrases import CAUTION, count, drawings_said, known_faults_said, left_out, verdict
from speclint.reports.unseen_listing import hazards_said
from speclint.rules import ROUNDING, Grade
from speclint.specs import Stated

#: A page of common paper, and the screen of a small terminal with the command above it, take this many lines.
LINES = 40
_FIRST_FEW = 3
#: How many of the checks nearest to their limits; fewer where the holds would else be cut.
_NEAREST, _FEWER = 10, 4
_NEAR = 0.8  # of a limit: below it nothing is close to it, common practice


def page_one(assessment: Assessment, width: int, conceded: Standings, *, alone: bool = True) -> Page:
    """The first page of a report, for a width; where it is not alone, the caution stands at the end of what follows."""
    page = Page(width)
    _heading(page, assessment)
    page.wrapped(verdict(assessment), emphasis="strong")
    sums = arithmetic_of(assessment, conceded)
    page.wrapped(f"{sums.says} {sums.beside}")
    for said in (known_faults_said(assessment), hazards_said(assessment), drawings_said(assessment)):
        if said:
            page.wrapped(said)
    others = [changes_on(assessment, width), *_others(assessment, conceded, width)]
    foot = _foot(assessment, width, alone=alone)
    room = LINES - len(page.lines) - len(foot) - sum(map(len, others))
    nearest = _nearest(assessment, width, _NEAREST)
    holds = _holds(assessment, conceded, width, room - len(nearest))
    if holds.cut:
        nearest = _nearest(assessment, width, _FEWER)
        holds = _holds(assessment, conceded, width, room - len(nearest))
    for lines in (holds.lines, *others, nearest, foot):
        page.lines += lines
    return page


def _heading(page: Page, assessment: Assessment) -> None:
    settings = assessment.settings
    name = settings.works.name if settings else None
    title = name.value if isinstance(name, Stated) else assessment.root.name
    page.ends(title, f"stage: {settings.stage}" if settings else "settings could not be read", "strong")
    specs = len(assessment.design.selected) if assessment.design else 0
    families = len(assessment.loaded.families)
    counted = [count(specs, "spec"), count(len(assessment.checks), "check"), count(families, "family")]
    if assessment.design and (left := assessment.design.only_indexed):
        every = len(assessment.design.specs)
        counted.append(f"{every - left} of {count(every, 'spec')} read for this, {left} indexed before")
    page.wrapped(" · ".join(counted), emphasis="faint")
    page.gap()


# Holds


class _Holds(NamedTuple):
    """The lines of the holds, and whether some had no room."""

    lines: list[Line]
    cut: bool


def _holds(assessment: Assessment, conceded: Standings, width: int, room: int) -> _Holds:
    """The holds with the gravest first, as many as there is room for."""
    found = (check for check in assessment.checks if check.outcome == "finding" and check.grade is Grade.HOLD)
    groups = _said_once(sorted(with_concessions(found, conceded), key=gravity), conceded)
    if not groups:
        return _Holds([], cut=False)
    page = _section(
        f"{_in_lines(groups, 'hold')}, the gravest first, with the share of the limit used", width
    )
    room -= len(page.lines)
    rows = [_hold(assessment, alike, conceded, width) for alike in groups]
    if sum(map(len, rows)) > room:
        rows = [cut_to_one(one, width) for one in rows]
    shown = rows if len(rows) <= room else rows[: room - 1]
    page.lines += [line for one in shown for line in one]
    if len(shown) < len(rows):
        page.entry("", f"and {len(rows) - len(shown)} more: speclint check --full", indent=0, column=8)
    return _Holds(page.lines, cut=len(shown) < len(rows))


def _said_once(groups: Sequence[Alike], conceded: Standings) -> list[Alike]:
    """Findings without a number that say the same of unlike parts, together: they have one cause, or one cure."""
    together: dict[object, list[Check]] = {}
    for alike in groups:
        one = alike.first
        same = (one.rule.name, one.grade, short(one), conceded_by(one, conceded))
        together.setdefault(same if one.utilisation is None else one.order, []).extend(alike.checks)
    return [Alike(tuple(checks)) for checks in together.values()]


def _in_lines(groups: Sequence[Alike], word: str) -> str:
    """How many findings there are, and in how many lines where several stand in one."""
    findings = sum(len(alike.checks) for alike in groups)
    lines = f" in {count(len(groups), 'line')}" if len(groups) < findings else ""
    return f"{count(findings, word)}{lines}"


def _section(heading: str, width: int) -> Page:
    page = Page(width)
    page.gap_always()
    page.wrapped(heading, emphasis="strong")
    return page


def _hold(assessment: Assessment, alike: Alike, conceded: Standings, width: int) -> list[Line]:
    """The words that may be cut stand last."""
    said = f"{_who(called(assessment, alike.first.component), alike, conceded)}: {short(alike.first)}"
    return row(used(alike.first), said, width, "hold")


def _who(name: str, alike: Alike, conceded: Standings) -> str:
    """A component, how many more have the same finding, and who conceded it."""
    same = "" if len({check.alike for check in alike.checks}) > 1 else " alike"
    more = f" and {len(alike.others)} more{same}" if alike.others else ""
    by = conceded_by(alike.first, conceded)
    return f"{name}{more}{by and f', {by}'}"


# What else is said on the page


def _others(assessment: Assessment, conceded: Standings, width: int) -> Iterator[list[Line]]:
    yield _not_assessed(assessment, width)
    found = [check for check in assessment.checks if check.outcome == "finding"]
    for grade in (Grade.NONCONFORMITY, Grade.QUERY):
        groups = sorted(with_concessions((one for one in found if one.grade is grade), conceded), key=gravity)
        yield _counted(grade, _said_once(groups, conceded), conceded, width)


def _not_assessed(assessment: Assessment, width: int) -> list[Line]:
    """Safety checks that could not be made; in a draft those that wait for values alone are on its list."""
    draft = assessment.settings is not None and assessment.settings.stage == "draft"
    holds = [one for one in assessment.checks if one.outcome == "not assessed" and one.grade is Grade.HOLD]
    shown = [one for one in holds if not (draft and one.only_unstated)]
    page = Page(width)
    if shown:
        page = _section(f"{count(len(holds), 'safety check')} not assessed", width)
        for said in [*_not_assessed_once(assessment, shown)][:_FIRST_FEW]:
            page.lines += cut_to_one(row("", said, width), width)
    return page.lines


def _not_assessed_once(assessment: Assessment, holds: Sequence[Check]) -> Iterator[str]:
    """What several checks wait for, once; then what else is wanted, that of most parts first: by rule, each once."""
    told: set[tuple[str, str]] = set()
    for one, what in waited_for(assessment):
        told.update(check.order for check in one.checks)
        yield f"{said_of_waiting(one)} waiting: {what}"
    wanting: dict[tuple[str, str], list[str]] = {}
    for check in holds:
        if check.order not in told:
            wants = "; ".join(check.missing) or check.says
            wanting.setdefault((check.rule.name, wants), []).append(check.component)
    for (rule, wants), parts in sorted(wanting.items(), key=lambda one: -len(one[1])):
        others = f" and {len(parts) - 1} more" if parts[1:] else ""
        yield f"{parts[0]}{others}, {rule}: {wants}"


def _counted(grade: Grade, groups: Sequence[Alike], conceded: Standings, width: int) -> list[Line]:
    page = Page(width)
    if groups:
        most = _FIRST_FEW if grade is Grade.NONCONFORMITY else 1
        only = "" if len(groups) <= most else f", the first {most} here" if most > 1 else ", the first here"
        page = _section(f"{_in_lines(groups, grade.word)}{only}", width)
        for alike in groups[:most]:
            said = f"{_who(alike.first.component, alike, conceded)}: {short(alike.first)}"
            page.lines += cut_to_one(row(used(alike.first), said, width), width)
    return page.lines


def _nearest(assessment: Assessment, width: int, most: int) -> list[Line]:
    """What conforms with the least to spare, alike on several parts once."""
    page = Page(width)
    ranked = [one for one in assessment.checks if _has_margin(one)]
    closest = list(_closest((one for one in ranked if not _at_limit(one)), most))
    if closest:
        page = _section("Conforming with the least to spare", width)
        said = "; ".join(f"{one.utilisation:.3f} {one.component} {one.rule.name}" for one in closest)
        if at_limit := sum(map(_at_limit, ranked)):
            said += f"; and {at_limit} exactly at the limit"
        page.entry("", said, indent=0, column=8)
    return page.lines


def _closest(checks: Iterable[Check], most: int) -> Iterator[Check]:
    seen: set[tuple[str, str]] = set()
    for one in sorted(checks, key=lambda one: (-(one.utilisation or 0.0), one.order)):
        alike = (one.rule.name, f"{one.utilisation:.6f}")
        if alike not in seen:
            seen.add(alike)
            yield one
        if len(seen) == most:
            return


def _has_margin(check: Check) -> bool:
    """Whether a check conforms by numbers that tolerances move: two pads of two wanted are no thin margin."""
    return (
        check.outcome == "conforms"
        and bool(check.governing)
        and check.utilisation is not None
        and _NEAR <= check.utilisation <= 1 + ROUNDING
    )


def _at_limit(check: Check) -> bool:
    return check.utilisation is not None and check.utilisation >= 1 - ROUNDING


def _foot(assessment: Assessment, width: int, *, alone: bool) -> list[Line]:
    page = Page(width)
    page.gap_always()
    lists = still_to_be_drawn(assessment)
    drawn, values = sum(len(one.to_draw) for one in lists), sum(one.values for one in lists)
    wanting = [f"{count(drawn, 'place')} still to be drawn"] if drawn else []
    wanting += [f"{count(values, 'value')} still to be stated"] if values else []
    if wanting:
        where = "speclint check --full lists them at its end" if alone else "listed at the end"
        page.wrapped(f"{'; '.join(wanting)}: {where}.")
    if told := _noted(assessment, alone=alone):
        page.wrapped(told)
    if alone:
        page.wrapped(CAUTION, emphasis="faint")
    return page.lines


def _noted(assessment: Assessment, *, alone: bool) -> str:
    """What else a reader must know before relying on the page: each is named below it, limits only with all details."""
    passed, old, limits = (
        len(assessment.passed_over),
        len(assessment.old_keys),
        len(assessment.changed_limits),
    )
    below = [f"{count(passed, 'TOML file')} passed over"] if passed else []
    below += [f"{count(old, 'old key')} read"] if old else []
    changed = [f"{count(limits, 'limit')} set in speclint.toml"] if limits else []
    if not alone:
        below, changed = below + changed, []
    said = [
        f"{', '.join(below)}: listed below." if below else "",
        *(f"{one}: see --full." for one in changed),
    ]
    return " ".join(one for one in (*said, left_out(assessment)) if one)
