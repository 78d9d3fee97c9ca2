"""The template of a kind that has a key of every sort, line by line where it matters."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, ClassVar, Literal

import pytest

from speclint.quantities import Measure, read
from speclint.specs import (
    NOT_STATED,
    Component,
    Duty,
    Length,
    Link,
    Span,
    Spec,
    Stated,
    Word,
    could_state,
    restated,
    template_of,
)
from speclint.specs.docstrings import meanings, summary
from speclint.specs.examples import quantities_of, quantity_example, usual_at
from speclint.specs.spec import leaves
from speclint.specs.taking_over import is_own_place, own_places
from tests.specs.made_up import Foot, Rest, Stand

LINES = template_of(Stand).splitlines()
USUAL = quantity_example(Stand.model_fields["offset"])


def below(key: str, number: int = 1) -> list[str]:
    """Some lines from that of a key, and the remark before it."""
    at = next(place for place, line in enumerate(LINES) if line.startswith(f"#{key}"))
    return LINES[at - 1 : at + number]


@pytest.mark.parametrize(
    ("key", "lines"),
    [
        ("width =", ['# across its feet; length, such as "2 m"; 1 m to 4 m', '#width = "2 m"']),
        ("legs =", ["# a whole number", "#legs = 4"]),
        ("made_on =", ["# a date without quotes, such as 2027-05-31", "#made_on = 2025-05-31"]),
        ("form =", ['# one of "welded", "cast"; of the other hand the other word', '#form = "welded"']),
        ("sides =", ['# a list, each one of "left", "right"', '#sides = ["left"]']),
        ("holds =", ["# the id of a rest, or a list of several", '#holds = ["rest-left", "rest-right"]']),
        ("heights =", [f'# a list, length, such as "{USUAL}"', f'#heights = ["{USUAL}"]']),
        ("carries =", ["# the id of a rest; each part states its own", '#carries = "rest-left"']),
        (
            "safety_part =",
            ["# true where its failure can hurt someone; true or false", "#safety_part = true"],
        ),
        ("[foot]", ["# A foot of a stand.", "#[foot]"]),
        ("[feet.first]", ["# A foot of a stand. One such table for each.", "#[feet.first]"]),
        ("[[spares]]", ["# A foot of a stand. One such table for each.", "#[[spares]]"]),
        ("[widths]", [f'# each by its name, length, such as "{USUAL}"', "#[widths]", f'#first = "{USUAL}"']),
        (
            "[notes]",
            [
                "# data of your own, which no rule reads; data of your own",
                "#[notes]",
                '#first = "data of your own"',
            ],
        ),
    ],
)
def test_a_key_stands_with_its_remark_and_its_example(key: str, lines: list[str]) -> None:
    assert below(key, len(lines) - 1) == lines


def test_what_stands_at_the_head_and_what_does_not_stand_among_the_keys() -> None:
    assert LINES[0] == "# stand: A stand of a test."
    assert 'kind = "stand"' in LINES
    assert 'id = "stand-left"' in LINES
    for key in ("id", "like", "mirror_of", "each"):
        assert not [line for line in LINES if line.startswith(f"#{key} =")]
    keys = [line for line in LINES if line.startswith("#") and " = " in line and not line.startswith("# ")]
    assert keys[0].startswith("#width")
    first_table = next(place for place, line in enumerate(LINES) if line.startswith("#["))
    assert LINES.index("#legs = 4") < first_table


def test_a_table_within_has_its_own_keys_with_their_remarks() -> None:
    at = LINES.index("#[foot]")
    assert LINES[at + 1 : at + 7] == [
        "",
        f'# from the floor to its top; length, such as "{USUAL}"',
        f'#height = "{USUAL}"',
        "",
        "# whether it is bolted down; true or false",
        "#fixed = true",
    ]


def test_the_values_of_a_spec_are_told_with_the_table_and_the_field_that_declare_them() -> None:
    foot = Foot(height=read("40 mm", "length"))
    stand = Stand(id="a", heights=(read("1 mm", "length"),), feet={"front": foot}, spares=(foot,))
    found = {one.key: (one.table, one.field) for one in leaves(stand)}
    assert found["heights[0]"] == (Stand, "heights")
    assert found["feet.front.height"] == (Foot, "height")
    assert found["spares[0].height"] == (Foot, "height")
    assert found["foot.fixed"] == (Foot, "fixed")
    assert [one.text for one in stand.measures()] == ["1 mm", "40 mm", "40 mm"]
    linked = Stand(id="a", carries=Link("rest", ("rest",)), holds=(Link("b", ("rest",)),))
    assert [one.id for one in linked.links()] == ["rest", "b"]


@pytest.mark.parametrize(
    ("key", "own"),
    [
        ("carries", True),
        ("paints", False),
        ("width", False),
        ("foot.height", False),
        ("no_such.key", False),
        ("prepared_by", False),
    ],
)
def test_which_keys_each_part_states_for_itself(key: str, own: bool) -> None:
    assert is_own_place(Stand, key) is own
    assert (key in own_places(Stand)) is (own or key == "prepared_by")


@pytest.mark.parametrize(
    ("key", "text", "could"),
    [
        ("width", "2 m", True),
        ("width", "4 m", True),
        ("width", "4.1 m", False),
        ("width", "0 m", False),
        ("offset", "-1 m", True),
        ("offset", "0 m", True),
        ("heights.0", "2 mm", True),
        ("heights.0", "0 mm", False),
        ("feet.front.height", "2 mm", True),
        ("feet.front.height", "-2 mm", False),
        ("temperatures.a", "-20 °C", True),
    ],
)
def test_what_a_key_could_state_instead(key: str, text: str, could: bool) -> None:
    """A temperature below 0 °C is one above nothing all the same."""
    stand = Stand(
        id="a",
        width=read("2 m", "length"),
        offset=read("1 m", "length"),
        heights=(read("1 mm", "length"),),
        feet={"front": Foot(height=read("40 mm", "length"))},
        temperatures={"a": read("20 °C", "temperature")},
    )
    instead = read(text, "temperature" if "°C" in text else "length", "any")
    assert could_state(stand, key, instead) is could
    changed = restated(stand, {key: instead})
    assert changed.under(key) is instead
    assert stand.under(key) is not instead


def test_several_quantities_are_restated_at_once_and_those_beside_them_stay() -> None:
    stand = Stand(
        id="a",
        heights=(read("1 mm", "length"), read("2 mm", "length"), read("3 mm", "length")),
        legs=Stated(3),
    )
    five, six = read("5 mm", "length"), read("6 mm", "length")
    changed = restated(stand, {"heights.1": five, "width": six})
    assert [one.text for one in changed.heights if isinstance(one, Measure)] == ["1 mm", "5 mm", "3 mm"]
    assert (changed.width, changed.legs) == (six, Stated(3))
    assert could_state(stand, "heights.1", five)
    for key in ("heights.3", "heights.x", "legs", "foot", "feet.front", "nothing"):
        with pytest.raises(LookupError):
            restated(stand, {key: five})
        with pytest.raises(LookupError):
            could_state(stand, key, five)
    assert restated(stand, {"width": NOT_STATED}).width is NOT_STATED


def test_a_kind_is_found_in_a_table_by_its_word_or_by_that_of_a_kind_it_is_built_on() -> None:
    assert Stand.words() == ("stand", "component")
    assert Stand.by_kind({"component": 1, "stand": 2}) == 2
    assert Rest.by_kind({"component": 1, "stand": 2}) == 1
    with pytest.raises(LookupError, match="the table by kind names no rest"):
        Rest.by_kind({"stand": 2})
    assert Stand.is_one_of(("x", "component"))
    assert not Stand.is_one_of(("rest",))
    assert not Spec.is_one_of(("component",))


class Shelf(Component):
    """A shelf of a test, with its
    ``depth``.

    Fields:
        depth: of it,
            with its edge

        not_a_key of the text
        width: Across.
    """

    kind: ClassVar[str] = "shelf"
    called: ClassVar[str] = "shelf"
    old_keys: ClassVar[Mapping[str, str]] = {"wide": "width"}

    depth: Foot = Foot.unstated()
    wide: Foot = Foot.unstated()


def test_a_meaning_ends_where_its_lines_end_and_an_old_key_says_what_is_written_now() -> None:
    found = meanings(Shelf)
    assert found["depth"] == "of it, with its edge"
    assert summary(Shelf) == 'A shelf of a test, with its "depth".'
    assert "wide" not in found
    assert "width" not in found


def test_what_a_key_within_a_table_may_be_written_as() -> None:
    stand = Stand(id="a", feet={"front": Foot()})
    assert usual_at(stand, "feet.front.height") == USUAL
    assert usual_at(stand, "foot.fixed") is True
    assert usual_at(stand, "feet.back.height") is None
    assert usual_at(stand, "foot") is None
    assert usual_at(stand, "width") == quantities_of(Stand)["width"] == "2 m"


class Gauge(Component):
    """A gauge of a test, with words beyond ASCII."""

    kind: ClassVar[str] = "gauge"
    called: ClassVar[str] = "gauge"

    mark: Word[Literal["Ø", "R"]] = NOT_STATED
    marks: tuple[Word[Literal["Ø", "R"]], ...] = ()
    error: Annotated[Length, Span("1 µm", "9 µm")] = NOT_STATED
    errors: tuple[Annotated[Length, Span("1 µm", "9 µm")], ...] = ()


def test_letters_beyond_ascii_are_written_as_they_are() -> None:
    """The middle of 1 and 9 µm, by ratio, is 3 µm."""
    lines = template_of(Gauge).splitlines()
    for line in ('#mark = "Ø"', '#marks = ["Ø"]', '#error = "3 µm"', '#errors = ["3 µm"]'):
        assert line in lines


def test_of_load_cases_that_of_running_stands_for_each() -> None:
    lines = template_of(Duty).splitlines()
    assert "#[cases.running]" in lines
    assert [line for line in lines if line.startswith("#[cases.")] == [
        "#[cases.running]",
        "#[cases.running.temperatures]",
    ]
