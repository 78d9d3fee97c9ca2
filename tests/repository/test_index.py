"""What the index tells of a design without reading its specs, and how it is kept between runs."""

from __future__ import annotations

import datetime as dt
import os
from dataclasses import dataclass, field
from enum import Enum, StrEnum
from pathlib import Path, PurePosixPath
from types import MappingProxyType
from typing import Any

import pytest

from speclint.errors import Location
from speclint.repository import Design, Settings, load_settings
from speclint.repository.digests import State, digest, digest_of_spec, state_of
from speclint.repository.index import Index, indexed, linked_at
from speclint.repository.kept_index import Remembered, Row, Seals, digest_of
from speclint.repository.neighbours import HeldAgainst
from speclint.repository.root_folder import roots_below
from speclint.repository.spec_files import PassedOver, passed_over, sorted_out
from speclint.specs import Link
from speclint.testing import DesignFolder
from tests.tubes import DUTY, FILES, TUBE, tubes


def design(folder: Path, files: dict[str, str]) -> Design:
    found = DesignFolder(folder, tubes()).write(files).assess().design
    assert found is not None
    return found


MORE = {
    **FILES,
    "second.toml": TUBE + 'drawing = "T 12"\ndrawing_file = "second.svg"\n',
    "third.toml": TUBE + 'drawing = "t12"\n',
    "more.toml": DUTY.replace('id = "duty"', 'id = "more"'),
}


def test_what_is_kept_of_a_spec(tmp_path: Path) -> None:
    found = design(tmp_path, MORE)
    entry = indexed(found.specs["second"])
    assert (entry.id, entry.kind, entry.is_component, entry.of_several) == ("second", "tube", True, False)
    assert (entry.drawing, entry.drawing_file) == ("T 12", "second.svg")
    assert linked_at(entry) == [("duty", "duty"), ("rack", "held_in")]
    assert entry.is_one_of(["rack", "tube"])
    assert entry.is_one_of(["component"])
    assert not entry.is_one_of(["rack"])
    assert "tests.tubes:Tube" in entry.classes
    duty = indexed(found.specs["duty"])
    assert (duty.is_component, duty.drawing, duty.drawing_file) == (False, None, None)
    assert linked_at(None) is None


def test_parts_of_one_file_are_known_as_such(tmp_path: Path) -> None:
    each = TUBE.replace('kind = "tube"', 'kind = "tube"\nid = "pair-{each}"\neach = ["a", "b"]')
    found = design(tmp_path, {**FILES, "pair.toml": each})
    assert indexed(found.specs["pair-a"]).of_several
    one = TUBE.replace('kind = "tube"', 'kind = "tube"\nid = "one-{each}"\neach = ["a"]')
    (tmp_path / "b").mkdir()
    assert not indexed(design(tmp_path / "b", {**FILES, "one.toml": one}).specs["one-a"]).of_several


def test_who_links_to_a_spec_and_what_nothing_links_to(tmp_path: Path) -> None:
    index = design(tmp_path, MORE).index
    assert index.linking_to("rack") == ("second", "third", "tube")
    assert index.linking_to("tube") == ()
    assert index.left_over() == ("more",)
    assert index.of_drawing("T12") == index.of_drawing(" t 1 2") == ("second", "third")
    assert index.of_drawing("T13") == ()


def test_parts_as_made_are_found_by_the_numbers_of_their_certificates(tmp_path: Path) -> None:
    """A number is none of a heat; small letters and spaces tell no two apart."""
    made = 'kind = "made-part"\n[certificate]\n'
    found = design(
        tmp_path,
        {
            **FILES,
            "first.toml": f'{made}number = "C-12"\nheat = "H-7"\n',
            "second.toml": f'{made}number = "c - 12"\n',
            "third.toml": f'{made}heat = "C-12"\n',
        },
    )
    assert indexed(found.specs["first"]).certified == ("number C-12", "heat H-7")
    assert indexed(found.specs["tube"]).certified == ()
    assert found.index.certified("number", "C-12") == ("first", "second")
    assert found.index.certified("heat", "h-7") == ("first",)
    assert found.index.certified("heat", "c-12") == ("third",)
    assert found.index.certified("number", "H-7") == ()
    assert found.certified("number", "C-12") == (found.specs["first"], found.specs["second"])


def test_components_are_called_by_id_number_and_title(tmp_path: Path) -> None:
    """A title that is taken over is that of the other; a duty is no component."""
    like = 'kind = "tube"\nlike = "second"\nheld_in = "rack"\n'
    titled = {"second.toml": MORE["second.toml"] + 'title = "Tube, left"\n', "like.toml": like}
    found = design(tmp_path, {**MORE, **titled})
    assert (indexed(found.specs["second"]).title, indexed(found.specs["like"]).title) == ("Tube, left", None)
    assert found.index.called("LEFT tube") == found.index.called("tube-left") == ("second",)
    assert found.index.called("t-12") == ("like", "second")
    assert found.index.called("third") == ("third",)
    assert found.index.called("duty") == found.index.called("") == ()
    assert found.called("Tube (left)") == (found.specs["second"],)


def link(name: str, kind: str, where: Location) -> Link[Any]:
    return Link(name, (kind,), where)


def test_a_link_leads_where_its_end_can_be_read_and_is_of_a_right_kind(tmp_path: Path) -> None:
    found = design(tmp_path, MORE)
    held = link("rack", "rack", Location("tube.toml", 10, "held_in"))
    assert found.index.leads(held)
    assert not found.index.leads(link("rack", "tube", held.where))
    assert not found.index.leads(link("nobody", "rack", held.where))
    cut = Index(found.specs, frozenset({held.where}))
    assert not cut.leads(held)
    assert cut.leads(link("rack", "rack", Location("tube.toml", 11, "held_in")))


def test_the_nearest_of_some_kinds_whichever_way_the_links_lead(tmp_path: Path) -> None:
    index = design(tmp_path, MORE).index
    assert index.way_to("tube", ["tube"]) == ("tube", frozenset({"tube"}))
    assert index.way_to("tube", ["rack"]) == ("rack", frozenset({"tube", "rack"}))
    assert index.way_to("rack", ["tube"]) == ("second", frozenset({"rack", "second"}))
    name, reached = index.way_to("tube", ["engine"])
    assert (name, reached) == ("", frozenset({"tube", "rack", "second", "third"}))


def test_a_part_of_no_block_is_listed_under_itself(tmp_path: Path) -> None:
    assert design(tmp_path, MORE).index.listed_under("tube") == ("tube", frozenset({"tube", "rack"}))


PARTS = {
    "duty.toml": 'kind = "duty"\n',
    "engine.toml": 'kind = "engine"\n[cranks.one]\nblock = "block"\n',
    "block.toml": 'kind = "cylinder-block"\nduty = "duty"\n',
    "liner.toml": 'kind = "cylinder-liner"\nhoused_in = "block"\n',
    "ring.toml": 'kind = "piston-ring"\nruns_in = "liner"\n',
    "lost.toml": 'kind = "piston-ring"\nruns_in = "nobody"\n',
}


@pytest.mark.parametrize(
    ("part", "under", "seen"),
    [
        ("ring", "block", {"ring", "liner", "block"}),
        ("block", "block", {"block"}),
        ("engine", "engine", {"engine"}),
        ("lost", "lost", {"lost"}),
    ],
)
def test_a_part_is_listed_under_the_nearest_block_or_engine(
    tmp_path: Path, part: str, under: str, seen: set[str]
) -> None:
    """A duty is no part, and a link that leads nowhere leads to none."""
    found = DesignFolder(tmp_path).write(PARTS).assess("duty.toml").design
    assert found is not None
    assert found.index.listed_under(part) == (under, frozenset(seen))
    assert found.index.way_to("lost", ["engine"]) == ("", frozenset({"lost"}))
    assert found.index.way_to("ring", ["engine"]) == (
        "engine",
        frozenset({"ring", "liner", "block", "engine"}),
    )


class Shelf:
    """Keeps what it is given."""

    def __init__(self) -> None:
        self.kept: dict[str, bytes] = {}

    def read(self, name: str) -> bytes | None:
        return self.kept.get(name)

    def write(self, name: str, body: bytes) -> None:
        self.kept[name] = body


def row(found: Design, name: str) -> Row:
    against = HeldAgainst({"rack", "b"}, {"rack"}, {("tube", "rack"), ("duty",)})
    return Row(indexed(found.specs[name]), "other", "d1", against, "seal", state_of(found.specs[name]))


def test_an_index_is_read_as_it_was_kept(tmp_path: Path) -> None:
    found = design(tmp_path, MORE)
    kept = {f"{name}.toml": (f"digest {name}", [row(found, name)]) for name in ("second", "third", "duty")}
    shelf = Shelf()
    one = Remembered(shelf, "code")
    one.write("design", ["fits"], kept)
    assert one.read("design", ["fits"]) == kept
    assert one.read("another", ["fits"]) is None
    assert one.read("design", []) is None
    assert Remembered(shelf, "other code").read("design", ["fits"]) is None
    assert len(shelf.kept) == 1


def test_how_neighbours_stand_is_another_digest_when_any_of_them_changes(tmp_path: Path) -> None:
    found = design(tmp_path, MORE)
    digests = {file: f"digest of {file}" for file in found.files.values()}
    against = HeldAgainst({"tube"}, {"rack"}, {("duty",)})

    def seal(
        changed: dict[str, str] | None = None, alike: dict[str, str] | None = None, of: HeldAgainst = against
    ) -> str:
        return Seals(found.index, found.files, {**digests, **(changed or {})}, alike or {}).of(of)

    plain = seal()
    assert seal() == plain
    assert seal({"tube.toml": "x"}) != plain
    assert seal({"second.toml": "x"}) != plain  # it links to the rack
    assert seal({"rack.toml": "x"}) == plain
    assert seal(alike={"tube": "rack"}) != plain
    assert seal({"rack.toml": "x"}, {"tube": "rack"}) != seal(alike={"tube": "rack"})
    assert seal(of=HeldAgainst({"tube"}, {"rack"}, {("tube",)})) != plain
    assert seal(of=HeldAgainst({"tube"}, set(), {("duty",)})) != plain
    seals = Seals(found.index, found.files, digests, {})
    assert (seals.of_file("tube"), seals.of_file("nobody")) == ("digest of tube.toml", "")
    assert digest_of(b"a") != digest_of(b"b")


@dataclass
class Plain:
    """Data of which one field is only remembered."""

    a: int
    b: str = ""
    seen: int = field(default=0, compare=False)


@dataclass
class Single:
    """Data of one field."""

    a: int


class Word(Enum):
    """Two words."""

    ONE = "one"
    TWO = "two"


class Text(StrEnum):
    """A word that is a text too."""

    ONE = "one"


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (1, 2),
        ("1", 1),
        (None, "None"),
        (True, "True"),
        ((1, 2), (2, 1)),
        ([1], [1, None]),
        ({"a": 1}, {"a": 2}),
        ({"a": 1, "b": 2}, {"b": 2, "a": 1}),
        ({1, 2}, {1, 3}),
        (Plain(1), Plain(2)),
        (Plain(1), Plain(1, "x")),
        (Single(1), Single(2)),
        (Plain(1), Single(1)),
        (Word.ONE, Word.TWO),
        (Word.ONE, "one"),
        (Text.ONE, "one"),
        (dt.date(2026, 1, 1), dt.date(2026, 1, 2)),
        (PurePosixPath("a"), PurePosixPath("b")),
        (1.0, 1.5),
    ],
)
def test_a_digest_tells_what_differs(one: object, other: object) -> None:
    assert digest(one) != digest(other)
    assert digest(one) == digest(one)
    assert digest(one, other) != digest(other, one)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ((1, 2), [1, 2]),
        ({"a": 1}, MappingProxyType({"a": 1})),
        ({1, 2, 3}, frozenset({3, 2, 1})),
        (Plain(1, "x", 5), Plain(1, "x", 6)),
    ],
)
def test_a_digest_is_the_same_of_what_says_the_same(one: object, other: object) -> None:
    assert digest(one) == digest(other)


def test_of_what_may_hold_anything_no_digest_is_made() -> None:
    with pytest.raises(TypeError, match=r"^no digest is made of object$"):
        digest([object()])
    with pytest.raises(TypeError, match=r"^no digest is made of type$"):
        digest(Plain)


def test_the_words_of_a_drawing_have_digests_of_their_own(tmp_path: Path) -> None:
    titled = TUBE + 'title = "A tube"\n'
    (tmp_path / "b").mkdir()
    plain = design(tmp_path / "b", FILES).specs["tube"]
    (tmp_path / "a").mkdir()
    other = design(tmp_path / "a", {**FILES, "tube.toml": titled}).specs["tube"]
    one, another = state_of(plain), state_of(other)
    assert isinstance(one, State)
    assert one.part == another.part
    assert one.words["title"] != another.words["title"]
    assert one.words["checked_by"] == another.words["checked_by"]
    assert digest_of_spec(plain) != digest_of_spec(other)


def out(
    folder: Path, files: dict[str, str], settings: Settings | None = None
) -> tuple[list[str], dict[str, str]]:
    DesignFolder(folder, tubes()).write(files, settings="")
    specs, over = sorted_out(folder, settings or Settings())
    return list(specs), {one.file: one.why for one in over}


def test_which_files_are_specs_and_why_others_are_not(tmp_path: Path) -> None:
    files = {
        "b.toml": "",
        "a.toml": "",
        "sub/c.toml": "",
        "sub/.d.toml": "",
        ".hidden/e.toml": "",
        "f.TOML": "",
        "g.txt": "",
        "register.toml": "",
        "own/speclint.toml": "",
        "own/deep/h.toml": "",
        "own/deep/speclint.toml": "",
        ".git/i.toml": "",
        ".cache/CACHEDIR.TAG": "",
        ".cache/j.toml": "",
        ".venv/pyvenv.cfg": "",
        ".venv/k.toml": "",
        "venv/pyvenv.cfg": "",
        "venv/l.toml": "",
    }
    specs, over = out(tmp_path, files)
    assert specs == ["a.toml", "b.toml", "sub/c.toml", "venv/l.toml"]
    assert over == {
        ".hidden/e.toml": "its folder .hidden is hidden: the name begins with a dot",
        "f.TOML": "its name ends in .TOML, not in .toml",
        "own/deep/h.toml": "own/speclint.toml makes its folder a repository of its own",
        "sub/.d.toml": "its name begins with a dot",
    }
    assert [one.file for one in passed_over(tmp_path, Settings())] == sorted(over)


@pytest.mark.skipif(not hasattr(os, "symlink") or os.name == "nt", reason="links need rights there")
def test_links_of_folders_are_not_followed_and_of_files_only_inside(tmp_path: Path) -> None:
    root = tmp_path / "design"
    root.mkdir()
    (tmp_path / "outside.toml").write_text("")
    out(root, {"sub/a.toml": "", "b.toml": ""})
    (root / "link").symlink_to(root / "sub")
    (root / "sub" / "inner").symlink_to(root)
    (root / "c.toml").symlink_to(root / "b.toml")
    (root / "d.toml").symlink_to(tmp_path / "outside.toml")
    specs, over = sorted_out(root, Settings())
    assert specs == ("b.toml", "c.toml", "sub/a.toml")
    told = {one.file: one.why for one in over}
    assert told["link/"] == told["sub/inner/"] == "the folder is a link, and none is followed"
    assert told["d.toml"].startswith("it is ")
    assert len(told) == 3


def test_repositories_below_a_folder_the_outermost_only(tmp_path: Path) -> None:
    for place in ("b", "a", "a/inner", ".hidden", "c/d"):
        (tmp_path / place).mkdir(parents=True)
        (tmp_path / place / "speclint.toml").write_text("")
    found = [one.relative_to(tmp_path).as_posix() for one in roots_below(tmp_path)]
    assert found == ["a", "b", "c/d"]
    assert [one.name for one in roots_below(tmp_path / "a")] == ["a"]


def test_a_hidden_root_is_looked_into_and_a_hidden_cache_in_it_is_not(tmp_path: Path) -> None:
    root = tmp_path / ".design"
    for file in ("CACHEDIR.TAG", "a.toml", ".cache/CACHEDIR.TAG", ".cache/b.toml", ".kept/c.toml"):
        (root / file).parent.mkdir(parents=True, exist_ok=True)
        (root / file).write_text("")
    specs, over = sorted_out(root, Settings())
    assert (specs, [one.file for one in over]) == (("a.toml",), [".kept/c.toml"])


@pytest.mark.skipif(os.name == "nt", reason="links need rights there")
def test_a_folder_that_is_a_link_is_named_as_one_also_where_it_is_left_out(tmp_path: Path) -> None:
    (tmp_path / "design").mkdir()
    out(tmp_path / "design", {"a.toml": "", "speclint.toml": 'leave_out = ["link/*"]\n'})
    (tmp_path / "design" / "link").symlink_to(tmp_path)
    settings = Settings(leave_out=("link/*",))
    (one,) = passed_over(tmp_path / "design", settings)
    assert (one.file, one.why, one.unknown) == ("link/", "the folder is a link, and none is followed", False)


def test_files_that_the_settings_name_are_no_specs(tmp_path: Path) -> None:
    files = dict.fromkeys(("a.toml", "own.toml", "shop.toml", "office.toml", "kept/r.toml", "b.toml"), "")
    text = (
        'materials = ["own.toml"]\nleave_out = ["x/*", "b.*"]\n[made]\nmappings = ["shop.toml"]\n'
        '[tables]\nmappings = ["office.toml"]\n[concessions]\nfile = "kept/r.toml"\n'
    )
    DesignFolder(tmp_path, tubes()).write(files, settings=text)
    settings, _ = load_settings(tmp_path)
    assert settings is not None
    assert sorted_out(tmp_path, settings) == (
        ("a.toml",),
        (PassedOver("b.toml", 'speclint.toml leaves out "b.*"'),),
    )
