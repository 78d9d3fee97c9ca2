"""Walls between live and exhaust steam: each is counted, and none stands alone."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Ratio, SquareMetres
from speclint.facts import flow_in
from speclint.handbook.heat import (
    GNIELINSKI,
    INCROPERA,
    areas_together,
    overall_coefficient,
    plane_wall_resistance,
)
from speclint.specs import LoadCase, Partition, PassageFace, SteamPassage
from speclint_steamways.formulae.heat import midway, share_of_coefficient
from speclint_steamways.formulae.paths import area_ratio
from speclint_steamways.inputs.dividing import (
    IRON,
    Divider,
    area_of_face,
    ask_faces,
    conductivity_of,
    dividers_of,
    is_live,
    is_single,
    metal_of,
    partition_of,
    partitions_beside,
    passage_beyond,
    resistance_of,
    surface_of,
)
from speclint_steamways.inputs.films import film_in, steam_of
from speclint_steamways.inputs.gaps import EMISSIVITY
from speclint_steamways.inputs.streams import exchange_of, streams_of


def _of_exhaust(passage: SteamPassage, sheet: Sheet) -> None:
    """End the rule for a passage that no exhaust steam takes."""
    if sheet.read("place", passage.place) == "breathing way":
        raise sheet.not_applicable("the engine draws air through it")
    if is_live(passage, sheet):
        raise sheet.not_applicable("it carries live steam")


@rule(
    "heat.every-face-counted",
    edition=2,
    title="Every exhaust passage says what each part of its surface faces, all of it within 2 %; a face to a passage "
    "is answered by an equal one there, and by the area of the partition that it is, within 5 %",
    on=SteamPassage,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A wall that was not counted warms the exhaust all the same: ports, seat rings, bridges and ends add up.",
    leaves_out="whether what is said to lie beyond a face does lie there, and the faces of live passages to anything "
    "but exhaust steam",
    against=(),
    limits=[
        Limit("least", "98 %", "ratio", COMMON_PRACTICE, "least sum of the faces over the whole surface"),
        Limit("most", "102 %", "ratio", COMMON_PRACTICE, "greatest sum of the faces over the whole surface"),
        Limit("least_answer", "95 %", "ratio", COMMON_PRACTICE, "least area of a face over that beyond it"),
        Limit(
            "most_answer", "105 %", "ratio", COMMON_PRACTICE, "greatest area of a face over that beyond it"
        ),
    ],
)
def every_face_counted(passage: SteamPassage, sheet: Sheet) -> Judgement:
    """Sum of all faces against perimeter times length and ends; each against the passage and the partition there."""
    _of_exhaust(passage, sheet)
    ask_faces(passage, sheet)
    items: list[tuple[str, Callable[[], Judgement]]] = [("all faces", lambda: _all_counted(passage, sheet))]
    items += [(other.id, _answered(passage, other, sheet)) for other in _neighbours(passage, sheet)]
    items += list(_partitions(passage, sheet))
    return sheet.each(items, lambda item: item[1]())


def _all_counted(passage: SteamPassage, sheet: Sheet) -> Judgement:
    total = _faces_together(passage, list(passage.faces.items()), sheet)
    x = sheet.work("ΣA/A", area_ratio, A_1=total, A_2=surface_of(passage, sheet))
    return sheet.within(x, sheet.limit("least", "x_1"), sheet.limit("most", "x_2")).else_says(
        "faces make up {found} of the surface, where the nearer limit is {limit}"
    )


def _faces_together(
    passage: SteamPassage, faces: list[tuple[str, PassageFace]], sheet: Sheet
) -> SquareMetres:
    total: SquareMetres = 0.0
    for name, face in faces:
        area = area_of_face(name, face, passage, sheet)
        total = sheet.work(f"ΣA_{passage.id}", areas_together, A_0=total, A_1=area)
    return total


def _neighbours(passage: SteamPassage, sheet: Sheet) -> list[SteamPassage]:
    """The passages that the faces of one name, each once."""
    found: dict[str, SteamPassage] = {}
    for name, face in passage.faces.items():
        other = passage_beyond(name, face, passage, sheet)
        if other is not None:
            found[other.id] = other
    return list(found.values())


def _faces_to(passage: SteamPassage, other: SteamPassage, sheet: Sheet) -> list[tuple[str, PassageFace]]:
    return [
        (name, face)
        for name, face in passage.faces.items()
        if sheet.read(f"beyond {name} of {passage.id}", face.to) == other.id
    ]


def _answered(passage: SteamPassage, other: SteamPassage, sheet: Sheet) -> Callable[[], Judgement]:
    def judge() -> Judgement:
        if other is passage:
            return sheet.states(False, f"{passage.id} names a face to itself", where=passage.where)
        back = _faces_to(other, passage, sheet)
        if not back:
            said = f"{other.id} names no face to {passage.id}, which names one to it"
            return sheet.states(False, said, where=other.where)
        here = _faces_together(passage, _faces_to(passage, other, sheet), sheet)
        return _alike(here, _faces_together(other, back, sheet), sheet)

    return judge


def _alike(here: SquareMetres, there: SquareMetres, sheet: Sheet) -> Judgement:
    x = sheet.work("A_1/A_2", area_ratio, A_1=here, A_2=there)
    return sheet.within(x, sheet.limit("least_answer", "x_3"), sheet.limit("most_answer", "x_4")).else_says(
        "face has {found} of the area of {item}, where the nearer limit is {limit}"
    )


def _partitions(passage: SteamPassage, sheet: Sheet) -> Iterator[tuple[str, Callable[[], Judgement]]]:
    """Each partition beside the passage: named by a face, between the same passages, of one area with it."""
    named: dict[str, tuple[str, PassageFace, Partition]] = {}
    for name, face in passage.faces.items():
        if sheet.is_stated(f"wall of {name}", face.wall):
            partition = partition_of(face, passage, sheet)
            if partition is not None:
                named[partition.id] = (name, face, partition)
    for partition in partitions_beside(passage, sheet):
        if partition.id not in named:
            said = f"no face of {passage.id} names {partition.id} as its wall"
            yield partition.id, lambda said=said: sheet.states(False, said, where=passage.where)  # type: ignore[misc]
    for name, face, partition in named.values():
        yield partition.id, _is_partition(name, face, partition, passage, sheet)


def _is_partition(
    name: str, face: PassageFace, partition: Partition, passage: SteamPassage, sheet: Sheet
) -> Callable[[], Judgement]:
    def judge() -> Judgement:
        sides = {sheet.follow(partition.live_side).id, sheet.follow(partition.exhaust_side).id}
        if sides != {passage.id, sheet.read(f"beyond {name}", face.to)}:
            said = f"{partition.id} stands between {' and '.join(sorted(sides))}"
            return sheet.states(False, said, where=face.wall.where)
        here = area_of_face(name, face, passage, sheet)
        return _alike(here, sheet.take(f"A_{partition.id}", partition.area), sheet)

    return judge


@rule(
    "heat.one-wall-between",
    title="Between live and exhaust steam stand two walls, whose bridges leave at most 0.6 of the heat of one, or one "
    "wall with its reason, not of iron, in a sum of heat that is worked whole",
    on=SteamPassage,
    cases=("running",),
    grade=Grade.NONCONFORMITY,
    cites=[GNIELINSKI, INCROPERA.at("scatter of correlations"), COMMON_PRACTICE],
    why="One wall between boiler steam and the exhaust leaks several times the heat of two, and iron cracks there.",
    leaves_out="how good the reason is that the notes give; walls that neither a face nor a partition names",
    against=(),
    limits=[
        Limit(
            "bridged",
            "0.6",
            "ratio",
            COMMON_PRACTICE,
            "heat through two walls over that through one, above which they count as one",
        ),
        EMISSIVITY,
    ],
)
def one_wall_between(passage: SteamPassage, case: LoadCase, sheet: Sheet) -> Judgement:
    """Each wall to live steam, by what is drawn there.

    A single wall is a query until ``[notes]`` of the passage gives the reason under the name of the face, or those of
    the partition under ``build``, and the whole sum can be worked.
    """
    _of_exhaust(passage, sheet)
    dividers = list(dividers_of(passage, sheet))
    if not dividers:
        ask_faces(passage, sheet)
        raise sheet.not_applicable("none of its faces lies beside live steam")
    return sheet.each([(one.name, one) for one in dividers], lambda item: _not_alone(item[1], case, sheet))


def _not_alone(divider: Divider, case: LoadCase, sheet: Sheet) -> Judgement:
    if not is_single(divider, sheet):
        k = _share_of_single(divider, case, sheet)
        parted = sheet.at_most(k, sheet.limit("bridged", "k_b")).else_says(
            "two walls at {item} leave {found} of the heat of one, {limit} allowed"
        )
        return parted if parted.holds else parted.graded(Grade.QUERY)
    if metal_of(divider, sheet).material.family in IRON:
        where = divider.exhaust.where if divider.partition is None else divider.partition.where
        return sheet.states(False, "a single wall of iron stands between live and exhaust steam", where=where)
    reason = _reason(divider, sheet)
    if not reason:
        said = "one wall alone stands between live and exhaust steam, and [notes] gives no reason"
        return sheet.states(False, said, where=divider.exhaust.where).graded(Grade.QUERY)
    block = sheet.follow(divider.exhaust.in_block)
    for stream in streams_of(block, sheet):
        exchange_of(stream, case, sheet)
    return sheet.states(True, f"one wall, in a sum that is worked whole: {reason}")


def _reason(divider: Divider, sheet: Sheet) -> str:
    if divider.face is not None:
        return sheet.reason_given(divider.exhaust, divider.name)
    assert divider.partition is not None  # one of both names a divider
    return sheet.reason_given(divider.partition, "build")


def _share_of_single(divider: Divider, case: LoadCase, sheet: Sheet) -> Ratio:
    """Heat through two walls over that through one of them alone, with the same films."""
    live, exhaust = steam_of("live", case, sheet), steam_of("exhaust", case, sheet)
    m_1 = sheet.take("m", case.steam_flow)
    films = [
        film_in(passage, steam, flow_in(passage, passage.id, m_1, sheet), passage.id, sheet)
        for passage, steam in ((divider.live, live), (divider.exhaust, exhaust))
    ]
    R_2 = resistance_of(divider, live.T, exhaust.T, sheet)
    metal = metal_of(divider, sheet)
    λ = conductivity_of(metal, sheet.work("T_w", midway, T_1=live.T, T_2=exhaust.T), sheet)
    R_1 = sheet.work("R_1", plane_wall_resistance, t=metal.t, λ=λ)
    U_1, U_2 = (
        sheet.work(symbol, overall_coefficient, h_1=films[0], R=R, h_2=films[1])
        for symbol, R in (("U_1", R_1), ("U_2", R_2))
    )
    return sheet.work("k", share_of_coefficient, U_2=U_2, U_1=U_1)


RULES: tuple[Rule, ...] = (every_face_counted, one_wall_between)
