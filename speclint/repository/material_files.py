"""The materials that a repository adds to the handbook's, from the files that its settings name."""

from __future__ import annotations

from collections.abc import Collection
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

from speclint.errors import Complaint, Location, locate
from speclint.repository.likeness import look
from speclint.repository.regular_files import not_regular, read_regular
from speclint.repository.root_folder import FILE_NAME
from speclint.repository.settings import Settings, inside
from speclint.repository.toml_tables import read_named
from speclint.specs import Array, Leaf, Table

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
    for number, file in enumerate(settings.materials):
        from speclint.handbook.materials import MaterialsError, names, read_materials

        if fault := _fault_of_file(root, file):
            complaints.append(Complaint(_named_at(root, number), fault, f'"{file}"', "a file in it"))
            continue
        try:
            text = read_regular(root / file).decode("utf-8")
            own = {one.name: one for one in read_materials(text, file)}
        except MaterialsError as problem:
            complaints += problem.complaints
        except UnicodeDecodeError as problem:
            line = problem.object.count(b"\n", 0, problem.start) + 1
            said = "the file is not UTF-8 text"
            complaints.append(Complaint(Location(file, line), said, write="the file saved as UTF-8"))
        except OSError as problem:
            said = f"the file of materials cannot be read: {problem.strerror or problem}"
            complaints.append(Complaint(_named_at(root, number), said, f'"{file}"', "a file that is there"))
        else:
            taken = {_plain(name): name for name in (*names(), *of_families, *found)}
            for name in own:
                if _plain(name) in taken:
                    complaints.append(_taken(name, taken[_plain(name)], file, text))
                else:
                    found[name] = own[name]
    return found, complaints


def _fault_of_file(root: Path, file: str) -> str:
    """Why a file that the settings name is not read; "" where it may be."""
    if not inside(file):
        return "this lies outside the repository"
    what = not_regular(root, file)
    return f"this is {what}, which is not read" if what else ""


def _named_at(root: Path, number: int) -> Location:
    """Where the settings name a file of materials, by its place in their list; no line where they lie elsewhere."""
    table = read_named(root, FILE_NAME)
    files = table.get("materials") if isinstance(table, Table) else None
    named = files[number] if isinstance(files, Array) and number < len(files) else None
    return Location(FILE_NAME, named.where.line if isinstance(named, Leaf) else 0, "materials")


@lru_cache(maxsize=1024)  # of nearly all names those of the handbook, at every reading of a repository
def _plain(name: str) -> str:
    """A name as the eye takes it, without spaces and hyphens: what differs in no more is the same name."""
    return "".join(sign for sign in look(name) if sign not in " -_")


def _taken(name: str, known: str, file: str, text: str) -> Complaint:
    line = locate(text.replace("\r\n", "\n")).get((name,), 0)
    says = "a material of the handbook, of a family or of an earlier file has this name"
    return Complaint(Location(file, line, name), says, f'"{name}"', f'a name of its own, not "{known}"')
