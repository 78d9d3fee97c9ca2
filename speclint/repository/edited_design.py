"""A design while its files are edited: the text of an editor stands in the place of a file, and only that is read anew.

What has not changed is taken over from the design as it was opened: of a repository of thousands of specs, an edited
text costs the reading of its own specs and of those that are like one of them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from speclint.errors import Complaint, Location, replace
from speclint.repository.all_specs import broken_links, loops
from speclint.repository.design import Design
from speclint.repository.index import Index, Indexed, indexed, linked_at
from speclint.repository.lazy_specs import IndexedSpecs
from speclint.repository.neighbours import Neighbours
from speclint.repository.reading import Draft, Read, read_drafts, validated
from speclint.repository.taking_over import named_by, taken_over
from speclint.repository.toml_files import is_toml
from speclint.repository.unread import unread_files
from speclint.specs import Spec


class EditedDesign:
    """A design with the texts of an editor; ``design`` is the one of now."""

    def __init__(self, opened: Design, kinds: Mapping[str, type[Spec]]) -> None:
        self.design = opened
        self._kinds = kinds
        self._texts: dict[str, bytes] = {}
        self._drafts: dict[str, tuple[Read, ...]] = {}
        self._missing = dict.fromkeys(self._unreadable(opened), "")

    @staticmethod
    def _unreadable(design: Design) -> Iterator[str]:
        return (file for name, file in design.files.items() if name not in design.specs)

    def is_spec(self, file: str) -> bool:
        """Whether a file holds specs, or would if it were saved."""
        own = {one.file for one in self.design.passed_over}
        settings = self.design.settings
        named = {settings.register_file, settings.signers_file, *settings.materials}
        named |= {*settings.made.mappings, *settings.tables.mappings}
        return is_toml(file) and file.rpartition("/")[2] != "speclint.toml" and file not in own | named

    def names_in(self, file: str) -> tuple[str, ...]:
        """The ids of the specs of a file, in their order."""
        return tuple(name for name, one in self.design.files.items() if one == file)

    def edit(self, file: str, text: str | None) -> tuple[Complaint, ...]:
        """Take a text in the place of a file, or the file itself again; returns what is wrong with its specs."""
        if text is None:
            self._texts.pop(file, None)
        else:
            self._texts[file] = text.encode("utf-8", "surrogatepass")
        self._drafts.pop(file, None)
        drafts = self._read(file)
        own = {one.id: one for one in drafts if self._elsewhere(one.id, file) is None}
        complaints = [self._taken(one, file) for one in drafts if one.id not in own]
        before = self.names_in(file)
        others = [name for name, other in self.design.alike.items() if other in before and name not in before]
        loaded = {
            name: validated(one, self._kinds) for name, one in self._resolved({*own, *others}, own).items()
        }
        complaints += [one for name in own for one in loaded[name].complaints]
        read = {name: one.spec for name, one in loaded.items() if one.spec is not None}
        self._put(file, own, {*before, *others}, read)
        complaints += self._beside_others([read[name] for name in own if name in read])
        return tuple(sorted({str(one): one for one in complaints}.values(), key=lambda one: one.order))

    def _read(self, file: str) -> tuple[Read, ...]:
        if file not in self._drafts:
            path = self.design.root / file
            content = self._texts.get(file)
            there = content is not None or path.exists()
            self._drafts[file] = read_drafts(path, file, self._kinds, content) if there else ()
        return self._drafts[file]

    def _elsewhere(self, name: str, file: str) -> str | None:
        other = self.design.files.get(name, file)
        return None if other == file else other

    def _taken(self, one: Read, file: str) -> Complaint:
        said = f"{self._elsewhere(one.id, file)} has the same id"
        line = one.table.where.line if isinstance(one, Draft) else 1
        return Complaint(Location(file, line, "id"), said, f'"{one.id}"', "an id of its own")

    def _resolved(self, wanted: set[str], own: Mapping[str, Read]) -> dict[str, Read]:
        """The drafts of some ids with what they take over from others."""
        some = dict(own)
        waiting = [*wanted]
        while waiting:
            name = waiting.pop()
            if name not in some and (draft := self._draft(name)) is not None:
                some[name] = draft
            other = named_by(some[name]) if name in some else ""
            if other and other not in some:
                waiting.append(other)
        return {name: one for name, one in taken_over(some).items() if name in wanted}

    def _draft(self, name: str) -> Read | None:
        file = self.design.files.get(name)
        return None if file is None else next((one for one in self._read(file) if one.id == name), None)

    def _put(self, file: str, own: Mapping[str, Read], gone: set[str], read: Mapping[str, Spec]) -> None:
        """The design with the specs that were read, in the place of those that stood there."""
        old = self.design
        files = {name: one for name, one in old.files.items() if one != file} | dict.fromkeys(own, file)
        alike = {name: other for name, other in old.alike.items() if name not in gone}
        alike |= {name: other for name, one in own.items() if (other := named_by(one))}
        alike |= {name: old.alike[name] for name in gone - {*own} if name in old.alike and name in files}
        entries = {name: one for name, one in old.index.entries.items() if name not in gone}
        entries |= {name: indexed(spec) for name, spec in read.items()}
        specs = _Edited(old.specs, read, entries)
        cut = old.cut
        if any(
            linked_at(entries.get(name)) != linked_at(old.index.entries.get(name)) for name in {*gone, *read}
        ):
            _, cut = loops(entries, files)
        if own.keys() <= read.keys():
            self._missing.pop(file, None)
        else:
            self._missing[file] = ""
        self.design = replace(
            old,
            specs=specs,
            files=files,
            selected=frozenset(files),
            complaints=(),
            cut=cut,
            alike=alike,
            unread=tuple(unread_files(old.root, self._missing, self._kinds)),
            _known=Index(specs, cut),
        )

    def _beside_others(self, specs: list[Spec]) -> list[Complaint]:
        """Links that lead nowhere, and what does not go with the neighbours."""
        design = self.design
        neighbours = Neighbours(design.specs, design.files, design.index)
        found = list(broken_links(design.index.entries, design.files, [spec.id for spec in specs]))
        for spec in specs:
            found += neighbours.complaints_of(spec)[0]
        return found


class _Edited(IndexedSpecs):
    """The specs of a design, some of them read anew; ``index`` has all of them."""

    def __init__(
        self, specs: Mapping[str, Spec], read: Mapping[str, Spec], index: Mapping[str, Indexed]
    ) -> None:
        self.index = index
        self._specs: Mapping[str, Spec] = specs
        self._read: dict[str, Spec] = dict(read)
        if isinstance(specs, _Edited):  # one on another for each keystroke would not end
            self._specs, self._read = specs._specs, {**specs._read, **read}

    def __getitem__(self, name: str) -> Spec:
        if name not in self.index:
            raise KeyError(name)
        return self._read[name] if name in self._read else self._specs[name]
