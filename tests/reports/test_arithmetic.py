"""The sums of a check and of the gate: what withholds a release and what is beside it, conceded or not."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.reports.accepted import standings_of
from speclint.reports.arithmetic import Arithmetic, arithmetic_at_gate, arithmetic_of
from speclint.testing import DesignFolder
from tests import tubes
from tests.register.office import FILES, SETTINGS, Office, days, decide


@pytest.fixture
def office(tmp_path: Path) -> Office:
    """A tube that is a hold at 45 bar, a query with its closed ends, and short of one hoop: two others conform."""
    shop = DesignFolder(tmp_path, tubes.tubes()).write(FILES, settings=SETTINGS)
    shop.replace("tube.toml", 'ends = "open"', 'ends = "closed"').replace(
        "tube.toml", "hoops = 4", "hoops = 3"
    )
    return Office(shop)


def of_check(office: Office) -> Arithmetic:
    found = office.shop.assess()
    return arithmetic_of(found, standings_of(found))


BESIDE = {"queries": 1, "observations": 1, "conform": 2}


def test_a_hold_withholds_until_it_is_conceded(office: Office) -> None:
    assert of_check(office) == Arithmetic(holds=1, **BESIDE)
    assert of_check(office).beside == "Beside them 1 query, 1 observation; 2 checks conform."
    office.concede()
    assert of_check(office) == Arithmetic(conceded=1, **BESIDE)
    assert of_check(office).says == "Release is not withheld: no hold stands that is not conceded."
    assert of_check(office).beside == ("There is 1 hold conceded, 1 query, 1 observation; 2 checks conform.")


def test_a_concession_that_is_over_counts_no_more(office: Office) -> None:
    office.concede(today=days(-10), until=days(-1))
    assert of_check(office) == Arithmetic(holds=1, **BESIDE)


def test_the_gate_makes_the_same_sum(office: Office) -> None:
    assert arithmetic_at_gate(decide(office)) == of_check(office)
    office.concede()
    assert arithmetic_at_gate(decide(office)) == of_check(office) == Arithmetic(conceded=1, **BESIDE)
    office.shop.replace("tube.toml", 'temperature = "200..220 °C"\n', "")
    sums = arithmetic_at_gate(decide(office))
    assert sums == of_check(office) == Arithmetic(conceded=1, not_assessed=1, **{**BESIDE, "conform": 1})
    assert sums.says == "1 safety check not assessed = 1 reason to withhold release."


def test_what_cannot_be_read_or_run_withholds_too(office: Office) -> None:
    office.shop.loaded = tubes.tubes(*tubes.RULES, tubes.raises)
    office.shop.write({"bad.toml": 'kind = "tube"\nbore = "5,5 mm"\n'})
    sums = of_check(office)
    assert (sums.unread, sums.not_run, sums.holds, sums.conceded) == (1, 1, 1, 0)
    gate = arithmetic_at_gate(decide(office))
    assert (gate.unread, gate.not_run) == (1, 1)


def test_one_check_conforms_and_several_conform() -> None:
    assert Arithmetic(conform=1).beside == "1 check conforms."
    assert Arithmetic(conform=2).beside == "2 checks conform."
    assert Arithmetic(holds=1).beside == "0 checks conform."
    assert Arithmetic(observations=2).beside == "There are 2 observations; 0 checks conform."
    assert Arithmetic(holds=2, unread=1, others=2).says == (
        "2 holds not conceded + 1 line not readable + 2 others = 5 reasons to withhold release."
    )
