"""Words of a spec that are looked up in a list: of the handbook, of a family, or of words that a field fixes.

A field says which::

    name: Annotated[Word[str], ListedIn("gaskets", "gaskets of a joint", "gaskets-….csv", "gasket")]

so that every name that may be written can be listed, with the property that matters beside it.
"""

from __future__ import annotations

from msgspec import Struct


class ListedIn(Struct, frozen=True):
    """Which list a word is looked up in.

    ``called`` is its name, ``about`` what its names stand for. With ``table`` they are the entries of a ``column`` of
    that file in the folder ``data`` of a ``package``; ``shows`` are other columns of it, each with what is said of its
    entry in place of {}. Without a table they are the words that the field fixes, or a list that the handbook makes,
    such as that of materials.
    """

    called: str
    about: str
    table: str = ""
    column: str = ""
    package: str = "speclint.handbook"
    shows: tuple[tuple[str, str], ...] = ()

    def __post_init__(self) -> None:
        if not self.called or not self.about:
            raise ValueError("a list has a name, and says what its names stand for")
        if bool(self.table) != bool(self.column) or (self.shows and not self.table):
            raise ValueError(
                f"the list {self.called}: a table has a column of names, and only a table shows more"
            )


#: The names of metals and other materials, with those of families and of the repository.
MATERIALS = ListedIn("materials", "metals and other materials, with those of families and of the repository")
#: Designations of threads.
THREADS = ListedIn("threads", "threads: metric, Unified, Whitworth and pipe")
