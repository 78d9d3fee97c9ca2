"""The gate: it withholds release unless everything that it requires was found in order.

It withholds while a hold has no valid concession, something could not be read, a family that is required did
not load, or a rule could not be run; where a design that is released names a drawing that nobody read as it is; and
where nothing was checked at all. Judged against a git revision, it
takes settings, reviewers and signers from there, so that a change cannot loosen the gate that judges it; where
the change has settings of its own, these must release it too.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.checking import Assessment, Check, KeptFolder, Processes, assess, drawings_named
from speclint.errors import FamilyError, SpeclintError, replace
from speclint.register.comparison import Before, Workers, before_at, changed_since
from speclint.register.either import withheld_by_either
from speclint.register.opened import surroundings
from speclint.register.people import reviewer_called
from speclint.register.reading_standing import ReadingStanding, reading_standings
from speclint.register.standing import Standing, standings
from speclint.register.withdrawals import WITHDRAWAL, Withdrawal
from speclint.repository import Basis, Settings, open_repository, scratch_folder
from speclint.rules import Grade

if TYPE_CHECKING:
    from speclint.families import Loaded

_WITHHELD, _UNREADABLE, _NOT_RUN = 1, 2, 3  # exit codes of the program


class Reason(Struct, frozen=True):
    """One reason to withhold: in words, with details, and the exit code for it.

    ``hold`` is the check where it is a hold, ``withdrawn`` the component where it is a withdrawal.
    """

    says: str
    details: tuple[str, ...] = ()
    code: int = _WITHHELD
    hold: Check | None = None
    withdrawn: str = ""

    @property
    def subject(self) -> tuple[str, str] | None:
        """The component and the rule, or the word of a withdrawal; None where it is not about one component."""
        if self.hold is not None:
            return self.hold.order
        return (self.withdrawn, WITHDRAWAL) if self.withdrawn else None


class Decision(Struct, frozen=True):
    """Released when there is no reason against it.

    ``accepted`` are the concessions of the holds that are released, ``ending`` all that end soon, ``ended``
    those that no longer count, of any grade; ``readings_ended`` are the readings of drawings that do not count;
    ``to_review`` is what the change alters of what it is judged by.
    """

    reasons: tuple[Reason, ...]
    assessment: Assessment | None = None
    accepted: tuple[Standing, ...] = ()
    ending: tuple[Standing, ...] = ()
    ended: tuple[Standing, ...] = ()
    readings_ended: tuple[ReadingStanding, ...] = ()
    to_review: tuple[str, ...] = ()
    against: str = ""

    @property
    def released(self) -> bool:
        """Whether there is no reason to withhold."""
        return not self.reasons

    @property
    def exit_code(self) -> int:
        """0 released, 1 withheld, 2 something unreadable, 3 something that could not be run."""
        return max((reason.code for reason in self.reasons), default=0)


def judge(
    paths: Sequence[Path],
    load: Callable[[], Loaded],
    today: dt.date,
    against: str | None = None,
    kept: KeptFolder | None = None,
    workers: Workers = Processes,
) -> Decision:
    """Decide whether the specs at some paths may be released; any error withholds them.

    Every check is made anew, unless results of earlier runs are given that may be ``kept``. ``workers`` are those that
    share the work, made anew for each design that is checked.
    """
    try:
        loaded = load()
        if against is None:
            return _judged(paths, loaded, today, kept=kept, workers=workers)
        with scratch_folder() as folder:
            return _judged_against(paths, loaded, today, against, folder, kept, workers)
    except SpeclintError as problem:
        return Decision((Reason(str(problem), code=problem.exit_code),), against=against or "")


def _judged(
    paths: Sequence[Path],
    loaded: Loaded,
    today: dt.date,
    before: Before | None = None,
    basis: Basis | None = None,
    kept: KeptFolder | None = None,
    workers: Workers = Processes,
) -> Decision:
    """Judge a design, and what it withdraws of what there was before, on its own design basis or on another."""
    try:
        with workers() as processes:
            assessment = assess(paths, loaded, basis=basis, processes=processes, kept=kept)
        rules = assessment.loaded.rules  # every one, so that no family is there that is not whole
    except FamilyError as problem:
        return Decision((Reason(str(problem), code=problem.exit_code),))
    if assessment.settings is None:
        return Decision(tuple(_unreadable(assessment)), assessment)
    compared = surroundings(assessment, today)
    if before is not None and assessment.design is not None:
        compared = changed_since(before, compared, assessment.design, paths, on_its_basis=basis is not None)
    stand = standings(assessment.register, compared)
    withdrawn = compared.withdrawn
    reasons = [*_unreadable(assessment), *_not_run(assessment), *_holds(assessment, stand)]
    reasons += _withdrawals(withdrawn.values(), stand, compared.settings)
    read = reading_standings(assessment.register, compared)
    reasons += _drawings(assessment, read, compared.settings)
    if not rules:
        reasons.insert(0, Reason("no family of rules is installed", code=_NOT_RUN))
    if assessment.nothing_checked:
        reasons.append(Reason(f"nothing was checked: {assessment.why_nothing}"))
    made = {check.order for check in assessment.checks if check.grade is Grade.HOLD}
    made |= {(name, WITHDRAWAL) for name in withdrawn}
    return Decision(
        tuple(reasons),
        assessment,
        tuple(one for one in stand if one.holds and one.subject in made),
        tuple(one for one in stand if one.state == "ending soon"),
        tuple(one for one in stand if not one.in_order),
        tuple(one for one in read if not one.in_order),
    )


def _unreadable(assessment: Assessment) -> Iterator[Reason]:
    for complaint in assessment.complaints:
        yield Reason(f"could not be read: {complaint}", code=_UNREADABLE)


def _not_run(assessment: Assessment) -> Iterator[Reason]:
    for check in assessment.checks:
        if check.could_not_run:
            yield Reason(f"{check.component} {check.rule.name}: {check.says}", code=_NOT_RUN)


def _holds(assessment: Assessment, stand: Sequence[Standing]) -> Iterator[Reason]:
    accepted = {one.subject for one in stand if one.holds}
    for check in assessment.checks:
        hold = check.grade is Grade.HOLD and check.stands_in_the_way is not None and not check.could_not_run
        if hold and check.order not in accepted:
            related = [one for one in stand if one.subject == check.order]
            details = tuple(_why_not(one) for one in related) or ("no concession is entered for it",)
            word = "hold" if check.outcome == "finding" else "hold, not assessed"
            yield Reason(f"{word}: {check.component} {check.rule.name}: {check.says}", details, hold=check)


def _withdrawals(
    withdrawn: Iterable[Withdrawal], stand: Sequence[Standing], settings: Settings
) -> Iterator[Reason]:
    """A withdrawal is accepted when for each family whose safety checks are lost a competent reviewer accepts it."""
    for one in withdrawn:
        entries = [each for each in stand if each.subject == (one.component, WITHDRAWAL)]
        held = [reviewer_called(each.concession.accepted_by, settings) for each in entries if each.holds]
        missing = one.families.difference(*(each.competent_for for each in held if each is not None))
        if missing:
            details = [_why_not(each) for each in entries if not each.holds]
            if any(each.holds for each in entries):
                details.append(f"no reviewer who is competent for {', '.join(sorted(missing))} accepts it")
            told = tuple(details) or ("no concession of its withdrawal is entered",)
            yield Reason(f"withdrawn: {one.component}: {one.says}", told, withdrawn=one.component)


def _drawings(
    assessment: Assessment, read: Sequence[ReadingStanding], settings: Settings
) -> Iterator[Reason]:
    """The drawings that nobody read as they are, where the design is released; whichever families are used."""
    if settings.stage != "released":
        return
    stand = {(one.part, one.reading.number): one for one in read}
    for state in drawings_named(assessment):
        entry = stand.get((state.component, state.reading.number)) if state.reading else None
        if state.word != "read":
            yield Reason(f"drawing not read: {state.component}: {state.says}")
        elif entry is not None and not entry.holds:
            told = f"{entry.reading.number} is {entry.state}: {'; '.join(entry.reasons)}"
            yield Reason(f"drawing not read: {state.component}: {state.file}", (told,))


def _why_not(standing: Standing) -> str:
    return f"{standing.concession.number} is {standing.state}: {'; '.join(standing.reasons)}"


# Against a revision


def _judged_against(
    paths: Sequence[Path],
    loaded: Loaded,
    today: dt.date,
    against: str,
    folder: Path,
    kept: KeptFolder | None,
    workers: Workers,
) -> Decision:
    before = before_at(paths, against, loaded, folder, workers)
    try:
        before.opened  # noqa: B018  # here, so that the families it needs are known to be there
    except FamilyError as problem:
        reason = Reason(str(problem), code=problem.exit_code)
        return Decision((reason,), to_review=before.changes_of_settings, against=against)
    now = open_repository([before.root], loaded.kinds).design
    paths = [*paths, *before.moved(now, paths)]
    decision = _judged(paths, loaded, today, before, kept=kept, workers=workers)
    to_review = (*before.changes_of_settings, *before.changes_of_duties(now))
    if before.has_same_basis(now):
        listed = tuple(before.listed(decision.assessment)) if decision.assessment else ()
    else:
        own, decision = decision, _judged(paths, loaded, today, before, before.basis, kept, workers)
        judged = own.assessment if own.assessment and own.assessment.design else decision.assessment
        listed = tuple(before.listed(judged)) if judged else ()
        decision = withheld_by_either(decision, own, against)
    return replace(decision, to_review=(*to_review, *listed), against=against)
