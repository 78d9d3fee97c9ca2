"""The record of a part as made: strength, elongation and hardness of its metal."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.specs import MadePart, Stress
from speclint_release.inputs.records import least_of
from speclint_release.sources import DOCUMENTS


@rule(
    "made.strength",
    title="The strengths and the elongation that the certificate of a part states are at least those of the standard "
    "of its material",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    edition=2,
    cites=[DOCUMENTS],
    why="every rule of strength rests on the least figures of the standard, and a metal that stretches less breaks "
    "where a sound one bends",
    leaves_out="cast iron, of which a bar cast beside the part tells little of its walls; strength hot; that the "
    "standard asks for more of thin metal: the least over all thicknesses is asked for; whether the test piece was "
    "taken as the standard asks",
    against=(),
)
def strength(made: MadePart, sheet: Sheet) -> Judgement:
    """Strengths and elongation at room temperature, whatever the thickness: the least of the standard."""
    drawn, document = sheet.follow(made.of), made.certificate
    stated = [
        (symbol, value, name)
        for symbol, value, name in (
            ("R_p", document.proof_stress, "proof_stress"),
            ("R_m", document.tensile_strength, "tensile_strength"),
            ("A", document.elongation, "elongation"),
        )
        if sheet.is_stated(name, value)
    ]
    if not stated:
        raise sheet.not_applicable("its certificate states no strength")
    material = sheet.material_of(drawn)
    if "iron" in material.family:
        raise sheet.not_applicable("a bar cast beside a part of iron tells little of its walls")

    def judge(one: tuple[str, Stress, str]) -> Judgement:
        symbol, value, name = one
        at = {} if name == "elongation" else {"at": DRAWING_TEMPERATURE}
        least = sheet.look_up(f"{symbol}_min", least_of(getattr(material, name)), of=drawn, **at)
        return sheet.at_least(sheet.take(symbol, value), least).else_says(
            f"{name.replace('_', ' ')} certified at {{found}}, {{limit}} is the least"
        )

    return sheet.each(
        [(name, (symbol, value, name)) for symbol, value, name in stated], lambda one: judge(one[1])
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


RULES = (hardness, strength)
