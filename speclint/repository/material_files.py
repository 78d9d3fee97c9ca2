"""The materials that a repository adds to the handbook's, from the files that its settings name."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from speclint.errors import Complaint, Location
from speclint.repository.settings import FILE_NAME, Settings

if TYPE_CHECKING:
    from speclint.handbook.materials import Material


def read_own_materials(root: Path, settings: Settings) -> tuple[dict[str, Material], list[Complaint]]:
    """The materials that the repository adds, from the files its settings name."""
    found: dict[str, Material] = {}
    complaints: list[Complaint] = []
    for file in settings.materials:
        from speclint.handbook.materials import MaterialsError, read_materials

        path = root / file
        if not path.resolve().is_relative_to(root):
            complaints.append(
                Complaint(Location(FILE_NAME, 0, "materials"), "lies outside the repository", f'"{file}"')
            )
            continue
        try:
            found.update({one.name: one for one in read_materials(path.read_text(encoding="utf-8"), file)})
        except MaterialsError as problem:
            complaints += problem.complaints
        except (OSError, UnicodeDecodeError) as problem:
            complaints.append(Complaint(Location(file), f"the file of materials cannot be read: {problem}"))
    return found, complaints
