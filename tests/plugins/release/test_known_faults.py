"""Known faults: what proves each mended, made again by the checks themselves."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import KeptFolder, assess, known_faults
from speclint.reports import json_report, markdown_report, terminal_page
from speclint.testing import DesignFolder, changed
from tests.plugins.release.part import files, settings

PROVED, SETTLED, TESTS, LIKE, DESCRIBED = (
    "fault.proved-by-checks",
    "fault.settled",
    "fault.tests-made",
    "fault.on-its-like",
    "fault.described",
)
FAULT = """
kind = "known-fault"
id = "lifting"
title = "Front covers lifted"
on = "cover"
went_wrong = "covers were drawn without an examination of their plates"
evidence = "record"
evidence_at = "failure book, entry 14"
consequence = "steam in the driver's way"
grade = "hold"
change = "plates are examined"
[by_checks.examined]
rule = "release.pressure-part"
"""
#: What makes the check of the cover fail: nothing is examined.
BAD_COVER = ('examination = "ultrasonic, plate edges"', 'examination = "none"')


def faults(*changes: tuple[str, str], cover: tuple[tuple[str, str], ...] = ()) -> dict[str, str]:
    return {**files(*cover), "lifting.toml": changed(FAULT, *changes)}


BY_NAME = 'rule = "release.pressure-part"'


def test_a_check_that_conforms_proves_it(workshop: DesignFolder) -> None:
    check = workshop.write(faults(), settings=settings()).only(PROVED)
    assert check.outcome == "conforms"


def test_a_check_that_now_fails_proves_nothing(workshop: DesignFolder) -> None:
    check = workshop.write(faults(cover=(BAD_COVER,)), settings=settings()).only(PROVED)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert check.says.startswith("release.pressure-part on cover: finding")


def test_a_check_that_could_not_be_assessed_proves_nothing(workshop: DesignFolder) -> None:
    cover = (('test_pressure = "28 bar gauge"\n', ""), ('design_pressure = "17 bar gauge"\n', ""))
    check = workshop.write(faults(cover=cover), settings=settings()).only(PROVED)
    assert check.outcome == "finding"


def test_a_check_that_does_not_apply_proves_nothing(workshop: DesignFolder) -> None:
    made = faults((BY_NAME, 'rule = "release.stale-concession"'))
    check = workshop.write(made, settings=settings()).only(PROVED)
    assert check.outcome == "finding"
    assert "release.stale-concession on cover: not applicable" in check.says


def test_a_rule_that_is_not_there_is_told_with_the_nearest(workshop: DesignFolder) -> None:
    check = workshop.write(faults((BY_NAME, 'rule = "release.pressure-prt"')), settings=settings()).only(
        PROVED
    )
    assert check.outcome == "not assessed"
    assert "release.pressure-part" in check.says


WORDS = '[by_checks.examined]\nrule = "release.pressure-part"\n'
CALCULATED = '[by_calculations.plate]\ndocument = "CN-214 B"\nby = "A. Render"\ndate = "2026-05-04"\n'
PASSED = '[by_tests.water]\nwhat = "28 bar"\nresult = "passed"\nrecord = "T-3"\ndate = "2026-06-01"\n'
TO_DO = '[by_tests.water]\nwhat = "28 bar"\nresult = "to be done"\n'
FAILED = '[by_tests.water]\nwhat = "28 bar"\nresult = "failed"\n'
ACCEPTED = '[accepted]\nby = "M. Coyle"\ndate = "2026-06-02"\ngrounds = "the plate is of another make"\n'


@pytest.mark.parametrize("instead", [CALCULATED, PASSED, ACCEPTED, ""])
def test_words_do_not_clear_a_hold(workshop: DesignFolder, instead: str) -> None:
    check = workshop.write(faults((WORDS, instead)), settings=settings()).only(PROVED)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert workshop.only(SETTLED).outcome == "not applicable"


LESS = ('grade = "hold"', 'grade = "nonconformity"')


@pytest.mark.parametrize(
    ("proof", "outcome"),
    [
        (WORDS, "conforms"),
        (CALCULATED, "conforms"),
        (CALCULATED.replace('by = "A. Render"\n', ""), "finding"),
        (CALCULATED.replace("2026-05-04", "last spring"), "finding"),
        (PASSED, "conforms"),
        (PASSED.replace('record = "T-3"\n', ""), "finding"),
        (TO_DO, "not applicable"),  # asked for by fault.tests-made
        (ACCEPTED, "conforms"),
        (ACCEPTED.replace('grounds = "the plate is of another make"\n', ""), "finding"),
        (ACCEPTED.replace('date = "2026-06-02"\n', ""), "finding"),
        (CALCULATED.replace('date = "2026-05-04"\n', ""), "finding"),
        (PASSED.replace('date = "2026-06-01"\n', ""), "finding"),
        (PASSED.replace('result = "passed"\n', ""), "finding"),
        (PASSED.replace('result = "passed"\n', "") + ACCEPTED, "conforms"),
        (CALCULATED.replace('date = "2026-05-04"\n', "") + ACCEPTED, "conforms"),
        ("", "finding"),
    ],
)
def test_what_settles_a_fault_below_hold_grade(workshop: DesignFolder, proof: str, outcome: str) -> None:
    check = workshop.write(faults(LESS, (WORDS, proof)), settings=settings()).only(SETTLED)
    assert check.outcome == outcome


def test_a_calculation_does_not_outweigh_a_check_that_fails(workshop: DesignFolder) -> None:
    made = faults(LESS, (WORDS, WORDS + CALCULATED), cover=(BAD_COVER,))
    assert workshop.write(made, settings=settings()).only(SETTLED).outcome == "finding"


@pytest.mark.parametrize(
    ("test", "grade", "outcome", "given"),
    [
        (PASSED, "hold", "conforms", None),
        (TO_DO, "hold", "finding", Grade.QUERY),
        (FAILED, "hold", "finding", Grade.HOLD),
        (FAILED, "nonconformity", "finding", Grade.NONCONFORMITY),
        (PASSED.replace('date = "2026-06-01"', 'date = "soon"'), "hold", "finding", Grade.NONCONFORMITY),
        (PASSED.replace('what = "28 bar"\n', ""), "hold", "finding", Grade.NONCONFORMITY),
    ],
)
def test_tests(workshop: DesignFolder, test: str, grade: str, outcome: str, given: Grade | None) -> None:
    made = faults(('grade = "hold"', f'grade = "{grade}"'), (WORDS, WORDS + test))
    check = workshop.write(made, settings=settings()).only(TESTS)
    assert (check.outcome, check.grade) == (outcome, given)


def test_a_test_to_be_done_is_more_than_a_query_once_drawings_are_released(workshop: DesignFolder) -> None:
    made = faults((WORDS, WORDS + TO_DO))
    check = workshop.write(made, settings=settings("released")).only(TESTS)
    assert check.grade is Grade.NONCONFORMITY


OTHER = 'kind = "cylinder-cover"\nid = "other"\ndrawing = "X-103"\nlike = "cover"\nexamination = "{}"\n'


@pytest.mark.parametrize(("examined", "outcome"), [("ultrasonic", "conforms"), ("none", "finding")])
def test_its_like_is_checked_by_the_same_rule(workshop: DesignFolder, examined: str, outcome: str) -> None:
    made = {**faults(), "other.toml": OTHER.format(examined)}
    check = workshop.write(made, settings=settings()).only(LIKE)
    assert check.outcome == outcome
    if outcome == "finding":
        assert check.says.startswith("release.pressure-part on other: finding")


def test_a_part_alike_that_the_fault_names_is_left_to_its_own_check(workshop: DesignFolder) -> None:
    """The check that is named is of the cover alone: the second, which it fails, is told by fault.proved-by-checks."""
    third = OTHER.replace('"other"', '"third"').replace("X-103", "X-104")
    made = faults(('on = "cover"', 'on = ["cover", "other"]'), (BY_NAME, f'{BY_NAME}\nof = "cover"'))
    made = {**made, "other.toml": OTHER.format("none"), "third.toml": third.format("ultrasonic")}
    check = workshop.write(made, settings=settings()).only(LIKE)
    assert check.outcome == "conforms"
    assert "other" not in check.says
    assert workshop.only(PROVED).outcome == "finding"


def test_its_like_is_not_covered_by_a_calculation(workshop: DesignFolder) -> None:
    made = {**faults((WORDS, CALCULATED)), "other.toml": OTHER.format("ultrasonic")}
    check = workshop.write(made, settings=settings()).only(LIKE)
    assert check.says == "neither on nor a check names other, alike to a part that it concerns"
    named = {
        **made,
        "lifting.toml": changed(made["lifting.toml"], ('on = "cover"', 'on = ["cover", "other"]')),
    }
    assert workshop.write(named, settings=settings()).only(LIKE).outcome == "not applicable"


#: Both rules that make the checks that a fault names, with the grade that each is of.
BY_GRADE = [(PROVED, "hold"), (SETTLED, "observation")]


@pytest.mark.parametrize(("rule", "grade"), BY_GRADE)
def test_a_part_that_no_check_is_made_on_is_told(workshop: DesignFolder, rule: str, grade: str) -> None:
    graded = ('grade = "hold"', f'grade = "{grade}"')
    made = {
        **faults(graded, ('on = "cover"', 'on = ["cover", "other"]'), (BY_NAME, f'{BY_NAME}\nof = "cover"')),
        "other.toml": OTHER.format("ultrasonic"),
    }
    check = workshop.write(made, settings=settings()).only(rule)
    assert check.outcome == "finding"
    assert check.says == "by_checks names no check on other"


@pytest.mark.parametrize(("rule", "grade"), BY_GRADE)
def test_a_fault_on_no_part_is_proved_by_nothing(workshop: DesignFolder, rule: str, grade: str) -> None:
    made = faults(('grade = "hold"', f'grade = "{grade}"'), ('on = "cover"\n', ""))
    check = workshop.write(made, settings=settings()).only(rule)
    assert check.outcome == "not assessed"
    assert "on names no part" in check.says


@pytest.mark.parametrize(
    "key", ["went_wrong", "evidence", "evidence_at", "consequence", "grade", "change", "on"]
)
def test_a_fault_describes_itself(workshop: DesignFolder, key: str) -> None:
    assert workshop.write(faults(), settings=settings()).only(DESCRIBED).outcome == "conforms"
    line = next(one for one in FAULT.splitlines() if one.startswith(f"{key} = "))
    check = workshop.write(faults((f"{line}\n", "")), settings=settings()).only(DESCRIBED)
    assert check.says == f"not stated: {key}"


def test_an_accepted_fault_states_no_change(workshop: DesignFolder) -> None:
    made = faults(('change = "plates are examined"\n', ""), (WORDS, ACCEPTED))
    assert workshop.write(made, settings=settings()).only(DESCRIBED).outcome == "conforms"


def outcomes_of_cover(shop: DesignFolder) -> dict[str, str]:
    return {one.rule.name: one.outcome for one in shop.assess().checks if one.component == "cover"}


def test_a_fault_changes_no_check_of_the_part_that_it_names(workshop: DesignFolder) -> None:
    plain = outcomes_of_cover(workshop.write(files(), settings=settings()))
    assert outcomes_of_cover(workshop.write(faults(), settings=settings())) == plain


@pytest.mark.parametrize(("grade", "outcome"), [("hold", "finding"), ("observation", "not applicable")])
def test_a_fault_that_can_hurt_is_checked_by_another_person(
    workshop: DesignFolder, grade: str, outcome: str
) -> None:
    said = 'prepared_by = "A. Render"\nchecked_by = "A. Render"\ngrade = '
    made = faults(('grade = "hold"', f'{said}"{grade}"'))
    check = workshop.write(made, settings=settings()).only("release.independent-check", "lifting")
    assert check.outcome == outcome


def test_its_like_is_not_asked_where_nothing_is_proved_at_all(workshop: DesignFolder) -> None:
    made = {**faults((WORDS, "")), "other.toml": OTHER.format("ultrasonic")}
    assert workshop.write(made, settings=settings()).only(LIKE).outcome == "not applicable"


def test_a_kept_check_is_made_anew_when_what_proves_it_changes(workshop: DesignFolder) -> None:
    """Selected alone, and with results of the run before."""
    kept = KeptFolder(workshop.root.parent / "kept")

    def outcome() -> str:
        found = assess([workshop.root / "lifting.toml"], workshop.loaded, kept=kept).checks
        return next(one.outcome for one in found if one.rule.name == PROVED)

    workshop.write(faults(), settings=settings())
    assert [outcome(), outcome()] == ["conforms", "conforms"]
    workshop.replace("cover.toml", *BAD_COVER)
    assert outcome() == "finding"


def test_what_reports_say_of_known_faults(workshop: DesignFolder) -> None:
    second = changed(FAULT, ('id = "lifting"', 'id = "open"'), (WORDS, ""))
    third = changed(FAULT, ('id = "lifting"', 'id = "waits"'), LESS, (WORDS, TO_DO))
    named = 'checked_by = "M. Coyle"\nprepared_by = "A. Render"\n'
    made = {**faults(), "open.toml": second + named, "waits.toml": named + third}
    assessment = workshop.write(made, settings=settings()).assess()
    faults_found = known_faults(assessment)
    assert (faults_found.settled, faults_found.waiting, faults_found.open) == (
        ("lifting",),
        ("waits",),
        ("open",),
    )
    said = "3 known faults of the old design, 1 settled; 1 waiting: waits; 1 open: open."
    assert said in " ".join(terminal_page.write(assessment, 120, full=False).text().split())
    assert said in markdown_report.write(assessment)
    assert json_report.document(assessment)["known_faults"] == {
        "settled": ["lifting"],
        "waiting": ["waits"],
        "open": ["open"],
    }
