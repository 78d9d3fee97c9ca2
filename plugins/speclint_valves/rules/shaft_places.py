"""Cams at their places on a shaft: on its length, clear of each other and of its bearings, and over a keyway."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.facts import cams_on, fork_of
from speclint.handbook.fits import share_of_size
from speclint.specs import Cam, Shaft
from speclint_valves.formulae.room import before_place, beyond_place, half_of_both, places_apart
from speclint_valves.inputs.hubs import longest_of

if TYPE_CHECKING:
    from speclint.specs import Length, Position


class _Standing(NamedTuple):
    """What stands on a shaft: its name, its place and its length along it; None of a drive, which states none."""

    name: str
    at: Position
    length: Length | None


@rule(
    "shaft.cams-in-their-places",
    title="The cams of a shaft stand on its length, clear of each other, of its bearings and of its drive, the "
    "key of each in a keyway, no keyway in a bearing; it is at most 1.5 times as long as all this takes",
    on=Shaft,
    grade=Grade.NONCONFORMITY,
    edition=4,
    limits=[
        Limit(
            "reach",
            "1.5",
            "ratio",
            COMMON_PRACTICE,
            "greatest length of a shaft over the end of what stands farthest along it",
        )
    ],
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a cam that stands where another does, or beside its key, cannot be put there, and bends the shaft elsewhere",
    leaves_out="gaps between cams, collars and nuts; a hub with its middle beside that of its track; ends, keyways and "
    "tracks of one tappet where the shaft slides along; the end of a shaft whose drive does not say where it "
    "is; whether each cam stands under its tappet; the length of what drives the shaft, and its key (shaft.drive-key)",
    against=(),
)
def cams_in_places(shaft: Shaft, sheet: Sheet) -> Judgement:
    """a_2 − a_1 ≥ (b_1 + b_2)/2 of neighbours, a − b/2 ≥ 0 and a + b/2 ≤ L, and the same of each key in its keyway.

    A length of more than 1.5 times the greatest of all a + b/2 is asked about.
    """
    cams = cams_on(shaft, sheet)
    if not cams:
        raise sheet.not_applicable("no cam turns on it")
    slides = sheet.is_stated("slides", shaft.slides) and bool(sheet.read("slides", shaft.slides))
    items: list[tuple[str, Callable[[], Judgement]]] = [
        *((cam.id, partial(_cam, shaft, cam, sheet, slides=slides)) for cam in cams),
        *(
            (f"bearing {name}", partial(_bearing, shaft, name, sheet, slides=slides))
            for name in shaft.bearings
        ),
    ]
    if not slides:
        items += [(f"keyway {name}", partial(_keyway, shaft, name, sheet)) for name in shaft.keyways]
        items.append(("length", partial(_not_too_long, shaft, cams, sheet)))
    items += [
        (f"{two.name} beside {one.name}", partial(_clear, one, two, sheet))
        for one, two in pairwise(_standing(shaft, cams, sheet, slides=slides))
    ]
    return sheet.each(items, lambda item: item[1]())


def _cam(shaft: Shaft, cam: Cam, sheet: Sheet, *, slides: bool) -> Judgement:
    """A cam between the ends of its shaft, and its key in a keyway."""
    a = sheet.take(f"a of {cam.id}", cam.at)
    if slides:
        raise sheet.not_applicable("the shaft slides along: its ends and keyways come along with its cams")
    b = sheet.take(f"b of {cam.id}", longest_of(cam, sheet))
    judged = [
        sheet.at_least(a, sheet.work("b_h", half_of_both, b_1=b, b_2=0.0)).else_says(
            "middle of {item} stands {found} from the end of its shaft, half its length is {limit}"
        ),
        sheet.at_most(sheet.work("a_e", beyond_place, a=a, b=b), sheet.take("L", shaft.length)).else_says(
            "{item} reaches to {found}, its shaft to {limit}"
        ),
    ]
    if sheet.is_stated(f"keyway of {cam.id}", cam.keyway_width):
        judged += _over_keyway(shaft, cam, a, sheet)
    return sheet.worst(*judged)


def _over_keyway(shaft: Shaft, cam: Cam, a: Metres, sheet: Sheet) -> list[Judgement]:
    """The key of a cam against the keyway that its middle stands over."""
    if not shaft.keyways:
        raise sheet.not_assessed(
            f"{shaft.id} states no keyway along it: write each, as in "
            '[keyways] cams = { begins = "80 mm", ends = "280 mm" }',
            shaft.where,
        )
    for name, keyway in shaft.keyways.items():
        begins, ends = sheet.take(f"k_1 {name}", keyway.begins), sheet.take(f"k_2 {name}", keyway.ends)
        if begins <= a <= ends:
            return _key(cam, a, (begins, ends), sheet)
    return [sheet.states(False, f"{cam.id} stands over no keyway of {shaft.id}", where=cam.at.where)]


def _key(cam: Cam, a: Metres, keyway: tuple[Metres, Metres], sheet: Sheet) -> list[Judgement]:
    (begins, ends), l_k = keyway, sheet.take(f"l_k of {cam.id}", cam.key_length)
    return [
        sheet.at_least(sheet.work("k_b", before_place, a=a, b=l_k), begins).else_says(
            "key of {item} begins at {found}, its keyway at {limit}"
        ),
        sheet.at_most(sheet.work("k_e", beyond_place, a=a, b=l_k), ends).else_says(
            "key of {item} ends at {found}, its keyway at {limit}"
        ),
    ]


def _bearing(shaft: Shaft, name: str, sheet: Sheet, *, slides: bool) -> Judgement:
    """A bearing says where it is and how long; its middle is on the shaft."""
    bearing = shaft.bearings[name]
    sheet.take(f"b {name}", bearing.length)
    x = sheet.take(f"x {name}", bearing.at)
    if slides:
        raise sheet.not_applicable("the shaft slides along")
    return sheet.at_most(x, sheet.take("L", shaft.length)).else_says(
        "{item} stands at {found}, its shaft ends at {limit}"
    )


def _keyway(shaft: Shaft, name: str, sheet: Sheet) -> Judgement:
    """A keyway ends before each bearing, or begins behind it: its edges would wear a bush away."""
    keyway = shaft.keyways[name]
    begins, ends = sheet.take(f"k_1 {name}", keyway.begins), sheet.take(f"k_2 {name}", keyway.ends)
    bearings = _bearings(shaft, sheet)
    if not bearings:
        raise sheet.not_applicable("no bearing says where it stands and how long it is")
    return sheet.worst(*(_before_or_behind(begins, ends, one, sheet) for one in bearings))


def _before_or_behind(begins: Metres, ends: Metres, bearing: _Standing, sheet: Sheet) -> Judgement:
    x, b = sheet.take(f"a of {bearing.name}", bearing.at), _length(bearing, sheet)
    if (begins + ends) / 2 < x:
        return sheet.at_most(ends, sheet.work(f"x_1 {bearing.name}", before_place, a=x, b=b)).else_says(
            f"{{item}} ends at {{found}}, and {bearing.name} begins at {{limit}}"
        )
    return sheet.at_least(begins, sheet.work(f"x_2 {bearing.name}", beyond_place, a=x, b=b)).else_says(
        f"{{item}} begins at {{found}}, and {bearing.name} reaches to {{limit}}"
    )


def _not_too_long(shaft: Shaft, cams: Sequence[Cam], sheet: Sheet) -> Judgement:
    """The length of a shaft, against the end of the last that stands on it: cam, bearing, drive or keyway."""
    standing = [
        *(_Standing(cam.id, cam.at, longest_of(cam, sheet)) for cam in cams),
        *(_Standing(f"bearing {name}", one.at, one.length) for name, one in shaft.bearings.items()),
        _Standing("drive", shaft.drive.at, None),
    ]
    if not all(_is_placed(one, sheet) for one in standing):
        raise sheet.not_applicable("what stands farthest along the shaft is not known")
    ends = [
        *(_end(one, sheet) for one in standing),
        *(sheet.take(f"k_2 {name}", one.ends) for name, one in shaft.keyways.items()),
    ]
    most = sheet.work("L_m", share_of_size, k=sheet.limit("reach", "k"), t=max(ends))
    return (
        sheet.at_most(sheet.take("L", shaft.length), most)
        .else_says("shaft {found} long, by what stands on it {limit} at most")
        .graded(Grade.QUERY)
    )


def _end(one: _Standing, sheet: Sheet) -> Metres:
    a, b = sheet.take(f"a of {one.name}", one.at), _length(one, sheet)
    return sheet.work(f"e of {one.name}", beyond_place, a=a, b=b)


def _bearings(shaft: Shaft, sheet: Sheet) -> list[_Standing]:
    """The bearings of a shaft that state place and length."""
    bearings = [_Standing(f"bearing {name}", one.at, one.length) for name, one in shaft.bearings.items()]
    return [one for one in bearings if _is_placed(one, sheet)]


def _standing(shaft: Shaft, cams: Sequence[Cam], sheet: Sheet, *, slides: bool) -> list[_Standing]:
    """Cams, bearings and drive in their order along a shaft, those that state place and length.

    Of tracks that come under one tappet by sliding, at one place, it is the longest.
    """
    found: dict[tuple[str, float], _Standing] = {}
    for cam in cams:
        one = _Standing(cam.id, cam.at, longest_of(cam, sheet))
        if not _is_placed(one, sheet):
            continue
        brought = slides or _has_fork(cam, sheet)
        key = sheet.follow(cam.lifts).id if brought else cam.id, _aimed(one, sheet)
        found[key] = max(found.get(key, one), one, key=lambda same: _long(same, sheet))
    drive = _Standing("drive", shaft.drive.at, None)
    placed = [*_bearings(shaft, sheet), *([drive] if _is_placed(drive, sheet) else [])]
    return sorted([*found.values(), *placed], key=lambda one: _aimed(one, sheet))


def _has_fork(cam: Cam, sheet: Sheet) -> bool:
    """Whether a cam is held by a fork, and a valve gear has one that moves it: a word alone brings no track along."""
    said = sheet.said(f"{cam.id} held by", cam.held_along)
    return said == "fork of the gear" and fork_of(cam, sheet) is not None


def _is_placed(one: _Standing, sheet: Sheet) -> bool:
    return sheet.is_stated(f"place of {one.name}", one.at) and (
        one.length is None or sheet.is_stated(f"length of {one.name}", one.length)
    )


def _aimed(one: _Standing, sheet: Sheet) -> Metres:
    return sheet.take_nominal(f"a_n of {one.name}", one.at)


def _long(one: _Standing, sheet: Sheet) -> Metres:
    return 0.0 if one.length is None else sheet.take_nominal(f"b_n of {one.name}", one.length)


def _length(one: _Standing, sheet: Sheet) -> Metres:
    return 0.0 if one.length is None else sheet.take(f"b of {one.name}", one.length)


def _clear(one: _Standing, two: _Standing, sheet: Sheet) -> Judgement:
    """Two neighbours, of which the second stands farther along the shaft."""
    a_1, a_2 = sheet.take(f"a of {one.name}", one.at), sheet.take(f"a of {two.name}", two.at)
    b_1, b_2 = _length(one, sheet), _length(two, sheet)
    apart = sheet.work("L_a", places_apart, x_1=a_1, x_2=a_2)
    return sheet.at_least(apart, sheet.work("b_h", half_of_both, b_1=b_1, b_2=b_2)).else_says(
        "{item}: {found} from middle to middle, and {limit} wanted by their lengths"
    )


RULES = (cams_in_places,)
