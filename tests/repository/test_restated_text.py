"""A value written otherwise in the text of a file: that value alone changes, and every remark stays."""

from __future__ import annotations

import pytest

from speclint.errors import DesignError, Location, locate
from speclint.repository import restated_text

TEXT = """# a remark
kind = "cylinder-liner"
id = "liner-{each}"
each = ["left", "right"]
bore = "500 mm H8"      # as bored
length = { value = "900 mm", from = "measured" }
safety_part = false
pistons_for = ["503 mm", "506 mm"]
making = { heat = "200 °C", "odd key" = "x" }

[lands.first]
from_seat = "10 mm"

[[issued]]
to = "foundry"

[for.left]
bore = "501 mm H8"
lands.first.from_seat = "11 mm"

[patterns."of-{each}"]
joint = "studs-{each}"
"""


def place(key: str, *path: str | int) -> Location:
    """The place of a key as a spec has it, on the line of a path of the text."""
    return Location("liner.toml", locate(TEXT)[path or tuple(key.split("."))], key)


@pytest.mark.parametrize(
    ("where", "written", "was", "then"),
    [
        (place("bore"), "500.1 mm H8", 'bore = "500 mm H8" ', 'bore = "500.1 mm H8" '),
        (place("bore"), '"500.1 mm H8"', 'bore = "500 mm H8" ', 'bore = "500.1 mm H8" '),
        (place("bore", "for", "left", "bore"), "502 mm", 'bore = "501 mm H8"', 'bore = "502 mm"'),
        (place("length"), "901 mm", 'value = "900 mm"', 'value = "901 mm"'),
        (place("safety_part"), "true", "safety_part = false", "safety_part = true"),
        (place("pistons_for[1]", "pistons_for", 1), "507 mm", '"506 mm"', '"507 mm"'),
        (place("making.heat"), "210 °C", '"200 °C"', '"210 °C"'),
        (place("lands.first.from_seat"), "12 mm", 'from_seat = "10 mm"', 'from_seat = "12 mm"'),
        (place("issued[0].to", "issued", 0, "to"), "shop", '"foundry"', '"shop"'),
        (
            place("patterns.of-left.joint", "patterns", "of-{each}", "joint"),
            "s-{each}",
            '"studs-{each}"',
            '"s-{each}"',
        ),
        (
            place("lands.first.from_seat", "for", "left", "lands", "first", "from_seat"),
            "13 mm",
            'from_seat = "11 mm"',
            'from_seat = "13 mm"',
        ),
    ],
)
def test_one_value_changes_and_nothing_else(where: Location, written: str, was: str, then: str) -> None:
    assert TEXT.count(was) == 1
    assert restated_text(TEXT, where, written) == TEXT.replace(was, then)


def test_a_value_that_is_not_stated_is_stated_at_the_head() -> None:
    import tomllib

    found = tomllib.loads(restated_text(TEXT, Location("liner.toml", 0, "roughness"), "6.3 µm"))
    assert found == tomllib.loads(TEXT) | {"roughness": "6.3 µm"}


def test_a_value_in_a_table_that_is_not_stated_is_stated_in_it() -> None:
    import tomllib

    found = tomllib.loads(restated_text(TEXT, Location("liner.toml", 0, "wear.limit"), "3 mm"))
    assert found["wear"] == {"limit": "3 mm"}


@pytest.mark.parametrize(
    ("written", "usual", "then"), [("4", 4, 4), ("4", "text", "4"), ("true", True, True)]
)
def test_what_is_not_stated_is_written_as_is_usual_there(written: str, usual: object, then: object) -> None:
    import tomllib

    found = tomllib.loads(restated_text(TEXT, Location("liner.toml", 0, "count"), written, usual))
    assert found["count"] == then


def test_what_cannot_be_written_in_its_place_is_refused() -> None:
    """A table where a value stands."""
    with pytest.raises(DesignError, match=r"bore\.more: this cannot be written otherwise by itself"):
        restated_text(TEXT, Location("liner.toml", 0, "bore.more"), "1 mm")
