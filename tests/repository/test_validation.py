"""What is wrong with the content of a file, told key by key: its place, what was read, and what to write instead."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.errors import Location
from speclint.repository.reading import load_specs, read_drafts, validated
from speclint.repository.validation import quoted
from speclint.specs import Array, Catalogue, ExtraTable, Leaf, Spec, Table
from tests.specs.made_up import Foot, Rest, Stand
from tests.tubes import Tube

KINDS: dict[str, type[Spec]] = {"stand": Stand, "rest": Rest}
HERE = Location("a.toml", 1)


def said(folder: Path, text: str) -> list[str]:
    (folder / "a.toml").write_text(f'kind = "stand"\n{text}\n', encoding="utf-8")
    (loaded,) = load_specs(folder / "a.toml", "a.toml", KINDS)
    return [str(one) for one in loaded.complaints]


FOOT = "write one of fixed, height; data of your own goes under [notes]"


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ('widht = "2 m"', 'a.toml:2 widht: "widht" is no key of a stand; read "2 m"; write "width"'),
        (
            "[foot]\nheigth = true",
            'a.toml:3 foot.heigth: "heigth" is no key of [foot]; read true; write "height"',
        ),
        ("[foot]\nzzzz = false", f'a.toml:3 foot.zzzz: "zzzz" is no key of [foot]; read false; {FOOT}'),
        ("[feet.a]\nzzzz = 1", f'a.toml:3 feet.a.zzzz: "zzzz" is no key of [feet.a]; read 1; {FOOT}'),
        (
            "[[spares]]\nzzzz = []",
            f'a.toml:3 spares[0].zzzz: "zzzz" is no key of [spares[0]]; read an array; {FOOT}',
        ),
        ("[foot]\nzzzz = {}", f'a.toml:3 foot.zzzz: "zzzz" is no key of [foot]; read a table; {FOOT}'),
        ("foot = 3", "a.toml:2 foot: a table is expected here; read 3; write [foot] and its keys"),
        ("feet = 3", "a.toml:2 feet: a table is expected here; read 3; write [feet] and its keys"),
        ("feet.a = 3", "a.toml:2 feet.a: a table is expected here; read 3; write [feet.a] and its keys"),
        ("spares = 3", "a.toml:2 spares: an array is expected here; read 3; write spares = [ … ]"),
        (
            "spares = [3]",
            "a.toml:2 spares[0]: a table is expected here; read 3; write [spares[0]] and its keys",
        ),
        (
            'heights = ["5 mm", "5 kg"]',
            'a.toml:2 heights[1]: "kg" is no unit of length; read "5 kg"; ',
        ),
        (
            'form = "forged"',
            'a.toml:2 form: this is not one of the words used here; read "forged"; write one of "welded", "cast"',
        ),
    ],
)
def test_a_fault_has_its_place_and_a_way_out(tmp_path: Path, text: str, line: str) -> None:
    (found,) = said(tmp_path, text)
    assert found.startswith(line) if line.endswith("; ") else found == line


def test_of_a_kind_that_has_no_such_key_all_are_listed_those_of_every_spec_among_them(tmp_path: Path) -> None:
    (found,) = said(tmp_path, "zzzz = 1")
    listed = found.partition("write one of ")[2].partition(";")[0].split(", ")
    assert listed == sorted(listed)
    assert set(listed) == {*Stand.model_fields, "kind"}


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        ("text", '"text"'),
        (Leaf("text", HERE), '"text"'),
        (True, "true"),
        (False, "false"),
        (Leaf(False, HERE), "false"),
        (3, "3"),
        (2.5, "2.5"),
        (Table({}, HERE), "a table"),
        (Array([], HERE), "an array"),
    ],
)
def test_what_was_read_is_shown_as_it_is_written(value: object, shown: str) -> None:
    assert quoted(value) == shown


CATALOGUE = Catalogue(
    {"stands": [Stand, Rest], "tubes": [Tube]},
    {"feet-family": [ExtraTable(Stand, Foot), ExtraTable(Rest, Foot)], "hands": [ExtraTable(Rest, Foot)]},
)


def of_family(text: str, kinds: Catalogue = CATALOGUE) -> list[str]:
    content = f'kind = "stand"\n{text}\n'.encode()
    return [
        str(one)
        for draft in read_drafts(Path("a.toml"), "a.toml", kinds, content)
        for one in validated(draft, kinds).complaints
    ]


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ('[feet-family]\nheight = "5 mm"', ""),
        (
            "[hands]\nx = 1",
            "a.toml:2 hands: the family hands reads a table [hands] of a rest, not of a stand; read a table; "
            "write the table where it belongs, or under [notes]",
        ),
        (
            "[zzzzz]\nx = 1",
            "a.toml:2 zzzzz: [zzzzz] is no table of a stand, and no family that is loaded reads it; read a table; "
            "write the family installed that reads it, or the table under [notes]",
        ),
        ("[spare]\nx = 1", 'a.toml:2 spare: "spare" is no key of a stand; read a table; write "spares"'),
        ("[foot.hands]\nx = 1", f'a.toml:2 foot.hands: "hands" is no key of [foot]; read a table; {FOOT}'),
    ],
)
def test_a_table_that_a_family_might_read_is_told_by_its_family(text: str, line: str) -> None:
    assert of_family(text) == ([line] if line else [])


def test_a_value_is_no_table_of_a_family() -> None:
    (line,) = of_family("hands = 3")
    assert line == 'a.toml:2 hands: "hands" is no key of a stand; read 3; write "hand"'


def test_a_table_of_a_family_that_is_left_out_is_told_so() -> None:
    (line,) = of_family('[feet-family]\nheight = "5 mm"', CATALOGUE.without(["feet-family"]))
    assert line == (
        "a.toml:2 feet-family: [feet-family] is read by the family feet-family, which speclint.toml leaves out; "
        'read a table; write the table under [notes], or speclint.toml without "feet-family" in leave_out'
    )


def test_a_table_that_families_add_to_several_kinds_names_each() -> None:
    kinds = Catalogue(
        {"stands": [Stand, Rest], "tubes": [Tube]}, {"a-b": [ExtraTable(Rest, Foot), ExtraTable(Tube, Foot)]}
    )
    (line,) = of_family("[a-b]\nx = 1", kinds)
    assert "the family a-b reads a table [a-b] of a rest or a tube, not of a stand" in line


def test_a_kind_of_a_family_that_is_left_out_is_told_with_it() -> None:
    content = b'kind = "tube"\n'
    (draft,) = read_drafts(Path("a.toml"), "a.toml", CATALOGUE.without(["tubes"]), content)
    assert "this kind of component is not known while speclint.toml leaves out the family tubes; " in str(
        draft.complaints[0]
    )
