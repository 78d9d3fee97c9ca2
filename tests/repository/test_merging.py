"""One spec taken over from another key by key: what it then states, what differs, what is mirrored, and from where."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Annotated, Any, ClassVar, Literal

import pytest

from speclint.repository.reading import Draft, read_drafts, validated
from speclint.repository.taking_over import named_by, taken_over
from speclint.specs import (
    NOT_STATED,
    OWN_PLACE,
    TAKEN_WHOLE,
    Angle,
    Component,
    Length,
    Mirrors,
    Position,
    Spec,
    SpecTable,
    TakenOver,
    Word,
    bare,
)


class Rim(SpecTable):
    """A table in which nothing tells a place."""

    width: Length = NOT_STATED
    depth: Length = NOT_STATED


class Pad(SpecTable):
    """A pad, which touches something."""

    at: Annotated[Position, Mirrors("negate")] = NOT_STATED
    width: Length = NOT_STATED
    depth: Length = NOT_STATED
    touches: Annotated[Word[str], OWN_PLACE] = NOT_STATED


class Lever(Component):
    """A lever with a key of every sort."""

    kind: ClassVar[str] = "lever"
    called: ClassVar[str] = "lever"

    aside: Annotated[Position, Mirrors("negate")] = NOT_STATED
    turned: Annotated[Angle, Mirrors("round the axis")] = NOT_STATED
    side: Annotated[Word[Literal["left", "right", "middle"]], Mirrors("swap")] = NOT_STATED
    offsets: Annotated[tuple[Position, ...], Mirrors("negate")] = ()
    length: Length = NOT_STATED
    holes: Word[int] = NOT_STATED
    held_in: Annotated[Word[str], OWN_PLACE] = NOT_STATED
    foot: Pad = Pad.unstated()
    rim: Rim = Rim.unstated()
    pads: dict[str, Pad] = {}
    states: Annotated[dict[str, Rim], TAKEN_WHOLE] = {}
    widths: dict[str, Length] = {}


class Rod(Component):
    """Another kind."""

    kind: ClassVar[str] = "rod"
    called: ClassVar[str] = "rod"


KINDS: dict[str, type[Spec]] = {"lever": Lever, "rod": Rod}


def drafted(files: Mapping[str, str]) -> dict[str, Draft]:
    """The specs of some files, each with what it takes over."""
    read = (
        one
        for name, text in files.items()
        for one in read_drafts(Path(f"{name}.toml"), f"{name}.toml", KINDS, text.encode())
    )
    found = taken_over({one.id: one for one in read})
    return {name: one for name, one in found.items() if isinstance(one, Draft)}


def merged(other: str, own: str, how: str = "like") -> tuple[dict[str, Any], TakenOver]:
    """What a lever states that takes over from another, without what names it; and what is known of that."""
    files = {"a": f'kind = "lever"\n{other}', "b": f'kind = "lever"\n{how} = "a"\n{own}'}
    one = drafted(files)["b"]
    assert one.complaints == ()
    assert one.taken is not None
    stated = bare(one.table)
    assert (stated.pop("id"), stated.pop(how)) == ("b", "a")
    return stated, one.taken


@pytest.mark.parametrize(
    ("written", "then", "turned"),
    [
        ('aside = "20 mm"', {"aside": {"value": "-20 mm", "note": "mirrored from 20 mm"}}, {"aside"}),
        ('turned = "30 °"', {"turned": {"value": "330 °", "note": "mirrored from 30 °"}}, {"turned"}),
        (
            'aside = { value = "20 mm", from = "measured", note = "twice" }',
            {"aside": {"value": "-20 mm", "from": "measured", "note": "twice; mirrored from 20 mm"}},
            {"aside"},
        ),
        ('side = "left"', {"side": "right"}, {"side"}),
        ('side = "right"', {"side": "left"}, {"side"}),
        ('side = "middle"', {"side": "middle"}, {"side"}),
        (
            'offsets = ["1 mm", "-2 mm"]',
            {
                "offsets": [
                    {"value": "-1 mm", "note": "mirrored from 1 mm"},
                    {"value": "2 mm", "note": "mirrored from -2 mm"},
                ]
            },
            {"offsets[0]", "offsets[1]"},
        ),
        (
            'foot.at = "5 mm"\nfoot.width = "6 mm"',
            {"foot": {"at": {"value": "-5 mm", "note": "mirrored from 5 mm"}, "width": "6 mm"}},
            {"foot.at"},
        ),
        (
            'pads.one.at = "5 mm"',
            {"pads": {"one": {"at": {"value": "-5 mm", "note": "mirrored from 5 mm"}}}},
            {"pads.one.at"},
        ),
        ('length = "9 mm"\nnotes.side = "left"', {"length": "9 mm", "notes": {"side": "left"}}, set()),
        ("aside = 3", {"aside": 3}, set()),
        ('aside = { note = "x" }', {"aside": {"note": "x"}}, set()),
        ("side = 3", {"side": 3}, set()),
    ],
)
def test_what_is_mirrored_and_what_stays(written: str, then: dict[str, Any], turned: set[str]) -> None:
    """A value that cannot be read stays as it is, and is told where it stands."""
    stated, taken = merged(f"{written}\n", "", "mirror_of")
    assert stated == then
    assert (taken.mirrored, taken.turned) == (True, turned)
    assert (taken.differs, taken.said_twice) == ((), ())
    as_it_is, like = merged(f"{written}\n", "")
    assert as_it_is == tomllib.loads(written)
    assert (like.mirrored, like.turned) == (False, frozenset())


def differences(taken: TakenOver) -> list[tuple[str, str, str]]:
    return [(one.where.key, one.here, one.there) for one in taken.differs]


@pytest.mark.parametrize(
    ("other", "own", "differs", "twice"),
    [
        ('length = "9 mm"', 'length = "8 mm"', [("length", '"8 mm"', '"9 mm"')], []),
        ('length = "9 mm"', 'length = "9  mm"', [], ["length"]),
        ('length = "9 mm"', 'length = { value = "9 mm", from = "drawing", note = "x" }', [], ["length"]),
        (
            'length = "9 mm"',
            'length = { value = "9 mm", from = "measured" }',
            [("length", '"9 mm"', '"9 mm"')],
            [],
        ),
        ("holes = 3", "holes = 4", [("holes", "4", "3")], []),
        ("holes = 3", "holes = 3", [], ["holes"]),
        ("", 'length = "8 mm"', [("length", '"8 mm"', "not stated")], []),
        ('offsets = ["1 mm", "2 mm"]', 'offsets = ["1 mm"]', [("offsets", "1 mm", "1 mm, 2 mm")], []),
        ('foot.width = "1 mm"', 'foot.width = "2 mm"', [("foot.width", '"2 mm"', '"1 mm"')], []),
        ('foot.width = "1 mm"', 'foot.depth = "2 mm"', [("foot.depth", '"2 mm"', "not stated")], []),
        ("", 'foot.depth = "2 mm"\nfoot.touches = "x"', [("foot.depth", '"2 mm"', "not stated")], []),
        ('pads.a.width = "1 mm"', 'pads.a.width = "2 mm"', [("pads.a.width", '"2 mm"', '"1 mm"')], []),
        ('pads.a.width = "1 mm"', 'pads.b.width = "2 mm"', [("pads.b", "width, 2 mm", "not stated")], []),
        ("", 'pads.b.width = "2 mm"', [("pads", "b, width, 2 mm", "not stated")], []),
        (
            'widths.x = "1 mm"',
            'widths.x = "2 mm"\nwidths.y = "3 mm"',
            [("widths.x", '"2 mm"', '"1 mm"'), ("widths.y", '"3 mm"', "not stated")],
            [],
        ),
        (
            'states.x.width = "1 mm"',
            'states.x.width = "2 mm"',
            [("states.x", "width, 2 mm", "width, 1 mm")],
            [],
        ),
        ('states.x.width = "1 mm"', 'states.x.width = "1 mm"', [], ["states.x"]),
        ('widths.x = "1 mm"', 'widths.x = "1 mm"', [], ["widths.x"]),
        (
            "",
            'held_in = "x"\ntitle = "T"\nprepared_by = "N. N."\nnotes.a = 1',
            [("title", '"T"', "not stated")],
            [],
        ),
        ('prepared_by = "A. B."', 'prepared_by = "N. N."', [], []),
        ('held_in = "x"', 'held_in = "y"', [], []),
    ],
)
def test_what_differs_and_what_is_said_twice(
    other: str, own: str, differs: list[tuple[str, str, str]], twice: list[str]
) -> None:
    _, taken = merged(f"{other}\n", f"{own}\n")
    assert differences(taken) == differs
    assert [where.key for where in taken.said_twice] == twice


@pytest.mark.parametrize(
    ("other", "own", "stated", "places"),
    [
        ('held_in = "x"', "", {}, ["held_in"]),
        ('held_in = "x"', 'held_in = "y"', {"held_in": "y"}, []),
        ('foot.touches = "x"\nfoot.width = "1 mm"', "", {"foot": {"width": "1 mm"}}, ["foot.touches"]),
        (
            'pads.a.touches = "x"\npads.a.width = "1 mm"\npads.b.width = "2 mm"',
            'pads.a.touches = "y"\npads.c.width = "3 mm"',
            {
                "pads": {
                    "a": {"touches": "y", "width": "1 mm"},
                    "b": {"width": "2 mm"},
                    "c": {"width": "3 mm"},
                }
            },
            [],
        ),
        (
            'states.x = { width = "1 mm", depth = "1 mm" }\nstates.y.width = "2 mm"',
            'states.x.width = "9 mm"\nstates.z.width = "3 mm"',
            {"states": {"x": {"width": "9 mm"}, "y": {"width": "2 mm"}, "z": {"width": "3 mm"}}},
            [],
        ),
        (
            'widths.x = "1 mm"\nwidths.y = "2 mm"',
            'widths.x = "9 mm"\nwidths.z = "3 mm"',
            {"widths": {"x": "9 mm", "y": "2 mm", "z": "3 mm"}},
            [],
        ),
        ('foot.width = "1 mm"', "foot = 3", {"foot": 3}, []),
        ('pads.a.width = "1 mm"', "pads.a = 3", {"pads": {"a": 3}}, []),
        (
            'length = { value = "1 mm", note = "x" }',
            'length = { value = "2 mm" }',
            {"length": {"value": "2 mm"}},
            [],
        ),
    ],
)
def test_what_is_stated_after_it_is_taken_over(
    other: str, own: str, stated: dict[str, Any], places: list[str]
) -> None:
    found, taken = merged(f"{other}\n", f"{own}\n")
    assert found == stated
    assert [where.key for where in taken.places] == places


SIGNED = (
    'prepared_by = "A. B."\nchecked_by = "C. D."\nlength = "9 mm"\n'
    'states.slow.width = "1 mm"\nwidths.top = "3 mm"\n'
)
BOTH_SIGNED = {"prepared_by": "A. B.", "checked_by": "C. D."}


@pytest.mark.parametrize(
    ("own", "signed"),
    [
        ("", {"prepared_by": "A. B.", "checked_by": "C. D."}),
        ('title = "T"\n', {"prepared_by": "A. B.", "checked_by": "C. D."}),
        ('held_in = "x"\n', {"prepared_by": "A. B.", "checked_by": "C. D."}),
        ('length = "8 mm"\n', {}),
        ('length = "8 mm"\nchecked_by = "E. F."\n', {"checked_by": "E. F."}),
        ('checked_by = "E. F."\n', {"prepared_by": "A. B.", "checked_by": "E. F."}),
        ('length = "8 mm"\ntitle = "T"\n', {}),
        ('states.slow.width = "2 mm"\n', {}),
        ('states.slow.width = "1 mm"\n', BOTH_SIGNED),
        ('states.slow.depth = "1 mm"\n', {}),
        ('states.fast.width = "1 mm"\n', {}),
        ('widths.top = "4 mm"\n', {}),
        ('widths.top = "3 mm"\n', BOTH_SIGNED),
        ('widths.foot = "3 mm"\n', {}),
    ],
)
def test_who_signed_the_other_signed_what_does_not_differ(own: str, signed: dict[str, str]) -> None:
    stated, _ = merged(SIGNED, own)
    assert {key: stated[key] for key in ("prepared_by", "checked_by") if key in stated} == signed


def test_what_neither_states_would_stand_where_it_would_be_taken_from_or_where_the_part_itself_states_it() -> (
    None
):
    other = '[foot]\nwidth = "1 mm"\n[rim]\nwidth = "2 mm"\n[pads.a]\nwidth = "1 mm"\n'
    files = {"a": f'kind = "lever"\n{other}', "b": '\nkind = "lever"\nid = "b"\nlike = "a"\n'}
    spec = validated(drafted(files)["b"], KINDS).spec
    assert isinstance(spec, Lever)
    places = {
        "foot.touches": (spec.foot.touches.where, "b.toml", 3),
        "foot.depth": (spec.foot.depth.where, "a.toml", 2),
        "rim.depth": (spec.rim.depth.where, "a.toml", 4),
        "pads.a.touches": (spec.pads["a"].touches.where, "b.toml", 3),
        "length": (spec.length.where, "a.toml", 1),
        "held_in": (spec.held_in.where, "b.toml", 3),
    }
    for key, (where, file, line) in places.items():
        assert (where.key, where.file, where.line) == (key, file, line)
    assert (spec.foot.width.where.file, spec.foot.width.where.part) == ("a.toml", "b")
    assert spec.rim.where.part == "b"
    assert spec.taken_over is not None


def test_the_words_of_its_own_notes_are_kept_beside() -> None:
    _, taken = merged(
        'notes.of = "a"\n', 'notes = { of = "b", list = ["x", 3], empty = "", deep = { y = "z" } }\n'
    )
    assert taken.notes == "of b list x 3 deep y z"
    assert merged('notes.of = "a"\n', "")[1].notes == ""


@pytest.mark.parametrize(
    ("files", "lines"),
    [
        (
            {"a": 'like = "b"', "b": 'like = "a"', "c": 'like = "a"'},
            {
                "a": 'a.toml:2 like: links run in a loop: a (a.toml) → b (b.toml) → a (a.toml); read "b"; '
                "write a spec that states all",
                "c": "c.toml:2 like: links run in a loop: c (c.toml) → a (a.toml) → b (b.toml) → a (a.toml); "
                'read "a"; write a spec that states all',
            },
        ),
        (
            {"a": 'mirror_of = "a"'},
            {
                "a": 'a.toml:2 mirror_of: links run in a loop: a (a.toml) → a (a.toml); read "a"; '
                "write a spec that states all"
            },
        ),
        (
            {"a": 'like = "x"', "b": 'like = "a"'},
            {
                "a": 'a.toml:2 like: no spec has this id; read "x"; '
                "write the id of another lever; there is none yet",
                "b": "b.toml:2 like: a (a.toml) itself takes over from x, and only a spec that states all "
                "can be named; "
                'read "a"; write the id of a spec that states all',
            },
        ),
        (
            {"a": 'like = "x"', "b": "", "c": ""},
            {"a": 'a.toml:2 like: no spec has this id; read "x"; write one of "b", "c"'},
        ),
        (
            {"a": 'like = "b"\nmirror_of = "b"', "b": ""},
            {
                "a": 'a.toml:2 like: a spec is like another or the mirror of one, not both; read "b"; '
                "write one of like and mirror_of"
            },
        ),
        ({"a": 'like = ""', "b": ""}, {}),
    ],
)
def test_what_cannot_be_taken_over(files: dict[str, str], lines: dict[str, str]) -> None:
    """Of a loop one spec tells, and each that leads into it."""
    found = drafted({name: f'kind = "lever"\n{text}\n' for name, text in files.items()})
    told = {name: str(one.complaints[0]) for name, one in found.items() if one.complaints}
    assert told.keys() == lines.keys()
    for name, line in lines.items():
        assert told[name].startswith(line)
        assert len(found[name].complaints) == 1


def test_whom_a_draft_names() -> None:
    texts = {"a": "", "b": 'like = "a"', "c": 'mirror_of = "a"', "d": "like = 3", "e": 'like = ""'}
    found = drafted({name: f'kind = "lever"\n{text}\n' for name, text in texts.items()})
    assert {name: named_by(one) for name, one in found.items()} == {
        "a": "",
        "b": "a",
        "c": "a",
        "d": "",
        "e": "",
    }
