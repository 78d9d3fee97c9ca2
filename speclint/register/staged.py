"""The check before a commit: of what is staged, and only of what it can have changed.

A component is checked when its spec is staged, when it is linked to one that is, directly or through others,
or when one of its checks consulted one that is. Everything is read from git's index into a folder of its own.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct, field

from speclint.checking import Assessment, KeptFolder, Processes, Touched, assess
from speclint.errors import Complaint, DesignError, RevisionError, replace
from speclint.register.comparison import Workers
from speclint.register.opened import surroundings
from speclint.register.standing import Standing, standings
from speclint.repository import (
    FILE_NAME,
    Changes,
    Design,
    InGit,
    at_revision,
    chosen,
    find_root,
    ids_stated,
    is_toml,
    lay_out,
    scratch_folder,
    staged,
    staged_changes,
)
from speclint.rules import Rule

if TYPE_CHECKING:
    from speclint.families import Loaded


class StagedAssessment(Struct, frozen=True):
    """What the check of a commit found: ``files`` are staged, ``accepted`` the standing concessions that apply.

    ``assessment`` holds the checks that are left, without those accepted. ``removed`` are the TOML files that the
    commit takes away: what they held is no longer checked. ``moved`` are those whose specs all stand in other files
    now, with the names of these.
    """

    assessment: Assessment
    files: tuple[str, ...]
    accepted: tuple[Standing, ...]
    removed: tuple[str, ...] = ()
    moved: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


def assess_staged(
    paths: Sequence[Path],
    loaded: Loaded,
    today: dt.date,
    rules: Iterable[Rule] | None = None,
    kept: KeptFolder | None = None,
    workers: Workers = Processes,
) -> StagedAssessment:
    """Check what is staged in the design repository that some paths lie in; nothing in the work tree is touched.

    Results of earlier runs that ``kept`` holds, and that still hold, are taken from it. ``workers`` share the work.

    :raises DesignError: for paths that are not of one repository, or one whose settings are not in git.
    :raises RevisionError: where git is absent, or what is staged cannot be read.
    :raises FamilyError: when a family that the settings require is absent.
    """
    root = find_root(paths)
    snapshot = staged(root)
    if FILE_NAME not in snapshot.blobs:
        raise DesignError(f"{root}: git does not have {FILE_NAME} in what is staged: git add {FILE_NAME}")
    files = staged_changes(root)
    change = _Change(root, files, paths)
    with scratch_folder() as folder, workers() as processes:
        copy = folder / root.name
        lay_out(snapshot, copy)
        found = assess(
            [copy],
            loaded,
            rules,
            processes=processes,
            only=change.may_concern,
            kept=kept,
            drawing_files=InGit(snapshot),
        )
        if found.design is not None:
            found = change.narrowed(found, found.design)
        accepted = _accepted(found, copy, today)
    subjects = {standing.subject for standing in accepted}
    left = tuple(check for check in found.checks if check.order not in subjects)
    left_out = len(found.checks) - len(left)
    gone = tuple(file for file in files if is_toml(file) and file not in snapshot.blobs)
    moved = _moved(root, gone, found.design, loaded) if gone and found.design is not None else {}
    removed = tuple(file for file in gone if file not in moved)
    return StagedAssessment(
        replace(found, root=root, checks=left, accepted=left_out), files, accepted, removed, moved
    )


def _moved(root: Path, gone: Iterable[str], design: Design, loaded: Loaded) -> dict[str, tuple[str, ...]]:
    """Of the files that the last commit has and what is staged has not, those whose specs all stand in others now."""
    before, found = at_revision(root, "HEAD"), {}
    for file in gone:
        try:
            content = before.read(file)
        except RevisionError:  # a link, or larger than any spec
            continue
        ids = ids_stated(content or b"", file, loaded.kinds)
        if ids and ids <= design.files.keys():
            found[file] = tuple(sorted({design.files[one] for one in ids}))
    return found


class _Change:
    """What is staged, and what of a design it can have changed: known once the design is read."""

    def __init__(self, root: Path, files: tuple[str, ...], paths: Sequence[Path]) -> None:
        self._root, self._files, self._paths = root, files, paths
        self._touched: Changes | None = None

    def may_concern(self, design: Design, loaded: Loaded) -> Touched:
        """The components that it can have changed."""
        touched = self._touched = Changes(self._root, self._files, design, loaded.kinds)
        within = self._within(design)
        return Touched(touched.dependents & within, touched.perhaps & within, touched.ids)

    def narrowed(self, found: Assessment, design: Design) -> Assessment:
        """What was found, but for checks that consulted nothing of the change."""
        touched = self._touched
        assert touched is not None  # as a design was read
        within, dependents = self._within(design), touched.dependents
        checks = tuple(
            one
            for one in found.checks
            if one.component in dependents or not touched.ids.isdisjoint(one.consulted.ids)
        )
        selected = frozenset(check.component for check in checks) | (dependents & within & set(design.specs))
        common = {FILE_NAME, *design.settings.materials}
        known = {file for name in selected for file in design.files_of(name)} | touched.files | common
        hidden = tuple(
            one
            for one in design.passed_over
            if one.file in touched.files and chosen(self._root / one.file, self._paths)
        )
        changed = touched.files & {design.files[name] for name in within}
        looked_at = design.selected & set(design.specs)
        return replace(
            found,
            design=replace(design, selected=selected, passed_over=hidden),
            checks=checks,
            complaints=tuple(_of_files(found.complaints, known)),
            touched=bool(changed or hidden or (common & touched.files and looked_at)),
        )

    def _within(self, design: Design) -> frozenset[str]:
        return frozenset(
            name for name, file in design.files.items() if chosen(self._root / file, self._paths)
        )


def _of_files(complaints: Sequence[Complaint], files: Collection[str]) -> Iterator[Complaint]:
    return (complaint for complaint in complaints if complaint.where.file in files)


def _accepted(found: Assessment, folder: Path, today: dt.date) -> tuple[Standing, ...]:
    """The concessions, as staged, that hold and whose findings were found."""
    if found.settings is None or found.context is None:
        return ()
    register = found.register
    made = {check.order for check in found.checks}
    if not any((one.component, one.rule) in made for one in register.concessions):
        return ()
    return tuple(
        standing
        for standing in standings(register, surroundings(found, today, folder / found.settings.signers_file))
        if standing.holds and standing.subject in made
    )
