"""Ten questions that a person puts to a design, each answered on the first screen of one command.

A screen is forty lines of eighty columns.
"""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from speclint.commands import main
from speclint.reports import terminal_page
from speclint.testing import DesignFolder
from tests.example import EXAMPLE, assessed
from tests.register.office import git

LINES, COLUMNS = 40, 80


def screen(text: str) -> str:
    """What is seen without scrolling, with the breaks of lines taken out."""
    lines = text.splitlines()[:LINES]
    assert max(map(len, lines)) <= COLUMNS
    return " ".join(" ".join(lines).split())


@pytest.fixture(scope="module")
def page_one() -> str:
    """The first screen of: speclint check example_specs."""
    return screen(terminal_page.write(assessed(), COLUMNS, full=False).text())


@pytest.fixture
def printed(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Callable[..., str]:
    """What a command prints first."""

    def of(*words: str) -> str:
        monkeypatch.setenv("COLUMNS", str(COLUMNS))
        assert main(list(words)) in (0, 1)
        return screen(capsys.readouterr().out)

    return of


def test_which_part_is_worst(page_one: str) -> None:
    assert re.search(
        r"the gravest first.*?> 10 seat-exhaust-left-front-upper \(CN-V-1403 A\): seat loose hot", page_one
    )


def test_what_must_be_changed_where_it_is_written_and_by_which_source(printed: Callable[..., str]) -> None:
    """Three of the ten, by: speclint check example_specs/seats --rule seat.push-out."""
    said = printed("check", str(EXAMPLE / "seats"), "--rule", "seat.push-out")
    assert re.search(r"remedy outside diameter from 190 mm.*? to 190", said)
    assert re.search(r"where seats/[a-z-]+\.toml:\d+ outside_diameter", said)
    assert re.search(r"source first principles", said)


def test_who_conceded_this(printed: Callable[..., str]) -> None:
    said = printed("register", "--in", str(EXAMPLE))
    assert re.search(r"C-001 liner-right liner\.wall-at-last-bore.*?M\. Coyle.*?2039-12-31", said)


def test_what_could_not_be_judged(page_one: str) -> None:
    assert re.search(r"\d+ safety checks? not assessed .*joints/gland\.toml:\d+ material", page_one)


def test_what_is_nearest_its_limit(page_one: str) -> None:
    assert re.search(r"Conforming with the least to spare 1\.000 |0\.9\d\d [a-z-]+ [a-z.-]+;", page_one)


def test_whether_anything_is_missing(workshop: DesignFolder) -> None:
    """A draft of a block says on its page one how much is still to be drawn and stated."""
    block = 'kind = "cylinder-block"\n[bores.main]\ndiameter = "578 mm H7"\n'
    found = workshop.write({"block.toml": block}).assess()
    said = screen(terminal_page.write(found, COLUMNS, full=False).text())
    assert re.search(r"\d+ places still to be drawn; \d+ values still to be stated", said)


BAR = 'kind = "slide-bar"\nspan = "900 mm"\nsafety_part = true\n'


def test_what_changed_since_a_revision(workshop: DesignFolder, printed: Callable[..., str]) -> None:
    root = workshop.write({"bar.toml": BAR, "lid.toml": 'kind = "chamber-cover"\n'}).root
    git(root, "init", "--quiet")
    git(root, "add", ".")
    git(root, "commit", "--quiet", "-m", "as it was")
    workshop.replace("bar.toml", "900 mm", "910 mm")
    assert "Since HEAD: 1 spec changed (bar)" in printed("check", str(root), "--against", "HEAD")


def test_whether_it_may_be_released(workshop: DesignFolder, printed: Callable[..., str]) -> None:
    said = printed("gate", str(workshop.write({"bar.toml": BAR}).root))
    found = re.match(r"WITHHELD: (\d+) reasons? .*? = (\d+) reasons? to withhold release", said)
    assert found
    assert found[1] == found[2]
