"""Load cases, the settings of a repository, and the words of findings: grades and hazards."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from speclint.families import Loaded
from speclint.reports.reference.entries import Entry
from speclint.reports.reference.kind_pages import key_groups
from speclint.reports.reference.places import (
    CASES_FILE,
    SETTINGS_FILE,
    WORDS_FILE,
    anchor,
    case_place,
    kind_place,
)
from speclint.reports.reference.reference_page import Link, ReferencePage
from speclint.reports.reference.sections import WORDS
from speclint.repository import Settings
from speclint.rules import Grade, Rule
from speclint.specs import CASE_MEANINGS, HAZARDS, Component, LoadCase, prose


def word_pages(loaded: Loaded, rules: Sequence[Rule], links: Mapping[str, Link]) -> Iterator[ReferencePage]:
    """The page of the load cases, that of the settings, and that of grades and hazards."""
    yield _cases(loaded, rules, links)
    groups = key_groups(Settings, frozenset(loaded.kinds), "")
    entries = [
        Entry(one.key.written, "setting", f"{SETTINGS_FILE}#{one.anchor}", one.key.says)
        for group in groups
        for one in group.keys
    ]
    content = {"about": prose(Settings), "hazards": (), "word": "", "rules": (), "groups": groups}
    yield ReferencePage(SETTINGS_FILE, "Settings: speclint.toml", WORDS, "kind.html", content, entries)
    yield _words(loaded, rules, links)


def _cases(loaded: Loaded, rules: Sequence[Rule], links: Mapping[str, Link]) -> ReferencePage:
    rows = [
        (case, means, [links[rule.name] for rule in rules if case in rule.cases])
        for case, means in CASE_MEANINGS.items()
    ]
    groups = key_groups(LoadCase, frozenset(loaded.kinds), "Keys of a load case")
    entries = [Entry(case, "load case", case_place(case), means) for case, means in CASE_MEANINGS.items()]
    return ReferencePage(
        CASES_FILE,
        "Load cases",
        WORDS,
        "cases.html",
        {"rows": rows, "about": prose(LoadCase), "groups": groups},
        entries,
    )


def _words(loaded: Loaded, rules: Sequence[Rule], links: Mapping[str, Link]) -> ReferencePage:
    grades = [
        (grade.word, [links[rule.name] for rule in rules if rule.gravest is grade])
        for grade in sorted(Grade, reverse=True)
    ]
    kinds = [kind for kind in loaded.kinds.values() if issubclass(kind, Component)]
    hazards = [
        (
            anchor(hazard),
            hazard,
            means,
            [Link(kind.kind, kind_place(kind.kind)) for kind in kinds if hazard in (kind.hazards or ())],
            _against(hazard, rules, links),
        )
        for hazard, means in HAZARDS.items()
    ]
    entries = [Entry(word, "grade", f"{WORDS_FILE}#{anchor(word)}", "of findings") for word, _ in grades]
    entries += [
        Entry(word, "hazard", f"{WORDS_FILE}#{anchor(word)}", means) for word, means in HAZARDS.items()
    ]
    return ReferencePage(
        WORDS_FILE, "Grades and hazards", WORDS, "words.html", {"grades": grades, "hazards": hazards}, entries
    )


def _against(hazard: str, rules: Sequence[Rule], links: Mapping[str, Link]) -> list[Link]:
    said = (
        (rule, {*(rule.against or ()), *(one for named in rule.against_on.values() for one in named)})
        for rule in rules
    )
    return [links[rule.name] for rule, named in said if hazard in named]
