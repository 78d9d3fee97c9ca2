"""release.stale-concession: a concession ends with the values it rests on and with its date."""

from __future__ import annotations

import datetime as dt

import pytest

from speclint import Grade
from speclint.register import Acceptance, concede
from speclint.testing import DesignFolder
from tests.plugins.release.part import files, settings

STALE = "release.stale-concession"
MEASURED = ('thickness = "50 mm"', 'thickness = { value = "50 mm", from = "measured" }')
TODAY = dt.date.today()


def conceded(workshop: DesignFolder, *, ends: int, made: int = 0) -> DesignFolder:
    """The cover with a measured thickness that was accepted, days from today."""
    day, until = TODAY + dt.timedelta(days=made), TODAY + dt.timedelta(days=ends)
    accepted = Acceptance(
        "cover", "release.measured-only", "J. Ostler", "as measured", until, "section leader"
    )
    workshop.write(files(MEASURED), settings=settings())
    concede(accepted, workshop.root, workshop.loaded, day)
    return workshop


def test_it_is_not_asked_where_nothing_is_conceded(workshop: DesignFolder) -> None:
    assert workshop.write(files(), settings=settings()).only(STALE, "cover").outcome == "not applicable"


@pytest.mark.parametrize(("ends", "outcome"), [(1, "conforms"), (0, "conforms"), (-1, "finding")])
def test_the_last_day_still_counts(workshop: DesignFolder, ends: int, outcome: str) -> None:
    assert conceded(workshop, ends=ends, made=-9).only(STALE, "cover").outcome == outcome


def test_an_ended_concession_says_when_it_ended(workshop: DesignFolder) -> None:
    check = conceded(workshop, ends=-1, made=-9).only(STALE, "cover")
    assert check.grade is Grade.NONCONFORMITY
    assert check.says == f"C-001: it ended on {TODAY - dt.timedelta(days=1)}"


def test_a_changed_value_is_named_and_another_changes_nothing(workshop: DesignFolder) -> None:
    conceded(workshop, ends=9)
    workshop.replace("cover.toml", 'title = "', 'title = "new ')
    assert workshop.only(STALE, "cover").outcome == "conforms"
    workshop.replace("cover.toml", '"50 mm"', '"51 mm"')
    check = workshop.only(STALE, "cover")
    assert check.outcome == "finding"
    assert check.says == "C-001: measured in cover was thickness 50 mm, is thickness 51 mm"


def test_a_concession_that_runs_too_long_is_told(workshop: DesignFolder) -> None:
    """It was made for nine days, and its end was moved by hand."""
    conceded(workshop, ends=9)
    text = (workshop.root / "register.toml").read_text(encoding="utf-8")
    for until, outcome in (
        (TODAY.replace(year=TODAY.year + 30, day=1), "conforms"),
        ("2199-12-31", "finding"),
    ):
        ended = text.replace(str(TODAY + dt.timedelta(days=9)), str(until))
        check = workshop.write({"register.toml": ended}, settings=settings()).only(STALE, "cover")
        assert check.outcome == outcome
    assert check.says == f"C-001: it runs from {TODAY} to 2199-12-31, longer than 30 years"


def test_a_finding_that_was_put_right_needs_no_concession(workshop: DesignFolder) -> None:
    conceded(workshop, ends=9)
    workshop.write(files(), settings=settings())
    assert workshop.only(STALE, "cover").outcome == "not applicable"


def test_a_renewed_concession_is_in_time(workshop: DesignFolder) -> None:
    conceded(workshop, ends=-1, made=-9)
    accepted = Acceptance("cover", "release.measured-only", "J. Ostler", "again", TODAY, "section leader")
    concede(accepted, workshop.root, workshop.loaded, TODAY)
    assert workshop.only(STALE, "cover").outcome == "conforms"


def test_concessions_themselves_cannot_be_conceded(workshop: DesignFolder) -> None:
    from speclint.errors import DesignError

    conceded(workshop, ends=-1, made=-9)
    accepted = Acceptance("cover", STALE, "J. Ostler", "never mind", TODAY, "section leader")
    with pytest.raises(DesignError, match="renew or remove them instead"):
        concede(accepted, workshop.root, workshop.loaded, TODAY)


def test_a_register_at_fault_is_told_and_does_not_stop_the_check(workshop: DesignFolder) -> None:
    workshop.write({**files(), "register.toml": "[[concession]]\nnumber = 'C-001'\n"}, settings=settings())
    assessment = workshop.assess()
    assert {one.where.file for one in assessment.complaints} == {"register.toml"}
    assert assessment.exit_code == 2
    assert assessment.checks
