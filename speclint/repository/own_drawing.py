"""A part that states the number of its own drawing: the file and the issues of another drawing are not those of it."""

from __future__ import annotations

from speclint.specs import Table, bare

#: What a spec states of its drawing as a document.
_OF_DRAWING = frozenset({"drawing_file", "issued"})


def of_other_drawing(own: Table, other: Table) -> frozenset[str]:
    """The keys that a part does not take over, as they are of the other's drawing; none where both have one number."""
    if "drawing" not in own or _number(own) == _number(other):
        return frozenset()
    return _OF_DRAWING - own.keys()


def _number(table: Table) -> object:
    number = bare(table.get("drawing"))
    return " ".join(number.split()) if isinstance(number, str) else number
