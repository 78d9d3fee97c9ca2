"""What nobody looked at, as one line, as a page and as data: hazards without a rule, and what the rules leave out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from speclint.checking import (
    STATES,
    Assessment,
    HazardSeen,
    LeftOut,
    State,
    Unseen,
    counts_hazards,
    named,
    unseen,
)
from speclint.reports.page import Page
from speclint.reports.phrases import CAUTION, count

_HAZARD, _COLUMN = 18, 6
_TABLE = 68  # columns that the table of hazards wants
_RULES = 3  # of the rules that say one thing so many are named

_COUNTED = (
    "A hazard is counted for each part whose kind can suffer it, by common practice. It has no rule where no rule on a "
    "kind of part that is drawn here guards against it."
)

#: Why nothing judges a hazard, in a heading.
HEADINGS: Mapping[State, str] = {
    "no rule": "No rule guards against it",
    "not assessed": "A rule guards against it, and no check of one could be made",
    "not applicable": "Rules guard against it, and none applies",
}


def hazards_said(assessment: Assessment) -> str:
    """How many hazards have no rule, in a sentence; "" where not every check of the design was made."""
    if not counts_hazards(assessment):
        return ""
    found = unseen(assessment)
    return f"{hazards_counted(found)}: speclint unseen." if found.hazards else ""


def hazards_counted(found: Unseen) -> str:
    """The hazards that nothing judges, of all hazards that the parts can suffer by their kinds."""
    counted = found.counted()
    other = [f"{number} {word}" for word, number in _not_judged(counted) if word != "no rule"]
    rest = f", {', '.join(other)}" if other else ""
    have = "has" if counted["no rule"] == 1 else "have"
    every = f"{count(len(found.hazards), 'hazard')} of {count(len(found.parts), 'part')}"
    return f"{counted['no rule']} of {every} {have} no rule{rest}"


def _not_judged(counted: Mapping[State, int]) -> list[tuple[State, int]]:
    return [(state, number) for state, number in counted.items() if number and state != "judged"]


def unseen_page(found: Unseen, width: int) -> Page:
    """Totals by hazard and by kind, then each gap with its reason, and what the rules leave out."""
    page = Page(width)
    page.wrapped("What was not looked at", emphasis="strong")
    page.wrapped(f"{hazards_counted(found)}; {found.counted()['judged']} judged.")
    if found.unread:
        page.wrapped(
            f"{count(found.unread, 'line')} could not be read; what stands there is not counted: speclint check."
        )
    page.wrapped(_COUNTED, emphasis="faint")
    page.gap()
    _table(page, found)
    if len(found.parts) == 1:
        _section(page, f"Each hazard of {found.parts[0]}", map(_judged_by, found.hazards))
    for state in HEADINGS if len(found.parts) > 1 else ():
        _section(page, f"{HEADINGS[state]}, by kind", by_kind(found, state))
    page.wrapped(CAUTION, emphasis="faint")
    _section(page, "Not counted, or not judged at all", not_counted(found))
    _section(page, f"{HEADINGS['not assessed']}, by part", reasons(found, "not assessed"))
    _section(page, f"{HEADINGS['not applicable']}, by part", reasons(found, "not applicable"))
    _section(page, "Judged, with a check of the same hazard that could not be made", partly(found))
    _section(page, "What the rules that apply leave out, in their own words", told(found.left_out))
    _section(page, "Checks that do not apply, by their reason", told(found.idle))
    return page


def _table(page: Page, found: Unseen) -> None:
    """The hazards with how many stand each way; without columns where the page is narrow."""
    rows = [*found.by_hazard().items(), ("all", found.counted())]
    if page.width < _TABLE:
        for hazard, counted in rows:
            page.entry(hazard, ", ".join(f"{number} {state}" for state, number in counted.items()), indent=0)
        return
    page.line((f"{'hazard':<{_HAZARD}}" + "".join(f"{state:>{len(state) + 3}}" for state in STATES), "faint"))
    for hazard, counted in rows:
        cells = "".join(f"{counted[state] or '–':>{len(state) + 3}}" for state in STATES)
        page.line((f"{hazard:<{_HAZARD}}{cells}", "strong" if hazard == "all" else ""))


def _section(page: Page, heading: str, rows: Iterable[tuple[str, str]]) -> None:
    listed = list(rows)
    if not listed:
        return
    page.gap_always()
    page.wrapped(heading, emphasis="strong")
    for label, said in listed:
        page.wrapped(f"{label}: {said}" if label else said, indent=2, hanging=_COLUMN)


def _judged_by(one: HazardSeen) -> tuple[str, str]:
    """A hazard of a part, and the checks that judge it."""
    judging = sorted({check.rule.name for check in one.judging})
    return one.hazard, f"judged by {', '.join(judging)}" if judging else one.state


def not_counted(found: Unseen) -> Iterator[tuple[str, str]]:
    """Parts of which no hazard was judged, and what does not say of itself what it can suffer or guards against."""
    if found.never_judged:
        yield "parts of which no hazard was judged", named(found.never_judged)
    if found.unsaid:
        yield "parts of kinds that do not say what they can suffer", named(found.unsaid)
    if found.silent:
        yield "rules that do not say what they guard against", named(found.silent)


def by_kind(found: Unseen, state: State) -> Iterator[tuple[str, str]]:
    """The hazards of each kind that stand one way; how many parts where it is not all of the kind."""
    for kind, hazards in found.by_kind().items():
        parts = len({one.component for one in hazards})
        gaps: dict[str, int] = {}
        for one in hazards:
            if one.state == state:
                gaps[one.hazard] = gaps.get(one.hazard, 0) + 1
        said = [name if number == parts else f"{name} ({number} of them)" for name, number in gaps.items()]
        if said:
            yield f"{kind} ({count(parts, 'part')})", ", ".join(said)


def reasons(found: Unseen, state: State) -> Iterator[tuple[str, str]]:
    """Why hazards that stand one way are not judged: parts with the same reasons together."""
    return _alike((one, "; ".join(one.reasons)) for one in found.standing(state))


def partly(found: Unseen) -> Iterator[tuple[str, str]]:
    """Hazards that are judged, of which some check could not be made."""
    return _alike(
        (one, ", ".join(sorted({check.rule.name for check in one.waiting})))
        for one in found.standing("judged")
        if one.waiting
    )


def _alike(told: Iterable[tuple[HazardSeen, str]]) -> Iterator[tuple[str, str]]:
    together: dict[tuple[str, str], list[str]] = {}
    for one, why in told:
        together.setdefault((one.hazard, why), []).append(one.component)
    for (hazard, why), parts in together.items():
        yield f"{named(parts)}, {hazard}", why


def told(rows: Sequence[LeftOut]) -> Iterator[tuple[str, str]]:
    """What several rules say, with the rules and with how many parts it concerns."""
    for one in rows:
        more = f" and {len(one.rules) - _RULES} more" if len(one.rules) > _RULES else ""
        rules = f"{', '.join(one.rules[:_RULES])}{more}"
        yield "", f"{one.says} ({rules}; {count(len(one.parts), 'part')})"


def unseen_data(found: Unseen) -> dict[str, Any]:
    """The same as plain data."""
    return {
        "hazards": {**found.counted(), "parts": len(found.parts)},
        "by_hazard": found.by_hazard(),
        "by_kind": {
            kind: {state: sum(one.state == state for one in hazards) for state in STATES}
            for kind, hazards in found.by_kind().items()
        },
        "not_judged": [_gap(one) for one in found.hazards if one.state != "judged"],
        "judged_in_part": [_gap(one) for one in found.standing("judged") if one.waiting],
        "never_judged": list(found.never_judged),
        "kinds_that_do_not_say": list(found.unsaid),
        "rules_that_do_not_say": list(found.silent),
        "left_out": [_told(one) for one in found.left_out],
        "not_applicable": [_told(one) for one in found.idle],
        "not_read": found.unread,
    }


def _gap(one: HazardSeen) -> dict[str, Any]:
    return {
        "component": one.component,
        "kind": one.kind,
        "hazard": one.hazard,
        "state": one.state,
        "reasons": list(one.reasons),
    }


def _told(one: LeftOut) -> dict[str, Any]:
    return {"says": one.says, "rules": list(one.rules), "parts": list(one.parts)}
