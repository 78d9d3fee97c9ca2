"""The specs of a repository whose index is kept: what has changed is read, and the rest when it is asked for."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from speclint.repository.all_specs import ReadSpecs, all_read, broken_links, loops
from speclint.repository.digests import state_of
from speclint.repository.index import Index, Indexed, indexed
from speclint.repository.kept_index import Kept, Remembered, Row, Seals, digest_of
from speclint.repository.lazy_specs import LazySpecs
from speclint.repository.neighbours import HeldAgainst, Neighbours
from speclint.repository.reading import Draft, Read, read_drafts, validated
from speclint.repository.regular_files import read_regular
from speclint.repository.taking_over import named_by, taken_over
from speclint.specs import Spec


class _NotAsItWas(Exception):
    """The index does not do: every spec is read, and whatever is wrong is told."""


class Reading:
    """One reading of a repository. ``left_out`` are the families whose kinds the settings leave out."""

    def __init__(
        self,
        root: Path,
        holding: Sequence[str],
        kinds: Mapping[str, type[Spec]],
        remembered: Remembered,
        left_out: Sequence[str],
    ) -> None:
        self._root, self._holding, self._kinds = root, holding, kinds
        self._remembered, self._left_out = remembered, left_out
        self._content: dict[str, bytes] = {}
        self._digests: dict[str, str] = {}

    def specs(self) -> ReadSpecs:
        """The specs: those that have not changed are read when they are asked for."""
        kept = self._remembered.read(self._root.name, self._left_out)
        try:
            self._read_files()
            if kept is None:
                raise _NotAsItWas
            return self._lazily(kept)
        except (_NotAsItWas, OSError):
            pass
        found = all_read(self._root, self._holding, self._kinds, self._content)
        if not found.complaints and len(self._digests) == len(self._holding):
            seals = Seals(found.index, found.files, self._digests, found.alike)
            self._write({}, found, found.against, seals)
        return found

    def _read_files(self) -> None:
        for file in self._holding:
            content = self._content[file] = read_regular(self._root / file)
            self._digests[file] = digest_of(content)

    def _lazily(self, kept: Kept) -> ReadSpecs:
        rows, changed = self._as_kept(kept)
        drafts = {file: self._drafts(file) for file in changed}
        files = self._files(rows, drafts)
        self._drop_taken_over(rows, drafts, files)
        fresh = self._fresh(drafts, files)
        entries = {
            name: indexed(fresh[name]) if name in fresh else rows[file][name].entry
            for name, file in files.items()
        }
        alike = {name: rows[file][name].like for name, file in files.items() if name not in fresh}
        alike |= {name: named_by(one) for some in drafts.values() for name, one in some.items()}
        alike = {name: other for name, other in alike.items() if other}
        states = {name: row.state for some in rows.values() for name, row in some.items()}
        specs = LazySpecs(self._root, self._kinds, self._content, files, entries, states)
        for name, spec in fresh.items():
            specs.keep(name, spec)
        index = Index(specs, frozenset())
        if any(broken_links(entries, files)) or loops(entries, files)[1]:
            raise _NotAsItWas
        found = ReadSpecs(specs, files, alike, index)
        self._hold_against(found, fresh, rows)
        return found

    def _as_kept(self, kept: Kept) -> tuple[dict[str, dict[str, Row]], list[str]]:
        """What is kept of the specs of each file that has not changed, and the other files."""
        rows = {
            file: {row.entry.id: row for row in kept[file][1]}
            for file in self._holding
            if file in kept and kept[file][0] == self._digests[file]
        }
        return rows, [file for file in self._holding if file not in rows]

    def _drafts(self, file: str) -> dict[str, Read]:
        drafts = read_drafts(self._root / file, file, self._kinds, self._content[file])
        if any(not isinstance(one, Draft) or one.complaints for one in drafts):
            raise _NotAsItWas
        found = {one.id: one for one in drafts}
        if len(found) < len(drafts):
            raise _NotAsItWas
        return found

    def _files(
        self, rows: Mapping[str, Mapping[str, Row]], drafts: Mapping[str, Mapping[str, Read]]
    ) -> dict[str, str]:
        """The file of each id, in the order of the files."""
        found: dict[str, str] = {}
        for file in self._holding:
            for name in rows[file] if file in rows else drafts[file]:
                if name in found:
                    raise _NotAsItWas
                found[name] = file
        return found

    def _drop_taken_over(
        self,
        rows: dict[str, dict[str, Row]],
        drafts: dict[str, dict[str, Read]],
        files: Mapping[str, str],
    ) -> None:
        """Have the specs read again that take over from one whose file has changed."""
        for file in list(rows):
            for row in rows[file].values():
                if row.like and self._digests.get(files.get(row.like, "")) != row.like_digest:
                    drafts[file] = self._drafts(file)
                    del rows[file]
                    break

    def _fresh(self, drafts: Mapping[str, Mapping[str, Read]], files: Mapping[str, str]) -> dict[str, Spec]:
        """The specs of the files that have changed."""
        some = {name: one for read in drafts.values() for name, one in read.items()}
        own = list(some)
        for name in own:
            other = named_by(some[name])
            if other and other not in some:
                if other not in files:
                    raise _NotAsItWas
                some |= {one: read for one, read in self._drafts(files[other]).items() if one not in some}
        merged = taken_over(some)
        found = {name: validated(merged[name], self._kinds).spec for name in own}
        if None in found.values():
            raise _NotAsItWas
        return {name: spec for name, spec in found.items() if spec is not None}

    def _hold_against(
        self, found: ReadSpecs, fresh: Mapping[str, Spec], rows: Mapping[str, Mapping[str, Row]]
    ) -> None:
        """Hold against their neighbours the specs that are new, and those whose neighbours have changed."""
        seals = Seals(found.index, found.files, self._digests, found.alike)
        as_they_were = {row.entry.id: row for some in rows.values() for row in some.values()}
        again = [name for name, row in as_they_were.items() if seals.of(row.against) != row.seal]
        neighbours = Neighbours(found.specs, found.files, found.index)
        against: dict[str, HeldAgainst] = {}
        for name in (*fresh, *again):
            complaints, against[name] = neighbours.complaints_of(found.specs[name])
            if complaints:
                raise _NotAsItWas
        if against:
            self._write(as_they_were, found, against, seals)

    def _write(
        self,
        as_they_were: Mapping[str, Row],
        found: ReadSpecs,
        against: Mapping[str, HeldAgainst],
        seals: Seals,
    ) -> None:
        kept: Kept = {file: (digest, []) for file, digest in self._digests.items()}
        for name, file in found.files.items():
            entry: Indexed = found.index.entries[name]
            if name in against:
                other = found.alike.get(name, "")
                seal = seals.of(against[name])
                before = as_they_were.get(name)
                state = before.state if before else state_of(found.specs[name])
                row = Row(entry, other, seals.of_file(other), against[name], seal, state)
            else:
                row = as_they_were[name]
            kept[file][1].append(row)
        self._remembered.write(self._root.name, self._left_out, kept)
