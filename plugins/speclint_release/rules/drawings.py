"""Drawings as documents: that each was read against its spec as it is, and that whoever has it holds the revision."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import Component
from speclint_release.sources import ISO_7200


@rule(
    "release.drawing-read",
    title="Somebody read the drawing against the spec as both now are: its file and the revision",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="the part is made to the drawing and checked by the spec: where the drawing was changed since they were "
    "compared, what was checked is not what is made",
    leaves_out="what the drawing shows, which no rule reads; who may enter a reading, and signatures: the register and "
    "the gate check those",
    against=(),
    edition=2,
)
def drawing_read(component: Component, sheet: Sheet) -> Judgement:
    """By the digest of the file. A drawing of which no file is named is a query, once the design is released."""
    if not sheet.is_stated("drawing file", component.drawing_file):
        return _without_file(component, sheet)
    sheet.read("drawing file", component.drawing_file)
    found = sheet.drawing_read()
    if found is None:
        raise sheet.not_assessed("the file of the drawing was not looked at", component.drawing_file.where)
    return sheet.states(found.word == "read", found.says, where=component.drawing_file.where)


def _without_file(component: Component, sheet: Sheet) -> Judgement:
    if not sheet.is_stated("drawing", component.drawing):
        raise sheet.not_applicable("it has no drawing")
    if sheet.setting("stage") != "released":
        raise sheet.not_applicable("it names no file of its drawing: that is due at the stage released")
    says = f"no file of drawing {sheet.read('drawing', component.drawing)} is named: nobody is told when it changes"
    return sheet.states(False, says, where=component.drawing.where).graded(Grade.QUERY)


@rule(
    "release.drawing-issued",
    title="Everyone to whom the drawing was issued holds the revision of the spec",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_7200.at("table 1, revision index and date of issue"), COMMON_PRACTICE],
    why="a shop makes the part to the print that it has on the bench",
    leaves_out="whether the old prints were given back or destroyed",
    against=(),
    edition=2,
)
def drawing_issued(component: Component, sheet: Sheet) -> Judgement:
    """By the last issue to each; two revisions issued to one on one day leave open which is held."""
    if not component.issued:
        raise sheet.not_applicable("it was issued to nobody, as far as the spec says")
    revision = sheet.read("revision", component.revision)
    held = dict(_held(component, sheet))
    others = [f"{to} holds {said}" for to, (revisions, said) in held.items() if revisions != {revision}]
    if others:
        says = f"{'; '.join(others)}: the spec is at revision {revision}"
        return sheet.states(False, says, where=component.issued[0].where)
    return sheet.states(True, f"revision {revision} is held by {', '.join(held)}")


def _held(component: Component, sheet: Sheet) -> Iterator[tuple[str, tuple[set[str], str]]]:
    """What each holds: the revisions of the last day on which the drawing was issued to it, and that in words."""
    issues = [
        (
            sheet.read(f"issue {number} to", one.to),
            sheet.read(f"issue {number} on", one.on),
            sheet.read(f"issue {number} revision", one.revision),
        )
        for number, one in enumerate(component.issued, 1)
    ]
    for to in dict.fromkeys(name for name, _, _ in issues):
        last = max(day for name, day, _ in issues if name == to)
        revisions = {revision for name, day, revision in issues if name == to and day == last}
        yield to, (revisions, f"revision {' and '.join(sorted(revisions))}, issued on {last}")


RULES = (drawing_read, drawing_issued)
