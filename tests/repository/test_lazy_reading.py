"""Specs that are read when they are asked for: what is told is the same to the byte as where every spec is read."""

from __future__ import annotations

import random
from collections.abc import Callable
from pathlib import Path

import pytest

from speclint.checking import Assessment, KeptFolder, assess, chosen_rules, still_to_be_drawn
from speclint.reports import json_report, terminal_page
from speclint.repository import Design, Settings
from speclint.repository.folder import load_design
from speclint.repository.kept_index import Remembered
from speclint.repository.lazy_specs import LazySpecs
from speclint.testing import DesignFolder, installed_families
from tests.repository.test_index import Shelf

DUTY = 'kind = "duty"\n[cases.running]\nlive_pressure = "15 bar gauge"\n'
BLOCK = (
    'kind = "cylinder-block"\nduty = "duty"\ndrawing = "B-1"\n[bores.left]\ndiameter = "480 mm H7"\n'
    '[bores.right]\ndiameter = "480 mm"\n'
)
LINER = (
    'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "left"\ndrawing = "L-1"\nbore = "450 mm"\n'
    'outside_diameter = "480 mm"\n'
)
RING = 'kind = "piston-ring"\nruns_in = "liner"\ndrawing = "R-{number}"\n'
FILES = {
    "duty.toml": DUTY,
    "block.toml": BLOCK,
    "liner.toml": LINER,
    "liner-right.toml": 'kind = "cylinder-liner"\nlike = "liner"\nin_bore = "right"\n',
    **{f"ring-{number}.toml": RING.format(number=number) for number in range(4)},
}
#: Edits that a designer makes, among them such as leave something wrong.
EDITS: dict[str, Callable[[dict[str, str]], object]] = {
    "a title": lambda files: files.update({"block.toml": 'title = "block"\n' + files["block.toml"]}),
    "another drawing number": lambda files: files.update(
        {"ring-1.toml": files["ring-1.toml"].replace("R-1", "R-2")}
    ),
    "a bore renamed": lambda files: files.update(
        {"block.toml": files["block.toml"].replace("bores.left", "bores.middle")}
    ),
    "a smaller bore": lambda files: files.update({"block.toml": files["block.toml"].replace("480", "470")}),
    "a link to nothing": lambda files: files.update(
        {"ring-2.toml": files["ring-2.toml"].replace('"liner"', '"lined"')}
    ),
    "a spec taken away": lambda files: files.pop("ring-3.toml", None),
    "a spec added": lambda files: files.update({"ring-9.toml": RING.format(number=9)}),
    "no TOML": lambda files: files.update({"ring-0.toml": "kind = \n"}),
    "an unknown key": lambda files: files.update({"liner.toml": files["liner.toml"] + 'colour = "red"\n'}),
    "a change of what another is like": lambda files: files.update(
        {"liner.toml": files["liner.toml"].replace("450 mm", "452 mm")}
    ),
    "an id twice": lambda files: files.update({"ring-8.toml": 'id = "ring-1"\n' + RING.format(number=8)}),
    "a loop": lambda files: files.update({"block.toml": 'like = "block"\n' + files["block.toml"]}),
}


def told(shop: DesignFolder, spec: str, kept: KeptFolder | None = None) -> tuple[str, Assessment]:
    loaded = installed_families()
    rules = chosen_rules(loaded, ["liners", "wholeness"], [])
    found = assess([shop.root / spec], loaded, rules, kept=kept)
    return json_report.write(found), found


@pytest.mark.parametrize("seed", range(4))
def test_what_is_told_after_edits_is_the_same_as_where_every_spec_is_read(tmp_path: Path, seed: int) -> None:
    files, kept, chance = dict(FILES), KeptFolder(tmp_path / "kept"), random.Random(seed)
    (tmp_path / "shop").mkdir()
    shop = DesignFolder(tmp_path / "shop").write(files)
    for edit in ["", *chance.sample(sorted(EDITS), 4)]:
        if edit:
            EDITS[edit](files)
            for old in set(FILES) - set(files):
                (shop.root / old).unlink(missing_ok=True)
            shop.write(files)
        assert edit or not told(shop, ".", kept)[1].complaints
        for spec in ("liner-right.toml", "."):
            assert told(shop, spec, kept)[0] == told(shop, spec)[0], edit


def test_only_what_a_check_asks_for_is_read(tmp_path: Path) -> None:
    (tmp_path / "shop").mkdir()
    shop, kept = DesignFolder(tmp_path / "shop").write(FILES), KeptFolder(tmp_path / "kept")
    first = told(shop, "ring-1.toml", kept)[1]
    again = told(shop, "ring-1.toml", kept)[1]
    assert first.design is not None
    assert again.design is not None
    assert first.design.only_indexed == 0
    assert again.design.only_indexed == 4  # the other liner, and three other rings
    assert "4 of 8 specs read for this, 4 indexed before" in terminal_page.write(again, 100).text()
    assert "indexed" not in terminal_page.write(first, 100).text()


def test_an_unread_spec_is_as_before_when_it_is_asked_for(tmp_path: Path) -> None:
    (tmp_path / "shop").mkdir()
    shop, kept = DesignFolder(tmp_path / "shop").write(FILES), KeptFolder(tmp_path / "kept")
    every = told(shop, "ring-1.toml", kept)[1].design
    lazily = told(shop, "ring-1.toml", kept)[1].design
    assert every is not None
    assert lazily is not None
    for file in shop.root.glob("*.toml"):
        file.unlink()  # what was indexed is not looked for on the disk again
    assert dict(lazily.specs) == dict(every.specs)
    assert lazily.specs["liner-right"].taken_over == every.specs["liner-right"].taken_over


class Repository:
    """A folder of specs that is read again and again, with an index that is kept and without."""

    def __init__(self, root: Path) -> None:
        self.root, self.shelf, self.files = root, Shelf(), dict(FILES)
        self.kinds = installed_families().kinds
        self.kept()

    def write(self) -> None:
        for old in self.root.glob("*.toml"):
            old.unlink()
        for name, text in self.files.items():
            (self.root / name).write_text(text, encoding="utf-8")

    def kept(self) -> Design:
        """The design as it is read with what is kept of it."""
        self.write()
        return load_design(self.root, [self.root], Settings(), self.kinds, Remembered(self.shelf, "code"))

    def whole(self) -> Design:
        return load_design(self.root, [self.root], Settings(), self.kinds)


@pytest.fixture
def repository(tmp_path: Path) -> Repository:
    return Repository(tmp_path)


def read_of(design: Design) -> set[str] | None:
    """The ids of the specs that were read; None where every spec was."""
    return set(design.specs._specs) if isinstance(design.specs, LazySpecs) else None


def same(kept: Design, whole: Design) -> None:
    """What is told of both is the same, the order of what is listed included."""
    assert list(kept.files.items()) == list(whole.files.items())
    assert dict(kept.alike) == dict(whole.alike)
    assert (kept.complaints, kept.cut, kept.unread) == (whole.complaints, whole.cut, whole.unread)
    assert dict(kept.index.entries) == dict(whole.index.entries)
    assert {name: kept.state_of(name) for name in kept.files} == {
        name: whole.state_of(name) for name in whole.files
    }
    assert list(kept.specs) == list(whole.specs)
    assert dict(kept.specs) == dict(whole.specs)


@pytest.mark.parametrize("edit", sorted(EDITS))
def test_each_edit_is_read_as_where_nothing_is_kept(repository: Repository, edit: str) -> None:
    """Also when it is taken back, and when what it left is kept and read once more."""
    EDITS[edit](repository.files)
    same(repository.kept(), repository.whole())
    same(repository.kept(), repository.whole())
    repository.files = dict(FILES)
    same(repository.kept(), repository.whole())


def test_a_title_is_kept(repository: Repository) -> None:
    repository.files["second.toml"] = 'kind = "cylinder-liner"\ntitle = "Liner, left"\n'
    same(repository.kept(), repository.whole())
    kept = repository.kept()
    assert kept.index.called("left liner") == ("second",)
    assert read_of(kept) == set()
    same(kept, repository.whole())


def test_what_a_certificate_states_is_kept(repository: Repository) -> None:
    made = 'kind = "made-part"\nof = "liner"\n[certificate]\nnumber = "C-12"\nheat = "H-7"\n'
    repository.files["made.toml"] = made
    same(repository.kept(), repository.whole())
    kept = repository.kept()
    assert kept.index.certified("number", "C-12") == kept.index.certified("heat", "H-7") == ("made",)
    assert read_of(kept) == set()
    same(kept, repository.whole())


@pytest.mark.parametrize(
    ("edit", "read"),
    [
        ("", set()),
        ("a title", {"block", "liner"}),  # whose bore is looked up in the block; the other is in none
        ("another drawing number", {"ring-1"}),
        ("a spec added", {"ring-9"}),
        ("a spec taken away", set()),
        (
            "a change of what another is like",
            {"liner", "liner-right", "block"},
        ),  # in which its bore is looked up
    ],
)
def test_after_an_edit_that_is_read_which_it_concerns_and_then_nothing(
    repository: Repository, edit: str, read: set[str]
) -> None:
    if edit:
        EDITS[edit](repository.files)
    assert read_of(repository.kept()) == read
    if edit != "a spec taken away":  # of which nothing is kept anew, as nothing was read
        assert read_of(repository.kept()) == set()
    same(repository.kept(), repository.whole())


@pytest.mark.parametrize(
    "edit",
    [
        "a bore renamed",
        "a smaller bore",
        "a link to nothing",
        "no TOML",
        "an unknown key",
        "an id twice",
        "a loop",
    ],
)
def test_what_is_wrong_has_every_spec_read_and_nothing_kept(repository: Repository, edit: str) -> None:
    before = dict(repository.shelf.kept)
    EDITS[edit](repository.files)
    for _ in range(2):
        found = repository.kept()
        assert read_of(found) is None
        assert found.complaints
    assert repository.shelf.kept == before


def test_an_id_that_stands_in_two_files_or_in_one_twice_has_every_spec_read(repository: Repository) -> None:
    repository.files["ring-0.toml"] = RING.format(number=0) + 'id = "ring-3"\n'
    assert read_of(repository.kept()) is None
    twice = (
        'kind = "piston-ring"\nid = "{x}{y}"\nruns_in = "liner"\n[each]\nx = ["a", "ab"]\ny = ["bc", "c"]\n'
    )
    repository.files["ring-0.toml"] = twice
    found = repository.kept()
    assert read_of(found) is None
    assert [one.message for one in found.complaints] == ["another name in each has the same id"]


def test_what_becomes_like_one_that_is_not_there_has_every_spec_read(repository: Repository) -> None:
    repository.files["ring-0.toml"] = 'kind = "piston-ring"\nlike = "ring-7"\n'
    assert read_of(repository.kept()) is None
    repository.files["ring-0.toml"] = 'kind = "piston-ring"\nlike = "ring-1"\nruns_in = "liner"\n'
    found = repository.kept()
    assert read_of(found) == {"ring-0"}
    assert dict(found.alike) == {"liner-right": "liner", "ring-0": "ring-1"}
    assert getattr(found.specs["ring-0"].drawing, "value", "") == "R-1"


def test_a_file_that_cannot_be_read_is_told_and_nothing_kept(repository: Repository) -> None:
    repository.write()
    (repository.root / "large.toml").write_bytes(b"#" * 1_000_001)
    before = dict(repository.shelf.kept)
    found = load_design(
        repository.root,
        [repository.root],
        Settings(),
        repository.kinds,
        Remembered(repository.shelf, "code"),
    )
    assert [one.where.file for one in found.complaints] == ["large.toml"]
    assert repository.shelf.kept == before


@pytest.mark.parametrize(("old", "read"), [("", 0), ("pressure_part = true\n", 1)])
def test_of_results_that_are_kept_only_specs_with_old_keys_are_read_to_tell_what_is_wanting(
    tmp_path: Path, old: str, read: int
) -> None:
    """A spec with an old key is read to say at which line; what a draft still lacks is told of the index alone."""
    shop = DesignFolder(tmp_path / "design").write({**FILES, "block.toml": BLOCK.replace("[", f"{old}[", 1)})
    kept = KeptFolder(tmp_path / "kept")

    def told(found: Assessment) -> tuple[list[str], list[str]]:
        old_keys = [f"{note.where}: {note.read}" for note in found.old_keys]
        return old_keys, [one.says for one in still_to_be_drawn(found)]

    first = told(assess([shop.root], shop.loaded, kept=kept))
    assert first[0] == ["block.toml:4 pressure_part: true"] * read
    assert first[1]
    again = assess([shop.root], shop.loaded, kept=kept)
    assert told(again) == first
    assert again.design is not None
    assert isinstance(again.design.specs, LazySpecs)
    assert again.design.specs.read == read
