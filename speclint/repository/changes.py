"""Which components a set of staged files can have changed: their own, and whatever is linked to them."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from pathlib import Path

from speclint.repository.design import Design
from speclint.repository.drawing_reading import DrawingReading
from speclint.repository.reading import load_specs
from speclint.repository.register_file import read_register
from speclint.repository.revisions import at_revision, commit_of
from speclint.repository.root_folder import FILE_NAME
from speclint.repository.scratch_folder import scratch_folder
from speclint.specs import Spec


class Changes:
    """Which components a set of staged files can have changed.

    ``ids`` are those of the staged specs, now and in the last commit, the components from which one was unlinked, and
    those of which the file of the drawing or a reading of it is staged; ``dependents`` are these and all that link to
    them, directly or through others.
    """

    def __init__(
        self, root: Path, files: tuple[str, ...], design: Design, kinds: Mapping[str, type[Spec]]
    ) -> None:
        self.files, self._design = frozenset(files), design
        self._linking = _reversed(design)
        common = {FILE_NAME, *design.settings.materials} & self.files
        now = {name for name, file in design.files.items() if file in self.files}
        now |= {name for name, entry in design.index.entries.items() if entry.drawing_file in self.files}
        now |= _read_otherwise(root, design) if design.settings.register_file in self.files else set()
        self.ids = frozenset(design.files) if common else frozenset(now | _before(root, files, kinds, design))
        self.dependents = self._with_dependents(self.ids)

    @property
    def perhaps(self) -> frozenset[str]:
        """Components that may consult a changed one: those that link to the parts to which it is linked."""
        above: set[str] = set()
        entries = self._design.index.entries
        waiting = [name for name in self.ids if name in entries]
        while waiting:
            for link in entries[waiting.pop()].links():
                part = entries.get(link.id)
                if part is not None and part.is_component and part.id not in above:
                    above.add(part.id)
                    waiting.append(part.id)
        return self._with_dependents(above) - self.dependents

    def _with_dependents(self, ids: Collection[str]) -> frozenset[str]:
        found = set(ids)
        waiting = list(ids)
        while waiting:
            more = self._linking.get(waiting.pop(), set()) - found
            found |= more
            waiting += more
        return frozenset(found)


def _reversed(design: Design) -> dict[str, set[str]]:
    """The ids of the specs that link to each id or take over from it, whether or not there is such a spec."""
    linking: dict[str, set[str]] = {}
    for name, other in design.alike.items():
        linking.setdefault(other, set()).add(name)
    for name, entry in design.index.entries.items():
        for link in entry.links():
            linking.setdefault(link.id, set()).add(name)
    return linking


def _before(root: Path, files: tuple[str, ...], kinds: Mapping[str, type[Spec]], design: Design) -> set[str]:
    """The ids that the staged files had in the last commit, and the components that they then were linked to."""
    if commit_of(root, "HEAD") is None:
        return set()
    head = at_revision(root, "HEAD")
    ids: set[str] = set()
    with scratch_folder() as folder:
        no_spec = (FILE_NAME, design.settings.register_file)
        wanted = {file for file in files if file.endswith(".toml") and file not in no_spec}
        head.write_to(folder, lambda file: file in wanted)
        for file in wanted & set(head.blobs):
            for old in load_specs(folder / file, file, kinds):
                ids.add(old.id)
                ids |= _unlinked(old.spec, design) if old.spec else set()
    return ids


def _read_otherwise(root: Path, design: Design) -> set[str]:
    """The components of which the register has other readings of their drawings than in the last commit."""
    now = set(read_register(design.root, design.settings).readings)
    was: set[DrawingReading] = set()
    if commit_of(root, "HEAD") is not None:
        head, file = at_revision(root, "HEAD"), design.settings.register_file
        with scratch_folder() as folder:
            head.write_to(folder, lambda one: one == file)
            was = set(read_register(folder, design.settings).readings)
    return {part for reading in now ^ was for part in reading.parts if part in design.files}


def _unlinked(old: Spec, design: Design) -> set[str]:
    """The components that a spec was linked to, and no longer is."""
    entries = design.index.entries
    now = entries.get(old.id)
    kept = {link.id for link in now.links()} if now else set()
    gone = {link.id for link in old.links()} - kept
    return {name for name in gone if name in entries and entries[name].is_component}
