"""The record of a part as made: strength, elongation and hardness of its metal."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.specs import MadePart, Stress
from speclint_release.inputs.documents import BY_NO_TEST, OF_THE_METAL
from speclint_release.inputs.records import no_record
from speclint_release.inputs.standards import least_of
from speclint_release.sources import DOCUMENTS

#: The key of a hardness, by which one that was measured is recorded.
_HARDNESS = "hardness"


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
    title="The hardness that the spec of a part asks for is certified by a test of its metal and lies within its "
    "limits, or was measured",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[DOCUMENTS, COMMON_PRACTICE],
    why="wear of a pair is reckoned from the hardness of both",
    leaves_out="where on the part it was measured, and how far the hardness differs over it; limits of a hardness that "
    "the works measured (made.within-limits)",
    against=(),
    edition=3,
)
def hardness(made: MadePart, sheet: Sheet) -> Judgement:
    """Of kinds that state a hardness. What is on no certificate yet is a query, until the drawings are released."""
    asked = getattr(sheet.follow(made.of), "hardness", None)
    if asked is None or not sheet.is_stated("hardness asked for", asked):
        raise sheet.not_applicable("its spec asks for no hardness")
    measured = any(
        (sheet.said(f"dimension of {name}", one.dimension) or name) == _HARDNESS
        for name, one in made.measured.items()
    )
    if not sheet.is_stated("hardness certified", made.certificate.hardness):
        if measured:
            return sheet.states(True, "its hardness was measured by the works: made.within-limits judges it")
        says = "its spec asks for a hardness, and none is on record: neither certified nor measured"
        return no_record(says, made, Grade.NONCONFORMITY, sheet)
    low, high = sheet.take_limits("HB_s", asked, "hardness asked for")
    least, greatest = sheet.take_limits("HB", made.certificate.hardness, "hardness certified")
    return sheet.worst(
        *(() if measured else (_by_a_test(made, sheet),)),
        sheet.at_least(least, low).else_says("hardness {found} certified, from {limit} asked for"),
        sheet.at_most(greatest, high).else_says("hardness {found} certified, to {limit} asked for"),
    )


def _by_a_test(made: MadePart, sheet: Sheet) -> Judgement:
    """Whether the certificate rests, by its type, on a test of the metal delivered."""
    if not sheet.is_stated("type of the certificate", made.certificate.type):
        says = "its hardness is certified by a document of no type: 3.1 or 3.2 rests on a test of its metal"
        return no_record(says, made, Grade.NONCONFORMITY, sheet)
    kind = sheet.read("type of the certificate", made.certificate.type)
    tested = kind in OF_THE_METAL
    says = f"inspection document {kind} rests on a test of its metal" if tested else BY_NO_TEST.format(kind)
    return sheet.states(tested, says, where=made.certificate.type.where)


RULES = (hardness, strength)
