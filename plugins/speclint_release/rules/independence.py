"""Who certifies a pressure part is nobody who designed it, and not the works that made it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from speclint import Grade, Judgement, Sheet, rule
from speclint.facts import (
    holds_pressure,
    is_firm_in,
    is_named_in,
    may_be_one_person,
    names_only_a_role,
    people_named,
)
from speclint.specs import Component, MadePart
from speclint_release.inputs.vessels import of_vessel
from speclint_release.sources import L122

if TYPE_CHECKING:
    from speclint.specs import Spec


@rule(
    "release.independent-body",
    title="The competent body of a pressure part is nobody who prepared or checked its drawing",
    on=Component,
    edition=6,
    grade=Grade.HOLD,
    cites=[L122.at("meaning of competent person, independence")],
    why="who certifies a part of his own design looks for the mistakes that he thought of, and for no others",
    leaves_out="whether the body is competent for the part: the local code, and the authority behind it, decide; "
    "the works that made it (made.independent-body)",
    against=(),
)
def independent_body(component: Component, sheet: Sheet) -> Judgement:
    """The body that the part or its vessel names, against the names of those who prepared and checked this part."""
    if sheet.setting("stage") == "draft":
        raise sheet.not_applicable("the design is a draft: the competent body is due at the review stage")
    named = _competent_body(component, sheet)
    body = sheet.read("competent body", named)
    wrong = next(_against(body, component, sheet), None)
    if wrong is not None:
        return sheet.states(False, f"{wrong}, and the competent body is {body}", where=named.where)
    return sheet.states(True, f"the competent body is {body}, who neither prepared nor checked it")


def _competent_body(part: Spec, sheet: Sheet) -> Any:
    """What a pressure part, or its vessel, names as competent body.

    :raises NotApplicable: where the part holds no pressure, or none is named.
    """
    if not isinstance(part, Component) or not holds_pressure(part, sheet):
        raise sheet.not_applicable("it holds no pressure")
    named = of_vessel(part, "competent_body", sheet)
    if not sheet.is_stated("competent body", named):
        raise sheet.not_applicable("it names no competent body: release.pressure-part asks for it")
    return named


def _against(body: str, component: Component, sheet: Sheet) -> Iterator[str]:
    """Why the body is not another than the designer and the checker."""
    if names_only_a_role(body):
        yield "a role in the works names nobody outside of it"
    for role, who in (("prepared", component.prepared_by), ("checked", component.checked_by)):
        for person in people_named(sheet.said(f"{role} by", who) or ""):
            if is_named_in(person, body) or any(may_be_one_person(person, one) for one in people_named(body)):
                yield f"{role} by {person}"


@rule(
    "made.independent-body",
    title="The competent body of a pressure part is not the works that made the part on record",
    on=MadePart,
    edition=5,
    grade=Grade.HOLD,
    cites=[L122.at("meaning of competent person, independence")],
    why="works that certify what they made themselves have nobody who would rather find a fault than deliver",
    leaves_out="whether the body is competent for the part, and an inspectorate of the maker's own that the local code "
    "recognises: the local code, and the authority behind it, decide; works that belong to the body without a name in "
    "common",
    against=(),
)
def body_is_not_the_maker(made: MadePart, sheet: Sheet) -> Judgement:
    """The body that the drawing or its vessel names, against the maker of the part as made."""
    named = _competent_body(sheet.follow(made.of), sheet)
    if not sheet.is_stated("maker", made.maker):
        raise sheet.not_applicable("its maker is not on record: made.identified asks for it")
    body, maker = sheet.read("competent body", named), sheet.read("maker", made.maker)
    says = f"made by {maker}, and the competent body is {body}"
    if names_only_a_role(body):
        return sheet.states(False, f"{says}: a role in the works", where=named.where)
    if names_only_a_role(maker):
        return sheet.states(False, f"{says}: no works by name", where=made.maker.where)
    return sheet.states(not is_firm_in(maker, body), says, where=made.maker.where)


RULES = (independent_body, body_is_not_the_maker)
