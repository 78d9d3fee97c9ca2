"""The materials that a repository adds to the handbook's, from the files that its settings name."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from speclint.errors import Complaint, Location
from speclint.repository.regular_files import not_regular, read_regular
from speclint.repository.settings import FILE_NAME, Settings, inside

if TYPE_CHECKING:
    from speclint.handbook.materials import Material


def read_own_materials(root: Path, settings: Settings) -> tuple[dict[str, Material], list[Complaint]]:
    """The materials that the repository adds, from the files its settings name."""
    found: dict[str, Material] = {}
    complaints: list[Complaint] = []
    for file in settings.materials:
        from speclint.handbook.materials import MaterialsError, read_materials

        where = Location(FILE_NAME, 0, "materials")
        if not inside(file):
            complaints.append(Complaint(where, "lies outside the repository", f'"{file}"', "a file in it"))
            continue
        if what := not_regular(root, file):
            complaints.append(
                Complaint(where, f"this is {what}, which is not read", f'"{file}"', "a file in it")
            )
            continue
        try:
            text = read_regular(root / file).decode("utf-8")
            found.update({one.name: one for one in read_materials(text, file)})
        except MaterialsError as problem:
            complaints += problem.complaints
        except (OSError, UnicodeDecodeError) as problem:
            complaints.append(Complaint(Location(file), f"the file of materials cannot be read: {problem}"))
    return found, complaints
