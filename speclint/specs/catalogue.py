"""Every kind of spec that the core knows, each imported when it is first asked for."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from speclint.specs.kind_places import KINDS, imported
from speclint.specs.spec import Spec

if TYPE_CHECKING:
    from speclint.specs.extra_tables import ExtraTable


class Catalogue(Mapping[str, type[Spec]]):
    """Kinds by the word a spec writes; a kind that no spec uses is never imported.

    ``more`` are the kinds of each family, ``tables`` those that it adds to kinds. ``left_out`` are the families that
    the settings leave out.
    """

    def __init__(
        self,
        more: Mapping[str, Sequence[type[Spec]]] | None = None,
        tables: Mapping[str, Sequence[ExtraTable]] | None = None,
        left_out: Sequence[str] = (),
    ) -> None:
        self._more, self._tables = dict(more or {}), dict(tables or {})
        self.left_out = tuple(left_out)
        self._plain = {kind.kind: kind for kinds in self._more.values() for kind in kinds}

    def __getitem__(self, kind: str) -> type[Spec]:
        return self._with_tables(self._plain[kind] if kind in self._plain else imported(KINDS[kind]))

    def __iter__(self) -> Iterator[str]:
        yield from sorted({*KINDS, *self._plain})

    def __len__(self) -> int:
        return len({*KINDS, *self._plain})

    def _with_tables(self, kind: type[Spec]) -> type[Spec]:
        if not any(self._tables.values()):
            return kind
        from speclint.specs.extra_tables import added_to, extended

        return extended(kind, added_to(kind, self._tables))

    def without(self, families: Collection[str]) -> Catalogue:
        """The catalogue without the kinds and the tables that some families bring."""
        if not set(families) - set(self.left_out):
            return self
        more = {family: kinds for family, kinds in self._more.items() if family not in families}
        tables = {family: own for family, own in self._tables.items() if family not in families}
        return Catalogue(more, tables, sorted({*self.left_out, *families}))

    def tables_of(self, family: str) -> tuple[ExtraTable, ...]:
        """The tables that a family adds to kinds."""
        return tuple(self._tables.get(family, ()))
