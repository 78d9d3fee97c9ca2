"""The record of a part that holds no pressure, but can hurt someone when it fails."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import holds_pressure, is_safety_part
from speclint.specs import Component
from speclint_release.inputs.documents import BY_NO_TEST, OF_THE_METAL
from speclint_release.inputs.examinations import finds_cracks, names_no_method
from speclint_release.sources import DOCUMENTS

#: Kinds that break by a crack which grows from turn to turn, and are examined for it. Common practice.
_BREAK_BY_FATIGUE = ("crosshead", "driving-axle", "pin", "piston-rod")


@rule(
    "release.safety-part",
    title="A part without pressure whose failure can hurt someone states how it is examined, and its metal has an "
    "inspection document by tests of the very metal delivered: 3.1 or 3.2",
    on=Component,
    grade=Grade.NONCONFORMITY,
    edition=5,
    cites=[DOCUMENTS, COMMON_PRACTICE],
    why="a rod, a pin or a seat that breaks hurts whoever is near, and a crack in it is found only if it is looked for",
    leaves_out="pressure parts (release.pressure-part); whether the examination is sufficient, as a visual one may be "
    "of parts other than axles, crossheads, pins and rods, and how often it is repeated: the local code and a "
    "competent person decide",
    against=(),
)
def safety_part(component: Component, sheet: Sheet) -> Judgement:
    """Lists what is missing of a part that is a safety part by its kind, or that says so."""
    if holds_pressure(component, sheet):
        raise sheet.not_applicable("it holds pressure: release.pressure-part asks for its record")
    if not is_safety_part(component, sheet):
        raise sheet.not_applicable("its failure hurts nobody, by its kind and by its own word")
    wanted = {"examination": component.examination, "inspection_document": component.inspection_document}
    missing = [name for name, value in wanted.items() if not sheet.is_stated(name, value)]
    if missing:
        return sheet.states(False, f"not stated: {', '.join(missing)}", where=wanted[missing[0]].where)
    how = sheet.read("examination", component.examination)
    document = sheet.read("inspection document", component.inspection_document)
    if names_no_method(how):
        says = f'examination "{how}" does not say how it is examined'
        return sheet.states(False, says, where=component.examination.where)
    if component.is_one_of(_BREAK_BY_FATIGUE) and not finds_cracks(how):
        says = f'examination "{how}" finds no crack before it is open'
        return sheet.states(False, says, where=component.examination.where)
    if document not in OF_THE_METAL:
        return sheet.states(False, BY_NO_TEST.format(document), where=component.inspection_document.where)
    return sheet.states(True, f"{how}; inspection document {document}")


RULES = (safety_part,)
