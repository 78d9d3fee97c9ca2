"""What is wrong with a spec beside its neighbours, and which of them it was held against."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct, field

from speclint.errors import Complaint
from speclint.repository.index import Index
from speclint.repository.misfits import misfits_of
from speclint.repository.unknown_names import Known, mistyped_parts_of, unknown_names_of
from speclint.specs import NamedIn, Spec


class HeldAgainst(Struct):
    """What a spec was held against: other specs, all that link to some, and the ids of some kinds."""

    specs: set[str] = field(default_factory=set)
    linking: set[str] = field(default_factory=set)
    kinds: set[tuple[str, ...]] = field(default_factory=set)


class Neighbours:
    """The specs of a design, each to be held against its neighbours."""

    def __init__(self, specs: Mapping[str, Spec], files: Mapping[str, str], index: Index) -> None:
        self._specs = _Noting(specs)
        self._known = _NotingKnown(self._specs, files, index)

    def complaints_of(self, spec: Spec) -> tuple[list[Complaint], HeldAgainst]:
        """Dimensions that do not fit in its host, names that their tables have not, what was measured of no dimension
        of the part; and what was looked at."""
        against = self._specs.noted = self._known.noted = HeldAgainst()
        found = [*misfits_of(spec, self._specs), *unknown_names_of(spec, self._known)]
        found += mistyped_parts_of(spec, self._known)
        if spec.is_one_of(("made-part",)):
            from speclint.repository.made_parts import made_part_faults  # only where there is one

            found += made_part_faults(spec, self._specs)
        return found, against


class _Noting(Mapping[str, Spec]):
    """Specs, noting which of them are asked for."""

    def __init__(self, specs: Mapping[str, Spec]) -> None:
        self._specs = specs
        self.noted = HeldAgainst()

    def __getitem__(self, name: str) -> Spec:
        self.noted.specs.add(name)
        return self._specs[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._specs)

    def __len__(self) -> int:
        return len(self._specs)


class _NotingKnown(Known):
    """Specs by what names are looked up in, noting what is asked."""

    noted: HeldAgainst

    def ids_of(self, kinds: tuple[str, ...]) -> frozenset[str]:
        self.noted.kinds.add(kinds)
        return super().ids_of(kinds)

    def linking_to(self, owner: Spec, mark: NamedIn) -> list[Spec]:
        self.noted.linking.add(owner.id)
        return super().linking_to(owner, mark)
