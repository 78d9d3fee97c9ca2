"""What a part that is bought is described by."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.specs import Component


def _bought(part: Component, sheet: Sheet) -> Iterator[ToFill]:
    """The maker's drawing or data sheet and the inspection document of a part that is bought."""
    if not sheet.is_stated("how it is supplied", part.supplied_as):
        return
    if sheet.read("supplied as", part.supplied_as) == "bought":
        for wants, value in (
            ("drawing or data sheet", part.drawing),
            ("inspection document", part.inspection_document),
        ):
            found = (wants,) if sheet.is_stated(wants, value) else ()
            yield ToFill(part.id, wants, found, where=part.where)


bought: Rule = filled_once(
    "release.bought-part-described",
    title="A part that is bought states its drawing or data sheet and its inspection document",
    on=Component,
    places=_bought,
    row=650,
    gravity="plan",
    why="what is ordered by a word is delivered by another",
    leaves_out="whether the data sheet covers the duty",
)

RULES = (bought,)
