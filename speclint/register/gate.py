"""The gate: it withholds release unless everything that it requires was found in order.

It withholds while a hold has no valid concession, something could not be read, a family that is required did
not load, or a rule could not be run; and where nothing was checked at all. Judged against a git revision, it
takes settings, reviewers and signers from there, so that a change cannot loosen the gate that judges it; where
the change has settings of its own, these must release it too.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.checking import Assessment, Check, Processes, assess
from speclint.errors import FamilyError, SettingsError, SpeclintError
from speclint.register.entering import surroundings
from speclint.register.standing import Standing, standings
from speclint.repository import (
    FILE_NAME,
    Settings,
    at_revision,
    changes_of_basis,
    find_root,
    lay_out,
    load_settings,
    scratch_folder,
)
from speclint.rules import Grade

if TYPE_CHECKING:
    from speclint.families import Loaded

_WITHHELD, _UNREADABLE, _NOT_RUN = 1, 2, 3  # exit codes of the program


@dataclass(frozen=True)
class Reason:
    """One reason to withhold: in words, with details, and the exit code for it."""

    says: str
    details: tuple[str, ...] = ()
    code: int = _WITHHELD
    hold: Check | None = None


@dataclass(frozen=True)
class Decision:
    """Released when there is no reason against it.

    ``accepted`` are the concessions of the holds that are released, ``ending`` all that end soon, ``ended``
    those that no longer count, of any grade; ``to_review`` is what the change does to the gate itself.
    """

    reasons: tuple[Reason, ...]
    assessment: Assessment | None = None
    accepted: tuple[Standing, ...] = ()
    ending: tuple[Standing, ...] = ()
    ended: tuple[Standing, ...] = ()
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
    paths: Sequence[Path], load: Callable[[], Loaded], today: dt.date, against: str | None = None
) -> Decision:
    """Decide whether the specs at some paths may be released; any error withholds them."""
    try:
        loaded = load()
        if against is None:
            return _judged(paths, loaded, today)
        with scratch_folder() as folder:
            return _judged_against(paths, loaded, today, against, folder)
    except SpeclintError as problem:
        return Decision((Reason(str(problem), code=problem.exit_code),), against=against or "")


def _judged(
    paths: Sequence[Path],
    loaded: Loaded,
    today: dt.date,
    settings: Settings | None = None,
    signers: Path | None = None,
) -> Decision:
    try:
        with Processes() as processes:
            assessment = assess(paths, loaded, settings=settings, processes=processes)
        rules = assessment.loaded.rules  # every one, so that no family is there that is not whole
    except FamilyError as problem:
        return Decision((Reason(str(problem), code=problem.exit_code),))
    if assessment.settings is None:
        return Decision(tuple(_unreadable(assessment)), assessment)
    stand = standings(assessment.register, surroundings(assessment, today, signers))
    reasons = [*_unreadable(assessment), *_not_run(assessment), *_holds(assessment, stand)]
    if not rules:
        reasons.insert(0, Reason("no family of rules is installed", code=_NOT_RUN))
    if not assessment.checks:
        reasons.append(Reason("nothing was checked: there is no spec, or no rule applies to it"))
    made = {check.order for check in assessment.checks if check.grade is Grade.HOLD}
    return Decision(
        tuple(reasons),
        assessment,
        tuple(one for one in stand if one.holds and one.subject in made),
        tuple(one for one in stand if one.state == "ending soon"),
        tuple(one for one in stand if not one.in_order),
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


def _why_not(standing: Standing) -> str:
    return f"{standing.concession.number} is {standing.state}: {'; '.join(standing.reasons)}"


# Against a revision


def _judged_against(
    paths: Sequence[Path], loaded: Loaded, today: dt.date, against: str, folder: Path
) -> Decision:
    root = find_root(paths)
    before = at_revision(root, against)
    if before.read(FILE_NAME) is None:
        raise SettingsError(f"{FILE_NAME} does not exist at {against}, so that there is nothing to judge by")
    lay_out(before, folder)
    old, complaints = load_settings(folder)
    if old is None or complaints:
        raise SettingsError(f"at {against}: " + "; ".join(str(one) for one in complaints))
    new, _ = load_settings(root)
    materials = old.materials if new is None else new.materials
    judged_by = old.model_copy(update={"materials": materials})
    decision = _judged(paths, loaded, today, judged_by, folder / old.signers_file)
    to_review = tuple(changes_of_basis(root, before, folder, old, new))
    own = (f"{FILE_NAME} ", f"{old.signers_file} ")
    if new is None or any(line.startswith(own) for line in to_review):
        decision = _withheld_by_either(decision, _judged(paths, loaded, today))
    return replace(decision, to_review=to_review, against=against)


def _withheld_by_either(old: Decision, new: Decision) -> Decision:
    """Withheld where either withholds; reasons that only the settings of the change give are marked."""
    said = {reason.says for reason in old.reasons}
    more = tuple(
        replace(reason, says=f"under the settings of the change: {reason.says}")
        for reason in new.reasons
        if reason.says not in said
    )
    return replace(old, reasons=(*old.reasons, *more))
