"""Names of families in the settings that differ little from one that is installed, and so are misspelt."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from speclint.errors import Complaint, Location, nearest
from speclint.families import Loaded
from speclint.repository import FILE_NAME, Settings


def misspelt_families(settings: Settings, loaded: Loaded) -> Iterator[Complaint]:
    """A complaint for each name, of the families to leave out or of those that a reviewer is competent for, that is
    near to that of an installed family. Any other name may be that of a family installed elsewhere.
    """
    installed = {*(family.name for family in loaded.families), *loaded.left_out} - {*loaded.absent}
    for line, key, names in _named(settings):
        for name in names:
            meant = "" if name in installed else nearest(name, installed)
            if meant:
                where = Location(FILE_NAME, line, key)
                yield Complaint(where, "no family of this name is installed", f'"{name}"', f'"{meant}"')


def _named(settings: Settings) -> Iterator[tuple[int, str, Sequence[str]]]:
    """The lists of families in the settings, each with its line and its key."""
    yield settings.families.where.line, "families.leave_out", settings.families.leave_out
    for name, reviewer in settings.reviewers.items():
        yield reviewer.where.line, f"reviewers.{name}.competent_for", reviewer.competent_for
