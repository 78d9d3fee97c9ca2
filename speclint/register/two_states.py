"""Two states of a design held against each other: specs, what they are judged by, margins, findings, concessions."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct, field

from speclint.checking import (
    Assessment,
    CheckSeen,
    KeptFolder,
    MarginChange,
    ValueChange,
    assess,
    changed_specs,
    checks_of_report,
    margin_changes,
    renamed_parts,
    seen,
)
from speclint.errors import DesignError, SettingsError
from speclint.register.comparison import Workers
from speclint.register.opened import surroundings
from speclint.register.standing import Standing, standings
from speclint.repository import (
    FILE_NAME,
    FilesInFolder,
    InGit,
    Settings,
    Snapshot,
    at_revision,
    changes_of_basis,
    find_root,
    lay_out,
)

if TYPE_CHECKING:
    from speclint.families import Loaded
    from speclint.rules import Rule

_REPORT = ".json"


class StateOfDesign(Struct, frozen=True):
    """One state of a design, with its checks.

    ``assessment`` is None where no more is known than what a report of an earlier run says; ``files`` are those that
    it lies in. ``called`` names it in reports.
    """

    called: str
    checks: tuple[CheckSeen, ...]
    assessment: Assessment | None = None
    standing: tuple[Standing, ...] | None = None
    files: Path = field(default_factory=Path)

    @property
    def settings(self) -> Settings:
        """Its settings."""
        found = self.assessment.settings if self.assessment else None
        return found if found is not None else Settings()


class Comparison(Struct, frozen=True):
    """What differs between two states of a design.

    ``renamed`` gives the id now by the id before. ``changed`` are the values of specs that both have, by their ids now,
    ``basis`` is what differs in what the design is judged by, in words. ``margins`` are all checks, the worst change
    first. ``lapsed`` are the concessions that held before and hold no longer, with how they stand now; ``not_compared``
    says what of this could not be compared, and why.
    """

    old: StateOfDesign
    new: StateOfDesign
    added: tuple[str, ...] = ()
    removed: tuple[str, ...] = ()
    renamed: Mapping[str, str] = field(default_factory=dict)
    changed: Mapping[str, tuple[ValueChange, ...]] = field(default_factory=dict)
    basis: tuple[str, ...] = ()
    margins: tuple[MarginChange, ...] = ()
    lapsed: tuple[Standing, ...] = ()
    not_compared: tuple[str, ...] = ()

    @property
    def moved(self) -> tuple[MarginChange, ...]:
        """The checks that came out otherwise."""
        return tuple(one for one in self.margins if one.is_change)

    @property
    def found(self) -> tuple[MarginChange, ...]:
        """What stands in the way now and did not before, or did less gravely; the gravest first."""
        new = (one for one in self.margins if one.is_new)
        return tuple(sorted(new, key=lambda one: -(one.now.grade or 0) if one.now else 0))

    @property
    def cleared(self) -> tuple[MarginChange, ...]:
        """What stood in the way before and does no longer."""
        return tuple(one for one in self.margins if one.is_cleared)

    @property
    def editions(self) -> Mapping[str, tuple[int, int]]:
        """The edition before and now of each rule that is another."""
        pairs = [(one.rule, one.was, one.now) for one in self.margins if one.cause in ("edition", "both")]
        return {rule: (was.edition, now.edition) for rule, was, now in pairs if was and now}

    @property
    def exit_code(self) -> int:
        """2 where something could not be read, 1 where a finding is new or a concession lapsed, else 0."""
        both = [one.assessment for one in (self.old, self.new) if one.assessment is not None]
        if any(check.could_not_run for one in both for check in one.checks):
            return 3
        if any(one.complaints for one in both):
            return 2
        at = self.new.assessment.exit_at if self.new.assessment else None
        grave = [one for one in self.found if at is None or (one.now and (one.now.grade or 0) >= at)]
        return int(bool(grave or self.lapsed))


class Checking(Struct, frozen=True):
    """How the checks of both states are made: by which families and rules, on which day, and who shares the work."""

    loaded: Loaded
    today: dt.date
    workers: Workers
    rules: Sequence[Rule] | None = None
    kept: KeptFolder | None = None


def place_of(called: str, folder: Path) -> Path | Snapshot:
    """Where the state that a word names is: a folder, a report of an earlier run, or a git revision of a repository.

    ``folder`` is the repository whose revisions are meant, or a part of it. Nothing is checked.

    :raises DesignError: for a file that is no report, or a folder in no repository.
    :raises RevisionError: where git has no such revision.
    """
    path = Path(called)
    if path.is_dir() or (path.is_file() and path.suffix.lower() == _REPORT):
        return path
    if path.exists():
        raise DesignError(f"{called}: neither a folder nor a report that ends in {_REPORT}")
    return at_revision(find_root([folder]), called)


def state_called(called: str, folder: Path, scratch: Path, how: Checking) -> StateOfDesign:
    """The state that a word names, as :func:`place_of` finds it, checked as :func:`state_at` does."""
    return state_at(place_of(called, folder), called, folder, scratch, how)


def state_at(
    place: Path | Snapshot, called: str, folder: Path, scratch: Path, how: Checking
) -> StateOfDesign:
    """The state at a place that a word names, checked; a report is read.

    ``folder`` is the part of a revision to be compared, or all of its repository; ``scratch`` is empty, for the files
    of a revision.

    :raises DesignError: for a folder in no repository, and where a revision has nothing in the folder.
    :raises SettingsError: where a state has no settings that can be read.
    :raises TableError: for a report that cannot be read.
    """
    if isinstance(place, Path):
        if place.is_dir():
            return _checked(f"the folder {called}", [place], find_root([place]), None, how)
        return StateOfDesign(f"the report {place.name}", checks_of_report(place))
    if place.read(FILE_NAME) is None:
        raise SettingsError(f"{FILE_NAME} does not exist at {called}, so that there is nothing to judge by")
    lay_out(place, scratch)
    part = folder.resolve().relative_to(place.root)
    if not (scratch / part).exists():
        raise DesignError(f"{called} has nothing in the folder {part.as_posix()}")
    return _checked(called, [scratch / part], scratch, InGit(place), how)


def _checked(
    called: str, paths: Sequence[Path], root: Path, drawing_files: InGit | None, how: Checking
) -> StateOfDesign:
    with how.workers() as processes:
        made = assess(
            paths, how.loaded, how.rules, processes=processes, kept=how.kept, drawing_files=drawing_files
        )
    return state_of(called, made, root, how.today, whole=how.rules is None)


def state_of(
    called: str, made: Assessment, files: Path, today: dt.date, *, whole: bool = True
) -> StateOfDesign:
    """The state of a design that is checked already; how its concessions stand is worked where all rules were run.

    :raises SettingsError: where it has no settings that can be read.
    """
    if made.settings is None:
        raise SettingsError(f"{called}: " + "; ".join(str(one) for one in made.complaints))
    stand = standings(made.register, surroundings(made, today)) if whole else None
    return StateOfDesign(called, tuple(seen(one, made.context) for one in made.checks), made, stand, files)


def compare(old: StateOfDesign, new: StateOfDesign) -> Comparison:
    """Hold two states of a design against each other."""
    if old.assessment is None or new.assessment is None:
        return Comparison(
            old,
            new,
            margins=margin_changes(old.checks, new.checks, {}),
            not_compared=tuple(_only_checks(old, new)),
        )
    before, now = old.assessment.design, new.assessment.design
    assert before is not None  # as the settings of both could be read
    assert now is not None
    then, since = _chosen(old.assessment), _chosen(new.assessment)
    renamed = {was: name for was, name in renamed_parts(before, now).items() if was in then or name in since}
    changed = changed_specs(before, now, renamed)
    return Comparison(
        old,
        new,
        tuple(sorted(since - before.files.keys() - set(renamed.values()))),
        tuple(sorted(then - now.files.keys() - renamed.keys())),
        renamed,
        {name: values for name, values in changed.items() if name in since},
        tuple(changes_of_basis(new.files, FilesInFolder(old.files), old.files, old.settings, new.settings)),
        margin_changes(old.checks, new.checks, renamed),
        tuple(_lapsed(old.standing or (), new.standing or ())),
        ("only some rules were run: concessions are not compared",) if new.standing is None else (),
    )


def _chosen(assessment: Assessment) -> frozenset[str]:
    return assessment.design.selected if assessment.design else frozenset()


def _only_checks(old: StateOfDesign, new: StateOfDesign) -> list[str]:
    reports = [one.called for one in (old, new) if one.assessment is None]
    both = " and ".join(dict.fromkeys(reports))
    return [f"{both}: only checks stand there, so that specs and concessions are not compared"]


def _lapsed(old: Sequence[Standing], new: Sequence[Standing]) -> list[Standing]:
    """What held before and does no longer; one that is gone from the register is told as it was."""
    now = {(one.concession.number, one.component): one for one in new}
    found = []
    for one in old:
        if one.holds:
            then = now.get((one.concession.number, one.component))
            if then is None:
                found.append(_gone(one))
            elif not then.holds and then.state != "replaced":
                found.append(then)
    return found


def _gone(one: Standing) -> Standing:
    return Standing(one.concession, "withdrawn", ("it is no longer in the register",), one.found, one.part)
