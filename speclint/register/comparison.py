"""A change judged twice: on the design basis of the revision before it, and on its own."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from contextlib import AbstractContextManager
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, TypeAlias

from speclint.checking import (
    Assessment,
    Check,
    DesignChanges,
    Processes,
    assess,
    changed_specs,
    new_and_cleared,
)
from speclint.errors import SettingsError, replace
from speclint.register.loosened import changed_checks, changed_words
from speclint.register.standing import Surroundings
from speclint.register.withdrawals import Withdrawal, withdrawals, withdrawn_parts
from speclint.repository import (
    FILE_NAME,
    Basis,
    Design,
    InGit,
    Settings,
    Snapshot,
    at_revision,
    changes_of_basis,
    changes_of_duties,
    chosen,
    drawn_otherwise,
    find_root,
    ignored_files,
    lay_out,
    load_settings,
    removed_specs,
    touched_specs,
)
from speclint.specs import Component, Spec, Stated

if TYPE_CHECKING:
    from speclint.families import Loaded
    from speclint.rules import Rule


#: What makes the processes that share the work of one design.
Workers: TypeAlias = Callable[[], AbstractContextManager[Processes]]


@dataclass(frozen=True)
class Before:
    """A design repository as it was at a revision, laid out in a folder."""

    root: Path
    revision: str
    snapshot: Snapshot
    folder: Path
    settings: Settings
    loaded: Loaded = field(repr=False)
    workers: Workers = field(default=Processes, repr=False)
    rules: Sequence[Rule] | None = field(default=None, repr=False)
    _made: dict[frozenset[str], tuple[Check, ...]] = field(default_factory=dict, repr=False, compare=False)

    @cached_property
    def opened(self) -> Assessment:
        """The repository as it was, with nothing checked yet.

        :raises FamilyError: when a family that the settings then required is absent.
        """
        return assess([self.folder], self.loaded, (), drawing_files=InGit(self.snapshot))

    @property
    def design(self) -> Design:
        """The design as it was."""
        assert self.opened.design is not None  # as its settings could be read
        return self.opened.design

    def checks_of(self, names: Collection[str]) -> tuple[Check, ...]:
        """Every check of some components of the design as it was."""
        wanted = frozenset(names)
        if wanted and wanted not in self._made:
            with self.workers() as processes:
                found = assess(
                    [self.folder],
                    self.loaded,
                    self.rules,
                    processes=processes,
                    only=lambda *_: wanted,
                    drawing_files=InGit(self.snapshot),
                )
            self._made[wanted] = found.checks
        return self._made.get(wanted, ())

    @property
    def signers(self) -> Path:
        """The file of signers as it was."""
        return self.folder / self.settings.signers_file

    @cached_property
    def basis(self) -> Basis:
        """What the design was judged by; files that only the change names as materials are no specs on it either."""
        assert self.opened.basis is not None  # as its settings could be read
        new, _ = load_settings(self.root)
        files = self.settings.materials if new is None else (*self.settings.materials, *new.materials)
        return replace(self.opened.basis, settings=self.settings.model_copy(update={"materials": files}))

    @cached_property
    def ignored(self) -> frozenset[str]:
        """The files of the work tree that git ignores."""
        return ignored_files(self.root)

    @cached_property
    def changes_of_settings(self) -> tuple[str, ...]:
        """What the change does to settings, signers and materials, in words."""
        new, _ = load_settings(self.root)
        return tuple(changes_of_basis(self.root, self.snapshot, self.folder, self.settings, new))

    def changes_of_duties(self, now: Design) -> tuple[str, ...]:
        """What the change does to the duties, in words."""
        return tuple(changes_of_duties(self.design, now))

    def has_same_basis(self, now: Design) -> bool:
        """Whether the change leaves the design basis as it was."""
        changed = self.changes_of_settings or self.changes_of_duties(now)
        return not changed and not self.basis.gives_other_duties(now)

    def listed(self, now: Assessment) -> Iterator[str]:
        """What else the change does that a reviewer must see."""
        if now.design is not None:
            yield from removed_specs(self.design, now.design)
            yield from changed_words(self.design, now.design)
            concerned = self._concerned(now, now.design)
            yield from changed_checks(self.checks_of(concerned), now.checks)

    def changes(self, now: Assessment) -> DesignChanges | None:
        """What changed since; None where the design cannot be read now."""
        if now.design is None:
            return None
        then, is_now = self.design.files.keys(), now.design.files.keys()
        removed = then - is_now
        asked = (self._concerned(now, now.design) & now.design.selected) | removed
        of_asked = [one for one in now.checks if one.component in asked or one.component not in then]
        new, cleared = new_and_cleared(self.checks_of(asked & then), of_asked)
        return DesignChanges(
            self.revision,
            tuple(sorted(is_now - then)),
            tuple(sorted(removed)),
            changed_specs(self.design, now.design),
            new,
            cleared,
        )

    def _concerned(self, now: Assessment, design: Design) -> set[str]:
        """The components whose checks may have come out otherwise before the change."""
        if not self.has_same_basis(design):
            return set(self.design.specs)
        touched = touched_specs(self.design, design) | drawn_otherwise(
            (self.design, self.opened.register), (design, now.register)
        )
        return {check.component for check in now.checks if not touched.isdisjoint(check.consulted.ids)}

    def withdrawn(self, now: Design, paths: Sequence[Path] = ()) -> dict[str, Withdrawal]:
        """The components that the change withdraws, of those whose specs lay where some paths point."""
        names = {
            name
            for name in withdrawn_parts(self.design, now, self.ignored)
            if not paths or chosen(self.root / self.design.files[name], paths)
        }
        return withdrawals(self.checks_of(names), self.design, now, self.ignored)

    def moved(self, now: Design, paths: Sequence[Path]) -> list[Path]:
        """Where the components are now whose specs lay where some paths point."""
        names = [name for name, file in self.design.files.items() if chosen(self.root / file, paths)]
        files = {now.files[name] for name in names if name in now.files}
        return [path for file in sorted(files) if not chosen(path := self.root / file, paths)]

    def prepared(self, now: Design) -> dict[str, tuple[str, ...]]:
        """Who prepared each component before the change.

        A component under a new name may be one of its kind that is gone: whoever prepared that, prepared this.
        """
        found = {name: _preparers(spec) for name, spec in self.design.specs.items()}
        kinds = {name: spec.kind for name, spec in now.specs.items()}
        gone = [spec for name, spec in self.design.specs.items() if kinds.get(name) != spec.kind]
        for name in now.specs.keys() - self.design.specs.keys():
            alike = [one for one in gone if one.kind == kinds[name]]
            found[name] = tuple(sorted({who for one in alike for who in _preparers(one)}))
        return found


def before_at(
    paths: Sequence[Path],
    revision: str,
    loaded: Loaded,
    folder: Path,
    workers: Workers = Processes,
    rules: Sequence[Rule] | None = None,
) -> Before:
    """Lay out the repository that some paths lie in as it was at a revision, to be checked by all rules or by some.

    :raises RevisionError: where git has no such revision.
    :raises SettingsError: where there is nothing to judge by at that revision.
    """
    root = find_root(paths)
    snapshot = at_revision(root, revision)
    if snapshot.read(FILE_NAME) is None:
        raise SettingsError(f"{FILE_NAME} does not exist at {revision}, so that there is nothing to judge by")
    lay_out(snapshot, folder)
    settings, complaints = load_settings(folder)
    if settings is None or complaints:
        raise SettingsError(f"at {revision}: " + "; ".join(str(one) for one in complaints))
    return Before(root, revision, snapshot, folder, settings, loaded, workers, rules)


def _preparers(spec: Spec) -> tuple[str, ...]:
    if isinstance(spec, Component) and isinstance(spec.prepared_by, Stated):
        return (spec.prepared_by.value,)
    return ()


def changed_since(
    before: Before, now: Surroundings, design: Design, paths: Sequence[Path], *, on_its_basis: bool
) -> Surroundings:
    """What concessions are compared with, where a design is judged as a change of what there was before."""
    return replace(
        now,
        prepared=before.prepared(design),
        withdrawn=before.withdrawn(design, paths),
        signers=before.signers if on_its_basis else now.signers,
        signers_are="" if on_its_basis else now.signers_are,
    )
