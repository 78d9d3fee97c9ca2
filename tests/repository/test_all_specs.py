"""Every spec of a repository read: which of two with one id counts, broken links, loops, and what a content says."""

from __future__ import annotations

from collections.abc import Mapping
from graphlib import TopologicalSorter
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from speclint.errors import Location
from speclint.repository.all_specs import ReadSpecs, all_read, broken_links, loops
from speclint.repository.index import Indexed
from speclint.specs import Duty, Link, Spec
from tests.tubes import FILES, RACK, TUBE, Rack, Tube

KINDS: dict[str, type[Spec]] = {"tube": Tube, "rack": Rack, "duty": Duty}


def read(folder: Path, files: Mapping[str, str], content: Mapping[str, bytes] | None = None) -> ReadSpecs:
    for name, text in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    return all_read(folder, sorted(files), KINDS, content)


def said(found: ReadSpecs) -> list[str]:
    return [str(one) for one in found.complaints]


def test_a_sound_repository_is_read_whole(tmp_path: Path) -> None:
    found = read(tmp_path, FILES)
    assert (said(found), set(found.specs), found.missing) == ([], {"tube", "rack", "duty"}, ())
    assert (found.alike, found.cut, set(found.against)) == ({}, frozenset(), {"tube", "rack", "duty"})


def test_a_content_that_was_read_before_is_not_read_again(tmp_path: Path) -> None:
    other = {"rack.toml": RACK.replace("106 mm", "200 mm").encode()}
    found = read(tmp_path, FILES, other).specs["rack"]
    assert isinstance(found, Rack)
    assert getattr(found.hole, "nominal", None) == 0.2


def test_of_two_with_one_id_the_second_is_missing_and_all_of_it_is_told(tmp_path: Path) -> None:
    """The id stands on the second line of the second file, and what else is wrong on the third."""
    second = 'kind = "tube"\nid = "tube"\nbore = "5 kg"\n'
    found = read(tmp_path, {**FILES, "z.toml": second})
    (twice, bore) = said(found)
    assert twice == 'z.toml:2 id: tube.toml has the same id; read "tube"; write an id of its own'
    assert bore.startswith("z.toml:3 bore: ")
    assert found.missing == ("z.toml",)
    assert found.files["tube"] == "tube.toml"


def test_of_a_second_that_is_no_spec_no_line_is_named(tmp_path: Path) -> None:
    found = read(tmp_path, {**FILES, "z/tube.toml": 'kind = "tubes"\n'})
    assert [line for line in said(found) if "same id" in line] == [
        'z/tube.toml id: tube.toml has the same id; read "tube"; write an id of its own'
    ]


def test_two_names_of_one_list_may_make_one_id(tmp_path: Path) -> None:
    """``a`` and ``bc`` make the same word as ``ab`` and ``c``."""
    text = 'kind = "rack"\nid = "{x}{y}"\n[each]\nx = ["a", "ab"]\ny = ["bc", "c"]\n'
    found = read(tmp_path, {"racks.toml": text})
    assert set(found.specs) == {"abc", "ac", "abbc"}
    assert said(found) == [
        'racks.toml:2 id: another name in each has the same id; read "abc"; write an id of its own'
    ]


def test_one_complaint_about_what_several_take_over_is_said_once_and_all_in_their_order(
    tmp_path: Path,
) -> None:
    """What cannot be read for the bore that it takes over links to nothing that could be told."""
    like = 'kind = "tube"\nlike = "tube"\nheld_in = "rak"\n'
    tube = TUBE.replace('"100 mm ±0.5"', '"5 kg"').replace('"open"', '"shut"')
    other = 'kind = "tube"\nheld_in = "rak"\n'
    found = read(tmp_path, {**FILES, "tube.toml": tube, "b.toml": like, "c.toml": like, "a.toml": other})
    assert [line.split(": ")[0] for line in said(found)] == [
        "a.toml:2 held_in",
        "tube.toml:4 bore",
        "tube.toml:9 ends",
    ]
    assert set(found.missing) == {"b.toml", "c.toml", "tube.toml"}


def test_what_is_like_one_that_is_not_there_is_like_none(tmp_path: Path) -> None:
    found = read(
        tmp_path,
        {**FILES, "b.toml": 'kind = "tube"\nlike = "tub"\n', "c.toml": 'kind = "tube"\nlike = "tube"\n'},
    )
    assert found.alike == {"c": "tube"}
    assert found.missing == ("b.toml",)


def entry(name: str, *links: tuple[str, int], kind: str = "rod", of: tuple[str, ...] = ("rod",)) -> Indexed:
    """What the index says of a spec with links to some ids, each on a line."""
    stated: tuple[Link[Any], ...] = tuple(
        Link(other, of, Location(f"{name}.toml", line, "to")) for other, line in links
    )
    return Indexed(name, (kind, "component"), (), True, stated)


def of_entries(*entries: Indexed) -> tuple[dict[str, Indexed], dict[str, str]]:
    return {one.id: one for one in entries}, {one.id: f"{one.id}.toml" for one in entries}


@pytest.mark.parametrize(
    ("links", "of", "line"),
    [
        ([("b", 3)], ("rod",), None),
        ([("b", 3)], ("component",), None),
        ([("c", 3)], ("rod",), 'a.toml:3 to: no spec has this id; read "c"; write one of "a", "b"'),
        (
            [("c", 3)],
            ("pin", "shaft"),
            'a.toml:3 to: no spec has this id; read "c"; write the id of a pin or shaft; there is none yet',
        ),
        (
            [("b", 4)],
            ("pin", "shaft"),
            'a.toml:4 to: this leads to a rod (b.toml); read "b"; write the id of a pin or shaft',
        ),
        ([("unread", 3)], ("pin",), None),
    ],
)
def test_a_link_leads_to_a_spec_of_a_right_kind(
    links: list[tuple[str, int]], of: tuple[str, ...], line: str | None
) -> None:
    specs, files = of_entries(entry("a", *links, of=of), entry("b"))
    files["unread"] = "unread.toml"
    found = [str(one) for one in broken_links(specs, files)]
    assert found == ([] if line is None else [line])
    assert [str(one) for one in broken_links(specs, files, ["a"])] == found
    assert list(broken_links(specs, files, ["b"])) == []


@pytest.mark.parametrize(
    "entries",
    [
        [entry("a", ("a", 1))],
        [entry("a", ("b", 1)), entry("b", ("a", 1))],
        [entry("a", ("b", 1), ("b", 2)), entry("b", ("a", 1))],
        [entry("a", ("b", 1)), entry("b", ("c", 1), ("none", 2)), entry("c", ("d", 1), ("a", 2)), entry("d")],
        [entry("a", ("b", 1)), entry("b", ("a", 1)), entry("c", ("d", 1), ("a", 2)), entry("d", ("c", 1))],
    ],
    ids=["itself", "two", "two links", "three", "two loops"],
)
def test_every_loop_is_told_with_its_way_and_cut_where_it_closes(entries: list[Indexed]) -> None:
    specs, files = of_entries(*entries)
    complaints, cut = loops(specs, files)
    assert {one.where for one in complaints} == cut
    assert len(complaints) == len(cut)
    for one in complaints:
        assert one.message.startswith("links run in a loop: ")
        way = [
            step.partition(" ")[0] for step in one.message.removeprefix("links run in a loop: ").split(" → ")
        ]
        assert way[0] == way[-1] == one.read.strip('"')
        assert one.where.file == f"{way[-2]}.toml"
        assert all(any(link.id == then for link in specs[here].stated) for here, then in pairwise(way))
        assert all(f"{name} ({name}.toml)" in one.message for name in way)
    left = {name: {link.id for link in spec.stated if link.where not in cut} for name, spec in specs.items()}
    TopologicalSorter(left).prepare()  # or a loop is left


def test_where_there_is_no_loop_nothing_is_cut() -> None:
    specs, files = of_entries(entry("a", ("b", 1), ("c", 2)), entry("b", ("c", 1)), entry("c"))
    assert loops(specs, files) == ([], frozenset())


def test_two_loops_are_told_one_by_one() -> None:
    specs, files = of_entries(
        entry("a", ("b", 1)), entry("b", ("a", 1)), entry("c", ("d", 1)), entry("d", ("c", 1))
    )
    assert len(loops(specs, files)[0]) == 2
