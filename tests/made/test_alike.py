"""What keeps a part from being tried in the place of another, and what is of the place and not of the part."""

from __future__ import annotations

from typing import Annotated, ClassVar

import pytest

from speclint.families import load_families
from speclint.made.alike import differences, hindrances, in_place
from speclint.specs import NOT_STATED, OWN_PLACE, Component, Length, LinkTo, SpecTable, Word
from speclint.testing import DesignFolder, made_family
from tests.made.test_pairing import Hole, Plug, enters, tight


class Seat(SpecTable):
    """What a plug sits on.

    Fields:
        on: the part
        depth: how deep
    """

    on: LinkTo[Hole] = NOT_STATED
    depth: Length = NOT_STATED


class Peg(SpecTable):
    """A peg of a plug.

    Fields:
        at: where it goes
        width: its width
    """

    at: Annotated[Word[str], OWN_PLACE] = NOT_STATED
    width: Length = NOT_STATED


class ScrewPlug(Plug):
    """A plug that is screwed in: of a kind of its own.

    Fields:
        seat: what it sits on
        pegs: its pegs, by name
        stands_at: where they stand in its place
    """

    kind: ClassVar[str] = "screw-plug"
    called: ClassVar[str] = "screw plug"

    seat: Seat = Seat.unstated()
    pegs: dict[str, Peg] = {}
    stands_at: Annotated[tuple[Length, ...], OWN_PLACE] = ()


_HOLE = 'kind = "hole"\nid = "{0}"\nbore = "50.07 mm ±0.03"\n'
_PLUG = 'kind = "plug"\nid = "{0}"\noutside = "50.02 mm ±0.03"\nheld_by = "hole-a"\n'


def specs(workshop: DesignFolder, other: str, one: str = _PLUG.format("a")) -> tuple[Component, Component]:
    """The plug of place a, and another one."""
    workshop.loaded = load_families(
        [made_family("plugs", kinds=[Hole, Plug, ScrewPlug], rules=[enters, tight])]
    )
    texts = {
        "hole-a.toml": _HOLE.format("hole-a"),
        "hole-b.toml": _HOLE.format("hole-b"),
        "a.toml": one,
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


SCREWED = _PLUG.replace('"plug"', '"screw-plug"') + '[seat]\non = "hole-{1}"\ndepth = "{2} mm"\n'


def test_a_table_that_holds_a_link_hinders_whichever_of_its_keys_differs(workshop: DesignFolder) -> None:
    """The table would be put in the place as a whole, with the link of the part's own place."""
    for hole, depth, hindered in (("a", "20", ()), ("b", "20", ("seat",)), ("a", "21", ("seat",))):
        a, b = specs(workshop, SCREWED.format("b", hole, depth), SCREWED.format("a", "a", "20"))
        assert hindrances(a, b) == hindered, (hole, depth)


@pytest.mark.parametrize(
    ("stands", "at", "width", "differing"),
    [
        ("30", "top", "5", ()),
        ("31", "top", "5", ()),
        ("30", "foot", "5", ()),
        ("30", "top", "6", ("pegs.left.width",)),
    ],
)
def test_where_a_peg_goes_is_of_the_place_and_how_wide_it_is_of_the_part(
    workshop: DesignFolder, stands: str, at: str, width: str, differing: tuple[str, ...]
) -> None:
    plug = _PLUG.replace('"plug"', '"screw-plug"') + (
        'stands_at = ["{1} mm", "40 mm"]\n[pegs.left]\nat = "{2}"\nwidth = "{3} mm"\n'
    )
    a, b = specs(workshop, plug.format("b", stands, at, width), plug.format("a", "30", "top", "5"))
    assert differences(a, b) == differing


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
