"""Whether each concession of the register still holds, and if not, why: which value changed from what to what.

A concession holds while its finding stands exactly as it was accepted, until its end, when whoever accepted it
was entitled to, and when its signature, where there is one or must be one, is good. Everything else is said.
"""

from __future__ import annotations

import datetime as dt
import unicodedata
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Literal

from speclint.checking import Check, changes, dated, find_check, nothing_to_concede
from speclint.errors import SigningError
from speclint.families import Loaded
from speclint.register.signatures import fault_of
from speclint.repository import Concession, Register, Reviewer, Settings
from speclint.rules import Context, Grade
from speclint.specs import Component, NotStated

State = Literal[
    "valid",
    "ending soon",
    "replaced",
    "unmatched",
    "duplicate",
    "lapsed",
    "expired",
    "not yet in force",
    "not accepted",
    "not signed",
]
Fault = tuple[State, str]


@dataclass(frozen=True)
class Standing:
    """One concession and whether it holds; ``reasons`` say why not, or what should be known of it.

    ``found`` is the check it is about, None where there is no such check.
    """

    concession: Concession
    state: State
    reasons: tuple[str, ...]
    found: Check | None = None

    @property
    def subject(self) -> tuple[str, str]:
        """The component and the rule."""
        return self.concession.component, self.concession.rule

    @property
    def holds(self) -> bool:
        """Whether the finding counts as accepted."""
        return self.state in ("valid", "ending soon")

    @property
    def in_order(self) -> bool:
        """Whether nobody needs to do anything about the entry; an entry that another replaced is history."""
        return self.holds or self.state == "replaced"


@dataclass(frozen=True)
class Surroundings:
    """What concessions are held against: one design under one set of settings, on one day.

    ``signers`` is the file of allowed signers; ``checks`` are those already made, by component and rule.
    """

    context: Context
    settings: Settings
    loaded: Loaded
    signers: Path
    today: dt.date
    checks: Mapping[tuple[str, str], Check]

    def check(self, concession: Concession) -> Check | str:
        """The check that a concession is about, or why there is none."""
        known = self.checks.get((concession.component, concession.rule))
        if known is None or known.rule.reviews:
            return find_check(self.context, self.loaded, concession.component, concession.rule)
        return known


def _component(context: Context, name: str) -> Component:
    found = context.design.specs[name]
    assert isinstance(found, Component)  # as its rule was found
    return found


def standings(register: Register, around: Surroundings) -> tuple[Standing, ...]:
    """How every readable entry of the register stands, in the order of the file."""
    found = [_standing(one, register.concessions, around) for one in register.concessions]
    return tuple(_replaced(one, found) for one in found)


def _standing(concession: Concession, others: Sequence[Concession], around: Surroundings) -> Standing:
    found = around.check(concession)
    faults = list(_same_number(concession, others))
    if isinstance(found, str):
        return _stands(concession, [*faults, ("unmatched", found)], around, None)
    if why := nothing_to_concede(found):
        return _stands(concession, [*faults, ("unmatched", why)], around, found)
    faults += [("lapsed", words) for words in changes(concession, found)]
    faults += dated(concession, around.today)
    faults += [("not accepted", words) for words in unaccepted(concession.accepted_by, found, around)]
    faults += [("not signed", words) for words in unsigned(concession, found, around)]
    return _stands(concession, faults, around, found)


def _stands(
    concession: Concession, faults: Sequence[Fault], around: Surroundings, found: Check | None
) -> Standing:
    if faults:
        return Standing(concession, faults[0][0], tuple(words for _, words in faults), found)
    left = (concession.until - around.today).days
    if left <= around.settings.ending_soon:
        days = "today" if left == 0 else f"in {left} {'day' if left == 1 else 'days'}"
        return Standing(concession, "ending soon", (f"it ends {days}, on {concession.until}",), found)
    return Standing(concession, "valid", (), found)


def _replaced(one: Standing, all_of_them: Sequence[Standing]) -> Standing:
    """An entry is history where a later one accepts the same finding for longer, and too many where it adds nothing."""
    for other in all_of_them:
        if other is one or not other.holds or other.subject != one.subject:
            continue
        longer = other.concession.until > one.concession.until
        later = other.concession.where.line > one.concession.where.line
        if one.state in ("lapsed", "expired") or (one.holds and longer and later):
            return replace(one, state="replaced", reasons=(f"{other.concession.number} takes its place",))
        if one.holds and not later and other.concession.until >= one.concession.until:
            reason = (
                f"{other.concession.number} already accepts the same finding until {other.concession.until}"
            )
            return replace(one, state="duplicate", reasons=(reason,))
    return one


def _same_number(concession: Concession, others: Sequence[Concession]) -> Iterator[Fault]:
    """Of two entries of one number neither counts: which of them was meant cannot be told."""
    if Counter(one.number for one in others)[concession.number] > 1:
        yield "duplicate", f"more than one entry has the number {concession.number}: none of them counts"


def unaccepted(name: str, found: Check, around: Surroundings) -> Iterator[str]:
    """Why a person may not accept a finding: a hold asks for a competent reviewer who did not prepare it."""
    if found.grade is not Grade.HOLD:
        return
    family = found.rule.family
    reviewer = reviewer_called(name, around.settings)
    if reviewer is None:
        yield f"{name} is no reviewer of speclint.toml, and a hold is accepted by one of them"
    elif family not in reviewer.competent_for:
        has = ", ".join(reviewer.competent_for) or "no family"
        yield f"{name} is not competent for the family {family}: speclint.toml has {has}"
    preparer = _component(around.context, found.component).prepared_by
    if isinstance(preparer, NotStated):
        yield f"{found.component} does not state who prepared it, so that nobody can be shown to be another"
    elif _letters(preparer.value) == _letters(name):
        yield f"{name} prepared {found.component}, and a hold is accepted by another"


def reviewer_called(name: str, settings: Settings) -> Reviewer | None:
    """A reviewer of the settings by name; case, dots and spaces do not matter."""
    return next(
        (one for called, one in settings.reviewers.items() if _letters(called) == _letters(name)), None
    )


def _letters(name: str) -> str:
    plain = unicodedata.normalize("NFKC", name).casefold()
    return "".join(letter for letter in plain if letter.isalnum())


def unsigned(concession: Concession, found: Check, around: Surroundings) -> Iterator[str]:
    """Why the signature of a concession is missing or no good."""
    demanded = {concession.grade, found.grade.word if found.grade else ""} & set(
        around.settings.concessions.signed
    )
    if concession.signature:
        yield from bad_signature(concession, around)
    elif demanded:
        yield f"speclint.toml asks for a signature on a {max(demanded)}, and it has none"


def bad_signature(concession: Concession, around: Surroundings) -> Iterator[str]:
    """Why the signature that an entry carries does not count."""
    reviewer = reviewer_called(concession.accepted_by, around.settings)
    if reviewer is None or isinstance(reviewer.signs_as, NotStated):
        yield f"speclint.toml does not say under what name {concession.accepted_by} signs"
        return
    try:
        fault = fault_of(
            concession.statement(), concession.signature, reviewer.signs_as.value, around.signers
        )
    except SigningError as problem:
        fault = f"the signature cannot be verified: {problem}"
    if fault:
        yield fault
