"""Who is responsible for a drawing, and under which codes."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, facts, rule
from speclint.specs import UNDECIDED, Component, Envelope, bare_words, names_nothing
from speclint_release.inputs.safety import can_hurt
from speclint_release.sources import ISO_7200

if TYPE_CHECKING:
    from speclint.specs import Link, NotStated, Spec

#: Words that stand in a title block until somebody fills it, and a mark of the state in the place of a revision.
_NO_TITLE = frozenset(
    {"title", "no title", "untitled", "part", "new part", "name", "drawing", "test", "tmp", "xx", "xxx"}
    | {"component", "description", "new drawing", "unnamed", "titel", "ohne titel", "benennung"}
)
_NO_NUMBER = frozenset(
    {"drawing", "draft", "number", "new", "xx", "xxx", "xxxx", "drg", "drg no", "dwg", "dwg no", "drawing no"}
    | {"drawing number", "sketch", "see list", "not yet allocated", "zeichnung", "zeichnungsnummer"}
)
_NO_REVISION = frozenset(
    {
        "draft",
        "preliminary",
        "in work",
        "in progress",
        "work in progress",
        "wip",
        "current",
        "latest",
        "final",
        "released",
    }
    | {"revision", "rev", "xx", "xxx", "as drawing", "entwurf", "vorabzug", "aktuell", "neueste"}
)
#: Words by which a field is still to be filled.
_UNDECIDED = UNDECIDED | {"pending", "awaited", "folgt"}
_BETWEEN_PIECES = re.compile(r"[-/._\s]")
#: How the first revision of a drawing is marked in some offices.
_FIRST_REVISION = ("-", "–", "—")


@rule(
    "release.identity",
    title="Drawing number, revision, title, material and the person who prepared it are stated",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_7200.at("table 1, identifying and administrative data fields"), COMMON_PRACTICE],
    why="a part whose drawing cannot be identified cannot be made again, nor traced when it fails",
    edition=5,
    leaves_out="whether the number and the revision are those of the drawing in the shop; parts as made, which their "
    "serial numbers identify (made.identified)",
    against=(),
)
def identity(component: Component, sheet: Sheet) -> Judgement:
    """Lists every one of the five that is missing, or is only a mark, a role, or a word of an empty title block.

    A dash is a first revision.
    """
    if component.is_one_of(("made-part",)):
        raise sheet.not_applicable("its serial number identifies it: made.identified asks for that")
    missing = []
    for name, value in (
        ("drawing", component.drawing),
        ("revision", component.revision),
        ("title", component.title),
        ("material", component.material),
        ("prepared_by", component.prepared_by),
    ):
        if name == "material" and not component.of_metal:
            continue
        if not sheet.is_stated(name, value):
            missing.append((name, value.where))
        elif _says_nothing(name, said := sheet.read(name, value), sheet):
            missing.append((f'{name}, but "{said}"', value.where))
    if not missing:
        return sheet.states(True, "drawing, revision, title, material and prepared_by are stated")
    names = ", ".join(name for name, _ in missing)
    return sheet.states(False, f"not stated: {names}", where=missing[0][1])


def _says_nothing(name: str, said: str, sheet: Sheet) -> bool:
    """Whether what stands in a field of a title block names nothing that can be told from another.

    What names nothing in any place is refused when the spec is read. A title has two letters, a number two characters.
    A draft may be marked as one in the place of its revision, until it goes for review.
    """
    words = bare_words(said)
    match name:
        case "prepared_by":
            return facts.names_no_person(said)
        case "title":
            return sum(one.isalpha() for one in words) < 2 or words in _NO_TITLE or _is_undecided(words)
        case "drawing":
            return len(words) < 2 or words in _NO_NUMBER or _is_unfilled(said)
        case "revision":
            if words in _NO_REVISION:
                return sheet.setting("stage") != "draft"
            if "?" in said or _is_undecided(words):
                return True
            return names_nothing(said) and said.strip() not in _FIRST_REVISION
    return False


def _is_unfilled(number: str) -> bool:
    """Whether a part of a drawing number is still to be filled in: places marked by one sign, noughts alone, an end.

    Words and figures are told apart at what stands between them: "XX-1204" is a number, and "CN-C-XXXX" is not.
    """
    *before, last = pieces = _BETWEEN_PIECES.split(number.strip().lower())
    figures = [one for one in number if one.isdigit()]
    if not last or "?" in number or "__" in number or "##" in number or _is_undecided(" ".join(pieces)):
        return True
    repeated = len(last) > 1 and last[0] in "xn" and set(last) == {last[0]}
    return (repeated and bool(before)) or (bool(figures) and set(figures) == {"0"})


def _is_undecided(words: str) -> bool:
    return not _UNDECIDED.isdisjoint(words.split())


@rule(
    "release.local-code",
    title="The settings name the local codes for pressure and for railway running",
    on=Component,
    edition=3,
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="every hold defers to these codes: they, and not this program, decide what may run or hold pressure",
    leaves_out="whether the codes named are those in force: the authority behind the local code, or a "
    "competent person, decides",
    against=(),
)
def local_code(component: Component, sheet: Sheet) -> Judgement:
    """Applies to parts that hold pressure or can hurt someone when they fail."""
    missing = [
        words
        for words, named in (
            ("pressure", sheet.setting("pressure codes")),
            ("railway running", sheet.setting("railway codes")),
        )
        if all(names_nothing(one) for one in named.split(","))
    ]
    if not missing:
        return sheet.states(True, "the codes for pressure and for railway running are named")
    if not can_hurt(component, sheet):
        raise sheet.not_applicable("neither a pressure part nor a safety part")
    return sheet.states(False, f"speclint.toml names no local code for {' nor for '.join(missing)}")


@rule(
    "release.independent-check",
    title="A pressure part or safety part was checked by someone other than the person who prepared it",
    on=Component,
    edition=9,
    grade=Grade.HOLD,
    cites=[ISO_7200.at("table 1, creator and approval person"), COMMON_PRACTICE],
    why="a person who made a mistake tends to overlook it the second time as well",
    leaves_out="what was checked and how well: the local code, or a competent person, may require a "
    "proof calculation",
    against=(),
)
def independent_check(component: Component, sheet: Sheet) -> Judgement:
    """One of those who checked is none of those who prepared, however names are written, from the review stage on."""
    if sheet.setting("stage") == "draft":
        raise sheet.not_applicable("the design is a draft: the check is due at the review stage")
    if not can_hurt(component, sheet):
        raise sheet.not_applicable("neither a pressure part nor a safety part")
    preparer = sheet.read("prepared by", component.prepared_by)
    if not sheet.is_stated("checked by", component.checked_by):
        return sheet.states(
            False, f"prepared by {preparer}, checked by nobody", where=component.checked_by.where
        )
    checker = sheet.read("checked by", component.checked_by)
    says = f"prepared by {preparer}, checked by {checker}"
    other = facts.names_another_person(checker, than=preparer)
    who = "nobody by name" if facts.names_no_person(checker) else "the same person"
    return sheet.states(
        other,
        says if other else f"{says}: {who}",
        where=component.checked_by.where,
    )


@rule(
    "release.duty-checked",
    edition=2,
    title="The duty that a part states, and the loading gauge that an envelope is drawn in, were checked by someone "
    "other than the person who prepared them",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="every wall, fit and bolt is judged at the pressures and temperatures of its duty, every point by one outline: "
    "one slip there is in all",
    leaves_out="what was checked and how well; a duty that is taken from another part, whose own check tells of it",
    against=(),
)
def duty_checked(component: Component, sheet: Sheet) -> Judgement:
    """As of a drawing (release.independent-check), from the review stage on."""
    if sheet.setting("stage") == "draft":
        raise sheet.not_applicable("the design is a draft: the check is due at the review stage")
    links: list[tuple[str, Link[Any] | NotStated]] = [("duty", component.duty)]
    if isinstance(component, Envelope):
        links.append(("gauge", component.gauge))
    judged = [_checked(sheet.follow(link), sheet) for name, link in links if sheet.is_stated(name, link)]
    if not judged:
        raise sheet.not_applicable("it states no duty of its own, and no loading gauge")
    return sheet.worst(*judged)


def _checked(basis: Spec, sheet: Sheet) -> Judgement:
    """Of a duty or a gauge: one who is named checked what another prepared."""
    preparer = sheet.said(f"prepared by, {basis.id}", basis.prepared_by)
    checker = sheet.said(f"checked by, {basis.id}", basis.checked_by)
    says = f"{basis.id} was prepared by {preparer or 'nobody'}, checked by {checker or 'nobody'}"
    named = bool(preparer and checker) and not facts.names_no_person(preparer or "")
    checked = named and facts.names_another_person(checker or "", than=preparer or "")
    return sheet.states(checked, says, where=basis.checked_by.where)


RULES = (duty_checked, identity, local_code, independent_check)
