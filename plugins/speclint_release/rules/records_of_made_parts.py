"""Whether a part on which safety rests was made, and is on record, when the drawings are released."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import holds_pressure, is_safety_part
from speclint.specs import Component, MadePart


@rule(
    "release.made-parts",
    title="When the drawings are released, every pressure part and safety part has one part as made on record that is "
    "fitted, with its serial number and its certificate",
    on=Component,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="whoever certifies the engine certifies pieces of metal, and not drawings",
    leaves_out="what the records say: the made. rules judge each",
    against=(),
    edition=2,
)
def made_parts(component: Component, sheet: Sheet) -> Judgement:
    """Of several made to one spec one must be said to be fitted."""
    if sheet.setting("stage") != "released":
        raise sheet.not_applicable("the drawings are not released: parts need not be made yet")
    if not component.of_metal or not (holds_pressure(component, sheet) or is_safety_part(component, sheet)):
        raise sheet.not_applicable("it is neither a pressure part nor a safety part, or no piece of metal")
    made = sheet.belonging_to(component, MadePart)
    said_of = {one.id: sheet.is_stated("fitted", one.fitted) for one in made}
    fitted = [one for one in made if said_of[one.id] and sheet.read("fitted", one.fitted)]
    chosen = fitted or [one for one in made if len(made) == 1 and not said_of[one.id]]
    if len(chosen) != 1:
        said = (
            f"{len(fitted) or 'none'} of {len(made)} parts is fitted"
            if made
            else "no part as made is on record"
        )
        return sheet.states(False, said, where=component.where)
    (one,) = chosen
    missing = [
        name
        for name, value in (("serial number", one.serial), ("certificate", one.certificate.type))
        if not sheet.is_stated(name, value)
    ]
    if missing:
        return sheet.states(False, f"{one.id} states no {' and no '.join(missing)}", where=one.where)
    return sheet.states(True, f"{one.id} is on record")


RULES = (made_parts,)
