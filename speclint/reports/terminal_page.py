"""The page of ``speclint check``: findings by component, the most serious first, with case, source and place."""

from __future__ import annotations

from itertools import groupby

from speclint.checking import Alike, Assessment, Check, grouped, still_to_be_drawn
from speclint.errors import Complaint
from speclint.reports.page import Emphasis, Page
from speclint.reports.phrases import CAUTIONS, count, passed_over, referred_to, said_of_item, tally, verdict
from speclint.reports.taken_over import said_of_like
from speclint.rules import Grade
from speclint.specs import Spec, Stated

_GAUGE_CELLS = 12
_GAUGE_FULL = 1.5  # the gauge ends at one and a half times the limit
_REMEDIES_SHOWN = 2


def write(assessment: Assessment, width: int) -> Page:
    """The report as a page of a width."""
    page = Page(width)
    _heading(page, assessment)
    _complaints(page, assessment.complaints)
    passed_over_on(page, assessment)
    old_keys_on(page, assessment)
    _findings(page, assessment)
    _not_assessed(page, assessment)
    unfinished_on(page, assessment)
    _verdict(page, assessment)
    return page


def _heading(page: Page, assessment: Assessment) -> None:
    settings = assessment.settings
    name = settings.works.name if settings else None
    title = name.value if isinstance(name, Stated) else assessment.root.name
    page.rule("═")
    page.ends(title, f"stage: {settings.stage}" if settings else "settings could not be read", "strong")
    specs = len(assessment.design.selected) if assessment.design else 0
    page.wrapped(
        f"{count(specs, 'spec')} · {count(len(assessment.checks), 'check')} · "
        f"families: {', '.join(family.name for family in assessment.loaded.families) or 'none'}",
        emphasis="faint",
    )
    page.rule("═")


def _complaints(page: Page, complaints: tuple[Complaint, ...]) -> None:
    if not complaints:
        return
    page.gap()
    page.line((f"COULD NOT BE READ  ({len(complaints)})", "strong"))
    for complaint in complaints:
        page.gap()
        page.wrapped(str(complaint.where), indent=2, hanging=4, emphasis="strong")
        page.entry("", complaint.message, indent=4, column=0)
        if complaint.read:
            page.entry("read", complaint.read, indent=4)
        if complaint.write:
            page.entry("write", complaint.write, indent=4)


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


def _findings(page: Page, assessment: Assessment) -> None:
    found = [check for check in assessment.checks if check.outcome == "finding"]
    for component, group in groupby(grouped(found), key=lambda alike: alike.first.component):
        together = sorted(group, key=lambda alike: _gravity(alike.first))
        page.gap()
        _component(page, assessment, component)
        if like := said_of_like(assessment, component):
            page.wrapped(like, indent=2, hanging=4, emphasis="faint")
        for alike in together:
            page.gap()
            _finding(page, assessment, alike)


def _gravity(check: Check) -> tuple[int, float, str]:
    return -(check.grade or 0), -(check.utilisation or 0.0), check.rule.name


def _component(page: Page, assessment: Assessment, component: str) -> None:
    design = assessment.design
    spec = design.specs[component] if design else None
    file = design.files[component] if design else ""
    page.rule()
    page.ends(f"{component}   {_described(spec)}", file, "strong")


def _described(spec: Spec | None) -> str:
    if spec is None:
        return ""
    parts = [spec.called or spec.kind]
    if isinstance(spec.drawing, Stated):
        revision = f" rev. {spec.revision.value}" if isinstance(spec.revision, Stated) else ""
        parts.append(f"drawing {spec.drawing.value}{revision}")
    return ", ".join(parts)


def _finding(page: Page, assessment: Assessment, alike: Alike) -> None:
    check = alike.first
    grade = check.grade or Grade.OBSERVATION
    ink: Emphasis = grade.word  # type: ignore[assignment]
    left = f"  {grade.word.upper()}  "
    right = _gauge(check.utilisation)
    space = page.width - len(left) - len(check.rule.name) - len(right)
    if space < 1:
        page.line((left.rstrip(), ink), f"  {check.rule.name}")
        page.line(f"  {right}")
    else:
        page.line("  ", (left.strip(), ink), f"  {check.rule.name}", " " * space, (right, ""))
    page.entry("asked", check.rule.title)
    page.entry("found", check.says, emphasis="strong")
    for other in check.also_failing:
        page.entry("and", said_of_item(other))
    if check.missing:
        page.entry("needs", "; ".join(check.missing))
    if when := _when(check):
        page.entry("when", when)
    page.entry("source", _sources(check))
    page.entry("look at", str(check.where))
    if alike.said:
        page.entry("and", alike.said)
    _remedies(page, assessment, check)
    if grade is Grade.HOLD:
        page.entry("refer to", referred_to(assessment))


def _sources(check: Check) -> str:
    first, *others = check.rule.cites
    more = f"; and {len(others)} more on the sheet" if others else ""
    return f"{first}{more}"


def _when(check: Check) -> str:
    return "; ".join(part for part in (check.case, ", ".join(check.governing)) if part)


def _remedies(page: Page, assessment: Assessment, check: Check) -> None:
    for index, remedy in enumerate(assessment.remedies(check)[:_REMEDIES_SHOWN]):
        page.entry("would clear" if index == 0 else "or", str(remedy))


def _gauge(utilisation: float | None) -> str:
    """A bar that shows how much of the limit is used; the vertical stroke is at the limit."""
    if utilisation is None:
        return ""
    limit = round(_GAUGE_CELLS / _GAUGE_FULL)
    filled = min(_GAUGE_CELLS, round(min(utilisation, _GAUGE_FULL) * limit))
    cells = "".join("▪" if cell < filled else "·" for cell in range(_GAUGE_CELLS))
    shown = "no margin left" if utilisation == float("inf") else f"{utilisation:.2f} of the limit"
    return f"{cells[:limit]}|{cells[limit:]}  {shown}"


def unfinished_on(page: Page, assessment: Assessment) -> None:
    """What is still to be drawn and to be stated in a draft, one list for each block."""
    lists = still_to_be_drawn(assessment)
    if not lists:
        return
    page.gap()
    page.rule()
    page.line((f"STILL TO BE DRAWN  ({sum(len(one.to_draw) for one in lists)})", "strong"))
    page.wrapped("Places of this draft that no part fills so far, and values that its checks want.")
    for one in lists:
        page.gap()
        page.wrapped(one.says, indent=2, hanging=4)
        for component, keys in one.to_state:
            page.wrapped(f"{component}: {', '.join(keys)}", indent=4, hanging=4)


def _not_assessed(page: Page, assessment: Assessment) -> None:
    every = [check for check in assessment.checks if check.outcome == "not assessed"]
    draft = assessment.settings is not None and assessment.settings.stage == "draft"
    checks = [check for check in every if not (draft and check.only_unstated)]
    if not every:
        return
    page.gap()
    page.rule()
    page.line((f"NOT ASSESSED  ({len(every)})", "strong"))
    page.wrapped(
        "What a check needs and the design does not state. A safety rule that is not assessed is a hold."
    )
    if listed := len(every) - len(checks):
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


def _verdict(page: Page, assessment: Assessment) -> None:
    page.gap()
    page.rule("═")
    page.wrapped(verdict(assessment), emphasis="strong")
    page.wrapped(tally(assessment))
    if assessment.changed_limits:
        page.wrapped("Limits set in speclint.toml: " + "; ".join(assessment.changed_limits))
    page.gap()
    for caution in CAUTIONS:
        page.wrapped(caution, emphasis="faint")
    page.rule("═")
