"""What there is to accept in a check, and what differs between the values that two of them rest on."""

from __future__ import annotations

import pytest

from speclint.checking import find_check, nothing_to_concede, values_changed
from speclint.checking.concession_watch import used_of
from speclint.checking.rule_run import check
from speclint.errors import replace
from speclint.specs import Component
from speclint.testing import DesignFolder
from tests import tubes
from tests.tubes import FILES

#: Of the rule that raises: its decorator, its first line, its docstring and what it does stand one below the other.
LINE_THAT_RAISES = tubes.raises.function.__code__.co_firstlineno + 3


@pytest.fixture
def shop(workshop: DesignFolder) -> DesignFolder:
    workshop.loaded = tubes.tubes(*tubes.RULES, tubes.raises)
    return workshop.write(FILES)


@pytest.mark.parametrize(
    ("rule", "change", "why"),
    [
        ("tube.stress", ("30 bar", "45 bar"), ""),
        ("tube.loose-hot", ('temperature = "200..220 °C"\n', ""), ""),  # a safety check not assessed: a hold
        ("tube.stress", ("30 bar", "31 bar"), "there is nothing to accept any longer: the check conforms"),
        (
            "tube.hoops",
            ("hoops = 4\n", ""),
            "there is nothing to accept any longer: the check is not assessed",
        ),
        (
            "tube.raises",
            ("30 bar", "31 bar"),
            "the rule could not be run, which cannot be accepted: ZeroDivisionError: a fault of the rule "
            f"(tests.tubes, line {LINE_THAT_RAISES})",
        ),
    ],
)
def test_what_stands_in_the_way_can_be_accepted_and_nothing_else(
    shop: DesignFolder, rule: str, change: tuple[str, str], why: str
) -> None:
    shop.replace("tube.toml", *change)
    assert nothing_to_concede(shop.only(rule, runs=False)) == why


@pytest.mark.parametrize(
    ("component", "rule", "why"),
    [
        ("tubee", "tube.stress", 'no component is called tubee; write "tube"'),
        ("duty", "tube.stress", "duty is of the kind duty, which is no component"),
        ("tube", "tube.stres", 'no rule on a tube is called tube.stres; write "tube.stress"'),
        ("rack", "tube.stress", "no rule on a rack is called tube.stress; write "),
    ],
)
def test_a_check_that_is_not_made_says_why(shop: DesignFolder, component: str, rule: str, why: str) -> None:
    context = shop.assess().context
    assert context is not None
    found = find_check(context, shop.loaded, component, rule)
    assert isinstance(found, str)
    assert found.startswith(why)


def test_a_review_of_other_checks_is_not_accepted_itself(shop: DesignFolder) -> None:
    shop.loaded = tubes.tubes(replace(tubes.ends, reviews=True), tubes.stress)
    context = shop.assess().context
    assert context is not None
    assert find_check(context, shop.loaded, "tube", "tube.ends") == (
        "tube.ends reviews the other checks: what it reviews can be conceded, not the review itself"
    )


def test_the_check_that_is_found_is_made_now(shop: DesignFolder) -> None:
    context = shop.assess().context
    assert context is not None
    tube = context.design.specs["tube"]
    assert isinstance(tube, Component)
    found = find_check(context, shop.loaded, "tube", "tube.stress")
    assert found == check(tubes.stress, tube, context)


def test_values_that_came_went_and_moved_are_told_in_their_order() -> None:
    was = {"bore": "100 mm", "outside": "105 mm", "pressure": "30 bar"}
    now = {"pressure": "31 bar", "bore": "100 mm", "hoops": "4"}
    assert list(values_changed(was, now)) == [
        "outside was 105 mm, is no longer used",
        "pressure was 30 bar, is 31 bar",
        "hoops was not used, is 4",
    ]


def test_of_two_gaps_too_small_each_is_a_finding_of_its_own(shop: DesignFolder) -> None:
    """A hole of 102 mm for a tube of 105 mm, and of 101 mm: no share is left, and each is conceded alone."""
    found = [
        shop.write(FILES).replace("rack.toml", "106 mm", hole).only("tube.loose-hot")
        for hole in ("102 mm", "101 mm")
    ]
    assert [used_of(one) for one in found] == ["∞", "∞"]
    assert found[0].fingerprint != found[1].fingerprint
    assert list(values_changed(found[0].rests_on, found[1].rests_on)) == [
        "rack hole was 102 mm +0.1/0, is 101 mm +0.1/0"
    ]


def test_what_is_used_is_written_as_the_register_has_it(shop: DesignFolder) -> None:
    """By hand at 45 bar: 4.5 × 100.5/4 = 113.0625 of 100 MPa, in four figures; open ends are no matter of number."""
    shop.replace("tube.toml", "30 bar", "45 bar")
    assert used_of(shop.only("tube.stress")) == "1.131"
    assert used_of(shop.only("tube.ends")) == ""
