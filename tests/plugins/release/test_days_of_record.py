"""made.relieved-as-asked and made.tested-as-finished: temperature, time and pressure from both sides, and the days."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, changed

RELIEVED, TESTED = "made.relieved-as-asked", "made.tested-as-finished"
FILES = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\ntest_pressure = "40 bar gauge"\n',
    "weldment.toml": 'kind = "weldment"\nid = "weldment"\nmakes = "block"\n'
    '[treatment]\ntemperature = "570 °C ±15"\ntime = "50 min"\n',
}
MADE = """
kind = "made-part"
id = "made"
of = "block"
[welds.all]
date = "2026-03-12"
[heat_treatments.furnace]
treatment = "stress relieve"
temperature = "572 °C ±3"
held = "3000 s"
date = "2026-03-28"
[hydraulic_tests.shop]
pressure = "40 bar gauge"
result = "passed"
date = "2026-05-27"
"""


def made(workshop: DesignFolder, rule: str, *changes: tuple[str, str], of: str = "block") -> Check:
    text = changed(MADE.replace('of = "block"', f'of = "{of}"'), *changes)
    return workshop.write({**FILES, "made.toml": text}).only(rule, "made")


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('"572 °C ±3"', '"582 °C ±3"', ""),
        ('"572 °C ±3"', '"582.1 °C ±3"', "585.1 °C > 585 °C"),
        ('"572 °C ±3"', '"558 °C ±3"', ""),
        ('"572 °C ±3"', '"557.9 °C ±3"', "554.9 °C < 555 °C"),
        ('"3000 s"', '"2999 s"', "2999 s < 50 min"),
        ('"2026-03-12"', '"2026-03-28"', ""),
        ('"2026-03-12"', '"2026-03-29"', "weld all: later than the stress relief"),
        ('treatment = "stress relieve"\n', "", ""),
    ],
)
@pytest.mark.parametrize("of", ["block", "weldment"])
def test_a_stress_relief_is_as_asked_for_and_after_the_welds(
    workshop: DesignFolder, old: str, new: str, says: str, of: str
) -> None:
    check = made(workshop, RELIEVED, (old, new), of=of)
    assert (check.outcome, check.grade) == (("finding", Grade.NONCONFORMITY) if says else ("conforms", None))
    assert says in check.says


def test_what_is_no_stress_relief_is_not_judged(workshop: DesignFolder) -> None:
    other = ('treatment = "stress relieve"', 'treatment = "normalized"')
    assert made(workshop, RELIEVED, other).outcome == "not applicable"
    assert made(workshop, RELIEVED, ('temperature = "572 °C ±3"\n', "")).outcome == "not assessed"


def test_a_second_stress_relief_follows_a_later_weld(workshop: DesignFolder) -> None:
    weld = ('"2026-03-12"', '"2026-04-20"')
    again = MADE.partition("[heat_treatments.furnace]\n")[2].partition("[hydraulic")[0]
    second = (
        "[hydraulic_tests.shop]",
        f"[heat_treatments.again]\n{again.replace('2026-03-28', '2026-04-21')}[hydraulic_tests.shop]",
    )
    assert made(workshop, RELIEVED, weld).outcome == "finding"
    assert made(workshop, RELIEVED, weld, second).outcome == "conforms"


ENTRY = '[entries.liner]\ndate = "{}"\n[hydraulic_tests.shop]'


@pytest.mark.parametrize(
    ("treatment", "day", "says"),
    [
        ("stress relieve", "2026-03-28", ""),  # fitted on the day of the furnace
        ("stress relieve", "2026-03-27", "furnace: later than it was fitted"),
        ("spannungsarmgeglüht", "2026-03-27", "furnace: later than it was fitted"),
        ("local stress relief", "2026-03-27", ""),
    ],
)
def test_nothing_is_fitted_before_the_furnace(
    workshop: DesignFolder, treatment: str, day: str, says: str
) -> None:
    change = ("stress relieve", treatment), ("[hydraulic_tests.shop]", ENTRY.format(day))
    check = made(workshop, RELIEVED, *change)
    assert (check.outcome, check.grade) == (("finding", Grade.NONCONFORMITY) if says else ("conforms", None))
    assert says in check.says


def test_the_last_entry_counts_and_one_without_a_day_does_not(workshop: DesignFolder) -> None:
    first, again = ENTRY.format("2026-03-01"), ENTRY.format("2026-06-01").replace("liner", "again")
    out = ("[hydraulic_tests.shop]", first)
    assert made(workshop, RELIEVED, out).outcome == "finding"
    both = ("[hydraulic_tests.shop]", first.replace("[hydraulic_tests.shop]", again))
    assert made(workshop, RELIEVED, both).outcome == "conforms"
    bare = ("[hydraulic_tests.shop]", '[entries.liner]\nrecord = "E-1"\n[hydraulic_tests.shop]')
    assert made(workshop, RELIEVED, bare).outcome == "conforms"


@pytest.mark.parametrize(
    ("treatment", "name", "outcome"),
    [
        ("normalgeglüht", "furnace", "not applicable"),
        ("vergütet", "furnace", "not applicable"),
        ("verguetet", "furnace", "not applicable"),
        ("", "normalized", "not applicable"),
        ("", "Spannungsarmglühen", "conforms"),
        ("heated through", "furnace", "conforms"),
    ],
)
def test_a_relief_by_its_words_or_its_name(
    workshop: DesignFolder, treatment: str, name: str, outcome: str
) -> None:
    words = f'treatment = "{treatment}"\n' if treatment else ""
    old = '[heat_treatments.furnace]\ntreatment = "stress relieve"\n'
    assert made(workshop, RELIEVED, (old, f'[heat_treatments."{name}"]\n{words}')).outcome == outcome


STEAMED = (
    '[steamings.first]\n{}case = "running"\nvalue = "180 °C"\nuncertainty = "2 K"\n[hydraulic_tests.shop]'
)


@pytest.mark.parametrize(
    ("day", "says"),
    [
        ('date = "2026-05-27"\n', ""),  # in steam on the day of the test
        ('date = "2026-05-26"\n', "steaming first: earlier than the first test that it passed"),
        ("", ""),
    ],
)
def test_it_is_tested_before_it_is_in_steam(workshop: DesignFolder, day: str, says: str) -> None:
    check = made(workshop, TESTED, ("[hydraulic_tests.shop]", STEAMED.format(day)))
    assert (check.outcome, check.grade) == (("finding", Grade.NONCONFORMITY) if says else ("conforms", None))
    assert says in check.says


def test_the_order_that_was_kept_is_said(workshop: DesignFolder) -> None:
    """Without a weld, a weldment and a pressure there is nothing else to say."""
    files = {"block.toml": FILES["block.toml"]}
    relieved = changed(MADE, ('[welds.all]\ndate = "2026-03-12"\n', ""))
    relieved = changed(relieved, ("[hydraulic_tests.shop]", ENTRY.format("2026-06-01")))
    check = workshop.write({**files, "made.toml": relieved}).only(RELIEVED, "made")
    assert check.says == "relieved before it was fitted"
    tested = '[hydraulic_tests.shop]\nresult = "passed"\ndate = "2026-05-27"\n'
    steamed = STEAMED.format('date = "2026-06-01"\n').replace("[hydraulic_tests.shop]", tested)
    record = MADE.partition("[welds.all]")[0] + steamed
    assert (
        workshop.write({**files, "made.toml": record}).only(TESTED, "made").says
        == "tested before it was in steam"
    )


def test_a_part_in_steam_that_passed_no_test_is_told_by_another_rule(workshop: DesignFolder) -> None:
    failed = ('result = "passed"', 'result = "failed"')
    steamed = ("[hydraulic_tests.shop]", STEAMED.format('date = "2026-06-01"\n'))
    assert made(workshop, TESTED, failed, steamed).outcome == "conforms"


def test_the_last_test_counts_after_a_weld(workshop: DesignFolder) -> None:
    """Tested in May, welded in June, tested in July."""
    weld = ('"2026-03-12"', '"2026-06-01"')
    again = '[hydraulic_tests.again]\npressure = "40 bar gauge"\nresult = "passed"\ndate = "2026-07-01"\n'
    assert made(workshop, TESTED, weld).outcome == "finding"
    both = ("[hydraulic_tests.shop]", f"{again}[hydraulic_tests.shop]")
    assert made(workshop, TESTED, weld, both).outcome == "conforms"


def test_a_part_in_service_is_tested_again(workshop: DesignFolder) -> None:
    """Tested in May, in steam in June, tested again in July."""
    again = '[hydraulic_tests.again]\npressure = "40 bar gauge"\nresult = "passed"\ndate = "2026-07-01"\n'
    steamed = STEAMED.format('date = "2026-06-01"\n').replace(
        "[hydraulic_tests.shop]", again + "[hydraulic_tests.shop]"
    )
    assert made(workshop, TESTED, ("[hydraulic_tests.shop]", steamed)).outcome == "conforms"
    failed = ('result = "passed"\ndate = "2026-05-27"', 'result = "failed"\ndate = "2026-05-27"')
    assert made(workshop, TESTED, failed, ("[hydraulic_tests.shop]", steamed)).outcome == "finding"


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('"40 bar gauge"', '"42.4 bar gauge"', ""),
        ('"40 bar gauge"', '"42.5 bar gauge"', "42.5 bar > 42.4 bar"),
        ('"passed"', '"failed"', ""),
        ('"40 bar gauge"\nresult = "passed"', '"60 bar gauge"\nresult = "failed"', "60 bar > 42.4 bar"),
        ('"2026-05-27"', '"2026-03-28"', ""),
        ('"2026-05-27"', '"2026-03-27"', "furnace: later than the last test"),
        ('"2026-03-12"', '"2026-05-28"', "weld all: later than the last test"),
    ],
)
def test_a_test_goes_not_far_above_and_comes_after_the_work(
    workshop: DesignFolder, old: str, new: str, says: str
) -> None:
    """1.06 × 40 = 42.4 bar."""
    check = made(workshop, TESTED, (old, new))
    assert (check.outcome, check.grade) == (("finding", Grade.NONCONFORMITY) if says else ("conforms", None))
    assert says in check.says


def test_no_test_on_record_is_told_by_another_rule(workshop: DesignFolder) -> None:
    none = MADE.partition("[hydraulic_tests.shop]")
    assert made(workshop, TESTED, (none[1] + none[2], "")).outcome == "not applicable"


@pytest.mark.parametrize(
    ("rule", "day"),
    [(RELIEVED, "2026-03-12"), (RELIEVED, "2026-03-28"), (TESTED, "2026-03-12"), (TESTED, "2026-05-27")],
)
def test_a_day_that_is_not_on_record_proves_no_order(workshop: DesignFolder, rule: str, day: str) -> None:
    assert made(workshop, rule, (f'date = "{day}"\n', "")).outcome == "not assessed"


def test_without_a_weld_and_a_weldment_nothing_is_asked_of_a_stress_relief(workshop: DesignFolder) -> None:
    ring = {"ring.toml": 'kind = "valve-seat"\nid = "ring"\n'}
    text = MADE.replace('of = "block"', 'of = "ring"').replace('[welds.all]\ndate = "2026-03-12"\n', "")
    check = workshop.write({**ring, "made.toml": text}).only(RELIEVED, "made")
    assert check.outcome == "not applicable"
    text = text.replace(
        "[heat_treatments.furnace]", '[welds.all]\ndate = "2026-03-29"\n[heat_treatments.furnace]'
    )
    assert workshop.write({**ring, "made.toml": text}).only(RELIEVED, "made").outcome == "finding"


def test_a_test_without_pressure_and_work_is_not_assessed(workshop: DesignFolder) -> None:
    bare = MADE.partition("[welds.all]")[0] + '[hydraulic_tests.shop]\nresult = "passed"\n'
    check = workshop.write({**FILES, "made.toml": bare}).only(TESTED, "made")
    assert check.outcome == "not assessed"
