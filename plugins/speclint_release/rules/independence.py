"""Who certifies a pressure part is nobody who designed it."""

from __future__ import annotations

from speclint import Grade, Judgement, Sheet, rule
from speclint.facts import holds_pressure, is_named_in, people_named
from speclint.specs import Component
from speclint_release.inputs import of_vessel
from speclint_release.sources import L122


@rule(
    "release.independent-body",
    title="The competent body of a pressure part is nobody who prepared or checked its drawing",
    on=Component,
    grade=Grade.HOLD,
    cites=[L122.at("meaning of competent person, independence")],
    why="who certifies a part of his own design looks for the mistakes that he thought of, and for no others",
    leaves_out="whether the body is competent for the part, and independent of the works: the local code, and the "
    "authority behind it, decide",
    against=(),
)
def independent_body(component: Component, sheet: Sheet) -> Judgement:
    """The body that the part or its vessel names, against the names of those who prepared and checked this part."""
    if sheet.setting("stage") == "draft":
        raise sheet.not_applicable("the design is a draft: the competent body is due at the review stage")
    if not holds_pressure(component, sheet):
        raise sheet.not_applicable("it holds no pressure")
    named = of_vessel(component, "competent_body", sheet)
    if not sheet.is_stated("competent body", named):
        raise sheet.not_applicable("it names no competent body: release.pressure-part asks for it")
    body = sheet.read("competent body", named)
    for role, who in (("prepared", component.prepared_by), ("checked", component.checked_by)):
        for person in people_named(sheet.said(f"{role} by", who) or ""):
            if is_named_in(person, body):
                says = f"{role} by {person}, and the competent body is {body}"
                return sheet.states(False, says, where=named.where)
    return sheet.states(True, f"the competent body is {body}, who neither prepared nor checked it")


RULES = (independent_body,)
