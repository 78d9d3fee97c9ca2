"""A repository opened for its register: what it holds, and what its concessions are compared with."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.checking import Assessment, assess
from speclint.errors import SettingsError, replace
from speclint.register.comparison import before_at, changed_since
from speclint.register.reading_standing import ReadingStanding, reading_standings
from speclint.register.standing import Standing, Surroundings, standings
from speclint.repository import Register, Settings, not_regular, open_repository, read_register

if TYPE_CHECKING:
    from speclint.families import Loaded


class Opened(Struct, frozen=True):
    """A repository opened to enter or sign something: its register, and what concessions are compared with."""

    root: Path
    settings: Settings
    register: Register
    surroundings: Surroundings

    @property
    def file(self) -> Path:
        """The file of the register."""
        return self.root / self.register.file

    def read_again(self) -> Opened:
        """The same with the register as it now is: read under its lock, as another run may have changed it."""
        return replace(self, register=_readable(read_register(self.root, self.settings)))


def stand_of(
    folder: Path, loaded: Loaded, today: dt.date
) -> tuple[Register, tuple[Standing, ...], tuple[ReadingStanding, ...]]:
    """The register of a repository, and the state today of each of its concessions and of its readings of drawings.

    :raises SettingsError: where the settings cannot be read: then no entry can be judged.
    """
    assessment = assess([folder], loaded, ())
    if assessment.settings is None:
        raise SettingsError("; ".join(str(one) for one in assessment.complaints))
    register, compared = assessment.register, surroundings(assessment, today)
    return register, standings(register, compared), reading_standings(register, compared)


def opened(folder: Path, loaded: Loaded, today: dt.date) -> Opened:
    """Open a repository for its register; nothing is checked yet.

    :raises DesignError: where the folder lies in no repository.
    :raises SettingsError: where the settings or the register cannot be read: then nothing can be accepted.
    """
    assessment = assess([folder], loaded, ())
    return _opened(assessment, surroundings(assessment, today))


def opened_as_change(folder: Path, loaded: Loaded, today: dt.date, against: str, place: Path) -> Opened:
    """Open a repository on the design basis of a revision, to accept what a change since then does.

    ``place`` is an empty folder for the design as it was. Raises as for a repository, and RevisionError where git
    has no such revision.
    """
    before = before_at([folder], against, loaded, place)
    now = open_repository([folder], loaded.kinds).design
    same = before.has_same_basis(now)
    assessment = assess([folder], loaded, (), None if same else before.basis)
    compared = changed_since(
        before, surroundings(assessment, today), now, [before.root], on_its_basis=not same
    )
    if assessment.design is not None:  # what is withdrawn on either design basis can be accepted
        withdrawn = {**before.withdrawn(assessment.design), **compared.withdrawn}
        compared = replace(compared, withdrawn=withdrawn)
    return _opened(assessment, compared)


def _opened(assessment: Assessment, compared: Surroundings) -> Opened:
    root, register = assessment.root, assessment.register
    if what := not_regular(root, register.file):
        raise SettingsError(f"{register.file}: this is {what}, which is neither read nor written")
    return Opened(root, compared.settings, _readable(register), compared)


def _readable(register: Register) -> Register:
    if register.complaints:
        raise SettingsError("; ".join(str(one) for one in register.complaints))
    return register


def surroundings(assessment: Assessment, today: dt.date, signers: Path | None = None) -> Surroundings:
    """What concessions are compared with after an assessment whose settings could be read."""
    if assessment.context is None or assessment.settings is None:
        raise SettingsError("; ".join(str(one) for one in assessment.complaints))
    return Surroundings(
        assessment.context,
        assessment.settings,
        assessment.loaded,
        signers or assessment.root / assessment.settings.signers_file,
        today,
        {check.order: check for check in assessment.checks},
        "" if signers else not_regular(assessment.root, assessment.settings.signers_file),
    )
