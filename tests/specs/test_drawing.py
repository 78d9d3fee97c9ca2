"""The file of a drawing is a path in the repository on every system, and an issue has a day."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from speclint.repository import open_repository
from speclint.specs import Component, Stated
from speclint.specs.drawing import wrong_path
from speclint.testing import DesignFolder, load_family
from tests.plugins.release.part import files, settings

OUTSIDE = "this file lies outside the design repository"


@pytest.mark.parametrize(
    "path", ["rod.svg", "drawings/rod, left.pdf", "drawings/Stange ä.dxf", "..rod", "a/.b"]
)
def test_a_path_in_the_repository_is_taken(path: str) -> None:
    assert wrong_path(path) == ""


@pytest.mark.parametrize(
    ("path", "wrong"),
    [
        ("../rod.svg", OUTSIDE),
        ("a/../../rod.svg", OUTSIDE),
        ("a/..", OUTSIDE),
        ("..\\rod.svg", OUTSIDE),
        ("/rod.svg", OUTSIDE),
        ("C:/rod.svg", OUTSIDE),
        ("c:rod.svg", OUTSIDE),
        ("\\\\host\\share\\rod.svg", OUTSIDE),
        ("a\\rod.svg", "the path of a file is written with forward slashes"),
        ("a//rod.svg", "this is not the plain path of a file"),
        ("./rod.svg", "this is not the plain path of a file"),
        ("a/", "this is not the plain path of a file"),
        (".", "this is not the plain path of a file"),
        ("a\0b", "the path of a file has no signs that cannot be printed"),
        ("a\nb", "the path of a file has no signs that cannot be printed"),
    ],
)
def test_any_other_is_refused(path: str, wrong: str) -> None:
    assert wrong_path(path) == wrong


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (
            'drawing_file = "../x.svg"',
            "cover.toml:20 drawing_file: this file lies outside the design repository; "
            'read "../x.svg"; write its path in the repository: "drawings/CN-C-1211.svg"',
        ),
        (
            "drawing_file = 3",
            'cover.toml:20 drawing_file: this is not text; read 3; write text in quotes: "…"',
        ),
        (
            'issued = [{ to = "shop", on = "2027-01-01" }]',
            'cover.toml:20 issued[0].on: this is not a date; read "2027-01-01"; '
            "write a date without quotes: 2027-05-31",
        ),
        (
            'issued = [{ shop = "shop" }]',
            'cover.toml:20 issued[0].shop: "shop" is no key of [issued[0]]; read "shop"; '
            "write one of on, revision, to; data of your own goes under [notes]",
        ),
    ],
)
def test_a_wrong_line_is_told_with_what_to_write(tmp_path: Path, line: str, said: str) -> None:
    design = DesignFolder(tmp_path, load_family("speclint_release")).write(
        files(add=f"{line}\n"), settings=settings()
    )
    found = open_repository([design.root], design.loaded.kinds).complaints
    assert [str(one) for one in found] == [said]


def test_a_part_that_is_like_another_has_its_drawing_file_and_issues(tmp_path: Path) -> None:
    stated = 'drawing_file = "ring.svg"\nissued = [{ to = "shop", on = 2026-01-01, revision = "B" }]\n'
    written = files()
    design = DesignFolder(tmp_path, load_family("speclint_release")).write(
        {
            **written,
            "ring.toml": written["ring.toml"] + stated,
            "other.toml": 'kind = "piston-ring"\nid = "other"\nlike = "ring"\n',
        },
        settings=settings(),
    )
    specs = open_repository([design.root], design.loaded.kinds).design
    other = specs.specs["other"]
    assert isinstance(other, Component)
    assert isinstance(other.drawing_file, Stated)
    assert other.drawing_file.value == "ring.svg"
    assert [one.revision.value for one in other.issued if isinstance(one.revision, Stated)] == ["B"]
    assert specs.index.entries["other"].drawing_file == "ring.svg"


_OF_RING = 'drawing_file = "ring.svg"\nissued = [{ to = "shop", on = 2026-01-01, revision = "B" }]\n'
_LIKE = 'kind = "piston-ring"\nid = "other"\nlike = "ring"\n'
_FOR = 'kind = "piston-ring"\nid = "{each}"\neach = ["one", "other"]\ndrawing = "X-102"\n' + _OF_RING


@pytest.mark.parametrize(
    ("other", "file", "issues"),
    [
        (_LIKE, "ring.svg", 1),
        (_LIKE + 'drawing = "X-102"\n', "ring.svg", 1),
        (_LIKE + 'drawing = "X-103"\n', None, 0),
        (_LIKE + 'drawing = "X-103"\ndrawing_file = "other.svg"\n', "other.svg", 0),
        (_FOR, "ring.svg", 1),
        (_FOR + '[for.other]\ndrawing = "X-103"\n', None, 0),
        (_FOR + '[for.other]\ndrawing = "X-103"\ndrawing_file = "other.svg"\n', "other.svg", 0),
    ],
)
def test_a_part_of_another_drawing_has_its_own_file_and_issues(
    tmp_path: Path, other: str, file: str | None, issues: int
) -> None:
    written = files()
    made = {**written, "ring.toml": written["ring.toml"] + _OF_RING, "other.toml": other}
    design = DesignFolder(tmp_path, load_family("speclint_release")).write(made, settings=settings())
    opened = open_repository([design.root], design.loaded.kinds)
    assert not opened.complaints
    part = opened.design.specs["other"]
    assert isinstance(part, Component)
    assert (opened.design.index.entries["other"].drawing_file, len(part.issued)) == (file, issues)


@pytest.mark.parametrize(("days", "wrong"), [(-1, 0), (0, 0), (1, 1)])
def test_a_drawing_is_issued_by_today(tmp_path: Path, days: int, wrong: int) -> None:
    day = dt.date.today() + dt.timedelta(days=days)
    line = f'issued = [{{ to = "shop", on = {day}, revision = "A" }}]\n'
    design = DesignFolder(tmp_path, load_family("speclint_release")).write(
        files(add=line), settings=settings()
    )
    found = [str(one) for one in open_repository([design.root], design.loaded.kinds).complaints]
    told = f"cover.toml:20 issued[0].on: this day is still to come; read {day}; write the day on which it was done"
    assert [one.startswith(told) for one in found] == [True] * wrong
