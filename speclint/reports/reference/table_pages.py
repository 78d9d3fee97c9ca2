"""Every table that speclint and the loaded families read: its source and edition, its columns and all of its rows."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from importlib import import_module
from importlib.resources import files

from speclint.families import Loaded
from speclint.handbook.tables import rows, said_of_table
from speclint.reports.listed_keys import listed_keys
from speclint.reports.reference.entries import Entry
from speclint.reports.reference.places import anchor, kind_place, table_place
from speclint.reports.reference.reference_page import Link, ReferencePage
from speclint.reports.reference.sections import TABLES
from speclint.specs import looked_up_in

_ENDING, _FOLDER = ".csv", "data"


def table_pages(loaded: Loaded) -> Iterator[ReferencePage]:
    """A list of all tables, and a page for each."""
    owners = [(package, tables_in(package)) for package in packages(loaded)]
    groups = [
        (
            package,
            [
                (
                    Link(file.removesuffix(_ENDING), table_place(package, file)),
                    said_of_table(file, package)[0],
                )
                for file in tables
            ],
        )
        for package, tables in owners
        if tables
    ]
    says = "Every table that is looked up, by the package that brings it; each is named for its source and edition."
    yield ReferencePage("tables/index.html", "Tables", TABLES, "list.html", {"says": says, "groups": groups})
    taken_by = _taken_by(loaded)
    for package, tables in owners:
        for file in tables:
            yield _page(package, file, taken_by.get((package, file), ()))


def packages(loaded: Loaded) -> list[str]:
    """The packages that may bring tables: those of speclint, and that of each loaded family."""
    own = sorted(one.name for one in files("speclint").iterdir() if one.joinpath(_FOLDER).is_dir())
    return [f"speclint.{name}" for name in own] + sorted(
        {one.module.partition(".")[0] for one in loaded.families}
    )


def tables_in(package: str) -> tuple[str, ...]:
    """The tables in the folder of data of a package; none where it is a single module."""
    if not hasattr(import_module(package), "__path__"):
        return ()
    folder = files(package).joinpath(_FOLDER)
    found = folder.iterdir() if folder.is_dir() else ()
    return tuple(sorted(one.name for one in found if one.name.endswith(_ENDING)))


def _page(package: str, file: str, taken_by: Sequence[Link]) -> ReferencePage:
    said = said_of_table(file, package)
    place = table_place(package, file)
    body = rows(file, package)
    name = file.removesuffix(_ENDING)
    content = {
        "package": package,
        "said": said,
        "columns": list(body[0]) if body else [],
        "rows": [list(row.values()) for row in body],
        "taken_by": taken_by,
    }
    return ReferencePage(
        place, name, TABLES, "table.html", content, [Entry(name, "table", place, " ".join(said))]
    )


def _taken_by(loaded: Loaded) -> dict[tuple[str, str], list[Link]]:
    """The keys whose words are looked up in a table."""
    found: dict[tuple[str, str], list[Link]] = {}
    for kind in loaded.kinds.values():
        for key in listed_keys(kind):
            listed = looked_up_in(key.field) if key.field is not None else None
            if listed is not None and listed.table:
                link = Link(f"{kind.kind}.{key.written}", kind_place(kind.kind, anchor(key.written)))
                found.setdefault((listed.package, listed.table), []).append(link)
    return found
