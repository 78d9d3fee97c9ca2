"""Opening a design repository: every file that a run needs is read here, once, and nowhere else."""

from __future__ import annotations

import os
from collections.abc import Collection, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct, field

from speclint.errors import Complaint, DesignError
from speclint.repository.basis import Basis
from speclint.repository.concession import Register
from speclint.repository.design import Design
from speclint.repository.folder import find_root, load_design
from speclint.repository.material_files import read_own_materials
from speclint.repository.settings import Settings, load_settings
from speclint.specs import Catalogue

if TYPE_CHECKING:
    from speclint.handbook.materials import Material
    from speclint.repository.drawing_files import Source
    from speclint.repository.kept_index import Remembered


class Repository(Struct, frozen=True):
    """The content of a repository, and ``complaints`` about what could not be read.

    ``settings`` is None where they could not be read; ``materials`` are those that the repository adds to the
    handbook's, by name; an absent register is an empty one.
    """

    root: Path
    settings: Settings | None
    design: Design
    register: Register
    complaints: tuple[Complaint, ...]
    materials: Mapping[str, Material] = field(default_factory=dict)


def open_repository(
    paths: Sequence[Path],
    kinds: Catalogue,
    basis: Basis | None = None,
    of_families: Collection[str] = (),
    remembered: Remembered | None = None,
    drawing_files: Source | None = None,
) -> Repository:
    """Read the one repository that some paths lie in, on its own design basis or on the one given.

    What the families that the settings leave out bring to the kinds is left out. ``of_families`` are the names of
    their materials, which no own material may bear. ``remembered`` is where an index of the specs is kept,
    ``drawing_files`` where the files of drawings are read, where not in the repository itself.

    :raises DesignError: for paths that are not of one repository.
    """
    root = find_root(paths)
    settings, unset = load_settings(root) if basis is None else (basis.settings, ())
    if settings is None:
        design = load_design(root, paths, Settings(), kinds)
        nothing = Register(design.settings.register_file)
        return Repository(root, None, design, nothing, (*unset, *design.complaints))
    kinds = kinds.without(settings.families.left_out)
    design = load_design(root, paths, settings, kinds, remembered if basis is None else None, drawing_files)
    register = _register_of(root, settings)
    if basis is not None:
        complaints = (*design.complaints, *register.complaints)
        return Repository(root, settings, basis.applied_to(design), register, complaints, basis.materials)
    materials, unread = read_own_materials(root, settings, of_families)
    complaints = (*unset, *unread, *design.complaints, *register.complaints)
    return Repository(root, settings, design, register, complaints, materials)


def families_left_out(paths: Sequence[Path]) -> tuple[str, ...]:
    """The families that the settings above some paths leave out; none where no settings can be read.

    Whoever then checks the paths is told what is wrong with them.
    """
    try:
        settings, _ = load_settings(find_root(paths))
    except DesignError:
        return ()
    return settings.families.left_out if settings else ()


def _register_of(root: Path, settings: Settings) -> Register:
    if not os.path.lexists(root / settings.register_file):
        return Register(settings.register_file)
    from speclint.repository.register_file import read_register  # only where there is one

    return read_register(root, settings)
