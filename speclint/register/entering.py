"""Entering a concession in the register, keeping the order and the comments of the file."""

from __future__ import annotations

import datetime as dt
import re
from pathlib import Path
from typing import TYPE_CHECKING, TypedDict

from msgspec import Struct

from speclint.checking import Check, find_check, runs_longer, used_of
from speclint.errors import DesignError, replace
from speclint.register.entitled import unaccepted, unaccepted_withdrawal
from speclint.register.lock import locked
from speclint.register.opened import Opened, opened, opened_as_change
from speclint.register.people import reviewer_called
from speclint.register.signing import signed_by
from speclint.register.standing import accepts_beside, standings
from speclint.register.withdrawals import WITHDRAWAL, Withdrawal
from speclint.register.writing import append_entries
from speclint.repository import Concession, Register, scratch_folder
from speclint.rules import Grade
from speclint.specs import NotStated, names_nothing

if TYPE_CHECKING:
    from speclint.families import Loaded

_NUMBER = re.compile(r"^C-(\d+)$")


class Acceptance(Struct, frozen=True):
    """What the person who accepts a finding states. ``role`` may come from the settings where they name a reviewer.

    With ``alike`` the finding is accepted on every part of the repository on which it is the same.
    """

    component: str
    rule: str
    accepted_by: str
    grounds: str
    until: dt.date
    role: str = ""
    reference: str = ""
    alike: bool = False


def concede(
    acceptance: Acceptance,
    folder: Path,
    loaded: Loaded,
    today: dt.date,
    key: Path | None = None,
    against: str | None = None,
) -> tuple[Concession, str]:
    """Enter a concession in the register, signed where a key is given; returns it and the file of the register.

    With ``against`` the finding is that of the design on the design basis of this revision. A withdrawal, which has
    the word :data:`WITHDRAWAL` for its rule, is always of a change since a revision.

    :raises DesignError: where there is no such finding, or this person may not accept it.
    :raises RevisionError: where git has no such revision.
    :raises SettingsError: where the register cannot be read.
    :raises OutputError: where it cannot be locked or written.
    :raises SigningError: where the key does not sign for the person.
    """
    if against is None:
        return _entered(acceptance, opened(folder, loaded, today), today, key)
    with scratch_folder() as place:
        repository = opened_as_change(folder, loaded, today, against, place)
        return _entered(acceptance, repository, today, key)


def _entered(
    acceptance: Acceptance, repository: Opened, today: dt.date, key: Path | None
) -> tuple[Concession, str]:
    if acceptance.rule == WITHDRAWAL:
        concession = _of_withdrawal(acceptance, _withdrawal(acceptance, repository), repository, today)
    else:
        found = _finding(acceptance, repository)
        concession = _made(acceptance, found, repository, today)
        if acceptance.alike:
            concession = _for_parts_alike(concession, found, acceptance, repository)
    with locked(repository.file):
        repository = repository.read_again()
        concession = replace(concession, number=next_number(repository.register))
        if key is not None:
            concession = signed_by(concession, repository.surroundings, key)
        _refuse_duplicate(concession, repository)
        append_entries(repository.file, concession)
    return concession, repository.register.file


def _finding(acceptance: Acceptance, repository: Opened) -> Check:
    subject = f"{acceptance.component} {acceptance.rule}"
    found = find_check(
        repository.surroundings.context, repository.surroundings.loaded, acceptance.component, acceptance.rule
    )
    if isinstance(found, str):
        raise DesignError(found)
    if found.could_not_run:
        raise DesignError(f"{subject} could not be run, which cannot be accepted: {found.could_not_run}")
    if found.stands_in_the_way is None:
        raise DesignError(f"{subject}: there is no finding to accept; the check came out as: {found.outcome}")
    if "concessions" in found.rests_on:
        raise DesignError(f"{subject} is about concessions: renew or remove them instead")
    reasons = list(unaccepted(acceptance.accepted_by, found, repository.surroundings))
    if reasons:
        raise DesignError("; ".join(reasons))
    return found


def _for_parts_alike(
    concession: Concession, found: Check, acceptance: Acceptance, repository: Opened
) -> Concession:
    """The entry for every part on which the finding is the same.

    :raises DesignError: where it is on no other part, or this person may not accept it on one of them.
    """
    surroundings = repository.surroundings
    context, loaded = surroundings.context, surroundings.loaded
    same = [
        other
        for name, spec in sorted(context.design.specs.items())
        if name != found.component and spec.kind == found.kind
        if not isinstance(other := find_check(context, loaded, name, found.rule.name), str)
        if other.alike == found.alike
    ]
    if not same:
        raise DesignError(f"{found.component} {found.rule.name}: the finding is the same on no other part")
    reasons = [why for other in same for why in unaccepted(acceptance.accepted_by, other, surroundings)]
    if reasons:
        raise DesignError("; ".join(dict.fromkeys(reasons)))
    return replace(concession, also_on=tuple(other.component for other in same), alike=found.alike)


def _withdrawal(acceptance: Acceptance, repository: Opened) -> Withdrawal:
    found = repository.surroundings.withdrawn.get(acceptance.component)
    if found is None:
        raise DesignError(
            f"the change withdraws no component {acceptance.component} that had a safety check; "
            "--against names the revision before it"
        )
    reasons = list(unaccepted_withdrawal(acceptance.accepted_by, found, repository.surroundings))
    if reasons:
        raise DesignError("; ".join(reasons))
    return found


def _made(acceptance: Acceptance, found: Check, repository: Opened, today: dt.date) -> Concession:
    assert found.grade is not None  # as it stands in the way
    return Concession(
        **_terms(acceptance, repository, today),
        component=found.component,
        rule=found.rule.name,
        edition=found.rule.edition,
        outcome=found.outcome,
        grade=found.grade.word,
        found=found.says,
        used=used_of(found),
        fingerprint=found.fingerprint,
        rests_on=found.rests_on,
    )


def _of_withdrawal(
    acceptance: Acceptance, withdrawal: Withdrawal, repository: Opened, today: dt.date
) -> Concession:
    return Concession(
        **_terms(acceptance, repository, today),
        component=withdrawal.component,
        rule=WITHDRAWAL,
        edition=1,
        outcome="withdrawn",
        grade=Grade.HOLD.word,
        found=withdrawal.says,
        used="",
        fingerprint=withdrawal.fingerprint,
        rests_on=withdrawal.rests_on,
    )


class _Terms(TypedDict):
    number: str
    accepted_by: str
    role: str
    date: dt.date
    until: dt.date
    grounds: str
    reference: str


def _terms(acceptance: Acceptance, repository: Opened, today: dt.date) -> _Terms:
    """What an entry states of whoever accepts, whatever is accepted."""
    return {
        "number": next_number(repository.register),
        "accepted_by": acceptance.accepted_by,
        "role": _role(acceptance, repository, today),
        "date": today,
        "until": acceptance.until,
        "grounds": acceptance.grounds,
        "reference": acceptance.reference,
    }


def _role(acceptance: Acceptance, repository: Opened, today: dt.date) -> str:
    """The role of whoever accepts; what every acceptance states is checked before."""
    if acceptance.until < today:
        raise DesignError(f"{acceptance.until} is in the past: a concession ends on a future day")
    if runs_longer(today, acceptance.until, years := repository.settings.longest_concession):
        raise DesignError(
            f"{acceptance.until} is more than {years} years on, and no concession runs longer: end it when the part is "
            "judged again, such as at an overhaul, or state longest under [concessions] in speclint.toml"
        )
    for name in ("accepted_by", "grounds", "reference"):
        stated = getattr(acceptance, name)
        if names_nothing(stated) and (stated or name != "reference"):
            said = f'; read "{stated}"' if stated.strip() else ""
            raise DesignError(f"a concession states its {name}{said}")
    reviewer = reviewer_called(acceptance.accepted_by, repository.settings)
    role = acceptance.role
    if not role and reviewer is not None and not isinstance(reviewer.role, NotStated):
        role = reviewer.role.value
    if names_nothing(role):
        raise DesignError(
            f"the role of {acceptance.accepted_by} is not stated: give it as --role, or in speclint.toml"
        )
    return role


def next_number(register: Register) -> str:
    """The next free number: ``C-001`` for the first."""
    used = [int(found[1]) for one in register.concessions if (found := _NUMBER.match(one.number))]
    return f"C-{max(used, default=0) + 1:03}"


def _refuse_duplicate(concession: Concession, repository: Opened) -> None:
    """Refuse an entry that adds nothing, on any of its parts, to those that hold."""
    same = [
        one
        for one in repository.register.concessions
        if one.rule == concession.rule and not accepts_beside(one, concession)
    ]
    stand = standings(Register(repository.register.file, tuple(same)), repository.surroundings)
    holding = {one.component: one for one in stand if one.holds and one.concession.until >= concession.until}
    if all(part in holding for part in concession.parts):
        first = holding[concession.component].concession
        raise DesignError(f"{first.number} already accepts this finding until {first.until}")
