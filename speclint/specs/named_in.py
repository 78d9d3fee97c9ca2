"""Words of a spec that name an entry of a table, of its own or of another spec: a bore of the block that it sits in.

A field says where its names are looked up::

    in_bore: Annotated[Word[str], NamedIn("housed_in.bores")] = NOT_STATED

A table by name says the same of the names of its entries. When the links of a design are followed, a name that the
table has not is told with the nearest one.
"""

from __future__ import annotations

from msgspec import Struct


class NamedIn(Struct, frozen=True):
    """Where a name is looked up.

    ``table`` is the dotted key of the table, from the spec that states the name; a link on the way is followed:
    "bores", "housed_in.bores", "upper_beat.seat.pressed_into.bores". One that begins with a dot sets out from the table
    in which the name stands: ".block.bores". With ``of`` the table is that of the specs of a kind which link under the
    key ``by`` to this spec, or to that which its links ``through`` lead to: the plates of the weldment that makes a
    block. With ``ids_of`` the names are ids of specs of those kinds. ``beside`` are words that may stand in place of a
    name.
    """

    table: str = ""
    of: str = ""
    by: str = ""
    through: str = ""
    ids_of: tuple[str, ...] = ()
    beside: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if bool(self.table) == bool(self.ids_of) or bool(self.of) != bool(self.by):
            raise ValueError(
                "names stand in a table or are ids; a table of specs that link here names their link"
            )
        if self.through and not self.of:
            raise ValueError(
                "links are gone through to a spec only where others that link to it have the table"
            )
