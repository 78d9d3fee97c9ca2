"""The decision of the gate for reading and for machines: why release is withheld, and what was accepted by whom."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from speclint.checking import Assessment, Check, named
from speclint.register import Decision, Reason, Standing
from speclint.reports.arithmetic import arithmetic_at_gate
from speclint.reports.complaints_listing import waited_for
from speclint.reports.json_report import old_keys_data, passed_over_data, unfinished_data
from speclint.reports.page import Page
from speclint.reports.phrases import (
    CAUTIONS,
    count,
    drawings_said,
    known_faults_said,
    left_out,
    old_revisions_said,
    referred_to,
)
from speclint.reports.reading_listing import readings_data, readings_said
from speclint.reports.register_listing import standing_data
from speclint.reports.terminal_page import old_keys_on, passed_over_on, unfinished_on

_COLUMN = 11


def gate_page(decision: Decision, width: int) -> Page:
    """The decision as a page: the word first, then every reason."""
    page = Page(width)
    _heading(page, decision)
    _reasons(page, decision)
    if decision.assessment:
        passed_over_on(page, decision.assessment)
        old_keys_on(page, decision.assessment)
        unfinished_on(page, decision.assessment)
    _standings(page, "HOLDS ACCEPTED", decision.accepted)
    _standings(page, "ENDING SOON", decision.ending)
    _standings(page, "IN THE REGISTER, BUT WITHOUT EFFECT", decision.ended)
    if decision.readings_ended:
        page.gap()
        page.line(("READINGS OF DRAWINGS WITHOUT EFFECT", "strong"))
        for line in readings_said(decision.readings_ended):
            page.wrapped(line, indent=2, hanging=4)
    if decision.to_review:
        page.gap()
        page.line(
            (f"FOR A REVIEWER: what this changes of what it is judged by, since {decision.against}", "strong")
        )
        for line in decision.to_review:
            page.wrapped(line, indent=2, hanging=2)
    page.gap()
    if decision.assessment is not None and any(one.hold for one in decision.reasons):
        page.wrapped(f"Holds are referred to {referred_to(decision.assessment)}.")
    for caution in CAUTIONS:
        page.wrapped(caution, emphasis="faint")
    return page


def _heading(page: Page, decision: Decision) -> None:
    assessment = decision.assessment
    settings = assessment.settings if assessment else None
    stage = f"stage: {settings.stage}" if settings else ""
    if decision.released:
        page.ends("RELEASED as far as these rules go", stage, "conforms")
    else:
        page.ends(f"WITHHELD: {count(len(decision.reasons), 'reason')}", stage, "hold")
    sums = arithmetic_at_gate(decision)
    page.wrapped(f"{sums.says} {sums.beside}")
    if decision.against:
        basis = "settings, limits, materials, duties, reviewers and signers"
        page.wrapped(
            f"judged on the design basis of {decision.against} ({basis}), and on that of the change where it differs"
        )
    for told in _said(assessment) if assessment else ():
        page.wrapped(told)
    if assessment and assessment.kept is not None:
        page.wrapped("Checks of earlier runs are used where they still hold.", emphasis="faint")


def _said(assessment: Assessment) -> Iterator[str]:
    """What is left out, and what is counted: known faults, drawings that were not read, parts of an old revision."""
    said = (left_out, known_faults_said, drawings_said, old_revisions_said)
    return filter(None, (of(assessment) for of in said))


def _reasons(page: Page, decision: Decision) -> None:
    """Every reason, but safety checks that wait for one thing together; one that was conceded stands alone."""
    ended = {one.subject for one in decision.ended}
    together: dict[str, list[Check]] = {}
    of: dict[tuple[str, str], str] = {}
    for one, what in waited_for(decision.assessment) if decision.assessment else ():
        of |= {check.order: what for check in one.checks if check.order not in ended}
    for reason in decision.reasons:
        if reason.hold is not None and reason.subject in of:
            together.setdefault(of[reason.hold.order], []).append(reason.hold)
        else:
            page.gap()
            _reason(page, reason)
    for what, holds in together.items():
        page.gap()
        parts = named(sorted({check.component for check in holds}))
        says = f"hold, not assessed: {count(len(holds), 'check')} waiting, of {parts}: {what}"
        page.wrapped(says, indent=2, hanging=4, emphasis="strong")


def _reason(page: Page, reason: Reason) -> None:
    page.wrapped(reason.says, indent=2, hanging=4, emphasis="strong")
    for detail in reason.details:
        page.entry("because", detail, indent=6, column=_COLUMN)
    if reason.hold is not None:
        page.entry("look at", str(reason.hold.where), indent=6, column=_COLUMN)


def _standings(page: Page, heading: str, stand: tuple[Standing, ...]) -> None:
    if not stand:
        return
    page.gap()
    page.line((heading, "strong"))
    for one in stand:
        entry = one.concession
        accepted = f"{entry.accepted_by}, {entry.role}, until {entry.until}"
        why = entry.grounds if one.holds else f"{one.state}: {'; '.join(one.reasons)}"
        page.wrapped(
            f"{entry.number}  {entry.component} {entry.rule}: {accepted}; {why}", indent=2, hanging=4
        )


def _left_out(decision: Decision) -> tuple[str, ...]:
    return decision.assessment.loaded.left_out if decision.assessment else ()


def _passed_over(decision: Decision) -> list[dict[str, str]]:
    return passed_over_data(decision.assessment) if decision.assessment else []


def _unfinished(decision: Decision) -> list[dict[str, Any]]:
    return unfinished_data(decision.assessment) if decision.assessment else []


def _old_keys(decision: Decision) -> list[dict[str, Any]]:
    return old_keys_data(decision.assessment) if decision.assessment else []


def gate_data(decision: Decision) -> dict[str, Any]:
    """The decision as plain data."""
    return {
        "released": decision.released,
        "against": decision.against or None,
        **({"left_out": list(left_out)} if (left_out := _left_out(decision)) else {}),
        **({"passed_over": passed_over} if (passed_over := _passed_over(decision)) else {}),
        **({"old_keys": old_keys} if (old_keys := _old_keys(decision)) else {}),
        **({"still_to_be_drawn": lists} if (lists := _unfinished(decision)) else {}),
        "reasons": [
            {
                "says": reason.says,
                "details": list(reason.details),
                "exit": reason.code,
                "component": reason.subject[0] if reason.subject else None,
                "rule": reason.subject[1] if reason.subject else None,
            }
            for reason in decision.reasons
        ],
        "accepted": [standing_data(one) for one in decision.accepted],
        "ending": [standing_data(one) for one in decision.ending],
        "ended": [standing_data(one) for one in decision.ended],
        **({"readings_ended": readings} if (readings := readings_data(decision.readings_ended)) else {}),
        "to_review": list(decision.to_review),
        "exit": decision.exit_code,
    }
