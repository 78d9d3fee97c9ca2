"""Specs that are read when they are first asked for; of the others no more is known than the index says."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from speclint.repository.digests import State
from speclint.repository.index import Indexed
from speclint.repository.reading import Read, read_drafts, validated
from speclint.repository.taking_over import named_by, taken_over
from speclint.specs import Spec


class IndexedSpecs(Mapping[str, Spec]):
    """Specs by id, of which ``index`` names all, read or not."""

    index: Mapping[str, Indexed]

    def __contains__(self, name: object) -> bool:
        return name in self.index

    def __iter__(self) -> Iterator[str]:
        return iter(self.index)

    def __len__(self) -> int:
        return len(self.index)

    def __reduce__(self) -> tuple[Any, ...]:
        """Passed to another process with every spec read."""
        return dict, (dict(self.items()),)


class LazySpecs(IndexedSpecs):
    """The specs of a design by id. ``index`` has all of them; ``content`` is that of each file.

    ``states`` are the digests of those that have not changed since they were indexed.
    """

    def __init__(
        self,
        root: Path,
        kinds: Mapping[str, type[Spec]],
        content: Mapping[str, bytes],
        files: Mapping[str, str],
        index: Mapping[str, Indexed],
        states: Mapping[str, State],
    ) -> None:
        self.index, self.states = index, states
        self._root, self._kinds, self._content, self._files = root, kinds, content, files
        self._drafts: dict[str, dict[str, Read]] = {}
        self._specs: dict[str, Spec] = {}

    @property
    def read(self) -> int:
        """How many were read."""
        return len(self._specs)

    def draft(self, name: str) -> Read:
        """A spec as its file states it."""
        file = self._files[name]
        if file not in self._drafts:
            drafts = read_drafts(self._root / file, file, self._kinds, self._content[file])
            self._drafts[file] = {one.id: one for one in drafts}
        return self._drafts[file][name]

    def keep(self, name: str, spec: Spec) -> None:
        """Have a spec that was read."""
        self._specs[name] = spec

    def __getitem__(self, name: str) -> Spec:
        found = self._specs.get(name)
        if found is None:
            if name not in self.index:
                raise KeyError(name)
            found = self._specs[name] = self._read(name)
        return found

    def _read(self, name: str) -> Spec:
        some = {name: self.draft(name)}
        if other := named_by(some[name]):
            some[other] = self.draft(other)
        spec = validated(taken_over(some)[name], self._kinds).spec
        assert spec is not None  # as it could be read when it was indexed
        return spec
