"""Who may accept a hold or a withdrawal: a competent reviewer of the settings who did not prepare the part."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from speclint.checking import Check
from speclint.facts import may_be_one_person
from speclint.register.people import reviewer_called
from speclint.register.withdrawals import Withdrawal
from speclint.rules import Grade
from speclint.specs import NotStated

if TYPE_CHECKING:
    from speclint.register.standing import Surroundings


def unaccepted(name: str, found: Check, surroundings: Surroundings) -> Iterator[str]:
    """Why a person may not accept a finding: a hold needs a competent reviewer who did not prepare it."""
    if found.grade is not Grade.HOLD:
        return
    family = found.rule.family
    reviewer = reviewer_called(name, surroundings.settings)
    if reviewer is None:
        yield f"{name} is not a reviewer in speclint.toml, and only a reviewer can accept a hold"
    elif family not in reviewer.competent_for:
        has = ", ".join(reviewer.competent_for) or "no family"
        yield f"{name} is not competent for the family {family}: speclint.toml has {has}"
    preparer = surroundings.context.design.specs[found.component].prepared_by
    if isinstance(preparer, NotStated):
        yield f"{found.component} does not state who prepared it, so that independence cannot be shown"
    elif may_be_one_person(preparer.value, name):
        yield f"{name} prepared {found.component}, and a hold must be accepted by another person"
        return
    yield from _prepared_before(name, found.component, "a hold", surroundings)


def unaccepted_withdrawal(name: str, withdrawal: Withdrawal, surroundings: Surroundings) -> Iterator[str]:
    """Why a person may not accept a withdrawal: as for a hold of each family whose safety checks are lost.

    Several reviewers may accept one together, each for the families that they are competent for.
    """
    reviewer = reviewer_called(name, surroundings.settings)
    if reviewer is None:
        yield f"{name} is not a reviewer in speclint.toml, and only a reviewer can accept a withdrawal"
    elif withdrawal.families.isdisjoint(reviewer.competent_for):
        has = ", ".join(reviewer.competent_for) or "no family"
        needed = ", ".join(sorted(withdrawal.families))
        yield f"{name} is competent for none of the families {needed}: speclint.toml has {has}"
    if not surroundings.prepared.get(withdrawal.component):
        yield f"{withdrawal.component} did not state who prepared it, so that independence cannot be shown"
    yield from _prepared_before(name, withdrawal.component, "a withdrawal", surroundings)


def _prepared_before(name: str, component: str, what: str, surroundings: Surroundings) -> Iterator[str]:
    people = surroundings.prepared.get(component, ())
    if any(may_be_one_person(one, name) for one in people):
        yield f"{name} prepared {component} before this change, and {what} must be accepted by another person"
