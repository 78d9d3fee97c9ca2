"""Which components some staged files can have changed, and whose drawings are others; by git, without a check."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from speclint.errors import replace
from speclint.repository import Changes, Design, open_repository
from speclint.repository.concession import Register
from speclint.repository.drawing_changes import drawn_otherwise
from speclint.repository.drawing_reading import DrawingReading
from speclint.testing import SETTINGS, DesignFolder
from tests.register.office import git
from tests.tubes import DUTY, FILES, RACK, TUBE, tubes

LOADED = tubes()
DIGEST = "0123456789abcdef" * 4


def reading(number: str, component: str, *also: str) -> str:
    return (
        f'[[reading]]\nnumber = "{number}"\ncomponent = "{component}"\nfile = "t.svg"\nsha256 = "{DIGEST}"\n'
        f'read_by = "M. Coyle"\ndate = 2026-03-01\nalso_on = {list(also)}\n'
    )


MORE = {
    **FILES,
    "second.toml": 'kind = "tube"\nlike = "tube"\nheld_in = "rack"\n',
    "third.toml": TUBE.replace('"rack"', '"rack-2"') + 'drawing_file = "t.svg"\n',
    "rack-2.toml": RACK,
    "other.toml": DUTY.replace('id = "duty"', 'id = "other"'),
    "t.svg": "",
    "own.toml": "",
    "register.toml": reading("R-1", "tube"),
}


def write(root: Path, files: dict[str, str]) -> None:
    DesignFolder(root, LOADED).write(files, settings='materials = ["own.toml"]\n' + SETTINGS)


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """A repository with everything committed."""
    git(tmp_path, "init", "--quiet", "--initial-branch=main")
    write(tmp_path, MORE)
    git(tmp_path, "add", ".")
    git(tmp_path, "commit", "--quiet", "-m", "first")
    return tmp_path


def opened(root: Path) -> Design:
    return open_repository([root], LOADED.kinds).design


def changes(root: Path, *files: str) -> Changes:
    return Changes(root, files, opened(root), LOADED.kinds)


EVERY = {"tube", "rack", "duty", "second", "third", "rack-2", "other"}


@pytest.mark.parametrize(
    ("file", "ids", "dependents"),
    [
        ("tube.toml", {"tube"}, {"tube", "second"}),
        ("second.toml", {"second"}, {"second"}),
        ("rack.toml", {"rack"}, {"rack", "tube", "second"}),
        ("duty.toml", {"duty"}, {"duty", "tube", "second", "third"}),
        ("t.svg", {"third"}, {"third"}),
        ("notes.txt", set(), set()),
        ("register.toml", set(), set()),
        ("speclint.toml", EVERY, EVERY),
        ("own.toml", EVERY, EVERY),
    ],
)
def test_a_staged_file_concerns_its_specs_and_whatever_hangs_on_them(
    root: Path, file: str, ids: set[str], dependents: set[str]
) -> None:
    found = changes(root, file)
    assert (found.ids, found.dependents) == (ids, dependents)


def test_what_may_consult_a_changed_part_links_to_one_that_it_links_to(root: Path) -> None:
    """The second tube is in the rack of the first, and the third is not; a duty joins no parts."""
    write(root, {**MORE, "second.toml": TUBE})
    assert changes(root, "tube.toml").perhaps == {"rack", "second"}
    assert changes(root, "third.toml").perhaps == {"rack-2"}
    assert changes(root, "rack.toml").perhaps == set()


def test_a_part_that_was_unlinked_and_an_id_that_is_gone_are_concerned(root: Path) -> None:
    write(root, {"tube.toml": TUBE.replace('"rack"', '"rack-2"').replace('"duty"', '"other"')})
    assert changes(root, "tube.toml").ids == {"tube", "rack"}  # a duty is no component
    write(root, {"tube.toml": 'id = "pipe"\n' + TUBE})
    assert changes(root, "tube.toml").ids == {"tube", "pipe", "rack"}
    (root / "tube.toml").unlink()
    assert changes(root, "tube.toml").ids == {"tube", "rack"}
    write(root, {"tube.toml": "kind ="})
    assert changes(root, "tube.toml").ids == {"tube", "rack"}


def test_before_the_first_commit_what_is_there_is_concerned(tmp_path: Path) -> None:
    git(tmp_path, "init", "--quiet")
    write(tmp_path, MORE)
    assert changes(tmp_path, "tube.toml", "register.toml").ids == {"tube"}
    assert changes(tmp_path, "register.toml").ids == {"tube"}  # whose drawing has a reading now


def test_of_the_register_the_parts_with_another_reading_are_concerned(root: Path) -> None:
    write(root, {"register.toml": reading("R-1", "tube") + reading("R-2", "rack", "third", "nobody")})
    assert changes(root, "register.toml").ids == {"rack", "third"}
    write(root, {"register.toml": ""})
    assert changes(root, "register.toml").ids == {"tube"}
    assert changes(root, "tube.toml").ids == {"tube"}
    write(root, {"register.toml": reading("R-1", "rack")})
    assert changes(root, "register.toml").ids == {"tube", "rack"}


READ = DrawingReading("R-1", "third", "t.svg", DIGEST, "M. Coyle", dt.date(2026, 3, 1))


def test_a_drawing_is_another_by_its_file_or_by_its_readings(tmp_path: Path) -> None:
    write(tmp_path, MORE)
    nothing = Register("register.toml")
    before = (opened(tmp_path), nothing)
    assert drawn_otherwise(before, (opened(tmp_path), nothing)) == set()
    read = replace(nothing, readings=(READ,))
    assert drawn_otherwise(before, (opened(tmp_path), read)) == {"third"}
    of_another = replace(nothing, readings=(replace(READ, component="tube"),))
    assert drawn_otherwise(before, (opened(tmp_path), of_another)) == set()
    beside = replace(nothing, readings=(replace(READ, component="tube", also_on=("third",)),))
    assert drawn_otherwise((opened(tmp_path), beside), before) == {"third"}
    write(tmp_path, {"t.svg": "other"})
    assert drawn_otherwise(before, (opened(tmp_path), nothing)) == {"third"}
    (tmp_path / "t.svg").unlink()
    gone = (opened(tmp_path), nothing)
    assert drawn_otherwise(before, gone) == {"third"}
    write(tmp_path, {"tube.toml": TUBE + 'drawing_file = "t.svg"\n'})
    alike = {"tube", "second"}  # which has the drawing of the tube that it is like
    assert drawn_otherwise(gone, (opened(tmp_path), nothing)) == alike
    assert drawn_otherwise((opened(tmp_path), nothing), gone) == alike
