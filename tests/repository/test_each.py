"""A file of several parts read by itself: each fault of its lists, and what each part states."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest

from speclint.repository.reading import Draft, Read, read_drafts
from speclint.specs import Spec, bare
from tests.tubes import Rack, Tube

KINDS: dict[str, type[Spec]] = {"tube": Tube, "rack": Rack}
HEAD = 'kind = "tube"\nid = "t-{side}-{end}"\n'
LISTS = '[each]\nside = ["left", "right"]\nend = ["front", "back"]\n'


def drafts(text: str, stem: str = "t") -> tuple[Read, ...]:
    return read_drafts(Path(f"{stem}.toml"), f"{stem}.toml", KINDS, text.encode())


def said(found: Sequence[Read]) -> list[str]:
    return list(dict.fromkeys(str(complaint) for one in found for complaint in one.complaints))


def stated(text: str) -> dict[str, Any]:
    """What each part states, by its id, where nothing is wrong."""
    found = drafts(text)
    assert said(found) == []
    return {one.id: bare(one.table) for one in found if isinstance(one, Draft)}


def test_each_part_has_its_names_in_keys_and_texts_and_knows_whose_they_are() -> None:
    found = drafts(HEAD + 'title = "{side}, {end}"\n[notes]\n"{side}" = [1, "{end} {other-}"]\n' + LISTS)
    assert [one.id for one in found] == ["t-left-front", "t-left-back", "t-right-front", "t-right-back"]
    last = found[-1]
    assert isinstance(last, Draft)
    table: Any = last.table
    assert bare(table) == {
        "id": "t-right-back",
        "title": "right, back",
        "notes": {"right": [1, "back {other-}"]},
        "each": ["left front", "left back", "right front", "right back"],
    }
    where = table["notes"]["right"][1].where
    assert (where.line, where.key, where.part) == (5, "notes.right[1]", "t-right-back")


@pytest.mark.parametrize(
    ("text", "line"),
    [
        (
            'kind = "tube"\nid = "t"\neach = ["a", "b"]\n',
            't.toml:2 id: the file states several parts, and an id without {each} would be that of all; read "t"; '
            'write id = "t-{each}"',
        ),
        (
            'kind = "tube"\neach = ["a", "b"]\n',
            't.toml:1 id: the file states several parts, and an id without {each} would be that of all; read "t"; '
            'write id = "t-{each}"',
        ),
        (
            'kind = "tube"\nid = "t"\neach = ["a"]\n',
            't.toml:2 id: the file states several parts, and an id without {each} would be that of all; read "t"; '
            'write id = "t-{each}"',
        ),
        (
            'kind = "tube"\nid = "t-{x}"\n[each]\nx = ["a", "b"]\ny = ["a", "b"]\nz = ["a", "b"]\n',
            "t.toml:2 id: the file states several parts, and an id without {y} and {z} would be that of all; "
            'read "t-{x}"; write id = "t-{x}-{y}-{z}"',
        ),
        (
            'kind = "tube"\neach = 3\n',
            "t.toml:2 each: each lists the names of the parts that this file states, at least one; read 3; "
            'write each = ["left", "right"]',
        ),
        (
            'kind = "tube"\nid = "t-{each}"\neach = ["a", ["b"]]\n',
            't.toml:3 each[1]: a name in each is a text; read an array; write each = ["left", "right"]',
        ),
        (
            'kind = "tube"\nid = "t-{each}"\neach = ["a", "{b}"]\n',
            't.toml:3 each[1]: a name in each is a text; read "{b}"; write each = ["left", "right"]',
        ),
        (
            'kind = "tube"\nid = "t-{each}"\neach = ["a", "a"]\n',
            't.toml:3 each[1]: each lists this name twice; read "a"; write each name once',
        ),
        (
            'kind = "tube"\n[each]\n',
            "t.toml:2 each: each lists the names of the parts that this file states, at least one; "
            'write cylinder = ["left", "right"]',
        ),
        (
            'kind = "tube"\nid = "t-{x}"\n[each]\nx = ["a", "b"]\n"y z" = ["c"]\n',
            "t.toml:5 each.y z: the name of a list is one word, as it stands in braces in the texts; "
            'read "y z"; write a word such as "cylinder"',
        ),
        (
            'kind = "tube"\nid = "t-{x}"\n[each]\nx = ["a", "b"]\ny = "c"\n',
            "t.toml:5 each.y: each lists the names of the parts that this file states, at least one; "
            'read "c"; write each = ["left", "right"]',
        ),
    ],
)
def test_lists_that_make_no_parts_are_told_and_one_part_is_left(text: str, line: str) -> None:
    found = drafts(text)
    assert said(found) == [line]


@pytest.mark.parametrize(
    "text",
    [
        'kind = "tube"\nid = "t-{each}"\neach = ["a"]\n',
        'kind = "tube"\nid = "t-{x}"\n[each]\nx = ["a", "b"]\ny = ["one"]\n',
        HEAD + LISTS,
    ],
)
def test_a_list_of_one_name_tells_no_parts_apart_and_may_be_left_out_of_the_id(text: str) -> None:
    assert said(drafts(text)) == []


def test_an_id_that_is_no_text_is_told_beside_the_list() -> None:
    """Both parts then have the name of the file."""
    found = drafts('kind = "tube"\nid = 3\neach = ["a", "b"]\n')
    assert [one.id for one in found] == ["t", "t"]
    assert said(found) == ['t.toml:2 id: an id is a word in quotes; read 3; write id = "t"']


@pytest.mark.parametrize(
    ("text", "line"),
    [
        (
            'kind = "tube"\ntitle = "{each}"\n',
            "t.toml:2 title: {each} stands for nothing here, as the file lists no names under each; "
            'read "{each}"; write each = ["left", "right"], or the name itself',
        ),
        (
            'kind = "tube"\nnotes.of = ["{sid}", 3]\nid = "{side}"\n[each]\nside = ["a", "b"]\n',
            "t.toml:2 notes.of[0]: {sid} stands for nothing here, as the file lists no names under each.sid; "
            'read "{sid}"; write "{side}", or the name itself',
        ),
    ],
)
def test_a_mark_that_stands_for_nothing_is_told_with_what_it_may_be(text: str, line: str) -> None:
    assert said(drafts(text)) == [line]


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("for = 3\n", "t.toml:2 for"),
        ("[for]\n", "t.toml:2 for"),
        ('[for.left]\ntitle = "x"\n', "t.toml:2 for"),
    ],
)
def test_what_differs_without_a_list_of_names_is_told(text: str, place: str) -> None:
    assert said(drafts('kind = "tube"\n' + text)) == [
        f"{place}: what differs between the parts of a file stands here, and this file lists no names under each; "
        'write each = ["left", "right"], or the values themselves'
    ]


@pytest.mark.parametrize(
    "notes",
    ['notes = { "a-{each}" = 1, a-left = 2 }', 'notes.of = [{ "a-{each}" = 1, a-left = 2 }]'],
)
def test_two_keys_that_become_one_are_told_once_with_what_they_become(notes: str) -> None:
    found = drafts(f'kind = "tube"\nid = "t-{{each}}"\neach = ["left", "right"]\n{notes}\n')
    (line,) = said(found)
    assert line.startswith("t.toml:4 notes.")
    assert line.endswith('this key becomes "a-left", which the table has too; write one of them')


def test_keys_without_a_mark_and_those_that_stay_apart_are_no_fault() -> None:
    text = (
        'kind = "tube"\nid = "t-{each}"\neach = ["left", "right"]\nnotes = { "a-{each}" = 1, a-front = 2 }\n'
    )
    assert said(drafts(text)) == []


OF_ALL = HEAD + 'bore = { value = "8 mm", from = "measured" }\nnotes.of = "all"\nnotes.in.a = 1\n' + LISTS


@pytest.mark.parametrize(
    ("differing", "line"),
    [
        (
            "[[for]]\n",
            "t.toml:9 for: for holds a table for each name whose parts differ; read an array; write [for.left]",
        ),
        (
            "[for]\nleft = 3\n",
            "t.toml:10 for.left: what differs for a name is a table of keys; read 3; "
            "write [for.left] and the keys below it",
        ),
        (
            "[for.front]\nlike = 'x'\n",
            "t.toml:10 for.front.like: like is stated once for all parts of the file; write it at the head of the file",
        ),
        (
            "[for.lefft]\ntitle = 'x'\n",
            't.toml:9 for.lefft: no list under each has this name; read "lefft"; write "left"',
        ),
        (
            "[for.'front, back']\ntitle = 'x'\n",
            't.toml:9 for.front, back: no part is both front and back; read "front, back"; '
            "write [for.front] and [for.back]",
        ),
        (
            "[for.left]\ntitle = 'x'\n[for.back]\ntitle = 'y'\n",
            "t.toml:12 title: for.left states this key too, and for the part of both neither goes before the other; "
            'write [for."back, left"] with what holds there',
        ),
        (
            "[for.left]\nbore = { value = '9 mm' }\n[for.back]\nbore.value = '7 mm'\n",
            "t.toml:12 bore: for.left states this key too, and for the part of both neither goes before the other; "
            'write [for."back, left"] with what holds there',
        ),
    ],
)
def test_differences_that_cannot_be_read_are_told_with_what_to_write(differing: str, line: str) -> None:
    assert said(drafts(OF_ALL + differing)) == [line]


def test_a_value_is_put_in_whole_and_a_table_key_by_key() -> None:
    """A value that is a table of its own, with where it comes from, goes in the place of the one of all."""
    differing = '[for.left]\nbore = { value = "9 mm", note = "as drawn" }\nnotes.in.b = 2\ntitle = "x"\n'
    found = stated(OF_ALL + differing)
    left, right = found["t-left-back"], found["t-right-back"]
    assert left["bore"] == {"value": "9 mm", "note": "as drawn"}
    assert left["notes"] == {"of": "all", "in": {"a": 1, "b": 2}}
    assert left["title"] == "x"
    assert right["bore"] == {"value": "8 mm", "from": "measured"}
    assert right["notes"] == {"of": "all", "in": {"a": 1}}
    assert "title" not in right


def test_two_differences_that_state_other_keys_of_one_table_go_together() -> None:
    found = stated(OF_ALL + "[for.left]\nnotes.x = 1\n[for.back]\nnotes.y = 2\n")
    assert found["t-left-back"]["notes"] == {"of": "all", "in": {"a": 1}, "x": 1, "y": 2}
    assert found["t-left-front"]["notes"] == {"of": "all", "in": {"a": 1}, "x": 1}


def test_of_three_that_state_a_key_the_one_that_names_most_holds() -> None:
    three = '[for."left, back"]\ntitle = "both"\n[for.left]\ntitle = "left"\n[for.back]\ntitle = "back"\n'
    found = stated(OF_ALL + three.replace("[for.back]\n", '[for."end back, side right"]\n'))
    assert {name: one.get("title") for name, one in found.items()} == {
        "t-left-front": "left",
        "t-left-back": "both",
        "t-right-front": None,
        "t-right-back": "back",
    }


def test_what_differs_in_a_list_knows_its_place_in_the_file_and_its_key_in_the_spec() -> None:
    found = drafts(OF_ALL + '[for.left]\nissued = [{ to = "shop", n = [1, 2] }]\n')
    left = found[0]
    assert isinstance(left, Draft)
    table: Any = left.table
    issued = table["issued"]
    assert (issued.where.line, issued.where.key) == (10, "issued")
    assert (issued[0]["to"].where.line, issued[0]["to"].where.key) == (10, "issued[0].to")
    assert issued[0]["n"][1].where.key == "issued[0].n[1]"
    assert issued[0]["n"][1].raw == 2
