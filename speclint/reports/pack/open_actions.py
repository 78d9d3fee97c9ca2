"""What is still to be done, as checking shows it: each action with where it comes from; nobody is named for it here."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from speclint.checking import Assessment, Check, Waiting, still_to_be_drawn
from speclint.errors import Complaint
from speclint.reports.accepted import Standings
from speclint.reports.complaints_listing import said_of_waiting
from speclint.reports.phrases import count
from speclint.rules import Grade


class Action(Struct, frozen=True):
    """Something to do, and what asks for it."""

    says: str
    because: str


def open_actions(assessment: Assessment, conceded: Standings, labels: dict[str, list[str]]) -> list[Action]:
    """The actions in the order of their weight; ``labels`` are those of the findings without concession, by grade."""
    return [
        *_of_what_was_not_judged(assessment),
        *_of_findings(labels),
        *_of_concessions(conceded),
        *(Action("draw or state what is wanting", one.says) for one in still_to_be_drawn(assessment)),
    ]


def _of_what_was_not_judged(assessment: Assessment) -> Iterator[Action]:
    for complaint in assessment.complaints:
        yield Action("make the line readable", _with_waiting(complaint, assessment.waits.of(complaint)))
    for one in assessment.waits.names:
        yield Action("correct the name", _with_waiting(one.complaint, one))
    for check in assessment.checks:
        if check.could_not_run:
            yield Action(
                f"have the rule {check.rule.name} mended", f"{check.component}: {check.could_not_run}"
            )
    waits = {check.order for one in assessment.waits for check in one.checks}
    waiting: dict[str, list[Check]] = {}
    for check in assessment.checks:
        if check.outcome == "not assessed" and check.order not in waits:
            for wanting in check.missing or (check.says,):
                waiting.setdefault(wanting, []).append(check)
    for wanting, checks in sorted(waiting.items(), key=lambda one: (not _safety(one[1]), one[0])):
        rules = ", ".join(f"{one.rule.name} on {one.component}" for one in checks)
        told = "; a safety check, which counts as a hold" if _safety(checks) else ""
        yield Action(f"give what is wanting: {wanting}", f"not assessed: {rules}{told}")


def _with_waiting(complaint: Complaint, waiting: Waiting | None) -> str:
    said = said_of_waiting(waiting)
    return f"{complaint}; {said} waiting for it" if said else str(complaint)


def _safety(checks: list[Check]) -> bool:
    return any(check.grade is Grade.HOLD for check in checks)


def _of_findings(labels: dict[str, list[str]]) -> Iterator[Action]:
    for grade, wanted in _WANTED.items():
        if found := labels.get(grade):
            yield Action(wanted, f"{_span(found)}: {count(len(found), grade)} without a valid concession")


_WANTED = {
    "hold": "decide each hold in the boxes of section 2",
    "nonconformity": "change each part, or have the finding conceded",
    "query": "answer each query in the spec, or have it conceded",
}


def _span(labels: list[str]) -> str:
    return labels[0] if len(labels) == 1 else f"{labels[0]} to {labels[-1]}"


def _of_concessions(conceded: Standings) -> Iterator[Action]:
    for standing in conceded.values():
        entry = standing.concession
        if standing.in_order and standing.state != "ending soon":
            continue
        why = "; ".join(standing.reasons)
        yield Action(
            f"renew or withdraw concession {entry.number}",
            f"{entry.component} {entry.rule}: {standing.state}{f'; {why}' if why else ''}",
        )
