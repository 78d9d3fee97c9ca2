"""release.drawing-read and release.drawing-issued: the file against its last reading, the issues against the spec."""

from __future__ import annotations

import datetime as dt

import pytest

from speclint import Grade
from speclint.register import Reader, enter_reading
from speclint.testing import DesignFolder, expect_conforms, expect_finding, expect_query
from tests.plugins.release.part import files, settings

READ, ISSUED = "release.drawing-read", "release.drawing-issued"
NAMED = 'drawing_file = "drawings/cover.svg"\n'
TODAY = dt.date.today()
#: The first digits that sha256sum of GNU coreutils prints for "<svg/>" and "<svg />".
OF_BEFORE, OF_NOW = "d4dc56669143", "f68e724d27d8"
TO_DO = "; read it against the spec, then: speclint read cover --by NAME"


def drawn(workshop: DesignFolder, content: str = "<svg/>", stage: str = "for-review") -> DesignFolder:
    """The cover with the file of its drawing."""
    workshop.write({**files(add=NAMED), "drawings/cover.svg": content}, settings=settings(stage))
    return workshop


def read(workshop: DesignFolder, day: dt.date = TODAY, by: str = "M. Coyle") -> DesignFolder:
    """The same after its drawing was read."""
    enter_reading(["cover"], Reader(by), workshop.root, workshop.loaded, day)
    return workshop


def test_a_drawing_that_was_read_conforms_and_one_byte_ends_it(workshop: DesignFolder) -> None:
    read(drawn(workshop))
    check = workshop.only(READ, "cover")
    expect_conforms(check)
    assert check.says.startswith(
        f"drawings/cover.svg: M. Coyle read it on {TODAY} (R-001) at revision A, digest "
    )
    drawn(workshop, "<svg />")
    check = workshop.only(READ, "cover")
    expect_finding(check, grade=Grade.NONCONFORMITY)
    assert check.says == (
        f"drawings/cover.svg changed after M. Coyle read it on {TODAY} (R-001): "
        f"its digest was {OF_BEFORE}, is {OF_NOW}{TO_DO}"
    )
    expect_conforms(read(workshop).only(READ, "cover"))


def test_a_drawing_that_was_never_read_is_told_with_what_to_do(workshop: DesignFolder) -> None:
    check = drawn(workshop).only(READ, "cover")
    expect_finding(check)
    assert check.says == f"drawings/cover.svg was never read against this spec{TO_DO}"
    assert (check.where.file, check.where.key) == ("cover.toml", "drawing_file")


def test_a_reading_of_another_file_is_named(workshop: DesignFolder) -> None:
    read(drawn(workshop))
    workshop.write({"drawings/new.svg": "<svg/>"}, settings=settings())
    workshop.replace("cover.toml", "cover.svg", "new.svg")
    expect_finding(
        workshop.only(READ, "cover"), says="was never read against this spec (R-001 is of drawings/cover.svg)"
    )


def test_a_reading_at_another_revision_is_told(workshop: DesignFolder) -> None:
    read(drawn(workshop))
    workshop.replace("cover.toml", 'revision = "A"', 'revision = "B"')
    said = f"(R-001) at revision A, and the spec is at revision B{TO_DO}"
    expect_finding(workshop.only(READ, "cover"), says=said)


@pytest.mark.parametrize(("day", "outcome"), [(0, "conforms"), (1, "finding")])
def test_a_reading_counts_from_its_day(workshop: DesignFolder, day: int, outcome: str) -> None:
    read(drawn(workshop), TODAY + dt.timedelta(days=day))
    assert workshop.only(READ, "cover").outcome == outcome


def test_a_file_that_is_gone_is_told(workshop: DesignFolder) -> None:
    read(drawn(workshop))
    (workshop.root / "drawings" / "cover.svg").unlink()
    expect_finding(workshop.only(READ, "cover"), says="the file drawings/cover.svg is not there")


def test_of_two_readings_with_one_number_neither_counts(workshop: DesignFolder) -> None:
    read(read(drawn(workshop), TODAY - dt.timedelta(days=1)) and drawn(workshop, "<svg />"))
    expect_conforms(workshop.only(READ, "cover"))
    workshop.replace("register.toml", "R-002", "R-001")
    expect_finding(workshop.only(READ, "cover"), says="was never read")


@pytest.mark.parametrize(("stage", "outcome"), [("for-review", "not applicable"), ("released", "finding")])
def test_a_drawing_without_a_file_is_a_query_once_it_is_released(
    workshop: DesignFolder, stage: str, outcome: str
) -> None:
    check = workshop.write(files(), settings=settings(stage)).only(READ, "cover")
    assert check.outcome == outcome
    if outcome == "finding":
        expect_query(check, "no file of drawing X-101 is named")


def test_a_part_without_a_drawing_has_none_to_read(workshop: DesignFolder) -> None:
    workshop.write(files(('drawing = "X-101"\n', "")), settings=settings("released"))
    assert workshop.only(READ, "cover").outcome == "not applicable"


def issued(*issues: str) -> dict[str, str]:
    """The cover, at revision A, issued so."""
    lines = (f"[[issued]]\n{one}\n" for one in issues)
    return files(add="".join(lines))


FIRST = 'to = "shop"\non = 2026-01-02\nrevision = "-"'
SECOND = 'to = "shop"\non = 2026-03-02\nrevision = "A"'
FOUNDRY = 'to = "foundry"\non = 2026-01-02\nrevision = "-"'


@pytest.mark.parametrize(
    ("issues", "says"),
    [
        ((SECOND,), "revision A is held by shop"),
        ((FIRST, SECOND), "revision A is held by shop"),
        ((SECOND, FIRST), "revision A is held by shop"),
    ],
)
def test_the_last_issue_to_each_counts(workshop: DesignFolder, issues: tuple[str, ...], says: str) -> None:
    check = workshop.write(issued(*issues), settings=settings()).only(ISSUED, "cover")
    expect_conforms(check)
    assert check.says == says


@pytest.mark.parametrize(
    ("issues", "says"),
    [
        ((FIRST,), "shop holds revision -, issued on 2026-01-02: the spec is at revision A"),
        ((SECOND, FOUNDRY), "foundry holds revision -, issued on 2026-01-02: the spec is at revision A"),
        (
            (FIRST, SECOND.replace("03-02", "01-02")),
            "shop holds revision - and A, issued on 2026-01-02: the spec is at revision A",
        ),
    ],
)
def test_whoever_holds_another_revision_is_named(
    workshop: DesignFolder, issues: tuple[str, ...], says: str
) -> None:
    check = workshop.write(issued(*issues), settings=settings()).only(ISSUED, "cover")
    expect_finding(check, grade=Grade.NONCONFORMITY)
    assert check.says == says


def test_nothing_issued_is_nothing_to_hold_and_a_missing_word_is_asked_for(workshop: DesignFolder) -> None:
    assert workshop.write(files(), settings=settings()).only(ISSUED, "cover").outcome == "not applicable"
    workshop.write(issued('to = "shop"\nrevision = "A"'), settings=settings())
    check = workshop.only(ISSUED, "cover")
    assert (check.outcome, check.missing) == ("not assessed", ("issued[0].on is not stated in cover.toml",))
