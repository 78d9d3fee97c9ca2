"""The materials, a page for each family of metals: every property with its range of temperature, size and source."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from msgspec import Struct

from speclint.families import Loaded
from speclint.handbook.materials import PROPERTIES, Material, Table, material, names
from speclint.quantities import amount
from speclint.reports.reference.entries import Entry
from speclint.reports.reference.places import anchor, file_of, material_place
from speclint.reports.reference.reference_page import Link, ReferencePage
from speclint.reports.reference.sections import MATERIALS

#: How a figure and its bounds are told apart: nearer than this, as a share, they are one figure.
_SAME = 1e-9
_CONTENT = "composition "


class PropertyTable(Struct, frozen=True):
    """One table of a property: its columns, its rows, each with the band of size for which it stands, its source."""

    columns: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]
    size: str
    source: str


class ShownProperty(Struct, frozen=True):
    """A property in words with its tables, in the order in which they are tried."""

    name: str
    tables: tuple[PropertyTable, ...]


class ShownMaterial(Struct, frozen=True):
    """A material as its page lays it out; ``contents`` are the elements with their shares and sources."""

    metal: Material
    anchor: str
    properties: tuple[ShownProperty, ...]
    contents: tuple[tuple[str, str, str], ...]


def material_pages(loaded: Loaded) -> Iterator[ReferencePage]:
    """A list of all materials, and a page for each family of metals."""
    every = {name: material(name) for name in names()} | dict(loaded.materials)
    by_family: dict[str, list[Material]] = {}
    for name in sorted(every):
        by_family.setdefault(every[name].family, []).append(every[name])
    groups = [
        (family, [(Link(one.name, material_place(family, one.name)), one.title) for one in metals])
        for family, metals in sorted(by_family.items())
    ]
    says = "Every material of the handbook and of the families that are loaded; a repository may state more of its own."
    yield ReferencePage(
        "materials/index.html", "Materials", MATERIALS, "list.html", {"says": says, "groups": groups}
    )
    for family, metals in sorted(by_family.items()):
        entries = [
            Entry(one.name, "material", material_place(family, one.name), f"{one.title}, {one.standard}")
            for one in metals
        ]
        content = {"materials": [_shown(one) for one in metals]}
        title = f"Materials: {family}"
        yield ReferencePage(
            file_of("materials", family), title, MATERIALS, "materials.html", content, entries
        )


def _shown(metal: Material) -> ShownMaterial:
    properties, contents = [], []
    for key, tables in metal.tables.items():
        if key.startswith(_CONTENT):
            contents += [(key.removeprefix(_CONTENT), _figure(one, 0, 0), str(one.source)) for one in tables]
        else:
            properties.append(ShownProperty(_words(key), tuple(_table(key, one) for one in tables)))
    return ShownMaterial(metal, anchor(metal.name), tuple(properties), tuple(contents))


def _words(key: str) -> str:
    head, _, part = key.partition(" ")
    return f"{PROPERTIES[head].words}{f' ({part})' if part else ''}"


def _table(key: str, table: Table) -> PropertyTable:
    several = max(len(row) for row in table.rows) > 1
    span = (table.temperatures[0], table.temperatures[-1]) if table.temperatures else ()
    ends = [amount(one, "K") for one in span]
    between = (" to ".join(dict.fromkeys(ends)),) if ends else ("value",)
    columns = tuple(amount(one, "K") for one in table.temperatures) if several else between
    rows = tuple(
        (band, tuple(_figure(table, number, column) for column in range(len(table.rows[number]))))
        for number, band in enumerate(_bands(table.edges) or [""] * len(table.rows))
    )
    return PropertyTable(
        columns, rows, PROPERTIES[key.partition(" ")[0]].size if table.edges else "", str(table.source)
    )


def _bands(edges: Sequence[float]) -> list[str]:
    """The bands of size in words: the first holds its lower edge too."""
    ends = [(amount(low, "m"), amount(high, "m")) for low, high in pairwise(edges)]
    return [
        f"over {low} to {high}" if number or edges[0] else f"to {high}"
        for number, (low, high) in enumerate(ends)
    ]


def _figure(table: Table, row: int, column: int) -> str:
    """A figure, with the least and the most that its source allows where they are others."""
    low, nominal, high = table.rows[row][column]
    shown = [amount(one, table.unit) for one in (low, nominal, high)]
    if abs(high - low) <= _SAME * abs(nominal):
        return shown[1]
    if nominal == low:
        return f"{shown[0]} to {shown[2]}"
    return f"{shown[1]} ({shown[0]} to {shown[2]})"
