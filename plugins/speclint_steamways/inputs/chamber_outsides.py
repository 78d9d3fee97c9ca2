"""The outside that cools the chamber of springs or gear: as stated, and no more than the chamber has."""

from __future__ import annotations

from collections.abc import Iterable

from speclint import COMMON_PRACTICE, Judgement, Limit, Sheet
from speclint.equations import SquareMetres
from speclint.facts import plain_outside
from speclint.specs import CamBox, ChamberCover, CompressionSpring
from speclint_steamways.formulae.chambers import outside_of_drum, with_uneven

UNEVEN = Limit(
    "uneven",
    "1.1",
    "ratio",
    COMMON_PRACTICE,
    "greatest outside of a chamber without fins over its plain faces, for bosses and feet",
)


def cooled_area(
    part: ChamberCover | CamBox, springs: Iterable[CompressionSpring], sheet: Sheet
) -> tuple[SquareMetres, tuple[Judgement, ...]]:
    """The cooled outside as it counts, and what is told where more is stated than a chamber without fins has."""
    stated = sheet.take("A_a", part.chamber.cooled_area)
    if sheet.said("fins", part.chamber.finned):
        return stated, ()
    plain = (
        plain_outside(part, sheet, sheet.take)
        if isinstance(part, CamBox)
        else _of_cover(part, springs, sheet)
    )
    if plain is None:
        return stated, ()
    most = sheet.work("A_m", with_uneven, k=sheet.limit(UNEVEN.name, "k"), A=plain)
    told = sheet.at_most(stated, most).else_says(
        "cooled over {found}, its outside without fins is {limit} at the most"
    )
    return min(stated, most), (told,)


def _of_cover(cover: ChamberCover, springs: Iterable[CompressionSpring], sheet: Sheet) -> SquareMetres | None:
    """Of a drum as wide as the cover, as high as the stool and the longest spring on it."""
    lengths = [
        sheet.take(f"L_0 of {spring.id}", spring.free_length)
        for spring in springs
        if sheet.is_stated(f"length of {spring.id}", spring.free_length)
    ]
    if not lengths or not sheet.is_stated("width of the cover", cover.outside_diameter):
        return None
    D, H = sheet.take("D", cover.outside_diameter), sheet.take("L", cover.path.length)
    return sheet.work("A_p", outside_of_drum, D=D, H=H, L_0=max(lengths))
