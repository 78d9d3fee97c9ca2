"""Pairs of measured parts in words and as Markdown: what each says of the pairs, the finish size and what is left."""

from __future__ import annotations

import json
from collections.abc import Iterator

import jsonschema
import pytest

from speclint import Grade
from speclint.errors import Complaint, Location, replace
from speclint.families import Loaded, load_families
from speclint.made import Bench, Paired, finish_sizes
from speclint.made.pairing import Tried
from speclint.reports import pairs_data, pairs_exit_code, pairs_markdown, pairs_page, published_schema
from speclint.reports.phrases import CAUTION
from speclint.testing import DesignFolder, made_family
from tests.made.test_pairing import Hole, Plug, enters, paired, three, tight

WIDE = 400


@pytest.fixture(scope="module")
def plugs() -> Loaded:
    return load_families([made_family("plugs", kinds=[Hole, Plug], rules=[enters, tight])])


def test_a_place_that_is_left_is_told_with_the_finish_size(workshop: DesignFolder, plugs: Loaded) -> None:
    bench, found = paired(workshop, plugs, three("50.000", "50.020"))
    sizes = finish_sizes(bench, found, 1e-6)
    page = " ".join(pairs_page(bench.drawn, found, sizes, 100).text().split())
    assert "PARTS PAIRED 2 pairs" in page
    assert "p-1 with h-a, as plug-a: 46.0 %, plug.tight on plug-a" in page
    assert "Empty places h-c, for plug-c Finish sizes machine outside of the plug-c that is still" in page
    assert "to be made to 50.055 mm ±0.001 for h-c: leaves 63.0 %, plug.tight on plug-c; proved by" in page
    assert "support a competent person" in page
    assert "rules of plugs alone" not in page
    text = pairs_markdown(bench.drawn, found, sizes, "plugs")
    assert "Judged by the rules of plugs alone" in text
    assert "| p-1 | h-a | plug-a | 46\\.0 % | plug.tight on plug-a |" in text
    assert "- machine outside of the plug-c" in text
    assert pairs_exit_code(bench.drawn, found) == 1


def test_a_pair_that_may_not_be_is_told_with_its_rule(workshop: DesignFolder, plugs: Loaded) -> None:
    bench, found = paired(workshop, plugs, three("50.000", "50.020", "50.040"))
    page = " ".join(pairs_page(bench.drawn, found, (), 100).text().split())
    assert "p-3 with h-a, as plug-c: may not be" not in page
    assert "p-3 with h-a, as plug-a: may not be, plug.enters on plug-a: " in page
    assert pairs_exit_code(bench.drawn, found) == 0


def test_data_are_as_their_schema_says(workshop: DesignFolder, plugs: Loaded) -> None:
    """A pair, a place left with its finish size, a part that is joined otherwise."""
    files = three("50.000", "50.020", wet='washer = "hole-a"\n')
    bench, found = paired(workshop, plugs, files)
    data = json.loads(json.dumps(pairs_data(bench.drawn, found, finish_sizes(bench, found, 1e-6))))
    assert data["pairs"]
    assert data["finish_sizes"]
    assert data["drawn_otherwise"]
    jsonschema.validate(data, json.loads(published_schema("speclint.pairs/1")))


def test_why_there_is_no_pair_is_told(workshop: DesignFolder, plugs: Loaded) -> None:
    """Three holes and no plug on record; then a plug that no place was found for to try."""
    bench, found = paired(workshop, plugs, three())
    assert (
        "none: no part of these kinds is recorded as made" in pairs_page(bench.drawn, found, (), 100).text()
    )
    bench, found = paired(workshop, plugs, three("50.000"))
    left = replace(found, pairs=(), tried=(), left_over=tuple(one.part for one in found.pairs if one.part))
    assert "none: no pair could be tried" in pairs_page(bench.drawn, left, (), 100).text()


def below(page: list[str], heading: str) -> list[str]:
    """The lines below a heading up to the next empty one."""
    start = page.index(heading) + 1
    return page[start : page.index("", start)]


@pytest.fixture
def two(workshop: DesignFolder, plugs: Loaded) -> tuple[Bench, Paired]:
    """Two plugs for three holes."""
    return paired(workshop, plugs, three("50.000", "50.020"))


def test_the_head_says_how_many_pairs_and_by_which_rules(two: tuple[Bench, Paired]) -> None:
    bench, found = two
    page = pairs_page(bench.drawn, found, (), WIDE, "plugs").text().splitlines()
    assert page[0] == page[4] == "═" * WIDE
    assert page[1] == f"PARTS PAIRED{'2 pairs':>{WIDE - len('PARTS PAIRED')}}"
    assert page[2].startswith("As many pairs as there can be without a check that fails;")
    assert page[3] == "Judged by the rules of plugs alone: no other was run, and any other may fail."
    assert page[-2:] == ["", CAUTION]


def test_parts_left_over_and_places_left_empty_are_told_apart(two: tuple[Bench, Paired]) -> None:
    bench, found = two
    left = tuple(one.part for one in found.pairs if one.part)
    page = pairs_page(bench.drawn, replace(found, left_over=left), (), WIDE).text().splitlines()
    assert below(page, "Parts left over") == ["    p-1", "    p-2"]
    assert below(page, "Empty places") == [
        "    h-c, for plug-c: no finish size is known; none of its sizes goes into a measured one, or its drawing "
        "states no limits (say with --within how closely it is machined)"
    ]
    assert "Finish sizes" not in page
    assert "Not tried" not in page
    sized = pairs_page(bench.drawn, found, finish_sizes(bench, found, 1e-6), WIDE).text().splitlines()
    assert below(sized, "Empty places") == ["    h-c, for plug-c"]


def test_a_pair_of_which_no_rule_takes_both_sizes_is_not_known(two: tuple[Bench, Paired]) -> None:
    bench, found = two
    unknown = replace(found.pairs[0], measured=(), pairs=(), own=("bore[0]", "bore[1]", "length"))
    nobody = replace(unknown, part=None, own=())
    page = pairs_page(bench.drawn, replace(found, pairs=(unknown, nobody), tried=()), (), WIDE).text()
    assert below(page.splitlines(), "Pairs") == [
        "    p-1 with h-a, as plug-a with bore, length of its own drawing: not known, no rule takes a measured size of "
        "both",
        "    a part to be made with h-a, as plug-a: not known, no rule takes a measured size of both",
    ]
    assert "Every pair that was tried" not in page


def test_a_case_stands_beside_the_check_that_decides(two: tuple[Bench, Paired]) -> None:
    bench, found = two
    first = found.pairs[0]
    cold = replace(first, measured=tuple(replace(one, case="starting") for one in first.measured))
    page = pairs_page(bench.drawn, replace(found, pairs=(cold,)), (), WIDE).text().splitlines()
    assert below(page, "Pairs") == ["    p-1 with h-a, as plug-a: 46.0 %, plug.tight on plug-a, starting"]


def test_where_every_pair_fails_there_is_none(workshop: DesignFolder, plugs: Loaded) -> None:
    """A plug of 50.2 mm goes into no hole of 50.09 mm."""
    bench, found = paired(workshop, plugs, three("50.200"))
    page = pairs_page(bench.drawn, found, (), WIDE).text().splitlines()
    assert below(page, "Pairs") == ["    none"]
    assert found.tried
    assert pairs_exit_code(bench.drawn, found) == 1


def test_a_size_that_does_not_suit_says_what_fails(two: tuple[Bench, Paired]) -> None:
    bench, found = two
    (size,) = finish_sizes(bench, found, 1e-6)
    failing = next(one for one in paired_failing(found))
    page = pairs_page(bench.drawn, found, (replace(size, proof=failing),), WIDE).text().splitlines()
    (said,) = below(page, "Finish sizes")
    assert said.startswith("    no outside of the plug-a that is still to be made suits ")
    assert ": at 50.055 mm ±0.001 plug." in said
    bare = replace(size, proof=replace(failing, pairs=(), measured=()))
    page = pairs_page(bench.drawn, found, (bare,), WIDE).text().splitlines()
    assert below(page, "Finish sizes")[0].endswith("±0.001 no rule takes a measured size of both")


def paired_failing(found: Paired) -> Iterator[Tried]:
    """A pair that fails: the plug in its hole with each check turned to a finding."""
    for one in found.pairs:
        checks = tuple(replace(check, outcome="finding", grade=Grade.HOLD) for check in one.measured)
        pairs = tuple(
            replace(pair, made=replace(pair.made, outcome="finding", grade=Grade.HOLD)) for pair in one.pairs
        )
        yield replace(one, measured=checks, pairs=pairs)


def test_a_size_of_a_measured_part_names_it_and_its_mate(two: tuple[Bench, Paired]) -> None:
    """Where a mate is machined, it is for the part; where the part is, for the place."""
    bench, found = two
    (size,) = finish_sizes(bench, found, 1e-6)
    first = found.pairs[0]
    assert first.part is not None
    mate = first.place.mates["hole-a"]
    both = (
        replace(size, part=first.part, proof=first),
        replace(size, part=mate, key="bore", proof=first),
    )
    page = pairs_page(bench.drawn, found, both, WIDE).text().splitlines()
    told = "leaves 46.0 %, plug.tight on plug-a; proved by running the rules again"
    assert below(page, "Finish sizes") == [
        f"    machine outside of p-1 to 50.055 mm ±0.001 for h-a: {told}",
        f"    machine bore of h-a to 50.055 mm ±0.001 for p-1: {told}",
    ]


def test_what_was_not_tried_says_why(workshop: DesignFolder, plugs: Loaded) -> None:
    """The washer of the plug c is the hole a, so that its place is by both holes."""
    files = three("50.000", "50.020", wet='washer = "hole-a"\n')
    bench, found = paired(workshop, plugs, files)
    unread = Complaint(Location("bad.toml", 2, "outside"), "a comma is not a decimal point", "", "")
    drawn = replace(bench.drawn, complaints=(unread,))
    assert found.not_tried
    part, place, keys = found.not_tried[0]
    some = replace(found, mates_left_out=("hole-x",), not_tried=((part, place, (*keys, "also")),))
    page = pairs_page(drawn, some, (), WIDE).text().splitlines()
    told = below(page, "Not tried")
    assert told[0] == (
        f"    {part.id} with h-a and h-c: its drawing and that of plug-c differ in what joins them to others: "
        "washer, also"
    )
    assert told[1] == (
        "    the mates made to hole-x: several were made, and not one of them is said to be fitted"
    )
    assert told[2].startswith("    could not be read: bad.toml:2 outside: a comma is not a decimal point")
    assert pairs_exit_code(drawn, found) == 2
    broken = tuple(
        replace(
            one, pairs=tuple(replace(two, made=replace(two.made, could_not_run="x")) for two in one.pairs)
        )
        for one in found.tried
    )
    assert pairs_exit_code(drawn, replace(found, tried=broken)) == 3


def test_the_exit_code_is_of_what_is_left(two: tuple[Bench, Paired]) -> None:
    bench, found = two
    done = replace(found, empty=())
    assert pairs_exit_code(bench.drawn, done) == 0
    assert pairs_exit_code(bench.drawn, replace(done, pairs=())) == 1
    assert pairs_exit_code(bench.drawn, replace(done, empty=found.empty)) == 1
    left = tuple(one.part for one in found.pairs if one.part)
    assert pairs_exit_code(bench.drawn, replace(done, left_over=left)) == 1


def test_the_note_has_every_part_but_its_tables_once(two: tuple[Bench, Paired]) -> None:
    bench, found = two
    text = pairs_markdown(bench.drawn, replace(found, pairs=found.pairs[:1]), ())
    assert text.startswith("## 1 pair\n\nAs many pairs as there can be")
    assert "Judged by" not in text
    assert text.count("| part | stands beside | as | least margin | by |\n") == 2
    assert "### Pairs" not in text
    assert text.count("### Every pair that was tried") == 1
    assert "### Empty places\n\n- h-c, for plug-c: no finish size is known" in text


def test_the_data_of_a_pair_and_of_a_size(two: tuple[Bench, Paired]) -> None:
    bench, found = two
    sizes = finish_sizes(bench, found, 1e-6)
    data = pairs_data(bench.drawn, found, sizes, "plugs")
    assert data["judged_by_alone"] == "plugs"
    assert pairs_data(bench.drawn, found, sizes)["judged_by_alone"] is None
    first = data["pairs"][0]
    assert first == {
        "part": "p-1",
        "as": "plug-a",
        "mates": ["h-a"],
        "margin": pytest.approx(0.46),
        "by": {"component": "plug-a", "rule": "plug.tight"},
        "failing": [],
        "own_drawing": [],
    }
    assert data["left_over"] == []
    assert data["empty"] == [{"as": "plug-c", "mates": ["h-c"]}]
    (size,) = data["finish_sizes"]
    assert (size["of"], size["key"], size["from"], size["to"], size["proved"]) == (
        None,
        "outside",
        "50.02 mm ±0.03",
        "50.055 mm ±0.001",
        True,
    )
    assert len(data["tried"]) == len(found.tried)
    assert (data["exit"], data["not_read"], data["mates_left_out"]) == (1, [], [])
    unknown = replace(found.pairs[0], measured=(), pairs=(), part=None, own=("length",))
    (told,) = pairs_data(bench.drawn, replace(found, pairs=(unknown,)), ())["pairs"]
    assert (told["part"], told["margin"], told["by"], told["own_drawing"]) == (None, None, None, ["length"])
    (failing, *_) = paired_failing(found)
    (told,) = pairs_data(bench.drawn, replace(found, pairs=(failing,)), ())["pairs"]
    assert [(one["component"], one["rule"]) for one in told["failing"]] == [
        ("plug-a", "plug.enters"),
        ("plug-a", "plug.tight"),
    ]
