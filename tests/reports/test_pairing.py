"""Pairs of measured parts in words and as Markdown: what each says of the pairs, the finish size and what is left."""

from __future__ import annotations

import json
from dataclasses import replace

import jsonschema
import pytest

from speclint.families import Loaded, load_families
from speclint.made import finish_sizes
from speclint.reports import pairs_data, pairs_exit_code, pairs_markdown, pairs_page, published_schema
from speclint.testing import DesignFolder, made_family
from tests.made.test_pairing import Hole, Plug, enters, paired, three, tight


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
