"""The title page: whose design is reviewed, on which day, at which revision, with what, and on which drawings."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from importlib.metadata import version

from msgspec import Struct

from speclint.checking import Assessment, drawings_checked, named
from speclint.reports.phrases import count
from speclint.repository import FILE_NAME, DrawingState, WorkTree
from speclint.specs import Component, Engine, NotStated, Spec, Stated

_SHOWN = 12  # digits of a commit: enough for any repository, after git-rev-parse(1)


class Drawing(Struct, frozen=True):
    """A drawing at a revision: what it is of, which components it shows, who prepared and who checked it.

    ``title`` is that of its parts where they have one in common; ``files`` are its files, each with how it stands
    against its reading; ``issued`` to whom it was issued, when and at which revision.
    """

    number: str
    revision: str
    of: tuple[str, ...]
    parts: tuple[str, ...]
    prepared_by: str
    checked_by: str
    title: str = ""
    files: tuple[str, ...] = ()
    issued: tuple[str, ...] = ()


class TitlePage(Struct, frozen=True):
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
    """The files that a check rests on: specs and their drawings, settings, register, materials and signers."""
    settings = assessment.settings
    own = (settings.register_file, settings.signers_file, *settings.materials) if settings else ()
    specs = assessment.design.files.values() if assessment.design else ()
    entries = assessment.design.index.entries.values() if assessment.design else ()
    drawings = (one.drawing_file for one in entries if one.drawing_file is not None)
    return frozenset((FILE_NAME, *own, *specs, *drawings))


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
    stand = {one.component: one for one in drawings_checked(assessment)}
    made_to: dict[tuple[str, ...], list[Spec]] = {}
    for spec in _selected(assessment):
        if isinstance(spec.drawing, Stated):
            people = _word(spec.prepared_by), _word(spec.checked_by)
            made_to.setdefault((_word(spec.drawing), _word(spec.revision), *people), []).append(spec)
    for (number, revision, prepared_by, checked_by), specs in sorted(made_to.items()):
        of = tuple(dict.fromkeys(spec.called or spec.kind for spec in specs))
        titles = {_word(one.title) for one in specs}
        yield Drawing(
            number,
            revision,
            of,
            tuple(one.id for one in specs),
            prepared_by,
            checked_by,
            titles.pop() if len(titles) == 1 else "",
            tuple(dict.fromkeys(line for one in specs for line in _file(one, stand))),
            tuple(dict.fromkeys(line for one in specs for line in _issues(one))),
        )


def _file(spec: Spec, stand: Mapping[str, DrawingState]) -> Iterator[str]:
    """The file of the drawing of a part, and how it stands where a rule asked."""
    if isinstance(spec, Component) and isinstance(spec.drawing_file, Stated):
        state = stand.get(spec.id)
        yield f"{spec.drawing_file.value}: {state.briefly}" if state else spec.drawing_file.value


def _issues(spec: Spec) -> Iterator[str]:
    for one in spec.issued if isinstance(spec, Component) else ():
        day = one.on.value if isinstance(one.on, Stated) else "no day stated"
        yield f"{_word(one.to) or 'nobody named'}: {_word(one.revision) or 'no revision stated'}, {day}"


def _word(value: Stated[str] | NotStated) -> str:
    return str(value.value) if isinstance(value, Stated) else ""
