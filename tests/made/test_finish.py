"""The finish size of a part, or of its mate, at the ends of what may be asked, by hand working.

The clearance of a dowel in a socket, and of a plug in a hole, is to lie from 20 µm to 100 µm. With both sizes known to
1 µm the least margin is m(c) = min((c − 22)/20, (98 − c)/100), greatest at c = 34.67 µm; in whole micrometres 35 µm,
which leaves 0.63.
"""

from __future__ import annotations

from typing import Annotated, Any, ClassVar

import pytest

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.families import Loaded, load_families
from speclint.handbook.fits import diametral_clearance
from speclint.made import FinishSize, bench_of, finish, finish_sizes, pair
from speclint.specs import CUT_DOWN, NOT_STATED, OPENED, OWN_PLACE, Component, FitsIn, Length, LinkTo
from speclint.testing import DesignFolder, made_family
from tests.made import test_pairing as plugs_of, test_two_sizes as dowels_of
from tests.made.test_pairing import made, three

_ABOUT: dict[str, Any] = {
    "grade": Grade.NONCONFORMITY,
    "cites": [FIRST_PRINCIPLES],
    "why": "for tests",
    "leaves_out": "nothing",
}
_WITHIN = 1e-6  # m: how closely the machine holds a size


@pytest.fixture(scope="module")
def dowels() -> Loaded:
    return load_families(
        [
            made_family(
                "dowels",
                kinds=[dowels_of.Socket, dowels_of.Dowel],
                rules=[dowels_of.slides, dowels_of.tight],
            )
        ]
    )


@pytest.fixture(scope="module")
def plugs() -> Loaded:
    return of_plugs(plugs_of.enters, plugs_of.tight)


def of_plugs(*rules: Rule) -> Loaded:
    return load_families([made_family("plugs", kinds=[plugs_of.Hole, plugs_of.Plug], rules=rules)])


def finished(
    workshop: DesignFolder,
    loaded: Loaded,
    files: dict[str, str],
    kinds: tuple[str, str] = ("dowel", "socket"),
    within: float | None = _WITHIN,
) -> list[FinishSize]:
    workshop.loaded = loaded
    assessment = workshop.write(files).assess()
    assert not assessment.complaints
    bench = bench_of(assessment)
    return list(finish_sizes(bench, pair(bench, *kinds), within))


def said(found: list[FinishSize]) -> list[tuple[str, str]]:
    return [(one.part.id if one.part is not None else "new", one.then.text) for one in found]


def one_dowel(
    bore: str, outside: str, drawn: tuple[str, str] = ("50.07 mm ±0.03", "50.02 mm ±0.03")
) -> dict[str, str]:
    """A socket and a dowel as measured [mm], with their drawings."""
    return {
        "socket.toml": f'kind = "socket"\nid = "socket"\nbore = "{drawn[0]}"\n',
        "dowel.toml": f'kind = "dowel"\nid = "dowel"\noutside = "{drawn[1]}"\nheld_by = "socket"\n',
        **made("s-1", "socket", "bore", bore),
        **made("d-1", "dowel", "outside", outside),
    }


def one_plug(
    bore: str, outside: str | None, drawn: tuple[str, str] = ("50.07 mm ±0.03", "50.02 mm ±0.03")
) -> dict[str, str]:
    """A hole and, where one was made, a plug as measured [mm], with their drawings."""
    return {
        "hole.toml": f'kind = "hole"\nid = "hole"\nbore = "{drawn[0]}"\n',
        "plug.toml": f'kind = "plug"\nid = "plug"\noutside = "{drawn[1]}"\nheld_by = "hole"\n',
        **made("h-1", "hole", "bore", bore),
        **(made("p-1", "plug", "outside", outside) if outside is not None else {}),
    }


PLUG_IN_HOLE = ("plug", "hole")


def test_a_part_that_is_joined_otherwise_gets_no_finish_size_there(
    workshop: DesignFolder, plugs: Loaded
) -> None:
    """The plug of c goes through a washer: the plug of 50.200 mm, made to a, is not turned for it; a new one is made.

    In 50.090 mm, 35 µm: 50.055 mm.
    """
    files = three("50.000", "50.020", "50.200", wet='washer = "hole-a"\n')
    assert said(finished(workshop, plugs, files, PLUG_IN_HOLE)) == [("new", "50.055 mm ±0.001")]


@pytest.mark.parametrize(
    ("drawn", "size"),
    [
        ("50.02 mm ±0.0318", "50.051 mm ±0.007"),  # 63.6/8 = 7.95: 7 µm, and the best c is 39 µm
        (
            "50.02 mm ±0.0322",
            "50.05 mm ±0.008",
        ),  # 64.4/8 = 8.05: 8 µm, and (c − 29)/20 = (91 − c)/100 at 39.33:
        ("50.02 mm", None),  # nothing to take an eighth of
    ],
)
def test_a_new_part_is_held_to_an_eighth_in_whole_micrometres(
    workshop: DesignFolder, plugs: Loaded, drawn: str, size: str | None
) -> None:
    """In 50.090 mm. With 8 µm: 39 µm leaves (39 − 29)/20 = 0.5, 40 µm (91 − 40)/100 = 0.51: 50.050 mm."""
    files = one_plug("50.090", None, ("50.07 mm ±0.03", drawn))
    found = finished(workshop, plugs, files, PLUG_IN_HOLE, None)
    assert said(found) == ([("new", size)] if size is not None else [])


def test_a_part_of_which_the_size_is_neither_drawn_nor_measured_is_not_machined(
    workshop: DesignFolder, plugs: Loaded
) -> None:
    """It was made to a drawing without a diameter: what is left on it nobody knows."""
    files = {
        **one_plug("50.090", None),
        "other.toml": 'kind = "plug"\nid = "other"\n',
        "p-1.toml": 'kind = "made-part"\nid = "p-1"\nof = "other"\nserial = "p-1"\n',
    }
    assert said(finished(workshop, plugs, files, PLUG_IN_HOLE)) == [("new", "50.055 mm ±0.001")]


TIGHT_DRAWINGS = ("50.07 mm ±0.001", "50.02 mm ±0.001")


def test_a_new_part_is_sought_about_the_fit_of_the_drawing(workshop: DesignFolder, plugs: Loaded) -> None:
    """50 µm, with 4 µm of tolerances and 1/1000 of the diameter either way: −4 to 104 µm in a bore of 50.500 mm.

    35 µm leave 50.465 mm.
    """
    files = one_plug("50.500", None, TIGHT_DRAWINGS)
    assert said(finished(workshop, plugs, files, PLUG_IN_HOLE)) == [("new", "50.465 mm ±0.001")]


def test_a_mate_is_sought_about_the_fit_of_the_drawing(workshop: DesignFolder, dowels: Loaded) -> None:
    """As above: a dowel of 50.400 mm and 35 µm make a bore of 50.435 mm."""
    files = one_dowel("50.100", "50.400", TIGHT_DRAWINGS)
    assert said(finished(workshop, dowels, files)) == [("s-1", "50.435 mm ±0.001")]


def test_a_fit_is_sought_as_far_as_a_thousandth_of_the_diameter(
    workshop: DesignFolder, plugs: Loaded
) -> None:
    """Drawn with 700 µm of clearance at 500 mm; 4 µm of tolerances and 500 µm less leave 196 µm at the least.

    The bore is 500.700 mm as drawn, the middle of the plug 500.000 mm: the greatest plug is 500.504 mm.
    """
    files = one_plug("500.700", None, ("500.70 mm ±0.001", "500.00 mm ±0.001"))
    [size] = finished(workshop, plugs, files, PLUG_IN_HOLE)
    assert size.then.text in {"500.503 mm ±0.001", "500.504 mm ±0.001"}  # found to a micrometre
    assert not size.proof.may_stand


def of_at_least(least: str) -> Rule:
    @rule(
        "plug.large",
        title="the plug is large enough",
        on=plugs_of.Plug,
        limits=[Limit("least", least, "length", FIRST_PRINCIPLES, "least outside")],
        **_ABOUT,
    )
    def large(plug: plugs_of.Plug, sheet: Sheet) -> Judgement:
        """At least; the bore is taken beside it."""
        sheet.take("D", sheet.follow(plug.held_by).bore)
        return sheet.at_least(sheet.take("d", plug.outside), sheet.limit("least"))

    return large


@pytest.mark.parametrize(
    ("least", "drawn", "told"),
    [
        ("49.7 mm", ("50.3 mm ±0.3", "50.0 mm ±0.3"), True),  # 2.5/49.7 = 0.0503
        ("50.3 mm", ("50.3 mm ±0.3", "50.0 mm ±0.3"), False),  # 2.5/50.3 = 0.0497
        ("10 mm", ("50.3 mm ±0.001", "50.0 mm ±0.001"), False),  # 0.108/10 = 0.0108
    ],
)
def test_a_rule_of_which_the_margin_hardly_changes_asks_for_no_size(
    workshop: DesignFolder, least: str, drawn: tuple[str, str], *, told: bool
) -> None:
    """In 50.300 mm: about 50.000 mm, 0.6 + 0.6 + 0.05 mm either way, 2.5 mm in all; with ±0.001 mm 0.054 mm either
    way. Over them the margin (d − L)/L of the one rule is to change by more than 0.05.
    """
    files = one_plug("50.300", None, drawn)
    found = finished(workshop, of_plugs(of_at_least(least)), files, PLUG_IN_HOLE)
    assert [one.proof.deciding for one in found] == ([frozenset({"plug.large"})] if told else [])


@rule(
    "plug.film",
    title="the clearance of a small plug is no more than the greatest",
    on=plugs_of.Plug,
    limits=[
        Limit("small", "50.0595 mm", "length", FIRST_PRINCIPLES, "greatest outside of a small plug"),
        Limit("most", "100 µm", "length", FIRST_PRINCIPLES, "greatest clearance"),
    ],
    **_ABOUT,
)
def film(plug: plugs_of.Plug, sheet: Sheet) -> Judgement:
    """At most, up to a size from which it does not apply."""
    outside = sheet.take("d", plug.outside)
    if outside > sheet.limit("small"):
        raise sheet.not_applicable("a large plug has no film")
    bore = sheet.take("D", sheet.follow(plug.held_by).bore)
    return sheet.at_most(sheet.work("c", diametral_clearance, D=bore, d=outside), sheet.limit("most"))


def test_a_size_at_which_no_rule_compares_numbers_is_never_the_best(workshop: DesignFolder) -> None:
    """In 50.090 mm the rule leaves more the larger the plug is, and from 50.0595 mm says nothing; held to 1 µm."""
    files = one_plug("50.090", None)
    [size] = finished(workshop, of_plugs(film), files, PLUG_IN_HOLE)
    assert size.proof.margin is not None
    assert 50.0555e-3 < size.then.low < 50.0595e-3 < size.then.high + 2e-6


def test_a_part_is_machined_only_by_what_is_left_on_it(workshop: DesignFolder, plugs: Loaded) -> None:
    """Measured as 50.056 mm to 20.5 µm it does not pass in 50.090 mm: 34 − 21.5 µm is less than 20.

    It may be 50.0355 mm: held to 1 µm it is turned to 50.0345 mm or less, in whole micrometres to 50.034 mm, though
    50.055 mm would leave more.
    """
    files = one_plug("50.090", "50.056")
    files["p-1.toml"] = files["p-1.toml"].replace("1 µm", "20.5 µm")
    assert said(finished(workshop, plugs, files, PLUG_IN_HOLE)) == [("p-1", "50.034 mm ±0.001")]


def test_a_bore_is_machined_only_by_what_is_left_in_it(workshop: DesignFolder, dowels: Loaded) -> None:
    """50.055 mm to 20.5 µm may be 50.0755 mm: held to 1 µm it is reamed to 50.0765 mm or more, so to 50.077 mm."""
    files = one_dowel("50.055", "50.030")
    files["s-1.toml"] = files["s-1.toml"].replace("1 µm", "20.5 µm")
    assert said(finished(workshop, dowels, files)) == [("s-1", "50.077 mm ±0.001")]


def test_a_bore_that_is_too_large_is_not_made_less(workshop: DesignFolder, dowels: Loaded) -> None:
    """Drawn with 30 µm, 54 µm either way: up to 84 µm, which would pass; the bore has 370 µm. A new dowel is made.

    In 50.400 mm, 35 µm: 50.365 mm.
    """
    files = one_dowel("50.400", "50.030", ("50.05 mm ±0.001", "50.02 mm ±0.001"))
    assert said(finished(workshop, dowels, files)) == [("new", "50.365 mm ±0.001")]


@pytest.mark.parametrize(
    ("bore", "outside", "wanted"),
    [
        ("50.090", "50.200", ("s-1", "50.235 mm ±0.001")),  # too large: the socket is reamed to 35 µm more
        (
            "50.050",
            "49.900",
            ("new", "50.015 mm ±0.001"),
        ),  # too small: a new dowel, 35 µm less than its socket
    ],
)
def test_a_part_that_is_ground_no_more_gets_no_finish_size(
    workshop: DesignFolder, dowels: Loaded, bore: str, outside: str, wanted: tuple[str, str]
) -> None:
    assert said(finished(workshop, dowels, one_dowel(bore, outside))) == [wanted]


def test_a_mate_that_would_not_pass_at_its_best_is_not_machined(
    workshop: DesignFolder, dowels: Loaded
) -> None:
    """Held to 60 µm the clearance is known to 61 µm: 20 + 61 is more than 100 − 61."""
    found = finished(workshop, dowels, one_dowel("50.030", "50.030"), within=60e-6)
    assert [one.part for one in found] == [None]
    assert not found[0].proof.may_stand


@pytest.mark.parametrize(
    ("drawn", "size"),
    [
        ("50.07 mm ±0.0318", "50.069 mm ±0.007"),  # 7.95 µm: 7 µm, and 39 µm of clearance
        ("50.07 mm ±0.0322", "50.07 mm ±0.008"),  # 8.05 µm: 8 µm, and 40 µm of clearance
        ("50.07 mm", None),
    ],
)
def test_a_mate_is_held_to_an_eighth_in_whole_micrometres(
    workshop: DesignFolder, dowels: Loaded, drawn: str, size: str | None
) -> None:
    """The clearances as of a new part, above, over a dowel of 50.030 mm; without limits only a new dowel is given."""
    files = one_dowel("50.030", "50.030", (drawn, "50.02 mm ±0.03"))
    found = finished(workshop, dowels, files, within=None)
    assert [text for part, text in said(found) if part == "s-1"] == ([size] if size is not None else [])
    assert len(found) == 1


class Cup(Component):
    """What a peg goes into, with a step beside the bore that nobody measures."""

    kind: ClassVar[str] = "cup"
    called: ClassVar[str] = "cup"

    bore: Annotated[Length, OPENED] = NOT_STATED
    step: Length = NOT_STATED


class Peg(Component):
    """A peg, which may go into a second cup."""

    kind: ClassVar[str] = "peg"
    called: ClassVar[str] = "peg"
    hosts: ClassVar[tuple[FitsIn, ...]] = (
        FitsIn("outside", "also_in", "bore"),
        FitsIn("outside", "held_by", "bore"),
    )

    outside: Annotated[Length, CUT_DOWN] = NOT_STATED
    tail: Length = NOT_STATED
    also_in: Annotated[LinkTo[Cup], OWN_PLACE] = NOT_STATED
    held_by: Annotated[LinkTo[Cup], OWN_PLACE] = NOT_STATED


def _of_pegs(name: str, limit: Limit) -> dict[str, Any]:
    return {"name": name, "title": name, "on": Peg, "limits": [limit], **_ABOUT}


_LEAST = Limit("least", "20 µm", "length", FIRST_PRINCIPLES, "least clearance")
_MOST = Limit("most", "100 µm", "length", FIRST_PRINCIPLES, "greatest clearance")
_OVER_STEP = Limit("over", "150 µm", "length", FIRST_PRINCIPLES, "what may stand over the step")


def _clearance(peg: Peg, sheet: Sheet) -> float:
    sheet.take("l", peg.tail)
    bore, outside = sheet.take("D", sheet.follow(peg.held_by).bore), sheet.take("d", peg.outside)
    return sheet.work("c", diametral_clearance, D=bore, d=outside)


@rule(**_of_pegs("peg.enters", _LEAST))
def enters(peg: Peg, sheet: Sheet) -> Judgement:
    """At least."""
    return sheet.at_least(_clearance(peg, sheet), sheet.limit("least"))


@rule(**_of_pegs("peg.tight", _MOST))
def tight(peg: Peg, sheet: Sheet) -> Judgement:
    """At most."""
    return sheet.at_most(_clearance(peg, sheet), sheet.limit("most"))


@rule(**_of_pegs("peg.bore-over-step", _OVER_STEP))
def bore_over_step(peg: Peg, sheet: Sheet) -> Judgement:
    """The bore alone, which leaves less the larger it is."""
    cup = sheet.follow(peg.held_by)
    bore, step = sheet.take("D", cup.bore), sheet.take("s", cup.step)
    return sheet.at_most(sheet.work("a", diametral_clearance, D=bore, d=step), sheet.limit("over"))


#: The outsides at which the rule below was worked [mm].
_WORKED: set[float] = set()


@rule(**_of_pegs("peg.over-step", _OVER_STEP))
def over_step(peg: Peg, sheet: Sheet) -> Judgement:
    """The peg alone, which leaves less the larger it is."""
    step, outside = sheet.take("s", sheet.follow(peg.held_by).step), sheet.take("d", peg.outside)
    _WORKED.add(round(outside * 1e3, 6))
    return sheet.at_most(sheet.work("a", diametral_clearance, D=outside, d=step), sheet.limit("over"))


@rule(**_of_pegs("peg.smaller", _OVER_STEP))
def smaller(peg: Peg, sheet: Sheet) -> Judgement:
    """Of both sizes, in words."""
    bore, outside = sheet.take("D", sheet.follow(peg.held_by).bore), sheet.take("d", peg.outside)
    return sheet.states(outside < bore + sheet.limit("over"), "the peg is smaller than the bore")


@rule(**_of_pegs("peg.tail", Limit("long", "8 mm", "length", FIRST_PRINCIPLES, "longest tail")))
def tail(peg: Peg, sheet: Sheet) -> Judgement:
    """The tail alone, which as drawn is too long."""
    sheet.follow(peg.held_by)
    return sheet.at_most(sheet.take("l", peg.tail), sheet.limit("long"))


@pytest.fixture(scope="module")
def pegs() -> Loaded:
    rules = [enters, tight, bore_over_step, over_step, smaller, tail]
    return load_families([made_family("pegs", kinds=[Cup, Peg], rules=rules)])


def one_peg(
    bore: str, also_in: str = "", measured: str = "outside", size: str = "50.030", drawn: str = "50.02"
) -> dict[str, str]:
    """A cup and a peg as measured [mm]: a second cup, of which none is made, may stand beside them."""
    return {
        "cup.toml": 'kind = "cup"\nid = "cup"\nbore = "50.07 mm ±0.03"\nstep = "49.90 mm"\n',
        "second.toml": 'kind = "cup"\nid = "second"\nbore = "50.07 mm ±0.03"\nstep = "49.90 mm"\n',
        "peg.toml": f'kind = "peg"\nid = "peg"\noutside = "{drawn} mm ±0.001"\ntail = "9 mm"\nheld_by = "cup"\n'
        + also_in,
        **made("c-1", "cup", "bore", bore),
        **made("p-1", "peg", measured, size),
    }


PEG_IN_CUP = ("peg", "cup")


@pytest.mark.parametrize("also_in", ["", 'also_in = "second"\n'])
def test_rules_of_one_of_the_two_parts_do_not_choose_the_size(
    workshop: DesignFolder, pegs: Loaded, also_in: str
) -> None:
    """Of a cup of 50.030 mm for a peg of 50.030 mm: 50.065 mm, as of two rules alone, that the worst margin be 0.63.

    The step is at 49.900 mm: the bore stands 166 µm over it, and would be smaller by that rule. That it should stand
    no more than 150 µm over it is no hindrance, as the drawing allows 200. A cup that was not made is machined for no
    peg.
    """
    found = finished(workshop, pegs, one_peg("50.030", also_in), PEG_IN_CUP)
    machined = [one for one in found if one.part is not None and one.part.id == "c-1"]
    assert said(machined) == [("c-1", "50.065 mm ±0.001")]
    assert machined[0].proof.margin == pytest.approx(0.63)


@pytest.mark.parametrize("also_in", ["", 'also_in = "second"\n'])
def test_rules_of_the_part_alone_do_not_choose_its_size(
    workshop: DesignFolder, pegs: Loaded, also_in: str
) -> None:
    """In 50.090 mm a peg of 50.300 mm is turned to 50.055 mm, 156 µm over the step: the drawing allows 181."""
    files = one_peg("50.090", also_in, size="50.300", drawn="50.08")
    found = finished(workshop, pegs, files, PEG_IN_CUP)
    assert [one for one in said(found) if one[0] == "p-1"] == [("p-1", "50.055 mm ±0.001")]


def test_only_rules_that_took_both_measured_sizes_are_worked_at_every_size(
    workshop: DesignFolder, pegs: Loaded
) -> None:
    """Turned to 50.055 mm ±0.001, the peg is proved by all rules, also by that which takes no size of the cup."""
    workshop.loaded = pegs
    bench = bench_of(workshop.write(one_peg("50.090", size="50.300", drawn="50.08")).assess())
    found = pair(bench, *PEG_IN_CUP)
    _WORKED.clear()
    assert said(list(finish_sizes(bench, found, _WITHIN))) == [("p-1", "50.055 mm ±0.001")]
    assert {50.054, 50.056} <= _WORKED <= {50.054, 50.056, 50.299, 50.301}  # and as it was measured


def test_a_mate_is_not_machined_for_a_size_that_was_not_measured(
    workshop: DesignFolder, pegs: Loaded
) -> None:
    """The tail of the peg was measured, and is taken by both rules; its outside is known from the drawing alone."""
    found = finished(workshop, pegs, one_peg("50.030", measured="tail", size="9.000"), PEG_IN_CUP)
    assert [one.part.id for one in found if one.part is not None and one.part.id == "c-1"] == []
    assert len(found) > 0


def tried_in_cup(workshop: DesignFolder, pegs: Loaded, files: dict[str, str]) -> set[str]:
    """The rules that stand in the way of a peg in a cup."""
    workshop.loaded = pegs
    [one] = pair(bench_of(workshop.write(files).assess()), *PEG_IN_CUP).tried
    return {check.rule.name for check in one.failing}


@pytest.mark.parametrize(("size", "wanted"), [("50.060", {"peg.over-step"}), ("50.040", set())])
def test_a_rule_of_the_part_alone_that_fails_more_than_as_drawn_stands_in_the_way(
    workshop: DesignFolder, pegs: Loaded, size: str, wanted: set[str]
) -> None:
    """161 µm over the step or 141, of 150, where the drawing has 121; in a cup of 50.095 mm it has 35 µm or 55."""
    assert tried_in_cup(workshop, pegs, one_peg("50.095", size=size)) == wanted


def test_a_rule_that_failed_as_drawn_and_is_not_assessed_stands_in_the_way(
    workshop: DesignFolder, pegs: Loaded
) -> None:
    """The tail of 9 mm is longer than 8 mm as drawn; the peg was made to a drawing that states none."""
    files = one_peg("50.095", size="50.040")
    files["other.toml"] = 'kind = "peg"\nid = "other"\noutside = "50.02 mm ±0.001"\n'
    files["p-1.toml"] = files["p-1.toml"].replace('of = "peg"', 'of = "other"')
    assert "peg.tail" in tried_in_cup(workshop, pegs, files)


def test_a_whole_number_of_micrometres_is_not_lost() -> None:
    """25 µm over 1 µm is 25.000000000000004 in floats, of which the next whole number above is 26."""
    assert 0.025e-3 / 1e-6 != 25
    assert all(finish._micrometres(one / 1000 * 0.001) == one for one in range(1, 2000))
    assert finish._micrometres(25.4e-6) == 25.4


@pytest.mark.parametrize(
    ("uncertainty", "size"), [("20 µm", "50.076 mm ±0.001"), ("20.1 µm", "50.077 mm ±0.001")]
)
def test_metal_to_a_whole_micrometre_is_all_taken(
    workshop: DesignFolder, dowels: Loaded, uncertainty: str, size: str
) -> None:
    """50.055 mm may be 50.075 mm: held to 1 µm it is reamed to 50.076 mm; with 0.1 µm more, 50.077 mm."""
    files = one_dowel("50.055", "50.030")
    files["s-1.toml"] = files["s-1.toml"].replace("1 µm", uncertainty)
    assert said(finished(workshop, dowels, files)) == [("s-1", size)]
