"""From paths on the command line to a design: find the root, read every file, resolve every link."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator, Mapping, Sequence
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

from speclint.errors import Complaint, DesignError, Location, one_of
from speclint.repository.design import Design
from speclint.repository.misfits import misfits
from speclint.repository.reading import Draft, Read, read_drafts, validated
from speclint.repository.settings import FILE_NAME, Settings
from speclint.repository.spec_files import sorted_out
from speclint.repository.taking_over import named_by, taken_over
from speclint.repository.unknown_names import unknown_names
from speclint.repository.unread import unread_files
from speclint.specs import Link, Spec


def find_root(paths: Sequence[Path]) -> Path:
    """The repository that all paths lie in: the nearest folder upwards that holds speclint.toml.

    :raises DesignError: for a path that does not exist, has no speclint.toml above it, or lies in another
        repository than the first.
    """
    roots: dict[Path, Path] = {}
    for path in paths:
        if not path.exists():
            raise DesignError(f"{path}: there is no such file or folder")
        start = path.resolve()
        above = [start, *start.parents] if start.is_dir() else [*start.parents]
        root = next((folder for folder in above if _is_root(folder)), None)
        if root is None:
            raise DesignError(
                f"{path}: no {FILE_NAME} here or in any folder above; every design repository has one"
            )
        roots.setdefault(root, path)
    if len(roots) > 1:
        (first, _), (other, path) = list(roots.items())[:2]
        raise DesignError(
            f"{path}: lies in the repository {other}, not in {first}; check one repository at a time"
        )
    return next(iter(roots))


def _is_root(folder: Path) -> bool:
    """Whether a folder has settings; what else than a file may be in their place is told when they are read."""
    place = folder / FILE_NAME
    return os.path.lexists(place) and not place.is_dir()


def load_design(
    root: Path, paths: Sequence[Path], settings: Settings, kinds: Mapping[str, type[Spec]]
) -> Design:
    """Read every spec of the repository; ``paths`` choose what is checked."""
    holding, passed_over = sorted_out(root, settings)
    drafts = [one for file in sorted(holding) for one in read_drafts(root / file, file, kinds)]
    unique, more, complaints = _by_id(drafts)
    loaded = {name: validated(one, kinds) for name, one in taken_over(unique).items()}
    complaints += [complaint for one in loaded.values() for complaint in one.complaints]
    complaints += [complaint for one in more for complaint in validated(one, kinds).complaints]
    specs = {name: one.spec for name, one in loaded.items() if one.spec is not None}
    files = {name: one.file for name, one in loaded.items()}
    missing = [one.file for one in (*more, *(one for one in loaded.values() if one.spec is None))]
    alike = {name: other for name, one in unique.items() if (other := named_by(one)) in unique}
    complaints += _broken_links(specs, files)
    complaints += misfits(specs)
    complaints += unknown_names(specs, files)
    loops, cut = _loops(specs, files)
    return Design(
        root=root,
        settings=settings,
        specs=specs,
        files=files,
        selected=frozenset(name for name, file in files.items() if chosen(root / file, paths)),
        complaints=_each_once([*complaints, *loops]),
        cut=cut,
        passed_over=tuple(one for one in passed_over if chosen(root / one.file, paths)),
        alike=alike,
        unread=tuple(unread_files(root, missing, kinds)),
    )


def chosen(file: Path, paths: Sequence[Path]) -> bool:
    """Whether some paths on the command line choose a file of a repository: it is one of them, or lies in one."""
    return any(file == path.resolve() or path.resolve() in file.parents for path in paths)


def _each_once(complaints: Iterable[Complaint]) -> tuple[Complaint, ...]:
    """The complaints in their order; one about a value that several parts take over, once."""
    said = {str(complaint): complaint for complaint in complaints}
    return tuple(sorted(said.values(), key=lambda complaint: complaint.order))


def _by_id(drafts: Iterable[Read]) -> tuple[dict[str, Read], list[Read], list[Complaint]]:
    """The drafts by their ids, those of an id that another has, and a complaint about each of these."""
    unique: dict[str, Read] = {}
    more: list[Read] = []
    complaints = []
    for one in drafts:
        if one.id in unique:
            first = unique[one.id].file
            line = one.table.where.line if isinstance(one, Draft) else 0
            other = "another name in each" if first == one.file else first
            said = f"{other} has the same id"
            where = Location(one.file, line, "id")
            complaints.append(Complaint(where, said, f'"{one.id}"', "an id of its own"))
            more.append(one)
        else:
            unique[one.id] = one
    return unique, more, complaints


def _broken_links(specs: Mapping[str, Spec], files: Mapping[str, str]) -> Iterator[Complaint]:
    for spec in specs.values():
        for link in spec.links():
            found = specs.get(link.id)
            if found is None and link.id not in files:
                fits = [name for name, other in specs.items() if other.is_one_of(link.kinds)]
                instead = one_of(link.id, fits) if fits else f"the id of a {_kinds(link)}; there is none yet"
                yield Complaint(link.where, "no spec has this id", f'"{link.id}"', instead)
            elif found is not None and not found.is_one_of(link.kinds):
                leads = f"this leads to a {found.kind} ({files[link.id]})"
                yield Complaint(link.where, leads, f'"{link.id}"', f"the id of a {_kinds(link)}")


def _kinds(link: Link[Spec]) -> str:
    return " or ".join(link.kinds)


def _loops(
    specs: Mapping[str, Spec], files: Mapping[str, str]
) -> tuple[list[Complaint], frozenset[Location]]:
    """Report each loop of links once, and cut it at one link, until none is left."""
    complaints: list[Complaint] = []
    cut: set[Location] = set()
    links = {name: [link for link in spec.links() if link.id in specs] for name, spec in specs.items()}
    while True:
        graph = {name: {link.id for link in out if link.where not in cut} for name, out in links.items()}
        try:
            TopologicalSorter(graph).prepare()
        except CycleError as problem:
            cycle: list[str] = problem.args[1][::-1]  # each links to the next; first and last are the same
            closing = next(
                link for link in links[cycle[-2]] if link.id == cycle[-1] and link.where not in cut
            )
            loop = " → ".join(f"{name} ({files[name]})" for name in cycle)
            complaints.append(
                Complaint(closing.where, f"links run in a loop: {loop}", f'"{closing.id}"', "no link back")
            )
            cut.add(closing.where)
        else:
            return complaints, frozenset(cut)
