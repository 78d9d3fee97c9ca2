"""The report of ``speclint check`` in full: page one, then every finding by component, the gravest first."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from speclint.checking import Alike, Assessment, Check, Unfinished, named, still_to_be_drawn
from speclint.reports.accepted import Standings, standings_shown, with_concessions
from speclint.reports.complaints_listing import (
    complaints_on,
    names_not_known_on,
    said_of_waiting,
    waited_for,
)
from speclint.reports.drawing_named import drawing_named
from speclint.reports.finding_lines import conceded_by, gravity, where_to_look
from speclint.reports.page import Emphasis, Page
from speclint.reports.page_one import page_one
from speclint.reports.phrases import (
    CAUTIONS,
    count,
    passed_over,
    referred_to,
    said_of_item,
    said_of_none,
    said_of_remedy,
    share_of_limit,
    tally,
)
from speclint.reports.taken_over import said_of_like
from speclint.rules import Grade
from speclint.specs import Spec

_REMEDIES_SHOWN = 2
_COLUMN = 13  # of the labels of a finding


def write(assessment: Assessment, width: int, *, full: bool = True) -> Page:
    """The report as a page of a width: page one, what was not read, and where it is wanted every detail."""
    conceded = standings_shown(assessment)
    page = page_one(assessment, width, conceded, alone=not full)
    complaints_on(page, assessment, full=full)
    names_not_known_on(page, assessment, full=full)
    passed_over_on(page, assessment)
    old_keys_on(page, assessment)
    if full:
        _findings(page, assessment, conceded)
        _not_assessed(page, assessment)
        unfinished_on(page, assessment)
        _end(page, assessment)
    return page


def passed_over_on(page: Page, assessment: Assessment) -> None:
    """The TOML files that were not read as specs, counted and named by the reason."""
    if not assessment.passed_over:
        return
    page.gap()
    page.line((f"PASSED OVER  ({len(assessment.passed_over)})", "strong"))
    page.wrapped("TOML files that were not read as specs, and folders that were not looked into.", indent=2)
    for why, files in passed_over(assessment):
        page.wrapped(f"{files}: {why}", indent=2, hanging=4)


def old_keys_on(page: Page, assessment: Assessment) -> None:
    """The old keys that specs state, each with what is written now."""
    if not assessment.old_keys:
        return
    page.gap()
    page.line((f"OLD KEYS  ({len(assessment.old_keys)})", "strong"))
    page.wrapped("They are read for one more edition.", indent=2)
    for note in assessment.old_keys:
        page.wrapped(f"{note.where}: write {note.write}", indent=2, hanging=4)


def _findings(page: Page, assessment: Assessment, conceded: Standings) -> None:
    found = [check for check in assessment.checks if check.outcome == "finding"]
    for component, group in groupby(
        with_concessions(found, conceded), key=lambda alike: alike.first.component
    ):
        page.gap()
        _component(page, assessment, component)
        if like := said_of_like(assessment, component):
            page.wrapped(like, indent=2, hanging=4, emphasis="faint")
        for alike in sorted(group, key=gravity):
            page.gap()
            _finding(page, assessment, alike, conceded)


def _component(page: Page, assessment: Assessment, component: str) -> None:
    design = assessment.design
    spec = design.specs[component] if design else None
    file = design.files[component] if design else ""
    page.rule()
    page.ends(f"{component}   {_described(spec)}", file, "strong")


def _described(spec: Spec | None) -> str:
    if spec is None:
        return ""
    return ", ".join(filter(None, (spec.called or spec.kind, drawing_named(spec))))


def _finding(page: Page, assessment: Assessment, alike: Alike, conceded: Standings) -> None:
    check = alike.first
    grade = check.grade or Grade.OBSERVATION
    ink: Emphasis = grade.word  # type: ignore[assignment]
    heading, used = f"  {check.rule.name}", _used(check)
    if len(grade.word) + len(heading) + len(used) + 2 > page.width:
        page.line("  ", (grade.word.upper(), ink))
        page.wrapped(f"{check.rule.name}{used}", indent=4)
    else:
        page.line("  ", (grade.word.upper(), ink), f"{heading}{used}")
    page.entry("requirement", check.rule.title, column=_COLUMN)
    page.entry("actual", check.actual, emphasis="strong", column=_COLUMN)
    for other in check.also_failing:
        page.entry("and", said_of_item(other), column=_COLUMN)
    if check.missing:
        page.entry("needs", "; ".join(check.missing), column=_COLUMN)
    if worst := _at_worst(check):
        page.entry("at worst", worst, column=_COLUMN)
    page.entry("where", str(where_to_look(check, assessment.remedies(check))), column=_COLUMN)
    if alike.said:
        page.entry("and", alike.said, column=_COLUMN)
    _remedies(page, assessment, check)
    page.entry("source", _sources(check), column=_COLUMN)
    if by := conceded_by(check, conceded):
        page.entry("concession", by, column=_COLUMN)


def _used(check: Check) -> str:
    return "" if check.utilisation is None else f", {share_of_limit(check.utilisation)}"


def _sources(check: Check) -> str:
    first, *others = check.rule.cites
    more = f"; and {len(others)} more on the sheet" if others else ""
    return f"{first}{more}"


def _at_worst(check: Check) -> str:
    """The load case and the values of the tolerance corner that governs."""
    return "; ".join((*([f"load case {check.case}"] if check.case else ()), *check.at_worst))


def _remedies(page: Page, assessment: Assessment, check: Check) -> None:
    for index, remedy in enumerate(assessment.remedies(check)[:_REMEDIES_SHOWN]):
        page.entry("remedy" if index == 0 else "or", said_of_remedy(assessment, remedy), column=_COLUMN)
    if none := said_of_none(assessment.search(check)):
        page.entry("remedy", none, column=_COLUMN)


def unfinished_on(page: Page, assessment: Assessment) -> None:
    """What is still to be drawn and to be stated in a draft, one list for each block."""
    lists = still_to_be_drawn(assessment)
    if not lists:
        return
    page.gap()
    page.rule()
    if drawn := sum(len(one.to_draw) for one in lists):
        page.line((f"STILL TO BE DRAWN  ({drawn})", "strong"))
        page.wrapped("Places of this draft that no part fills so far, and values that its checks want.")
    else:
        page.line((f"STILL TO BE STATED  ({sum(one.values for one in lists)})", "strong"))
        page.wrapped("Values that the checks of this draft want.")
    for one in lists:
        page.gap()
        page.wrapped(one.says, indent=2, hanging=4)
        for parts, keys in _to_state(one, assessment):
            page.wrapped(f"{named(parts)}: {', '.join(keys)}", indent=4, hanging=4)


def _to_state(one: Unfinished, assessment: Assessment) -> Iterator[tuple[list[str], tuple[str, ...]]]:
    """The values that are wanted, once for the parts of one file that want the same."""
    files = assessment.design.files if assessment.design else {}
    alike: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for component, keys in one.to_state:
        alike.setdefault((files.get(component, component), keys), []).append(component)
    yield from ((parts, keys) for (_, keys), parts in alike.items())


def _not_assessed(page: Page, assessment: Assessment) -> None:
    every = [check for check in assessment.checks if check.outcome == "not assessed"]
    if not every:
        return
    draft = assessment.settings is not None and assessment.settings.stage == "draft"
    waited = [*waited_for(assessment)]
    told = {check.order for one, _ in waited for check in one.checks}
    others = [check for check in every if check.order not in told]
    checks = [check for check in others if not (draft and check.only_unstated)]
    page.gap()
    page.rule()
    page.line((f"NOT ASSESSED  ({len(every)})", "strong"))
    page.wrapped(
        "What a check needs and the design does not state. A safety rule that is not assessed is a hold."
    )
    for one, what in waited:
        page.wrapped(f"{said_of_waiting(one)} waiting: {what}.", indent=2, hanging=2)
    if listed := len(others) - len(checks):
        page.wrapped(
            f"{count(listed, 'check')} of this draft waiting for values alone: they are listed below."
        )
    for component, group in groupby(checks, key=lambda check: check.component):
        page.gap()
        page.wrapped(component, indent=2, emphasis="strong")
        for needs, together in groupby(
            sorted(group, key=lambda one: one.missing), key=lambda one: one.missing
        ):
            rules = ", ".join(_marked(check) for check in together)
            page.entry("needs", "; ".join(needs), indent=4, column=7)
            page.entry("for", rules, indent=4, column=7)


def _marked(check: Check) -> str:
    return f"{check.rule.name} (HOLD)" if check.grade is Grade.HOLD else check.rule.name


def _end(page: Page, assessment: Assessment) -> None:
    """What holds for all findings: to whom a hold is referred, limits of the repository, the cautions."""
    page.gap()
    page.rule()
    if any(check.grade is Grade.HOLD for check in assessment.checks):
        page.wrapped(f"Holds are referred to {referred_to(assessment)}.")
    page.wrapped(tally(assessment))
    if assessment.changed_limits:
        page.wrapped("Limits set in speclint.toml: " + "; ".join(assessment.changed_limits))
    for caution in CAUTIONS:
        page.wrapped(caution, emphasis="faint")
