"""Measured parts paired with measured mates, and the finish size of the last one, by hand working.

The clearance of a plug of diameter d in a hole of bore D is to lie from 20 µm to 100 µm. Each size is known to 1 µm, so
that a clearance c is known to 2 µm, and the least margin is m(c) = min((c − 22)/20, (98 − c)/100).
"""

from __future__ import annotations

import itertools
import math
from typing import Annotated, Any, ClassVar

import pytest
from hypothesis import example, given, strategies as st

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.checking import check
from speclint.errors import SettingsError
from speclint.families import Loaded, load_families
from speclint.handbook.fits import diametral_clearance
from speclint.made import Bench, Paired, bench_of, best_worst, finish_sizes, pair
from speclint.specs import (
    CUT_DOWN,
    NOT_STATED,
    OWN_PLACE,
    Component,
    FitsIn,
    Length,
    LinkTo,
    NotStated,
    Word,
    restated,
)
from speclint.testing import DesignFolder, made_family
from tests.each import each


class Hole(Component):
    """What a plug goes into."""

    kind: ClassVar[str] = "hole"
    called: ClassVar[str] = "hole"

    bore: Length = NOT_STATED


class Plug(Component):
    """A plug."""

    kind: ClassVar[str] = "plug"
    called: ClassVar[str] = "plug"
    hosts: ClassVar[tuple[FitsIn, ...]] = (FitsIn("outside", "held_by", "bore"),)

    outside: Annotated[Length, CUT_DOWN] = NOT_STATED
    colour: Word[str] = NOT_STATED
    held_by: Annotated[LinkTo[Hole], OWN_PLACE] = NOT_STATED
    washer: LinkTo[Hole] = NOT_STATED


_ABOUT: dict[str, Any] = {
    "on": Plug,
    "grade": Grade.NONCONFORMITY,
    "cites": [FIRST_PRINCIPLES],
    "why": "for tests",
    "leaves_out": "nothing",
}
_LEAST = Limit("least", "20 µm", "length", FIRST_PRINCIPLES, "least clearance")
_FAR = Limit("far", "51 mm", "length", FIRST_PRINCIPLES, "greatest outside")
_MOST = Limit("most", "100 µm", "length", FIRST_PRINCIPLES, "greatest clearance")


def _clearance(plug: Plug, sheet: Sheet) -> float:
    bore, outside = sheet.take("D", sheet.follow(plug.held_by).bore), sheet.take("d", plug.outside)
    return sheet.work("c", diametral_clearance, D=bore, d=outside)


@rule("plug.enters", title="the plug has the least clearance", limits=[_LEAST], **_ABOUT)
def enters(plug: Plug, sheet: Sheet) -> Judgement:
    """At least."""
    return sheet.at_least(_clearance(plug, sheet), sheet.limit("least"))


@rule("plug.tight", title="the plug has no more than the greatest clearance", limits=[_MOST], **_ABOUT)
def tight(plug: Plug, sheet: Sheet) -> Judgement:
    """At most."""
    return sheet.at_most(_clearance(plug, sheet), sheet.limit("most"))


@rule("plug.clear-of", title="the plug is less than 51 mm", limits=[_FAR], **_ABOUT)
def clear_of(plug: Plug, sheet: Sheet) -> Judgement:
    """A margin of 51 mm − 50 mm or so, 0.02 of it, alike for every pair."""
    sheet.take("D", sheet.follow(plug.held_by).bore)
    return sheet.at_most(sheet.take("d", plug.outside), sheet.limit("far"))


@pytest.fixture(scope="module")
def plugs() -> Loaded:
    return load_families([made_family("plugs", kinds=[Hole, Plug], rules=[enters, tight])])


def drawn(name: str, more: str = "") -> dict[str, str]:
    return {
        f"hole-{name}.toml": f'kind = "hole"\nid = "hole-{name}"\nbore = "50.07 mm ±0.03"\n',
        f"plug-{name}.toml": f'kind = "plug"\nid = "plug-{name}"\noutside = "50.02 mm ±0.03"\n'
        f'held_by = "hole-{name}"\n{more}',
    }


def made(name: str, of: str, key: str, size: str, more: str = "") -> dict[str, str]:
    text = (
        f'kind = "made-part"\nid = "{name}"\nof = "{of}"\nserial = "{name}"\n{more}[measured.{key}]\n'
        f'values = ["{size} mm"]\nuncertainty = "1 µm"\ndate = "2026-05-31"\n'
    )
    return {f"{name}.toml": text}


def three(*sizes: str, wet: str = "") -> dict[str, str]:
    """Three places a, b and c with holes of 50.052, 50.072 and 50.090 mm, and plugs of some sizes."""
    files: dict[str, str] = {}
    for name, bore in zip("abc", ("50.052", "50.072", "50.090"), strict=True):
        files |= drawn(name, wet if name == "c" else "") | made(f"h-{name}", f"hole-{name}", "bore", bore)
    for number, size in enumerate(sizes, 1):
        files |= made(f"p-{number}", "plug-a", "outside", size)
    return files


def paired(workshop: DesignFolder, plugs: Loaded, files: dict[str, str]) -> tuple[Bench, Paired]:
    workshop.loaded = plugs
    assessment = workshop.write(files).assess()
    assert not assessment.complaints
    bench = bench_of(assessment)
    return bench, pair(bench, "plug", "hole")


def names(found: Paired) -> dict[str, str]:
    return {one.part.id: one.place.called for one in found.pairs if one.part is not None}


def test_three_plugs_and_three_holes_by_hand(workshop: DesignFolder, plugs: Loaded) -> None:
    """Plugs of 50.000, 50.020, 50.040 mm: c and m of each.

    In 50.052: 52, 32, 12 µm: 0.46, 0.50, none; in 50.072: 72, 52, 32: 0.26, 0.46, 0.50; in 50.090: 90, 70, 50: 0.08,
    0.28, 0.48. Each in turn leaves 0.46, 0.46, 0.48; the two other ways that can be leave 0.28 and 0.26 at worst.
    """
    _, found = paired(workshop, plugs, three("50.000", "50.020", "50.040"))
    assert names(found) == {"p-1": "h-a", "p-2": "h-b", "p-3": "h-c"}
    assert [one.margin for one in found.pairs] == pytest.approx([0.46, 0.46, 0.48])
    assert (found.left_over, found.empty, found.not_tried) == ((), (), ())
    assert found.mates_left_out == ()  # three plugs were made to one drawing, and one hole to each
    tried = {(one.part.id, one.place.called): one for one in found.tried if one.part is not None}
    assert len(tried) == 9
    assert tried["p-1", "h-c"].margin == pytest.approx(0.08)
    tightest = tried["p-3", "h-a"]  # 12 − 2 = 10 µm of 20
    assert tightest.margin == pytest.approx(-0.5)
    assert [one.rule.name for one in tightest.failing] == ["plug.enters"]
    assert not tightest.may_stand


def test_a_part_keeps_what_its_own_drawing_states_in_another_place(
    workshop: DesignFolder, plugs: Loaded
) -> None:
    """The plug of c is drawn red and 0.1 mm larger: those made to a stand there as a states them, and as measured."""
    red = 'colour = "red"\n'
    files = three("50.000", "50.020", "50.040", wet=red)
    files["plug-c.toml"] = files["plug-c.toml"].replace("50.02 mm ±0.03", "50.12 mm ±0.03")
    bench, found = paired(workshop, plugs, files)
    assert names(found) == {"p-1": "h-a", "p-2": "h-b", "p-3": "h-c"}
    assert [one.margin for one in found.pairs] == pytest.approx([0.46, 0.46, 0.48])
    own = {one.place.called: one.own for one in found.tried}
    assert (own["h-a"], own["h-c"]) == ((), ("outside", "colour"))
    stands = bench.standing({"plug-c": next(one.part for one in found.tried if one.part is not None)})[
        "plug-c"
    ]
    assert isinstance(stands, Plug)
    assert isinstance(stands.colour, NotStated)  # as a states none


def test_a_part_that_is_joined_otherwise_is_not_tried(workshop: DesignFolder, plugs: Loaded) -> None:
    """The plug of c goes through a washer, which those of a and b have not."""
    files = three("50.000", "50.020", "50.040", wet='washer = "hole-a"\n')
    _, found = paired(workshop, plugs, files)
    assert set(names(found).values()) == {"h-a", "h-b"}
    assert [(part.id, place.called, keys) for part, place, keys in found.not_tried] == [
        (name, "h-a and h-c", ("washer",)) for name in ("p-1", "p-2", "p-3")
    ]


def test_a_part_beside_two_mates_is_judged_where_a_rule_takes_one_of_them(
    workshop: DesignFolder, plugs: Loaded
) -> None:
    """The washer of the plug of c is taken by no rule: in its hole of 50.090 mm it has 35 µm, which leave 0.63."""
    files = three(wet='washer = "hole-a"\n') | made("p-4", "plug-c", "outside", "50.055")
    [one] = paired(workshop, plugs, files)[1].pairs
    assert (one.place.called, one.margin) == ("h-a and h-c", pytest.approx(0.63))


def test_each_part_is_told_before_it_is_tried_where_there_is_a_place(
    workshop: DesignFolder, plugs: Loaded
) -> None:
    """The plugs state a duty, which is no part that they go into."""
    files = three("50.000", "50.020", "50.040") | {"duty.toml": 'kind = "duty"\nid = "duty"\n'}
    for name in "abc":
        files[f"plug-{name}.toml"] += 'duty = "duty"\n'
    bench, found = paired(workshop, plugs, files)
    told: list[str] = []
    assert len(pair(bench, "plug", "hole", told.append).pairs) == len(found.pairs) == 3
    assert told == ["p-1", "p-2", "p-3"]
    assert pair(bench, "plug", "socket", told.append).tried == ()
    assert told == ["p-1", "p-2", "p-3"]


def test_a_mate_of_which_several_were_made_stands_where_one_is_said_to_be_fitted(
    workshop: DesignFolder, plugs: Loaded
) -> None:
    files = {
        **drawn("a"),
        **made("h-1", "hole-a", "bore", "50.050"),
        **made("h-2", "hole-a", "bore", "50.060"),
    }
    files |= made("p-1", "plug-a", "outside", "50.010")
    _, found = paired(workshop, plugs, files)
    assert (found.pairs, found.mates_left_out) == ((), ("hole-a",))
    files |= made("h-2", "hole-a", "bore", "50.060", "fitted = true\n")
    _, found = paired(workshop, plugs, files)
    assert (names(found), found.mates_left_out) == ({"p-1": "h-2"}, ())


def proved(bench: Bench, size: Any, place: str, bore_of: str) -> dict[str, str]:
    """How both rules come out with a size in a place, run here by themselves."""
    assert bench.drawn.design is not None
    specs = bench.standing({bore_of: bench.fitted[bore_of]})
    plug = bench.drawn.design.specs[place]
    assert isinstance(plug, Plug)
    specs[place] = restated(plug, {"outside": size})
    context = bench.context(specs)
    return {one.name: check(one, specs[place], context).outcome for one in (enters, tight)}


def test_the_finish_size_of_a_plug_still_to_be_made(workshop: DesignFolder, plugs: Loaded) -> None:
    """In 50.090 mm held to 1 µm: (c − 22)/20 = (98 − c)/100 at c = 34.67 µm; to a whole micrometre 35 leaves 0.63,
    34 leaves 0.60: d = 50.055 mm."""
    bench, found = paired(workshop, plugs, three("50.000", "50.020"))
    assert [one.spec.id for one in found.empty] == ["plug-c"]
    [size] = finish_sizes(bench, found, 1e-6)
    assert (size.part, size.key, size.then.text) == (None, "outside", "50.055 mm ±0.001")
    assert size.proof.may_stand
    assert size.proof.margin == pytest.approx(0.63)
    assert proved(bench, size.then, "plug-c", "hole-c") == {
        "plug.enters": "conforms",
        "plug.tight": "conforms",
    }


def test_the_machine_holds_an_eighth_of_the_drawn_limits_where_nothing_is_said(
    workshop: DesignFolder, plugs: Loaded
) -> None:
    """Limits 60 µm wide: ±7 µm, in whole micrometres. (c − 28)/20 = (92 − c)/100 at c = 38.67: 39 leaves 0.53."""
    bench, found = paired(workshop, plugs, three("50.000", "50.020"))
    [size] = finish_sizes(bench, found)
    assert size.then.text == "50.051 mm ±0.007"
    assert size.proof.margin == pytest.approx(0.53)


def test_a_plug_with_metal_left_is_machined_and_one_too_small_is_not(
    workshop: DesignFolder, plugs: Loaded
) -> None:
    """50.200 mm goes nowhere until it is turned; of 49.900 mm nothing can be had: a new one is made."""
    bench, found = paired(workshop, plugs, three("50.000", "50.020", "50.200"))
    [size] = finish_sizes(bench, found, 1e-6)
    assert size.part is not None
    assert (size.part.id, size.now.text, size.then.text) == ("p-3", "50.199..50.201 mm", "50.055 mm ±0.001")
    bench, found = paired(workshop, plugs, three("50.000", "50.020", "49.900"))
    assert [one.part for one in finish_sizes(bench, found, 1e-6)] == [None]


@each(
    [
        # the best sum would be 0.9 + 0.1, the best worst is 0.4
        ([[0.9, 0.5], [0.4, 0.1]], [(0, 1), (1, 0)]),
        # the worst is 0.2 whichever way; 0.9 + 0.5 is the better sum for the others
        ([[0.2, 0.2, 0.2], [0.9, 0.3, 0.3], [0.4, 0.5, 0.4]], [(0, 2), (1, 0), (2, 1)]),
        # two pairs that may be are better than one that is good
        ([[0.9, 0.1], [0.1, -math.inf]], [(0, 1), (1, 0)]),
        ([[-math.inf], [-math.inf]], []),
        ([], []),
    ],
)
def test_pairs_by_hand(case: tuple[list[list[float]], list[tuple[int, int]]]) -> None:
    margins, pairs = case
    assert best_worst(margins) == tuple(pairs)


def test_a_margin_that_is_no_number_is_refused() -> None:
    for one in (math.nan, math.inf):
        with pytest.raises(ValueError, match="a margin is a number"):
            best_worst([[one]])


_MARGIN = st.integers(-3, 6).map(lambda tenths: tenths / 10) | st.just(-math.inf)
_MATRIX = st.tuples(st.integers(1, 4), st.integers(1, 4)).flatmap(
    lambda shape: st.lists(
        st.lists(_MARGIN, min_size=shape[1], max_size=shape[1]), min_size=shape[0], max_size=shape[0]
    )
)


@given(_MATRIX)
@example([[0.9, 0.5], [0.5, 0.4]])  # 0.5 twice, and not 0.9 beside 0.4, though that is more together
@example([[0.5, 0.9], [0.4, 0.5]])
def test_pairs_against_every_way_there_is(margins: list[list[float]]) -> None:
    """More pairs first, then the best worst, then the best sum: against all choices of rows, in all orders."""
    rows, columns = range(len(margins)), range(len(margins[0]))
    best: tuple[int, float, float] = (0, math.inf, 0.0)
    for count in range(1, min(len(rows), len(columns)) + 1):
        for some in itertools.combinations(rows, count):
            for order in itertools.permutations(columns, count):
                values = [margins[row][column] for row, column in zip(some, order, strict=True)]
                if -math.inf not in values:
                    rated = (count, min(values), round(sum(values), 9))
                    best = max(best, rated) if count == best[0] else rated
    chosen = best_worst(margins)
    values = [margins[row][column] for row, column in chosen]
    assert len({row for row, _ in chosen}) == len({column for _, column in chosen}) == len(chosen)
    assert (len(chosen), min(values, default=math.inf), round(sum(values), 9)) == best


def test_without_scipy_one_line_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(__import__("sys").modules, "scipy.optimize", None)
    with pytest.raises(SettingsError, match=r"pip install speclint\[pairing\]"):
        best_worst([[0.1]])


@pytest.mark.parametrize(("size", "told"), [("50.257", True), ("50.253", False)])
def test_a_rule_tells_pairs_apart_by_more_than_half_a_hundredth_of_its_limit(
    workshop: DesignFolder, size: str, told: bool
) -> None:
    """Of plugs of 50.000 mm and 0.257 mm more the margins differ by 0.257/51 = 0.00504, by 0.253/51 = 0.00496."""
    loaded = load_families([made_family("plugs", kinds=[Hole, Plug], rules=[clear_of])])
    _, found = paired(workshop, loaded, three("50.000", size))
    assert len(found.tried) == 6
    assert {one.deciding for one in found.tried} == {frozenset({"plug.clear-of"} if told else ())}


def test_a_rule_alike_for_every_pair_does_not_hide_the_others(workshop: DesignFolder) -> None:
    """Its 0.02 is the least margin of every pair, and would leave nothing to choose by."""
    loaded = load_families([made_family("plugs", kinds=[Hole, Plug], rules=[enters, tight, clear_of])])
    bench, found = paired(workshop, loaded, three("50.000", "50.020"))
    assert [one.margin for one in found.pairs] == pytest.approx([0.46, 0.46])
    [size] = finish_sizes(bench, found, 1e-6)
    assert size.then.text == "50.055 mm ±0.001"
