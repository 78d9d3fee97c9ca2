"""The record of a part as made: the analysis of its metal, and the carbon equivalent by which it was welded."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Ratio
from speclint.handbook.materials import carbon_equivalent
from speclint.specs import Fraction, MadePart
from speclint_release.formulae.records import content_with_deviation, share_of_content
from speclint_release.formulae.tables import holds_deviation, product_deviation
from speclint_release.inputs.equivalents import OF_EQUIVALENT, equivalent_parts, not_analysed
from speclint_release.inputs.standards import least_of, most_of
from speclint_release.sources import (
    DOCUMENTS,
    EN_1011_2,
    PRODUCT_ALLOYED,
    PRODUCT_CARBON,
    PRODUCT_PLATE,
    PRODUCT_TUBE,
)


@rule(
    "made.carbon-equivalent",
    title="The carbon equivalent that a certificate states is that of its analysis, to 0.02 %",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[EN_1011_2.at("C.2.1, method A"), COMMON_PRACTICE],
    why="the welder preheats by it: a wrong one cracks the weld",
    leaves_out="whether the analysis is right; irons, which are not welded by it; an element that the analysis leaves "
    "out, which makes the equivalent greater and never less",
    limits=[
        Limit("rounding", "0.02 %", "ratio", COMMON_PRACTICE, "what rounding of the elements may leave"),
    ],
    against=(),
    edition=2,
)
def carbon(made: MadePart, sheet: Sheet) -> Judgement:
    """By the formula of the International Institute of Welding.

    An element that is not stated is not taken as none: a lower one than the others give is told, any other is not
    assessed.
    """
    document = made.certificate
    if not sheet.is_stated("carbon equivalent", document.carbon_equivalent):
        raise sheet.not_applicable("its certificate states no carbon equivalent")
    missing = not_analysed(document)
    if len(missing) == len(OF_EQUIVALENT):
        raise sheet.not_assessed(f"the analysis does not state {', '.join(missing)}", document.where)
    worked = sheet.work("CE", carbon_equivalent, **equivalent_parts(document, sheet))
    stated = sheet.take("CE_s", document.carbon_equivalent)
    judged = sheet.equals(worked, stated, sheet.limit("rounding", "ΔCE")).else_says(
        "carbon equivalent {found} by the analysis, {limit} stated"
    )
    if missing and (judged.holds or worked < stated):
        raise sheet.not_assessed(f"the analysis does not state {', '.join(missing)}", document.where)
    return judged


@rule(
    "made.carbon-as-asked",
    title="The carbon equivalent of a part, as certified and by its analysis, is no more than its spec states",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[EN_1011_2.at("C.2.1, method A"), COMMON_PRACTICE],
    why="the preheat on the drawing suits the carbon equivalent on the drawing: a harder metal cracks beside its weld",
    leaves_out="metal that is not welded and states none; plates of other casts than the certificate names; an element "
    "that the analysis leaves out, which makes the equivalent greater and never less",
    against=(),
)
def carbon_as_asked(made: MadePart, sheet: Sheet) -> Judgement:
    """What is certified and what the stated elements give, each against the most that the spec states."""
    drawn, document = sheet.follow(made.of), made.certificate
    if not sheet.is_stated("carbon equivalent asked for", drawn.welding.carbon_equivalent):
        raise sheet.not_applicable("its spec states no carbon equivalent")
    stated = sheet.is_stated("carbon equivalent", document.carbon_equivalent)
    if not stated and not document.analysis:
        raise sheet.not_applicable("its certificate states neither a carbon equivalent nor an analysis")
    _, most = sheet.take_limits("CE_a", drawn.welding.carbon_equivalent, "carbon equivalent asked for")
    judged = []
    if stated:
        judged.append(
            sheet.at_most(sheet.take("CE_s", document.carbon_equivalent), most).else_says(
                "carbon equivalent {found} certified, {limit} at most asked for"
            )
        )
    if document.analysis:
        parts = equivalent_parts(document, sheet)
        judged.append(
            sheet.at_most(sheet.work("CE", carbon_equivalent, **parts), most).else_says(
                "carbon equivalent {found} by the analysis, {limit} at most asked for"
            )
        )
    missing = not_analysed(document)
    found = sheet.worst(*judged)
    if missing and not stated and found.holds:
        raise sheet.not_assessed(f"the analysis does not state {', '.join(missing)}", document.where)
    return found


@rule(
    "made.analysis",
    title="Each element of the analysis of a cast is within what the standard of its material allows, and of a product "
    "no further beyond than that standard lets it be, or a tenth where no such table is held",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[DOCUMENTS, PRODUCT_PLATE, PRODUCT_TUBE, PRODUCT_CARBON, PRODUCT_ALLOYED, COMMON_PRACTICE],
    why="strength, creep and welding are those of the metal ordered, and another analysis is another metal",
    leaves_out="iron, whose standard asks for strength alone; sums of elements, and elements that no standard names; "
    "an analysis that does not say whether it is of the cast, which is judged as that of a product",
    limits=[
        Limit(
            "deviation",
            "0.1",
            "ratio",
            COMMON_PRACTICE,
            "share by which the analysis of a product may lie beyond that of its cast, where no table is held",
        ),
    ],
    against=(),
    edition=2,
)
def analysis(made: MadePart, sheet: Sheet) -> Judgement:
    """Each element that both the certificate and the data of the material state, against the least and the most."""
    drawn, document = sheet.follow(made.of), made.certificate
    if not document.analysis:
        raise sheet.not_applicable("its certificate states no analysis")
    material = sheet.material_of(drawn)
    known = {one: value for one, value in document.analysis.items() if one in material.elements()}
    if not known or "iron" in material.family:
        raise sheet.not_applicable(
            "the standard of its material names none of the elements, or asks for strength alone"
        )
    of_cast = sheet.said("analysed", document.analysed) == "cast"

    def judge(item: tuple[str, Fraction]) -> Judgement:
        element, value = item
        least = sheet.look_up(f"{element}_l", least_of(material.composition), of=drawn, element=element)
        most = sheet.look_up(f"{element}_h", most_of(material.composition), of=drawn, element=element)
        found = sheet.take(element, value)
        below, beyond = (
            0.0 if of_cast else _deviation(element, limit, material.standard, sheet)
            for limit in (least, most)
        )
        low = sheet.work("w_l", content_with_deviation, w=least, d=below, s=-1.0)
        high = sheet.work("w_h", content_with_deviation, w=most, d=beyond, s=1.0)
        return sheet.worst(
            sheet.at_least(found, low).else_says(f"{{found}} of {element} certified, {{limit}} is the least"),
            sheet.at_most(found, high).else_says(f"{{found}} of {element} certified, {{limit}} is the most"),
        )

    return sheet.each(known.items(), judge)


def _deviation(element: str, limit: Ratio, standard: str, sheet: Sheet) -> Ratio:
    """What a product may lie beyond a limit of its cast: by the table of its standard, else a share of the limit."""
    if holds_deviation(standard, element, limit):
        return sheet.look_up("d", product_deviation, standard=standard, element=element, content=limit)
    return sheet.work("d", share_of_content, k=sheet.limit("deviation", "k"), w=limit)


RULES = (analysis, carbon, carbon_as_asked)
