"""A change of one drawing concerns every part of it: those that are like another, and those of one file."""

from __future__ import annotations

from pathlib import Path

from speclint.checking import assess, of_component
from speclint.register.withdrawals import withdrawals
from speclint.repository import Changes, Design, changes_of_duties, removed_specs, touched_specs
from speclint.repository.git import git
from speclint.testing import DesignFolder
from tests.tubes import FILES, tubes

LIKE = 'kind = "tube"\nlike = "tube"\nheld_in = "rack"\n'
EACH = FILES["tube.toml"].replace('kind = "tube"', 'kind = "tube"\nid = "tube-{each}"\neach = ["a", "b"]')


def design(folder: Path, files: dict[str, str]) -> tuple[DesignFolder, Design]:
    folder.mkdir()
    shop = DesignFolder(folder, tubes()).write(files)
    found = shop.assess()
    assert found.design is not None
    return shop, found.design


def test_a_part_alike_is_checked_when_the_other_is_staged(tmp_path: Path) -> None:
    shop, now = design(tmp_path / "a", {**FILES, "second.toml": LIKE})
    git(shop.root, "init", "-q")
    touched = Changes(shop.root, ("tube.toml",), now, shop.loaded.kinds)
    assert touched.ids == {"tube"}
    assert touched.dependents == {"tube", "second"}


def test_every_part_of_a_file_is_staged_with_it(tmp_path: Path) -> None:
    shop, now = design(tmp_path / "a", {**FILES, "tube.toml": EACH})
    git(shop.root, "init", "-q")
    assert Changes(shop.root, ("tube.toml",), now, shop.loaded.kinds).ids == {"tube-a", "tube-b"}


def test_a_change_of_the_other_touches_a_part_alike(tmp_path: Path) -> None:
    files = {**FILES, "second.toml": LIKE}
    _, before = design(tmp_path / "a", files)
    _, now = design(tmp_path / "b", {**files, "tube.toml": FILES["tube.toml"].replace("100 mm", "99 mm")})
    assert touched_specs(before, now) == {"tube", "second"}
    assert touched_specs(before, before) == set()


def test_a_part_taken_out_of_a_file_is_withdrawn(tmp_path: Path) -> None:
    shop, before = design(tmp_path / "a", {**FILES, "tube.toml": EACH})
    _, now = design(tmp_path / "b", {**FILES, "tube.toml": EACH.replace('"a", "b"', '"a", "c"')})
    checks = assess([shop.root], shop.loaded).checks
    found = withdrawals(checks, before, now)
    assert {name: one.how for name, one in found.items()} == {
        "tube-b": "tube.toml is now the spec of tube-a and tube-c"
    }
    assert list(removed_specs(before, now)) == []


def test_a_duty_like_another_changes_with_it(tmp_path: Path) -> None:
    duty = FILES["duty.toml"]
    _, before = design(tmp_path / "a", {**FILES, "more.toml": 'kind = "duty"\nlike = "duty"\n'})
    changed = {
        **FILES,
        "duty.toml": duty.replace("12 bar", "13 bar"),
        "more.toml": 'kind = "duty"\nlike = "duty"\n',
    }
    _, now = design(tmp_path / "b", changed)
    assert list(changes_of_duties(before, now)) == [
        "duty.toml cases.starting.live_pressure was 12 bar gauge, is 13 bar gauge"
    ]


def test_a_part_alike_has_the_complaints_about_both_files(tmp_path: Path) -> None:
    files = {**FILES, "second.toml": LIKE}
    shop, _ = design(tmp_path / "a", {**files, "tube.toml": FILES["tube.toml"] + 'lenght = "3 mm"\n'})
    found = of_component(shop.assess(), "second")
    assert [one.where.file for one in found.complaints] == ["tube.toml"]
