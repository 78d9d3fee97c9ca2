"""The materials that a repository adds to the handbook's, from the files that its settings name."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.errors import Complaint, Location, locate
from speclint.repository.likeness import look
from speclint.repository.regular_files import not_regular, read_regular
from speclint.repository.settings import FILE_NAME, Settings, inside

if TYPE_CHECKING:
    from speclint.handbook.materials import Material


def read_own_materials(
    root: Path, settings: Settings, of_families: Collection[str] = ()
) -> tuple[dict[str, Material], list[Complaint]]:
    """The materials that the repository adds, from the files its settings name.

    An own material has a name of its own: one that bears the name of a material of the handbook, or of
    ``of_families``, would take its place unseen in every spec that names it. It is complained of and not used.
    """
    found: dict[str, Material] = {}
    complaints: list[Complaint] = []
    for file in settings.materials:
        from speclint.handbook.materials import MaterialsError, names, read_materials

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
            own = {one.name: one for one in read_materials(text, file)}
        except MaterialsError as problem:
            complaints += problem.complaints
        except (OSError, UnicodeDecodeError) as problem:
            complaints.append(Complaint(Location(file), f"the file of materials cannot be read: {problem}"))
        else:
            taken = {_plain(name): name for name in (*names(), *of_families, *found)}
            for name in own:
                if _plain(name) in taken:
                    complaints.append(_taken(name, taken[_plain(name)], file, text))
                else:
                    found[name] = own[name]
    return found, complaints


def _plain(name: str) -> str:
    """A name as the eye takes it, without spaces and hyphens: what differs in no more is the same name."""
    return "".join(sign for sign in look(name) if sign not in " -_")


def _taken(name: str, known: str, file: str, text: str) -> Complaint:
    line = locate(text.replace("\r\n", "\n")).get((name,), 0)
    says = "a material of the handbook, of a family or of an earlier file has this name"
    return Complaint(Location(file, line, name), says, f'"{name}"', f'a name of its own, not "{known}"')
