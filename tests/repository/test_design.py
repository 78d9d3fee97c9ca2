"""What a design tells of its specs: owners, files, duties, parts alike, what reads a line, what could not be read."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.errors import Location
from speclint.quantities import Measure
from speclint.repository import Design
from speclint.repository.digests import state_of
from speclint.specs import Component
from speclint.testing import DesignFolder, installed_families
from tests.plugins.release.part import files as of_cover
from tests.repository.test_made_parts import MADE
from tests.tubes import DUTY, FILES, RACK, TUBE, Rack, Tube, tubes

LIKE = 'kind = "tube"\nlike = "tube"\nheld_in = "rack"\n'
EACH = TUBE.replace('kind = "tube"', 'kind = "tube"\nid = "pair-{each}"\neach = ["a", "b"]')
NO_DUTY = TUBE.replace('duty = "duty"\n', "")
MORE = {**FILES, "second.toml": LIKE, "third.toml": LIKE, "pair.toml": EACH, "alone.toml": NO_DUTY}


@pytest.fixture
def shop(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path, tubes())


def read(shop: DesignFolder, files: dict[str, str]) -> Design:
    found = shop.write(files).assess().design
    assert found is not None
    return found


def part(design: Design, name: str) -> Component:
    found = design.specs[name]
    assert isinstance(found, Component)
    return found


@pytest.mark.parametrize(
    ("name", "first", "others"),
    [
        ("tube", "tube", ("second", "third")),
        ("second", "tube", ("third", "tube")),
        ("third", "tube", ("second", "tube")),
        ("pair-a", "pair-a", ("pair-b",)),
        ("pair-b", "pair-a", ("pair-a",)),
        ("alone", "", ()),
        ("rack", "", ()),
        ("nobody", "", ()),
    ],
)
def test_parts_alike_are_known_by_the_first_of_them(
    shop: DesignFolder, name: str, first: str, others: tuple[str, ...]
) -> None:
    design = read(shop, MORE)
    assert (design.first_alike(name), design.names_alike(name)) == (first, others)
    if name in design.specs:
        assert tuple(one.id for one in design.parts_alike(part(design, name))) == others


def test_where_nothing_is_alike_no_part_has_a_first(shop: DesignFolder) -> None:
    design = read(shop, FILES)
    assert [design.first_alike(name) for name in ("tube", "rack", "")] == ["", "", ""]


def test_a_duty_like_another_is_no_part_alike(shop: DesignFolder) -> None:
    design = read(shop, {**FILES, "more.toml": 'kind = "duty"\nlike = "duty"\n'})
    assert design.names_alike("duty") == ("more",)
    assert design.parts_alike(part(design, "tube")) == ()


def test_who_reads_a_line(shop: DesignFolder) -> None:
    """A tube, and those that take it over; of a file of two parts both."""
    design = read(shop, MORE)
    assert design.names_sharing("tube") == ("second", "third")
    assert design.names_sharing("second") == ("third", "tube")
    assert design.names_sharing("pair-a") == ("pair-b",)
    assert design.names_sharing("rack") == ()
    assert design.files_of("second") == ("second.toml", "tube.toml")
    assert design.files_of("tube") == ("tube.toml",)
    assert design.files_of("nobody") == ()


def test_whose_place_it_is(shop: DesignFolder) -> None:
    design = read(shop, MORE)
    assert design.owner(Location("tube.toml", 1, "bore")) == "tube"
    assert design.owner(Location("tube.toml", 1, "bore", "second")) == "second"
    assert design.owner(Location("speclint.toml", 1, "works")) == "speclint.toml"


def test_a_change_of_a_value_is_one_of_every_part_that_reads_it(shop: DesignFolder) -> None:
    design = read(shop, MORE)
    bore = dict(design.specs["tube"].at_keys())["bore"]
    assert isinstance(bore, Measure)
    places = set(design.moved(bore.where, 0.001))
    assert {one.part for one in places} == {"", "tube", "second", "third"}
    assert set(design.moved(bore.where, 0.001).values()) == {0.001}
    assert set(design.reworded(bore.where, "x")) == places
    restated = design.restated(bore.where, bore)
    assert set(restated) == places
    assert all(isinstance(one, Measure) and one.where == place for place, one in restated.items())
    hole = dict(design.specs["rack"].at_keys())["hole"]
    assert isinstance(hole, Measure)
    assert list(design.moved(hole.where, 0.001)) == [hole.where]


def test_a_part_has_the_duty_that_it_states_or_that_of_the_nearest_part(shop: DesignFolder) -> None:
    rack = RACK + 'duty = "other"\n'
    other = DUTY.replace('id = "duty"', 'id = "other"')
    design = read(shop, {**MORE, "rack.toml": rack, "other.toml": other})
    own, passed = design.duty_of(part(design, "tube"))
    assert own is design.specs["duty"]
    assert passed == {"tube", "duty"}
    inherited, passed = design.duty_of(part(design, "alone"))
    assert inherited is design.specs["other"]
    assert passed == {"alone", "rack", "other"}


def test_a_part_without_a_duty_tells_what_was_looked_at(shop: DesignFolder) -> None:
    design = read(shop, {"alone.toml": NO_DUTY, "rack.toml": RACK})
    assert design.duty_of(part(design, "alone")) == (None, frozenset({"alone", "rack"}))


def test_a_duty_that_is_not_there_ends_the_search(shop: DesignFolder) -> None:
    """What the tube says is its duty is none: that of its rack is not taken instead."""
    files = {
        "tube.toml": TUBE,
        "rack.toml": RACK + 'duty = "other"\n',
        "other.toml": DUTY.replace('"duty"\nid = "duty"', '"duty"'),
    }
    design = read(shop, files)
    assert design.duty_of(part(design, "tube")) == (None, frozenset({"tube", "duty"}))


def test_a_duty_like_another_rests_on_that_too(shop: DesignFolder) -> None:
    files = {
        **FILES,
        "duty.toml": 'kind = "duty"\nlike = "first"\n',
        "first.toml": DUTY.replace('id = "duty"', ""),
    }
    _, passed = (design := read(shop, files)).duty_of(part(design, "tube"))
    assert passed == {"tube", "duty", "first"}


def test_a_rack_that_cannot_be_read_is_among_what_was_looked_at(shop: DesignFolder) -> None:
    design = read(shop, {"alone.toml": NO_DUTY, "rack.toml": RACK + "x = 1\n"})
    assert design.duty_of(part(design, "alone")) == (None, frozenset({"alone", "rack"}))
    assert design.unread_among(["rack", "alone", "nobody"]) == ("rack.toml",)
    assert design.unread_on_way(["alone"]) == ("rack.toml",)
    assert design.unread_on_way([]) == ()
    assert design.unread_naming("106 mm +0.1/0") == ("rack.toml",)
    assert design.unread_naming("nothing of it", "106 mm +0.1/0") == ("rack.toml",)
    assert design.unread_naming("nothing of it") == ()


def test_what_could_not_be_read_may_link_to_a_part(shop: DesignFolder) -> None:
    design = read(shop, {**FILES, "alone.toml": NO_DUTY, "other.toml": TUBE + "x = 1\n"})
    rack = design.specs["rack"]
    assert design.unread_linking(rack, Tube) == ("other.toml",)
    assert design.unread_linking(rack, Tube, "open") == ("other.toml",)
    assert design.unread_linking(rack, Tube, "closed") == ()
    assert design.unread_linking(rack, Rack) == ()
    assert design.unread_linking(design.specs["alone"], Tube) == ()
    assert design.unread_on_way(["rack"]) == ("other.toml",)


def test_the_components_that_link_to_one(shop: DesignFolder) -> None:
    design = read(shop, MORE)
    rack = design.specs["rack"]
    names = ["alone", "pair-a", "pair-b", "second", "third", "tube"]
    assert [one.id for one in design.linking_to(rack)] == names
    assert [one.id for one in design.linking_of(rack, Tube)] == names
    assert [one.id for one in design.linking_of(rack, Component)] == names
    assert design.linking_of(rack, Rack) == ()
    assert design.linking_to(design.specs["tube"]) == ()


def test_the_selected_components_in_the_order_of_their_ids(shop: DesignFolder) -> None:
    shop.write({**MORE, "other.toml": TUBE + "x = 1\n"})
    design = shop.assess("tube.toml", "duty.toml", "other.toml", "alone.toml").design
    assert design is not None
    assert design.part_names() == ("alone", "tube")
    assert [one.id for one in design.parts()] == ["alone", "tube"]


def test_the_state_of_a_spec_is_that_of_what_it_states(shop: DesignFolder) -> None:
    design = read(shop, {**MORE, "other.toml": TUBE + "x = 1\n"})
    assert design.state_of("tube") == state_of(design.specs["tube"])
    assert design.state_of("tube") != design.state_of("alone")
    assert design.state_of("other") is None
    assert design.state_of("nobody") is None


def test_parts_as_made_are_given_only_where_they_are_asked_for(tmp_path: Path) -> None:
    shop = DesignFolder(tmp_path, installed_families()).write({**of_cover(), "cover-7.toml": MADE})
    design = shop.assess("duty.toml").design
    assert design is not None
    assert [one.id for one in design.parts_as_made()] == ["cover-7"]
    cover, made = design.specs["cover"], type(part(design, "cover-7"))
    assert "cover-7" in [one.id for one in design.linking_to(cover)]
    assert [one.id for one in design.linking_of(cover, made)] == ["cover-7"]
    assert "cover-7" not in [one.id for one in design.linking_of(cover, Component)]
    assert design.parts_as_made()[0] is design.specs["cover-7"]
