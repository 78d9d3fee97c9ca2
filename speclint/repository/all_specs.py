"""Every spec of a repository read, with everything that is wrong with it, or with how it goes with the others."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

from msgspec import Struct, field

from speclint.errors import Complaint, Location, one_of
from speclint.repository.index import Index, Indexed
from speclint.repository.neighbours import HeldAgainst, Neighbours
from speclint.repository.reading import Draft, Read, read_drafts, validated
from speclint.repository.taking_over import named_by, taken_over
from speclint.specs import Link, Spec


class ReadSpecs(Struct, frozen=True):
    """The specs of a repository: those that could be read, the file of each, and their index.

    ``alike`` and ``cut`` are those of a design. ``against`` is what each spec was held against, ``missing`` the files
    of what could not be read.
    """

    specs: Mapping[str, Spec]
    files: Mapping[str, str]
    alike: Mapping[str, str]
    index: Index
    complaints: tuple[Complaint, ...] = ()
    cut: frozenset[Location] = frozenset()
    against: Mapping[str, HeldAgainst] = field(default_factory=dict)
    missing: tuple[str, ...] = ()


def all_read(
    root: Path,
    holding: Iterable[str],
    kinds: Mapping[str, type[Spec]],
    content: Mapping[str, bytes] | None = None,
) -> ReadSpecs:
    """Every spec of some files of a repository; ``content`` is that of each file, where it was read before."""
    known = content or {}
    drafts = [one for file in holding for one in read_drafts(root / file, file, kinds, known.get(file))]
    unique, more, complaints = _by_id(drafts)
    loaded = {name: validated(one, kinds) for name, one in taken_over(unique).items()}
    complaints += [complaint for one in loaded.values() for complaint in one.complaints]
    complaints += [complaint for one in more for complaint in validated(one, kinds).complaints]
    specs = {name: one.spec for name, one in loaded.items() if one.spec is not None}
    files = {name: one.file for name, one in loaded.items()}
    alike = {name: other for name, one in unique.items() if (other := named_by(one)) in unique}
    index = Index(specs, frozenset())
    complaints += broken_links(index.entries, files)
    neighbours = Neighbours(specs, files, index)
    held = {name: neighbours.complaints_of(spec) for name, spec in specs.items()}
    complaints += [complaint for found, _ in held.values() for complaint in found]
    looped, cut = loops(index.entries, files)
    return ReadSpecs(
        specs=specs,
        files=files,
        alike=alike,
        index=Index(specs, cut) if cut else index,
        complaints=_each_once([*complaints, *looped]),
        cut=cut,
        missing=tuple(one.file for one in (*more, *(one for one in loaded.values() if one.spec is None))),
        against={name: against for name, (_, against) in held.items()},
    )


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


def broken_links(
    specs: Mapping[str, Indexed], files: Mapping[str, str], of: Iterable[str] | None = None
) -> Iterator[Complaint]:
    """A complaint for each link that leads nowhere, or to another kind: of all specs, or of some."""
    for spec in specs.values() if of is None else [specs[name] for name in of]:
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


def loops(
    specs: Mapping[str, Indexed], files: Mapping[str, str]
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
