"""A design with other specs in the place of some, such as parts as made in the place of their drawings."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from speclint.errors import replace
from speclint.repository.design import Design
from speclint.repository.index import Index, Indexed
from speclint.specs import Spec


def with_specs(design: Design, others: Mapping[str, Spec]) -> Design:
    """The design with other specs under some of its ids; their links must be those of the specs in whose place they
    stand, so that all that the index tells is still true.
    """
    specs = _Others(design.specs, others, design.index.entries)
    return replace(design, specs=specs, _known=Index(specs, design.cut))


class _Others(Mapping[str, Spec]):
    """Specs by id, some of them others; the rest are read when they are asked for."""

    def __init__(
        self, specs: Mapping[str, Spec], others: Mapping[str, Spec], index: Mapping[str, Indexed]
    ) -> None:
        self.index = index
        self._specs, self._others = specs, others

    def __getitem__(self, name: str) -> Spec:
        return self._others[name] if name in self._others else self._specs[name]

    def __contains__(self, name: object) -> bool:
        return name in self._specs

    def __iter__(self) -> Iterator[str]:
        return iter(self._specs)

    def __len__(self) -> int:
        return len(self._specs)

    def __reduce__(self) -> tuple[Any, ...]:
        """Passed to another process with every spec read."""
        return dict, (dict(self.items()),)
