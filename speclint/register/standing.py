"""Whether each concession of the register still holds, and if not, why: which value changed from what to what.

A concession holds while its finding is exactly as it was accepted, until its end, when it runs no longer than the
settings allow, when whoever accepted it was entitled to, and when its signature, where there is one or must be one, is
valid. Otherwise the reasons are given.
"""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence
from pathlib import Path
from typing import Literal

from msgspec import Struct, field

from speclint.checking import Check, changes, dated, find_check, nothing_to_concede, values_changed
from speclint.errors import SigningError, replace
from speclint.facts import may_be_one_person
from speclint.families import Loaded
from speclint.register.entitled import unaccepted, unaccepted_withdrawal
from speclint.register.people import reviewer_called
from speclint.register.signatures import fault_of
from speclint.register.withdrawals import WITHDRAWAL, Withdrawal
from speclint.repository import Concession, DrawingReading, Register, Settings
from speclint.rules import Context, Grade
from speclint.specs import NotStated

State = Literal[
    "valid",
    "ending soon",
    "replaced",
    "withdrawn",
    "unmatched",
    "duplicate",
    "lapsed",
    "expired",
    "not yet in force",
    "not accepted",
    "not signed",
]
Fault = tuple[State, str]


class Standing(Struct, frozen=True):
    """One concession and whether it holds; ``reasons`` say why not, or what to note about it.

    ``found`` is the check it is about, None where there is no such check. ``part`` is that
    of which it is told, where the entry accepts the finding of parts alike and this is not its first.
    """

    concession: Concession
    state: State
    reasons: tuple[str, ...]
    found: Check | None = None
    part: str = ""

    @property
    def component(self) -> str:
        """The component of which it is told."""
        return self.part or self.concession.component

    @property
    def subject(self) -> tuple[str, str]:
        """The component and the rule."""
        return self.component, self.concession.rule

    @property
    def holds(self) -> bool:
        """Whether the finding counts as accepted."""
        return self.state in ("valid", "ending soon")

    @property
    def in_order(self) -> bool:
        """Whether the entry needs no action: nor does one that another replaced, or the record of a withdrawal."""
        return self.holds or self.state in ("replaced", "withdrawn")


class Surroundings(Struct, frozen=True):
    """What concessions are compared with: one design under one set of settings, on one day.

    ``signers`` is the file of allowed signers, ``signers_are`` what it is where it is not to be read, such as "a
    pipe"; ``checks`` are those already made, by component and rule. For a change, ``prepared`` names who prepared
    each component before it, ``withdrawn`` are the components it withdraws.
    """

    context: Context
    settings: Settings
    loaded: Loaded
    signers: Path
    today: dt.date
    checks: Mapping[tuple[str, str], Check]
    signers_are: str = ""
    prepared: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    withdrawn: Mapping[str, Withdrawal] = field(default_factory=dict)

    def check(self, component: str, rule: str) -> Check | str:
        """The check that a concession is about, or why there is none."""
        known = self.checks.get((component, rule))
        if known is None or known.rule.reviews:
            return find_check(self.context, self.loaded, component, rule)
        return known


def standings(
    register: Register, surroundings: Surroundings, about: Collection[tuple[str, str]] | None = None
) -> tuple[Standing, ...]:
    """The state of every readable entry of the register, in the order of the file; for each of its parts.

    ``about`` are the components and rules that are asked about, where not all: no other check is made.
    """
    found = [
        replace(
            _standing(one, part, register.concessions, surroundings),
            part="" if part == one.component else part,
        )
        for one in register.concessions
        for part in one.parts
        if about is None or (part, one.rule) in about
    ]
    return tuple(_replaced(one, found) for one in found)


def _standing(
    concession: Concession, part: str, others: Sequence[Concession], surroundings: Surroundings
) -> Standing:
    faults = list(_same_number(concession, others))
    if concession.rule == WITHDRAWAL:
        return _of_withdrawal(concession, faults, surroundings)
    found = surroundings.check(part, concession.rule)
    if isinstance(found, str):
        return _stands(concession, [*faults, ("unmatched", found)], surroundings, None)
    if why := nothing_to_concede(found):
        return _stands(concession, [*faults, ("unmatched", why)], surroundings, found)
    faults += [("lapsed", words) for words in changes(concession, found)]
    faults += dated(concession, surroundings.today, surroundings.settings.longest_concession)
    faults += [("not accepted", words) for words in unaccepted(concession.accepted_by, found, surroundings)]
    faults += [("not signed", words) for words in unsigned(concession, found, surroundings)]
    return _stands(concession, faults, surroundings, found)


def _of_withdrawal(concession: Concession, faults: list[Fault], surroundings: Surroundings) -> Standing:
    """How the acceptance of a withdrawal stands: against the change that withdraws, or as the record of it."""
    withdrawal = surroundings.withdrawn.get(concession.component)
    if withdrawal is None:
        if again := _judged_again(concession, surroundings):
            why = f"{concession.component} is in the design and judged by {', '.join(again)}"
            return _stands(concession, [*faults, ("unmatched", why)], surroundings, None)
        record: Fault = ("withdrawn", f"{concession.component} is withdrawn; this is the record of it")
        return _stands(concession, [*faults, record], surroundings, None)
    if concession.fingerprint != withdrawal.fingerprint:
        said = list(values_changed(concession.rests_on, withdrawal.rests_on))
        faults += [("lapsed", words) for words in said or ["the component changed after this was accepted"]]
    faults += dated(concession, surroundings.today, surroundings.settings.longest_concession)
    unentitled = unaccepted_withdrawal(concession.accepted_by, withdrawal, surroundings)
    faults += [("not accepted", words) for words in unentitled]
    faults += [("not signed", words) for words in unsigned(concession, None, surroundings)]
    return _stands(concession, faults, surroundings, None)


def _judged_again(concession: Concession, surroundings: Surroundings) -> list[str]:
    """The safety checks of a withdrawn component that now apply to one of its name."""
    spec = surroundings.context.design.specs.get(concession.component)
    if spec is None:
        return []
    rules = (rule for rule in surroundings.loaded.rules_for({spec.kind}) if isinstance(spec, rule.on))
    return sorted(rule.name for rule in rules if rule.name in concession.rests_on)


def _stands(
    concession: Concession, faults: Sequence[Fault], surroundings: Surroundings, found: Check | None
) -> Standing:
    if faults:
        return Standing(concession, faults[0][0], tuple(words for _, words in faults), found)
    left = (concession.until - surroundings.today).days
    if left <= surroundings.settings.ending_soon:
        days = "today" if left == 0 else f"in {left} {'day' if left == 1 else 'days'}"
        return Standing(concession, "ending soon", (f"it ends {days}, on {concession.until}",), found)
    return Standing(concession, "valid", (), found)


def _replaced(one: Standing, all_of_them: Sequence[Standing]) -> Standing:
    """Mark an entry replaced where a later one accepts its finding for longer, duplicate where it adds nothing."""
    for other in all_of_them:
        if other is one or not other.holds or other.subject != one.subject:
            continue
        if accepts_beside(other.concession, one.concession):
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


def accepts_beside(one: Concession, other: Concession) -> bool:
    """Whether two entries count together: acceptances of one withdrawal by two reviewers, each for some families."""
    return one.rule == WITHDRAWAL and not may_be_one_person(one.accepted_by, other.accepted_by)


def _same_number(concession: Concession, others: Sequence[Concession]) -> Iterator[Fault]:
    """Of two entries with one number neither counts: which of them was meant is unknown."""
    if Counter(one.number for one in others)[concession.number] > 1:
        yield "duplicate", f"more than one entry has the number {concession.number}: none of them counts"


def unsigned(concession: Concession, found: Check | None, surroundings: Surroundings) -> Iterator[str]:
    """Why the signature of a concession is missing or not valid."""
    grade = Grade.HOLD if found is None else found.grade
    grades = {concession.grade, grade.word if grade else ""}
    demanded = grades & set(surroundings.settings.concessions.signed)
    if concession.signature:
        yield from bad_signature(concession, surroundings)
    elif demanded:
        yield f"speclint.toml asks for a signature on a {max(demanded)}, and it has none"


def bad_signature(entry: Concession | DrawingReading, surroundings: Surroundings) -> Iterator[str]:
    """Why the signature that an entry carries does not count."""
    reviewer = reviewer_called(entry.signatory, surroundings.settings)
    if reviewer is None or isinstance(reviewer.signs_as, NotStated):
        yield f"speclint.toml does not say under what name {entry.signatory} signs"
        return
    if surroundings.signers_are:
        yield f"the file of signers, {surroundings.signers.name}, is {surroundings.signers_are}, which is not read"
        return
    try:
        fault = fault_of(entry.statement(), entry.signature, reviewer.signs_as.value, surroundings.signers)
    except SigningError as problem:
        fault = f"the signature cannot be verified: {problem}"
    if fault:
        yield fault
