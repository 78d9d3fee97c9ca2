"""Surfaces that rub or strike: may they meet?"""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import Component, PistonRing, PoppetValve, ValveSpindle
from speclint_pairings.formulae.tables import Verdict, verdict
from speclint_pairings.inputs.pairs import Pair, Surface, pairs_of
from speclint_pairings.sources import AHRONS, NEALE, STAINLESS_WEAR


@rule(
    "pairing.sliding",
    title="The two surfaces are a pair that the table of pairs allows, with the lubricant that it asks for",
    on=(PistonRing, ValveSpindle, PoppetValve),
    grade=Grade.NONCONFORMITY,
    cites=[
        NEALE.at("sections on piston rings and bearing materials"),
        STAINLESS_WEAR.at("galling of self-mated and dissimilar couples"),
        AHRONS.at("chapter on cylinders, mixtures of iron"),
        COMMON_PRACTICE,
    ],
    why="some pairs of metals seize and tear each other within the first mile, whatever the oil",
    leaves_out="load, speed, roughness and quantity of oil; surfaces that meet without a link between "
    "their specs",
    against=("seize", "wear"),
)
def sliding(component: Component, sheet: Sheet) -> Judgement:
    """Each pair that the links give, against the table of pairs; one that is not in it is a query."""
    return sheet.each(pairs_of(component, sheet), lambda pair: _judged(pair, sheet))


def _judged(pair: Pair, sheet: Sheet) -> Judgement:
    pair_in_words = f"{_in_words(pair.one)} {pair.contact} on {_in_words(pair.other)}"
    if pair.contact == "strikes":
        pair_in_words = f"{_in_words(pair.one)} strikes {_in_words(pair.other)}"
    found = verdict(pair.contact, pair.one.counts_as, pair.other.counts_as)
    where = pair.one.of.material.where
    if found is None:
        says = f"{pair_in_words}: no source held here covers this pair"
        return sheet.states(False, says, where=where).graded(Grade.QUERY)
    says = f"{pair_in_words}: {found.reason} ({found.source})"
    if found.may and found.needs_oil:
        return _under_oil(pair, found, says, sheet)
    return sheet.states(found.may, says, where=where)


def _under_oil(pair: Pair, found: Verdict, says: str, sheet: Sheet) -> Judgement:
    """The pair is allowed only with oil, which either of the two may state."""
    for one in (pair.other.of, pair.one.of):
        lubricant = one.lubrication.lubricant
        if sheet.is_stated(f"lubricant of {one.id}", lubricant):
            dry = sheet.read(f"lubricant of {one.id}", lubricant) == "none"
            wording = f"{says}, but no lubricant is used" if dry else says
            return sheet.states(found.may and not dry, wording, where=lubricant.where)
    missing = pair.other.of.lubrication.lubricant.where
    raise sheet.not_assessed(
        f"{missing.key} is not stated in {missing.file}, nor by {pair.one.of.id}", missing
    )


def _in_words(surface: Surface) -> str:
    return f"{surface.called} ({surface.counts_as or 'not in the table of surfaces'})"


RULES = (sliding,)
