"""What keeps a part from being tried in the place of another, and what is of the place and not of the part."""

from __future__ import annotations

from typing import ClassVar

from speclint.families import load_families
from speclint.made.alike import differences, hindrances, in_place
from speclint.specs import Component
from speclint.testing import DesignFolder, made_family
from tests.made.test_pairing import Hole, Plug, enters, tight


class ScrewPlug(Plug):
    """A plug that is screwed in: of a kind of its own."""

    kind: ClassVar[str] = "screw-plug"
    called: ClassVar[str] = "screw plug"


_HOLE = 'kind = "hole"\nid = "{0}"\nbore = "50.07 mm ±0.03"\n'
_PLUG = 'kind = "plug"\nid = "{0}"\noutside = "50.02 mm ±0.03"\nheld_by = "hole-a"\n'


def specs(workshop: DesignFolder, other: str) -> tuple[Component, Component]:
    """The plug of place a, and another one."""
    workshop.loaded = load_families(
        [made_family("plugs", kinds=[Hole, Plug, ScrewPlug], rules=[enters, tight])]
    )
    texts = {
        "hole-a.toml": _HOLE.format("hole-a"),
        "hole-b.toml": _HOLE.format("hole-b"),
        "a.toml": _PLUG.format("a"),
        "b.toml": other,
    }
    drawn = workshop.write(texts).assess()
    assert drawn.complaints == ()
    assert drawn.design is not None
    a, b = drawn.design.specs["a"], drawn.design.specs["b"]
    assert isinstance(a, Component)
    assert isinstance(b, Component)
    return a, b


def test_a_part_of_another_kind_is_not_tried_though_its_drawing_states_the_same(
    workshop: DesignFolder,
) -> None:
    a, b = specs(workshop, _PLUG.format("b").replace('"plug"', '"screw-plug"'))
    assert differences(a, b) == ()
    assert (hindrances(a, b), hindrances(b, a)) == (("kind",), ("kind",))


def test_what_is_of_the_place_is_no_difference(workshop: DesignFolder) -> None:
    """Its own hole, its drawing."""
    a, b = specs(workshop, _PLUG.format("b").replace("hole-a", "hole-b") + 'drawing = "B-2"\n')
    assert (differences(a, b), hindrances(a, b)) == ((), ())


def test_a_key_that_only_one_states_is_a_difference_whichever_has_it(workshop: DesignFolder) -> None:
    a, b = specs(workshop, _PLUG.format("b") + 'colour = "red"\n')
    assert differences(a, b) == differences(b, a) == ("colour",)
    assert hindrances(a, b) == hindrances(b, a) == ()


def test_a_link_that_only_one_states_hinders_whichever_has_it(workshop: DesignFolder) -> None:
    a, b = specs(workshop, _PLUG.format("b") + 'washer = "hole-b"\n')
    assert hindrances(a, b) == hindrances(b, a) == ("washer",)


def test_limits_and_tolerance_class_are_of_the_part(workshop: DesignFolder) -> None:
    """The same middle with 0.02 mm either way is another part; so is one whose upper limit alone is other."""
    for size in ("50.02 mm ±0.02", "49.99..50.06 mm", "49.98..50.05 mm"):
        a, b = specs(workshop, _PLUG.format("b").replace("50.02 mm ±0.03", size))
        assert differences(a, b) == ("outside",), size


def test_a_part_in_another_place_keeps_its_own_sizes_and_has_the_links_of_the_place(
    workshop: DesignFolder,
) -> None:
    b = _PLUG.format("b").replace("hole-a", "hole-b").replace("50.02 mm ±0.03", "50.01 mm ±0.02")
    own, place = specs(workshop, b)
    stands = in_place(own, place)
    assert isinstance(own, Plug)
    assert isinstance(place, Plug)
    assert isinstance(stands, Plug)
    assert stands.outside == own.outside != place.outside
    assert (stands.id, stands.held_by) == ("b", place.held_by)
