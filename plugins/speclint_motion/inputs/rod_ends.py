"""The sections of a piston rod at the end by which the crosshead holds it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Sheet
from speclint.specs import PistonRod, RodSection


def at_crosshead(rod: PistonRod, form: str, sheet: Sheet) -> Iterator[tuple[str, RodSection]]:
    """The sections of a form at the crosshead's end of a rod, by their names."""
    for name, section in rod.sections.items():
        of_form = sheet.read(f"form of {name}", section.form) == form
        if of_form and sheet.read(f"place of {name}", section.at) == "crosshead end":
            yield name, section
