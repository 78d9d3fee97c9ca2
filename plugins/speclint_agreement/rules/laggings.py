"""Lagging states the sizes of the part that it covers."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import length_together
from speclint.handbook.fits import DRAWING_TEMPERATURE, size_when_hot
from speclint.handbook.heat import areas_together
from speclint.handbook.members import round_area
from speclint.specs import Area, CylinderBlock, CylinderCover, Lagging, Length, LoadCase, SteamPipe
from speclint_agreement.formulae.laggings import less_bare_ends, share_of_face, surface_of_block, with_play


def _sizes(lagging: Lagging, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    """Of round lagging its inside against the hot pipe and its length against that of the pipe; of flat its area."""
    part, form = sheet.follow(lagging.covers), sheet.read("form", lagging.form)
    if form == "round" and isinstance(part, SteamPipe):
        yield from _round(lagging, part, case, sheet)
    if form == "flat" and isinstance(part, SteamPipe):
        yield Pair(
            worked(form, lagging.form), Worked("round", (part.where,), "lagging that goes round a pipe,")
        )
    if form == "flat" and isinstance(part, CylinderCover):
        D = sheet.take("D", part.outside_diameter)
        face = sheet.work("A_c", round_area, d=D)
        least = sheet.work("A_l", share_of_face, k=sheet.limit("bare cover", "k_c"), A=face)
        yield Pair(lagging.area, worked(face, part.outside_diameter), "at most", name="area")
        yield Pair(lagging.area, worked(least, part.outside_diameter), "at least", name="area")
        yield Pair(lagging.height, part.outside_diameter, "at most", name="height")
    if form == "flat" and isinstance(part, CylinderBlock):
        yield from _of_block(lagging, part, sheet)


def _of_block(lagging: Lagging, block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The area of all flat lagging of the block against the surface of its box, as long as its longest bore."""
    lengths = [one.length for one in block.bores.values() if sheet.is_stated("length of a bore", one.length)]
    sides = (block.entering_width, block.entering_height)
    if not lengths or not all(sheet.is_stated("size of the block", one) for one in sides):
        return
    box = {
        "b": sheet.take("b", block.entering_width),
        "h": sheet.take("h", block.entering_height),
        "l": max(sheet.take(f"l {index}", one) for index, one in enumerate(lengths, start=1)),
    }
    places = (*sides, *lengths)
    most = worked(sheet.work("A_g", surface_of_block, k=sheet.limit("surface", "k"), **box), *places)
    least = worked(sheet.work("A_l", surface_of_block, k=sheet.limit("bare block", "k_l"), **box), *places)
    flat = _flat_of(block, sheet)
    areas = [one.area for one in flat]
    if len(areas) > 1:
        total = 0.0
        for index, area in enumerate(areas, start=1):
            total = sheet.work("A", areas_together, A_0=total, A_1=sheet.take(f"A_{index}", area))
        covered: Area | Worked = worked(total, *areas)
        name = "area together"
    else:
        covered, name = lagging.area, "area of the block"
    yield Pair(covered, most, "at most", name=name)
    if len(flat) == len(sheet.belonging_to(block, Lagging)):
        yield Pair(covered, least, "at least", name=name)


def _flat_of(block: CylinderBlock, sheet: Sheet) -> list[Lagging]:
    """The flat lagging of a block of which the area is stated."""
    return [
        one
        for one in sheet.belonging_to(block, Lagging)
        if sheet.said(f"form of {one.id}", one.form) == "flat"
        and sheet.is_stated(f"area of {one.id}", one.area)
    ]


def _round(lagging: Lagging, pipe: SteamPipe, case: LoadCase, sheet: Sheet) -> Iterator[Pair]:
    T = sheet.take("T", case.temperature_of(pipe))
    alpha = sheet.look_up("α", sheet.material_of(pipe).expansion, of=pipe, at=T)
    D = sheet.take("D", pipe.outside_diameter)
    hot = sheet.work("D_h", size_when_hot, L=D, alpha=alpha, T=T, T_ref=DRAWING_TEMPERATURE)
    yield Pair(lagging.inside_diameter, pipe.outside_diameter, "at least", name="inside")
    loose = sheet.work("D_l", with_play, D=hot, c=sheet.limit("loose", "c"))
    yield Pair(lagging.inside_diameter, worked(loose, pipe.outside_diameter), "at most", name="inside")
    bare = sheet.limit("bare", "e")
    least = sheet.work("L_l", less_bare_ends, L=sheet.take("L", pipe.length), e=bare)
    yield Pair(_lagged(lagging, pipe, sheet), worked(least, pipe.length), "at least", name="length")
    yield Pair(lagging.length, pipe.length, "at most", name="length")


def _lagged(lagging: Lagging, pipe: SteamPipe, sheet: Sheet) -> Length | Worked:
    """The length of all round lagging of a pipe together."""
    lengths = [
        one.length
        for one in sheet.belonging_to(pipe, Lagging)
        if sheet.said(f"form of {one.id}", one.form) == "round"
        and sheet.is_stated(f"length of {one.id}", one.length)
    ]
    if len(lengths) < 2:
        return lagging.length
    total = 0.0
    for index, length in enumerate(lengths, start=1):
        total = sheet.work("l", length_together, l_0=total, l_1=sheet.take(f"l_{index}", length))
    return worked(total, *lengths)


of_its_part: Rule = agreement(
    "lagging.of-its-part",
    title="Round lagging goes round its pipe without hanging loose hot and covers it but for both ends, and flat "
    "lagging has 0.4 to 1 of the face of the cover under it, or 0.2 to 1.5 of the box of its block",
    on=Lagging,
    pairs=_sizes,
    within="",
    cases=("running",),
    limits=[
        Limit(
            "bare",
            "100 mm",
            "length",
            COMMON_PRACTICE,
            "greatest length left bare at each end of a pipe for its flange and bolts",
        ),
        Limit(
            "loose",
            "20 mm",
            "length",
            COMMON_PRACTICE,
            "what the inside of round lagging may be wider than its hot pipe",
        ),
        Limit(
            "surface",
            "1.5",
            "ratio",
            COMMON_PRACTICE,
            "most lagging of a block over the surface of its box: chests and pads stand out beyond a bore",
        ),
        Limit(
            "bare block",
            "0.2",
            "ratio",
            COMMON_PRACTICE,
            "least flat lagging of a block over the surface of its box: covers, frame and pads take the rest",
        ),
        Limit(
            "bare cover",
            "0.4",
            "ratio",
            COMMON_PRACTICE,
            "least lagging of a cover over its face: studs, stuffing box and fittings take the rest",
        ),
    ],
    grade=Grade.NONCONFORMITY,
    why="lagging that does not go round its pipe is cut open by the fitter, where it ends early a hand meets metal, "
    "and where it hangs loose the air under it carries the heat away",
    edition=6,
    leaves_out="lagging of parts that are neither pipes, covers nor blocks; openings in it; a block of which "
    "width, height or the length of a bore is not stated; too little on a block of which not all lagging is flat "
    "and states its area",
)

RULES = (of_its_part,)
