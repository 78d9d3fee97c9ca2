"""Tables that families add to kinds which are not their own: under a table of a spec named for the family."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from typing import Any, ClassVar

from msgspec import Struct
from msgspec.structs import force_setattr
from pydantic import create_model

from speclint.errors import FamilyError
from speclint.specs.by_word import class_of
from speclint.specs.docstrings import summary
from speclint.specs.spec import Spec, SpecTable

#: The name of each family with the table that it adds to one kind.
Added = tuple[tuple[str, type[SpecTable]], ...]


class ExtraTable(Struct, frozen=True):
    """Keys of a family's own in the specs of a kind: in a shaft's spec, ``[wheelsets]`` and the fields of ``holds``.

    ``on`` is the kind; the kinds that are built on it have the table too. A rule has the table by
    :meth:`~speclint.specs.Spec.table_of`, and takes each value through its sheet.
    """

    on: type[Spec]
    holds: type[SpecTable]

    def __post_init__(self) -> None:
        force_setattr(self, "on", class_of(self.on))


class _Extended:
    """What every kind with added tables is: pickled as the kind and the tables that it was made of."""

    __slots__ = ()  # or its instances had a dictionary of another sort than a table of a spec has

    made_of: ClassVar[tuple[type[Spec], Added]]

    def __reduce__(self) -> tuple[Any, ...]:
        return _blank, self.made_of, self.__getstate__()


def _blank(kind: type[Spec], added: Added) -> Spec:
    made = extended(kind, added)
    return made.__new__(made)


def added_to(kind: type[Spec], tables: Mapping[str, Sequence[ExtraTable]]) -> Added:
    """The tables, by family, that belong to a kind or to one that it is built on."""
    kind = class_of(kind)
    return tuple(
        (family, table.holds)
        for family, own in sorted(tables.items())
        for table in own
        if issubclass(kind, table.on)
    )


def extended(kind: type[Spec], added: Added) -> type[Spec]:
    """A kind with the tables that families add to it; the kind itself where there are none.

    :raises FamilyError: for a family whose name is that of a key of the kind.
    """
    return _extended(class_of(kind), added)


@cache
def _extended(kind: type[Spec], added: Added) -> type[Spec]:
    for family, _ in added:
        if hasattr(kind, family) or family in kind.model_fields:
            raise FamilyError(
                f'family {family}: a {kind.kind} has "{family}" already, so no table can be added there'
            )
    if not added:
        return kind
    kind.model_rebuild()  # tables that are named before they are defined must be known where the fields are copied
    lines = "\n".join(f"    {family}: read by the family {family}" for family, _ in added)
    create: Any = create_model  # the checker of types cannot know the fields
    made = create(
        kind.__name__,
        __base__=(_Extended, kind),
        __module__=kind.__module__,
        __doc__=f"{summary(kind)}\n\nFields:\n{lines}\n",
        **{family: (table, table.unstated()) for family, table in added},
    )
    made.made_of = (kind, added)
    whole: type[Spec] = made
    return whole
