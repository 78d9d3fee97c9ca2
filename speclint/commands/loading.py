"""The families of one run of a command, with the report writers of speclint itself."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.commands.streams import complain

if TYPE_CHECKING:
    from speclint.checking import KeptFolder
    from speclint.families import Loaded
    from speclint.repository import Design


def loaded_families() -> Loaded:
    """Every installed family, and what speclint itself hands over by the same hooks.

    A family that cannot be used is refused by whoever uses what is loaded, unless the settings leave it out.
    """
    from speclint.families import find_families
    from speclint.reports import hooks

    return find_families(built_in=hooks)


def families_for(paths: Sequence[Path]) -> Loaded:
    """The same without those that the settings above some paths leave out.

    :raises FamilyError: when another cannot be used.
    """
    from speclint.repository import families_left_out

    return loaded_families().without(families_left_out(paths)).sound()


def design_at(paths: Sequence[Path], loaded: Loaded, kept: KeptFolder | None) -> Design:
    """The design at some paths, read and not checked: what is asked about it is refused before the checks are run.

    :raises DesignError: where its settings cannot be read, and for paths that are not of one repository.
    """
    from speclint.checking import assess
    from speclint.errors import DesignError

    design = assess(paths, loaded, (), kept=kept).design
    if design is None:
        raise DesignError("the settings could not be read: speclint check says why")
    return design


def refuse_unknown_kind(word: str, kinds: Collection[str]) -> None:
    """Refuse a word that is no kind of component, with those it may stand for.

    :raises SettingsError: for such a word.
    """
    if word not in kinds:
        from speclint.errors import SettingsError, one_of

        raise SettingsError(f"no kind is called {word}; write {one_of(word, kinds)}")


def kept_folder(afresh: bool) -> KeptFolder | None:
    """Where results of earlier runs are kept; where they cannot be, that is said. None where all is to be made anew."""
    if afresh:
        return None
    from speclint.checking import KeptFolder, usual_folder

    folder = KeptFolder(usual_folder())
    if folder.why_not:
        complain(f"no results of earlier runs are used, and none are kept: {folder.why_not}")
    return folder
