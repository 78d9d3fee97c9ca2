"""Complaints and names that are not known: each with the checks that wait, and as many as a page has room for."""

from __future__ import annotations

import pytest

from speclint.checking import Assessment
from speclint.errors import Complaint, Location, replace
from speclint.register import Decision, Reason
from speclint.reports import gate_page, terminal_page
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.test_register_listing import LAPSED
from tests.tubes import FILES

NAMED = 'kind = "pin"\nduty = "duty"\nmaterial = "plate-P355GJ"\n'
DUTY = 'kind = "duty"\n[cases.running]\nlive_temperature = "390 °C"\n'
WIDE = 160
WAITING = "1 check of 1 part waiting: duty.toml:3 cases.starting.live_pressure could not be read"


@pytest.fixture
def unread(workshop: DesignFolder) -> Assessment:
    """A tube whose duty states a pressure without its datum: one check needs it."""
    workshop.loaded = tubes.tubes()
    workshop.write({**FILES, "duty.toml": 'kind = "duty"\n[cases.starting]\nlive_pressure = "12 bar"\n'})
    return workshop.write({}, settings='[works]\nstage = "for-review"\n').assess()


def of(found: Assessment, *, full: bool = False) -> list[str]:
    return terminal_page.write(found, WIDE, full=full).text().splitlines()


def test_a_complaint_tells_how_many_checks_wait_for_it_and_the_list_says_so_once(unread: Assessment) -> None:
    page = of(unread, full=True)
    assert (
        page[page.index("COULD NOT BE READ  (1)") + 5].strip()
        == 'write      "12 bar gauge" or "12 bar absolute"'
    )
    assert page[page.index("COULD NOT BE READ  (1)") + 6].strip() == "waiting    1 check of 1 part"
    below = page[next(number for number, line in enumerate(page) if line.startswith("NOT ASSESSED")) :]
    assert f"  {WAITING}." in below
    assert not any("no duty of that id" in line for line in below)


@pytest.mark.parametrize(
    ("number", "shown", "more"), [(8, 8, ""), (9, 8, "  and 1 more: "), (11, 8, "  and 3 more: ")]
)
def test_a_page_that_is_not_in_full_shows_eight_complaints(
    unread: Assessment, number: int, shown: int, more: str
) -> None:
    complaints = tuple(
        Complaint(Location("a.toml", line), "no spec has this id") for line in range(1, number + 1)
    )
    many = replace(unread, complaints=complaints)
    page = of(many)
    assert sum(line == "    no spec has this id" for line in page) == shown
    assert any(line == f"{more}speclint check --full lists them all" for line in page) is bool(more)
    whole = of(many, full=True)
    assert sum(line == "    no spec has this id" for line in whole) == number
    assert not any("lists them all" in line for line in whole)


def test_a_name_that_is_not_known_has_a_part_of_its_own_below_the_first_page(workshop: DesignFolder) -> None:
    settings = '[works]\nstage = "for-review"\n'
    found = workshop.write({"duty.toml": DUTY, "pin.toml": NAMED}, settings=settings).assess()
    page = of(found)
    start = page.index("NAMES NOT KNOWN  (1)")
    assert page[start + 2 : start + 5] == [
        "  pin.toml:3 material",
        "    this is not among the materials that are known: speclint names materials",
        '    read       "plate-P355GJ"',
    ]
    assert any('waiting: pin.toml:3 material "plate-P355GJ" is not known' in line for line in page[:start])
    known = workshop.write({"pin.toml": NAMED.replace("GJ", "GH")}, settings=settings).assess()
    assert not any("NAMES NOT KNOWN" in line for line in of(known))


def test_the_gate_tells_holds_that_wait_for_one_thing_together(unread: Assessment) -> None:
    check = next(one for one in unread.checks if one.unread)
    reasons = (Reason("hold, not assessed: tube", hold=check), Reason("a family is absent"))
    page = gate_page(Decision(reasons, unread), WIDE).text().splitlines()
    start = page.index("  a family is absent")
    said = "  hold, not assessed: 1 check waiting, of tube: duty.toml:3 cases.starting.live_pressure could not be read"
    assert page[start : start + 3] == ["  a family is absent", "", said]
    assert not any("hold, not assessed: tube" in line for line in page)


def test_a_hold_that_waits_and_was_once_conceded_stands_alone_at_the_gate(unread: Assessment) -> None:
    check = next(one for one in unread.checks if one.unread)
    entry = replace(LAPSED.concession, component=check.component, rule=check.rule.name)
    reasons = (Reason("hold, not assessed: tube", ("C-001 is lapsed",), hold=check),)
    decision = Decision(reasons, unread, ended=(replace(LAPSED, concession=entry),))
    page = gate_page(decision, WIDE).text().splitlines()
    assert "      because    C-001 is lapsed" in page
    assert not any("waiting" in line for line in page)
