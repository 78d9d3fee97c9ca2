"""The record of a part as made: its number and revision, and the document of its metal."""

from __future__ import annotations

from collections.abc import Iterator
from unicodedata import category

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import holds_pressure
from speclint.specs import Component, MadePart
from speclint_release.sources import DOCUMENTS

#: Types of EN 10204 from that which tells least to that which tells most.
_TYPES = ("2.1", "2.2", "3.1", "3.2")
#: Kinds of which one spec stands for several pieces of metal, each of which may be fitted.
_OF_SEVERAL = ("bolted-joint", "frame-fastening")


@rule(
    "made.identified",
    title="A part as made states its serial number, which no other part made to its drawing number has, the revision "
    "that it was made to and its maker",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a record that cannot be told to belong to one piece of metal proves nothing of any",
    leaves_out="whether the number stands on the part",
    against=(),
    edition=6,
)
def identified(made: MadePart, sheet: Sheet) -> Judgement:
    """Lists what is missing, and the other parts of the same drawing number that have this number."""
    stated = {"serial": made.serial, "made_to": made.made_to, "maker": made.maker}
    missing = [name for name, value in stated.items() if not sheet.is_stated(name, value)]
    if missing:
        return sheet.states(False, f"not stated: {', '.join(missing)}", where=stated[missing[0]].where)
    number = sheet.read("serial", made.serial)
    drawn = sheet.follow(made.of)
    alike = [
        one.id
        for spec in (drawn, *sheet.sharing_drawing(drawn))
        for one in sheet.belonging_to(spec, MadePart)
        if one.id != made.id
        and sheet.is_stated("serial", one.serial)
        and _as_stamped(sheet.read("serial", one.serial)) == _as_stamped(number)
    ]
    if alike:
        says = f"serial number {number} is that of {' and '.join(alike)} too"
        return sheet.states(False, says, where=made.serial.where)
    return sheet.states(True, "serial number, revision and maker are stated")


def _as_stamped(number: str) -> str:
    """A serial number as it is stamped: its letters large, without spaces, each dash and minus a hyphen."""
    letters = "".join(number.split()).upper()
    return "".join("-" if category(one) == "Pd" or one == "−" else one for one in letters)


@rule(
    "made.fitted-once",
    title="Of the parts made to one spec one is fitted",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="of two parts that are said to stand in one place one lies in the store, and its sizes may be those judged",
    leaves_out="bolts and studs, of which one spec stands for several; which of the parts is fitted, and a part whose "
    "record does not say",
    against=(),
)
def fitted_once(made: MadePart, sheet: Sheet) -> Judgement:
    """The other parts of the same spec that are fitted too."""
    drawn = sheet.follow(made.of)
    if not (_is_fitted(made, sheet) and drawn.of_metal) or drawn.is_one_of(_OF_SEVERAL):
        raise sheet.not_applicable("it is not said to be fitted, or its spec stands for several pieces")
    others = [
        one.id for one in sheet.belonging_to(drawn, MadePart) if one.id != made.id and _is_fitted(one, sheet)
    ]
    says = (
        f"{' and '.join(others)} is fitted in its place too"
        if others
        else f"it alone is fitted as {drawn.id}"
    )
    return sheet.states(not others, says, where=made.fitted.where)


def _is_fitted(made: MadePart, sheet: Sheet) -> bool:
    return sheet.said(f"{made.id} fitted", made.fitted) is True


@rule(
    "made.revision",
    title="A part was made to the revision of the drawing that its spec states",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a part made to an old revision lacks the change for which the drawing was altered",
    leaves_out="what the change was: a part that the change does not concern may be conceded",
    against=(),
)
def revision(made: MadePart, sheet: Sheet) -> Judgement:
    """Both as they are written."""
    to = sheet.read("made to", made.made_to)
    now = sheet.read("revision", sheet.follow(made.of).revision)
    said = f"made to revision {to}"
    return sheet.states(
        to == now,
        said if to == now else f"{said}, the drawing is at {now}",
        where=made.made_to.where,
    )


@rule(
    "made.certificate",
    title="The metal of a part has an inspection document of at least the type that its spec asks for, of its heat and "
    "of the material ordered",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[DOCUMENTS],
    why="a document of a lower type tells of other metal, and one without a heat of none in particular",
    leaves_out="whether the document is genuine, and whether it is of this piece: the competent person or body that "
    "the local code names compares its marks",
    against=(),
    edition=2,
)
def certificate(made: MadePart, sheet: Sheet) -> Judgement:
    """A hold where the part holds pressure; what is missing is listed."""
    drawn = sheet.follow(made.of)
    if not sheet.is_stated("inspection document", drawn.inspection_document):
        raise sheet.not_applicable("its spec asks for no inspection document")
    asked = sheet.read("inspection document", drawn.inspection_document)
    wrong = "; ".join(_wrong_in_certificate(made, drawn, asked, sheet))
    grade = Grade.HOLD if holds_pressure(drawn, sheet) else Grade.NONCONFORMITY
    said = wrong or f"inspection document of at least type {asked}, with its heat"
    return sheet.states(not wrong, said, where=made.certificate.where).graded(grade)


def _wrong_in_certificate(made: MadePart, drawn: Component, asked: str, sheet: Sheet) -> Iterator[str]:
    document = made.certificate
    if not sheet.is_stated("type", document.type):
        yield f"no inspection document, {asked} is asked for"
        return
    kind = sheet.read("type", document.type)
    if _TYPES.index(kind) < _TYPES.index(asked):
        yield f"inspection document {kind}, {asked} is asked for"
    if not sheet.is_stated("heat", document.heat):
        yield "it names no heat"
    if not sheet.is_stated("material", drawn.material):
        return
    ordered = sheet.read("material", drawn.material)
    if not sheet.is_stated("material", document.material):
        yield f"it names no material, {ordered} is asked for"
    elif (named := sheet.read("material", document.material)) != ordered:
        yield f"it certifies {named}, {ordered} is asked for"


RULES = (
    identified,
    fitted_once,
    revision,
    certificate,
)
