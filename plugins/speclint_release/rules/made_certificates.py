"""What the certificates of several parts as made say of one document, or of one heat."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import is_firm_in
from speclint.handbook.materials import carbon_equivalent
from speclint.specs import Certificate, MadePart, as_filed
from speclint_release.inputs.equivalents import equivalent_parts, not_analysed
from speclint_release.sources import DOCUMENTS

#: Elements of which little is in a steel, and which certificates give to thousandths of a per cent.
_IN_THOUSANDTHS = frozenset({"P", "S", "N", "Al", "Nb", "V", "Ti", "B"})


@rule(
    "made.certificates-agree",
    title="Certificates of one number from one issuer have one day, one type and one material, and those of one heat "
    "one material, and one analysis and carbon equivalent of the cast",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[DOCUMENTS, COMMON_PRACTICE],
    why="of two certificates that contradict each other one is of other metal, and nobody knows which",
    edition=5,
    leaves_out="a number or a heat of two issuers, who number each for himself; the heats of one document, which may "
    "be of several; figures of tests, which are of pieces; analyses of the product, which differ from piece to piece "
    "(made.analysis)",
    against=(),
    limits=[
        Limit("rounding", "0.02 %", "ratio", COMMON_PRACTICE, "what rounding may leave of an element"),
        Limit(
            "trace",
            "0.005 %",
            "ratio",
            COMMON_PRACTICE,
            "what rounding may leave of P, S, N, Al, Nb, V, Ti and B, which are certified to thousandths",
        ),
        Limit("share", "5 %", "ratio", COMMON_PRACTICE, "what rounding may leave, as a share of the element"),
    ],
)
def certificates_agree(made: MadePart, sheet: Sheet) -> Judgement:
    """Each other part as made whose certificate has the number or the heat.

    A heat may be sold by two names: that is a query. An analysis that does not say of what it is counts as that of the
    cast, and where two of one heat differ it is a query.
    """
    of_number = [one for one in sheet.sharing_certificate(made, "number") if _may_be_of_one(made, one, sheet)]
    of_heat = [one for one in sheet.sharing_certificate(made, "heat") if _may_be_of_one(made, one, sheet)]
    judged = [
        *(one for other in of_number for one in _of_one_number(made, other, sheet)),
        *(one for other in of_heat for one in _of_one_heat(made, other, sheet)),
    ]
    if not judged:
        raise sheet.not_applicable("no other certificate has its number or its heat")
    return sheet.worst(*judged)


def _may_be_of_one(made: MadePart, other: MadePart, sheet: Sheet) -> bool:
    """Whether two certificates may be of one issuer: one that does not name him may be."""
    own = sheet.said("issuer", made.certificate.by)
    theirs = sheet.said(f"issuer of {other.id}", other.certificate.by)
    return own is None or theirs is None or is_firm_in(own, theirs) or is_firm_in(theirs, own)


def _of_one_number(made: MadePart, other: MadePart, sheet: Sheet) -> Iterator[Judgement]:
    for key, grade in (
        ("type", Grade.NONCONFORMITY),
        ("date", Grade.NONCONFORMITY),
        ("material", Grade.QUERY),
    ):
        yield _alike(key, "number", grade, made, other, sheet)


def _of_one_heat(made: MadePart, other: MadePart, sheet: Sheet) -> Iterator[Judgement]:
    yield _alike("material", "heat", Grade.QUERY, made, other, sheet)
    own, theirs = made.certificate, other.certificate
    analysed = {
        sheet.said(f"what was analysed of {of}", document.analysed)
        for of, document in (("it", own), (other.id, theirs))
    }
    if "product" in analysed:
        return
    grade = Grade.NONCONFORMITY if None not in analysed else Grade.QUERY
    unsaid = "" if None not in analysed else ": what was analysed is not said of both"
    rounding, trace, share = (sheet.limit(name, name) for name in ("rounding", "trace", "share"))
    for element, content in own.analysis.items():
        if element in theirs.analysis:
            here = sheet.take(element, content)
            there = sheet.take(f"{element} {other.id}", theirs.analysis[element])
            within = max(trace if element in _IN_THOUSANDTHS else rounding, share * here)
            judged = sheet.equals(here, there, within).else_says(
                f"{element} {{found}} here and {{limit}} in {other.id}, of one heat{unsaid}"
            )
            yield judged.graded(grade)
    if not sheet.is_stated("carbon equivalent", own.carbon_equivalent):
        return
    if (equivalent := _equivalent(theirs, other.id, sheet)) is not None:
        here = sheet.take("CE", own.carbon_equivalent)
        judged = sheet.equals(here, equivalent, rounding).else_says(
            f"carbon equivalent {{found}} here and {{limit}} in {other.id}, of one heat{unsaid}"
        )
        yield judged.graded(grade)


def _equivalent(document: Certificate, of: str, sheet: Sheet) -> float | None:
    """The carbon equivalent that a certificate states, else that of its analysis; None where elements are left out."""
    if sheet.is_stated(f"carbon equivalent of {of}", document.carbon_equivalent):
        return sheet.take(f"CE {of}", document.carbon_equivalent)
    if not_analysed(document):
        return None
    return sheet.work(f"CE {of}", carbon_equivalent, **equivalent_parts(document, sheet, of))


def _alike(key: str, shared: str, grade: Grade, made: MadePart, other: MadePart, sheet: Sheet) -> Judgement:
    """Whether two certificates state the same under a key, where both state it."""
    own = getattr(made.certificate, key)
    here = sheet.said(key, own)
    there = sheet.said(f"{key} of {other.id}", getattr(other.certificate, key))
    if here is None or there is None or as_filed(here) == as_filed(there):
        return sheet.states(True, f"those of its {shared} say the same")
    says = f"{key} {here} here and {there} in {other.id}, of one {shared}"
    return sheet.states(False, says, where=own.where).graded(grade)


RULES = (certificates_agree,)
