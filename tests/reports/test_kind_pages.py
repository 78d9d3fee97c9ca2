"""The pages of kinds: keys by their table, what may be written, what a key is when it is left out, rules on a kind."""

from __future__ import annotations

from typing import ClassVar

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.reports.listed_keys import ListedKey, listed_keys
from speclint.reports.reference.kind_pages import KeyGroup, ShownKey, key_groups, kind_pages, rules_by_kind
from speclint.reports.reference.reference_page import Link
from speclint.specs import NOT_STATED, Component, Length, LinkTo, SpecTable
from tests import tubes


class Inner(SpecTable):
    """A table within.

    Fields:
        depth: how deep it is
    """

    depth: Length = NOT_STATED


class Outer(SpecTable):
    """A table.

    Fields:
        width: how wide it is
        rows: the rows of it
        odd_one: another
    """

    width: Length = NOT_STATED
    rows: dict[str, Inner] = {}
    odd_one: Inner = Inner.unstated()
    must_be: str
    held_in: LinkTo[tubes.Rack] = NOT_STATED


WORDS = frozenset({"rack", "tube"})


def groups(table: type[SpecTable] = Outer, own: str = "Own") -> dict[str, KeyGroup]:
    return {one.heading: one for one in key_groups(table, WORDS, own)}


def key(name: str, heading: str = "Own") -> ShownKey:
    (found,) = [one for one in groups()[heading].keys if one.key.name == name]
    return found


def test_keys_stand_by_the_table_in_which_they_are() -> None:
    found = groups()
    assert list(found) == ["Own", "rows.NAME", "odd_one"]
    assert [one.key.name for one in found["Own"].keys] == ["width", "rows", "odd_one", "must_be", "held_in"]
    assert [one.key.written for one in found["rows.NAME"].keys] == ["rows.NAME.depth"]
    assert [one.anchor for one in found.values()] == ["own-keys", "table.rows.NAME", "table.odd_one"]
    assert found["rows.NAME"].says == ("The rows of it.", "A table within.")
    assert found["Own"].says == ()
    assert list(groups(own="")) == ["Keys", "rows.NAME", "odd_one"]


def test_a_key_says_what_it_means_and_takes() -> None:
    assert (key("width").means, key("width").anchor) == ("how wide it is", "width")
    assert (key("rows").means, key("rows").takes) == ("the rows of it", "a table")
    assert key("must_be").means == "must be", "without a meaning the key in words"
    assert (key("must_be").unset, key("width").unset, key("rows").unset) == ("it must be stated", "", "")


def test_a_key_leads_to_its_units_its_table_or_the_kind_it_names() -> None:
    assert key("width").links == (Link("its units", "names/units.html#length"),)
    assert key("rows").links == (Link("its keys", "#table.rows.NAME"),)
    assert key("odd_one").links == (Link("its keys", "#table.odd_one"),)
    assert key("held_in").links == (Link("rack", "kinds/rack.html"),)
    assert key("must_be").links == ()
    (unknown,) = [
        one
        for group in key_groups(Outer, frozenset(), "Own")
        for one in group.keys
        if one.key.name == "held_in"
    ]
    assert unknown.links == (), "a kind without a page is only named"


def test_the_keys_of_every_component_stand_apart_from_those_of_a_kind() -> None:
    found = key_groups(tubes.Tube, WORDS, "Own")
    assert [one.heading for one in found][:2] == ["Own", "Keys of every component"]
    assert [one.anchor for one in found][:2] == ["own-keys", "common-keys"]
    assert "bore" in {one.key.name for one in found[0].keys}
    assert {"title", "drawing"} <= {one.key.name for one in found[1].keys}
    pressure = next(one for one in found[0].keys if one.key.name == "pressure")
    assert pressure.links == (Link("its units", "names/units.html#pressure"),)


def test_a_listed_key_is_written_with_its_tables_and_says_both() -> None:
    one = ListedKey("rows.NAME.", "depth", "how deep", "a length")
    assert (one.written, one.says) == ("rows.NAME.depth", "how deep; a length")
    assert ListedKey("", "depth", "", "a length").says == "a length"
    assert [(each.written, each.of_every) for each in listed_keys(Outer)] == [
        ("width", False),
        ("rows", False),
        ("rows.NAME.depth", False),
        ("odd_one", False),
        ("odd_one.depth", False),
        ("must_be", False),
        ("held_in", False),
    ]
    every = {each.written: each.of_every for each in listed_keys(tubes.Rack)}
    assert not every["hole"]
    assert not every["slots.NAME.width"]
    assert every["title"]


def test_a_page_of_each_kind_and_the_search_finds_its_own_keys_alone() -> None:
    pages = {page.file: page for page in kind_pages(tubes.tubes(), {})}
    assert "kinds/tube.html" in pages
    assert "kinds/every-component.html" in pages
    names = [one.name for one in pages["kinds/tube.html"].entries]
    assert names[0] == "tube"
    assert "tube.bore" in names
    assert "tube.title" not in names
    places = {one.name: one.place for one in pages["kinds/every-component.html"].entries}
    assert places["every component.title"] == "kinds/every-component.html#title"
    assert pages["kinds/tube.html"].content["rules"] == ()
    listed = pages["kinds/index.html"].content["groups"][0][1]
    assert next(link.words for link, _ in listed) == "every component"


def test_the_rules_on_a_kind_are_those_on_what_it_is_built_on_too() -> None:
    class Thick(tubes.Tube):
        """A thick tube."""

        kind: ClassVar[str] = "thick-tube"

    common = {"cites": [FIRST_PRINCIPLES], "why": "for tests", "leaves_out": "nothing"}

    @rule("any.drawn", title="it is drawn", on=Component, grade=Grade.QUERY, **common)  # type: ignore[arg-type]
    def drawn(_one: Component, sheet: Sheet) -> Judgement:
        """Made for one test."""
        return sheet.states(True, "so")

    from speclint.families import load_families

    rules = (*tubes.RULES, drawn)
    loaded = load_families([tubes.entry_point("tubes", kinds=(tubes.Tube, tubes.Rack, Thick), rules=rules)])
    links = {one.name: Link(one.name, one.name) for one in rules}
    found = rules_by_kind(rules, loaded, links)
    names = {kind: [link.words for link in found[kind]] for kind in ("", "tube", "thick-tube", "rack")}
    of_tubes = [one.name for one in tubes.RULES]
    assert names == {"": ["any.drawn"], "tube": of_tubes, "thick-tube": of_tubes, "rack": []}
