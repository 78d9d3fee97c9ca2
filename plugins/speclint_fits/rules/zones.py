"""Zones of form beside the tolerance of their size, and zones that no machine keeps."""

from __future__ import annotations

from contextlib import suppress

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.facts import stated_zone
from speclint.handbook.fits import share_of_size
from speclint.specs import FORMS, Component, GeometricalTolerance, Length
from speclint_fits.sources import ISO_1101

#: Forms whose zone is a distance of two circles or cylinders, measured on the radius.
_ROUND = ("round", "cylindrical")


@rule(
    "geometry.form-of-size",
    title="A zone of roundness or cylindricity, which is measured on the radius, is at most half of the tolerance of "
    "the size of its face",
    wrong="{item} may be {found} out of round, {limit} allowed by the tolerance of its size",
    on=Component,
    edition=2,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_1101, FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="an oval that fills a wider zone is out of its limits of size; such a zone limits nothing, or is a slip",
    leaves_out="faces with three lobes, which the limits of size do not hold; faces that are no size of their part, "
    "and sizes without a tolerance",
    against=(),
    limits=[
        Limit(
            "share", "0.5", "ratio", FIRST_PRINCIPLES, "greatest zone on the radius over that of the diameter"
        )
    ],
)
def form_of_size(part: Component, sheet: Sheet) -> Judgement:
    """Each zone of roundness against half of the width of its size."""
    sized = [
        (name, one, size)
        for name, one in part.tolerances.items()
        if _form(name, one, sheet) in _ROUND and (size := _size_of(name, one, part, sheet)) is not None
    ]
    if not sized:
        raise sheet.not_applicable("it states no roundness of a size with a tolerance")

    def judge(item: tuple[str, GeometricalTolerance, Length]) -> Judgement:
        name, one, size = item
        t, T = (
            sheet.take(f"t of {name}", stated_zone(name, one, sheet)),
            sheet.tolerance(f"T of {name}", size),
        )
        return sheet.at_most(t, sheet.work(f"t_n of {name}", share_of_size, k=sheet.limit("share", "k"), t=T))

    return sheet.each(sized, judge)


def _form(name: str, one: GeometricalTolerance, sheet: Sheet) -> str:
    """The word of a zone; "" where none is stated."""
    said = sheet.said(f"form of {name}", one.form)
    return said or ""


def _size_of(name: str, one: GeometricalTolerance, part: Component, sheet: Sheet) -> Length | None:
    """The size to which a zone belongs; None where the part has none of that key, or one without a tolerance."""
    size = _under(part, sheet.read(f"size of {name}", one.of))
    if size is None:
        return None
    stated = sheet.is_stated(f"its size at {name}", size)
    return size if stated and sheet.tolerance(f"T_0 of {name}", size) > 0 else None


def _under(part: Component, face: str) -> Length | None:
    """What a part states under the key of a face, or under its words: "the outside diameter"; None where nothing."""
    by_words = "_".join(word for word in face.lower().split() if word != "the")
    for key in (face, by_words):
        with suppress(LookupError):
            return part.under(key)
    return None


@rule(
    "geometry.zone-can-be-made",
    title="A zone is no narrower than machines keep: 0.01 mm flat, 0.003 mm straight or round, 0.005 mm of direction, "
    "place and run-out; a narrower one is a query",
    wrong="zone {item} is {found} wide, {limit} is the least that is ground or bored",
    on=Component,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="a zone written in a wrong unit passes every check, and the part is scrapped or lapped by hand for nothing",
    leaves_out="profiles; whether the works have the machine; over what length the zone holds",
    against=(),
    limits=[
        Limit("flat", "0.01 mm", "length", COMMON_PRACTICE, "least flatness of a ground face"),
        Limit("round", "0.003 mm", "length", COMMON_PRACTICE, "least zone of a ground shaft or a honed bore"),
        Limit("placed", "0.005 mm", "length", COMMON_PRACTICE, "least zone of direction, place and run-out"),
    ],
)
def zone_can_be_made(part: Component, sheet: Sheet) -> Judgement:
    """Each zone against the least of its word."""
    known = [
        (name, one, kind) for name, one in part.tolerances.items() if (kind := _kind(_form(name, one, sheet)))
    ]
    if not known:
        raise sheet.not_applicable("it states no geometrical tolerance but of a profile")

    def judge(item: tuple[str, GeometricalTolerance, str]) -> Judgement:
        name, one, kind = item
        return sheet.at_least(sheet.take(f"t of {name}", stated_zone(name, one, sheet)), sheet.limit(kind))

    return sheet.each(known, judge)


def _kind(form: str) -> str:
    """By which limit a zone is judged; "" where by none."""
    if form in ("", "profile"):
        return ""
    return form if form == "flat" else "round" if form in FORMS else "placed"


RULES: tuple[Rule, ...] = (form_of_size, zone_can_be_made)
