"""The record of a part as made: strength, hardness and carbon equivalent of its metal."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import carbon_equivalent
from speclint.handbook.tables import Reading
from speclint.specs import MadePart
from speclint_release.sources import DOCUMENTS, EN_1011_2

#: Elements of the carbon equivalent: all of them must be known.
_ELEMENTS = ("C", "Mn", "Cr", "Mo", "V", "Ni", "Cu")


@rule(
    "made.strength",
    title="The strengths that the certificate of a part states are at least those of the standard of its material",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[DOCUMENTS],
    why="every rule of strength rests on the least figures of the standard",
    leaves_out="cast iron, of which a bar cast beside the part tells little of its walls; strength hot; that the "
    "standard asks for more of thin metal: the least over all thicknesses is asked for; whether the test piece was "
    "taken as the standard asks",
    against=(),
)
def strength(made: MadePart, sheet: Sheet) -> Judgement:
    """Proof stress and tensile strength at room temperature, whatever the thickness: the least of the standard."""
    drawn, document = sheet.follow(made.of), made.certificate
    stated = [
        (symbol, value, name)
        for symbol, value, name in (
            ("R_p", document.proof_stress, "proof_stress"),
            ("R_m", document.tensile_strength, "tensile_strength"),
        )
        if sheet.is_stated(name, value)
    ]
    if not stated:
        raise sheet.not_applicable("its certificate states no strength")
    material = sheet.material_of(drawn)
    if "iron" in material.family:
        raise sheet.not_applicable("a bar cast beside a part of iron tells little of its walls")
    return sheet.worst(
        *(
            sheet.at_least(
                sheet.take(symbol, value),
                sheet.look_up(
                    f"{symbol}_min", _least_of(getattr(material, name)), of=drawn, at=DRAWING_TEMPERATURE
                ),
            ).else_says(f"{name.replace('_', ' ')} certified at {{found}}, {{limit}} is the least")
            for symbol, value, name in stated
        )
    )


def _least_of(question: Callable[..., Reading]) -> Callable[..., Reading]:
    """A question to a material, answered by the least that its standard allows alone."""

    def asked(**at: Any) -> Reading:
        found = question(**at)
        return replace(found, nominal=found.low, high=found.low)

    asked.__name__ = f"least {question.__name__}"
    return asked


@rule(
    "made.carbon-equivalent",
    title="The carbon equivalent that a certificate states is that of its analysis, to 0.02 %",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[EN_1011_2.at("C.2.1, method A"), COMMON_PRACTICE],
    why="the welder preheats by it: a wrong one cracks the weld",
    leaves_out="whether the analysis is right; irons, which are not welded by it",
    limits=[
        Limit("rounding", "0.02 %", "ratio", COMMON_PRACTICE, "what rounding of the elements may leave"),
    ],
    against=(),
)
def carbon(made: MadePart, sheet: Sheet) -> Judgement:
    """By the formula of the International Institute of Welding; an element that is not stated is not taken as none."""
    document = made.certificate
    if not sheet.is_stated("carbon equivalent", document.carbon_equivalent):
        raise sheet.not_applicable("its certificate states no carbon equivalent")
    missing = [one for one in _ELEMENTS if one not in document.analysis]
    if missing:
        raise sheet.not_assessed(f"the analysis does not state {', '.join(missing)}", document.where)
    parts = {one: sheet.take(one, document.analysis[one]) for one in _ELEMENTS}  # type: ignore[index]
    worked = sheet.work("CE", carbon_equivalent, **parts)
    stated = sheet.take("CE_s", document.carbon_equivalent)
    return sheet.equals(worked, stated, sheet.limit("rounding", "ΔCE")).else_says(
        "carbon equivalent {found} by the analysis, {limit} stated"
    )


@rule(
    "made.hardness",
    title="The hardness that the certificate of a part states lies within the limits of its spec",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[DOCUMENTS, COMMON_PRACTICE],
    why="wear of a pair is reckoned from the hardness of both",
    leaves_out="where on the part it was measured, and how far the hardness differs over it",
    against=(),
)
def hardness(made: MadePart, sheet: Sheet) -> Judgement:
    """Of kinds that state a hardness."""
    asked = getattr(sheet.follow(made.of), "hardness", None)
    if asked is None or not sheet.is_stated("hardness asked for", asked):
        raise sheet.not_applicable("its spec asks for no hardness")
    if not sheet.is_stated("hardness certified", made.certificate.hardness):
        raise sheet.not_applicable("its certificate states no hardness")
    low, high = sheet.take_limits("HB_s", asked, "hardness asked for")
    least, greatest = sheet.take_limits("HB", made.certificate.hardness, "hardness certified")
    return sheet.worst(
        sheet.at_least(least, low).else_says("hardness {found} certified, from {limit} asked for"),
        sheet.at_most(greatest, high).else_says("hardness {found} certified, to {limit} asked for"),
    )


RULES = (
    strength,
    hardness,
    carbon,
)
