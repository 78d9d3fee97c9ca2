"""Phrases that all reports share: the verdict of a run, what was passed over, to whom a hold is referred."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Assessment
from speclint.errors import Complaint, Location, replace
from speclint.reports import terminal_page
from speclint.reports.page import Page
from speclint.reports.phrases import (
    count,
    left_out,
    passed_over,
    referred_to,
    said_of_item,
    tally,
    units_asked,
    verdict,
)
from speclint.reports.terminal_page import old_keys_on, passed_over_on
from speclint.repository import PassedOver
from speclint.testing import SETTINGS, DesignFolder
from tests import tubes
from tests.reports.test_register_listing import lines
from tests.tubes import FILES

FAULT = Complaint(Location("odd.toml", 4), "broken", '"x"', "a number")


@pytest.fixture
def sound(workshop: DesignFolder) -> Assessment:
    """A tube in order, whose ends are open."""
    workshop.loaded = tubes.tubes()
    return workshop.write(FILES).assess()


def test_the_verdict_of_a_run(sound: Assessment) -> None:
    broken = replace(sound.checks[0], could_not_run="a fault")
    thin = replace(sound.checks[0], outcome="finding", grade=Grade.HOLD)
    idle = tuple(replace(one, outcome="not applicable") for one in sound.checks)
    for of, said in (
        (sound, "IN ORDER as far as these rules go."),
        (
            replace(sound, checks=(broken, thin), settings=None),
            "NOT TO BE RELIED ON: a rule could not be run.",
        ),
        (replace(sound, settings=None, complaints=(FAULT,)), "NOT CHECKED: the settings could not be read."),
        (
            replace(sound, complaints=(FAULT,), checks=(thin,)),
            "NOT COMPLETE: odd.toml:4 could not be read; what could be was checked.",
        ),
        (
            replace(sound, complaints=(FAULT,) * 3),
            "NOT COMPLETE: odd.toml:4 and 2 other lines could not be read; what could be was checked.",
        ),
        (replace(sound, checks=idle), "NOTHING WAS CHECKED: no rule applies to duty, rack, tube."),
        (replace(sound, checks=(), touched=False), "NOTHING TO CHECK: what is staged touches no spec."),
        (
            replace(sound, checks=(thin,)),
            "NOT IN ORDER: nonconformity or above, or safety checks not assessed.",
        ),
    ):
        assert verdict(of) == said


def test_a_hold_is_referred_to_the_codes_that_are_named(sound: Assessment) -> None:
    assert referred_to(sound) == (
        "the invented pressure code; the invented railway code; and a competent person"
    )
    none = "the local codes (none is named in speclint.toml); and a competent person"
    assert referred_to(replace(sound, settings=None)) == none


def test_findings_are_counted_by_their_grade(sound: Assessment) -> None:
    hold, other = (replace(one, outcome="finding", grade=Grade.HOLD) for one in sound.checks[:2])
    alike = replace(hold, component="b", alike="a"), replace(hold, component="c", alike="a")
    query = replace(other, grade=Grade.QUERY)
    unknown = replace(sound.checks[2], outcome="not assessed")
    idle = replace(sound.checks[3], outcome="not applicable")
    found = replace(sound, checks=(hold, *alike, query, unknown, idle, sound.checks[4]))
    assert tally(found) == (
        "2 holds (3 with those of parts alike), 1 query; 1 conform, 1 not assessed, 1 not applicable."
    )
    assert tally(replace(sound, checks=())) == "no findings; 0 conform, 0 not assessed, 0 not applicable."


@pytest.mark.parametrize(
    ("names", "said"),
    [
        ((), ""),
        (("a",), "LEFT OUT by speclint.toml: the family a; none of its rules was applied."),
        (("a", "b"), "LEFT OUT by speclint.toml: the families a, b; none of their rules was applied."),
    ],
)
def test_families_that_are_left_out(sound: Assessment, names: tuple[str, ...], said: str) -> None:
    without = replace(sound, loaded=replace(sound.loaded, left_out=names))
    assert left_out(without) == said
    assert tally(without).endswith(f" {said}" if said else "not applicable.")


def test_things_are_counted_in_english() -> None:
    assert [count(number, "query") for number in (0, 1, 2)] == ["0 queries", "1 query", "2 queries"]
    assert count(2, "nonconformity") == "2 nonconformities"
    assert count(3, "family") == "3 families"
    assert count(2, "hold") == "2 holds"


def test_the_units_that_a_reader_asks_for_go_before_those_of_the_works(workshop: DesignFolder) -> None:
    workshop.loaded = tubes.tubes()
    inches = workshop.write(
        FILES, settings=SETTINGS.replace("[works]", '[works]\nunits = "imperial"')
    ).assess()
    assert units_asked(inches, "as written") == "imperial"
    assert units_asked(inches, "metric") == "metric"
    assert units_asked(replace(inches, settings=None), "as written") == "as written"


def test_an_item_is_named_where_the_words_do_not_name_it(sound: Assessment) -> None:
    judged = next(one.judgement for one in sound.checks if one.judgement is not None)
    assert said_of_item(replace(judged, of="", says="so")) == "so"
    assert said_of_item(replace(judged, of="stud 1", says="so")) == "stud 1: so"
    assert said_of_item(replace(judged, of="stud 1", says="stud 1 is short")) == "stud 1 is short"


PASSED = (PassedOver("a.toml", "no kind"), PassedOver("b.toml", "a folder"), PassedOver("c.toml", "no kind"))


def passing(of: Assessment, monkeypatch: pytest.MonkeyPatch) -> Assessment:
    """The same with three files passed over and two old keys read."""
    assert of.design is not None
    note = Complaint(Location("tube.toml", 7, "hoops"), "an old key", "4", "bands")
    monkeypatch.setattr(type(of.design), "old_keys", (note, note))
    return replace(of, design=replace(of.design, passed_over=PASSED))


def test_what_was_passed_over_is_named_by_its_reason(
    sound: Assessment, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert passed_over(sound) == []
    page = Page(100)
    passed_over_on(page, sound)
    old_keys_on(page, sound)
    assert page.lines == []
    found = passing(sound, monkeypatch)
    assert passed_over(found) == [("a folder", "b.toml"), ("no kind", "a.toml, c.toml")]
    passed_over_on(page, found)
    old_keys_on(page, found)
    assert lines(page.text()) == [
        "PASSED OVER  (3)",
        "  TOML files that were not read as specs, and folders that were not looked into.",
        "  b.toml: a folder",
        "  a.toml, c.toml: no kind",
        "",
        "OLD KEYS  (2)",
        "  They are read for one more edition.",
        "  tube.toml:7 hoops: write bands",
        "  tube.toml:7 hoops: write bands",
    ]


def test_a_page_tells_what_could_not_be_read(sound: Assessment) -> None:
    bare = Complaint(Location("odd.toml", 9), "missing")
    text = lines(terminal_page.write(replace(sound, complaints=(FAULT, bare)), 100, full=True).text())
    at = text.index("COULD NOT BE READ  (2)")
    assert text[at : at + 8] == [
        "COULD NOT BE READ  (2)",
        "",
        "  odd.toml:4",
        "    broken",
        '    read       "x"',
        "    write      a number",
        "",
        "  odd.toml:9",
    ]
    assert text[at + 8] == "    missing"
    assert "    read" not in " ".join(text[at + 9 : at + 11])


def test_the_foot_of_page_one_says_what_else_is_to_be_known(
    sound: Assessment, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert "see --full" not in terminal_page.write(sound, 100).text()
    page = terminal_page.write(passing(sound, monkeypatch), 100).text()
    assert "3 TOML files passed over, 2 old keys read: listed below." in " ".join(page.split())
