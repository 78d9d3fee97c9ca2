"""The check before a commit: of what is staged, and only of what it can have changed.

A component is checked when its spec is staged, when it is linked to one that is, directly or through others,
or when one of its checks consulted one that is. Everything is read from git's index into a folder of its own.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.checking import Assessment, Check, assess, check_component
from speclint.errors import Complaint, DesignError
from speclint.register.entering import surroundings
from speclint.register.standing import Standing, standings
from speclint.repository import (
    FILE_NAME,
    Changes,
    chosen,
    find_root,
    is_toml,
    lay_out,
    scratch_folder,
    staged,
    staged_changes,
)
from speclint.rules import Rule

if TYPE_CHECKING:
    from speclint.families import Loaded


@dataclass(frozen=True)
class StagedAssessment:
    """What the check of a commit found: ``files`` are staged, ``accepted`` the standing concessions that apply.

    ``assessment`` holds the checks that are left, without those accepted. ``removed`` are the TOML files that the
    commit takes away: what they held is no longer checked.
    """

    assessment: Assessment
    files: tuple[str, ...]
    accepted: tuple[Standing, ...]
    removed: tuple[str, ...] = ()


def assess_staged(
    paths: Sequence[Path], loaded: Loaded, today: dt.date, rules: Iterable[Rule] | None = None
) -> StagedAssessment:
    """Check what is staged in the design repository that some paths lie in; nothing in the work tree is touched.

    :raises DesignError: for paths that are not of one repository, or one whose settings are not in git.
    :raises RevisionError: where git is absent, or what is staged cannot be read.
    :raises FamilyError: when a family that the settings require is absent.
    """
    root = find_root(paths)
    snapshot = staged(root)
    if FILE_NAME not in snapshot.blobs:
        raise DesignError(f"{root}: {FILE_NAME} is neither committed nor staged")
    files = staged_changes(root)
    with scratch_folder() as folder:
        copy = folder / root.name
        lay_out(snapshot, copy)
        found = assess([copy], loaded, ())
        if found.context is not None and found.design is not None and found.settings is not None:
            found = _checked(found, Changes(root, files, found.design, found.loaded.kinds), paths, rules)
        accepted = _accepted(found, copy, today)
    subjects = {standing.subject for standing in accepted}
    left = tuple(check for check in found.checks if check.order not in subjects)
    left_out = len(found.checks) - len(left)
    removed = tuple(file for file in files if is_toml(file) and file not in snapshot.blobs)
    return StagedAssessment(
        replace(found, root=root, checks=left, accepted=left_out), files, accepted, removed
    )


def _checked(
    found: Assessment, touched: Changes, paths: Sequence[Path], rules: Iterable[Rule] | None
) -> Assessment:
    design, context = found.design, found.context
    assert design is not None  # as the caller has seen
    assert context is not None
    if rules is None:
        context.outcomes = {}  # all rules of each component are run, so that rules that review others can
    root = find_root(paths)
    within = frozenset(name for name, file in design.files.items() if chosen(root / file, paths))
    looked_at = replace(design, selected=(touched.dependents | touched.perhaps) & within)
    kinds = {part.kind for part in looked_at.parts()}
    applied = found.loaded.rules_for(kinds) if rules is None else tuple(rules)
    checks: list[Check] = []
    for names, keep in ((touched.dependents, _every), (touched.perhaps, _consults(touched.ids))):
        part = replace(design, selected=names & within)
        checks += [
            check for one in part.parts() for check in check_component(one, applied, context) if keep(check)
        ]
    checks.sort(key=lambda check: check.order)
    selected = frozenset(check.component for check in checks) | (
        touched.dependents & within & set(design.specs)
    )
    common = {FILE_NAME, *design.settings.materials}
    known = {file for name in selected for file in design.files_of(name)} | touched.files | common
    hidden = tuple(
        one for one in design.passed_over if one.file in touched.files and chosen(root / one.file, paths)
    )
    changed = touched.files & {design.files[name] for name in within}
    return replace(
        found,
        design=replace(design, selected=selected, passed_over=hidden),
        checks=tuple(checks),
        complaints=tuple(_of_files(found.complaints, known)),
        touched=bool(changed or hidden or (common & touched.files and looked_at.selected)),
    )


def _every(_check: Check) -> bool:
    return True


def _consults(ids: frozenset[str]) -> Callable[[Check], bool]:
    return lambda check: bool(check.consulted & ids)


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
