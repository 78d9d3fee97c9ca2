"""The title page: whose design is reviewed, on which day, at which revision, with what, and on which drawings."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass
from importlib.metadata import version

from speclint.checking import Assessment, named
from speclint.reports.phrases import count
from speclint.repository import FILE_NAME, WorkTree
from speclint.specs import Engine, NotStated, Spec, Stated

_SHOWN = 12  # digits of a commit: enough for any repository, after git-rev-parse(1)


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing at a revision: what it is of, which components it shows, who prepared and who checked it."""

    number: str
    revision: str
    of: tuple[str, ...]
    parts: tuple[str, ...]
    prepared_by: str
    checked_by: str


@dataclass(frozen=True, slots=True)
class TitlePage:
    """The facts of the title page in their order, and the drawings; ``unnumbered`` have no drawing number."""

    works: str
    facts: tuple[tuple[str, str], ...]
    families: tuple[tuple[str, tuple[str, ...]], ...]
    drawings: tuple[Drawing, ...]
    unnumbered: tuple[str, ...]


def title_page(assessment: Assessment, revision: WorkTree | None, today: dt.date) -> TitlePage:
    """The title page of a review held on a day."""
    facts = (
        ("design", "; ".join(_engines(assessment)) or assessment.root.name),
        ("date of the check", f"{today.day} {today:%B %Y}"),
        ("revision", said_of_revision(revision)),
        ("stage", assessment.settings.stage if assessment.settings else "settings could not be read"),
        ("checked with", f"speclint {version('speclint')}"),
    )
    drawings = tuple(_drawings(assessment))
    without = tuple(one.id for one in _selected(assessment) if not isinstance(one.drawing, Stated))
    return TitlePage(works_of(assessment), facts, tuple(_families(assessment)), drawings, without)


def works_of(assessment: Assessment) -> str:
    """The name of the works; where the settings state none, that of the folder."""
    name = assessment.settings.works.name if assessment.settings else None
    return str(name.value) if isinstance(name, Stated) else assessment.root.name


def said_of_revision(found: WorkTree | None) -> str:
    """The commit of a design, and whether its files are those of the commit.

    >>> said_of_revision(WorkTree("0123456789abcdef", ("rod.toml",)))
    'git 0123456789ab, but 1 file differs from it: rod.toml'
    """
    if found is None:
        return "not under git, or git is not there: no revision can be named"
    if not found.commit:
        return f"nothing is committed yet; {count(len(found.changed), 'file')} in the folder"
    commit = f"git {found.commit[:_SHOWN]}"
    if not found.changed:
        return f"{commit}; every file of the design is as committed"
    differ = "differs" if len(found.changed) == 1 else "differ"
    return f"{commit}, but {count(len(found.changed), 'file')} {differ} from it: {named(found.changed)}"


def files_read(assessment: Assessment) -> frozenset[str]:
    """The files that a check rests on: specs, settings, register, materials and signers."""
    settings = assessment.settings
    own = (settings.register_file, settings.signers_file, *settings.materials) if settings else ()
    specs = assessment.design.files.values() if assessment.design else ()
    return frozenset((FILE_NAME, *own, *specs))


def _selected(assessment: Assessment) -> Iterator[Spec]:
    design = assessment.design
    for name in sorted(design.selected) if design else ():
        if design is not None and (spec := design.specs.get(name)) is not None:
            yield spec


def _engines(assessment: Assessment) -> Iterator[str]:
    for spec in _selected(assessment):
        if isinstance(spec, Engine):
            yield _word(spec.title) or spec.id


def _families(assessment: Assessment) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The editions of the families, each with the families that have it and the number of their rules."""
    rules = [rule.family for rule in assessment.loaded.rules]
    by_edition: dict[str, list[str]] = {}
    for one in assessment.loaded.families:
        number = count(rules.count(one.name), "rule")
        by_edition.setdefault(one.version, []).append(f"{one.name} ({number})")
    return ((edition, tuple(names)) for edition, names in by_edition.items())


def _drawings(assessment: Assessment) -> Iterator[Drawing]:
    """Each drawing once, with every part that is made to it, in the order of their numbers."""
    made_to: dict[tuple[str, ...], list[Spec]] = {}
    for spec in _selected(assessment):
        if isinstance(spec.drawing, Stated):
            people = _word(spec.prepared_by), _word(spec.checked_by)
            made_to.setdefault((_word(spec.drawing), _word(spec.revision), *people), []).append(spec)
    for (number, revision, prepared_by, checked_by), specs in sorted(made_to.items()):
        of = tuple(dict.fromkeys(spec.called or spec.kind for spec in specs))
        yield Drawing(number, revision, of, tuple(one.id for one in specs), prepared_by, checked_by)


def _word(value: Stated[str] | NotStated) -> str:
    return str(value.value) if isinstance(value, Stated) else ""
