"""What keeps checks from being made, each once: a file that could not be read, a name that no list holds."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.checking.check_result import Check
from speclint.errors import Complaint, nearest_few, shortened
from speclint.repository import text_read_again

if TYPE_CHECKING:
    from speclint.checking.assessment import Assessment
    from speclint.errors import Location
    from speclint.repository import Design
    from speclint.specs import ListedIn

_QUOTES = "\"'"


class Waiting(Struct, frozen=True):
    """Checks that wait for one thing to be put right: where it is, and the complaint about it."""

    complaint: Complaint
    checks: tuple[Check, ...]

    @property
    def where(self) -> Location:
        """The place to be put right."""
        return self.complaint.where

    @property
    def parts(self) -> int:
        """How many parts the checks are of."""
        return len({one.component for one in self.checks})


class Waits(Struct, frozen=True):
    """All that keeps checks from being made: files that could not be read, and names that are not known.

    For a temperature of a duty whose name is not known no check waits.
    """

    files: tuple[Waiting, ...]
    names: tuple[Waiting, ...]

    def __iter__(self) -> Iterator[Waiting]:
        """Each that checks wait for, files before names."""
        return (one for one in (*self.files, *self.names) if one.checks)

    def of(self, complaint: Complaint) -> Waiting | None:
        """What waits for a file, by the complaint that stands for it; None where nothing does."""
        return next((one for one in self.files if one.complaint == complaint), None)


def waits_of(assessment: Assessment) -> Waits:
    """All that checks of an assessment wait for, each once."""
    from speclint.checking.stray_temperatures import stray_temperatures  # wanted by reports alone

    strays = (Waiting(one, ()) for one in stray_temperatures(assessment))
    return Waits(waiting_for_files(assessment), (*names_not_listed(assessment), *strays))


def waiting_for_files(assessment: Assessment) -> tuple[Waiting, ...]:
    """The checks that wait for each file that could not be read, by the first complaint about it."""
    first: dict[str, Complaint] = {}
    for complaint in assessment.complaints:
        first.setdefault(complaint.where.file, complaint)
    found: dict[str, list[Check]] = {file: [] for file in first}
    for check in assessment.checks if first else ():
        for file in (one for one in check.unread if one in found):
            found[file].append(check)
    for file in _of_materials(assessment, first):
        text = text_read_again(assessment.root / file)
        found[file] += (one for one in assessment.checks if _named(one, text))
    return tuple(Waiting(first[file], tuple(checks)) for file, checks in found.items() if checks)


def _of_materials(assessment: Assessment, files: Collection[str]) -> list[str]:
    settings = assessment.settings
    return [one for one in settings.materials if one in files] if settings else []


def _named(check: Check, text: str) -> bool:
    """Whether a check looked for a name that heads a table of a text."""
    heads = {line.strip(" []").strip(_QUOTES) for line in text.splitlines() if line.startswith("[")}
    return any(f"'{head}'" in says for says in check.unlisted for head in heads)


def names_not_listed(assessment: Assessment) -> tuple[Waiting, ...]:
    """Each name of a spec that the list which it is looked up in has not, with the checks that wait for another.

    A name that no check looks up is none: what the list would give may be stated beside it.
    """
    of_files = {check.order for one in waiting_for_files(assessment) for check in one.checks}
    checks = [one for one in assessment.checks if one.unlisted and one.order not in of_files]
    if not checks or assessment.design is None or assessment.basis is None:
        return ()
    from speclint.families import NameLists  # only where a name is not known

    materials = {**assessment.loaded.materials, **assessment.basis.materials}
    lists = NameLists(assessment.loaded.kinds, materials, assessment.design)
    held: dict[str, frozenset[str]] = {}
    found: dict[Location, tuple[Complaint, dict[tuple[str, str], Check]]] = {}
    for check in checks:
        for mark, name, where in _looked_up(assessment.design, check):
            names = held.get(mark.called) or frozenset(one.name for one in lists.of(mark.called)[0].names)
            held[mark.called] = names
            if name not in names:
                told = _not_listed(where, mark, name, names)
                found.setdefault(where, (told, {}))[1][check.order] = check
    ordered = sorted(found.values(), key=lambda one: one[0].order)
    return tuple(Waiting(told, tuple(some.values())) for told, some in ordered)


def _looked_up(design: Design, check: Check) -> Iterator[tuple[ListedIn, str, Location]]:
    """The names in the specs that a check consulted which it says are in no list, or which it names as others."""
    from speclint.specs import listed_words  # only where a name is not known

    for part in sorted({check.component, *check.consulted.specs}):
        if (spec := design.specs.get(part)) is not None:
            for mark, word in listed_words(spec):
                if any(word.value in says for says in check.unlisted):
                    yield mark, word.value, word.where.drawn


def _not_listed(where: Location, mark: ListedIn, name: str, names: Iterable[str]) -> Complaint:
    near = " or ".join(f'"{one}"' for one in nearest_few(name, sorted(names)))
    said = f"this is not among the {mark.called} that are known: speclint names {mark.called}"
    return Complaint(where, said, f'"{shortened(name)}"', near)
