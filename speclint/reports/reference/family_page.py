"""The families that are loaded, each with all that it brings."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from speclint.families import Loaded
from speclint.reports.listings import about_family
from speclint.reports.phrases import count
from speclint.reports.reference.entries import Entry
from speclint.reports.reference.places import (
    FAMILIES_FILE,
    anchor,
    file_of,
    kind_place,
    material_place,
    table_place,
)
from speclint.reports.reference.reference_page import Link, ReferencePage
from speclint.reports.reference.sections import FAMILIES
from speclint.reports.reference.table_pages import tables_in
from speclint.rules import Rule


class ShownFamily(Struct, frozen=True):
    """A family with what it is and what it brings: a heading, and links or plain words under it."""

    name: str
    anchor: str
    about: str
    version: str
    module: str
    brings: tuple[tuple[str, tuple[Link, ...]], ...]


def family_page(loaded: Loaded, rules: Sequence[Rule]) -> ReferencePage:
    """The families in the order of their names; speclint itself, which brings reports and drawings, is none."""
    shown = [_shown(loaded, rules, number) for number in range(len(loaded.families))]
    entries = [Entry(one.name, "family", f"{FAMILIES_FILE}#{one.anchor}", one.about) for one in shown]
    content = {"families": shown, "left_out": loaded.left_out}
    return ReferencePage(FAMILIES_FILE, "Families", FAMILIES, "families.html", content, entries)


def _shown(loaded: Loaded, rules: Sequence[Rule], number: int) -> ShownFamily:
    family = loaded.families[number]
    brought = next(one for one in loaded.brought if one.family == family.name)
    own = sum(rule.family == family.name for rule in rules)
    package = family.module.partition(".")[0]
    every = {
        "rules": [Link(count(own, "rule"), file_of("rules", family.name))] if own else [],
        "kinds": [Link(kind.kind, kind_place(kind.kind)) for kind in brought.kinds],
        "keys in kinds": [
            Link(f"{table.on.kind}.{family.name}", kind_place(table.on.kind, family.name))
            for table in brought.tables
        ],
        "materials": [Link(one.name, material_place(one.family, one.name)) for one in brought.materials],
        "tables": [
            Link(file.removesuffix(".csv"), table_place(package, file)) for file in tables_in(package)
        ],
        "reports": [Link(f"{one.name}: {one.says}", "") for one in brought.reports],
        "drawings": [Link(f"{one.name}: {one.says}", "") for one in brought.drawings],
    }
    return ShownFamily(
        name=family.name,
        anchor=anchor(family.name),
        about=about_family(family.module).strip(),
        version=family.version,
        module=family.module,
        brings=tuple((heading, tuple(links)) for heading, links in every.items() if links),
    )
