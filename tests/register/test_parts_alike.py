"""A concession of a finding on parts alike: it holds for each part while that is as it was accepted."""

from __future__ import annotations

import pytest

from speclint.errors import DesignError, replace
from speclint.reports import register_data
from tests.register.office import SETTINGS, Office, days, decide

LIKE = 'kind = "tube"\nlike = "tube"\nheld_in = "rack"\n'


@pytest.fixture
def three(office: Office) -> Office:
    office.shop.write({"second.toml": LIKE, "third.toml": LIKE}, settings=SETTINGS)
    return office


def states(office: Office) -> dict[str, str]:
    return {one.component: one.state for one in office.stands()}


def test_it_is_entered_for_every_part_on_which_it_is_the_same(three: Office) -> None:
    made = three.concede(alike=True)
    assert made.also_on == ("second", "third")
    assert states(three) == {"tube": "valid", "second": "valid", "third": "valid"}
    assert decide(three).released


def test_without_it_the_others_still_withhold(three: Office) -> None:
    three.concede()
    assert states(three) == {"tube": "valid"}
    assert not decide(three).released


def test_a_part_that_differs_leaves_it_and_the_others_stay(three: Office) -> None:
    three.concede(alike=True)
    three.shop.write({"third.toml": LIKE + 'outside = "104.9 mm ±0.5"\n'}, settings=SETTINGS)
    assert states(three) == {"tube": "valid", "second": "valid", "third": "lapsed"}
    (third,) = (one for one in three.stands() if one.component == "third")
    assert third.reasons[0].startswith(
        "third is no longer alike to tube as it was accepted: used of the limit was"
    )
    assert not decide(three).released


def test_a_change_of_the_drawing_ends_it_for_all(three: Office) -> None:
    three.concede(alike=True)
    three.shop.replace("tube.toml", "45 bar gauge", "45.1 bar gauge")
    assert set(states(three).values()) == {"lapsed"}


def test_a_part_that_comes_later_is_not_accepted_with_it(three: Office) -> None:
    three.concede(alike=True)
    three.shop.write({"fourth.toml": LIKE}, settings=SETTINGS)
    assert "fourth" not in states(three)
    assert not decide(three).released


def test_a_finding_of_one_part_is_no_finding_of_parts_alike(office: Office) -> None:
    with pytest.raises(DesignError, match="the same on no other part"):
        office.concede(alike=True)


def test_the_designer_of_one_of_them_may_not_accept_it_for_all(three: Office) -> None:
    own = LIKE + 'prepared_by = "M. Coyle"\n'
    three.shop.write({"third.toml": own}, settings=SETTINGS)
    with pytest.raises(DesignError, match=r"M\. Coyle"):
        three.concede(alike=True)


def test_it_reads_back_and_says_the_same_when_it_is_signed(three: Office) -> None:
    made = three.concede(alike=True)
    (again,) = three.register().concessions
    assert replace(again, where=made.where) == made
    assert again.statement() == made.statement()
    assert b'"also_on": [' in made.statement()


def test_an_entry_for_one_part_says_nothing_of_others(office: Office) -> None:
    assert b"also_on" not in office.concede().statement()
    assert "also_on" not in office.text()


def test_a_second_acceptance_of_one_of_them_adds_nothing(three: Office) -> None:
    three.concede(alike=True)
    with pytest.raises(DesignError, match="C-001 already accepts this finding"):
        three.concede(component="second", until=days(100))


def test_the_listing_names_each_part(three: Office) -> None:
    three.concede(alike=True)
    register = three.register()
    found = register_data(register, three.stands(), ())["concessions"]
    assert [one["component"] for one in found] == ["tube", "second", "third"]


@pytest.mark.parametrize("line", ["also_on", "alike"])
def test_half_of_it_is_refused(three: Office, line: str) -> None:
    three.concede(alike=True)
    text = "\n".join(one for one in three.text().splitlines() if not one.startswith(f"{line} ="))
    (three.shop.root / "register.toml").write_text(text, encoding="utf-8")
    (complaint,) = three.register().complaints
    assert "also_on and alike together" in complaint.message
